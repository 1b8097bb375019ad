/* finding_steam.c -- water afloat, and steam that comes at once. */
#include <math.h>

#include "analysis/finding_parts.h"

/* How grave a layer is depends on what its return does: SURGE_RATIO times the calm steam, half the freeboard, the rim. */
static boil_severity return_severity(const boil_judged *j, const boil_history *h, const boil_quiet_result *q)
{
    double depth = j->plant->tank.depth_m, half = depth - 0.5 * (depth - h->summary.still_level_start_m);
    if (q->level_max_after_m >= depth)
        return BOIL_SEVERITY_DANGER;
    bool surges = q->steam_peak_after_kg_s > SURGE_RATIO * h->summary.steam_steady_kg_s || q->level_max_after_m > half;
    return surges ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_NOTICE;
}

/* The gravest of what the fast run's quiet spells do when they end, among those that overlap this one. They come in the order
   of time: `first` moves on. */
static boil_severity worst_return(const boil_judged *j, const boil_quiet_result *q, size_t *first)
{
    const boil_history *fast = j->fast;
    double end = isnan(q->end_s) ? j->history->end_s : q->end_s;
    boil_severity worst = BOIL_SEVERITY_NOTICE;
    while (*first < fast->quiet_count && fast->quiet[*first].end_s < q->start_s - 1)
        ++*first; /* one that never ends compares false and stays */
    for (size_t n = *first; n < fast->quiet_count && fast->quiet[n].start_s <= end + 1; n++) {
        boil_severity s = return_severity(j, fast, &fast->quiet[n]);
        worst = s > worst ? s : worst;
    }
    return worst;
}

void boil_judge_layer(boil_judged *j)
{
    const boil_history *h = j->history;
    size_t first = 0;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        boil_severity worst = worst_return(j, q, &first),
                      deep = q->layer_max_m >= 3e-3 ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_NOTICE;
        if (q->layer_max_m >= 1e-3)
            boil_find(j, worst > deep ? worst : deep, q->layer_s, q->layer_max_m, 1e-3);
    }
}

void boil_judge_surface_boils(boil_judged *j)
{
    double since = j->history->summary.layer_boil_s;
    if (!isnan(since))
        boil_find(j, BOIL_SEVERITY_WARNING, since, since, (double)NAN);
}

void boil_judge_surge(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double calm = s->steam_steady_kg_s, peak = s->steam_peak_kg_s.value;
    if (calm > 0 && peak > SURGE_RATIO * calm && s->surge_peak_kg_s.value > (SURGE_RATIO - 1) * calm)
        boil_find(j, BOIL_SEVERITY_WARNING, s->steam_peak_kg_s.time_s, peak / calm, SURGE_RATIO);
}
