/* equipment/heater.h -- burner or element: input, efficiency, dial and a first-order lag. */
#ifndef BOIL_EQUIPMENT_HEATER_H
#define BOIL_EQUIPMENT_HEATER_H

typedef enum { BOIL_HEAT_GAS, BOIL_HEAT_ELECTRIC, BOIL_HEAT_STEAM } boil_heat_source;

typedef struct {
    boil_heat_source source;
    double input_W;    /* fuel or electric input at full dial; 0 to 1e8 */
    double efficiency; /* share of the input that reaches the tank; 0.05 to 1 */
    double lag_s;      /* first-order time constant of the output; 0 to 3600 */
    double dial;       /* 0 to 1 at the start */
    /* Steam coil only: the heat is dial UA (T_steam - T_bath), never below zero; input_W and efficiency do not apply. */
    double coil_area_m2; /* 0.01 to 100 */
    double coil_W_m2K;   /* 800, 60 to 1700: natural circulation to fouled */
    double steam_K;      /* saturation temperature of the supply; 373 to 473 K */
} boil_heater;

/* Gas 65 % and 120 s; electric 100 % and 60 s; steam 100 % (the input is what the coil gives off) and 30 s: usual
   figures, no source. Dial 1. No input: callers must give it. */
boil_heater boil_heater_default(boil_heat_source source);
const char *boil_heater_problem(const boil_heater *h);

/* W to the tank when steady, the bath being at a temperature (which only a steam coil minds). */
double boil_heater_output(const boil_heater *h, double dial, double bath_K);

/* The same heater made as large as it takes to give heat_W at full dial to a bath at a temperature. */
boil_heater boil_heater_sized(const boil_heater *h, double heat_W, double bath_K);

#endif
