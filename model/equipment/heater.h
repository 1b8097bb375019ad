/* equipment/heater.h -- burner or element: input, efficiency, dial and a first-order lag. */
#ifndef BOIL_EQUIPMENT_HEATER_H
#define BOIL_EQUIPMENT_HEATER_H

#include "boilback.h"

/* Heat in liquid propane, J/m3: 91.5 kBtu a US gallon, higher heating value; from memory. */
#define BOIL_PROPANE_J_M3 (91.5e3 * 1055.05585262 / 3.785411784e-3)

/* The same heater made as large as it takes to give heat_W at full dial to a bath at a temperature. */
boil_heater boil_heater_sized(const boil_heater *h, double heat_W, double bath_K);

#endif
