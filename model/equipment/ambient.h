/* equipment/ambient.h -- the air around the tank. */
#ifndef BOIL_EQUIPMENT_AMBIENT_H
#define BOIL_EQUIPMENT_AMBIENT_H

#include "boilback.h"

boil_ambient boil_ambient_default(void); /* 1 atm, 20 degC, 50 %, 0.3 m/s */

/* Partial pressure of water vapour in the room's air, Pa: humidity times saturation at its temperature
   (below 0 degC the 0 degC saturation is used: an upper bound of some 600 Pa). */
double boil_ambient_vapour_pressure(const boil_ambient *r);

#endif
