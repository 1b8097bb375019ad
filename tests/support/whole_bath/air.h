/* support/whole_bath/air.h -- rows E44 to E53, E61 and T083: evaporation into still and moving air. */
#ifndef SUPPORT_WHOLE_BATH_AIR_H
#define SUPPORT_WHOLE_BATH_AIR_H

#include "support/whole_bath/water.h"

/* A deep square metre under air of 20 degC and 50 %. */
static inline boil_plant square_metre(double celsius, double wind_m_s)
{
    boil_plant p = water_tank(CELSIUS(celsius));
    square_tank(&p, 1, 1);
    p.ambient.draught_m_s = wind_m_s;
    return p;
}

static inline double evaporates_an_hour(double celsius, double wind_m_s)
{
    boil_plant p = square_metre(celsius, wind_m_s);
    return first_row(&p).evaporated_kg_s * HOUR;
}

static inline double evaporates_at_40(void)
{
    return evaporates_an_hour(40, 0);
}

static inline double evaporates_at_60(void)
{
    return evaporates_an_hour(60, 0);
}

static inline double evaporates_at_80(void)
{
    return evaporates_an_hour(80, 0);
}

static inline double evaporates_at_94(void)
{
    return evaporates_an_hour(94, 0);
}

static inline double evaporates_in_light_wind(void)
{
    return evaporates_an_hour(50, 0.5);
}

static inline double evaporates_in_wind(void)
{
    return evaporates_an_hour(50, 2);
}

static inline double evaporates_cool_in_a_breath(void)
{
    return evaporates_an_hour(30, 0.1);
}

static inline boil_plant outdoor_pool(double wind_m_s)
{
    boil_plant p = square_metre(29, wind_m_s);
    p.ambient.pressure_Pa = 84.5e3;
    p.ambient.temperature_K = CELSIUS(18);
    p.ambient.relative_humidity = 0.45;
    return p;
}

/* Heat over (95 + 0.425 v)(pw - pa) of ASHRAE, in SI (0.0888 + 0.0782 v) W/m2Pa. */
static inline double over_the_formula(double wind_m_s)
{
    boil_plant p = outdoor_pool(wind_m_s);
    boil_row row = first_row(&p);
    double excess_Pa = boil_water_saturation_pressure(row.temperature_K) - boil_ambient_vapour_pressure(&p.ambient);
    return row.evaporated_kg_s * boil_water_latent_heat(row.temperature_K) / ((0.0888 + 0.0782 * wind_m_s) * excess_Pa);
}

static inline double pool_in_no_wind(void)
{
    return over_the_formula(0);
}

static inline double pool_in_wind(void)
{
    return over_the_formula(2.2);
}

static inline double share_of_evaporation(void)
{
    boil_plant p = outdoor_pool(0);
    boil_row row = first_row(&p);
    return 100 * (1 - row.surface_W / surface_loss(&row));
}

static inline double pool_in_a_day(void)
{
    boil_plant p = water_tank(CELSIUS(25));
    p.tank.length_m = 12;
    p.tank.width_m = 6;
    p.tank.level_m = 1.5;
    p.tank.depth_m = 2;
    p.ambient.temperature_K = CELSIUS(25);
    p.ambient.draught_m_s = 2;
    return first_row(&p).evaporated_kg_s * 24 * HOUR;
}

static inline double evaporates_a_day(void)
{
    boil_plant p = water_tank(CELSIUS(50));
    p.tank.length_m = 4;
    p.tank.width_m = 1;
    p.tank.level_m = 1;
    p.tank.depth_m = 1.5;
    p.ambient.temperature_K = CELSIUS(25);
    p.ambient.relative_humidity = 0.52;
    p.ambient.draught_m_s = 0;
    return first_row(&p).evaporated_kg_s * 24 * HOUR;
}

#endif
