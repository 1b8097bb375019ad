#include <math.h>

#include "base/constants.h"
#include "base/cube_root.h"
#include "base/larger.h"
#include "properties/water.h"
#include "bath/rates_parts.h"
#include "transfer/interface_heat.h"

#define WATER_CONDUCTIVITY 0.65 /* W/mK, liquid water 40 to 100 degC: 0.63 to 0.68 [IAPWS R15-11] */

/* bath/rates_water.c -- the water afloat, what leaves through the surface, and what goes in. */

/* Temperature of the layer. While it has next to no mass it is that of the water that began it; and where an attempted step takes it
   below what counts as gone, no water is colder than its melting point or much hotter than its boil, whatever is left of its heat. So
   much hotter it must be able to get: what drips from a lid floats as thinly for hours, and is found to boil by passing its boil. */
static double layer_temperature(const boil_bath *b, const double y[], double gone_kg)
{
    const double seed_kg = 1e-6, melts_K = 273.15, over_boil_K = 1;
    if (b->layer == BOIL_WATER_LAYER_BOILS)
        return b->air.saturation_K;
    double m = boil_larger(0, y[BOIL_STATE_LAYER_MASS]), fresh = b->layer_fresh_J_kg;
    double h = (m > 0 ? y[BOIL_STATE_LAYER_HEAT] + seed_kg * fresh : fresh * seed_kg) / (m + seed_kg);
    if (m < gone_kg) /* of a heat: what is left of a trace may be that of no water at all */
        h = boil_smaller(boil_larger(h, boil_water_enthalpy(melts_K)), boil_water_enthalpy(b->air.saturation_K + over_boil_K));
    return boil_water_temperature(h);
}

/* Speed of the plumes of a heated bath, that stir the interface. */
static double plume_speed(const boil_bath *b, const boil_rates_solution *s, double heater_W, double depth_m)
{
    const boil_convection_liquid *l = &s->convection;
    return boil_cube_root(BOIL_GRAVITY * l->expansion_1_K * boil_larger(0, heater_W) * depth_m /
                          (l->density_kg_m3 * l->heat_capacity_J_kgK * b->area_m2));
}

/* What loads being lowered take with them: each a share of what is there, so that the layer never falls below nothing. */
static double taken_along(const boil_bath *b, double layer_kg)
{
    double share_s = 0;
    for (size_t i = 0; i < b->bodies_count; i++)
        if (b->bodies[i].lowering)
            share_s += b->bodies[i].takes_share_s;
    return share_s * layer_kg;
}

static double layer_conductance(const boil_bath *b, double t, const boil_rates_solution *s, double water_K, double water_kg_m3)
{
    boil_interface_liquid water = {WATER_CONDUCTIVITY, water_kg_m3, boil_water_heat_capacity(water_K)};
    boil_interface_liquid bath = {s->convection.conductivity_W_mK, s->density_kg_m3, s->convection.heat_capacity_J_kgK};
    return boil_interface_conductance(&water, &bath, b->plant->layer.path_m, t - b->layer_since_s);
}

/* Water over salt that stands dry does not float on: it soaks in within seconds, sooner where it is stirred in, and what flashes
   of it escapes. In a boiling bath that is part of the boil. */
static void soak(const boil_bath *b, const double y[], const boil_rates_solution *s, double dry, boil_rates_layer *out)
{
    double solid[BOIL_SALTS];
    for (int i = 0; i < BOIL_SALTS; i++)
        solid[i] = boil_larger(0, y[BOIL_STATE_SOLID_NAOH + i]);
    out->wetted = boil_flash_on_salt(&b->air, solid, s->temperature_K, out->temperature_K);
    double mixing = out->mixing_kg_s;
    out->soaking_kg_s = dry * (out->mass_kg / BOIL_RATES_SOAKS_S + mixing);
    out->mixing_kg_s = (1 - dry) * mixing + out->soaking_kg_s;
    if (!b->boiling)
        out->flashing_kg_s = (1 - dry) * out->flashing_kg_s + out->soaking_kg_s * out->wetted.steam;
}

