#include "analysis/load_size.h"

#include <math.h>

#include "analysis/heater_size.h"
#include "analysis/steady_state.h"
#include "base/bisection.h"
#include "base/constants.h"
#include "case/checks.h"
#include "case/schedule.h"

typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_load *load;
    boil_run_options options;
    double limit_s;
} capacity_case;

static capacity_case case_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s)
{
    capacity_case c = {.plant = p, .schedule = s, .options = *o, .limit_s = limit_s};
    c.options.row_interval_s = 0;
    return c;
}

static bool below_rim(const boil_history *h)
{
    return isnan(h->summary.overflow_s) && isnan(h->summary.still_overflow_s);
}

boil_outcome boil_load_size_scaled(const boil_schedule *s, double times, boil_schedule *out)
{
    boil_outcome outcome = boil_schedule_copy(s, out);
    for (size_t i = 0; i < out->count; i++)
        if (out->actions[i].kind == BOIL_ACTION_LOAD) {
            out->actions[i].is.load.mass_kg *= times;
            out->actions[i].is.load.area_m2 *= times;
            out->actions[i].is.load.trapped_kg *= times;
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

/* Heaviest -------------------------------------------------------------------------------------------------------- */

static boil_outcome holds(const capacity_case *c, double times, bool *yes)
{
    boil_schedule trial;
    boil_history h;
    boil_outcome outcome = boil_load_size_scaled(c->schedule, times, &trial);
    if (outcome == BOIL_OK)
        outcome = boil_run_unchecked(c->plant, &trial, &c->options, &h);
    boil_schedule_free(&trial);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = boil_heater_size_meets(&h, c->limit_s) && below_rim(&h);
    outcome = h.end == BOIL_RUN_DONE ? BOIL_OK : BOIL_OUT_OF_RANGE;
    boil_history_free(&h);
    return outcome;
}

static boil_outcome ask_holds(void *context, double times, bool *yes)
{
    return holds(context, times, yes);
}

static boil_outcome ask_too_heavy(void *context, double times, bool *yes)
{
    bool held = false;
    boil_outcome outcome = holds(context, times, &held);
    *yes = !held;
    return outcome;
}

boil_outcome boil_load_size_heaviest(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                     double *times)
{
    if (times == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    capacity_case c = case_of(p, s, o, limit_s);
    boil_bisection heavier = {ask_too_heavy, &c, 1, 1000, 1.2, 0.002}, lighter = {ask_holds, &c, 1, 0.001, 0.8, 0.002};
    bool held = false;
    double other;
    boil_outcome outcome = holds(&c, 1, &held);
    if (outcome != BOIL_OK)
        return outcome;
    return held ? boil_bisect(&heavier, times, &other) : boil_bisect(&lighter, &other, times);
}

/* Repetition ------------------------------------------------------------------------------------------------------ */

boil_outcome boil_load_size_watered(const boil_plant *p, boil_plant *out)
{
    if (out == NULL || !boil_check_plant(p))
        return BOIL_BAD_INPUT;
    boil_initial_state bath;
    boil_steady_state calm;
    *out = *p;
    if (p->control.mode != BOIL_WATER_CONTROL_NONE)
        return BOIL_OK;
    boil_outcome outcome = boil_plant_initial(p, &bath);
    if (outcome == BOIL_OK)
        outcome = boil_steady_state_at(p, boil_heater_output(&p->heater, 1, bath.boiling_point_K), &calm);
    if (outcome != BOIL_OK)
        return outcome;
    out->control = boil_water_control_default();
    out->control.mode = BOIL_WATER_CONTROL_ON_OFF;
    out->control.set_point_K = bath.boiling_point_K;
    out->control.rate_kg_s = 3 * fmax(calm.steam_kg_s + calm.evaporated_kg_s, 1e-5);
    out->control.water_K = fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    return BOIL_OK;
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

static bool in_band(const boil_summary *s, const boil_limits *l)
{
    return s->temperature_min_K.value >= l->boiling_point_low_K && s->temperature_max_K.value <= l->boiling_point_high_K;
}

static bool none_meets_quiet(const boil_history *h)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (h->loads[i].was_quiet)
            return false;
    return true;
}

static boil_outcome repeats(void *context, double interval_s, bool *yes)
{
    const capacity_case *c = context;
    boil_schedule s;
    boil_history h;
    boil_outcome outcome = boil_load_size_repeated(c->load, interval_s, c->limit_s, &s);
    if (outcome == BOIL_OK)
        outcome = boil_run_unchecked(c->plant, &s, &c->options, &h);
    boil_schedule_free(&s);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = boil_heater_size_meets(&h, c->limit_s) && below_rim(&h) && none_meets_quiet(&h) &&
           in_band(&h.summary, &c->plant->limits);
    boil_history_free(&h);
    return BOIL_OK;
}

boil_outcome boil_load_size_interval(const boil_plant *watered, const boil_load *l, const boil_run_options *o, double limit_s,
                                     double *interval_s)
{
    if (interval_s == NULL || !boil_check_plant(watered) || !boil_check_options(o) || l == NULL || boil_load_problem(l) ||
        !(limit_s > 0))
        return BOIL_BAD_INPUT;
    capacity_case c = case_of(watered, NULL, o, limit_s);
    double too_short;
    c.load = l;
    boil_bisection s = {repeats, &c, fmax(30, l->lowering_s), 12 * 3600, 1.25, 0.01};
    return boil_bisect(&s, &too_short, interval_s);
}

/* Opening the window ---------------------------------------------------------------------------------------------- */

/* Whether the smallest heat that brings the boil back in time stays below the rim. Where no heat does, it does not. */
static boil_outcome opens(const capacity_case *c, const boil_plant *p, const boil_schedule *s, bool *yes)
{
    double heat;
    boil_plant sized;
    boil_history h;
    *yes = false;
    boil_outcome outcome = boil_heater_size_for_recovery_unchecked(p, s, &c->options, c->limit_s, 0.02, &heat);
    if (outcome == BOIL_NO_ROOT || outcome == BOIL_OUT_OF_RANGE)
        return BOIL_OK;
    if (outcome == BOIL_OK)
        outcome = boil_heater_size_plant(p, heat, &sized);
    if (outcome == BOIL_OK)
        outcome = boil_run_unchecked(&sized, s, &c->options, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *yes = below_rim(&h);
    boil_history_free(&h);
    return BOIL_OK;
}

static boil_outcome opens_with_load(void *context, double times, bool *yes)
{
    const capacity_case *c = context;
    boil_schedule s;
    boil_outcome outcome = boil_load_size_scaled(c->schedule, times, &s);
    if (outcome == BOIL_OK)
        outcome = opens(c, c->plant, &s, yes);
    boil_schedule_free(&s);
    return outcome;
}

static boil_outcome opens_with_area(void *context, double times, bool *yes)
{
    const capacity_case *c = context;
    boil_plant p = boil_load_size_widened(c->plant, times);
    return opens(c, &p, c->schedule, yes);
}

boil_outcome boil_load_size_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *share)
{
    if (share == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    capacity_case c = case_of(p, s, o, limit_s);
    double too_heavy;
    boil_bisection search = {opens_with_load, &c, 0.9, 0.01, 0.75, 0.02};
    return boil_bisect(&search, &too_heavy, share);
}

boil_outcome boil_load_size_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                         double *times)
{
    if (times == NULL || !boil_check_case(p, s, o) || !(limit_s > 0))
        return BOIL_BAD_INPUT;
    capacity_case c = case_of(p, s, o, limit_s);
    double too_small;
    boil_bisection search = {opens_with_area, &c, 1.1, 16, 1.3, 0.02};
    return boil_bisect(&search, &too_small, times);
}
