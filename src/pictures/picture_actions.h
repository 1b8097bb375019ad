/* pictures/picture_actions.h -- what was done, as bars over time: loads in lanes of their own, below them water, salts and
   liquid, below those what was switched. */
#ifndef PICTURES_PICTURE_ACTIONS_H
#define PICTURES_PICTURE_ACTIONS_H

#include "describe/carried_out.h"
#include "pictures/picture.h"

/* More loads at once than this share the last lane. */
#define BAR_LANES_MAX 3

typedef struct {
    action_lane kind;
    double from_s, to_s;
    size_t lane;       /* of its kind, from 0 */
    action_name words; /* whole, or as many as have room before the next bar of the lane, or none */
} bar;

/* The bars in the order of time, to be freed; NULL when there are none, or memory is refused. `columns`: characters that
   fit into the whole run. */
bar *picture_bars(const carried_out *o, size_t columns, size_t *count);

/* Writes two files under those names. Actions, a row a bar: lane from the top over all kinds, from, to, kind, words. Lanes, a
   row each: its number, its kind. The picture ends at `end_s`. Both are empty when nothing was done. */
void picture_actions(picture *p, const carried_out *o, picture_format format, double end_s, const char *actions_name,
                     const char *lanes_name);

#endif