/* What lies there, without its flows. */
static boil_outcome layer_body(const boil_bath *b, const double y[], const boil_rates_solution *s, boil_rates_layer *out)
{
    *out = (boil_rates_layer){.temperature_K = s->temperature_K};
    if (b->layer == BOIL_WATER_LAYER_NONE)
        return BOIL_OK;
    out->mass_kg = boil_larger(0, y[BOIL_STATE_LAYER_MASS]);
    out->temperature_K = layer_temperature(b, y, BOIL_BATH_LAYER_GONE * s->mass_kg);
    if (!(out->temperature_K > 200 && out->temperature_K < 500))
        return BOIL_NOT_FINITE;
    out->thickness_m = out->mass_kg / boil_water_density(out->temperature_K) / b->area_m2;
    return BOIL_OK;
}

boil_outcome boil_rates_of_layer(const boil_bath *b, double t, const double y[], const boil_rates_solution *s,
                                 const boil_rates_pool *pool, const boil_rates_salts *salts, double heater_W,
                                 boil_rates_guess *g, boil_rates_layer *out)
{
    const boil_water_layer_law *law = &b->plant->layer;
    boil_outcome outcome = layer_body(b, y, s, out);
    if (outcome != BOIL_OK || b->layer == BOIL_WATER_LAYER_NONE)
        return outcome;
    double water_kg_m3 = boil_water_density(out->temperature_K), depth = s->volume_m3 / b->area_m2;
    out->enthalpy_J_kg = boil_water_enthalpy(out->temperature_K);
    out->cover = boil_water_layer_cover(law, out->thickness_m);
    double steam_W_kg = BOIL_GRAVITY * pool->steam_velocity_m_s, mixer_W_kg = pool->stirring_W_kg - steam_W_kg;
    boil_overturn_pool stirred = {b->area_m2, depth, s->density_kg_m3, water_kg_m3, steam_W_kg + law->mixer_share * mixer_W_kg};
    double turnover = b->layer_held ? law->held_factor : law->turnover_factor;
    out->mixing_kg_s = boil_water_layer_mixing(law, turnover, &stirred, plume_speed(b, s, heater_W, depth), out->mass_kg,
                                               out->cover, &out->mixing_slope_kg_s) +
                       taken_along(b, out->mass_kg);
    if (law->local_steam > 0 && !b->boiling)
        out->flashing_kg_s =
            law->local_steam * out->mixing_kg_s *
            boil_flash_table_yield(&g->tables->flash, out->temperature_K, s->boiling_point_K - s->temperature_K);
    out->heat_W = (s->temperature_K - out->temperature_K) * b->area_m2 * out->cover *
                  layer_conductance(b, t, s, out->temperature_K, water_kg_m3);
    if (salts->dry > 0)
        soak(b, y, s, salts->dry, out);
    return BOIL_OK;
}

static double water_pressure(void *nothing, double T, double stronger, double *by_K, double *by_log_stronger)
{
    (void)nothing;
    (void)stronger;
    *by_log_stronger = 0;
    return boil_water_log_saturation_pressure(T, by_K);
}

static boil_surface_liquid layer_surface(const boil_bath *b, const boil_rates_layer *layer)
{
    return (boil_surface_liquid){.temperature_K = layer->temperature_K,
                                 .boiling_K = b->air.saturation_K,
                                 .water_J_kg = layer->enthalpy_J_kg,
                                 .log_pressure = water_pressure};
}

/* The bath's own, with the equivalent molality of the skin asked about last. */
typedef struct {
    const boil_conditions *air;
    const boil_mixture *mixture;
    double molality, by_log_stronger, stronger; /* how ln of it rises at the boil: it only aims the search */
} solution_surface;

