#include "run.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "bath.h"
#include "boil.h"
#include "grow.h"
#include "march.h"
#include "record.h"
#include "water.h"

boil_run_options boil_run_options_default(void)
{
    return (boil_run_options){.mixing_time_factor = 1, .tolerance = 1e-7};
}

/* One run under way. */
typedef struct {
    boil_plant plant; /* a copy: the options change its mixing time */
    const boil_schedule *schedule;
    const boil_run_options *options;
    boil_bath bath;
    boil_record record;
    boil_history *history;
    boil_march *march;
    double t, t_before, *y, *y_before, *rates, *rates_before, *size, *looked_y;
    size_t unknowns, unknowns_room;
    /* The last look: guards, record and the integrator's end-of-step rates ask for the same one. */
    bool looked;
    double looked_t;
    boil_bath_view view;
    size_t next_act;
    double salts_start_kg[BOIL_SALTS], water_start_kg, energy_start_J, rinse_kg;
    int *names;       /* of each load, by its number */
    size_t names_room;
} running;

static int look(running *r, double t, const double y[])
{
    size_t bytes = r->unknowns * sizeof(double);
    if (r->looked && t == r->looked_t && memcmp(y, r->looked_y, bytes) == 0)
        return BOIL_OK;
    r->looked = false;
    int outcome = boil_bath_look(&r->bath, t, y, &r->view, r->rates);
    if (outcome != BOIL_OK)
        return outcome;
    memcpy(r->looked_y, y, bytes);
    r->looked_t = t;
    r->looked = true;
    return BOIL_OK;
}

static int march_rates(double t, const double y[], double dydt[], void *context)
{
    running *r = context;
    int outcome = look(r, t, y);
    if (outcome == BOIL_OK)
        memcpy(dydt, r->rates, r->unknowns * sizeof(double));
    return outcome;
}

static void march_guards(double t, const double y[], double g[], void *context)
{
    running *r = context;
    if (look(r, t, y) == BOIL_OK) {
        boil_bath_guards(&r->bath, &r->view, g);
        return;
    }
    for (int i = 0; i < BATH_GUARDS; i++)
        g[i] = -1;
    g[BATH_GUARD_RANGE] = 1; /* the properties refuse this state: that is where the range ends */
}

/* Typical magnitudes for error control. The steam held takes no part in mass or energy; it may be a hundred times coarser
   than the rest. */
static void set_sizes(running *r)
{
    double mass = r->history->summary.bath_mass_start_kg, *s = r->size;
    double heat = r->view.heat_capacity_J_K * 10;
    for (size_t i = 0; i < BATH_FIXED; i++)
        s[i] = 0.1 * mass;
    for (size_t i = HEAT_FROM_HEATER; i <= HEAT_WITH_WATER; i++)
        s[i] = heat;
    s[BATH_HEAT] = heat;
    s[LAYER_MASS] = 0.1 * mass;
    s[LAYER_HEAT] = 0.1 * mass * 2e5;
    s[STEAM_HELD] = 10 * r->view.solution_m3 * r->view.vapour_kg_m3;
    s[HEATER_OUTPUT] = fmax(1e3, r->plant.heater.input_W);
    for (size_t i = BATH_FIXED; i < r->unknowns; i++)
        s[i] = 100;
}

static int make_room(running *r, size_t unknowns)
{
    if (unknowns <= r->unknowns_room)
        return BOIL_OK;
    double **all[] = {&r->y, &r->y_before, &r->rates, &r->rates_before, &r->size, &r->looked_y};
    size_t room = 2 * unknowns;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        double *moved = realloc(*all[i], room * sizeof(double));
        if (!moved)
            return BOIL_NO_MEMORY;
        *all[i] = moved;
    }
    r->unknowns_room = room;
    return BOIL_OK;
}

