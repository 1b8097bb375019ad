/* support/shop.h -- tanks such as shops have, drawn by number: the same number, the same tank. */
#ifndef SUPPORT_SHOP_H
#define SUPPORT_SHOP_H

#include "boilback.h"
#include "base/constants.h"
#include "random/stream.h"

/* A box with steel walls, at its boil, electric. Wide to narrow, bare to lagged, still air to a draught, near sea level to
   2000 m. The limit on freeboard is one that the tank can keep. */
static inline boil_plant shop_plant(size_t number)
{
    stream r = {number};
    boil_plant p = boil_plant_default();
    p.tank.length_m = stream_between(&r, 0.6, 2.4);
    p.tank.width_m = p.tank.length_m * stream_between(&r, 0.35, 1);
    p.tank.level_m = stream_between(&r, 0.35, 0.7);
    p.tank.depth_m = p.tank.level_m + stream_between(&r, 0.25, 0.45);
    p.tank.wall_thickness_m = 0.006;
    p.tank.insulation_m = stream_between(&r, 0, 0.1);
    p.charge = (boil_initial_charge){
        {0.80, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, BOIL_ZERO_CELSIUS + stream_between(&r, 132, 146), 0};
    p.ambient.temperature_K = BOIL_ZERO_CELSIUS + stream_between(&r, 2, 35);
    p.ambient.relative_humidity = boil_stream_share(&r);
    p.ambient.draught_m_s = stream_between(&r, 0.05, 0.6);
    p.ambient.pressure_Pa = boil_ambient_pressure_at_altitude(stream_between(&r, 0, 2000));
    p.heater = boil_heater_default(BOIL_HEAT_ELECTRIC);
    p.heater.input_W = 1000;
    p.limits.freeboard_m = 0.1;
    p.limits.boiling_point_low_K = p.charge.value - 5;
    p.limits.boiling_point_high_K = p.charge.value + 5;
    return p;
}

#endif
