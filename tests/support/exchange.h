/* support/exchange.h -- what an open surface gives off to the room, for one bath and one room; and those of a row of
   tests/published/open_tank_losses.csv. */
#ifndef SUPPORT_EXCHANGE_H
#define SUPPORT_EXCHANGE_H

#include <math.h>

#include "boilback.h"
#include "base/constants.h"
#include "properties/water.h"
#include "support/published.h"
#include "transfer/skin.h"
#include "transfer/surface.h"

#define BTU_H_FT2 3.15459 /* W/m2 */
#define SKIN_OFF 1e9      /* W/m2K: the surface has the bath's temperature */

static inline double exchange_kelvin(double fahrenheit)
{
    return BOIL_ZERO_CELSIUS + (fahrenheit - 32) / 1.8;
}

/* Water that a salt has weakened by an activity, which more of it lowers by a power; counts how often it is asked. */
typedef struct {
    double activity, power;
    long asked;
} liquor;

static inline double exchange_liquor_pressure(void *of, double temperature_K, double stronger, double *by_K,
                                              double *by_log_stronger)
{
    liquor *l = of;
    double p = boil_water_saturation_pressure(temperature_K);
    l->asked++;
    *by_K = boil_water_saturation_pressure_slope(temperature_K) / p;
    *by_log_stronger = -l->power;
    return log(l->activity * p) - l->power * log(stronger);
}

/* Everything an exchange is made of, with its answer. */
typedef struct {
    boil_losses losses;
    boil_ambient ambient;
    double activity, power, area_m2, liquid_K, steam_kg_s;
    double salt_fraction, water_below_J_kg; /* the last: how far the water in the liquid lies below water */
    boil_surface_flow flow;
    long asked;
    int outcome;
} exchange;

static inline exchange exchange_default(void)
{
    return (exchange){
        .losses = boil_losses_default(), .ambient = boil_ambient_default(), .activity = 1, .area_m2 = 1, .liquid_K = 350};
}

static inline boil_surface_liquid exchange_liquid(const exchange *x, liquor *l)
{
    double boils_Pa = fmin(2e7, x->ambient.pressure_Pa / x->activity), boils_K = boil_water_saturation_temperature(boils_Pa);
    return (boil_surface_liquid){.temperature_K = x->liquid_K,
                                 .boiling_K = boils_K,
                                 .boiling_by_log_stronger_K = x->power * boils_K * boils_K / 5500,
                                 .water_J_kg = boil_water_enthalpy(x->liquid_K) - x->water_below_J_kg,
                                 .density_kg_m3 = 1438,
                                 .salt_fraction = x->salt_fraction,
                                 .salt_transfer_m_s = x->losses.salt_transfer_m_s,
                                 .strongest = 1.8,
                                 .log_pressure = exchange_liquor_pressure,
                                 .of = l};
}

/* From where a skin was found before. */
static inline void exchange_solve_near(exchange *x, boil_surface_skin *near)
{
    liquor l = {x->activity, x->power, 0};
    boil_surface_liquid liquid = exchange_liquid(x, &l);
    const boil_surface_air air = boil_surface_air_of(&x->ambient);
    x->outcome = boil_surface_exchange(&x->losses, &air, &liquid, x->area_m2, x->steam_kg_s, near, &x->flow);
    x->asked = l.asked;
}

static inline void exchange_solve(exchange *x)
{
    boil_surface_skin near = {.known = false};
    exchange_solve_near(x, &near);
}

static inline double exchange_latent_heat(double temperature_K)
{
    return boil_water_vapour_enthalpy(temperature_K) - boil_water_enthalpy(temperature_K);
}

static inline double exchange_evaporation_W(const exchange *x)
{
    return x->flow.evaporation_kg_s * exchange_latent_heat(x->flow.skin_K);
}

/* Room and bath of the table's row, skin on or nearly off; humidity below 0: as stated. */
static inline exchange exchange_of_row(published *table, bool skin, double humidity)
{
    exchange x = exchange_default();
    x.liquid_K = exchange_kelvin(published_number(table, "liquid_F"));
    x.ambient.temperature_K = exchange_kelvin(published_number(table, "air_F"));
    x.ambient.relative_humidity = humidity < 0 ? published_number(table, "humidity") : humidity;
    x.ambient.draught_m_s = published_number(table, "air_ft_min") * 0.00508;
    if (!skin)
        x.losses.liquid_coefficient_W_m2K = SKIN_OFF;
    return x;
}

static inline double exchange_row_W_m2(published *table)
{
    return published_number(table, "value") * BTU_H_FT2;
}

static inline double exchange_air_W(const exchange *x)
{
    return x->flow.radiation_W + x->flow.convection_W;
}

#endif
