#include "analysis/heater_size.h"

#include <math.h>

#include "analysis/steady_state.h"
#include "base/bisection.h"
#include "case/checks.h"
#include "case/schedule.h"

static const double most_W_m2 = 2e6; /* a hundred times what an open surface loses at 140 degC */

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    boil_run_options options;
    double limit_s;
} sized_case;

static sized_case case_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s)
{
    sized_case c = {p, s, *o, limit_s};
    c.options.row_interval_s = 0;
    return c;
}

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

static boil_outcome run_with(const sized_case *c, double heat_W, boil_history *h)
{
    boil_plant trial;
    boil_outcome outcome = boil_heater_size_plant(c->plant, heat_W, &trial);
    return outcome == BOIL_OK ? boil_run_unchecked(&trial, c->schedule, &c->options, h) : outcome;
}

static boil_outcome end_of(const boil_history *h)
{
    return h->end == BOIL_RUN_DONE ? BOIL_OK : BOIL_OUT_OF_RANGE;
}

static boil_outcome ends_boiling(void *context, double heat_W, bool *yes)
{
    boil_history h;
    boil_outcome outcome = run_with(context, heat_W, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = h.quiet_count == 0 || !isnan(h.quiet[h.quiet_count - 1].end_s);
    outcome = end_of(&h);
    boil_history_free(&h);
    return outcome;
}

boil_outcome boil_heater_size_to_boil(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *heat_W)
{
    sized_case c = case_of(p, s, o, 0);
    double area = boil_tank_area(&p->tank), no;
    boil_initial_state bath;
    boil_outcome outcome = boil_plant_initial(p, &bath);
    if (outcome != BOIL_OK)
        return outcome;
    double low = fmax(boil_heater_output(&p->heater, 1, bath.boiling_point_K), 500 * area);
    boil_bisection search = {ends_boiling, &c, low, most_W_m2 * area, 1.5, 0.005};
    return boil_bisect(&search, &no, heat_W);
}

bool boil_heater_size_meets(const boil_history *h, double limit_s)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (!(h->loads[i].recovery_s <= limit_s))
            return false;
    return h->end == BOIL_RUN_DONE;
}

static boil_outcome meets(void *context, double heat_W, bool *yes)
{
    const sized_case *c = context;
    boil_history h;
    boil_outcome outcome = run_with(c, heat_W, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = boil_heater_size_meets(&h, c->limit_s);
    outcome = end_of(&h);
    boil_history_free(&h);
    return outcome;
}

boil_outcome boil_heater_size_for_recovery_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                                     double limit_s, double precision, double *heat_W)
{
    sized_case c = case_of(p, s, o, limit_s);
    double area = boil_tank_area(&p->tank), no;
    boil_steady_state calm;
    boil_outcome outcome = boil_steady_state_at(p, 0, &calm);
    if (outcome != BOIL_OK)
        return outcome;
    boil_bisection search = {meets, &c, fmax(calm.losses_W, 100 * area), most_W_m2 * area, 1.2, precision};
    return boil_bisect(&search, &no, heat_W);
}

boil_outcome boil_heater_size_for_recovery(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                           double limit_s, double precision, double *heat_W)
{
    if (heat_W == NULL || !boil_check_case(p, s, o) || !(limit_s > 0) || !(precision >= 1e-6 && precision <= 0.5))
        return BOIL_BAD_INPUT;
    return boil_heater_size_for_recovery_unchecked(p, s, o, limit_s, precision, heat_W);
}

static boil_outcome boils_over(void *context, double heat_W, bool *yes)
{
    boil_history h;
    boil_outcome outcome = run_with(context, heat_W, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = !isnan(h.summary.overflow_s) || !isnan(h.summary.still_overflow_s);
    outcome = *yes ? BOIL_OK : end_of(&h);
    boil_history_free(&h);
    return outcome;
}

static boil_outcome stays_below(void *context, double heat_W, bool *yes)
{
    boil_outcome outcome = boils_over(context, heat_W, yes);
    *yes = !*yes;
    return outcome;
}

boil_outcome boil_heater_size_staying_below(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                            double from_W, double *heat_W)
{
    if (heat_W == NULL || !boil_check_case(p, s, o) || !(from_W > 0 && isfinite(from_W)))
        return BOIL_BAD_INPUT;
    sized_case c = case_of(p, s, o, 0);
    double no;
    boil_bisection search = {stays_below, &c, from_W, most_W_m2 * boil_tank_area(&p->tank), 1.1, 0.002};
    return boil_bisect(&search, &no, heat_W);
}

boil_outcome boil_heater_size_below_rim(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double from_W,
                                        double *heat_W)
{
    if (heat_W == NULL || !boil_check_case(p, s, o) || !(from_W > 0 && isfinite(from_W)))
        return BOIL_BAD_INPUT;
    sized_case c = case_of(p, s, o, 0);
    double over;
    boil_bisection search = {boils_over, &c, from_W, most_W_m2 * boil_tank_area(&p->tank), 1.1, 0.002};
    boil_outcome outcome = boil_bisect(&search, heat_W, &over);
    if (outcome == BOIL_OK && isnan(*heat_W))
        *heat_W = 0;
    return outcome;
}

/* Is the boil back within the limit after each liquid addition at this action's time? `before`: the run up to then. */
static boil_outcome liquid_does(const boil_simulation *before, boil_schedule *trial, size_t index, double mass_kg,
                                double limit_s, bool *well)
{
    boil_simulation *r;
    boil_history h;
    boil_action *action = &trial->actions[index];
    action->is.liquid.mass_kg = mass_kg;
    boil_outcome outcome = boil_simulation_copy(before, trial, &r);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_finish(r, &h);
    boil_simulation_free(r);
    if (outcome != BOIL_OK)
        return outcome;
    *well = true;
    for (size_t i = 0; i < h.additions_count; i++) {
        const boil_addition_result *a = &h.additions[i];
        if (a->kind == BOIL_ACTION_LIQUID && trial->actions[a->action].time_s == action->time_s && !(a->recovery_s <= limit_s))
            *well = false;
    }
    boil_history_free(&h);
    return BOIL_OK;
}

static boil_outcome bracket_liquid(const boil_simulation *before, boil_schedule *trial, size_t index, double limit_s,
                                   double *mass_kg)
{
    double high = trial->actions[index].is.liquid.mass_kg, low = high / 1000;
    bool well = false;
    boil_outcome outcome = liquid_does(before, trial, index, low, limit_s, &well);
    if (outcome == BOIL_OK && !well)
        outcome = BOIL_NO_ROOT;
    while (outcome == BOIL_OK && high - low > 0.01 * low) {
        double middle = sqrt(low * high);
        outcome = liquid_does(before, trial, index, middle, limit_s, &well);
        *(well ? &low : &high) = middle;
    }
    *mass_kg = low;
    return outcome;
}

/* All trials are one run up to the liquid. */
boil_outcome boil_heater_size_largest_liquid(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             size_t index, double limit_s, double *mass_kg)
{
    boil_schedule trial;
    boil_simulation *before = NULL;
    boil_run_options quick = *o;
    quick.row_interval_s = 0;
    boil_outcome outcome = boil_schedule_copy(s, &trial);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_begin(p, &trial, &quick, &before);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_advance(before, s->actions[index].time_s);
    if (outcome == BOIL_OK)
        outcome = bracket_liquid(before, &trial, index, limit_s, mass_kg);
    boil_simulation_free(before);
    boil_schedule_free(&trial);
    return outcome;
}
