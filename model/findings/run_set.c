#include "findings/run_set.h"

#include <math.h>

#include "case/checks.h"
#include "simulate/run.h"

/* Whether water floats at the end on a bath that does not boil, enough to lower the freeboard if it let go. */
static bool unresolved(const boil_history *h)
{
    const boil_quiet_result *last = h->quiet_count > 0 ? &h->quiet[h->quiet_count - 1] : NULL;
    return h->end == BOIL_RUN_DONE && last != NULL && isnan(last->end_s) && !isnan(last->left_hot_m);
}

/* The same schedule with more time after it, and nothing done in that. */
static boil_outcome go_on(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *h)
{
    boil_schedule longer = *s;
    while (longer.count > 0 && longer.actions[longer.count - 1].time_s > s->duration_s)
        longer.count--;
    longer.duration_s += BOIL_RUN_SET_MORE_S;
    return boil_run_unchecked(p, &longer, o, h);
}

static boil_outcome add(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_closures c, bool further,
                        boil_run_set *set)
{
    boil_run_options with = *o;
    boil_run_of_set *r = &set->other[set->count];
    with.closures = c;
    with.row_interval_s = 0;
    *r = (boil_run_of_set){.closures = c};
    boil_outcome outcome = c == BOIL_CLOSURES_LIKELY ? BOIL_OK : boil_run_unchecked(p, s, &with, &r->history);
    const boil_history *seen = c == BOIL_CLOSURES_LIKELY ? &set->likely : &r->history;
    if (outcome == BOIL_OK && further && unresolved(seen)) {
        boil_history_free(&r->history);
        r->continued = true;
        outcome = go_on(p, s, &with, &r->history);
    }
    if (outcome == BOIL_OK && (r->continued || c != BOIL_CLOSURES_LIKELY))
        set->count++;
    return outcome;
}

/* Which runs of the set are made. */
typedef enum { ALWAYS, AFLOAT, DOUBT, AFLOAT_AND_DOUBT } when_wanted;

/* Whether anything afloat, were it hot, would leave less than is asked for. */
static bool matters(const boil_history *h, double freeboard_m)
{
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].left_hot_m < freeboard_m)
            return true;
    return false;
}

/* Whether the likely run could say anything that the mild ones might not: they decide on certainty alone. */
static bool worth_a_doubt(const boil_run_set *set, double freeboard_m)
{
    const boil_summary *s = &set->likely.summary;
    bool any =
        s->freeboard_min_m.value < freeboard_m || s->surge_peak_kg_s.value > s->steam_steady_kg_s || !isnan(s->layer_boil_s);
    for (size_t i = 0; i < set->likely.quiet_count; i++)
        any = any || set->likely.quiet[i].left_m < freeboard_m;
    for (size_t i = 0; i < set->likely.additions_count; i++)
        any = any || set->likely.additions[i].quiet_poured_kg > 0;
    return any;
}

static bool is_wanted(const boil_run_set *set, when_wanted when, double freeboard_m)
{
    bool any = matters(&set->likely, freeboard_m);
    for (size_t i = 0; i < set->count; i++)
        any = any || matters(&set->other[i].history, freeboard_m);
    return when == ALWAYS || (when == AFLOAT && any) || (when == DOUBT && worth_a_doubt(set, freeboard_m)) ||
           (when == AFLOAT_AND_DOUBT && any && worth_a_doubt(set, freeboard_m));
}

boil_outcome boil_run_set_of_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                       boil_run_set *out)
{
    static const struct {
        boil_closures closures;
        when_wanted when;
        bool further;
    } wanted[] = {{BOIL_CLOSURES_LIKELY, ALWAYS, true},   {BOIL_CLOSURES_LIKELY_WIDE, ALWAYS, false},
                  {BOIL_CLOSURES_GRAVE, ALWAYS, true},    {BOIL_CLOSURES_SUDDEN, ALWAYS, true},
                  {BOIL_CLOSURES_MILD, DOUBT, false},     {BOIL_CLOSURES_SUDDEN_3, AFLOAT, true},
                  {BOIL_CLOSURES_SUDDEN_8, AFLOAT, true}, {BOIL_CLOSURES_MILD_8, AFLOAT_AND_DOUBT, false}};
    boil_run_options likely = *o;
    likely.closures = BOIL_CLOSURES_LIKELY;
    *out = (boil_run_set){.count = 0};
    boil_outcome outcome = boil_run_unchecked(p, s, &likely, &out->likely);
    if (outcome != BOIL_OK)
        return outcome;
    for (size_t i = 0; outcome == BOIL_OK && i < sizeof wanted / sizeof wanted[0]; i++)
        if (out->likely.end != BOIL_RUN_INTERRUPTED && is_wanted(out, wanted[i].when, p->limits.freeboard_m))
            outcome = add(p, s, o, wanted[i].closures, wanted[i].further, out);
    if (outcome != BOIL_OK)
        boil_run_set_free(out);
    return outcome;
}

boil_outcome boil_run_set_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_run_set *out)
{
    if (out == NULL)
        return BOIL_BAD_INPUT;
    *out = (boil_run_set){.count = 0};
    return boil_check_case(p, s, o) ? boil_run_set_of_unchecked(p, s, o, out) : BOIL_BAD_INPUT;
}

const boil_history *boil_run_set_least_freeboard(const boil_run_set *set)
{
    const boil_history *least = &set->likely;
    for (size_t i = 0; i < set->count; i++) {
        const boil_run_of_set *r = &set->other[i];
        if (r->closures != BOIL_CLOSURES_MILD && r->closures != BOIL_CLOSURES_MILD_8 &&
            r->history.summary.freeboard_min_m.value < least->summary.freeboard_min_m.value)
            least = &r->history;
    }
    return least;
}

void boil_run_set_free(boil_run_set *set)
{
    if (set == NULL)
        return;
    boil_history_free(&set->likely);
    for (size_t i = 0; i < set->count; i++)
        boil_history_free(&set->other[i].history);
    set->count = 0;
}
