#include "simulate/run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "properties/water.h"
#include "simulate/actions.h"
#include "simulate/checks.h"
#include "simulate/integrator.h"
#include "simulate/modes.h"
#include "simulate/recorder.h"

boil_run_options boil_run_options_default(void)
{
    return (boil_run_options){.mixing_time_factor = 1, .tolerance = 1e-7};
}

/* The valve does at a time what the control wanted a dead time before. */
typedef struct {
    double time_s;
    bool open;
} boil_valve_move;

/* One run under way. */
typedef struct {
    boil_plant plant; /* a copy: the options change its mixing time */
    const boil_schedule *schedule;
    const boil_run_options *options;
    boil_bath bath;
    boil_rates_guess guess;
    boil_recorder record;
    boil_history *history;
    boil_integrator *integrator;
    double t, t_before, *y, *y_before, *rates, *rates_before, *size, *evaluated_y;
    size_t unknowns, unknowns_capacity;
    /* The last evaluation: guards, recorder and the integrator's end-of-step rates ask for the same one. */
    bool evaluated;
    double evaluated_t;
    boil_rates_view view;
    size_t next_action;
    double salts_start_kg[BOIL_SALTS], water_start_kg, energy_start_J;
    boil_valve_move *moves; /* what the valve was told and has not done yet, in order of time */
    size_t moves_count, moves_capacity;
    double next_period_s; /* of a time-proportioned valve */
} running;

static boil_outcome evaluate(running *r, double t, const double y[])
{
    size_t bytes = r->unknowns * sizeof(double);
    if (r->evaluated && t == r->evaluated_t && memcmp(y, r->evaluated_y, bytes) == 0)
        return BOIL_OK;
    r->evaluated = false;
    boil_outcome outcome = boil_rates_at(&r->bath, t, y, &r->guess, &r->view, r->rates);
    if (outcome != BOIL_OK)
        return outcome;
    memcpy(r->evaluated_y, y, bytes);
    r->evaluated_t = t;
    r->evaluated = true;
    return BOIL_OK;
}

static boil_outcome integrator_rates(double t, const double y[], double dydt[], void *context)
{
    running *r = context;
    boil_outcome outcome = evaluate(r, t, y);
    if (outcome == BOIL_OK)
        memcpy(dydt, r->rates, r->unknowns * sizeof(double));
    return outcome;
}

static void integrator_guards(double t, const double y[], double g[], void *context)
{
    running *r = context;
    if (evaluate(r, t, y) == BOIL_OK) {
        boil_modes_guards(&r->bath, &r->view, g);
        return;
    }
    for (int i = 0; i < BOIL_GUARDS; i++)
        g[i] = -1;
    g[BOIL_GUARD_RANGE] = 1; /* the properties refuse this state: that is where the range ends */
}

/* Typical magnitudes for error control. The steam held takes no part in mass or energy; it may be a hundred times coarser
   than the rest. */
static void set_sizes(running *r)
{
    double mass = r->history->summary.bath_mass_start_kg, *s = r->size;
    double heat = r->view.solution.heat.capacity_J_K * 10;
    for (size_t i = 0; i < BOIL_STATE_FIXED; i++)
        s[i] = 0.1 * mass;
    for (size_t i = BOIL_STATE_HEAT_FROM_HEATER; i <= BOIL_STATE_HEAT_WITH_DRAG; i++)
        s[i] = heat;
    s[BOIL_STATE_BATH_HEAT] = heat;
    s[BOIL_STATE_SENSOR] = 100;
    /* A layer is kept down to 1e-6 of the bath: no tolerance may let its error come near that, or it goes below zero. */
    double least = r->options->use_rkc ? 1e-7 : 1e-8, layer = fmin(0.1, least / r->options->tolerance) * mass;
    s[BOIL_STATE_LAYER_MASS] = layer;
    s[BOIL_STATE_LAYER_HEAT] = layer * 2e5;
    s[BOIL_STATE_STEAM_HELD] = 10 * r->view.solution.volume_m3 * r->view.pool.vapour_kg_m3;
    s[BOIL_STATE_HEATER_OUTPUT] = fmax(1e3, boil_heater_output(&r->plant.heater, 1, r->view.solution.temperature_K));
    for (size_t i = BOIL_STATE_FIXED; i < r->unknowns; i++)
        s[i] = 100;
}

