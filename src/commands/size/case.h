/* commands/size/case.h -- what is to be sized for: the loads of a scenario's schedule, or one load into the steady boil. */
#ifndef COMMANDS_SIZE_CASE_H
#define COMMANDS_SIZE_CASE_H

#include "base/format.h"
#include "boilback.h"
#include "reading/quantity.h"
#include "scenario/scenario.h"

typedef struct {
    const scenario *scenario;
    bool one_load;          /* not the schedule's */
    boil_load load;         /* the one, or the first of the schedule */
    boil_schedule schedule; /* the one load's; else the scenario's own, which stays its own */
    double limit_s;         /* longest the boil may be lost */
} size_case;

/* One load of steel plate, at 20 degC: of that mass, or of that mass per volume of bath. */
boil_load size_case_plate(const scenario *s, const quantity *heaviness, double thickness_m);

/* A quarter of an inch thick. `heaviness` NULL: the schedule's loads, or, without any, one as heavy as the scenario's limit.
   BOIL_OK or BOIL_NO_MEMORY; to be freed either way. */
boil_outcome size_case_of(const scenario *s, double limit_s, const quantity *heaviness, size_case *out);
boil_outcome size_case_one(const scenario *s, double limit_s, const boil_load *load, size_case *out);
void size_case_free(size_case *c);

action_name size_case_words(const size_case *c, unit_system system, size_t load); /* the load of that number, from 0 */

#endif
