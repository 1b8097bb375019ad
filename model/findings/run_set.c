#include "findings/run_set.h"

#include <math.h>

#include "case/checks.h"
#include "case/closures.h"
#include "findings/findings.h"
#include "findings/held_back.h"
#include "findings/trigger.h"
#include "simulate/run.h"
#include "transfer/swell.h"

/* Which runs of the set are made. */
typedef enum { ALWAYS, AFLOAT, DOUBT, AFLOAT_AND_DOUBT } when_wanted;

typedef struct {
    boil_closures closures;
    when_wanted when;
    bool further, triggers;
} wanted_run;

static const wanted_run wanted[] = {
    {BOIL_CLOSURES_LIKELY, ALWAYS, .further = true},   {BOIL_CLOSURES_LIKELY_WIDE, ALWAYS, .further = false},
    {BOIL_CLOSURES_GRAVE, ALWAYS, .further = true},    {BOIL_CLOSURES_SUDDEN, ALWAYS, .further = true, .triggers = true},
    {BOIL_CLOSURES_SUDDEN_3, AFLOAT, .further = true}, {BOIL_CLOSURES_SUDDEN_8, AFLOAT, .further = true, .triggers = true},
    {BOIL_CLOSURES_MILD, DOUBT, .further = false},     {BOIL_CLOSURES_MILD_8, AFLOAT_AND_DOUBT, .further = false},
};

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_run_options *options;
    boil_run_set *set;
    boil_simulation *own;           /* in which each is made */
    boil_triggers triggers, latest; /* of all runs, and of that which is made */
    boil_run_of_set as;             /* how what is made now differs from what was asked for */
} making;

/* Whether the run ends in a quiet spell in which water floated, enough to lower the freeboard had it let go, or that anything was put
   into. Even where it has mixed in by the end, what it cooled and the boil that comes back over it are not seen yet. */
static bool unresolved(const boil_history *h)
{
    const boil_quiet_result *last = h->quiet_count > 0 ? &h->quiet[h->quiet_count - 1] : NULL;
    return h->end == BOIL_RUN_DONE && last != NULL && isnan(last->end_s) && (!isnan(last->left_hot_m) || last->met > 0);
}

static boil_outcome run(making *m, const boil_schedule *s, const boil_run_options *o, boil_history *h)
{
    const boil_history *made;
    *h = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_run_in(&m->own, m->plant, s, o, &made);
    return outcome == BOIL_OK ? boil_simulation_hand_over(m->own, h) : outcome;
}

static boil_outcome carry_out(making *m, const boil_schedule *s, const boil_run_options *o, bool triggers, boil_history *h)
{
    m->latest.count = 0;
    return triggers ? boil_trigger_watch(&m->own, m->plant, s, o, &m->latest, h) : run(m, s, o, h);
}

/* The same schedule with more time after it, and nothing done in that. */
static boil_outcome go_on(making *m, const boil_run_options *o, bool triggers, boil_history *h)
{
    boil_schedule longer = *m->schedule;
    while (longer.count > 0 && longer.actions[longer.count - 1].time_s > m->schedule->duration_s)
        longer.count--;
    longer.idle_after_s = m->schedule->duration_s;
    longer.duration_s += BOIL_RUN_SET_MORE_S;
    return carry_out(m, &longer, o, triggers, h);
}

/* What cannot be carried out is not left out: it is graded as not resolved. */
static boil_outcome or_refused(boil_outcome outcome, boil_run_of_set *r)
{
    if (outcome == BOIL_OK || outcome == BOIL_NO_MEMORY)
        return outcome;
    const boil_extreme none = {(double)NAN, (double)NAN};
    r->history = (boil_history){.end = BOIL_RUN_FAILED};
    r->history.summary.steam_peak_kg_s = r->history.summary.freeboard_min_m = r->history.summary.level_max_m = none;
    r->refused = true;
    return BOIL_OK;
}

/* A trigger run has the rows of the one that it comes of. */
static bool is_traced(const making *m, const wanted_run *w)
{
    boil_closures traced = m->options->traced;
    return w->closures == traced || traced == BOIL_CLOSURES || (traced == BOIL_CLOSURES_TRIGGER && w->triggers);
}

