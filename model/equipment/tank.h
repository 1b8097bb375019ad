/* equipment/tank.h -- the vessel: plan area, steel, walls. */
#ifndef BOIL_EQUIPMENT_TANK_H
#define BOIL_EQUIPMENT_TANK_H

#include "boilback.h"

/* Shape box, no sizes (callers must give them), 6 mm wall, 50 mm insulation, heated from below. */
boil_tank boil_tank_default(void);

double boil_tank_perimeter(const boil_tank *t);         /* m */
double boil_tank_longest_side(const boil_tank *t);      /* m, the length a wave runs along */
double boil_tank_equivalent_radius(const boil_tank *t); /* m, sqrt(area/pi) */
double boil_tank_wetted_steel(const boil_tank *t);      /* kg, floor and walls up to the starting level */
/* m2 that loses heat: walls to the starting level, and the floor unless heated from below */
double boil_tank_cooled_area(const boil_tank *t);

/* Heights above the floor, m, as stated or by default. Heater: 0 when it is below the floor; inside, 40 % of the
   starting level, judgement. Parts: 0.1 m below the starting level, but no lower than half of it; common practice, no
   source. */
double boil_tank_heater_top(const boil_tank *t);
double boil_tank_parts_top(const boil_tank *t);

#endif
