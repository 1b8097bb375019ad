#include "heater.h"

#include <stddef.h>

boil_heater boil_heater_default(boil_heat_source source)
{
    boil_heater h = {.source = source, .efficiency = 1, .lag_s = 60, .dial = 1};
    if (source == BOIL_HEAT_GAS) {
        h.efficiency = 0.65;
        h.lag_s = 120;
    } else if (source == BOIL_HEAT_STEAM) {
        h.lag_s = 30;
    }
    return h;
}

const char *boil_heater_problem(const boil_heater *h)
{
    if (!(h->input_W >= 0 && h->input_W <= 1e8))
        return "heat input must be between 0 W and 1e8 W";
    if (!(h->efficiency >= 0.05 && h->efficiency <= 1))
        return "heater efficiency must be between 0.05 and 1";
    if (!(h->lag_s >= 0 && h->lag_s <= 3600))
        return "heater lag must be between 0 s and 3600 s";
    if (!(h->dial >= 0 && h->dial <= 1))
        return "heater dial must be between 0 and 1";
    return NULL;
}

double boil_heater_steady_output(const boil_heater *h, double dial)
{
    return h->input_W * h->efficiency * dial;
}
