/* findings/bands.h -- how far apart the runs of a set lie in what a plan is made by.

   Recovery: the low end is that of the runs with the floor's store full (simulate/recorder.h), the high end that without any store,
   both over all runs. Steam and level: over all runs. A band says nothing of what no run of the set knows: foam, a wrong
   thermometer, another bath. */
#ifndef BOIL_FINDINGS_BANDS_H
#define BOIL_FINDINGS_BANDS_H

#include "boilback.h"

#endif
