/* random/shrink.h -- a scenario that fails, made as short as it still does. */
#ifndef RANDOM_SHRINK_H
#define RANDOM_SHRINK_H

#include "random/invariants.h"

/* Acts are dropped first, then settings, one by one until none can go. */
draft shrink(const draft *d, const invariant_means *m, invariant broken);

#endif
