/* case/schedule.h -- what is done, and when: actions in SI, expanded ("every" unrolled by the caller) and ordered. */
#ifndef BOIL_CASE_SCHEDULE_H
#define BOIL_CASE_SCHEDULE_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/load.h"
#include "properties/solution.h"

typedef enum {
    BOIL_ACTION_LOAD,
    BOIL_ACTION_LIFT,
    BOIL_ACTION_WATER,
    BOIL_ACTION_SALTS,
    BOIL_ACTION_LIQUID,
    BOIL_ACTION_HEAT,
    BOIL_ACTION_MIXER,
    BOIL_ACTION_LID,
    BOIL_ACTION_EXHAUST
} boil_action_kind;

typedef struct {
    double mass_kg;       /* > 0 */
    double over_s;        /* > 0 */
    double temperature_K; /* 273.15 K to the boiling point of water in the room */
} boil_action_water;

/* Dry salts sifted in at a steady rate. */
typedef struct {
    double mass_kg, over_s;   /* > 0 */
    double temperature_K;     /* 243.15 to 473.15 K */
    double blend[BOIL_SALTS]; /* sum 1 */
} boil_action_salts;

/* Ready-mixed liquid: solution of the given composition, run in under the surface, so it mixes at once. */
typedef struct {
    double mass_kg, over_s;   /* > 0 */
    double temperature_K;     /* 273.15 K to its boiling point */
    double blend[BOIL_SALTS]; /* of its salts, sum 1 */
    double salt_fraction;     /* 0 to where the correlations end; 0 is water that mixes at once */
} boil_action_liquid;

typedef struct {
    double time_s; /* from the start */
    boil_action_kind kind;
    size_t order; /* in which it was added: set by boil_schedule_add, breaks ties in time */
    int name;     /* load and lift: a number that stands for the load's name; 0 = unnamed; lift 0 = everything */
    union {
        boil_load load;
        boil_action_water water;
        boil_action_salts salts;
        boil_action_liquid liquid;
        double dial; /* heat: 0 to 1 */
        bool on;     /* mixer, lid, exhaust */
    } is;
} boil_action;

typedef struct {
    boil_action *actions;
    size_t count, capacity;
    double duration_s;
} boil_schedule;

void boil_schedule_init(boil_schedule *s, double duration_s);
void boil_schedule_free(boil_schedule *s);                              /* NULL and an empty one are fine */
boil_outcome boil_schedule_add(boil_schedule *s, const boil_action *a); /* BOIL_OK or BOIL_NO_MEMORY */
void boil_schedule_sort(boil_schedule *s);                              /* by time; actions at equal times keep their order */

#endif
