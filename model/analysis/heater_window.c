#include "analysis/heater_window.h"

#include <math.h>

#include "analysis/heater_size.h"
#include "sizing/leaving.h"
#include "sizing/most_heat.h"

static const double precision = 0.002;

/* A case to be sized for. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_run_options *run;
    double limit_s;
    boil_simulation **own;
} sized_case;

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

static boil_holding_case holding_of(const sized_case *c, const boil_schedule *held)
{
    return (boil_holding_case){c->plant, held, *c->run, c->limit_s, false, c->own};
}

/* NaN: no heat is too much, as far as is known. */
static boil_outcome most(boil_leaving *l, double freeboard_m, boil_window_end *end)
{
    double most_W = boil_heater_size_most(l->of->plant);
    boil_outcome result = boil_leaving_most(l, end->from_W, most_W, freeboard_m, &end->heat_W);
    end->rim = BOIL_RIM_AT;
    if (!is_no(result))
        return result;
    end->rim = result == BOIL_OUT_OF_RANGE ? BOIL_RIM_BEYOND : BOIL_RIM_NEVER;
    end->heat_W = (double)NAN;
    return BOIL_OK;
}

static boil_outcome find_end(const boil_holding_case *of, boil_closures laws, double heat_W, boil_window_end *end,
                             boil_window_end *leaving)
{
    double limit_m = of->plant->limits.freeboard_m;
    boil_leaving l = {.of = of, .laws = laws};
    boil_left at;
    boil_outcome result = boil_leaving_at(&l, heat_W, &at);
    if (result != BOIL_OK)
        return result;
    end->from_W = at.freeboard_m < 0 ? (double)NAN : heat_W;
    leaving->from_W = at.freeboard_m >= limit_m ? heat_W : (double)NAN;
    if (!isnan(end->from_W))
        result = most(&l, 0, end);
    if (result == BOIL_OK && !isnan(leaving->from_W))
        result = most(&l, limit_m, leaving);
    return result;
}

/* What the grave laws allow of the beginning, they or the sudden ones may not in all that is done; and never more than the likely
   ones. */
static boil_outcome settle(const boil_holding_case *all, double freeboard_m, double left_m, const boil_window_end *likely,
                           boil_window_end *end)
{
    if (boil_window_end_shut(end) || end->rim != BOIL_RIM_AT)
        return BOIL_OK;
    boil_outcome result = boil_most_heat_leaving(all, freeboard_m, end->from_W, left_m, end->heat_W, &end->heat_W);
    if (result == BOIL_OK && likely->rim == BOIL_RIM_AT && !boil_window_end_shut(likely))
        end->heat_W = fmin(end->heat_W, likely->heat_W);
    return result;
}

/* The likely end is of the schedule's beginning: its later loads hardly swell higher. */
static boil_outcome find_ends(const sized_case *c, const boil_schedule *held, boil_heater_window *a)
{
    boil_schedule brief;
    boil_outcome result = boil_holding_brief(held, c->limit_s, &brief);
    const boil_holding_case of = holding_of(c, &brief), all = holding_of(c, held);
    const boil_window_end none = {BOIL_RIM_AT, (double)NAN, (double)NAN};
    a->likely = a->possible = a->leaves_likely = a->leaves_possible = none;
    if (result == BOIL_OK)
        result = find_end(&of, BOIL_CLOSURES_LIKELY, a->heat_W, &a->likely, &a->leaves_likely);
    if (result == BOIL_OK)
        result = find_end(&of, BOIL_CLOSURES_GRAVE, a->heat_W, &a->possible, &a->leaves_possible);
    boil_schedule_free(&brief);
    if (a->at.breaks & BOIL_BREAKS_FREEBOARD) /* by any law, in all of the schedule: more than was asked here */
        a->leaves_possible = none;
    if (a->at.freeboard_min_m < 0)
        a->possible = none;
    if (result == BOIL_OK)
        result = settle(&all, c->plant->limits.freeboard_m, a->at.freeboard_min_m, &a->leaves_likely, &a->leaves_possible);
    return result == BOIL_OK ? settle(&all, 0, a->at.freeboard_min_m, &a->likely, &a->possible) : result;
}