static boil_outcome reserve_unknowns(running *r, size_t unknowns)
{
    if (unknowns <= r->unknowns_capacity)
        return BOIL_OK;
    double **all[] = {&r->y, &r->y_before, &r->rates, &r->rates_before, &r->size, &r->evaluated_y};
    size_t ambient = 2 * unknowns;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        double *moved = realloc(*all[i], ambient * sizeof(double));
        if (!moved)
            return BOIL_NO_MEMORY;
        *all[i] = moved;
    }
    r->unknowns_capacity = ambient;
    return BOIL_OK;
}

static boil_outcome new_integrator(running *r)
{
    if (r->integrator) {
        r->history->steps += boil_integrator_steps(r->integrator);
        r->history->evaluations += boil_integrator_evaluations(r->integrator);
        boil_integrator_free(r->integrator);
    }
    set_sizes(r);
    boil_integrator_problem c = {.unknowns = r->unknowns,
                                 .guards = BOIL_GUARDS,
                                 .rates = integrator_rates,
                                 .guard = integrator_guards,
                                 .context = r,
                                 .size = r->size,
                                 .tolerance = r->options->tolerance,
                                 .use_rkc = r->options->use_rkc,
                                 .step_max_s = 30,
                                 .step_first_s = 0.05};
    /* Rounding of the boiling point and of the enthalpy's inverse must not arm a guard. */
    c.arm[BOIL_GUARD_MODE] = r->bath.boiling ? 1e-12 : 1e-8;
    c.arm[BOIL_GUARD_LAYER] = 1e-9;
    r->integrator = boil_integrator_create(&c);
    return r->integrator ? BOIL_OK : BOIL_NO_MEMORY;
}

