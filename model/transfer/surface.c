#include "transfer/surface.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "base/constants.h"
#include "base/cube_root.h"
#include "base/cubic.h"
#include "base/larger.h"
#include "properties/water.h"
#include "transfer/skin.h"

/* Carrier's open-tank formula in SI: q = (a + b v)(pw - pa), W/m2 per Pa, and per m/s of air. [ASHRAE HVAC
   Applications] */
static const double STILL_AIR = 0.089, MOVING_AIR = 0.0782;

/* h_c/g of equation (4), J/kgK: molar masses of dry air and water [IUPAC], heat capacity of air at 300 to 350 K and the
   Lewis number alpha/D of water vapour in air at 298 K, 0.87, to the power 2/3 [Incropera & DeWitt, tables A.4 and A.8]. */
static const double AIR_BY_FILM = 28.96 / 18.015 * 1007 * 0.91133;

/* Heat capacity of water vapour, J/kgK: saturated at 50 to 100 degC 1.9 to 2.1 [IAPWS SR1-86]. */
static const double VAPOUR_J_KGK = 1950;

/* Of L and h_v by temperature, J/kgK, to 15 %. They only aim the steps, and do not enter the answer. */
static const double LATENT_SLOPE = -2600, VAPOUR_SLOPE = 1650;

