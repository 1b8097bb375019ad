#include "plan/conditions.h"

#include <math.h>

#include "plan/decoder.h"

typedef struct {
    const boil_plan_case *of;
    boil_plan_condition *list;
    size_t count;
} failing;

static void add(failing *f, boil_plan_need what, size_t part, double value, double limit)
{
    if (f->count < BOIL_PLAN_CONDITIONS_MAX)
        f->list[f->count++] = (boil_plan_condition){what, part, value, limit};
}

/* By when a part has to be out. */
static double latest_of(const boil_plan_case *c, size_t part)
{
    const boil_plan_job *j = boil_plan_job_of(c, part);
    return fmin(c->problem->end_s, j->priority == BOIL_PLAN_MUST ? j->due_s : HUGE_VAL);
}

/* Nothing is sooner than a part that has tank, hoist and bath to itself, and a bath that needs no water: others give time to pour. */
static boil_outcome judge_alone(failing *f, size_t part)
{
    const boil_plan_case *c = f->of;
    boil_plan_case alone = *c;
    boil_plan_bath bath = *c->bath;
    boil_plan_decoder d;
    boil_plan_order o;
    alone.parts = c->parts + part;
    alone.parts_count = 1;
    alone.lessons = NULL;
    bath.valve = true;
    alone.bath = &bath;
    boil_outcome outcome = boil_plan_decoder_begin(&d, &alone);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_plan_order_begin(&o, 1);
    if (outcome == BOIL_OK) {
        const boil_plan_dip *dip = &boil_plan_decode(&d, &o)->dips[0];
        if (dip->unplaced)
            add(f, BOIL_PLAN_NEEDS_WINDOW, part, dip->stay_least_s, dip->stay_most_s);
        else if (dip->leaves_s > latest_of(c, part))
            add(f, BOIL_PLAN_NEEDS_TIME, part, dip->leaves_s, latest_of(c, part));
        boil_plan_order_free(&o);
    }
    boil_plan_decoder_free(&d);
    return outcome;
}

/* What is open of the places until the last are carried off, after the end: from the boil on, and from where what hangs there is. */
static double open_s(const boil_plan_case *c)
{
    const boil_plan_problem *p = c->problem;
    double open = (double)(p->positions - p->hanging_count) * fmax(0, p->end_s + p->hoist_s - c->bath->ready_s);
    for (size_t i = 0; i < p->hanging_count; i++)
        open += fmax(0, p->end_s - fmax(p->hanging[i].leaves_s, c->bath->ready_s - p->hoist_s));
    return open;
}

/* A part that may share takes of a place's time what its mass takes of a dip's. */
static void judge_places(failing *f)
{
    const boil_plan_case *c = f->of;
    const boil_plan_problem *p = c->problem;
    double needed = 0, open = open_s(c);
    for (size_t i = 0; i < c->parts_count; i++) {
        const boil_plan_job *j = boil_plan_job_of(c, i);
        double share = j->may_share ? fmin(1, boil_plan_part_mass(&c->parts[i]) / c->bath->most_kg) : 1;
        needed += share * (c->parts[i].hot_s + j->least_s + p->hoist_s);
    }
    if (needed > open)
        add(f, BOIL_PLAN_NEEDS_PLACES, 0, needed, open);
}

/* However the dips are made up, their heat has to come in while the bath is quiet, and between two of them the boil settles. */
static void judge_heat(failing *f)
{
    const boil_plan_case *c = f->of;
    const boil_plan_bath *b = c->bath;
    double heat_J = 0, last_s = HUGE_VAL, most = boil_plan_most_heat(b);
    for (size_t i = 0; i < c->parts_count; i++) {
        heat_J += c->parts[i].heat_J;
        last_s = fmin(last_s, c->parts[i].hot_s + boil_plan_job_of(c, i)->least_s);
    }
    double dips = ceil(heat_J / most - 1e-9), each_s = fmax(c->problem->settle_s, b->steady_s);
    double back_s = (1 + b->slower) * ((dips - 1) * b->offset_s + (heat_J - most) / b->quiet_W);
    double needed = b->ready_s + fmax(0, (dips - 1) * each_s + back_s) + last_s;
    if (needed > c->problem->end_s)
        add(f, BOIL_PLAN_NEEDS_HEAT, 0, needed, c->problem->end_s);
}

/* Until the last may go in the bath has to hold its band, were water poured all the time. */
static void judge_water(failing *f)
{
    const boil_plan_bath *b = f->of->bath;
    double open_s = 0, least_kg_s = fmin(b->boils_off_kg_s, b->dries_kg_s);
    for (size_t i = 0; i < f->of->parts_count; i++)
        open_s = fmax(open_s, boil_plan_job_of(f->of, i)->earliest_s);
    double missing = (least_kg_s - b->flow_kg_s) * open_s;
    if (!b->valve && missing > b->strongest_kg)
        add(f, BOIL_PLAN_NEEDS_WATER, 0, missing, b->strongest_kg);
}

static void judge_start(failing *f)
{
    const boil_plan_problem *p = f->of->problem;
    for (size_t i = 0; i < p->hanging_count; i++)
        if (p->hanging[i].leaves_s > p->end_s)
            add(f, BOIL_PLAN_NEEDS_LIFT, i, p->hanging[i].leaves_s, p->end_s);
    if (f->of->bath->outside_K != 0)
        add(f, BOIL_PLAN_NEEDS_BAND, 0, f->of->bath->outside_K, 0);
}

boil_outcome boil_plan_conditions_failed(const boil_plan_case *c, boil_plan_condition list[BOIL_PLAN_CONDITIONS_MAX],
                                         size_t *count)
{
    failing f = {.of = c, .list = list};
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < c->parts_count && outcome == BOIL_OK; i++)
        outcome = judge_alone(&f, i);
    judge_start(&f);
    judge_places(&f);
    judge_heat(&f);
    judge_water(&f);
    *count = f.count;
    return outcome;
}