/* Modes as they must be at this instant: heat, feeds or loads may just have changed. */
static boil_outcome settle_mode(running *r)
{
    boil_outcome outcome = evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    if (r->bath.layer == BOIL_WATER_LAYER_BOILS && r->view.layer_vapour.boil_margin_W < 0) {
        r->bath.layer = BOIL_WATER_LAYER_STILL;
        r->evaluated = false;
        if ((outcome = evaluate(r, r->t, r->y)) != BOIL_OK)
            return outcome;
    }
    /* Right after a change of mode the steam is zero within rounding: that decides nothing. */
    double rounding = 1e-11 * r->view.solution.mass_kg;
    bool at_boil = r->view.solution.temperature_K >= r->view.solution.boiling_point_K - 1e-8;
    bool boiling =
        r->bath.boiling ? r->view.steam.formed_kg_s >= -rounding : at_boil && r->view.steam.if_boiling_kg_s > rounding;
    if (boiling == r->bath.boiling)
        return BOIL_OK;
    r->evaluated = false;
    boil_modes_change(&r->bath, r->y, &r->view, boiling);
    if ((outcome = evaluate(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    return boil_recorder_mode(&r->record, r->t, &r->bath, r->y, &r->view);
}

/* Water that begins to run onto the surface begins a layer. */
static boil_outcome open_layer(running *r)
{
    boil_outcome outcome = evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK || r->bath.layer != BOIL_WATER_LAYER_NONE || !(r->view.inflow.water_kg_s > 0 || r->bath.lid_on))
        return outcome;
    double fresh = r->view.control.valve_open ? boil_water_enthalpy(r->plant.control.water_K) : r->view.surface.condensate_J_kg;
    boil_bath_begin_layer(&r->bath, r->t, fresh > 0 ? fresh : boil_water_enthalpy(r->plant.ambient.temperature_K));
    r->evaluated = false;
    return BOIL_OK;
}

static boil_outcome restart(running *r)
{
    r->evaluated = false;
    boil_outcome outcome = open_layer(r);
    if (outcome != BOIL_OK || (outcome = new_integrator(r)) != BOIL_OK)
        return outcome;
    if ((outcome = evaluate(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    boil_recorder_restart(&r->record);
    outcome = boil_recorder_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    boil_integrator_restart(r->integrator, r->t, r->y);
    return outcome;
}

/* Actions ----------------------------------------------------------------------------------------------------------- */

/* Bodies that have just gone in, behind the others, get their unknowns. */
static boil_outcome begin_bodies(running *r)
{
    size_t at = 0;
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        boil_bath_body *o = &r->bath.bodies[i];
        size_t begin = BOIL_STATE_FIXED + at;
        at += (size_t)o->body.unknowns;
        if (begin < r->unknowns)
            continue;
        boil_outcome outcome = reserve_unknowns(r, BOIL_STATE_FIXED + at);
        if (outcome != BOIL_OK)
            return outcome;
        o->at = begin - BOIL_STATE_FIXED;
        boil_conduction_init(&o->body, o->entry_K, r->y + begin);
        r->unknowns = BOIL_STATE_FIXED + at;
    }
    return BOIL_OK;
}

static boil_outcome carry_out(running *r, const boil_action *a)
{
    boil_actions_moment m = {.time_s = r->t, .bath = &r->bath, .recorder = &r->record, .view = &r->view};
    boil_outcome outcome = boil_actions_apply(a, &m);
    return outcome == BOIL_OK ? begin_bodies(r) : outcome;
}

/* Automatic water ------------------------------------------------------------------------------------------------- */

static boil_outcome tell_valve(running *r, double time, bool open)
{
    boil_valve_move *list = boil_array_reserve(r->moves, &r->moves_capacity, r->moves_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    r->moves = list;
    list[r->moves_count++] = (boil_valve_move){time, open};
    return BOIL_OK;
}

/* On/off: the sensor has crossed a threshold. */
static boil_outcome decide(running *r)
{
    r->bath.valve_wanted = !r->bath.valve_wanted;
    return tell_valve(r, r->t + r->plant.control.dead_time_s, r->bath.valve_wanted);
}

/* Time-proportioned: at the start of a period, how long the valve stays open in it. */
static boil_outcome begin_period(running *r)
{
    const boil_water_control *c = &r->plant.control;
    double share = boil_water_control_share(c, r->view.control.sensor_K), start = r->t + c->dead_time_s;
    r->next_period_s = r->t + c->period_s;
    boil_outcome outcome = share > 0 ? tell_valve(r, start, true) : BOIL_OK;
    if (outcome == BOIL_OK && share < 1)
        outcome = tell_valve(r, start + share * c->period_s, false);
    return outcome;
}

static boil_outcome move_valve(running *r)
{
    boil_outcome outcome = BOIL_OK;
    if (r->plant.control.mode == BOIL_WATER_CONTROL_PROPORTIONED && r->t >= r->next_period_s)
        outcome = begin_period(r);
    size_t done = 0;
    for (; done < r->moves_count && r->moves[done].time_s <= r->t; done++)
        r->bath.valve_set = r->moves[done].open;
    if (done > 0) {
        memmove(r->moves, r->moves + done, (r->moves_count - done) * sizeof *r->moves);
        r->moves_count -= done;
    }
    return outcome;
}

/* Take out what is fully lifted, and the feeds that have ended. */
static void clear_finished(running *r)
{
    boil_bath *b = &r->bath;
    size_t kept = 0, at = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        boil_bath_body o = b->bodies[i];
        if (o.out_start_s <= r->t && isnan(r->history->loads[o.load].lifted_s))
            boil_recorder_lift(&r->record, o.out_start_s, o.load, o.drag_out_kg);
        if (o.out_end_s <= r->t)
            continue;
        size_t n = (size_t)o.body.unknowns;
        memmove(r->y + BOIL_STATE_FIXED + at, r->y + BOIL_STATE_FIXED + o.at, n * sizeof(double));
        o.at = at;
        at += n;
        b->bodies[kept++] = o;
    }
    b->bodies_count = kept;
    r->unknowns = BOIL_STATE_FIXED + at;
    kept = 0;
    for (size_t i = 0; i < b->feeds_count; i++)
        if (b->feeds[i].end_s > r->t)
            b->feeds[kept++] = b->feeds[i];
    b->feeds_count = kept;
}

/* What moves in the stretch that begins now; a load going in or out stirs the interface at its speed. */
static void set_moving(running *r)
{
    double fastest = 0;
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        boil_bath_body *o = &r->bath.bodies[i];
        o->lowering = r->t < o->in_end_s;
        o->lifting = r->t >= o->out_start_s && r->t < o->out_end_s;
        if (o->lowering || o->lifting)
            fastest = fmax(fastest, r->plant.tank.level_m / (o->in_end_s - o->in_start_s));
    }
    r->bath.lowering_m_s = fastest;
}

static boil_outcome do_what_is_due(running *r)
{
    clear_finished(r);
    boil_outcome outcome = evaluate(r, r->t, r->y);
    const boil_schedule *s = r->schedule;
    if (outcome == BOIL_OK)
        outcome = move_valve(r);
    for (; outcome == BOIL_OK && r->next_action < s->count && s->actions[r->next_action].time_s <= r->t; r->next_action++)
        outcome = carry_out(r, &s->actions[r->next_action]);
    clear_finished(r);
    set_moving(r);
    return outcome;
}

static double sooner(double now, double best, double candidate)
{
    return candidate > now && candidate < best ? candidate : best;
}

/* The next moment at which something known begins or ends: no step may cross it. */
static double next_stop(const running *r)
{
    const boil_bath *b = &r->bath;
    double best = r->schedule->duration_s;
    if (r->next_action < r->schedule->count)
        best = sooner(r->t, best, r->schedule->actions[r->next_action].time_s);
    if (r->moves_count > 0)
        best = sooner(r->t, best, r->moves[0].time_s);
    if (r->plant.control.mode == BOIL_WATER_CONTROL_PROPORTIONED)
        best = sooner(r->t, best, r->next_period_s);
    for (size_t i = 0; i < b->feeds_count; i++)
        best = sooner(r->t, best, b->feeds[i].end_s);
    for (size_t i = 0; i < b->bodies_count; i++) {
        best = sooner(r->t, best, b->bodies[i].in_end_s);
        best = sooner(r->t, best, b->bodies[i].out_start_s);
        best = sooner(r->t, best, b->bodies[i].out_end_s);
    }
    return best;
}

/* Motion --------------------------------------------------------------------------------------------------------- */

static void stop_out_of_range(running *r)
{
    boil_history *h = r->history;
    h->end = BOIL_RUN_OUT_OF_RANGE;
    h->stop_quantity = r->view.solution.range.quantity;
    h->stop_value = r->view.solution.range.value;
    h->stop_limit = r->view.solution.range.limit;
    h->stop_unit = r->view.solution.range.unit;
}

static boil_outcome event(running *r, size_t guard)
{
    r->evaluated = false;
    boil_outcome outcome = evaluate(r, r->t, r->y);
    switch (guard) {
    case BOIL_GUARD_LAYER:
        r->bath.layer = r->bath.layer == BOIL_WATER_LAYER_STILL ? BOIL_WATER_LAYER_BOILS : BOIL_WATER_LAYER_STILL;
        break;
    case BOIL_GUARD_LAYER_GONE:
        outcome = boil_bath_absorb_layer(&r->bath, r->y);
        break;
    case BOIL_GUARD_RANGE:
        stop_out_of_range(r);
        return BOIL_OK;
    case BOIL_GUARD_VALVE:
        outcome = decide(r);
        break;
    case BOIL_GUARD_LOW_LEVEL:
        r->bath.heat_cut = !r->bath.heat_cut;
        break;
    case BOIL_GUARD_MODE:
        if (outcome != BOIL_OK)
            break;
        boil_modes_change(&r->bath, r->y, &r->view, !r->bath.boiling);
        r->evaluated = false;
        if ((outcome = evaluate(r, r->t, r->y)) == BOIL_OK)
            outcome = boil_recorder_mode(&r->record, r->t, &r->bath, r->y, &r->view);
        break;
    default: /* the rim: it is only watched */
        break;
    }
    return outcome;
}

/* Steps or changes of mode that pile up at one moment would go on for ever; no known run takes a tenth of these. */
static bool is_stuck(const running *r)
{
    double most = 1e5 + 5 * r->schedule->duration_s + 300 * (double)r->schedule->count;
    return (double)(r->history->steps + boil_integrator_steps(r->integrator)) > most;
}

/* One step and what follows from it. */
static boil_outcome advance(running *r, double stop, bool *going)
{
    size_t guard = 0;
    boil_outcome outcome = evaluate(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    r->t_before = r->t;
    memcpy(r->y_before, r->y, r->unknowns * sizeof(double));
    memcpy(r->rates_before, r->rates, r->unknowns * sizeof(double));
    boil_integrator_status news = boil_integrator_step(r->integrator, &r->t, r->y, stop, &guard);
    if (news == BOIL_INTEGRATOR_FAILED || is_stuck(r)) {
        r->history->end = BOIL_RUN_FAILED;
        r->evaluated = false;
        return evaluate(r, r->t, r->y);
    }
    if (evaluate(r, r->t, r->y) != BOIL_OK) {
        stop_out_of_range(r);
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        r->t = r->t_before;
        return evaluate(r, r->t, r->y);
    }
    outcome = boil_recorder_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_rows(&r->record, &r->bath, &r->guess, r->t_before, r->y_before, r->rates_before, r->t, r->y,
                                     r->rates);
    if (outcome == BOIL_OK && news == BOIL_INTEGRATOR_EVENT)
        outcome = event(r, guard);
    *going = news == BOIL_INTEGRATOR_STEPPED;
    if (r->options->keep_going && !r->options->keep_going(r->options->context, r->t))
        r->history->end = BOIL_RUN_INTERRUPTED;
    return outcome;
}

static boil_outcome carry_through(running *r)
{
    while (r->history->end == BOIL_RUN_DONE) {
        boil_outcome outcome = do_what_is_due(r);
        r->evaluated = false;
        if (outcome != BOIL_OK || (outcome = settle_mode(r)) != BOIL_OK || (outcome = restart(r)) != BOIL_OK)
            return outcome;
        if (!(r->t < r->schedule->duration_s))
            return BOIL_OK;
        double stop = next_stop(r);
        for (bool going = true; going && r->history->end == BOIL_RUN_DONE;)
            if ((outcome = advance(r, stop, &going)) != BOIL_OK)
                return outcome;
    }
    return BOIL_OK;
}

/* Balance -------------------------------------------------------------------------------------------------------- */

static double closure(double change, double in, double out, double inventory, double crossing)
{
    double scale = fmax(inventory, crossing);
    return scale > 0 ? (change - in + out) / scale : 0;
}

static double sum(const double y[], int first, int last)
{
    double total = 0;
    for (int i = first; i <= last; i++)
        total += y[i];
    return total;
}

static void balance(running *r)
{
    const double *y = r->y;
    boil_balance *b = &r->history->balance;
    double liquid_water = y[BOIL_STATE_TOTAL_LIQUID_IN] - y[BOIL_STATE_TOTAL_LIQUID_SALTS],
           drag_water = y[BOIL_STATE_TOTAL_DRAG] - y[BOIL_STATE_TOTAL_DRAG_SALTS];
    double in = y[BOIL_STATE_TOTAL_WATER_IN] + liquid_water;
    double out = sum(y, BOIL_STATE_TOTAL_STEAM, BOIL_STATE_TOTAL_LAYER_BOILED) + drag_water;
    b->water =
        closure(y[BOIL_STATE_BATH_WATER] + y[BOIL_STATE_LAYER_MASS] - r->water_start_kg, in, out, r->water_start_kg, in + out);
    double salts_start = r->salts_start_kg[0] + r->salts_start_kg[1] + r->salts_start_kg[2];
    double salts = sum(y, BOIL_STATE_BATH_NAOH, BOIL_STATE_BATH_NANO2) + sum(y, BOIL_STATE_SOLID_NAOH, BOIL_STATE_SOLID_NANO2);
    in = y[BOIL_STATE_TOTAL_SALTS_IN] + y[BOIL_STATE_TOTAL_LIQUID_SALTS];
    b->salts =
        closure(salts - salts_start, in, y[BOIL_STATE_TOTAL_DRAG_SALTS], salts_start, in + y[BOIL_STATE_TOTAL_DRAG_SALTS]);
    double heat_in = y[BOIL_STATE_HEAT_FROM_HEATER] + y[BOIL_STATE_HEAT_WITH_WATER] + y[BOIL_STATE_HEAT_WITH_LIQUID] +
                     y[BOIL_STATE_HEAT_WITH_SALTS];
    double heat_out = sum(y, BOIL_STATE_HEAT_TO_WALLS, BOIL_STATE_HEAT_WITH_VAPOUR) + y[BOIL_STATE_HEAT_WITH_DRAG];
    double crossing = 0;
    for (int i = BOIL_STATE_HEAT_FROM_HEATER; i <= BOIL_STATE_HEAT_WITH_DRAG; i++)
        crossing += fabs(y[i]);
    double change = boil_modes_inventory(&r->bath, y, &r->view) - r->energy_start_J;
    b->energy =
        crossing > 0 ? closure(change, heat_in, heat_out, 0, crossing) : closure(change, 0, 0, fabs(r->energy_start_J), 0);
}

static boil_outcome begin(running *r)
{
    boil_outcome outcome = reserve_unknowns(r, BOIL_STATE_FIXED);
    if (outcome != BOIL_OK || (outcome = boil_modes_start(&r->bath, &r->plant, r->y, &r->guess)) != BOIL_OK)
        return outcome;
    r->unknowns = BOIL_STATE_FIXED;
    for (int i = 0; i < BOIL_SALTS; i++)
        r->salts_start_kg[i] = r->y[BOIL_STATE_BATH_NAOH + i];
    r->water_start_kg = r->y[BOIL_STATE_BATH_WATER];
    if ((outcome = evaluate(r, 0, r->y)) != BOIL_OK)
        return outcome;
    r->energy_start_J = boil_modes_inventory(&r->bath, r->y, &r->view);
    outcome = boil_recorder_begin(&r->record, r->history, &r->plant, r->options->row_interval_s, &r->bath, r->y, &r->view);
    if (outcome == BOIL_OK)
        outcome = boil_recorder_rows(&r->record, &r->bath, &r->guess, 0, r->y, r->rates, 0, r->y, r->rates);
    r->evaluated = false;
    const boil_water_control *c = &r->plant.control;
    if (outcome == BOIL_OK && c->mode == BOIL_WATER_CONTROL_ON_OFF &&
        r->view.control.sensor_K >= c->set_point_K + c->differential_K / 2)
        outcome = decide(r);
    return outcome;
}

static boil_outcome finish(running *r)
{
    if (r->integrator) {
        r->history->steps += boil_integrator_steps(r->integrator);
        r->history->evaluations += boil_integrator_evaluations(r->integrator);
    }
    r->evaluated = false;
    if (evaluate(r, r->t, r->y) != BOIL_OK) { /* nothing follows from this state: report up to the one before it */
        r->history->end = BOIL_RUN_FAILED;
        r->t = r->t_before;
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        boil_outcome outcome = evaluate(r, r->t, r->y);
        if (outcome != BOIL_OK)
            return outcome;
    }
    boil_recorder_end(&r->record, r->t, &r->bath, r->y, &r->view);
    double by_hand = r->y[BOIL_STATE_TOTAL_WATER_IN] - r->y[BOIL_STATE_TOTAL_VALVE] - r->y[BOIL_STATE_TOTAL_CONDENSATE] -
                     r->history->summary.rinse_added_kg;
    r->history->summary.water_added_kg = fmax(0, by_hand); /* a difference of sums: rounding may leave it below zero */
    balance(r);
    return BOIL_OK;
}

static void running_free(running *r)
{
    boil_integrator_free(r->integrator);
    boil_bath_free(&r->bath);
    boil_recorder_free(&r->record);
    double *all[] = {r->y, r->y_before, r->rates, r->rates_before, r->size, r->evaluated_y};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        free(all[i]);
    free(r->moves);
}

boil_outcome boil_run_unchecked(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    *out = (boil_history){.end = BOIL_RUN_DONE};
    running r = {.plant = *p, .schedule = s, .options = o, .history = out};
    r.plant.pool.mixing_time_factor *= o->mixing_time_factor;
    boil_outcome outcome = begin(&r);
    if (outcome == BOIL_OK && (outcome = carry_through(&r)) != BOIL_NO_MEMORY) {
        if (outcome != BOIL_OK)
            out->end = BOIL_RUN_FAILED;
        outcome = finish(&r);
    }
    if (outcome != BOIL_OK)
        boil_history_free(out);
    running_free(&r);
    return outcome;
}

boil_outcome boil_run(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    if (out == NULL)
        return BOIL_BAD_INPUT;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    return boil_check_case(p, s, o) ? boil_run_unchecked(p, s, o, out) : BOIL_BAD_INPUT;
}

void boil_history_free(boil_history *h)
{
    if (!h)
        return;
    free(h->loads);
    free(h->additions);
    free(h->quiet);
    free(h->rows);
    free(h->valve_s);
    *h = (boil_history){.end = BOIL_RUN_DONE};
}

boil_recoveries boil_history_recoveries(const boil_history *h, double limit_s)
{
    boil_recoveries r = {0, 0, 0};
    if (h == NULL)
        return (boil_recoveries){0, 0, (double)NAN};
    for (size_t i = 0; i < h->loads_count; i++) {
        double recovery_s = h->loads[i].recovery_s;
        r.back += recovery_s <= limit_s;
        r.never += isnan(recovery_s) ? 1 : 0;
        r.slowest_s = fmax(r.slowest_s, recovery_s);
    }
    if (r.never > 0 || h->loads_count == 0)
        r.slowest_s = (double)NAN;
    return r;
}
