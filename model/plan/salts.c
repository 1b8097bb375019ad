/* salts.c -- when salts are put back: the part of plan/pours.h that is about them. */
#include <math.h>

#include "plan/hands.h"
#include "plan/pours.h"

double boil_plan_water_with(const boil_plan_bath *b, double salts_kg)
{
    return salts_kg > 0 ? salts_kg * (1 - b->salt_fraction) / b->salt_fraction : 0;
}

double boil_plan_owed(const boil_plan_bath *b, const boil_plan_dip dips[], size_t count, double by_s)
{
    double owed = b->owed_kg;
    for (size_t i = 0; i < count; i++)
        owed += (dips[i].leaves_s <= by_s ? dips[i].drag_kg : 0) - dips[i].salts.mass_kg;
    return owed;
}

/* Of what is gone as much as there is time for, and as the water allows that may be missing, or too much, for it. 0: too few
   are gone, or it would be less than half of that, an eighth of an inch, which no dipstick tells. */
static double portion(const boil_plan_bath *b, double owed_kg, double time_s, double water_kg)
{
    const double least = 0.5;
    double kg = fmin(fmin(owed_kg, b->sift_kg_s * time_s), fmax(0, water_kg) * b->salt_fraction / (1 - b->salt_fraction));
    return b->sift_kg_s > 0 && owed_kg > b->owes_kg && kg >= least * b->owes_kg ? kg : 0;
}

static boil_plan_pour sifted(const boil_plan_bath *b, double start_s, double kg)
{
    return (boil_plan_pour){start_s, ceil(fmax(BOIL_PLAN_POUR_LEAST_S, kg / b->sift_kg_s)), kg};
}

/* To the end of the window, as many as it has time for. What is lifted meanwhile counts as well: they are all in by then. No
   water being poured before, the bath would still not leave its band. */
boil_plan_pour boil_plan_sifting(const boil_plan_case *c, const boil_plan_calm *calm, double until_s)
{
    const boil_plan_bath *b = c->bath;
    const boil_plan_pour none = {.mass_kg = 0};
    if (!(b->sift_kg_s > 0))
        return none;
    double from_s = boil_plan_hands_second(calm->back_s + b->steady_s);
    boil_break w = boil_plan_hands_longest(c->problem, from_s, until_s - b->guard_s);
    double missing = b->valve ? 0 : calm->missing_kg + b->boils_off_kg_s * (until_s - calm->back_s);
    double owed = boil_plan_owed(b, calm->dips, calm->dips_count, w.to_s), longest_s = floor(w.to_s) - w.from_s;
    double kg = portion(b, owed, longest_s, b->strongest_kg - missing);
    boil_plan_pour s = sifted(b, 0, kg);
    s.start_s = floor(w.to_s) - s.over_s;
    return kg > 0 && s.start_s >= w.from_s ? s : none;
}

boil_plan_pour boil_plan_last_sifting(const boil_plan_case *c, const boil_plan_timetable *t, double from_s)
{
    const boil_plan_problem *p = c->problem;
    double owed = boil_plan_owed(c->bath, t->dips, t->dips_count, HUGE_VAL);
    double kg = portion(c->bath, owed, HUGE_VAL, c->bath->valve ? c->bath->strongest_kg : c->bath->weakest_kg);
    boil_plan_pour s = sifted(c->bath, boil_plan_hands_second(fmax(from_s, boil_plan_last_out(t) + p->hoist_s)), kg);
    for (size_t i = 0; i <= p->breaks_count && kg > 0; i++) {
        double shut_s = fmin(i < p->breaks_count ? p->breaks[i].from_s : HUGE_VAL, boil_plan_closes(c, t));
        if (s.start_s + s.over_s <= shut_s)
            return s;
        s.start_s = i < p->breaks_count ? fmax(s.start_s, p->breaks[i].to_s) : s.start_s;
    }
    return (boil_plan_pour){.mass_kg = 0};
}