/* A control of the plant's own may let in too little; one that is put in its place is as large as the heat asks. */
static boil_outcome find_strength(const sized_case *c, const boil_schedule *held, boil_heater_window *a)
{
    const boil_holding_case all = holding_of(c, held);
    const boil_window_end *e = &a->leaves_possible;
    double most_W = e->rim == BOIL_RIM_AT ? e->heat_W : boil_heater_size_most(c->plant), band_W = most_W;
    boil_outcome result = BOIL_OK;
    if (c->plant->control.mode != BOIL_WATER_CONTROL_NONE && !boil_heater_window_shut(a))
        result = boil_most_heat_in_band(&all, a->heat_W, most_W, &band_W);
    a->strength_W = band_W < most_W ? band_W : (double)NAN;
    return result;
}

/* Nothing that opens it is no failure. */
static boil_outcome or_none(boil_outcome found, double *answer)
{
    if (found != BOIL_NO_ROOT)
        return found;
    *answer = (double)NAN;
    return BOIL_OK;
}

boil_outcome boil_heater_window_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             double limit_s, boil_heater_window *w)
{
    if (!boil_heater_window_shut(w))
        return BOIL_OK;
    return or_none(boil_load_size_opening_load(p, s, o, limit_s, &w->opening_load), &w->opening_load);
}

boil_outcome boil_heater_window_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             double limit_s, boil_heater_window *w)
{
    if (!boil_heater_window_shut(w))
        return BOIL_OK;
    return or_none(boil_load_size_opening_area(p, s, o, limit_s, &w->opening_area), &w->opening_area);
}

static boil_outcome hold(const sized_case *c, boil_heater_window *a)
{
    boil_outcome result = boil_steady_state_hold(c->plant, c->run, &a->hold_W);
    if (result != BOIL_OK)
        a->hold_W = (double)NAN;
    return result == BOIL_NO_MEMORY ? result : BOIL_OK;
}

/* Of a bath that cannot stand cold there is no time to tell. */
static boil_outcome heat_up(const sized_case *c, boil_heater_window *a)
{
    boil_outcome result = boil_steady_state_heat_up(c->plant, c->run, a->heat_W, &a->heat_up_s);
    if (result != BOIL_OK)
        a->heat_up_s = (double)NAN;
    return result == BOIL_NO_MEMORY ? result : BOIL_OK;
}

static boil_outcome calm_of(const sized_case *c, boil_heater_window *a)
{
    const boil_plant *p = c->plant;
    bool fuel = p->heater.source != BOIL_HEAT_STEAM;
    a->input_W = fuel ? a->heat_W / p->heater.efficiency : (double)NAN;
    boil_outcome result = boil_steady_state_at(p, a->heat_W, &a->calm);
    a->own_W = boil_heater_output(&p->heater, 1, a->calm.boiling_point_K);
    if (result == BOIL_OK)
        result = heat_up(c, a);
    return result == BOIL_OK ? hold(c, a) : result;
}

static boil_outcome around_heat(const sized_case *c, boil_heater_window *a)
{
    boil_schedule held;
    boil_outcome result = boil_holding_schedule(c->plant, c->schedule, &held);
    const boil_holding_case of = holding_of(c, &held);
    if (result == BOIL_OK)
        result = calm_of(c, a);
    if (result == BOIL_OK)
        result = boil_holding_run(&of, a->heat_W, BOIL_CLOSURES_GRAVE, &a->proof);
    if (result == BOIL_OK) {
        a->at = boil_holding_told(&of, &a->proof);
        result = boil_holding_by_others(&of, a->heat_W, &a->at);
    }
    if (result == BOIL_OK)
        result = boil_holding_run(&of, 0.99 * a->heat_W, BOIL_CLOSURES_GRAVE, &a->less);
    if (result == BOIL_OK)
        result = find_ends(c, &held, a);
    if (result == BOIL_OK)
        result = find_strength(c, &held, a);
    boil_schedule_free(&held);
    return result;
}

