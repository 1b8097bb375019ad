/* plan/conditions.h -- what every plan would have to meet, whatever its order: where one of these fails there is none, and no search is
   needed to say so. Each is a bound that forgets all the others. */
#ifndef BOIL_PLAN_CONDITIONS_H
#define BOIL_PLAN_CONDITIONS_H

#include "plan/case.h"

typedef enum {
    BOIL_PLAN_NEEDS_TIME,   /* a part alone in an empty tank is out too late: when, and by when it should be */
    BOIL_PLAN_NEEDS_WINDOW, /* or finds no time at all between the breaks */
    BOIL_PLAN_NEEDS_PLACES, /* all stays, shared as far as masses allow, fill more than the positions have until the end, s */
    BOIL_PLAN_NEEDS_HEAT,   /* boils come back one after the other, and that takes longer than there is, s */
    BOIL_PLAN_NEEDS_WATER,  /* more boils off than may be poured, and the band is used up before the last job may go in, kg */
    BOIL_PLAN_NEEDS_LIFT,   /* what hangs there is lifted after the end: when, and the end */
    BOIL_PLAN_NEEDS_BAND    /* the bath boils outside its band as it begins: by how much, K; the limit is 0 */
} boil_plan_need;

typedef struct {
    boil_plan_need what;
    size_t part; /* of what concerns one; of a lift, which of what hangs */
    double value, limit;
} boil_plan_condition;

#define BOIL_PLAN_CONDITIONS_MAX ((size_t)20)

/* Those that fail, all at once, as many as have room. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_plan_conditions_failed(const boil_plan_case *c, boil_plan_condition list[BOIL_PLAN_CONDITIONS_MAX],
                                         size_t *count);

#endif
