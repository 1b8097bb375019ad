/* design/exhaust.h -- how much air a hood must draw from an open tank. SI units; rates per area are velocities.

   Method of ANSI Z9.1, 29 CFR 1926.57(i) and ACGIH's Industrial Ventilation: a hazard letter and an evolution number make a
   class, a class and a hood a control velocity, a velocity and the tank's shape a rate. ["Letter from toxicity or flash point,
   number from the rate of gas, vapour or mist": California Title 8, section 5154(b).] The tables themselves are from memory,
   and looked for without being found: read them in the book before ordering. They are minimums, for air that moves by less than
   50 ft/min. The rows of 150 ft/min, those of classes, are remembered in two ways and refused. A canopy is not
   offered: people lean in under it. */
#ifndef BOIL_DESIGN_EXHAUST_H
#define BOIL_DESIGN_EXHAUST_H

#include <stdbool.h>

#define BOIL_EXHAUST_CALM 0.254 /* m/s, 50 ft/min: of a draught across the tank, the most that the tables allow; from memory */

typedef enum {
    BOIL_HOOD_NONE,
    BOIL_HOOD_ONE_SIDE,  /* a slot along one side */
    BOIL_HOOD_TWO_SIDES, /* along two opposite ones */
    BOIL_HOOD_PUSH_PULL, /* a jet on one side, a slot on the other */
    BOIL_HOOD_ENCLOSING  /* closed but for one side */
} boil_hood;

typedef enum { BOIL_HAZARD_A, BOIL_HAZARD_B, BOIL_HAZARD_C, BOIL_HAZARD_D } boil_hazard;

typedef struct {
    boil_hazard letter;
    int number; /* of evolution: 1 to 4 */
} boil_exhaust_class;

/* Caustic: C, by 2 mg/m3 of sodium hydroxide in the air [OSHA Table Z-1, from memory]. Number by the worst of temperature and
   distance below the boil: 1 over 200 degF or within 20 degF of it, 2 from 150 degF or within 50, 3 from 94 or within 100, else
   4 [from memory]. */
boil_exhaust_class boil_exhaust_class_of(double bath_K, double below_boil_K);

/* m/s; NaN where a class asks for general ventilation only, or where its table is refused. */
double boil_exhaust_control_velocity(boil_exhaust_class c, boil_hood h);
bool boil_exhaust_general_only(boil_exhaust_class c);

/* m3/s through each m2 of the whole surface. across: how far a slot must draw over its length: width and set-back, half of that
   with slots on two sides; the column of a limit is the one above it. baffled: a wall or baffle behind, as long as the tank and
   as high as it is wide. NaN: across more than twice its length, or no row of that velocity. */
double boil_exhaust_lateral_rate(double control_m_s, double across, bool baffled);

/* m3/s through each m2: 75 ft/min to 150 degF, above it 0.4 T + 15 ft/min, T in degF. [ACGIH's print of push-pull, from
   memory] */
double boil_exhaust_pull_rate(double bath_K);
/* m3/s of push for a metre of nozzle with slot_m of opening: 243 sqrt(A) cfm a foot, A ft2 a foot. [the same] */
double boil_exhaust_push(double slot_m);

/* What practice says of the width a slot draws across [from memory]: one side to 20 in, two or push-pull to 36 in, two sides to
   48 in. */
typedef enum { BOIL_WIDTH_GOOD, BOIL_WIDTH_TWO_BETTER, BOIL_WIDTH_REFUSED } boil_width_verdict;
boil_width_verdict boil_exhaust_width(boil_hood h, double width_m);

/* Slot, plenum, duct. Slot 2000 ft/min, plenum half of that; duct the largest whole even number of inches with at least 2000
   ft/min. Loss of the hood alone: 1.78 of the slot's velocity pressure, 1.25 of the duct's, (v/4005 ft/min)^2 in of water.
   [ACGIH, from memory] */
typedef struct {
    double slot_m, plenum_m, duct_m; /* slot's height and plenum's depth along the hood's length; duct's diameter */
    double duct_m_s, loss_Pa;
} boil_exhaust_duct;
/* hood_m: of slots on two sides both together. */
boil_exhaust_duct boil_exhaust_duct_of(double air_m3_s, double hood_m);

#endif