static double solution_pressure(void *of, double T, double stronger, double *by_K, double *by_log_stronger)
{
    const double within = 1e-3, least = 0.3; /* leaves 1e-5 K of the skin; of a guess, however far it is carried */
    solution_surface *s = of;
    boil_mixture m = *s->mixture;
    m.water /= stronger;
    s->molality *= boil_larger(least, 1 + s->by_log_stronger * (stronger / s->stronger - 1));
    s->stronger = stronger;
    return boil_solution_log_vapour_pressure(s->air, &m, T, within, &s->molality, by_K, by_log_stronger);
}

/* From the strength of the skin that was found last. */
static boil_surface_liquid bath_surface(const boil_bath *b, const boil_rates_solution *s, double bath_K,
                                        const boil_rates_guess *g, solution_surface *of)
{
    *of = (solution_surface){&b->air, &s->mixture, g->skin_times * s->equivalent_molality, s->slope.molality, g->skin_stronger};
    return (boil_surface_liquid){.temperature_K = bath_K,
                                 .boiling_K = s->boiling_point_K,
                                 .boiling_by_log_stronger_K = -s->mixture.water * s->slope.water,
                                 .water_J_kg = s->heat.solution.water,
                                 .density_kg_m3 = s->density_kg_m3,
                                 .salt_fraction = 1 - s->mixture.water / s->mass_kg,
                                 .salt_transfer_m_s = b->plant->losses.salt_transfer_m_s,
                                 .strongest = boil_solution_strongest_molality(s->temperature_K) / s->equivalent_molality,
                                 .log_pressure = solution_pressure,
                                 .of = of};
}

/* A lid takes the place of the open air. It condenses what its own loss to the room carries away, UA (T - T_room)/latent, at
   most what there is; a share drips back as water, the rest leaks out. No more evaporates than it condenses; steam that boils
   off lifts it and leaves. Nothing radiates past it.

   Off the boil the drip floats on the hotter bath and boils there. That is condensed as well, and under its steam the bath
   evaporates only the rest: it loses no more than a boiling one. Within a degree of its boil [judgement] less and less so: else a
   bath that just lost its boil would lose less than before, boil again at once, and so on. */
static double beside_drip(const boil_rates_solution *s, double bath_K, double bath_kg_s, double boils_kg_s, double takes_kg_s)
{
    const double near_K = 1;
    double far = fmin(1, fmax(0, s->boiling_point_K - bath_K) / near_K);
    return bath_kg_s - far * fmax(0, bath_kg_s + boils_kg_s - takes_kg_s);
}

static void put_lid_on(const boil_bath *b, const boil_rates_solution *solution, const boil_rates_layer *l, double bath_K,
                       double leaving_kg_s, boil_rates_surface *s)
{
    const boil_fittings *f = &b->plant->fittings;
    double T = fmin(bath_K, b->air.saturation_K), latent = boil_water_latent_heat(T);
    double takes = f->lid_W_m2K * b->area_m2 * fmax(0, bath_K - b->ambient.temperature_K) / latent;
    double bath = fmax(0, s->bath.evaporation_kg_s), layer = fmax(0, s->layer.evaporation_kg_s);
    double open = bath + layer, share = open > takes ? takes / open : 1;
    double boils = b->layer == BOIL_WATER_LAYER_BOILS ? fmin(takes, fmax(0, l->heat_W) / latent) : 0;
    double evaporates = beside_drip(solution, bath_K, bath * share, boils, takes);
    s->bath = (boil_surface_flow){evaporates, 0, 0, s->bath.vapour_J_kg, s->bath.skin_K};
    s->layer = (boil_surface_flow){layer * share, 0, 0, s->layer.vapour_J_kg, s->layer.skin_K};
    s->condensate_kg_s = f->lid_return * fmin(takes, open * share + leaving_kg_s);
    s->condensate_J_kg = boil_water_enthalpy(T);
}

