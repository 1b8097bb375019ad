#include "equipment/water_control.h"

#include <math.h>
#include <stddef.h>

boil_water_control boil_water_control_default(void)
{
    return (boil_water_control){.mode = BOIL_WATER_CONTROL_NONE,
                                .differential_K = 1,
                                .band_K = 2,
                                .period_s = 120,
                                .water_K = 288.15,
                                .dead_time_s = 10,
                                .sensor_lag_s = 30,
                                .only_while_boiling = true};
}

const char *boil_water_control_problem(const boil_water_control *c)
{
    if (c == NULL)
        return "there is no water control";
    if (c->mode == BOIL_WATER_CONTROL_NONE)
        return NULL;
    if (!(c->set_point_K >= 373.15 && c->set_point_K <= 473.15))
        return "set point of the water control must be between 373.15 K and 473.15 K";
    if (!(c->differential_K >= 0.1 && c->differential_K <= 20))
        return "differential of the water control must be between 0.1 K and 20 K";
    if (!(c->band_K >= 0.2 && c->band_K <= 20))
        return "band of the water control must be between 0.2 K and 20 K";
    if (!(c->period_s >= 10 && c->period_s <= 3600))
        return "period of the water control must be between 10 s and 3600 s";
    if (!(c->rate_kg_s > 0 && c->rate_kg_s <= 10))
        return "rate of the water valve must be above 0 and at most 10 kg/s";
    if (!(c->water_K >= 273.15 && c->water_K <= 373.15))
        return "temperature of the water must be between 273.15 K and 373.15 K";
    if (!(c->dead_time_s >= 0 && c->dead_time_s <= 600))
        return "dead time of the water control must be between 0 s and 600 s";
    if (!(c->sensor_lag_s >= 0 && c->sensor_lag_s <= 600))
        return "sensor lag of the water control must be between 0 s and 600 s";
    if (!(c->low_level_m >= 0 && c->low_level_m <= 5))
        return "low level of the water control must be between 0 m and 5 m";
    return NULL;
}

double boil_water_control_share(const boil_water_control *c, double sensor_K)
{
    return fmin(1, fmax(0, (sensor_K - c->set_point_K) / c->band_K + 0.5));
}
