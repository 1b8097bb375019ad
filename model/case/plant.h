/* case/plant.h -- everything that stands there before the first action: tank, bath, heater, losses, room, limits. */
#ifndef BOIL_CASE_PLANT_H
#define BOIL_CASE_PLANT_H

#include <stdbool.h>

#include "boilback.h"
#include "equipment/ambient.h"
#include "equipment/heat_control.h"
#include "equipment/heater.h"
#include "equipment/tank.h"
#include "equipment/water_control.h"
#include "properties/solution.h"
#include "transfer/surface.h"
#include "transfer/swell.h"
#include "transfer/water_layer.h"

/* NULL, or what is wrong with what floats, or hangs, on the bath at the start. */
const char *boil_plant_afloat_problem(const boil_plant *p);
const char *boil_plant_crust_problem(const boil_plant *p);

/* Nothing afloat, no crust, no salt on the floor, and known to be so: what is worked out for the bath alone begins like this. */
void boil_plant_bare(boil_plant *p);
void boil_plant_at_boil(boil_plant *p); /* bare, and at its boil */

double boil_plant_mixer_power(const boil_plant *p); /* W: as stated, or 0.2 W per litre of starting bath */
double boil_plant_usual_load(const boil_plant *p);  /* kg, the heaviest, by its limit per volume of starting bath */

/* NULL, or that the heater gives more than 3 MW to each m2 of the tank's surface. Nucleate boiling of water at 1 atm carries at most
   1.1 MW/m2 off what heats it [Zuber, critical heat flux, 1959, from memory]; elements and coils may have some three times the tank's area. */
const char *boil_plant_heat_problem(const boil_plant *p);

#endif
