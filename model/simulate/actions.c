#include "simulate/actions.h"

#include <math.h>

#include "base/constants.h"
#include "case/carried_in.h"
#include "case/load.h"
#include "properties/solubility.h"
#include "properties/viscosity.h"
#include "properties/water.h"
#include "bath/modes.h"
#include "bath/rates.h"
#include "transfer/entrainment.h"

typedef boil_actions_moment moment;

/* What is added ---------------------------------------------------------------------------------------------------- */

/* From now on, `mass_kg` over a time. */
static void add_feed(const moment *m, boil_bath_feed feed, double mass_kg, double over_s)
{
    boil_bath *b = m->bath;
    feed.start_s = m->time_s;
    feed.end_s = feed.tap > 0 ? (double)INFINITY : m->time_s + over_s;
    feed.rate_kg_s = mass_kg / over_s;
    if (!(feed.rate_kg_s > 0))
        return;
    boil_bath_add_feed(b, &feed);
    if (feed.kind == BOIL_FEED_WATER)
        boil_bath_begin_layer(b, feed.start_s, feed.enthalpy_J_kg);
}

static boil_bath_feed water_at(double temperature_K)
{
    return (boil_bath_feed){.kind = BOIL_FEED_WATER, .enthalpy_J_kg = boil_water_enthalpy(temperature_K)};
}

/* Mass and time stand alike in all that is added. */
static void pour(const boil_action *a, const moment *m, boil_bath_feed feed)
{
    const boil_action_water *w = &a->is.water;
    if (m->addition == 0)
        boil_recorder_addition(m->recorder, m->time_s, a->kind, w->mass_kg, w->over_s, m->bath, m->view);
    feed.addition = m->addition > 0 ? m->addition : m->recorder->history->additions_count;
    feed.tap = m->tap;
    feed.goal = a->pour.goal;
    feed.goal_value = a->pour.goal_value;
    add_feed(m, feed, w->mass_kg, w->over_s);
}

static void water(const boil_action *a, const moment *m)
{
    pour(a, m, water_at(a->is.water.temperature_K));
}

static void liquid(const boil_action *a, const moment *m)
{
    const boil_action_liquid *l = &a->is.liquid;
    boil_bath_feed f = {.kind = BOIL_FEED_LIQUID, .kilogram = boil_mixture_of(l->blend, l->salt_fraction)};
    f.enthalpy_J_kg = boil_solution_heat(&f.kilogram, l->temperature_K).enthalpy_J;
    pour(a, m, f);
}

static void salts(const boil_action *a, const moment *m)
{
    const boil_action_salts *s = &a->is.salts;
    boil_bath_feed f = {.kind = BOIL_FEED_SALTS};
    for (int i = 0; i < BOIL_SALTS; i++) {
        f.kilogram.salt[i] = s->blend[i];
        f.enthalpy_J_kg += s->blend[i] * boil_salt_solid_enthalpy(i, s->temperature_K);
    }
    pour(a, m, f);
}

/* Out of the bath, by a tap: its result is of another kind. */
static void take(const boil_action *a, const moment *m)
{
    boil_bath_feed f = {.kind = a->kind == BOIL_ACTION_BAIL ? BOIL_FEED_BAIL : BOIL_FEED_DRAIN,
                        .tap = m->tap,
                        .goal = a->pour.goal,
                        .goal_value = a->pour.goal_value};
    if (m->addition == 0)
        boil_recorder_take(m->recorder, m->time_s, a->kind, m->bath, m->view);
    add_feed(m, f, a->is.take.volume_m3, a->is.take.over_s);
}

/* How warm it is poured, K: as it is said, or as the room; never so cold that it crystallises, nor over its own boil. */
static double run_back_at(const boil_action *a, const moment *m, const boil_mixture *kilogram)
{
    double said_K = a->is.back.temperature_K, boils_K;
    double warm_K = said_K > 0 ? said_K : fmax(BOIL_ZERO_CELSIUS, m->bath->ambient.temperature_K);
    double clear_K = boil_solubility_clear(kilogram, warm_K);
    bool boils = boil_solution_boiling_point(&m->bath->air, kilogram, &boils_K) == BOIL_OK;
    return boils ? fmin(clear_K, boils_K) : clear_K;
}

