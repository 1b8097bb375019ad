/* actions/metals.h -- what may enter the bath, and why other metals must not. */
#ifndef ACTIONS_METALS_H
#define ACTIONS_METALS_H

#include "reading/cursor.h"

/* The metal named on the rest of a cursor (nothing: steel). False, with the reason, when it must not enter. `word` gets
   the metal as reports name it: "steel" or "iron". */
bool metal_read(cursor *c, const char **word);

#endif