static boil_outcome open_surface(const boil_bath *b, const boil_rates_solution *s, const boil_rates_layer *layer, double bath_K,
                                 double steam_leaving_kg_s, boil_rates_guess *g, boil_rates_surface *out)
{
    const boil_losses *losses = &b->plant->losses;
    solution_surface of;
    boil_surface_liquid bath = bath_surface(b, s, bath_K, g, &of), water = layer_surface(b, layer);
    double cover = layer->cover, open = 1 - cover;
    boil_outcome outcome =
        boil_surface_exchange(losses, &b->over, &bath, b->area_m2 * open, steam_leaving_kg_s * open, &g->skin, &out->bath);
    bool found = outcome == BOIL_OK && s->equivalent_molality > 0;
    g->skin_times = found ? of.molality / s->equivalent_molality : 1;
    g->skin_stronger = found ? of.stronger : 1;
    if (outcome == BOIL_OK)
        outcome = boil_surface_exchange(losses, &b->over, &water, b->area_m2 * cover, steam_leaving_kg_s * cover,
                                        &g->layer_skin, &out->layer);
    return outcome;
}

/* Under a crust the bath may be hotter than its boil: what shows above is not. */
static double surface_temperature(const boil_rates_solution *s, const boil_rates_salts *salts)
{
    return salts->crust_kg > 0 ? fmin(s->temperature_K, s->boiling_point_K) : s->temperature_K;
}

boil_outcome boil_rates_of_surface(const boil_bath *b, const boil_rates_solution *s, const boil_rates_salts *salts,
                                   const boil_rates_layer *layer, double steam_leaving_kg_s, boil_rates_guess *g,
                                   boil_rates_surface *out)
{
    const boil_plant *p = b->plant;
    *out = (boil_rates_surface){
        .wall_W = boil_wall_table_loss(&g->tables->wall, &p->losses, &p->tank, &b->ambient, s->temperature_K)};
    double bath_K = surface_temperature(s, salts);
    boil_outcome outcome = open_surface(b, s, layer, bath_K, steam_leaving_kg_s, g, out);
    if (outcome != BOIL_OK)
        return outcome;
    out->bath.evaporation_kg_s *= 1 - salts->crust_cover;
    if (b->lid_on)
        put_lid_on(b, s, layer, bath_K, steam_leaving_kg_s, out);
    out->air_W = out->bath.radiation_W + out->bath.convection_W + out->layer.radiation_W + out->layer.convection_W;
    return BOIL_OK;
}

static void add_released(const boil_bath *b, double rate, double power, boil_rates_inflow *in)
{
    in->released_kg_s += rate;
    in->released_W += power;
    if (b->boiling) {
        in->component_kg_s[0] += rate;
        in->liquid_W += power;
    } else {
        in->water_kg_s += rate;
        in->water_W += power;
    }
}

static void add_feed(const boil_bath *b, const boil_bath_feed *f, boil_rates_inflow *in)
{
    double rate = f->rate_kg_s, power = rate * f->enthalpy_J_kg;
    if (f->from_hollows) {
        add_released(b, rate, power, in);
        return;
    }
    switch (f->kind) {
    case BOIL_FEED_WATER:
        in->water_kg_s += rate;
        in->water_W += power;
        break;
    case BOIL_FEED_LIQUID:
        in->liquid_kg_s += rate;
        in->liquid_W += power;
        in->component_kg_s[0] += rate * f->kilogram.water;
        for (int k = 0; k < BOIL_SALTS; k++)
            in->component_kg_s[1 + k] += rate * f->kilogram.salt[k];
        break;
    case BOIL_FEED_SALTS:
        in->salts_kg_s += rate;
        in->salts_W += power;
        for (int k = 0; k < BOIL_SALTS; k++)
            in->salt_kg_s[k] += rate * f->kilogram.salt[k];
        break;
    case BOIL_FEED_BAIL:
    case BOIL_FEED_DRAIN:
        break;
    }
}

boil_rates_inflow boil_rates_of_inflow(const boil_bath *b, double valve_kg_s, const boil_rates_surface *surface)
{
    boil_rates_inflow in = {.water_kg_s = valve_kg_s};
    if (valve_kg_s > 0)
        in.water_W = valve_kg_s * boil_water_enthalpy(b->plant->control.water_K);
    for (size_t i = 0; i < b->feeds_count; i++)
        add_feed(b, &b->feeds[i], &in);
    in.water_kg_s += surface->condensate_kg_s;
    in.water_W += surface->condensate_kg_s * surface->condensate_J_kg;
    return in;
}

