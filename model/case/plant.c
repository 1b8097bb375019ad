#include "case/plant.h"

#include <math.h>
#include <stddef.h>

boil_plant boil_plant_default(void)
{
    return (boil_plant){
        .tank = boil_tank_default(),
        .heater = boil_heater_default(BOIL_HEAT_GAS),
        .heat_control = boil_heat_control_default(BOIL_HEAT_GAS),
        .losses = boil_losses_default(),
        .ambient = boil_ambient_default(),
        /* Two minutes, six inches, 280 to 295 degF and 1 lb per 2 gal: common practice, no source. */
        .limits = {.recovery_s = 120,
                   .freeboard_m = 0.1524,
                   .boiling_point_low_K = 410.93,
                   .boiling_point_high_K = 419.26,
                   .load_per_volume_kg_m3 = 59.913},
        .control = boil_water_control_default(),
        .rinse = {.film_m3_m2 = -1, .dwell_s = 30},
        .fittings = {.exhaust_on = true, .still_draught_m_s = 0.1, .lid_W_m2K = 7, .lid_return = 0.8, .grain_m = 1e-3},
        .by_hand = {.steady_s = 30, .reaction_s = 10, .thermometer_step_K = 1 / 1.8, .mark_step_m = 0.003175},
        .elevation_factor = 1,
        .transport = boil_transport_default(),
        .pool = boil_swell_default(),
        .dilution_factor = 1,
        .layer = boil_water_layer_law_default(),
    };
}

void boil_plant_bare(boil_plant *p)
{
    p->afloat.mass_kg = p->crust_kg = p->bed_kg = 0;
    p->salt_stated = true;
}

void boil_plant_at_boil(boil_plant *p)
{
    boil_plant_bare(p);
    p->charge.temperature_K = 0;
}

double boil_plant_mixer_power(const boil_plant *p)
{
    const double usual_W_m3 = 200; /* gentle agitation of open tanks, judgement */
    double volume_m3 = boil_tank_area(&p->tank) * p->tank.level_m;
    return p->fittings.mixer_W > 0 ? p->fittings.mixer_W : usual_W_m3 * volume_m3;
}

double boil_plant_usual_load(const boil_plant *p)
{
    return p->limits.load_per_volume_kg_m3 * boil_tank_area(&p->tank) * p->tank.level_m;
}

static bool is_plain_water(const boil_initial_charge *c)
{
    return c->basis != BOIL_INITIAL_BY_BOILING_POINT && c->value == 0;
}

static const char *blend_problem(const double blend[BOIL_SALTS])
{
    double sum = 0;
    for (int i = 0; i < BOIL_SALTS; i++) {
        if (!(blend[i] >= 0 && blend[i] <= 1))
            return "each share of the salts must be between 0 % and 100 %";
        sum += blend[i];
    }
    if (!(fabs(sum - 1) <= 5e-4))
        return "the shares of the salts must add up to 100 %";
    if (!(blend[BOIL_NAOH] >= 0.3))
        return "sodium hydroxide must be at least 30 % of the salts: weaker blends are beyond the correlations";
    return NULL;
}

static const char *charge_problem(const boil_initial_charge *c)
{
    bool named = c->blend[BOIL_NAOH] != 0 || c->blend[BOIL_NANO3] != 0 || c->blend[BOIL_NANO2] != 0;
    const char *problem = named || !is_plain_water(c) ? blend_problem(c->blend) : NULL;
    if (problem)
        return problem;
    if (!(c->temperature_K == 0 || (c->temperature_K >= 273.15 && c->temperature_K <= 473.15)))
        return "temperature of the bath must be between 273.15 K and 473.15 K";
    return NULL;
}

const char *boil_plant_afloat_problem(const boil_plant *p)
{
    const boil_water_afloat *a = &p->afloat;
    if (!(a->mass_kg >= 0 && a->mass_kg <= 1e4))
        return "water afloat must be between 0 kg and 1e4 kg";
    if (a->mass_kg > 0 &&
        !(a->temperature_K >= 273.15 && a->temperature_K <= boil_water_saturation_temperature(p->ambient.pressure_Pa)))
        return "water afloat must be between 273.15 K and the boiling point of water in the room";
    return NULL;
}

