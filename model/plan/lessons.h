/* plan/lessons.h -- what carrying a timetable out taught about single dips, kept by the set of their parts: a dip that the search
   finds again, at whatever time, is planned with it. */
#ifndef BOIL_PLAN_LESSONS_H
#define BOIL_PLAN_LESSONS_H

#include <stdint.h>

#include "plan/plan.h"

typedef struct {
    uint64_t parts; /* boil_plan_lesson_key; 0: nothing is kept here */
    double later_s; /* that its boil is back later than by (1) of plan/plan.h; less than 0: sooner */
    double more_s;  /* that it has to stay beyond what its parts alone said */
    double most_s;  /* and may stay */
    bool known;     /* it was carried out */
} boil_plan_lesson;

typedef struct {
    boil_plan_lesson *list; /* by its key, open addressing */
    size_t room, count;
} boil_plan_lessons;

/* Of a set of parts in any order; never 0. */
uint64_t boil_plan_lesson_key(const size_t parts[], size_t count);

/* What is known; zeros where there is none. */
boil_plan_lesson boil_plan_lesson_of(const boil_plan_lessons *l, uint64_t parts);

/* Takes the place of an older one. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_plan_lesson_learn(boil_plan_lessons *l, const boil_plan_lesson *what);

/* All of one to another, of the same parts. As above. */
boil_outcome boil_plan_lessons_add(const boil_plan_lessons *from, boil_plan_lessons *to);

void boil_plan_lessons_free(boil_plan_lessons *l);

#endif
