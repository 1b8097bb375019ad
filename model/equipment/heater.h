/* equipment/heater.h -- burner or element: input, efficiency, dial and a first-order lag. */
#ifndef BOIL_EQUIPMENT_HEATER_H
#define BOIL_EQUIPMENT_HEATER_H

#include "boilback.h"

/* The same heater made as large as it takes to give heat_W at full dial to a bath at a temperature. */
boil_heater boil_heater_sized(const boil_heater *h, double heat_W, double bath_K);

#endif