/* A vessel dips into what floats: all but what it takes in two seconds is gone first, so that nothing ends at once. */
static void bail(const boil_rates_solution *s, const boil_rates_layer *layer, double rate_m3_s, boil_rates_outflow *o)
{
    const double dips_s = 2;
    double water_kg_m3 = layer->mass_kg > 0 ? boil_water_density(layer->temperature_K) : 1;
    double floats_m3 = layer->mass_kg / water_kg_m3;
    double layer_kg_s = floats_m3 > 0 ? rate_m3_s * floats_m3 / (floats_m3 + dips_s * rate_m3_s) * water_kg_m3 : 0;
    o->layer_kg_s += layer_kg_s;
    o->liquid_kg_s += (rate_m3_s - layer_kg_s / water_kg_m3) * s->density_kg_m3;
}

/* Undissolved salt goes with the liquid in the share that it has of both, a crust apart. */
static void drain(const double y[], const boil_rates_solution *s, const boil_rates_salts *salts, double rate_m3_s,
                  boil_rates_outflow *o)
{
    double liquid_kg_s = rate_m3_s * s->density_kg_m3;
    double all = salts->undissolved_kg + salts->crust_kg, share_s = liquid_kg_s / s->mass_kg;
    o->liquid_kg_s += liquid_kg_s;
    if (!(salts->undissolved_kg > 0))
        return;
    for (int i = 0; i < BOIL_SALTS; i++)
        o->solid_kg_s[i] += share_s * salts->undissolved_kg / all * boil_larger(0, y[BOIL_STATE_SOLID_NAOH + i]);
    o->bed_kg_s += share_s * fmin(salts->undissolved_kg, boil_larger(0, y[BOIL_STATE_BED_MASS]));
}

boil_rates_outflow boil_rates_of_outflow(const boil_bath *b, const double y[], const boil_rates_solution *s,
                                         const boil_rates_salts *salts, const boil_rates_layer *layer)
{
    boil_rates_outflow o = {0};
    for (size_t i = 0; i < b->feeds_count; i++) {
        const boil_bath_feed *f = &b->feeds[i];
        if (f->kind == BOIL_FEED_BAIL)
            bail(s, layer, f->rate_kg_s, &o);
        else if (f->kind == BOIL_FEED_DRAIN)
            drain(y, s, salts, f->rate_kg_s, &o);
    }
    return o;
}

/* A boiling layer's temperature is locked to Tsat, so all heat becomes steam: W (hv - hw) = heat, the feed's warming paid. It
   ends when the heat falls to what evaporation without boiling would take: where the temperature of a layer at Tsat would
   fall. */
boil_rates_layer_vapour boil_rates_of_layer_vapour(const boil_bath *b, const boil_rates_layer *layer,
                                                   const boil_rates_surface *surface, const boil_rates_inflow *in)
{
    const boil_surface_flow *open = &surface->layer;
    if (b->layer == BOIL_WATER_LAYER_NONE)
        return (boil_rates_layer_vapour){0, 0, 0, 0};
    double evaporated_J_kg = open->vapour_J_kg, hw = layer->enthalpy_J_kg;
    if (b->layer == BOIL_WATER_LAYER_STILL)
        return (boil_rates_layer_vapour){.evaporated_kg_s = open->evaporation_kg_s,
                                         .heat_W = open->evaporation_kg_s * evaporated_J_kg};
    double heat = layer->heat_W - open->radiation_W - open->convection_W + in->water_W - in->water_kg_s * hw;
    double steam_J_kg = boil_bath_steam_enthalpy(b, b->air.saturation_K), boiled = heat / (steam_J_kg - hw);
    return (boil_rates_layer_vapour){.boiled_kg_s = boiled,
                                     .heat_W = boiled * steam_J_kg,
                                     .boil_margin_W = heat - open->evaporation_kg_s * (evaporated_J_kg - hw)};
}
