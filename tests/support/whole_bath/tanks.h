/* support/whole_bath/tanks.h -- rows E01 to E16 and E54: open tanks of a handbook and of a table of losses. */
#ifndef SUPPORT_WHOLE_BATH_TANKS_H
#define SUPPORT_WHOLE_BATH_TANKS_H

#include "support/whole_bath/water.h"

static inline boil_plant tank_of_the_handbook(double temperature_K)
{
    boil_plant p = water_tank(temperature_K);
    p.tank.length_m = 4 * FOOT;
    p.tank.width_m = p.tank.depth_m = 2 * FOOT;
    p.tank.level_m = 100 * US_GALLON / (8 * FOOT * FOOT);
    p.tank.wall_thickness_m = 0.375 * INCH;
    p.tank.heated = BOIL_TANK_HEATED_INSIDE;
    p.ambient.temperature_K = FAHRENHEIT(70);
    p.ambient.relative_humidity = 0.6;
    p.ambient.draught_m_s = 2 * FOOT;
    p.heater.input_W = 12850;
    return p;
}

static inline double heats_a_tank(void)
{
    boil_plant p = tank_of_the_handbook(FAHRENHEIT(70));
    boil_history h = follow(&p, 5 * HOUR, NULL, 0);
    double s = passes_at(&h, FAHRENHEIT(180));
    boil_history_free(&h);
    return s / HOUR;
}

static inline double loses_at_the_surface(void)
{
    boil_plant p = tank_of_the_handbook(FAHRENHEIT(180));
    boil_row row = first_row(&p);
    return 1e-3 * surface_loss(&row);
}

static inline double loses_through_bare_walls(void)
{
    boil_plant p = tank_of_the_handbook(FAHRENHEIT(180));
    return 1e-3 * first_row(&p).wall_W;
}

static inline boil_plant tank_of_the_table(double temperature_K, double insulation_m)
{
    boil_plant p = water_tank(temperature_K);
    p.tank.length_m = 5 * FOOT;
    p.tank.width_m = 2 * FOOT;
    p.tank.depth_m = 3.5 * FOOT;
    p.tank.level_m = 1749 * POUND / boil_water_density(FAHRENHEIT(200)) / (10 * FOOT * FOOT);
    p.tank.wall_thickness_m = 0.1875 * INCH;
    p.tank.insulation_m = insulation_m;
    p.tank.heated = BOIL_TANK_HEATED_INSIDE;
    p.ambient.temperature_K = FAHRENHEIT(60);
    p.ambient.draught_m_s = 0;
    return p;
}

static inline double cools(double from_F, double to_F, double insulation_m)
{
    boil_plant p = tank_of_the_table(FAHRENHEIT(200), insulation_m);
    boil_history h = follow(&p, 30 * HOUR, NULL, 0);
    double from_s = from_F < 200 ? passes_at(&h, FAHRENHEIT(from_F)) : 0, s = passes_at(&h, FAHRENHEIT(to_F)) - from_s;
    boil_history_free(&h);
    return s / HOUR;
}

static inline double cools_bare(void)
{
    return cools(200, 100, 0);
}

static inline double cools_bare_while_hot(void)
{
    return cools(200, 180, 0);
}

static inline double cools_bare_while_warm(void)
{
    return cools(120, 100, 0);
}

static inline double cools_insulated(void)
{
    return cools(200, 100, 2 * INCH);
}

static inline double cools_insulated_while_hot(void)
{
    return cools(160, 140, 2 * INCH);
}

static inline double cools_insulated_while_warm(void)
{
    return cools(120, 100, 2 * INCH);
}

static inline double loses_water_while_it_cools(void)
{
    boil_plant p = tank_of_the_table(FAHRENHEIT(200), 0);
    boil_history h = follow(&p, 30 * HOUR, NULL, 0);
    size_t at = (size_t)(passes_at(&h, FAHRENHEIT(100)) / (h.rows[1].time_s - h.rows[0].time_s));
    double lost = h.rows[0].water_kg - h.rows[at].water_kg;
    boil_history_free(&h);
    return lost / POUND;
}

static inline double loses_at(double fahrenheit, double insulation_m)
{
    boil_plant p = tank_of_the_table(FAHRENHEIT(fahrenheit), insulation_m);
    boil_row row = first_row(&p);
    return (surface_loss(&row) + row.wall_W) * HOUR / BTU;
}

static inline double loses_at_150(void)
{
    return loses_at(150, 0);
}

static inline double loses_at_180(void)
{
    return loses_at(180, 0);
}

static inline double loses_at_180_insulated(void)
{
    return loses_at(180, 2 * INCH);
}

static inline double evaporates_112_lb(void)
{
    boil_plant p = water_tank(FAHRENHEIT(140));
    square_tank(&p, 7.5 * FOOT * FOOT, 0.6);
    p.ambient.temperature_K = FAHRENHEIT(60);
    p.ambient.draught_m_s = 0;
    return 112 * POUND / first_row(&p).evaporated_kg_s / HOUR;
}

#endif
