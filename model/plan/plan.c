#include "plan/plan.h"

#include <math.h>

static bool sane(const boil_plan_job *j)
{
    return boil_load_problem(&j->load) == NULL && j->least_s > 0 && j->most_s >= j->least_s && isfinite(j->most_s) &&
           j->earliest_s >= 0 && isfinite(j->earliest_s) && !isnan(j->due_s) && (unsigned)j->priority <= BOIL_PLAN_LOW;
}

static bool breaks_ordered(const boil_plan_problem *p)
{
    for (size_t i = 0; i < p->breaks_count; i++)
        if (!(p->breaks[i].from_s < p->breaks[i].to_s) || (i > 0 && !(p->breaks[i - 1].to_s <= p->breaks[i].from_s)))
            return false;
    return true;
}

const char *boil_plan_problem_wrong(const boil_plan_problem *p)
{
    if (p->jobs_count < 1 || p->jobs_count > BOIL_PLAN_JOBS_MAX)
        return "there must be 1 to 500 jobs";
    if (p->positions < 1 || p->positions > BOIL_POSITIONS_MAX)
        return "there must be 1 to 40 positions";
    if (!(p->hoist_s > 0 && p->hoist_s <= 3600) || !(p->settle_s >= 0 && p->settle_s <= 86400))
        return "a move of the hoist takes from above 0 to an hour, and the boil settles within a day";
    if (!(p->end_s > 0) || !(p->water_kg_s >= 0 && isfinite(p->water_kg_s)))
        return "the shift must end after its start, and water not be less than nothing";
    if (!breaks_ordered(p))
        return "breaks must be in the order of time, none over another";
    if (p->hanging_count > p->positions)
        return "no more may hang there than there are positions";
    for (size_t i = 0; i < p->jobs_count; i++)
        if (!sane(&p->jobs[i]))
            return "a job needs steel that may go in, a time to stay from above 0 up, and times not before the start";
    return NULL;
}
