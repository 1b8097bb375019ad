#include "transfer/surface.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "base/constants.h"
#include "properties/water.h"

/* Carrier's open-tank formula in SI: q = (a + b v)(pw - pa), W/m2 per Pa, and per m/s of air. [ASHRAE HVAC
   Applications] */
static const double STILL_AIR = 0.089, MOVING_AIR = 0.0782;

/* h_c/g of equation (4), J/kgK: molar masses of dry air and water [IUPAC], heat capacity of air at 300 to 350 K and the
   Lewis number alpha/D of water vapour in air at 298 K [Incropera & DeWitt, tables A.4 and A.8]. */
static const double AIR_G_MOL = 28.96, WATER_G_MOL = 18.015, AIR_J_KGK = 1007, LEWIS = 0.87;

/* dL/dT of water between 0 and 150 degC, J/kgK, to 15 %. It only aims Newton's steps, and does not enter the answer. */
static const double LATENT_SLOPE = -2600;

/* The skin lies within this of bath and room, whichever is beyond: over the ranges of room and losses the strongest
   film passes 0.97 W/m2 per Pa, so 6 kW/m2 from a skin of at most 308 K and 24 kW/m2 to a skin however dry, and 1000
   W/m2K times 25 K is more than either. */
static const double SKIN_MARGIN_K = 25;

boil_losses boil_losses_default(void)
{
    return (boil_losses){.evaporation_factor = 1,
                         .convection_factor = 1,
                         .radiation_factor = 1,
                         .wall_coefficient_W_m2K = -1,
                         .emissivity = 0.95,
                         .liquid_coefficient_W_m2K = 1500,
                         .insulation_conductivity_W_mK = 0.070};
}

const char *boil_losses_problem(const boil_losses *l)
{
    if (l == NULL)
        return "there are no losses";
    if (!(l->evaporation_factor >= 0 && l->evaporation_factor <= 3))
        return "evaporation factor must be between 0 and 3";
    if (!(l->convection_factor >= 0 && l->convection_factor <= 3))
        return "convection factor must be between 0 and 3";
    if (!(l->radiation_factor >= 0 && l->radiation_factor <= 3))
        return "radiation factor must be between 0 and 3";
    if (!(l->wall_coefficient_W_m2K <= 50))
        return "wall coefficient must be between 0 W/m2K and 50 W/m2K (or negative: from insulation and air)";
    if (!(l->emissivity >= 0.90 && l->emissivity <= 0.96))
        return "emissivity of the surface must be between 0.90 and 0.96";
    if (!(l->liquid_coefficient_W_m2K >= 1000 && l->liquid_coefficient_W_m2K <= 2000))
        return "bath-side coefficient of the surface must be between 1000 W/m2K and 2000 W/m2K";
    if (!(l->insulation_conductivity_W_mK >= 0.04 && l->insulation_conductivity_W_mK <= 0.08))
        return "conductivity of the insulation must be between 0.04 W/mK and 0.08 W/mK";
    return NULL;
}

/* What stays while the skin temperature is sought. */
typedef struct {
    const boil_losses *losses;
    double pressure_Pa, air_vapour_Pa, room_K, liquid_K;
    double film_W_m2;    /* g L of equation (2) without f_e */
    double steam_kg_m2s; /* leaving the pool, not below 0 */
} surroundings;

/* The skin balance, per square metre. */
typedef struct {
    double evaporation_kg_m2s, radiation_W_m2, convection_W_m2;
    double excess_W_m2; /* equation (3): left less right side; falls as the skin warms */
    double slope;       /* of the excess, W/m2K */
    double allowed;     /* of the excess: 1e-10 of the heat flows, and what rounding of T and p leaves */
} balance;

static bool balanced(const balance *b)
{
    return fabs(b->excess_W_m2) <= b->allowed;
}

/* Equation (1). Returns the slope of the heat that evaporation takes, W/m2K: its part g L ln[...] has no latent heat
   in it. */
static double evaporate(const surroundings *s, double latent, double vapour_Pa, double vapour_slope, balance *b)
{
    double film = s->losses->evaporation_factor * s->film_W_m2;
    if (film == 0) {
        b->evaporation_kg_m2s = 0;
        return 0;
    }
    double capacity = film / latent * log((s->pressure_Pa - s->air_vapour_Pa) / (s->pressure_Pa - vapour_Pa));
    double slope = film * vapour_slope / (s->pressure_Pa - vapour_Pa);
    if (capacity <= 0) {
        b->evaporation_kg_m2s = capacity;
        return slope;
    }
    b->evaporation_kg_m2s = fmax(0, capacity - s->steam_kg_m2s);
    return b->evaporation_kg_m2s > 0 ? slope - s->steam_kg_m2s * LATENT_SLOPE : 0;
}

