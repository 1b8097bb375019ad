/* simulate/rates.h -- everything that follows from a state of the bath, and the rates of its unknowns: equations (1) and (2) of
   simulate/bath.h. */
#ifndef BOIL_SIMULATE_RATES_H
#define BOIL_SIMULATE_RATES_H

#include "simulate/bath.h"

/* Everything that follows from a state. */
typedef struct {
    boil_mixture mixture;
    double mass_kg, temperature_K, boiling_point_K, equivalent_molality;
    double density_kg_m3, heat_capacity_J_K /* solution and steel */;
    boil_range range;
    double steam_kg_s;            /* (1); in QUIET zero */
    double steam_if_boiling_kg_s; /* (1) whatever the mode, at T: its sign decides */
    double calm_steam_kg_s;       /* what heater and losses alone would boil off, without loads, water or evaporation */
    double leaving_kg_s, steam_velocity_m_s, drift_velocity_m_s, vapour_kg_m3;
    double void_upper, void_lower;
    boil_surface_flow surface, layer_surface;
    double heater_W, heater_target_W, wall_W, air_W, loads_W, layer_W;
    bool valve_open;
    double valve_kg_s, condensate_kg_s, condensate_J_kg, sensor_K;
    double liquid_kg_s, salts_kg_s, dissolving_kg_s[BOIL_SALTS], settling_kg_s, drag_kg_s;
    double undissolved_kg, bed_m, bed_superheat_K;
    double liquid_cooling_W, salts_cooling_W; /* likewise for liquid and for salts */
    double water_cooling_W;                   /* what mixing water in takes from the boil; negative: it feeds the boil */
    double loop;                              /* (2), 1 or more */
    double layer_kg, layer_m, layer_K, layer_mixing_kg_s, layer_mixing_slope_kg_s /* by ln of stirring */, layer_boiled_kg_s,
        layer_boil_margin_W;
    double feed_kg_s; /* of water onto the surface */
    double solution_m3, displaced_m3, still_level_m, level_m, level_lower_m, surge_m;
    double stirring_W_kg, mixing_time_s;
} boil_rates_view;

/* What follows from (t, y); BOIL_OK or BOIL_NO_ROOT/BOIL_NOT_FINITE. dydt may be NULL. */
int boil_rates_at(boil_bath *b, double t, const double y[], boil_rates_view *v, double dydt[]);

#endif
