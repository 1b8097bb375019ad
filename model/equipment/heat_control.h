/* equipment/heat_control.h -- a thermometer that sets the fire: on/off, or modulating.

   The thermometer follows the bath (the liquid below any layer) with a first-order lag. On/off: the fire is called for when it
   reads below set point - differential/2 and put out above set point + differential/2; it is full fire. Modulating: the fire
   falls in a straight line from full at set point - band/2 to the least at set point + band/2, is put out above set point +
   band, and called for again at the set point. From the call to the flame takes the time to relight. While the bath boils its
   temperature is its boiling point, which no fire changes: what a control holds is a bath below its boil. */
#ifndef BOIL_EQUIPMENT_HEAT_CONTROL_H
#define BOIL_EQUIPMENT_HEAT_CONTROL_H

#include "boilback.h"

/* K, readings at which the fire is put out, and called for, at a set point. The dial's: as an on/off control would. */
double boil_heat_control_out(const boil_heat_control *c, double set_point_K);
double boil_heat_control_lights(const boil_heat_control *c, double set_point_K);

/* Share of full fire while it burns, 0 to 1. */
double boil_heat_control_fire(const boil_heat_control *c, double set_point_K, double sensor_K);

#endif
