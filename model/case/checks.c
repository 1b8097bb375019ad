#include "case/checks.h"

#include <math.h>

#include "acts/tap.h"
#include "acts/wait.h"
#include "case/schedule.h"

static bool within(double x, double low, double high)
{
    return x >= low && x <= high;
}

bool boil_check_plant(const boil_plant *p)
{
    return p != NULL && boil_plant_problem(p) == NULL;
}

static bool is_pour(double mass_kg, double over_s)
{
    return mass_kg > 0 && isfinite(mass_kg) && over_s > 0 && isfinite(over_s);
}

static bool is_blend(const double blend[BOIL_SALTS])
{
    double sum = 0;
    for (int i = 0; i < BOIL_SALTS; i++) {
        if (!(blend[i] >= 0))
            return false;
        sum += blend[i];
    }
    return within(sum, 1 - 1e-6, 1 + 1e-6);
}

static bool is_liquid(const boil_action_liquid *l)
{
    return is_pour(l->mass_kg, l->over_s) && within(l->temperature_K, 273.15, 473.15) && within(l->salt_fraction, 0, 0.9) &&
           (l->salt_fraction == 0 || is_blend(l->blend));
}

static bool is_heat(const boil_action_heat *h)
{
    return (unsigned)h->order <= BOIL_HEAT_DIAL && (h->order != BOIL_HEAT_TURN || within(h->dial, 0, 1)) &&
           (h->order != BOIL_HEAT_THERMOSTAT || within(h->set_point_K, 273.15, 473.15));
}

bool boil_check_action(const boil_action *a)
{
    if (a == NULL || !(a->time_s >= 0 && isfinite(a->time_s)) || !boil_wait_is_sound(&a->wait) || !boil_tap_is_sound(&a->pour))
        return false;
    const boil_action_water *w = &a->is.water;
    const boil_action_salts *s = &a->is.salts;
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        return boil_load_problem(&a->is.load) == NULL;
    case BOIL_ACTION_WATER:
        return is_pour(w->mass_kg, w->over_s) && within(w->temperature_K, 273.15, 473.15);
    case BOIL_ACTION_SALTS:
        return is_pour(s->mass_kg, s->over_s) && within(s->temperature_K, 243.15, 473.15) && is_blend(s->blend);
    case BOIL_ACTION_LIQUID:
        return is_liquid(&a->is.liquid);
    case BOIL_ACTION_BAIL:
    case BOIL_ACTION_DRAIN:
        return is_pour(a->is.take.volume_m3, a->is.take.over_s) && a->pour.goal != BOIL_GOAL_BOILING_POINT;
    case BOIL_ACTION_RETURN:
        return a->name > 0 && is_pour(1, a->is.back.over_s) &&
               (a->is.back.temperature_K == 0 || within(a->is.back.temperature_K, 273.15, 473.15));
    case BOIL_ACTION_STIR:
        return is_pour(1, a->is.stir_s);
    case BOIL_ACTION_HEAT:
        return is_heat(&a->is.heat);
    case BOIL_ACTION_LIFT:
    case BOIL_ACTION_MIXER:
    case BOIL_ACTION_LID:
    case BOIL_ACTION_EXHAUST:
    case BOIL_ACTION_CRUST:
        return true;
    }
    return false;
}

/* What it follows stands before it; only a load takes the boil that is to be back. */
static bool is_followable(const boil_schedule *s, size_t i)
{
    const boil_wait *w = &s->actions[i].wait;
    size_t after = w->follows ? boil_schedule_followed(s, i) : i;
    return !w->follows || (after < i && (w->state != BOIL_WAIT_BACK || s->actions[after].kind == BOIL_ACTION_LOAD));
}

bool boil_check_schedule(const boil_schedule *s)
{
    if (s == NULL || !within(s->duration_s, 0, BOIL_LONGEST_RUN_S) || !(s->idle_after_s >= 0) ||
        (s->count > 0 && s->actions == NULL))
        return false;
    for (size_t i = 0; i < s->count; i++)
        if (!boil_check_action(&s->actions[i]) || !is_followable(s, i) ||
            (i > 0 && s->actions[i].time_s < s->actions[i - 1].time_s))
            return false;
    return true;
}

bool boil_check_options(const boil_run_options *o)
{
    return o != NULL && (unsigned)o->closures < BOIL_CLOSURES && within(o->tolerance, 1e-30, 1e-2) && o->row_interval_s >= 0 &&
           isfinite(o->row_interval_s) && o->row_fast_s >= 0 && isfinite(o->row_fast_s) && (unsigned)o->traced <= BOIL_CLOSURES;
}

bool boil_check_case(const boil_plant *p, const boil_schedule *s, const boil_run_options *o)
{
    return boil_check_plant(p) && boil_check_schedule(s) && boil_check_options(o) &&
           (o->row_interval_s == 0 || s->duration_s / o->row_interval_s <= BOIL_MOST_ROWS);
}
