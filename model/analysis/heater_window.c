#include "analysis/heater_window.h"

#include <math.h>

static const double precision = 0.002;

/* A case to be sized for. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_run_options *run;
    double limit_s;
} sized_case;

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_OUT_OF_RANGE;
}

/* To four digits. */
static double rounded_up(double heat_W)
{
    double digit = pow(10, floor(log10(heat_W)) - 3);
    return ceil(heat_W / digit - 1e-9) * digit;
}

static boil_outcome carry_out(const sized_case *c, double heat_W, boil_history *h)
{
    boil_plant sized;
    boil_outcome result = boil_heater_size_plant(c->plant, heat_W, &sized);
    return result == BOIL_OK ? boil_run(&sized, c->schedule, c->run, h) : result;
}

static boil_outcome find_end(const sized_case *c, boil_closures closures, double heat_W, boil_window_end *end)
{
    const boil_plant *p = c->plant;
    boil_run_options o = *c->run;
    o.closures = closures;
    *end = (boil_window_end){BOIL_RIM_AT, (double)NAN, (double)NAN};
    boil_outcome result = boil_heater_size_staying_below(p, c->schedule, &o, heat_W, &end->from_W);
    if (is_no(result)) {
        end->from_W = (double)NAN;
        return BOIL_OK;
    }
    end->from_W = end->from_W > heat_W ? rounded_up(end->from_W) : heat_W;
    if (result == BOIL_OK)
        result = boil_heater_size_below_rim(p, c->schedule, &o, end->from_W, &end->heat_W);
    if (is_no(result)) {
        end->rim = result == BOIL_OUT_OF_RANGE ? BOIL_RIM_BEYOND : BOIL_RIM_NEVER;
        return BOIL_OK;
    }
    return result;
}

/* Nothing that opens it is no failure. */
static boil_outcome find_opening(const sized_case *c, boil_heater_window *a)
{
    const boil_plant *p = c->plant;
    int by_load = boil_load_size_opening_load(p, c->schedule, c->run, c->limit_s, &a->opening_load);
    int by_area = boil_load_size_opening_area(p, c->schedule, c->run, c->limit_s, &a->opening_area);
    if (by_load == BOIL_NO_ROOT)
        a->opening_load = (double)NAN;
    if (by_area == BOIL_NO_ROOT)
        a->opening_area = (double)NAN;
    return by_load != BOIL_OK && by_load != BOIL_NO_ROOT   ? by_load
           : by_area != BOIL_OK && by_area != BOIL_NO_ROOT ? by_area
                                                           : BOIL_OK;
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

static boil_outcome around_heat(const sized_case *c, boil_heater_window *a)
{
    const boil_plant *p = c->plant;
    bool fuel = p->heater.source != BOIL_HEAT_STEAM;
    a->input_W = fuel ? a->heat_W / p->heater.efficiency : (double)NAN;
    boil_outcome result = boil_steady_state_at(p, a->heat_W, &a->calm);
    a->own_W = boil_heater_output(&p->heater, 1, a->calm.boiling_point_K);
    if (result == BOIL_OK)
        result = heat_up(c, a);
    if (result == BOIL_OK)
        result = hold(c, a);
    if (result == BOIL_OK)
        result = carry_out(c, a->heat_W, &a->proof);
    if (result == BOIL_OK)
        result = carry_out(c, 0.99 * a->heat_W, &a->less);
    if (result == BOIL_OK)
        result = find_end(c, BOIL_CLOSURES_LIKELY, a->heat_W, &a->likely);
    if (result == BOIL_OK)
        result = find_end(c, BOIL_CLOSURES_GRAVE, a->heat_W, &a->possible);
    return result == BOIL_OK && boil_heater_window_shut(a) ? find_opening(c, a) : result;
}

boil_outcome boil_heater_window_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                   boil_heater_window *out)
{
    const double none = (double)NAN;
    const sized_case c = {p, s, o, limit_s};
    *out = (boil_heater_window){
        .heat_W = none, .input_W = none, .hold_W = none, .heat_up_s = none, .opening_load = none, .opening_area = none};
    boil_outcome result = boil_heater_size_for_recovery(p, s, o, limit_s, precision, &out->heat_W);
    if (is_no(result)) {
        out->found = result == BOIL_OUT_OF_RANGE ? BOIL_WINDOW_BEYOND : BOIL_WINDOW_NONE;
        result = find_opening(&c, out);
    } else if (result == BOIL_OK) {
        out->heat_W = rounded_up(out->heat_W);
        result = around_heat(&c, out);
    }
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

bool boil_window_end_surges(const boil_window_end *e, double heat_W)
{
    return e->from_W > heat_W;
}

bool boil_heater_window_shut(const boil_heater_window *a)
{
    return a->found != BOIL_WINDOW_FOUND || boil_window_end_shut(&a->likely);
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

static boil_outcome add(const sized_case *s, double heat_W, boil_heater_curve *c)
{
    boil_history h;
    boil_outcome result = carry_out(s, heat_W, &h);
    if (result != BOIL_OK)
        return result;
    boil_curve_point *p = &c->points[c->count++];
    bool over = !isnan(h.summary.overflow_s) || !isnan(h.summary.still_overflow_s), whole = h.end == BOIL_RUN_DONE;
    *p = (boil_curve_point){heat_W, whole || over ? boil_history_recoveries(&h, s->limit_s).slowest_s : (double)NAN,
                            over    ? BOIL_CURVE_OVER
                            : whole ? BOIL_CURVE_BELOW
                                    : BOIL_CURVE_BEYOND};
    boil_history_free(&h);
    return BOIL_OK;
}

boil_outcome boil_heater_curve_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                  const boil_heater_window *w, boil_heater_curve *out)
{
    const sized_case sized = {p, s, o, limit_s};
    boil_steady_state calm;
    boil_outcome result = boil_steady_state_at(p, 0, &calm);
    *out = (boil_heater_curve){0};
    if (result != BOIL_OK)
        return result;
    set_range(w, calm.losses_W, out);
    const int even = BOIL_CURVE_POINTS - 1;
    double step = pow(out->to_W / out->from_W, 1.0 / (even - 1)), own_W = w->found == BOIL_WINDOW_FOUND ? w->heat_W : 0;
    for (int i = 0; i < even && result == BOIL_OK; i++) {
        double heat_W = out->from_W * pow(step, i);
        if (own_W > 0 && own_W <= heat_W) {
            result = add(&sized, own_W, out);
            own_W = 0;
        }
        if (result == BOIL_OK)
            result = add(&sized, heat_W, out);
    }
    return result;
}
