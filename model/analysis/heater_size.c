#include "analysis/heater_size.h"

#include <math.h>

#include "analysis/steady_state.h"
#include "base/bisection.h"
#include "case/checks.h"
#include "case/closures.h"
#include "case/schedule.h"
#include "sizing/turning.h"

static const double most_W_m2 = 2e6;  /* a hundred times what an open surface loses at 140 degC */
static const double least_W_m2 = 100; /* a two-hundredth of it: no search goes below, judgement */

double boil_heater_size_most(const boil_plant *p)
{
    return most_W_m2 * boil_tank_area(&p->tank);
}

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    boil_run_options options;
    boil_simulation *own;
} sized_case;

boil_outcome boil_heater_size_plant(const boil_plant *p, double heat_W, boil_plant *out)
{
    if (out == NULL || p == NULL || !(heat_W >= 0 && isfinite(heat_W)))
        return BOIL_BAD_INPUT;
    boil_initial_state bath;
    boil_outcome outcome = boil_plant_initial(p, &bath);
    *out = *p;
    if (outcome == BOIL_OK)
        out->heater = boil_heater_sized(&p->heater, heat_W, bath.boiling_point_K);
    return outcome;
}

static boil_outcome ends_boiling(void *context, double heat_W, bool *yes)
{
    sized_case *c = context;
    boil_plant trial;
    const boil_history *h;
    boil_outcome outcome = boil_heater_size_plant(c->plant, heat_W, &trial);
    if (outcome == BOIL_OK)
        outcome = boil_run_in(&c->own, &trial, c->schedule, &c->options, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = h->quiet_count == 0 || !isnan(h->quiet[h->quiet_count - 1].end_s);
    return h->end == BOIL_RUN_DONE ? BOIL_OK : BOIL_OUT_OF_RANGE;
}

boil_outcome boil_heater_size_to_boil(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *heat_W)
{
    sized_case c = {p, s, *o, NULL};
    c.options.row_interval_s = 0;
    double area = boil_tank_area(&p->tank), no;
    boil_initial_state bath;
    boil_outcome outcome = boil_plant_initial(p, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    double low = fmax(boil_heater_output(&p->heater, 1, bath.boiling_point_K), 500 * area);
    boil_bisection search = {ends_boiling, &c, low, most_W_m2 * area, 1.5, 0.005};
    outcome = boil_bisect(&search, &no, heat_W);
    boil_simulation_free(c.own);
    return outcome;
}

typedef struct {
    double heat_W; /* 0: none yet */
    unsigned breaks;
} asked;

/* What was answered is not asked again: the last, and by each law the last heat that is enough, where a search ends. */
typedef struct {
    boil_holding_case of;
    size_t law;
    asked last, enough[BOIL_HOLDING_LAWS];
} held_case;

static boil_outcome is_enough(void *context, double heat_W, bool *yes)
{
    held_case *c = context;
    asked *enough = &c->enough[c->law];
    if (enough->heat_W == heat_W)
        c->last = *enough;
    else if (c->last.heat_W != heat_W) {
        asked now = {.heat_W = heat_W};
        boil_outcome outcome = boil_holding_breaks(&c->of, heat_W, boil_holding_laws[c->law], BOIL_BREAKS_SLOW, &now.breaks);
        if (outcome != BOIL_OK)
            return outcome;
        c->last = now;
    }
    *yes = !(c->last.breaks & BOIL_BREAKS_SLOW);
    if (*yes)
        *enough = c->last;
    return BOIL_OK;
}

/* Whether the run with the most heat that was asked leaves what is known. */
static boil_outcome none_does(const held_case *c)
{
    boil_holding a;
    boil_outcome outcome = boil_holding_by(&c->of, c->last.heat_W, boil_holding_laws[c->law], &a);
    return outcome != BOIL_OK ? outcome : a.breaks & BOIL_BREAKS_KNOWN ? BOIL_OUT_OF_RANGE : BOIL_NO_ROOT;
}

/* From the losses up, by the grave laws. */
static boil_outcome first_guess(held_case *c, double precision, double *heat_W)
{
    const boil_plant *p = c->of.plant;
    boil_plant grave = boil_closures_put(BOIL_CLOSURES_GRAVE, p);
    double area = boil_tank_area(&p->tank), no;
    boil_steady_state calm;
    boil_outcome outcome = boil_steady_state_at(&grave, 0, &calm);
    if (outcome != BOIL_OK)
        return outcome;
    boil_bisection search = {is_enough, c, fmax(calm.losses_W, least_W_m2 * area), most_W_m2 * area, 1.2, precision};
    outcome = boil_bisect(&search, &no, heat_W);
    return outcome == BOIL_NO_ROOT ? none_does(c) : outcome;
}

/* By one law, near that heat and from least_W on. */
static boil_outcome settle(held_case *c, size_t law, double precision, double least_W, double *heat_W)
{
    bool yes = false;
    boil_turning t = {is_enough, c, *heat_W, least_W, boil_heater_size_most(c->of.plant), true, precision};
    boil_outcome outcome = BOIL_OK;
    c->law = law;
    c->last.heat_W = 0; /* by another */
    if (law > 0)
        outcome = is_enough(c, *heat_W, &yes);
    return outcome == BOIL_OK && !yes ? boil_turning_find(&t, heat_W) : outcome;
}

boil_outcome boil_heater_size_near(const boil_holding_case *brief, double near_W, double precision, double *heat_W)
{
    held_case c = {.of = *brief};
    *heat_W = near_W;
    if (!(near_W > 0))
        return first_guess(&c, precision, heat_W);
    return settle(&c, 0, precision, least_W_m2 * boil_tank_area(&brief->plant->tank), heat_W);
}

/* About where: what the schedule's beginning needs by the grave laws. */
static boil_outcome begin_with(const held_case *c, double precision, double *heat_W)
{
    boil_schedule brief;
    held_case first = {.of = c->of};
    boil_outcome outcome = boil_holding_brief(c->of.schedule, c->of.limit_s, &brief);
    first.of.schedule = &brief;
    if (outcome == BOIL_OK)
        outcome = first_guess(&first, precision, heat_W);
    boil_schedule_free(&brief);
    return outcome;
}

/* With the whole schedule what the grave laws need near so many times that; then as much as the other laws ask for besides. Where
   anything heeded is broken by the grave laws with what they need, no further. */
static boil_outcome size(held_case *c, double precision, unsigned heeded, double *more, double *heat_W)
{
    double begins_W = 0;
    boil_outcome outcome = begin_with(c, precision, &begins_W);
    *heat_W = *more * begins_W;
    if (outcome == BOIL_OK)
        outcome = settle(c, 0, precision, *heat_W / 2, heat_W);
    *more = outcome == BOIL_OK ? *heat_W / begins_W : *more;
    for (size_t i = 1; i < BOIL_HOLDING_LAWS && outcome == BOIL_OK && !(c->enough[0].breaks & heeded); i++)
        outcome = settle(c, i, precision, *heat_W, heat_W);
    return outcome;
}

boil_outcome boil_heater_size_for_recovery_unchecked(const boil_holding_case *of, double precision, double *heat_W)
{
    boil_schedule held;
    held_case c = {.of = *of};
    double more = 1;
    boil_outcome outcome = boil_holding_schedule(of->plant, of->schedule, &held);
    c.of.schedule = &held;
    if (outcome == BOIL_OK)
        outcome = size(&c, precision, 0, &more, heat_W);
    boil_schedule_free(&held);
    return outcome;
}

double boil_heater_rounded_up(double heat_W)
{
    double digit = pow(10, floor(log10(heat_W)) - 3);
    return ceil(heat_W / digit - 1e-9) * digit;
}

/* What the search did not ask of the heat where it ended, and of as much more as another search may end at: a hair of it decides
   over a hair of freeboard. */
boil_outcome boil_heater_size_holds(const boil_holding_case *of, double precision, double *more, size_t *first, bool *yes)
{
    held_case c = {.of = *of};
    double heat_W = 0;
    bool breaks = false;
    boil_outcome outcome = size(&c, precision, ~0u, more, &heat_W);
    *yes = false;
    if (outcome == BOIL_OK)
        heat_W = boil_heater_rounded_up((1 + precision) * heat_W);
    for (size_t i = 0; i < BOIL_HOLDING_LAWS && outcome == BOIL_OK; i++)
        breaks = breaks || c.enough[i].breaks != 0;
    for (size_t i = 0; i < BOIL_HOLDING_LAWS && outcome == BOIL_OK && !breaks; i++) {
        size_t law = (*first + i) % BOIL_HOLDING_LAWS;
        unsigned all = c.enough[law].breaks;
        if (c.enough[law].heat_W != heat_W)
            outcome = boil_holding_breaks(of, heat_W, boil_holding_laws[law], ~0u, &all);
        breaks = all != 0;
        if (breaks)
            *first = law;
    }
    *yes = outcome == BOIL_OK && !breaks;
    return outcome;
}

boil_outcome boil_heater_size_for_recovery(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                           double limit_s, double precision, double *heat_W)
{
    if (heat_W == NULL || !boil_check_case(p, s, o) || !(limit_s > 0) || !(precision >= 1e-6 && precision <= 0.5))
        return BOIL_BAD_INPUT;
    boil_simulation *own = NULL;
    const boil_holding_case of = {p, s, *o, limit_s, false, &own};
    boil_outcome outcome = boil_heater_size_for_recovery_unchecked(&of, precision, heat_W);
    boil_simulation_free(own);
    return outcome;
}

/* All trials are one run up to the liquid. */
typedef struct {
    boil_schedule schedule;
    size_t index; /* of the action that is tried */
    double limit_s;
    boil_simulation *before, *own; /* up to then, and from there on */
} liquid_case;

/* Is the boil back within the limit after each liquid addition at this action's time? */
static boil_outcome liquid_does(liquid_case *c, double mass_kg, bool *well)
{
    boil_action *action = &c->schedule.actions[c->index];
    action->is.liquid.mass_kg = mass_kg;
    boil_outcome outcome = boil_simulation_copy(c->before, &c->schedule, &c->own);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(c->own);
    if (outcome != BOIL_OK)
        return outcome;
    const boil_history *h = boil_simulation_so_far(c->own);
    *well = true;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        bool then = c->schedule.actions[a->action].time_s == action->time_s;
        if (a->kind == BOIL_ACTION_LIQUID && then && !(a->recovery_s <= c->limit_s))
            *well = false;
    }
    return BOIL_OK;
}

static boil_outcome bracket_liquid(liquid_case *c, double *mass_kg)
{
    double high = c->schedule.actions[c->index].is.liquid.mass_kg, low = high / 1000;
    bool well = false;
    boil_outcome outcome = liquid_does(c, low, &well);
    if (outcome == BOIL_OK && !well)
        outcome = BOIL_NO_ROOT;
    while (outcome == BOIL_OK && high - low > 0.01 * low) {
        double middle = sqrt(low * high);
        outcome = liquid_does(c, middle, &well);
        *(well ? &low : &high) = middle;
    }
    *mass_kg = low;
    return outcome;
}

boil_outcome boil_heater_size_largest_liquid(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             size_t index, double limit_s, double *mass_kg)
{
    liquid_case c = {.index = index, .limit_s = limit_s};
    boil_run_options quick = *o;
    quick.row_interval_s = 0;
    boil_outcome outcome = boil_schedule_copy(s, &c.schedule);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_begin(p, &c.schedule, &quick, &c.before);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_advance(c.before, s->actions[index].time_s);
    if (outcome == BOIL_OK)
        outcome = bracket_liquid(&c, mass_kg);
    boil_simulation_free(c.before);
    boil_simulation_free(c.own);
    boil_schedule_free(&c.schedule);
    return outcome;
}
