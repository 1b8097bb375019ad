#include "analysis/load_size.h"

#include <math.h>

#include "analysis/heater_size.h"
#include "base/bisection.h"
#include "case/checks.h"
#include "case/schedule.h"
#include "sizing/holding.h"
#include "sizing/turning.h"

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_load *repeated; /* NULL: the schedule's loads are asked about */
    boil_run_options options;
    double limit_s;
    bool by_all;  /* laws; else by the grave ones */
    size_t first; /* of the laws to be asked: what broke one trial breaks the next */
    boil_simulation *own;
} capacity_case;

boil_outcome boil_load_size_scaled(const boil_schedule *s, double times, boil_schedule *out)
{
    boil_outcome outcome = boil_schedule_copy(s, out);
    for (size_t i = 0; i < out->count; i++)
        if (out->actions[i].kind == BOIL_ACTION_LOAD) {
            out->actions[i].is.load.mass_kg *= times;
            out->actions[i].is.load.area_m2 *= times;
            out->actions[i].is.load.trapped_kg *= times;
            out->actions[i].is.load.basket_kg *= fmax(1, times);
        }
    return outcome;
}

boil_plant boil_load_size_widened(const boil_plant *p, double times)
{
    boil_plant wide = *p;
    wide.tank.length_m *= sqrt(times);
    wide.tank.width_m *= sqrt(times);
    wide.tank.diameter_m *= sqrt(times);
    return wide;
}

/* With all loads so many times as heavy; where loads like one are repeated, with so many seconds between them. Its schedule is to be
   freed, whatever the outcome. */
static boil_outcome trial_of(capacity_case *c, double x, boil_schedule *trial, boil_holding_case *of)
{
    const bool repeated = c->repeated != NULL;
    *of = (boil_holding_case){c->plant, trial, c->options, c->limit_s, repeated, &c->own};
    return repeated ? boil_load_size_repeated(c->repeated, x, c->limit_s, trial) : boil_load_size_scaled(c->schedule, x, trial);
}

static boil_outcome judge(capacity_case *c, double x, boil_holding *a)
{
    boil_schedule trial;
    boil_holding_case of;
    boil_outcome outcome = trial_of(c, x, &trial, &of);
    if (outcome == BOIL_OK)
        outcome = boil_holding_by_all(&of, 0, a);
    boil_schedule_free(&trial);
    return outcome;
}

static boil_outcome holds(void *context, double x, bool *yes)
{
    capacity_case *c = context;
    boil_schedule trial;
    boil_holding_case of;
    bool breaks = true;
    unsigned grave = 0;
    boil_outcome outcome = trial_of(c, x, &trial, &of);
    if (outcome == BOIL_OK && c->by_all)
        outcome = boil_holding_breaks_by_any(&of, 0, BOIL_HOLDING_LAWS, ~0u, &c->first, &breaks);
    else if (outcome == BOIL_OK) {
        outcome = boil_holding_breaks(&of, 0, BOIL_CLOSURES_GRAVE, ~0u, &grave);
        breaks = grave != 0;
    }
    *yes = outcome == BOIL_OK && !breaks;
    boil_schedule_free(&trial);
    return outcome;
}

/* Heaviest -------------------------------------------------------------------------------------------------------- */

boil_outcome boil_load_size_holds(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                  double times, boil_holding *out)
{
    boil_schedule held;
    boil_outcome outcome = boil_holding_schedule(p, s, &held);
    capacity_case c = {.plant = p, .schedule = &held, .options = *o, .limit_s = limit_s};
    if (outcome == BOIL_OK)
        outcome = judge(&c, times, out);
    boil_simulation_free(c.own);
    boil_schedule_free(&held);
    return outcome;
}

