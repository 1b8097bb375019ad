#include "equipment/heat_control.h"

#include <math.h>
#include <stddef.h>

boil_heat_control boil_heat_control_default(boil_heat_source source)
{
    return (boil_heat_control){.mode = BOIL_HEAT_CONTROL_DIAL,
                               .differential_K = 4,
                               .band_K = 6,
                               .minimum_fire = 0.25,
                               .sensor_lag_s = 30,
                               .relight_s = source == BOIL_HEAT_GAS ? 15 : 0};
}

const char *boil_heat_control_problem(const boil_heat_control *c)
{
    if (c == NULL)
        return "there is no control of the heat";
    if (!(c->mode == BOIL_HEAT_CONTROL_DIAL || (c->set_point_K >= 273.15 && c->set_point_K <= 473.15)))
        return "set point of the heat must be between 273.15 K and 473.15 K";
    if (!(c->differential_K >= 0.1 && c->differential_K <= 50))
        return "differential of the heat's control must be between 0.1 K and 50 K";
    if (!(c->band_K >= 0.2 && c->band_K <= 50))
        return "band of the heat's control must be between 0.2 K and 50 K";
    if (!(c->minimum_fire >= 0 && c->minimum_fire <= 1))
        return "minimum fire must be between 0 and 1";
    if (!(c->sensor_lag_s >= 0 && c->sensor_lag_s <= 600))
        return "sensor lag of the heat's control must be between 0 s and 600 s";
    if (!(c->relight_s >= 0 && c->relight_s <= 600))
        return "time to relight must be between 0 s and 600 s";
    if (!(c->high_limit_K == 0 || (c->high_limit_K >= 273.15 && c->high_limit_K <= 573.15)))
        return "high limit must be between 273.15 K and 573.15 K";
    return NULL;
}

static bool modulates(const boil_heat_control *c)
{
    return c->mode == BOIL_HEAT_CONTROL_MODULATING;
}

double boil_heat_control_out(const boil_heat_control *c, double set_point_K)
{
    return set_point_K + (modulates(c) ? c->band_K : c->differential_K / 2);
}

double boil_heat_control_lights(const boil_heat_control *c, double set_point_K)
{
    return set_point_K - (modulates(c) ? 0 : c->differential_K / 2);
}

double boil_heat_control_fire(const boil_heat_control *c, double set_point_K, double sensor_K)
{
    if (!modulates(c))
        return 1;
    double along = fmin(1, fmax(0, (sensor_K - set_point_K) / c->band_K + 0.5));
    return 1 - along * (1 - c->minimum_fire);
}