boil_outcome boil_heater_window_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                   boil_heater_window *out)
{
    const double none = (double)NAN;
    boil_simulation *own = NULL;
    const sized_case c = {p, s, o, limit_s, &own};
    *out = (boil_heater_window){.heat_W = none,
                                .input_W = none,
                                .hold_W = none,
                                .heat_up_s = none,
                                .opening_load = none,
                                .opening_area = none,
                                .strength_W = none};
    boil_outcome result = boil_heater_size_for_recovery(p, s, o, limit_s, precision, &out->heat_W);
    if (is_no(result)) {
        out->found = result == BOIL_OUT_OF_RANGE ? BOIL_WINDOW_BEYOND : BOIL_WINDOW_NONE;
        result = BOIL_OK;
    } else if (result == BOIL_OK) {
        out->heat_W = boil_heater_rounded_up(out->heat_W);
        result = around_heat(&c, out);
    }
    boil_simulation_free(own);
    if (result != BOIL_OK)
        boil_heater_window_free(out);
    return result;
}

void boil_heater_window_free(boil_heater_window *w)
{
    boil_history_free(&w->proof);
    boil_history_free(&w->less);
}

bool boil_window_end_shut(const boil_window_end *e)
{
    return isnan(e->from_W);
}

bool boil_heater_window_shut(const boil_heater_window *a)
{
    return a->found != BOIL_WINDOW_FOUND || a->at.breaks != 0;
}

bool boil_heater_window_never_stops(const boil_heater_window *a)
{
    for (size_t i = 0; i < a->proof.loads_count; i++)
        if (!isnan(a->proof.loads[i].boil_lost_s))
            return false;
    return true;
}

/* What is to be seen: both ends of the window with room beyond them, and the heat of the scenario. */
static void set_range(const boil_heater_window *a, double losses_W, boil_heater_curve *c)
{
    double need_W = a->found == BOIL_WINDOW_FOUND ? a->heat_W : 2 * losses_W;
    double seen_W = 2 * need_W;
    if (a->found == BOIL_WINDOW_FOUND && a->likely.rim == BOIL_RIM_AT && !boil_window_end_shut(&a->likely))
        seen_W = 1.15 * a->likely.heat_W;
    if (a->own_W > seen_W && a->own_W < 3 * seen_W)
        seen_W = 1.05 * a->own_W;
    c->from_W = fmin(losses_W, 0.9 * need_W);
    c->to_W = fmax(seen_W, 1.3 * need_W);
}

static boil_outcome add(const boil_holding_case *of, double heat_W, boil_heater_curve *c)
{
    boil_holding at;
    boil_outcome result = boil_holding_by(of, heat_W, BOIL_CLOSURES_GRAVE, &at);
    if (result != BOIL_OK)
        return result;
    bool over = at.freeboard_min_m < 0, beyond = at.breaks & BOIL_BREAKS_KNOWN;
    c->points[c->count++] = (boil_curve_point){heat_W, beyond && !over ? (double)NAN : at.slowest_s,
                                               over     ? BOIL_CURVE_OVER
                                               : beyond ? BOIL_CURVE_BEYOND
                                                        : BOIL_CURVE_BELOW};
    return BOIL_OK;
}

static boil_outcome add_all(const boil_holding_case *of, double own_W, boil_heater_curve *out)
{
    const int even = BOIL_CURVE_POINTS - 1;
    double step = pow(out->to_W / out->from_W, 1.0 / (even - 1));
    boil_outcome result = BOIL_OK;
    for (int i = 0; i < even && result == BOIL_OK; i++) {
        double heat_W = out->from_W * pow(step, i);
        if (own_W > 0 && own_W <= heat_W) {
            result = add(of, own_W, out);
            own_W = 0;
        }
        if (result == BOIL_OK)
            result = add(of, heat_W, out);
    }
    return result;
}

boil_outcome boil_heater_curve_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                  const boil_heater_window *w, boil_heater_curve *out)
{
    boil_simulation *own = NULL;
    const sized_case sized = {p, s, o, limit_s, &own};
    boil_steady_state calm;
    boil_schedule held = {0}, brief = {0};
    const boil_holding_case of = holding_of(&sized, &brief);
    boil_outcome result = boil_steady_state_at(p, 0, &calm);
    *out = (boil_heater_curve){0};
    if (result != BOIL_OK)
        return result;
    set_range(w, calm.losses_W, out);
    result = boil_holding_schedule(p, s, &held);
    if (result == BOIL_OK)
        result = boil_holding_brief(&held, limit_s, &brief);
    if (result == BOIL_OK)
        result = add_all(&of, w->found == BOIL_WINDOW_FOUND ? w->heat_W : 0, out);
    boil_simulation_free(own);
    boil_schedule_free(&brief);
    boil_schedule_free(&held);
    return result;
}