boil_losses boil_losses_default(void)
{
    return (boil_losses){.evaporation_factor = 1,
                         .convection_factor = 1,
                         .radiation_factor = 1,
                         .wall_coefficient_W_m2K = -1,
                         .emissivity = 0.95,
                         .liquid_coefficient_W_m2K = 2000,
                         .salt_transfer_m_s = 5.6e-5,
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
    if (!(l->liquid_coefficient_W_m2K >= 1000 && l->liquid_coefficient_W_m2K <= 3000))
        return "bath-side coefficient of the surface must be between 1000 W/m2K and 3000 W/m2K";
    if (!((l->salt_transfer_m_s >= 3e-5 && l->salt_transfer_m_s <= 1e-4) || l->salt_transfer_m_s == HUGE_VAL))
        return "transfer of salt from the surface must be between 3e-5 m/s and 1e-4 m/s, or infinite";
    if (!(l->insulation_conductivity_W_mK >= 0.04 && l->insulation_conductivity_W_mK <= 0.08))
        return "conductivity of the insulation must be between 0.04 W/mK and 0.08 W/mK";
    return NULL;
}

/* What stays while the skin is sought, per square metre. */
typedef struct {
    const boil_surface_liquid *liquid;
    const boil_surface_air *air;
    double film_W_m2;    /* g L of (2) */
    double air_W_m2;     /* h_c of (4) times L, per J/kg */
    double grey;         /* of radiation, W/m2K4 */
    double liquid_W_m2K; /* h_liq */
    double steam_kg_m2s; /* leaving the pool through the film, not below 0 */
} surroundings;

typedef struct {
    double skin_K, evaporation_kg_m2s;
} skin;

/* The liquid at a skin: ln of its vapour pressure, with its slopes by temperature and by evaporation; heat of evaporation; that
   of the vapour, where anything evaporates. */
typedef struct {
    double log_Pa, by_K, by_evaporation;
    double latent_J_kg, vapour_J_kg;
} skin_liquid;

/* The skin's molality over the bath's, with the slope of its logarithm by e. */
static double stronger(const boil_surface_liquid *l, double e, double *slope)
{
    double bulk = l->salt_fraction, transfer = l->density_kg_m3 * l->salt_transfer_m_s;
    *slope = 0;
    if (!(bulk > 0) || isinf(transfer))
        return 1;
    if (e == 0 && l->strongest > 1) {
        *slope = 1 / (transfer * (1 - bulk));
        return 1;
    }
    double there = boil_skin_salt_fraction(bulk, e, l->density_kg_m3, l->salt_transfer_m_s);
    double times = there < 1 ? there * (1 - bulk) / (bulk * (1 - there)) : HUGE_VAL;
    if (!(times < l->strongest))
        return fmax(1, l->strongest);
    *slope = 1 / (transfer * (1 - there));
    return times;
}

/* Of a skin as warm as the bath, from which nothing evaporates: near enough to start from, and a function of the bath alone. ln p by
   Clausius and Clapeyron from the boiling point, with a heat that grows with the elevation, and by how the boiling point rises with
   strength. Fitted to 0.5 % from water to 60 %, and only an aim. */
static skin_liquid rough_liquid(const surroundings *s)
{
    const double water_K = 4969, by_elevation = 16.3, by_cooling = 2.3, water_boils_K = 373.1;
    double boils_K = s->liquid->boiling_K, T = s->liquid->temperature_K, cooler = boils_K - T, warm = T - water_boils_K, by_e;
    double heat_K = water_K + by_elevation * (boils_K - water_boils_K) + by_cooling * cooler;
    stronger(s->liquid, 0, &by_e);
    return (skin_liquid){.log_Pa = s->air->log_pressure - heat_K * cooler / (boils_K * T),
                         .by_K = (heat_K + by_cooling * cooler) / (T * T),
                         .by_evaporation = -s->liquid->boiling_by_log_stronger_K * heat_K / (boils_K * boils_K) * by_e,
                         .latent_J_kg = 2.257e6 + LATENT_SLOPE * warm,
                         .vapour_J_kg = 2.676e6 + VAPOUR_SLOPE * warm};
}

static skin_liquid liquid_at(const surroundings *s, const skin *at)
{
    const boil_surface_liquid *l = s->liquid;
    double by_e, by_log, times = stronger(l, at->evaporation_kg_m2s, &by_e);
    skin_liquid f = {.latent_J_kg = boil_water_latent_heat(at->skin_K)};
    f.log_Pa = l->log_pressure(l->of, at->skin_K, times, &f.by_K, &by_log);
    f.by_evaporation = by_log * by_e;
    return f;
}

/* Equation (3) at a skin, and how its terms move with it. */
typedef struct {
    double radiation_W_m2, convection_W_m2;
    double radiation_by_K, convection_by_K, convection_by_evaporation;
    double excess_W_m2;          /* left less right side */
    double by_K, by_evaporation; /* its slopes, both negative */
    double rise, tilt;           /* of ln q and of (1) by e, along (3) */
} balance;

static balance balance_of(const surroundings *s, const skin *at, double latent_J_kg, double vapour_J_kg)
{
    double K = at->skin_K, warmer = K - s->air->room_K, K3 = K * K * K, room2 = s->air->room_K * s->air->room_K,
           e = at->evaporation_kg_m2s;
    double still = s->air_W_m2 / latent_J_kg, air = 0, by_vapour = 0, taken_J_kg = vapour_J_kg - s->liquid->water_J_kg;
    if (still > 0) {
        double vapour = e + s->steam_kg_m2s, phi = vapour * VAPOUR_J_KGK / still;
        double factor = boil_skin_convection_factor(vapour, VAPOUR_J_KGK, still);
        air = still * factor;
        by_vapour = VAPOUR_J_KGK * (fabs(phi) < 1e-6 ? -0.5 : factor * (1 - factor - phi) / phi);
    }
    balance b = {.radiation_W_m2 = s->grey * (K3 * K - room2 * room2),
                 .convection_W_m2 = air * warmer,
                 .radiation_by_K = 4 * s->grey * K3,
                 .convection_by_K = air,
                 .convection_by_evaporation = by_vapour * warmer};
    b.excess_W_m2 = s->liquid_W_m2K * (s->liquid->temperature_K - K) - e * taken_J_kg - b.radiation_W_m2 - b.convection_W_m2;
    b.by_K = -s->liquid_W_m2K - e * VAPOUR_SLOPE - b.radiation_by_K - b.convection_by_K;
    b.by_evaporation = -taken_J_kg - b.convection_by_evaporation;
    return b;
}

/* A line through a skin along which (3) holds: its temperature by its evaporation. */
typedef struct {
    double move_K, by_evaporation;
} skin_line;

static skin_line line_of(const balance *b)
{
    return (skin_line){-b->excess_W_m2 / b->by_K, -b->by_evaporation / b->by_K};
}

/* What the film carries, (1), where ln pw is straight along the line: ln pw = ln[p - (p - pa) exp(-u)], u = (e + w)/g. The left
   side falls with e, the right one rises and bends down, whatever the bath's temperature: one root, and Halley's steps find it:
   of the last one, a share of the answer, the cube is left. The bend is without that of L, and a step at most twice Newton's:
   both only aim. */
static double film_carries(const surroundings *s, const skin *at, const skin_liquid *f, const skin_line *line, double near,
                           balance *b)
{
    double p = s->air->pressure_Pa, dry = p - s->air->vapour_Pa, w = s->steam_kg_m2s, e0 = at->evaporation_kg_m2s;
    double start = f->log_Pa + f->by_K * line->move_K, slope = f->by_K * line->by_evaporation + f->by_evaporation;
    double latent = f->latent_J_kg + LATENT_SLOPE * line->move_K, latent_e = LATENT_SLOPE * line->by_evaporation;
    double least = s->film_W_m2 / latent * s->air->log_dry - w; /* that would take all moisture up */
    double from = least + 0.05 * s->film_W_m2 / latent, e = e0 > from ? e0 : from;
    for (int i = 0; i < 100; i++) {
        double L = latent + latent_e * (e - e0), left = dry * exp(-(e + w) * L / s->film_W_m2), q = p - left;
        double by_e = (L + (e + w) * latent_e) / s->film_W_m2, rise = b->rise = left / q * by_e, tilt = b->tilt = slope - rise;
        double newton = -(start + slope * (e - e0) - log(q)) / tilt;
        double bent = 1 + newton * rise * (by_e + rise) / (2 * tilt), step = newton / (bent > 0.5 ? bent : 0.5);
        e += step > 0.9 * (least - e) ? step : 0.9 * (least - e);
        if (fabs(step) <= near * (fabs(e) + w))
            break;
    }
    return e;
}

/* What the air takes where the skin has moved a little. */
static void carry_on(balance *b, double moved_K, double more_kg_m2s)
{
    b->radiation_W_m2 += b->radiation_by_K * moved_K;
    b->convection_W_m2 += b->convection_by_K * moved_K + b->convection_by_evaporation * more_kg_m2s;
}

/* One step of the whole, its evaporation to a share. Returns how far the skin moved, K; a change of e in its tenth counts as much as
   a kelvin. */
static double improve(const surroundings *s, skin_liquid *f, skin *at, double near, balance *b)
{
    *b = balance_of(s, at, f->latent_J_kg, f->vapour_J_kg);
    skin_line line = line_of(b);
    double e = film_carries(s, at, f, &line, near, b), more = e - at->evaporation_kg_m2s;
    double moved_K = boil_smaller(boil_larger(line.move_K + line.by_evaporation * more, 150 - at->skin_K), 600 - at->skin_K);
    *at = (skin){at->skin_K + moved_K, e};
    f->latent_J_kg += LATENT_SLOPE * moved_K;
    f->vapour_J_kg += VAPOUR_SLOPE * moved_K;
    carry_on(b, moved_K, more);
    return boil_larger(10 * fabs(more) / (fabs(e) + 1e-6), fabs(moved_K));
}

/* From a skin near it. What a step leaves is of second order: 1e-4 of a kelvin after the last one. */
static bool evaporates(const surroundings *s, skin *at, skin_liquid *f, balance *b)
{
    const double near_K = 0.1, near = 5e-3;
    for (int i = 0; i < 60; i++) {
        *f = liquid_at(s, at);
        f->vapour_J_kg = boil_water_enthalpy(at->skin_K) + f->latent_J_kg;
        double moved = improve(s, f, at, near, b);
        if (!(moved > near_K))
            return isfinite(moved);
    }
    return false;
}

/* The skin where nothing evaporates, and the liquid there. */
static skin_liquid dry_skin(const surroundings *s, skin *at, balance *b)
{
    const double near_K = 0.02; /* leaves 1e-8 */
    *at = (skin){s->liquid->temperature_K, 0};
    double latent = boil_water_latent_heat(at->skin_K), move = HUGE_VAL;
    for (int i = 0; i < 60 && fabs(move) > near_K; i++) {
        *b = balance_of(s, at, latent, 0);
        move = line_of(b).move_K;
        at->skin_K += move;
        latent += LATENT_SLOPE * move;
        carry_on(b, move, 0);
    }
    return liquid_at(s, at);
}

/* Whether the steam that leaves is all that the film carries from a dry skin, where it carries anything outwards. */
static bool steam_fills(const surroundings *s, const skin_liquid *dry)
{
    double left = (s->air->pressure_Pa - s->air->vapour_Pa) * exp(-s->steam_kg_m2s * dry->latent_J_kg / s->film_W_m2);
    return dry->log_Pa <= log(s->air->pressure_Pa - left) && dry->log_Pa >= s->air->log_vapour;
}

/* From where the last one was, or of the liquid alone. Whether it evaporates. */
static bool start_skin(const surroundings *s, const boil_surface_skin *near, skin *at)
{
    const double share = 0.05;
    if (near->known && s->film_W_m2 > 0) {
        double warmer = s->liquid->temperature_K - near->liquid_K, more = s->steam_kg_m2s - near->steam_kg_m2s;
        *at = (skin){near->skin_K + near->skin_by_K * warmer + near->skin_by_steam * more,
                     near->evaporation_kg_m2s + near->evaporation_by_K * warmer + near->evaporation_by_steam * more};
        return true;
    }
    *at = (skin){s->liquid->temperature_K, 0};
    if (s->film_W_m2 == 0 || (near->dry && s->steam_kg_m2s > 0))
        return false;
    skin_liquid rough = rough_liquid(s);
    if (s->steam_kg_m2s > 0 && steam_fills(s, &rough))
        return false; /* as good as certain */
    balance b;
    improve(s, &rough, at, share, &b);
    return !(s->steam_kg_m2s > 0 && at->evaporation_kg_m2s <= 0);
}

/* Writes the skin, the liquid there and what the air takes. */
static bool find_skin(surroundings *s, const boil_surface_skin *near, skin *at, skin_liquid *f, balance *b)
{
    double w = s->steam_kg_m2s;
    bool dry = !start_skin(s, near, at);
    if (!dry && (!evaporates(s, at, f, b) || w == 0 || at->evaporation_kg_m2s >= 0))
        return isfinite(at->evaporation_kg_m2s);
    *f = dry_skin(s, at, b);
    if (s->film_W_m2 == 0 || steam_fills(s, f))
        return isfinite(at->skin_K);
    if (f->log_Pa < s->air->log_vapour)
        s->steam_kg_m2s = 0; /* moisture is taken up whatever leaves */
    return evaporates(s, at, f, b);
}

/* By (3) and (1) at the skin, in a liquid as strong. */
static boil_surface_skin skin_found(const surroundings *s, const skin *at, const skin_liquid *f, const balance *b)
{
    double along = -b->by_evaporation / b->by_K, with_it = -s->liquid_W_m2K / b->by_K;
    double by_K = -f->by_K * with_it / b->tilt, by_steam = b->rise / b->tilt;
    return (boil_surface_skin){.liquid_K = s->liquid->temperature_K,
                               .steam_kg_m2s = s->steam_kg_m2s,
                               .skin_K = at->skin_K,
                               .evaporation_kg_m2s = at->evaporation_kg_m2s,
                               .skin_by_K = with_it + along * by_K,
                               .skin_by_steam = along * by_steam,
                               .evaporation_by_K = by_K,
                               .evaporation_by_steam = by_steam,
                               .known = true};
}

boil_surface_air boil_surface_air_of(const boil_ambient *ambient)
{
    double p = ambient->pressure_Pa, vapour_Pa = boil_ambient_vapour_pressure(ambient);
    return (boil_surface_air){.pressure_Pa = p,
                              .log_pressure = log(p),
                              .room_K = ambient->temperature_K,
                              .vapour_Pa = vapour_Pa,
                              .log_vapour = log(vapour_Pa),
                              .log_dry = log1p(-vapour_Pa / p),
                              .film_W_m2 = (STILL_AIR + MOVING_AIR * ambient->draught_m_s) * p};
}

boil_outcome boil_surface_exchange(const boil_losses *l, const boil_surface_air *air, const boil_surface_liquid *liquid,
                                   double area_m2, double steam_leaving_kg_s, boil_surface_skin *near, boil_surface_flow *out)
{
    *out = (boil_surface_flow){.skin_K = liquid->temperature_K};
    if (area_m2 == 0)
        return BOIL_OK;
    if (!isfinite(area_m2) || !isfinite(steam_leaving_kg_s) || !isfinite(liquid->temperature_K))
        return BOIL_NO_ROOT;
    surroundings s = {.liquid = liquid,
                      .air = air,
                      .film_W_m2 = l->evaporation_factor * air->film_W_m2,
                      .air_W_m2 = l->convection_factor * air->film_W_m2 * AIR_BY_FILM,
                      .grey = l->radiation_factor * l->emissivity * BOIL_STEFAN_BOLTZMANN,
                      .liquid_W_m2K = l->liquid_coefficient_W_m2K,
                      .steam_kg_m2s = boil_larger(0, steam_leaving_kg_s) / area_m2};
    skin at;
    skin_liquid f;
    balance b;
    if (!find_skin(&s, near, &at, &f, &b)) {
        *near = (boil_surface_skin){.known = false};
        return BOIL_NO_ROOT;
    }
    *near = at.evaporation_kg_m2s != 0 ? skin_found(&s, &at, &f, &b) : (boil_surface_skin){.dry = true};
    *out = (boil_surface_flow){.evaporation_kg_s = area_m2 * at.evaporation_kg_m2s,
                               .radiation_W = area_m2 * b.radiation_W_m2,
                               .convection_W = area_m2 * b.convection_W_m2,
                               .vapour_J_kg = f.vapour_J_kg,
                               .skin_K = at.skin_K};
    return BOIL_OK;
}

/* Heat from a wall's outside to the room, W/m2K, at a difference d in K: turbulent natural convection of air on a
   vertical plane [McAdams; Holman table 7-2, corrected for pressure as there], and radiation of a painted or oxidised
   wall. */
static double outside_coefficient(const boil_ambient *ambient, double d, double *flow_slope)
{
    const double turbulent = 1.31, emissivity = 0.95;
    double p = ambient->pressure_Pa / BOIL_STANDARD_ATMOSPHERE, cold = ambient->temperature_K, hot = cold + d;
    double convection = turbulent * boil_cube_root(p * p * fabs(d));
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

/* U and its slope by the difference, W/m2K2, by differences of fourth order; where a cell begins there, of that. */
static double wall_point(const boil_wall_table *w, const boil_losses *l, const boil_tank *t, const boil_ambient *ambient,
                         int kelvin, double *slope)
{
    const double e = 0.1;
    const int at = kelvin % BOIL_WALL_CELLS;
    double u[5];
    if (w->kelvin[at] == kelvin) {
        *slope = w->U[at][1];
        return w->U[at][0];
    }
    for (int i = 0; i < 5; i++)
        u[i] = boil_wall_coefficient(l, t, ambient, ambient->temperature_K + kelvin + (i - 2) * e);
    *slope = (8 * (u[3] - u[1]) - (u[4] - u[0])) / (12 * e);
    return u[2];
}

static const double *wall_cell(boil_wall_table *w, const boil_losses *l, const boil_tank *t, const boil_ambient *ambient,
                               int kelvin)
{
    int at = kelvin % BOIL_WALL_CELLS;
    double *c = w->U[at], slope0, slope1;
    if (w->kelvin[at] != kelvin) {
        double u0 = wall_point(w, l, t, ambient, kelvin, &slope0), u1 = wall_point(w, l, t, ambient, kelvin + 1, &slope1);
        w->kelvin[at] = kelvin;
        boil_cubic_between(c, u0, slope0, u1, slope1);
    }
    return c;
}

double boil_wall_table_loss(boil_wall_table *w, const boil_losses *l, const boil_tank *t, const boil_ambient *ambient,
                            double liquid_K)
{
    const double least_K = 30, most_K = 400; /* below, the cube root bends too much */
    double difference = liquid_K - ambient->temperature_K;
    bool insulated = !(l->wall_coefficient_W_m2K >= 0) && t->wall_thickness_m > 0 && t->insulation_m > 0;
    if (!insulated || !(difference >= least_K && difference < most_K))
        return boil_wall_loss(l, t, ambient, liquid_K);
    double u = difference - (int)difference;
    const double *c = wall_cell(w, l, t, ambient, (int)difference);
    return boil_cubic_at(c, u) * boil_tank_cooled_area(t) * difference;
}