/* What was kept, as a liquid: what had not been dissolved is, by then. */
static void run_back(const boil_action *a, const moment *m)
{
    double mass_kg = boil_mixture_mass(m->kept);
    if (!(mass_kg > 0))
        return;
    boil_bath_feed f = {.kind = BOIL_FEED_LIQUID, .kilogram = {.water = m->kept->water / mass_kg}};
    for (int i = 0; i < BOIL_SALTS; i++)
        f.kilogram.salt[i] = m->kept->salt[i] / mass_kg;
    f.enthalpy_J_kg = boil_solution_heat(&f.kilogram, run_back_at(a, m, &f.kilogram)).enthalpy_J;
    boil_recorder_addition(m->recorder, m->time_s, BOIL_ACTION_LIQUID, mass_kg, a->is.back.over_s, m->bath, m->view);
    f.addition = m->recorder->history->additions_count;
    boil_recorder_run_back(m->recorder, m->kept);
    *m->kept = (boil_mixture){0};
    add_feed(m, f, mass_kg, a->is.back.over_s);
}

/* Loads ------------------------------------------------------------------------------------------------------------ */

/* A moment that is a sum of times, each read in a unit of its own, parts from another by a rounding: the end of a run from that of a
   stay, one load's way out from the next one's in. To a nanosecond they are one. */
static double same_moment(double s)
{
    const double per_s = 1 << 30;
    return round(s * per_s) / per_s;
}

static void add_body(const moment *m, const boil_action *a, boil_bath_body o)
{
    const boil_load *l = &a->is.load;
    boil_bath *b = m->bath;
    if (!(o.body.mass_kg > 0 || o.pocket_kg > 0))
        return;
    o.name = a->name;
    o.coefficient_W_m2K = l->coefficient_W_m2K;
    o.entry_K = o.pocket_kg > 0 ? o.entry_K : l->temperature_K;
    o.unheated = 1;
    o.in_start_s = m->time_s;
    o.in_end_s = m->time_s + l->lowering_s;
    o.out_start_s = l->at_boil ? (double)INFINITY : same_moment(m->time_s + l->immersed_s);
    o.out_end_s = o.out_start_s + l->lowering_s;
    o.at_boil = l->at_boil;
    o.boil_left_s = l->at_boil ? l->immersed_s : 0;
    o.as_of_s = m->time_s;
    o.latest_s = l->latest_s > 0 ? fmax(l->latest_s, o.in_end_s) : (double)INFINITY;
    b->bodies[b->bodies_count++] = o;
}

/* The share of a layer that goes with a load lowered through it, per second. All of it is all but a hundredth. */
static double takes_share(const moment *m, const boil_load *l)
{
    const double all_but = 0.01;
    const boil_rates_layer *layer = &m->view->layer;
    double coefficient = m->bath->plant->layer.drift_coefficient;
    if (m->bath->layer == BOIL_WATER_LAYER_NONE || !(layer->mass_kg > 0) || coefficient < 0)
        return 0;
    double water_kg_m3 = boil_water_density(layer->temperature_K);
    boil_entrainment_passage through = {.wetted_m2 = boil_load_wetted(l),
                                        .displaced_m3 = boil_load_displaced(l),
                                        .speed_m_s = m->bath->plant->tank.level_m / l->lowering_s,
                                        .layer_m = layer->thickness_m,
                                        .layer_kg = layer->mass_kg,
                                        .water_kg_m3 = water_kg_m3,
                                        .viscosity_m2_s = boil_viscosity_water(layer->temperature_K) / water_kg_m3};
    double taken = isinf(coefficient) ? layer->mass_kg : boil_entrainment(&through, coefficient);
    return -log(fmax(all_but, 1 - taken / layer->mass_kg)) / l->lowering_s;
}

static boil_bath_body trapped(const boil_load *l, const boil_bath *b, size_t number)
{
    boil_hollows h = boil_hollows_of(l, b->air.saturation_K);
    return (boil_bath_body){.body = {.unknowns = 1},
                            .pocket_kg = h.water_kg,
                            .pocket_W_K = h.conductance_W_K,
                            .release_s = h.release_s,
                            .released_s = (double)INFINITY,
                            .displaced_m3 = h.water_kg > 0 ? h.water_kg / boil_water_density(h.entry_K) : 0,
                            .entry_K = h.entry_K,
                            .load = number};
}