/* The beginning of the schedule tells about where. */
boil_outcome boil_load_size_heaviest(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                     double *times)
{
    const double least = BOIL_LOAD_SIZE_LIGHTEST, most = 1000, precision = 0.002;
    if (times == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    boil_schedule held, brief = {0};
    boil_outcome outcome = boil_holding_schedule(p, s, &held);
    if (outcome == BOIL_OK)
        outcome = boil_holding_brief(&held, limit_s, &brief);
    capacity_case c = {.plant = p, .schedule = &brief, .options = *o, .limit_s = limit_s};
    boil_turning t = {holds, &c, 1, least, most, false, precision};
    if (outcome == BOIL_OK)
        outcome = boil_turning_find(&t, times);
    c.schedule = &held;
    c.by_all = true;
    t.near = *times;
    if (outcome == BOIL_OK)
        outcome = boil_turning_find(&t, times);
    boil_simulation_free(c.own);
    boil_schedule_free(&brief);
    boil_schedule_free(&held);
    return outcome;
}

/* Repetition ------------------------------------------------------------------------------------------------------ */

boil_outcome boil_load_size_watered(const boil_plant *p, boil_plant *out)
{
    if (out == NULL || !boil_check_plant(p))
        return BOIL_BAD_INPUT;
    return boil_holding_plant(p, 0, out);
}

boil_outcome boil_load_size_repeated(const boil_load *l, double interval_s, double limit_s, boil_schedule *out)
{
    if (out == NULL)
        return BOIL_BAD_INPUT;
    boil_schedule_init(out, 0);
    if (l == NULL || !(interval_s >= 1 && isfinite(interval_s)) || !isfinite(limit_s) || boil_load_problem(l))
        return BOIL_BAD_INPUT;
    const double first_s = 60, most = 1e4;
    boil_action action = {.kind = BOIL_ACTION_LOAD, .is.load = *l};
    if (!isfinite(l->immersed_s))
        action.is.load.immersed_s = interval_s;
    action.is.load.latest_s = 0; /* of a clock that is not this schedule's */
    double count = 8 + ceil(action.is.load.immersed_s / interval_s);
    if (!(count <= most))
        return BOIL_BAD_INPUT;
    boil_outcome outcome = BOIL_OK;
    boil_schedule_init(out, first_s + (count - 1) * interval_s + fmax(interval_s, limit_s));
    for (double i = 0; i < count && outcome == BOIL_OK; i++) {
        action.time_s = first_s + i * interval_s;
        outcome = boil_schedule_add(out, &action);
    }
    return outcome;
}

boil_outcome boil_load_size_interval_holds(const boil_plant *p, const boil_load *l, const boil_run_options *o, double limit_s,
                                           double interval_s, boil_holding *out)
{
    capacity_case c = {.plant = p, .repeated = l, .options = *o, .limit_s = limit_s};
    boil_outcome outcome = judge(&c, interval_s, out);
    boil_simulation_free(c.own);
    return outcome;
}

double boil_load_size_soonest(const boil_plant *p, const boil_load *l)
{
    double stays_s = l->immersed_s + l->lowering_s, least_s = fmax(30, l->lowering_s);
    return p->tank.positions > 0 && isfinite(stays_s) ? fmax(least_s, stays_s / p->tank.positions) : least_s;
}

boil_outcome boil_load_size_alone(const boil_plant *p, const boil_load *l, const boil_run_options *o, double limit_s,
                                  boil_holding *out)
{
    const double first_s = 60;
    boil_action action = {.time_s = first_s, .kind = BOIL_ACTION_LOAD, .is.load = *l};
    action.is.load.latest_s = 0;
    boil_schedule one;
    boil_simulation *own = NULL;
    boil_schedule_init(&one, first_s + boil_holding_watched(l, limit_s));
    const boil_holding_case of = {p, &one, *o, limit_s, true, &own};
    boil_outcome outcome = boil_schedule_add(&one, &action);
    if (outcome == BOIL_OK)
        outcome = boil_holding_by_all(&of, 0, out);
    boil_simulation_free(own);
    boil_schedule_free(&one);
    return outcome;
}

/* What one load alone breaks, none of many mends: the first of them is that one. */
static boil_outcome search_interval(capacity_case *c, double soonest_s, double *interval_s)
{
    const double longest_s = BOIL_LOAD_SIZE_LONGEST, precision = 0.01;
    double too_short;
    bool yes = false;
    boil_holding one;
    boil_schedule soonest;
    boil_outcome outcome = boil_load_size_repeated(c->repeated, soonest_s, c->limit_s, &soonest);
    boil_schedule_free(&soonest);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_load_size_alone(c->plant, c->repeated, &c->options, c->limit_s, &one);
    if (outcome == BOIL_OK && one.breaks & (BOIL_BREAKS_SLOW | BOIL_BREAKS_FREEBOARD))
        return BOIL_NO_ROOT;
    boil_bisection s = {holds, c, soonest_s, longest_s, 1.25, precision};
    if (outcome == BOIL_OK)
        outcome = boil_bisect(&s, &too_short, interval_s);
    c->by_all = true;
    boil_turning t = {holds, c, *interval_s, soonest_s, longest_s, true, precision};
    if (outcome == BOIL_OK)
        outcome = holds(c, *interval_s, &yes);
    return outcome == BOIL_OK && !yes ? boil_turning_find(&t, interval_s) : outcome;
}

boil_outcome boil_load_size_interval(const boil_plant *watered, const boil_load *l, const boil_run_options *o, double limit_s,
                                     double *interval_s)
{
    if (interval_s == NULL || !boil_check_plant(watered) || !boil_check_options(o) || l == NULL || boil_load_problem(l) ||
        !(limit_s > 0))
        return BOIL_BAD_INPUT;
    capacity_case c = {.plant = watered, .repeated = l, .options = *o, .limit_s = limit_s};
    *interval_s = (double)NAN;
    boil_outcome outcome = search_interval(&c, boil_load_size_soonest(watered, l), interval_s);
    boil_simulation_free(c.own);
    return outcome;
}

/* Opening the window ---------------------------------------------------------------------------------------------- */

typedef struct {
    const boil_plant *plant;
    const boil_schedule *held;
    boil_run_options options;
    double limit_s;
    double near_W; /* the heat that the trial before needed; 0: none is known */
    bool sure;     /* as the heat is sized by itself too */
    size_t first;  /* of the laws to be asked */
    double more;   /* as boil_heater_size_holds left it */
    boil_simulation *own;
} opening_case;

static boil_outcome none_is_no(boil_outcome outcome)
{
    return outcome == BOIL_NO_ROOT || outcome == BOIL_OUT_OF_RANGE ? BOIL_OK : outcome;
}

/* Whether the smallest heat that brings the boil back in time holds in all else. Where no heat does, it does not; nor where what
   the grave laws need leaves too little room already, by them or the sudden ones: the likely ones hardly do so alone. */
static boil_outcome seems_open(opening_case *c, const boil_holding_case *all, bool *yes)
{
    boil_schedule brief;
    const size_t laws = 2;
    boil_holding_case first = *all;
    double heat_W;
    bool breaks = true;
    *yes = false;
    boil_outcome outcome = boil_holding_brief(all->schedule, c->limit_s, &brief);
    first.schedule = &brief;
    if (outcome == BOIL_OK)
        outcome = boil_heater_size_near(&first, c->near_W, 0.02, &heat_W);
    boil_schedule_free(&brief);
    if (outcome != BOIL_OK)
        return none_is_no(outcome);
    c->near_W = heat_W;
    outcome = boil_holding_breaks_by_any(all, heat_W, laws, ~(unsigned)BOIL_BREAKS_SLOW, &c->first, &breaks);
    *yes = outcome == BOIL_OK && !breaks;
    return outcome;
}

static boil_outcome opens(opening_case *c, const boil_plant *p, const boil_schedule *held, bool *yes)
{
    const boil_holding_case all = {p, held, c->options, c->limit_s, false, &c->own};
    if (!c->sure)
        return seems_open(c, &all, yes);
    *yes = false;
    return none_is_no(boil_heater_size_holds(&all, 0.002, &c->more, &c->first, yes));
}

/* The search follows one of the heats that bring the boil back, the grave laws' own: further on by ever longer steps until it
   holds as its heat is sized by itself. */
static boil_outcome confirm(const boil_bisection *search, opening_case *c, double *answer)
{
    double step = search->ratio > 1 ? 1 + search->precision : 1 - search->precision;
    c->sure = true;
    for (; search->ratio > 1 ? *answer <= search->most : *answer >= search->most; *answer *= step, step *= step) {
        bool yes = false;
        boil_outcome outcome = search->ask(c, *answer, &yes);
        if (outcome != BOIL_OK || yes)
            return outcome;
    }
    return BOIL_NO_ROOT;
}

static boil_outcome opening(opening_case *c, const boil_schedule *s, const boil_bisection *search, double *answer)
{
    boil_schedule held;
    double no;
    boil_outcome outcome = boil_holding_schedule(c->plant, s, &held);
    c->held = &held;
    if (outcome == BOIL_OK)
        outcome = boil_bisect(search, &no, answer);
    if (outcome == BOIL_OK)
        outcome = confirm(search, c, answer);
    boil_simulation_free(c->own);
    boil_schedule_free(&held);
    return outcome;
}

static boil_outcome opens_with_load(void *context, double times, bool *yes)
{
    opening_case *c = context;
    boil_schedule held;
    boil_outcome outcome = boil_load_size_scaled(c->held, times, &held);
    if (outcome == BOIL_OK)
        outcome = opens(c, c->plant, &held, yes);
    boil_schedule_free(&held);
    return outcome;
}

static boil_outcome opens_with_area(void *context, double times, bool *yes)
{
    opening_case *c = context;
    boil_plant p = boil_load_size_widened(c->plant, times);
    return opens(c, &p, c->held, yes);
}

boil_outcome boil_load_size_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *share)
{
    if (share == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    opening_case c = {.plant = p, .options = *o, .limit_s = limit_s, .more = 1};
    boil_bisection search = {opens_with_load, &c, 0.9, 0.01, 0.75, 0.02};
    return opening(&c, s, &search, share);
}

boil_outcome boil_load_size_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *times)
{
    if (times == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    opening_case c = {.plant = p, .options = *o, .limit_s = limit_s, .more = 1};
    boil_bisection search = {opens_with_area, &c, 1.1, 16, 1.3, 0.02};
    return opening(&c, s, &search, times);
}
