/* planning/carry.h -- a timetable as the acts of a schedule, to be carried out. Loads wait for a steady boil, and water runs
   and salts are sifted only while it boils: where the boil is late the shift waits, as a person would. */
#ifndef BOIL_PLANNING_CARRY_H
#define BOIL_PLANNING_CARRY_H

#include "plan/case.h"

#define BOIL_PLAN_AFTER_S                                                                                                      \
    300.0 /* of the run behind the last act: judgement, for runs that are not resolved by then go on (findings/run_set.h) */

/* Which dip or pour an act is. */
typedef struct {
    bool is_pour;     /* of water, or */
    bool is_salts;    /* a sifting */
    size_t dip, part; /* of the timetable, and of the case's parts */
    size_t pour;      /* of its pours, or of its siftings */
} boil_plan_act;

typedef struct {
    boil_schedule schedule; /* breaks too */
    boil_plan_act *acts;    /* one for each of its actions */
} boil_plan_carried;

/* Water as warm as the plant's room, but not below freezing; its own salts. BOIL_OK, or BOIL_NO_MEMORY with nothing to free. */
boil_outcome boil_plan_carry(const boil_plan_case *c, const boil_plan_timetable *t, const boil_plant *plant,
                             boil_plan_carried *out);
void boil_plan_carried_free(boil_plan_carried *c);

#endif