static void load(const boil_action *a, const moment *m)
{
    const boil_load *l = &a->is.load;
    const boil_rates_solution *s = &m->view->solution;
    boil_bath_body parts = {.body = boil_load_parts(l)}, basket = {.body = boil_load_basket(l)};
    basket.displaced_m3 = basket.body.mass_kg / l->metal.density_kg_m3;
    parts.displaced_m3 = boil_load_displaced(l) - basket.displaced_m3;
    parts.takes_share_s = takes_share(m, l);
    parts.drag_out_kg =
        boil_drag_out(l, s->convection.viscosity_Pa_s, s->density_kg_m3, m->bath->plant->transport.surface_tension_N_m);
    basket.load = parts.load = boil_recorder_load(m->recorder, m->time_s, l, m->bath, m->view);
    add_body(m, a, parts);
    add_body(m, a, basket);
    add_body(m, a, trapped(l, m->bath, parts.load));
    add_feed(m, water_at(boil_carried_in_K(l, m->bath->air.saturation_K)), boil_load_rinse(l), l->lowering_s);
}

/* What has not let go yet comes out again. */
static void lift_hollows(boil_bath *b, const boil_bath_body *o)
{
    for (size_t i = 0; i < b->feeds_count; i++)
        if (b->feeds[i].from_hollows && b->feeds[i].load == o->load)
            b->feeds[i].end_s = fmin(b->feeds[i].end_s, o->out_start_s);
}

/* Begin to lift the loads of a name; 0 lifts all. */
static void lift(const boil_action *a, const moment *m)
{
    for (size_t i = 0; i < m->bath->bodies_count; i++) {
        boil_bath_body *o = &m->bath->bodies[i];
        if ((a->name != 0 && o->name != a->name) || o->out_start_s <= m->time_s)
            continue;
        double takes = o->in_end_s - o->in_start_s;
        o->out_start_s = fmax(m->time_s, o->in_end_s);
        o->out_end_s = o->out_start_s + takes;
        o->at_boil = false;
        lift_hollows(m->bath, o);
    }
}

/* What is switched ------------------------------------------------------------------------------------------------- */

/* A fire that burns by hand burns on until the control puts it out. */
static void put_under_control(boil_bath *b, double set_point_K)
{
    if (!b->heat_controlled)
        b->fire_wanted = b->fire_lit = boil_bath_fire(b, set_point_K) > 0;
    b->heat_controlled = true;
    b->heat_set_K = set_point_K;
}

static void heat(const boil_action *a, const moment *m)
{
    const boil_heat_control *c = &m->bath->plant->heat_control;
    boil_bath *b = m->bath;
    bool has_control = c->mode != BOIL_HEAT_CONTROL_DIAL;
    switch (a->is.heat.order) {
    case BOIL_HEAT_TURN:
        b->dial = a->is.heat.dial;
        b->heat_controlled = false;
        break;
    case BOIL_HEAT_ON:
        b->high_limit_out = false;
        if (has_control)
            put_under_control(b, c->set_point_K);
        else
            b->heat_controlled = false;
        b->dial = 1;
        break;
    case BOIL_HEAT_THERMOSTAT:
        put_under_control(b, a->is.heat.set_point_K);
        break;
    case BOIL_HEAT_DIAL:
        b->heat_controlled = false;
        break;
    }
}

static void mixer(const boil_action *a, const moment *m)
{
    m->bath->mixer_on = a->is.on;
}

static void stir(const boil_action *a, const moment *m)
{
    m->bath->paddle_until_s = fmax(m->bath->paddle_until_s, m->time_s + a->is.stir_s);
}

static void lid(const boil_action *a, const moment *m)
{
    m->bath->lid_on = a->is.on;
}

static void exhaust(const boil_action *a, const moment *m)
{
    const boil_plant *p = m->bath->plant;
    boil_bath_set_draught(m->bath, a->is.on ? p->ambient.draught_m_s : p->fittings.still_draught_m_s);
}

static void crust(const boil_action *a, const moment *m)
{
    (void)a;
    boil_modes_break_crust(m->bath, m->state, m->view);
}

void boil_actions_apply(const boil_action *a, const boil_actions_moment *m)
{
    static void (*const apply[])(const boil_action *a, const moment *m) = {
        [BOIL_ACTION_LOAD] = load,       [BOIL_ACTION_LIFT] = lift,   [BOIL_ACTION_WATER] = water, [BOIL_ACTION_SALTS] = salts,
        [BOIL_ACTION_LIQUID] = liquid,   [BOIL_ACTION_HEAT] = heat,   [BOIL_ACTION_MIXER] = mixer, [BOIL_ACTION_LID] = lid,
        [BOIL_ACTION_EXHAUST] = exhaust, [BOIL_ACTION_CRUST] = crust, [BOIL_ACTION_BAIL] = take,   [BOIL_ACTION_DRAIN] = take,
        [BOIL_ACTION_RETURN] = run_back, [BOIL_ACTION_STIR] = stir,
    };
    apply[a->kind](a, m);
}
