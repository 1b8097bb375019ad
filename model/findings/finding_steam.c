/* finding_steam.c -- water afloat, and steam that comes at once. */
#include <math.h>

#include "findings/finding_parts.h"

const boil_quiet_result *boil_finding_least_left(const boil_history *h)
{
    const boil_quiet_result *least = NULL;
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].left_m < (least != NULL ? least->left_m : (double)INFINITY))
            least = &h->quiet[i];
    return least;
}

/* Under 150 degF it may be bailed: case/grading.c. */
const char *boil_finding_advice_afloat(const boil_judged *j)
{
    boil_initial_state bath;
    bool cold = j->plant->afloat.mass_kg > 0 && boil_plant_initial(j->plant, &bath) == BOIL_OK &&
                bath.temperature_K < boil_gradings[BOIL_FOUND_BAIL_HOT].from[BOIL_SEVERITY_CAUTION];
    return cold ? "Before heat: take the water off ('bail ..., from the surface')." : NULL;
}

double boil_finding_may_overflow(const boil_history *h)
{
    double over_s = (double)NAN;
    for (size_t i = 0; i < h->quiet_count; i++)
        over_s = fmin(over_s, h->quiet[i].may_overflow_s);
    return over_s;
}

/* A layer is as grave as the freeboard would be that is left once it has let go: of the limit less than all, two thirds, one third;
   and over the rim where the surge can get there. */
void boil_judge_layer(boil_judged *j)
{
    const boil_history *h = j->history;
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_LAYER, j->plant->limits.freeboard_m, -boil_finding_freeboard_unit(j));
    double from_s[BOIL_SEVERITIES], over_s = boil_finding_may_overflow(h);
    for (int k = 0; k < BOIL_SEVERITIES; k++)
        from_s[k] = h->summary.watched[BOIL_WATCH_LAYER].from_s[k];
    from_s[BOIL_SEVERITY_DANGER] = over_s;
    s.from_s = from_s;
    s.most = isnan(over_s) ? BOIL_AT_WARNING : BOIL_AT_DANGER;
    s.least = isnan(over_s) ? BOIL_UNBOUND : BOIL_AT_DANGER;
    s.advice = boil_finding_advice_afloat(j);
    boil_find(j, &s);
}

/* One that no boil takes away in the run, or beyond it, is graded as if it were at its boil: unresolved, it lets go when the boil
   returns. What would leave the limit free is a notice. */
void boil_judge_layer_outlasts(boil_judged *j)
{
    const boil_history *h = j->history;
    const boil_quiet_result *q = h->quiet_count > 0 ? &h->quiet[h->quiet_count - 1] : NULL;
    if (q == NULL || !isnan(q->end_s) || j->let_go || isnan(q->end_left_m))
        return;
    boil_sighting s = boil_sighting_left(j, q->end_left_m, q->end_overflows, h->end_s);
    s.least = q->end_overflows ? BOIL_AT_DANGER : BOIL_AT_NOTICE;
    boil_find(j, &s);
}

void boil_judge_surface_boils(boil_judged *j)
{
    const boil_watched *w = &j->history->summary.watched[BOIL_WATCH_SURFACE_BOILS];
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_SURFACE_BOILS, 0, 1);
    s.limit = (double)NAN;
    s.most = w->heated_s > 0 || w->fed > 0 ? BOIL_AT_WARNING : BOIL_AT_CAUTION;
    boil_find(j, &s);
}

/* A layer that is a warning by itself counts, in a run that only may be so, as if it came off: nobody may have the surge taken out of
   a grave case by a stir that makes it mix. */
static void count_what_floats(const boil_judged *j, boil_sighting *s, double *least_m)
{
    const boil_history *h = j->history;
    double calm = h->summary.steam_steady_kg_s;
    for (size_t i = 0; j->only_may && i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        if (!(q->left_m < fmin(*least_m, j->plant->limits.freeboard_m / 3)))
            continue;
        *least_m = q->left_m;
        if (calm > 0 && !(1 + q->surge_kg_s / calm <= s->x)) {
            s->x = s->value = 1 + q->surge_kg_s / calm;
            s->time_s = s->worst_s = q->left_s;
            s->from_s = NULL;
        }
    }
}

/* Many times the calm steam harms only where the freeboard runs short meanwhile: within the limit, or a quarter above it (judgement).
   What a load displaces an hour later is no matter of a surge. */
void boil_judge_surge(boil_judged *j)
{
    const boil_summary *of = &j->history->summary;
    double limit = j->plant->limits.freeboard_m;
    double least_m = isnan(of->surge_freeboard_m) ? of->freeboard_min_m.value : of->surge_freeboard_m;
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_SURGE, 0, 1);
    count_what_floats(j, &s, &least_m);
    s.most = least_m < limit ? BOIL_AT_WARNING : least_m < 1.25 * limit ? BOIL_AT_CAUTION : BOIL_AT_NOTICE;
    s.limit = boil_gradings[BOIL_FOUND_SURGE].from[BOIL_SEVERITY_CAUTION];
    j->more_than = of->steam_more_than;
    boil_find(j, &s);
}