/* Radiation and equation (4). Returns the slope of both, W/m2K. */
static double warm_the_room(const surroundings *s, double latent, double skin_K, balance *b)
{
    const boil_losses *l = s->losses;
    double air = l->convection_factor * s->film_W_m2 / latent * AIR_G_MOL / WATER_G_MOL * AIR_J_KGK * cbrt(LEWIS * LEWIS);
    double grey = l->radiation_factor * l->emissivity * BOIL_STEFAN_BOLTZMANN;
    double skin3 = skin_K * skin_K * skin_K, room2 = s->room_K * s->room_K, warmer = skin_K - s->room_K;
    b->convection_W_m2 = air * warmer;
    b->radiation_W_m2 = grey * (skin3 * skin_K - room2 * room2);
    return 4 * grey * skin3 + air * (1 - warmer * LATENT_SLOPE / latent);
}

/* False where the liquid's vapour pressure reaches the room's: there the film, if there is one, has no limit, and the skin
   must be cooler. The last millionth counts as reached: rounding would drown p - pw. */
static bool balance_at(const surroundings *s, double skin_K, double vapour_Pa, double vapour_slope, balance *b)
{
    double film = s->losses->evaporation_factor * s->film_W_m2;
    if (film > 0 && !(vapour_Pa < (1 - 1e-6) * s->pressure_Pa))
        return false;
    double liquid_side = s->losses->liquid_coefficient_W_m2K, latent = boil_water_latent_heat(skin_K);
    double evaporation_slope = evaporate(s, latent, vapour_Pa, vapour_slope, b);
    double room_slope = warm_the_room(s, latent, skin_K, b);
    b->slope = -liquid_side - evaporation_slope - room_slope;
    double supply = liquid_side * (s->liquid_K - skin_K), evaporation = b->evaporation_kg_m2s * latent;
    b->excess_W_m2 = supply - evaporation - b->radiation_W_m2 - b->convection_W_m2;
    double rounding = liquid_side * s->liquid_K + (film > 0 ? film * s->pressure_Pa / (s->pressure_Pa - vapour_Pa) : 0);
    b->allowed =
        1e-15 * rounding + 1e-10 * (fabs(supply) + fabs(evaporation) + fabs(b->radiation_W_m2) + fabs(b->convection_W_m2));
    return true;
}

/* Whether the vapour pressure is straight over a step: ln p nearly is in T, so its curvature is (slope step)^2/(2 p),
   and that must not matter to ln(p_room - p). Then the step's end needs no vapour pressure of its own. */
static bool straight(const surroundings *s, double vapour_Pa, double vapour_slope, double step_K)
{
    double change = vapour_slope * step_K;
    if (s->losses->evaporation_factor * s->film_W_m2 == 0)
        return true;
    return change * change < 1e-10 * vapour_Pa * (s->pressure_Pa - vapour_Pa);
}

/* From the cool side Newton overshoots the film's steep end: go at most nine tenths of the way to the boiling point. */
static double newton_step(const surroundings *s, double vapour_Pa, double vapour_slope, const balance *here)
{
    double step = -here->excess_W_m2 / here->slope;
    if (s->losses->evaporation_factor * s->film_W_m2 == 0)
        return step; /* no film, no steep end */
    return fmin(step, 0.9 * (s->pressure_Pa - vapour_Pa) / vapour_slope);
}

/* From beyond the boiling point back to where the vapour pressure is nine tenths of the room's: ln p is nearly
   straight. */
static double step_below_boiling(const surroundings *s, double vapour_Pa, double vapour_slope)
{
    return -vapour_Pa / vapour_slope * log(vapour_Pa / (0.9 * s->pressure_Pa));
}

/* Where the skin may be, and the balance at the cool end once that has been tried. */
typedef struct {
    double low_K, high_K;
    bool low_tried;
    balance at_low;
} bracket;

static void bracket_narrow(bracket *k, double skin_K, const balance *here) /* NULL: beyond the boiling point */
{
    if (here && here->excess_W_m2 >= 0) {
        k->low_K = skin_K;
        k->low_tried = true;
        k->at_low = *here;
    } else {
        k->high_K = skin_K;
    }
}

/* The balance is so steep that no double lies on it: the skin is at the boiling point, and all heat left over
   evaporates. */
static boil_outcome settle_at_boiling_point(const bracket *k, double *skin_K, balance *b)
{
    if (!k->low_tried)
        return BOIL_NO_ROOT;
    *skin_K = k->low_K;
    *b = k->at_low;
    b->evaporation_kg_m2s += b->excess_W_m2 / boil_water_latent_heat(k->low_K);
    return BOIL_OK;
}

