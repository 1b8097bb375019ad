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
