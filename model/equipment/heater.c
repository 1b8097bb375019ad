#include "equipment/heater.h"

#include <math.h>

#include <stddef.h>

boil_heater boil_heater_default(boil_heat_source source)
{
    boil_heater h = {.source = source, .efficiency = 1, .lag_s = 60, .dial = 1};
    if (source == BOIL_HEAT_GAS) {
        h.efficiency = 0.65;
        h.lag_s = 120;
    } else if (source == BOIL_HEAT_STEAM) {
        h.lag_s = 30;
        h.coil_W_m2K = 800;
    }
    return h;
}

const char *boil_heater_problem(const boil_heater *h)
{
    if (h == NULL)
        return "there is no heater";
    if (!(h->input_W >= 0 && h->input_W <= 1e8))
        return "heat input must be between 0 W and 1e8 W";
    if (!(h->efficiency >= 0.05 && h->efficiency <= 1))
        return "heater efficiency must be between 0.05 and 1";
    if (h->source == BOIL_HEAT_STEAM) {
        if (!(h->coil_area_m2 >= 0.01 && h->coil_area_m2 <= 100))
            return "area of the steam coil must be between 0.01 m2 and 100 m2";
        if (!(h->coil_W_m2K >= 60 && h->coil_W_m2K <= 1700))
            return "coefficient of the steam coil must be between 60 W/m2K and 1700 W/m2K";
        if (!(h->steam_K >= 373.15 && h->steam_K <= 473.15))
            return "temperature of the steam must be between 373.15 K and 473.15 K";
    }
    if (!(h->lag_s >= 0 && h->lag_s <= 3600))
        return "heater lag must be between 0 s and 3600 s";
    if (!(h->dial >= 0 && h->dial <= 1))
        return "heater dial must be between 0 and 1";
    return NULL;
}

double boil_heater_output(const boil_heater *h, double dial, double bath_K)
{
    if (h == NULL)
        return (double)NAN;
    if (h->source != BOIL_HEAT_STEAM)
        return dial * h->input_W * h->efficiency;
    return dial * h->coil_area_m2 * h->coil_W_m2K * (h->steam_K > bath_K ? h->steam_K - bath_K : 0);
}

boil_heater boil_heater_sized(const boil_heater *h, double heat_W, double bath_K)
{
    boil_heater sized = *h;
    if (h->source == BOIL_HEAT_STEAM)
        sized.coil_area_m2 = heat_W / (h->coil_W_m2K * (h->steam_K - bath_K));
    else
        sized.input_W = heat_W / h->efficiency;
    return sized;
}
