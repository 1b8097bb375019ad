/* equipment/water_control.h -- automatic water addition: a thermometer, a valve, and what shuts it.

   The sensor follows the bath's temperature (that of the liquid below any layer) with a first-order lag. On/off: the valve
   opens when the sensor is above set point + differential/2 and shuts below set point - differential/2. Time-proportioned:
   in every period the valve is open for the share (sensor - set point)/band + 1/2, held within 0 and 1. The valve actions a
   dead time after the decision. Interlock: it shuts as the bath stops boiling, and stays shut until it has boiled for some seconds
   again. Low level: the heat is cut off while the still level is below it. */
#ifndef BOIL_EQUIPMENT_WATER_CONTROL_H
#define BOIL_EQUIPMENT_WATER_CONTROL_H

#include <stdbool.h>

#include "boilback.h"

/* No control. Fields at their defaults: 1 K, 2 K band, 120 s, 10 s dead time, 30 s lag, interlock on, no cut-off. */
boil_water_control boil_water_control_default(void);

/* For which a boil must have come back before its interlock lets the valve open, s: one that tells a boil from a burst of bubbles takes
   some seconds. Without it a valve chatters where its water is all that stops the boil. Judgement, 1 to 30. */
#define BOIL_WATER_CONTROL_STEADY_S 5.0

/* Share of a period the proportioned valve is open at a sensor temperature, 0 to 1. */
double boil_water_control_share(const boil_water_control *c, double sensor_K);

#endif
