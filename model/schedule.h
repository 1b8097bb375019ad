/* schedule.h -- what is done, and when: acts in SI, expanded ("every" unrolled by the caller) and ordered. */
#ifndef BOIL_SCHEDULE_H
#define BOIL_SCHEDULE_H

#include <stddef.h>

#include "load.h"

typedef enum { BOIL_ACT_LOAD, BOIL_ACT_LIFT, BOIL_ACT_WATER, BOIL_ACT_HEAT } boil_act_kind;

typedef struct {
    double mass_kg;        /* > 0 */
    double over_s;         /* > 0 */
    double temperature_K;  /* 273.15 K to the boiling point of water in the room */
} boil_water_act;

typedef struct {
    double time_s;         /* from the start */
    boil_act_kind kind;
    size_t order;          /* in which it was added: set by boil_schedule_add, breaks ties in time */
    int name;              /* load and lift: a number that stands for the load's name; 0 = unnamed; lift 0 = everything */
    union {
        boil_load load;
        boil_water_act water;
        double dial;       /* heat: 0 to 1 */
    } is;
} boil_act;

typedef struct {
    boil_act *acts;
    size_t count, room;
    double duration_s;
} boil_schedule;

void boil_schedule_init(boil_schedule *s, double duration_s);
void boil_schedule_free(boil_schedule *s); /* NULL and an empty one are fine */
int boil_schedule_add(boil_schedule *s, const boil_act *a); /* BOIL_OK or BOIL_NO_MEMORY */
void boil_schedule_sort(boil_schedule *s);                  /* by time; acts at equal times keep their order */

#endif