/* Newton in a bracket. Writes the skin temperature and its balance. */
static boil_outcome find_skin(const surroundings *s, const boil_vapour_pressure *vapour, double guess_K, double *skin_K,
                              balance *b)
{
    const double collapsed_K = 1e-9;
    const int most_trials = 100;
    bracket k = {.low_K = fmin(s->liquid_K, s->room_K) - SKIN_MARGIN_K, .high_K = fmax(s->liquid_K, s->room_K) + SKIN_MARGIN_K};
    double skin = guess_K > k.low_K && guess_K < k.high_K ? guess_K : s->liquid_K;
    for (int i = 0; i < most_trials; i++) {
        double slope, pressure = vapour->pressure(vapour->liquid, skin, &slope);
        balance here;
        bool limited = balance_at(s, skin, pressure, slope, &here);
        double step = limited ? newton_step(s, pressure, slope, &here) : step_below_boiling(s, pressure, slope);
        *skin_K = skin + step;
        if (limited && straight(s, pressure, slope, step) && balance_at(s, *skin_K, pressure + slope * step, slope, b) &&
            balanced(b))
            return BOIL_OK;
        bracket_narrow(&k, skin, limited ? &here : NULL);
        if (k.high_K - k.low_K < collapsed_K)
            return settle_at_boiling_point(&k, skin_K, b);
        skin = *skin_K > k.low_K && *skin_K < k.high_K ? *skin_K : (k.low_K + k.high_K) / 2;
    }
    return BOIL_NO_ROOT;
}

boil_outcome boil_surface_exchange(const boil_losses *l, const boil_ambient *ambient, const boil_vapour_pressure *vapour,
                                   double area_m2, double liquid_K, double steam_leaving_kg_s, double skin_guess_K,
                                   boil_surface_flow *out)
{
    *out = (boil_surface_flow){.skin_K = liquid_K};
    if (area_m2 == 0)
        return BOIL_OK;
    if (!isfinite(area_m2) || !isfinite(steam_leaving_kg_s))
        return BOIL_NO_ROOT;
    surroundings s = {.losses = l,
                      .pressure_Pa = ambient->pressure_Pa,
                      .air_vapour_Pa = boil_ambient_vapour_pressure(ambient),
                      .room_K = ambient->temperature_K,
                      .liquid_K = liquid_K,
                      .film_W_m2 = (STILL_AIR + MOVING_AIR * ambient->draught_m_s) * ambient->pressure_Pa,
                      .steam_kg_m2s = fmax(0, steam_leaving_kg_s) / area_m2};
    balance b;
    boil_outcome outcome = find_skin(&s, vapour, skin_guess_K, &out->skin_K, &b);
    if (outcome != BOIL_OK)
        return outcome;
    out->evaporation_kg_s = area_m2 * b.evaporation_kg_m2s;
    out->radiation_W = area_m2 * b.radiation_W_m2;
    out->convection_W = area_m2 * b.convection_W_m2;
    return BOIL_OK;
}

/* Heat from a wall's outside to the room, W/m2K, at a difference d in K: turbulent natural convection of air on a
   vertical plane [McAdams; Holman table 7-2, corrected for pressure as there], and radiation of a painted or oxidised
   wall. */
static double outside_coefficient(const boil_ambient *ambient, double d, double *flow_slope)
{
    const double turbulent = 1.31, emissivity = 0.95;
    double p = ambient->pressure_Pa / BOIL_STANDARD_ATMOSPHERE, cold = ambient->temperature_K, hot = cold + d;
    double convection = turbulent * cbrt(p * p * fabs(d));
    double grey = emissivity * BOIL_STEFAN_BOLTZMANN;
    *flow_slope = 4.0 / 3 * convection + 4 * grey * hot * hot * hot;
    return convection + grey * (hot * hot + cold * cold) * (hot + cold);
}

/* The outside's difference d to the room solves h_o(d) d = (k/insulation)(D - d), D that of the liquid. Four Newton
   steps from a usual h_o always, so that the coefficient is smooth in the temperature; they settle it to 1e-9. */
static double insulated_coefficient(const boil_ambient *ambient, double conductance, double difference)
{
    const double usual = 9;
    double slope, d = difference * conductance / (conductance + usual);
    for (int i = 0; i < 4; i++) {
        double flow = outside_coefficient(ambient, d, &slope) * d;
        d -= (flow - conductance * (difference - d)) / (slope + conductance);
    }
    return 1 / (1 / outside_coefficient(ambient, d, &slope) + 1 / conductance);
}

double boil_wall_coefficient(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K)
{
    if (l->wall_coefficient_W_m2K >= 0)
        return l->wall_coefficient_W_m2K;
    if (t->wall_thickness_m == 0)
        return 0;
    double slope, difference = liquid_K - ambient->temperature_K;
    if (t->insulation_m > 0)
        return insulated_coefficient(ambient, l->insulation_conductivity_W_mK / t->insulation_m, difference);
    return outside_coefficient(ambient, difference, &slope);
}

double boil_wall_loss(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K)
{
    return boil_wall_coefficient(l, t, ambient, liquid_K) * boil_tank_cooled_area(t) * (liquid_K - ambient->temperature_K);
}