/* Without a trace but the one that keeps it. */
static boil_run_options options_of(const making *m, const wanted_run *w)
{
    boil_run_options with = *m->options;
    with.closures = w->closures;
    with.own_elevation = m->as.own_elevation;
    with.row_interval_s = is_traced(m, w) ? with.row_interval_s : 0;
    return with;
}

/* The next of the set; it counts once it is made. */
static boil_run_of_set *next(const making *m, boil_closures c, double let_go_s)
{
    boil_run_of_set *r = &m->set->other[m->set->count];
    *r = m->as;
    r->closures = c;
    r->let_go_s = let_go_s;
    return r;
}

static boil_outcome add(making *m, const wanted_run *w)
{
    boil_run_options with = options_of(m, w);
    boil_run_of_set *r = next(m, w->closures, (double)NAN);
    bool is_likely = w->closures == BOIL_CLOSURES_LIKELY && !m->as.usual_drift;
    boil_outcome outcome = is_likely ? BOIL_OK : carry_out(m, m->schedule, &with, w->triggers, &r->history);
    const boil_history *seen = is_likely ? &m->set->likely : &r->history;
    if (outcome == BOIL_OK && w->further && unresolved(seen)) {
        boil_history_free(&r->history);
        r->continued = true;
        outcome = go_on(m, &with, w->triggers, &r->history);
    }
    boil_triggers_move(&m->triggers, &m->latest);
    outcome = or_refused(outcome, r);
    if (outcome == BOIL_OK && (r->continued || !is_likely))
        m->set->count++;
    return outcome;
}

static boil_outcome add_triggers(making *m)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < m->triggers.count && outcome == BOIL_OK; i++) {
        boil_run_of_set *r = next(m, BOIL_CLOSURES_TRIGGER, m->triggers.list[i].time_s);
        outcome = or_refused(boil_trigger_follow(&m->triggers.list[i], &m->own, m->schedule, &r->history), r);
        m->set->count += outcome == BOIL_OK;
    }
    m->triggers.count = 0;
    return outcome;
}

/* Whether anything afloat, were it hot, would leave less than is asked for. */
static bool matters(const boil_history *h, double freeboard_m)
{
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].left_hot_m < freeboard_m)
            return true;
    return false;
}

static bool is_afloat(const making *m)
{
    double freeboard_m = m->plant->limits.freeboard_m;
    bool any = matters(&m->set->likely, freeboard_m);
    for (size_t i = 0; i < m->set->count; i++)
        any = any || matters(&m->set->other[i].history, freeboard_m);
    return any;
}

/* Whether a mild run could still take certainty from something that the likely run says and another run might not. */
static boil_outcome is_in_doubt(const making *m, bool *doubt)
{
    boil_findings found, possible;
    boil_outcome outcome = boil_findings_of_unchecked(m->plant, m->schedule, NULL, &m->set->likely, m->set->other,
                                                      m->set->count, &found, &possible);
    if (outcome != BOIL_OK)
        return outcome;
    bool any_mild = false;
    for (size_t i = 0; i < m->set->count; i++)
        any_mild = any_mild || m->set->other[i].closures == BOIL_CLOSURES_MILD;
    *doubt = false;
    for (size_t i = 0; i < found.count; i++)
        if (found.list[i].of_mixing && (!any_mild || found.list[i].certainty == BOIL_CERTAIN))
            *doubt = true;
    boil_findings_free(&found);
    boil_findings_free(&possible);
    return BOIL_OK;
}

static boil_outcome add_if_wanted(making *m, const wanted_run *w)
{
    bool yes = true;
    boil_outcome outcome = BOIL_OK;
    if (m->set->likely.end == BOIL_RUN_INTERRUPTED)
        return BOIL_OK;
    if (w->when == AFLOAT || w->when == AFLOAT_AND_DOUBT)
        yes = is_afloat(m);
    if (yes && (w->when == DOUBT || w->when == AFLOAT_AND_DOUBT))
        outcome = is_in_doubt(m, &yes);
    return outcome == BOIL_OK && yes ? add(m, w) : outcome;
}

