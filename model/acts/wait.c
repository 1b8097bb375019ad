#include "acts/wait.h"

#include <math.h>

double boil_wait_due(const boil_wait *w, double earliest_s, const boil_by_hand *hand, const boil_wait_bath *b)
{
    const double never = (double)INFINITY;
    switch (w->state) {
    case BOIL_WAIT_BOILING:
        return b->boiling ? fmax(earliest_s, b->since_s + (w->for_s > 0 ? w->for_s : hand->steady_s)) : never;
    case BOIL_WAIT_QUIET:
        return !b->boiling ? fmax(earliest_s, b->since_s + (w->for_s > 0 ? w->for_s : hand->reaction_s)) : never;
    case BOIL_WAIT_BACK:
        return b->boiling ? fmax(earliest_s, b->since_s) + fmax(w->for_s, hand->steady_s) : never;
    case BOIL_WAIT_NONE:
        break;
    }
    return earliest_s;
}

bool boil_wait_is_sound(const boil_wait *w)
{
    bool finite = w->for_s >= 0 && isfinite(w->for_s) && w->delay_s >= 0 && isfinite(w->delay_s);
    return finite && (unsigned)w->state <= BOIL_WAIT_BACK && (w->state != BOIL_WAIT_BACK || w->follows);
}
