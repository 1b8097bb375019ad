#include "lesson/aftermath.h"

#include <math.h>

aftermath aftermath_of(const boil_plant *p, const boil_history *h, const boil_addition_result *a)
{
    aftermath m = {a->steam_peak_kg_s, a->steam_more_than, a->freeboard_min_m};
    for (size_t i = 0; i < h->quiet_count && a->was_quiet; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        bool poured_in_it = q->start_s <= a->time_s + a->over_s && q->end_s >= a->time_s;
        if (!poured_in_it)
            continue;
        m.more_than = m.more_than || (h->summary.steam_more_than && q->steam_peak_after_kg_s > m.steam_kg_s);
        m.steam_kg_s = fmax(m.steam_kg_s, q->steam_peak_after_kg_s);
        m.freeboard_m = fmin(m.freeboard_m, p->tank.depth_m - q->level_max_after_m);
    }
    return m;
}