/* Those of the table from one to another. */
static boil_outcome add_those(making *m, boil_closures from, boil_closures to)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; outcome == BOIL_OK && i < sizeof wanted / sizeof wanted[0]; i++)
        if (wanted[i].closures >= from && wanted[i].closures <= to)
            outcome = add_if_wanted(m, &wanted[i]);
    return outcome;
}

static boil_outcome add_grave(making *m)
{
    return add_those(m, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN_8);
}

/* Foam makes the bath rise higher and the water mix in sooner, and that may be the milder: so the grave runs of a scenario that foams
   are made once more with the usual drift; and of one that says its bath lets steam go quickly the likely run. */
static boil_outcome add_usual_drift(making *m)
{
    const boil_plant *own = m->plant;
    boil_plant usual = *own;
    usual.pool.drift = boil_swell_default().drift;
    if (own->pool.drift == usual.pool.drift)
        return BOIL_OK;
    m->plant = &usual;
    m->as.usual_drift = true;
    boil_outcome outcome =
        own->pool.drift < usual.pool.drift ? add_grave(m) : add_those(m, BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_LIKELY);
    m->plant = own;
    m->as.usual_drift = false;
    return outcome;
}

/* The grave runs once more, and what lets go in them. */
static boil_outcome add_grave_again(making *m)
{
    boil_outcome outcome = add_grave(m);
    return outcome == BOIL_OK ? add_triggers(m) : outcome;
}

/* The grave runs once more with the plant's own boiling curve, where one with the graver left what is known, and the likely run does
   not: it says nothing of what would have come. */
static boil_outcome add_own_elevation(making *m)
{
    bool left = false;
    for (size_t i = 0; i < m->set->count; i++)
        left = left || m->set->other[i].history.end == BOIL_RUN_OUT_OF_RANGE;
    if (!left || m->set->likely.end == BOIL_RUN_OUT_OF_RANGE)
        return BOIL_OK;
    m->as.own_elevation = true;
    boil_outcome outcome = add_grave_again(m);
    m->as.own_elevation = false;
    return outcome;
}

/* Where loads go through what floats. */
static boil_outcome add_held_back(making *m)
{
    const boil_schedule *own = m->schedule;
    boil_schedule lighter;
    bool any;
    boil_outcome outcome = boil_held_back(m->set, own, m->plant->limits.freeboard_m, &lighter, &any);
    if (outcome != BOIL_OK || !any)
        return outcome;
    m->schedule = &lighter;
    m->as.held_back = true;
    outcome = add_grave_again(m);
    m->schedule = own;
    m->as.held_back = false;
    boil_schedule_free(&lighter);
    return outcome;
}

static boil_outcome make_all(making *m)
{
    boil_run_options likely = *m->options;
    likely.closures = BOIL_CLOSURES_LIKELY;
    boil_outcome outcome = run(m, m->schedule, &likely, &m->set->likely);
    if (outcome == BOIL_OK)
        outcome = add_those(m, BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_MILD_8);
    if (outcome == BOIL_OK)
        outcome = add_usual_drift(m);
    if (outcome == BOIL_OK)
        outcome = add_triggers(m);
    if (outcome == BOIL_OK)
        outcome = add_own_elevation(m);
    return outcome == BOIL_OK ? add_held_back(m) : outcome;
}

static boil_outcome make(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_run_set *out)
{
    making m = {.plant = p, .schedule = s, .options = o, .set = out};
    boil_outcome outcome = make_all(&m);
    boil_triggers_free(&m.triggers);
    boil_triggers_free(&m.latest);
    boil_simulation_free(m.own);
    if (outcome != BOIL_OK)
        boil_run_set_free(out);
    return outcome;
}

boil_outcome boil_run_set_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_run_set *out)
{
    if (out == NULL)
        return BOIL_BAD_INPUT;
    *out = (boil_run_set){.count = 0};
    return boil_check_case(p, s, o) ? make(p, s, o, out) : BOIL_BAD_INPUT;
}

const boil_history *boil_run_set_least_freeboard(const boil_run_set *set)
{
    const boil_history *least = &set->likely;
    for (size_t i = 0; i < set->count; i++) {
        const boil_run_of_set *r = &set->other[i];
        if (!r->refused && !boil_closures_is_mild(r->closures) &&
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