static int new_march(running *r)
{
    if (r->march) {
        r->history->steps += boil_march_steps(r->march);
        r->history->evaluations += boil_march_evaluations(r->march);
        boil_march_free(r->march);
    }
    set_sizes(r);
    boil_march_case c = {.unknowns = r->unknowns,
                         .guards = BATH_GUARDS,
                         .rates = march_rates,
                         .guard = march_guards,
                         .context = r,
                         .size = r->size,
                         .tolerance = r->options->tolerance,
                         .step_max_s = 30,
                         .step_first_s = 0.05};
    /* Rounding of the boiling point and of the enthalpy's inverse must not arm a guard. */
    c.arm[BATH_GUARD_MODE] = r->bath.boiling ? 1e-12 : 1e-8;
    c.arm[BATH_GUARD_LAYER] = 1e-9;
    r->march = boil_march_create(&c);
    return r->march ? BOIL_OK : BOIL_NO_MEMORY;
}

/* Modes as they must be at this instant: heat, feeds or loads may just have changed. */
static int settle_mode(running *r)
{
    int outcome = look(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    if (r->bath.layer == BOIL_LAYER_BOILS && r->view.layer_boil_margin_W < 0) {
        r->bath.layer = BOIL_LAYER_STILL;
        r->looked = false;
        if ((outcome = look(r, r->t, r->y)) != BOIL_OK)
            return outcome;
    }
    bool at_boil = r->view.temperature_K >= r->view.boiling_point_K - 1e-8;
    bool boiling = r->bath.boiling ? r->view.steam_kg_s >= 0 : at_boil && r->view.steam_if_boiling_kg_s > 0;
    if (boiling == r->bath.boiling)
        return BOIL_OK;
    r->looked = false;
    outcome = boil_bath_change_mode(&r->bath, r->t, r->y, boiling);
    if (outcome != BOIL_OK || (outcome = look(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    return boil_record_mode(&r->record, r->t, &r->bath, r->y, &r->view);
}

static int restart(running *r)
{
    r->looked = false;
    int outcome = new_march(r);
    if (outcome != BOIL_OK)
        return outcome;
    if ((outcome = look(r, r->t, r->y)) != BOIL_OK)
        return outcome;
    boil_record_restart(&r->record);
    boil_record_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    boil_march_restart(r->march, r->t, r->y);
    return BOIL_OK;
}

/* Acts ----------------------------------------------------------------------------------------------------------- */

static int add_feed(running *r, double start, double over, double mass, double temperature)
{
    boil_bath *b = &r->bath;
    if (!(mass > 0))
        return BOIL_OK;
    boil_bath_feed *list = boil_grow(b->feeds, &b->feeds_room, b->feeds_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    b->feeds = list;
    double h = boil_water_enthalpy(temperature);
    list[b->feeds_count++] = (boil_bath_feed){start, start + over, mass / over, h};
    if (b->layer == BOIL_LAYER_NONE) {
        b->layer = BOIL_LAYER_STILL;
        b->layer_since_s = start;
        b->layer_fresh_J_kg = h;
        b->layer_skin_guess_K = temperature;
    }
    return BOIL_OK;
}

static int add_body(running *r, const boil_load *load, const boil_body *body, double displaced, size_t number)
{
    boil_bath *b = &r->bath;
    if (!(body->mass_kg > 0))
        return BOIL_OK;
    boil_bath_body *list = boil_grow(b->bodies, &b->bodies_room, b->bodies_count, sizeof *list);
    if (!list)
        return BOIL_NO_MEMORY;
    b->bodies = list;
    size_t at = r->unknowns - BATH_FIXED;
    int outcome = make_room(r, r->unknowns + (size_t)body->unknowns);
    if (outcome != BOIL_OK)
        return outcome;
    r->unknowns += (size_t)body->unknowns;
    boil_body_init(body, load->temperature_K, r->y + BATH_FIXED + at);
    double lift = r->t + load->immersed_s;
    list[b->bodies_count++] = (boil_bath_body){.body = *body,
                                               .coefficient_W_m2K = load->coefficient_W_m2K,
                                               .displaced_m3 = displaced,
                                               .entry_K = load->temperature_K,
                                               .in_start_s = r->t,
                                               .in_end_s = r->t + load->lowering_s,
                                               .out_start_s = lift,
                                               .out_end_s = lift + load->lowering_s,
                                               .at = at,
                                               .load = number};
    return BOIL_OK;
}

static int load_enters(running *r, const boil_act *a)
{
    const boil_load *l = &a->is.load;
    size_t number;
    int outcome = boil_record_load(&r->record, r->t, l, &r->bath, &r->view, &number);
    if (outcome != BOIL_OK)
        return outcome;
    int *names = boil_grow(r->names, &r->names_room, number, sizeof *names);
    if (!names)
        return BOIL_NO_MEMORY;
    r->names = names;
    names[number] = a->name;
    boil_body parts = boil_load_parts(l), basket = boil_load_basket(l);
    double basket_m3 = basket.mass_kg / l->metal.density_kg_m3;
    outcome = add_body(r, l, &parts, boil_load_displaced(l) - basket_m3, number);
    if (outcome == BOIL_OK)
        outcome = add_body(r, l, &basket, basket_m3, number);
    double rinse = boil_load_rinse(l);
    r->rinse_kg += rinse;
    if (outcome == BOIL_OK)
        outcome = add_feed(r, r->t, l->lowering_s, rinse, fmin(l->temperature_K, r->bath.air.saturation_K));
    return outcome;
}

/* Begin to lift the loads of a name; 0 lifts all. */
static void lift(running *r, int name)
{
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        boil_bath_body *o = &r->bath.bodies[i];
        if ((name != 0 && r->names[o->load] != name) || o->out_start_s <= r->t)
            continue;
        double takes = o->in_end_s - o->in_start_s;
        o->out_start_s = fmax(r->t, o->in_end_s);
        o->out_end_s = o->out_start_s + takes;
    }
}

static int carry_out(running *r, const boil_act *a)
{
    switch (a->kind) {
    case BOIL_ACT_LOAD:
        return load_enters(r, a);
    case BOIL_ACT_LIFT:
        lift(r, a->name);
        return BOIL_OK;
    case BOIL_ACT_WATER: {
        int outcome = boil_record_water(&r->record, r->t, &a->is.water, &r->bath, &r->view);
        if (outcome == BOIL_OK)
            outcome = add_feed(r, r->t, a->is.water.over_s, a->is.water.mass_kg, a->is.water.temperature_K);
        return outcome;
    }
    case BOIL_ACT_HEAT:
        r->bath.heater_set_W = boil_heater_steady_output(&r->plant.heater, a->is.dial);
        return BOIL_OK;
    default:
        return BOIL_BAD_INPUT;
    }
}

/* Take out what is fully lifted, and the feeds that have ended. */
static void clear_finished(running *r)
{
    boil_bath *b = &r->bath;
    size_t kept = 0, at = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        boil_bath_body o = b->bodies[i];
        if (o.out_start_s <= r->t && isnan(r->history->loads[o.load].lifted_s))
            boil_record_lift(&r->record, o.out_start_s, o.load);
        if (o.out_end_s <= r->t)
            continue;
        size_t n = (size_t)o.body.unknowns;
        memmove(r->y + BATH_FIXED + at, r->y + BATH_FIXED + o.at, n * sizeof(double));
        o.at = at;
        at += n;
        b->bodies[kept++] = o;
    }
    b->bodies_count = kept;
    r->unknowns = BATH_FIXED + at;
    kept = 0;
    for (size_t i = 0; i < b->feeds_count; i++)
        if (b->feeds[i].end_s > r->t)
            b->feeds[kept++] = b->feeds[i];
    b->feeds_count = kept;
}

/* A load going in or out stirs the interface at the speed it moves. */
static void set_lowering_speed(running *r)
{
    double fastest = 0;
    for (size_t i = 0; i < r->bath.bodies_count; i++) {
        const boil_bath_body *o = &r->bath.bodies[i];
        bool moves = r->t < o->in_end_s || (r->t >= o->out_start_s && r->t < o->out_end_s);
        if (moves)
            fastest = fmax(fastest, r->plant.tank.level_m / (o->in_end_s - o->in_start_s));
    }
    r->bath.lowering_m_s = fastest;
}

static int do_what_is_due(running *r)
{
    clear_finished(r);
    int outcome = look(r, r->t, r->y);
    const boil_schedule *s = r->schedule;
    for (; outcome == BOIL_OK && r->next_act < s->count && s->acts[r->next_act].time_s <= r->t; r->next_act++)
        outcome = carry_out(r, &s->acts[r->next_act]);
    clear_finished(r);
    set_lowering_speed(r);
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
    if (r->next_act < r->schedule->count)
        best = sooner(r->t, best, r->schedule->acts[r->next_act].time_s);
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
    h->stop_quantity = r->view.range.quantity;
    h->stop_value = r->view.range.value;
    h->stop_limit = r->view.range.limit;
    h->stop_unit = r->view.range.unit;
}

static int event(running *r, size_t guard)
{
    r->looked = false;
    int outcome = look(r, r->t, r->y);
    switch (guard) {
    case BATH_GUARD_LAYER:
        r->bath.layer = r->bath.layer == BOIL_LAYER_STILL ? BOIL_LAYER_BOILS : BOIL_LAYER_STILL;
        break;
    case BATH_GUARD_LAYER_GONE:
        outcome = boil_bath_absorb_layer(&r->bath, r->y);
        break;
    case BATH_GUARD_RANGE:
        stop_out_of_range(r);
        return BOIL_OK;
    case BATH_GUARD_MODE: {
        bool boiling = !r->bath.boiling;
        outcome = boil_bath_change_mode(&r->bath, r->t, r->y, boiling);
        r->looked = false;
        if (outcome == BOIL_OK && (outcome = look(r, r->t, r->y)) == BOIL_OK)
            outcome = boil_record_mode(&r->record, r->t, &r->bath, r->y, &r->view);
        break;
    }
    default: /* the rim: it is only watched */
        break;
    }
    return outcome == BOIL_OK ? restart(r) : outcome;
}

/* One step and what follows from it. */
static int advance(running *r, double stop, bool *going)
{
    size_t guard = 0;
    double before = r->t;
    int outcome = look(r, r->t, r->y);
    if (outcome != BOIL_OK)
        return outcome;
    r->t_before = before;
    memcpy(r->y_before, r->y, r->unknowns * sizeof(double));
    memcpy(r->rates_before, r->rates, r->unknowns * sizeof(double));
    boil_march_news news = boil_march_step(r->march, &r->t, r->y, stop, &guard);
    if (news == BOIL_MARCH_FAILED) {
        r->history->end = BOIL_RUN_FAILED;
        r->looked = false;
        return look(r, r->t, r->y);
    }
    if (look(r, r->t, r->y) != BOIL_OK) {
        stop_out_of_range(r);
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        r->t = before;
        return look(r, r->t, r->y);
    }
    boil_record_moment(&r->record, r->t, &r->bath, r->y, &r->view);
    r->looked = false; /* rows look between the steps: their view is not this moment's */
    memcpy(r->looked_y, r->rates, r->unknowns * sizeof(double));
    outcome = boil_record_rows(&r->record, &r->bath, before, r->y_before, r->rates_before, r->t, r->y, r->rates);
    if (outcome == BOIL_OK && news == BOIL_MARCH_EVENT)
        outcome = event(r, guard);
    *going = news != BOIL_MARCH_ARRIVED;
    if (r->options->keep_going && !r->options->keep_going(r->options->context, r->t))
        r->history->end = BOIL_RUN_INTERRUPTED;
    return outcome;
}

static int carry_through(running *r)
{
    while (r->history->end == BOIL_RUN_DONE) {
        int outcome = do_what_is_due(r);
        r->looked = false;
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

static void balance(running *r)
{
    const double *y = r->y;
    boil_balance *b = &r->history->balance;
    double salts = 0, salts_start = 0;
    for (int i = 0; i < BOIL_SALTS; i++) {
        salts += y[BATH_NAOH + i];
        salts_start += r->salts_start_kg[i];
    }
    double out = y[TOTAL_STEAM] + y[TOTAL_EVAPORATED] + y[TOTAL_LAYER_BOILED];
    b->water = closure(y[BATH_WATER] + y[LAYER_MASS] - r->water_start_kg, y[TOTAL_WATER_IN], out, r->water_start_kg,
                       y[TOTAL_WATER_IN] + out);
    b->salts = closure(salts - salts_start, 0, 0, salts_start, 0);
    double heat_in = y[HEAT_FROM_HEATER] + y[HEAT_WITH_WATER];
    double heat_out = y[HEAT_TO_WALLS] + y[HEAT_TO_AIR] + y[HEAT_TO_LOADS] + y[HEAT_WITH_VAPOUR];
    double crossing = fabs(y[HEAT_FROM_HEATER]) + fabs(y[HEAT_WITH_WATER]) + fabs(y[HEAT_TO_WALLS]) +
                      fabs(y[HEAT_TO_AIR]) + fabs(y[HEAT_TO_LOADS]) + fabs(y[HEAT_WITH_VAPOUR]);
    double change = boil_bath_inventory(&r->bath, r->t, y) - r->energy_start_J;
    b->energy = crossing > 0 ? closure(change, heat_in, heat_out, 0, crossing)
                             : closure(change, 0, 0, fabs(r->energy_start_J), 0);
}

static int begin(running *r)
{
    int outcome = make_room(r, BATH_FIXED);
    if (outcome != BOIL_OK || (outcome = boil_bath_init(&r->bath, &r->plant, r->y)) != BOIL_OK)
        return outcome;
    r->unknowns = BATH_FIXED;
    for (int i = 0; i < BOIL_SALTS; i++)
        r->salts_start_kg[i] = r->y[BATH_NAOH + i];
    r->water_start_kg = r->y[BATH_WATER];
    r->energy_start_J = boil_bath_inventory(&r->bath, 0, r->y);
    if ((outcome = look(r, 0, r->y)) != BOIL_OK)
        return outcome;
    outcome = boil_record_begin(&r->record, r->history, &r->plant, r->options->row_interval_s, &r->bath, r->y, &r->view);
    if (outcome == BOIL_OK)
        outcome = boil_record_rows(&r->record, &r->bath, 0, r->y, r->rates, 0, r->y, r->rates);
    r->looked = false;
    return outcome;
}

static int finish(running *r)
{
    if (r->march) {
        r->history->steps += boil_march_steps(r->march);
        r->history->evaluations += boil_march_evaluations(r->march);
    }
    r->looked = false;
    if (look(r, r->t, r->y) != BOIL_OK) { /* nothing follows from this state: report up to the one before it */
        r->history->end = BOIL_RUN_FAILED;
        r->t = r->t_before;
        memcpy(r->y, r->y_before, r->unknowns * sizeof(double));
        int outcome = look(r, r->t, r->y);
        if (outcome != BOIL_OK)
            return outcome;
    }
    boil_record_end(&r->record, r->t, &r->bath, r->y, &r->view);
    r->history->summary.rinse_added_kg = r->rinse_kg;
    r->history->summary.water_added_kg = r->y[TOTAL_WATER_IN] - r->rinse_kg;
    balance(r);
    return BOIL_OK;
}

static void running_free(running *r)
{
    boil_march_free(r->march);
    boil_bath_free(&r->bath);
    boil_record_free(&r->record);
    double *all[] = {r->y, r->y_before, r->rates, r->rates_before, r->size, r->looked_y};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        free(all[i]);
    free(r->names);
}

int boil_run(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out)
{
    *out = (boil_history){.end = BOIL_RUN_DONE};
    running r = {.plant = *p, .schedule = s, .options = o, .history = out};
    r.plant.pool.mixing_time_factor *= o->mixing_time_factor;
    int outcome = begin(&r);
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

void boil_history_free(boil_history *h)
{
    if (!h)
        return;
    free(h->loads);
    free(h->additions);
    free(h->quiet);
    free(h->rows);
    *h = (boil_history){.end = BOIL_RUN_DONE};
}
