#include "plan/case.h"

#include <math.h>

double boil_plan_most_heat(const boil_plan_bath *b)
{
    return b->quiet_W * (BOIL_PLAN_LIMIT_SHARE * b->limit_s / (1 + b->slower) - b->offset_s);
}

const boil_plan_job *boil_plan_job_of(const boil_plan_case *c, size_t part)
{
    return &c->problem->jobs[c->parts[part].job];
}

double boil_plan_part_mass(const boil_plan_part *p)
{
    return p->load.mass_kg + p->load.basket_kg;
}

/* Once both are hot through, the one may not be overdone before the other is done. */
bool boil_plan_may_share(const boil_plan_case *c, const size_t parts[], size_t count, size_t more)
{
    double least = 0, most = HUGE_VAL, mass = 0, heat = 0;
    bool share = true;
    if (count == 0)
        return true;
    for (size_t i = 0; i <= count; i++) {
        size_t part = i < count ? parts[i] : more;
        const boil_plan_part *p = &c->parts[part];
        const boil_plan_job *j = boil_plan_job_of(c, part);
        least = fmax(least, p->hot_s + j->least_s);
        most = fmin(most, p->hot_s + j->most_s);
        mass += boil_plan_part_mass(p);
        heat += p->heat_J;
        share = share && j->may_share;
    }
    return share && least <= most && mass <= c->bath->most_kg && heat <= boil_plan_most_heat(c->bath);
}

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
