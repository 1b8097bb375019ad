/* simulate/rates_parts.h -- the parts of one look at the tank, for simulate/rates.c alone, which calls them in the order below.
   Each fills in its fields of the view from the state (t, y) and from what those before it have filled in; the int ones give
   BOIL_OK, or a failure after which the view is worth nothing. */
#ifndef BOIL_SIMULATE_RATES_PARTS_H
#define BOIL_SIMULATE_RATES_PARTS_H

#include "simulate/rates.h"

/* Streams from outside: their enthalpies, and what they are of. */
typedef struct {
    double water_W; /* onto the surface */
    double liquid_W;
    double salts_W;
    double component_kg_s[1 + BOIL_SALTS]; /* of liquid: water and each salt */
    double salt_kg_s[BOIL_SALTS];          /* dry */
} boil_rates_inflow;

/* simulate/rates_bath.c: mode, temperature and thermodynamics; heater; water control; steam held, swell and stirring. */
int boil_rates_of_solution(boil_bath *b, const double y[], boil_rates_view *v, boil_bath_heat *heat, boil_slope *slope);
void boil_rates_of_heater(const boil_bath *b, const double y[], boil_rates_view *v);
void boil_rates_of_control(const boil_bath *b, const double y[], boil_rates_view *v);
void boil_rates_of_pool(const boil_bath *b, double t, const double y[], boil_rates_view *v);
boil_convection_liquid boil_rates_of_liquid(const boil_bath *b, const boil_rates_view *v, double heat_capacity_J_K);

/* simulate/rates_water.c: what goes in; all the layer exchanges, but for its own boiling, and how much of the surface it
   covers; what the rest of the surface gives off; what a lid keeps of both. */
boil_rates_inflow boil_rates_of_feeds(const boil_bath *b, boil_rates_view *v);
int boil_rates_of_layer(boil_bath *b, double t, const double y[], const boil_convection_liquid *liquid, boil_rates_view *v,
                        double *cover);
int boil_rates_of_surface(boil_bath *b, double cover, boil_rates_view *v);
void boil_rates_of_lid(const boil_bath *b, boil_rates_view *v);

/* simulate/rates_bath.c: levels; the steel, with the rates of its temperatures unless dydt is NULL. */
void boil_rates_of_levels(const boil_bath *b, const double y[], boil_rates_view *v);
void boil_rates_of_loads(boil_bath *b, double t, const double y[], const boil_convection_liquid *liquid, boil_rates_view *v,
                         double dydt[]);

/* simulate/rates_water.c */
void boil_rates_of_layer_boil(const boil_bath *b, const boil_rates_inflow *s, boil_rates_view *v);

/* simulate/rates_bath.c: undissolved salts; bath liquid that parts carry out. */
void boil_rates_of_solids(const boil_bath *b, const double y[], boil_rates_view *v);
void boil_rates_of_drag(const boil_bath *b, boil_rates_view *v);

#endif