/* With them the bath begins quiet: below the boil of what is left dissolved. */
const char *boil_plant_crust_problem(const boil_plant *p)
{
    double out_kg = p->crust_kg + p->bed_kg;
    boil_initial_state bath;
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    double boils_K;
    if (p->crust_kg == 0 && p->bed_kg == 0)
        return NULL;
    if (!(p->crust_kg >= 0 && p->crust_kg <= 1e5 && p->bed_kg >= 0 && p->bed_kg <= 1e5))
        return "crust, and salt on the floor, must be between 0 kg and 1e5 kg";
    if (boil_plant_initial(p, &bath) != BOIL_OK)
        return NULL; /* which is said of the charge */
    double both_kg = bath.mixture.salt[BOIL_NANO3] + bath.mixture.salt[BOIL_NANO2];
    if (!(out_kg < both_kg))
        return "crust and salt on the floor must be less than the nitrate and nitrite of the bath";
    double left = 1 - out_kg / both_kg;
    bath.mixture.salt[BOIL_NANO3] *= left;
    bath.mixture.salt[BOIL_NANO2] *= left;
    bool below = boil_solution_boiling_point(&air, &bath.mixture, &boils_K) == BOIL_OK && bath.temperature_K < boils_K;
    return below ? NULL
                 : "bath with crust or salt on the floor must be colder than the boiling point of what is left dissolved";
}

static const char *rinse_problem(const boil_rinse *r)
{
    if (!(r->temperature_K == 0 || (r->temperature_K >= 273.15 && r->temperature_K <= 373.15)))
        return "temperature of the rinse must be between 273.15 K and 373.15 K";
    if (!(r->film_m3_m2 <= 1e-3))
        return "film from the rinse must be at most 1e-3 m3/m2";
    if (!(r->dwell_s >= 0 && r->dwell_s <= 86400))
        return "dwell in the rinse must be between 0 s and 86400 s";
    return NULL;
}

static const char *limits_problem(const boil_limits *l)
{
    if (!(l->recovery_s >= 1 && l->recovery_s <= 86400))
        return "recovery limit must be between 1 s and 86400 s";
    if (!(l->freeboard_m >= 0 && l->freeboard_m <= 2))
        return "freeboard limit must be between 0 m and 2 m";
    if (!(l->boiling_point_low_K >= 373.15 && l->boiling_point_high_K <= 473.15 &&
          l->boiling_point_low_K < l->boiling_point_high_K))
        return "boiling point limits must rise and lie between 373.15 K and 473.15 K";
    if (!(l->load_per_volume_kg_m3 > 0 && l->load_per_volume_kg_m3 <= 5000))
        return "load limit must be above 0 and at most 5000 kg/m3";
    return NULL;
}

static const char *fittings_problem(const boil_fittings *f)
{
    if (!(f->mixer_W >= 0 && f->mixer_W <= 1e5))
        return "mixer power must be between 0 W and 1e5 W";
    if (!(f->still_draught_m_s >= 0 && f->still_draught_m_s <= 3))
        return "draught with the exhaust off must be between 0 m/s and 3 m/s";
    if (!(f->lid_W_m2K >= 1 && f->lid_W_m2K <= 20))
        return "coefficient of the lid must be between 1 W/m2K and 20 W/m2K";
    if (!(f->lid_return >= 0 && f->lid_return <= 1))
        return "share returned by the lid must be between 0 % and 100 %";
    if (!(f->grain_m >= 2e-4 && f->grain_m <= 0.01))
        return "grain size of the salts must be between 0.2 mm and 10 mm";
    return NULL;
}

static const char *by_hand_problem(const boil_by_hand *h)
{
    if (!(h->steady_s >= 1 && h->steady_s <= 3600))
        return "a boil is steady after 1 s to 3600 s";
    if (!(h->reaction_s >= 1 && h->reaction_s <= 600))
        return "reaction must be between 1 s and 600 s";
    if (!(h->thermometer_step_K >= 0 && h->thermometer_step_K <= 10))
        return "step of the thermometer must be between 0 K and 10 K";
    if (!(h->mark_step_m >= 0 && h->mark_step_m <= 0.1))
        return "step of the mark must be between 0 m and 0.1 m";
    return NULL;
}

