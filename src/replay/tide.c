#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "replay/replay.h"

static const double step_m = 2e-3;

/* Of both lists the next moment. */
static double next_s(const replay *r, size_t row, size_t band)
{
    double a = row < r->rows_count ? r->rows[row].time_s : (double)INFINITY;
    double b = band < r->band_count ? r->band[band].time_s : (double)INFINITY;
    return fmin(a, b);
}

bool replay_tide_make(replay *r)
{
    size_t row = 0, band = 0;
    replay_tide so_far = {0, 0, 0}, *last = NULL;
    r->tide = memory_needed(malloc((r->rows_count + r->band_count + 1) * sizeof *r->tide));
    if (r->tide == NULL)
        return false;
    while (isfinite(so_far.time_s = next_s(r, row, band))) {
        for (; row < r->rows_count && r->rows[row].time_s <= so_far.time_s; row++)
            so_far.likely_m = fmax(so_far.likely_m, r->rows[row].level_m);
        for (; band < r->band_count && r->band[band].time_s <= so_far.time_s; band++)
            so_far.possible_m = fmax(so_far.possible_m, r->band[band].high_m);
        so_far.possible_m = fmax(so_far.possible_m, so_far.likely_m); /* thinned, the band may lie a few mm below */
        if (last == NULL || so_far.likely_m > last->likely_m + step_m || so_far.possible_m > last->possible_m + step_m) {
            r->tide[r->tide_count++] = so_far;
            last = &r->tide[r->tide_count - 1];
        }
    }
    return true;
}
