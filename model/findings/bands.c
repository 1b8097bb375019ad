#include "findings/bands.h"

#include <math.h>

/* Of all loads; infinity: one never was back; NaN: there is none. */
static double slowest(const boil_history *h, bool stored)
{
    double slowest_s = h->loads_count > 0 ? 0 : (double)NAN;
    for (size_t i = 0; i < h->loads_count; i++) {
        double recovery_s = stored ? h->loads[i].recovery_stored_s : h->loads[i].recovery_s;
        slowest_s = isnan(recovery_s) ? (double)INFINITY : fmax(slowest_s, recovery_s);
    }
    return slowest_s;
}

static void widen(boil_band *b, double low, double high)
{
    b->low = fmin(b->low, low);
    b->high = fmax(b->high, high);
}

/* How long held-back loads take says nothing of the schedule's own. */
static void widen_all(boil_bands *b, const boil_history *h, bool held_back)
{
    double steam_kg_s = h->summary.steam_peak_kg_s.value, level_m = h->summary.level_max_m.value;
    if (!held_back)
        widen(&b->recovery_s, slowest(h, true), slowest(h, false));
    widen(&b->steam_peak_kg_s, steam_kg_s, steam_kg_s);
    widen(&b->level_max_m, level_m, level_m);
    b->steam_more_than = b->steam_more_than || h->summary.steam_more_than;
}

static boil_band only(double value)
{
    return (boil_band){value, value, value};
}

boil_outcome boil_bands_of(const boil_history *likely, const boil_run_of_set *others, size_t count, boil_bands *out)
{
    if (likely == NULL || out == NULL || (others == NULL && count > 0))
        return BOIL_BAD_INPUT;
    *out = (boil_bands){only(slowest(likely, false)), only(likely->summary.steam_peak_kg_s.value),
                        only(likely->summary.level_max_m.value), likely->summary.steam_more_than};
    widen_all(out, likely, false);
    for (size_t i = 0; i < count; i++)
        if (!others[i].refused)
            widen_all(out, &others[i].history, others[i].held_back);
    return BOIL_OK;
}