static const char *transport_problem(const boil_transport *t)
{
    if (!(t->viscosity_factor >= 0.7 && t->viscosity_factor <= 1.5))
        return "viscosity factor must be between 0.7 and 1.5";
    if (!(t->conductivity_W_mK >= 0.5 && t->conductivity_W_mK <= 0.8))
        return "conductivity of the bath must be between 0.5 W/mK and 0.8 W/mK";
    if (!(t->expansion_1_K >= 4e-4 && t->expansion_1_K <= 8e-4))
        return "thermal expansion of the bath must be between 4e-4 1/K and 8e-4 1/K";
    if (!(t->surface_tension_N_m >= 0.06 && t->surface_tension_N_m <= 0.10))
        return "surface tension of the bath must be between 0.06 N/m and 0.10 N/m";
    return NULL;
}

const char *boil_plant_heat_problem(const boil_plant *p)
{
    const double most_W_m2 = 3e6, water_boils_K = 373.15;
    if (boil_heater_output(&p->heater, 1, water_boils_K) > most_W_m2 * boil_tank_area(&p->tank))
        return "heat to the tank must be at most 3 MW for each m2 of its surface: no boil takes up more";
    return NULL;
}

const char *boil_plant_problem(const boil_plant *p)
{
    if (p == NULL)
        return "there is no plant";
    const char *found[] = {
        boil_tank_problem(&p->tank),     boil_ambient_problem(&p->ambient), boil_heater_problem(&p->heater),
        boil_losses_problem(&p->losses), boil_swell_problem(&p->pool),      boil_water_layer_law_problem(&p->layer),
        charge_problem(&p->charge),      limits_problem(&p->limits),        boil_water_control_problem(&p->control),
        fittings_problem(&p->fittings),  transport_problem(&p->transport),  boil_heat_control_problem(&p->heat_control),
        by_hand_problem(&p->by_hand),    rinse_problem(&p->rinse)};
    for (size_t i = 0; i < sizeof found / sizeof found[0]; i++)
        if (found[i])
            return found[i];
    const char *more[] = {boil_plant_heat_problem(p), boil_plant_afloat_problem(p), boil_plant_crust_problem(p)};
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++)
        if (more[i])
            return more[i];
    if (!(p->elevation_factor >= 0.85 && p->elevation_factor <= 1.10))
        return "elevation factor must be between 0.85 and 1.10";
    if (!(p->dilution_factor >= 0.85 && p->dilution_factor <= 1.10))
        return "dilution factor must be between 0.85 and 1.10";
    return NULL;
}

static boil_outcome charge_fraction(const boil_plant *p, const boil_conditions *air, double *fraction)
{
    const boil_initial_charge *c = &p->charge;
    *fraction = 0;
    if (is_plain_water(c))
        return BOIL_OK;
    switch (c->basis) {
    case BOIL_INITIAL_BY_BOILING_POINT:
        return boil_solution_fraction_boiling_at(air, c->blend, c->value, fraction);
    case BOIL_INITIAL_BY_STRENGTH:
        return boil_solution_fraction_of_strength(air, c->blend, c->value, fraction);
    case BOIL_INITIAL_BY_SALT_FRACTION:
        break;
    }
    *fraction = c->value;
    return c->value > 0 && c->value < 0.9 ? BOIL_OK : BOIL_OUT_OF_RANGE;
}

boil_outcome boil_plant_initial(const boil_plant *p, boil_initial_state *out)
{
    if (p == NULL || out == NULL)
        return BOIL_BAD_INPUT;
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    double fraction, boiling_point;
    boil_outcome outcome = charge_fraction(p, &air, &fraction);
    if (outcome != BOIL_OK)
        return outcome;
    boil_mixture kilogram = boil_mixture_of(p->charge.blend, fraction);
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(&air, &kilogram, &guess, &boiling_point, NULL) != BOIL_OK)
        return BOIL_OUT_OF_RANGE;
    double T = p->charge.temperature_K > 0 ? fmin(p->charge.temperature_K, boiling_point) : boiling_point;
    if (!(boil_solution_range_at(boiling_point, guess.equivalent_molality).margin > 0))
        return BOIL_OUT_OF_RANGE;
    double density = boil_solution_density(&kilogram, T);
    double volume = boil_tank_area(&p->tank) * p->tank.level_m, mass = density * volume;
    out->mixture = (boil_mixture){.water = kilogram.water * mass};
    for (int i = 0; i < BOIL_SALTS; i++)
        out->mixture.salt[i] = kilogram.salt[i] * mass;
    out->salt_fraction = fraction;
    out->boiling_point_K = boiling_point;
    out->temperature_K = T;
    out->density_kg_m3 = density;
    out->volume_m3 = volume;
    return BOIL_OK;
}
