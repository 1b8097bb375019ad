#include "plan/value.h"

#include <math.h>

bool boil_plan_better(const boil_plan_value *x, const boil_plan_value *y)
{
    for (int i = 0; i < BOIL_PLAN_AIMS; i++)
        if (x->of[i] != y->of[i])
            return x->of[i] < y->of[i];
    return false;
}

bool boil_plan_holds(const boil_plan_value *v)
{
    return v->of[BOIL_PLAN_UNPLACED] == 0 && v->of[BOIL_PLAN_BREACHES] == 0 && v->of[BOIL_PLAN_OVERDUE_S] == 0;
}

/* Of a job in parts each counts by itself. */
static void add_due(const boil_plan_case *c, const boil_plan_timetable *t, const boil_plan_dip *d, boil_plan_value *v)
{
    for (size_t i = 0; i < d->count; i++) {
        const boil_plan_job *j = boil_plan_job_of(c, t->parts[d->first + i]);
        double late_s = fmax(0, d->leaves_s - j->due_s);
        if (j->priority == BOIL_PLAN_MUST)
            v->of[BOIL_PLAN_OVERDUE_S] += late_s;
        else
            v->of[BOIL_PLAN_LATENESS_S] +=
                late_s * (j->priority == BOIL_PLAN_NORMAL ? BOIL_PLAN_WEIGHT_NORMAL : BOIL_PLAN_WEIGHT_LOW);
    }
}

/* At a dial that stays where it is fuel burns until the last dip is out; a control burns what is lost and what the steel takes. */
static double fuel_J(const boil_plan_bath *b, const boil_plan_value *v, double steel_J)
{
    double open_s = v->of[BOIL_PLAN_LAST_OUT_S];
    return b->calm_W > 0 ? b->calm_W * open_s + steel_J / b->efficiency : b->fire_W * open_s;
}

/* Salts that are left to be put back afterwards are more work than what would have put them back: a sifting for each quarter
   inch, and one. */
static double pours_of(const boil_plan_case *c, const boil_plan_timetable *t)
{
    double left = t->owed_kg > 0 ? ceil(t->owed_kg / c->bath->owes_kg) + 1 : 0;
    return (double)(t->pours_count + t->salts_count) + left;
}

boil_plan_value boil_plan_value_of(const boil_plan_case *c, const boil_plan_timetable *t)
{
    boil_plan_value v = {.of = {[BOIL_PLAN_POURS] = pours_of(c, t)}};
    double steel_J = 0;
    for (size_t i = 0; i < c->problem->hanging_count; i++) {
        double leaves_s = c->problem->hanging[i].leaves_s;
        v.of[BOIL_PLAN_OVERDUE_S] += fmax(0, leaves_s - c->problem->end_s);
        v.of[BOIL_PLAN_LAST_OUT_S] = fmax(v.of[BOIL_PLAN_LAST_OUT_S], leaves_s);
    }
    for (size_t k = 0; k < t->dips_count; k++) {
        const boil_plan_dip *d = &t->dips[k];
        v.of[BOIL_PLAN_UNPLACED] += d->unplaced;
        v.of[BOIL_PLAN_BREACHES] += d->too_cold || d->too_strong || d->mass_kg > c->bath->most_kg;
        v.of[BOIL_PLAN_OVERDUE_S] += fmax(0, d->leaves_s - c->problem->end_s);
        v.of[BOIL_PLAN_LAST_OUT_S] = fmax(v.of[BOIL_PLAN_LAST_OUT_S], d->leaves_s);
        v.of[BOIL_PLAN_OVERSTAY_S] += d->leaves_s - d->enters_s - d->stay_least_s;
        steel_J += d->heat_J;
        add_due(c, t, d, &v);
    }
    v.of[BOIL_PLAN_FUEL_KJ] = fuel_J(c->bath, &v, steel_J) / 1000;
    for (int i = 0; i < BOIL_PLAN_AIMS; i++)
        v.of[i] = i == BOIL_PLAN_OVERDUE_S ? ceil(v.of[i]) : round(v.of[i]);
    return v;
}
