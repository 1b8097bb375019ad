/* schedule/positions.h -- the places of a tank, and which load hangs in which. A place is free again when its load is out. Loads that go
   in at one moment and state one position hang there together. */
#ifndef SCHEDULE_POSITIONS_H
#define SCHEDULE_POSITIONS_H

#include "actions/action.h"
#include "schedule/moment.h"

typedef struct {
    struct {
        const boil_action *load; /* NULL: empty since the start */
        double out_s;            /* when it is free again; infinity: not before it is lifted */
        bool stated;
    } in[BOIL_POSITIONS_MAX];
} positions;

typedef TEXT_OF(400) positions_text;

/* A load that begins to come out at lifts_s takes the place it states (its position, from 1), or the lowest free one of `count`, which
   is written there. It is kept by reference. False:
   that is taken, or all are; `why` then says by whom and until when. */
bool positions_take(positions *p, size_t count, const load_names *names, const moment_frame *frame, boil_action *load,
                    double lifts_s, positions_text *why);

#endif
