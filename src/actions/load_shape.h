/* actions/load_shape.h -- the shape of a load and its size: "plate 1/4 in", "tube 1 in wall 2 mm". */
#ifndef ACTIONS_LOAD_SHAPE_H
#define ACTIONS_LOAD_SHAPE_H

#include "case/load.h"
#include "reading/cursor.h"
#include "reading/quantity.h"

typedef struct {
    const char *words;
    const char *size; /* what its size measures */
    boil_shape shape;
} load_shape;

const load_shape *load_shape_listed(size_t index); /* for the manual; NULL beyond the last */

/* Reads it, to the end of the cursor, into shape and sizes of `l`; `word` and `size` as written, for reports. False, with a
   message, otherwise. */
bool load_shape_read(cursor *part, boil_load *l, const char **word, quantity *size);

/* What may enter the bath, and why other metals must not. */

/* Whether any word of a load's line names a metal that must not enter; the reason is then said. The name of parts that were
   stripped of their coat may hold one, if it ends in "(stripped)". */
bool metal_refused(cursor line);

/* The metal named on the rest of a cursor (nothing: steel). False, with the reason, when it is another. `word` gets
   the metal as reports name it: "steel" or "iron". */
bool metal_read(cursor *c, const char **word);

#endif
