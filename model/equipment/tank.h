/* equipment/tank.h -- the vessel: plan area, steel, walls. */
#ifndef BOIL_EQUIPMENT_TANK_H
#define BOIL_EQUIPMENT_TANK_H

typedef enum { BOIL_TANK_BOX, BOIL_TANK_UPRIGHT_CYLINDER } boil_tank_shape;
typedef enum { BOIL_TANK_HEATED_FROM_BELOW, BOIL_TANK_HEATED_INSIDE } boil_tank_heated;

typedef struct {
    boil_tank_shape shape;
    double length_m, width_m; /* box, 0.1 to 20 m */
    double diameter_m;        /* cylinder, 0.1 to 20 m */
    double depth_m;           /* floor to rim, 0.1 to 5 m */
    double level_m;           /* still surface above the floor at the start; from 0.02 m to below the rim */
    double wall_thickness_m;  /* steel; 0: no wall (neither heat capacity nor loss) ; to 0.05 m */
    double insulation_m;      /* 0: bare; to 0.5 m */
    boil_tank_heated heated;
    double heater_top_m; /* heated inside: top of the heater above the floor; below the rim, 0: not stated */
    double parts_top_m;  /* top of hanging parts above the floor; below the rim, 0: not stated */
} boil_tank;

/* Shape box, no sizes (callers must give them), 6 mm wall, 50 mm insulation, heated from below. */
boil_tank boil_tank_default(void);
const char *boil_tank_problem(const boil_tank *t); /* NULL, or what is wrong, naming the range */

double boil_tank_area(const boil_tank *t);              /* m2, plan */
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
