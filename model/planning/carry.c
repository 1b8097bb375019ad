#include "planning/carry.h"

#include <math.h>
#include <stdlib.h>

#include "analysis/pour_rate.h"
#include "base/constants.h"
#include "planning/probe.h"

/* The places of the tank, and since when each is free. */
typedef struct {
    double free_s[BOIL_POSITIONS_MAX];
} places;

static int take_place(places *p, const boil_plan_problem *of, double enters_s, double out_s)
{
    const double rounding_s = 1e-6;
    for (size_t i = 0; i < of->positions; i++)
        if (p->free_s[i] <= enters_s + rounding_s) {
            p->free_s[i] = out_s;
            return (int)i + 1;
        }
    return 0;
}

static boil_outcome add(boil_plan_carried *out, boil_action *a, boil_plan_act act)
{
    a->line = (int)out->schedule.count + 1;
    out->acts[out->schedule.count] = act;
    return boil_schedule_add(&out->schedule, a);
}

/* One place holds a dip, however many baskets hang there together. */
static boil_outcome add_dip(const boil_plan_case *c, const boil_plan_timetable *t, size_t k, places *p, boil_plan_carried *out)
{
    const boil_plan_dip *d = &t->dips[k];
    boil_outcome outcome = BOIL_OK;
    int position = take_place(p, c->problem, d->enters_s, d->leaves_s + c->problem->hoist_s);
    for (size_t i = 0; i < d->count && outcome == BOIL_OK; i++) {
        size_t part = t->parts[d->first + i];
        boil_action a = {.kind = BOIL_ACTION_LOAD, .time_s = d->enters_s, .wait = {.state = BOIL_WAIT_BOILING}};
        a.position = position;
        a.is.load = c->parts[part].load;
        a.is.load.immersed_s = d->leaves_s - d->enters_s;
        outcome = add(out, &a, (boil_plan_act){.dip = k, .part = part});
    }
    return outcome;
}

/* Salts are a pour likewise, sifted. */
static boil_outcome add_pour(const boil_plan_timetable *t, bool salts, size_t number, const boil_plant *plant,
                             boil_plan_carried *out)
{
    const boil_plan_pour *w = salts ? &t->salts[number] : &t->pours[number];
    double water_K = fmax(plant->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    boil_action a = salts ? boil_plan_sifting_action(plant, w->mass_kg)
                          : boil_pour_rate_action(BOIL_ACTION_WATER, w->mass_kg, plant->charge.blend, 0, water_K);
    boil_action_pour(&a, w->mass_kg, w->mass_kg / w->over_s);
    a.time_s = w->start_s;
    a.wait.state = BOIL_WAIT_BOILING;
    a.pour = (boil_pour){.no_later_s = w->start_s + w->over_s, .while_boiling = true};
    return add(out, &a, (boil_plan_act){.is_pour = !salts, .is_salts = salts, .pour = number});
}

static double ends_s(const boil_plan_case *c, const boil_plan_timetable *t)
{
    double end = 0;
    for (size_t i = 0; i < t->dips_count; i++)
        end = fmax(end, fmax(t->dips[i].leaves_s, t->dips[i].back_s));
    for (size_t i = 0; i < c->problem->hanging_count; i++)
        end = fmax(end, c->problem->hanging[i].leaves_s);
    for (size_t i = 0; i < t->pours_count; i++)
        end = fmax(end, t->pours[i].start_s + t->pours[i].over_s);
    for (size_t i = 0; i < t->salts_count; i++)
        end = fmax(end, t->salts[i].start_s + t->salts[i].over_s);
    return end;
}

static boil_outcome add_all(const boil_plan_case *c, const boil_plan_timetable *t, const boil_plant *plant,
                            boil_plan_carried *out)
{
    boil_outcome outcome = BOIL_OK;
    places p = {.free_s = {0}};
    for (size_t i = 0; i < c->problem->hanging_count; i++)
        p.free_s[i] = c->problem->hanging[i].leaves_s + c->problem->hoist_s;
    size_t pour = 0, sifting = 0;
    for (size_t k = 0; k <= t->dips_count && outcome == BOIL_OK; k++) {
        double until_s = k < t->dips_count ? t->dips[k].enters_s : HUGE_VAL;
        for (; pour < t->pours_count && t->pours[pour].start_s < until_s && outcome == BOIL_OK; pour++)
            outcome = add_pour(t, false, pour, plant, out);
        for (; sifting < t->salts_count && t->salts[sifting].start_s < until_s && outcome == BOIL_OK; sifting++)
            outcome = add_pour(t, true, sifting, plant, out);
        if (k < t->dips_count && outcome == BOIL_OK)
            outcome = add_dip(c, t, k, &p, out);
    }
    for (size_t i = 0; i < c->problem->breaks_count && outcome == BOIL_OK; i++)
        outcome = boil_schedule_add_break(&out->schedule, c->problem->breaks[i].from_s, c->problem->breaks[i].to_s);
    return outcome;
}

boil_outcome boil_plan_carry(const boil_plan_case *c, const boil_plan_timetable *t, const boil_plant *plant,
                             boil_plan_carried *out)
{
    *out = (boil_plan_carried){.acts = calloc(c->parts_count + t->pours_count + t->salts_count + 1, sizeof *out->acts)};
    boil_schedule_init(&out->schedule, fmin(ends_s(c, t) + BOIL_PLAN_AFTER_S, BOIL_LONGEST_RUN_S));
    boil_outcome outcome = out->acts != NULL ? add_all(c, t, plant, out) : BOIL_NO_MEMORY;
    if (outcome != BOIL_OK)
        boil_plan_carried_free(out);
    return outcome;
}

void boil_plan_carried_free(boil_plan_carried *c)
{
    boil_schedule_free(&c->schedule);
    free(c->acts);
    *c = (boil_plan_carried){.acts = NULL};
}
