#include <math.h>

#include "analysis/correct_parts.h"
#include "analysis/steady_state.h"

static boil_outcome run_schedule(const boil_correct_work *c, const boil_schedule *s, boil_closures closures, double rows_s,
                                 boil_history *h)
{
    boil_run_options o = c->options;
    o.closures = closures;
    o.row_interval_s = rows_s;
    return boil_run_unchecked(&c->a->start, s, &o, h);
}

static boil_outcome run_plan(const boil_correct_work *c, double rows_s, boil_history *h)
{
    boil_schedule s;
    boil_outcome outcome = boil_correct_schedule(c->a, &s);
    if (outcome == BOIL_OK)
        outcome = run_schedule(c, &s, BOIL_CLOSURES_LIKELY, rows_s, h);
    boil_schedule_free(&s);
    return outcome;
}

/* When all is mixed in and dissolved but two thousandths; NaN: not in this run. */
static double settled_s(const boil_correction *a, const boil_history *h)
{
    double poured = fmax(a->water.start_s + a->water.over_s,
                         fmax(a->salts.start_s + a->salts.over_s, a->liquid.start_s + a->liquid.over_s));
    for (size_t i = 0; i < h->rows_count; i++) {
        const boil_row *r = &h->rows[i];
        if (r->time_s >= poured && r->boiling && r->undissolved_kg <= 0.002 * a->salts.mass_kg &&
            r->layer_kg <= 0.002 * a->water.mass_kg)
            return r->time_s - poured;
    }
    return (double)NAN;
}

static boil_outcome find_hold(boil_correct_work *c, double *hold_s)
{
    const double longest_s = 4 * 3600;
    double needed = (double)NAN;
    for (*hold_s = 240; isnan(needed) && *hold_s <= longest_s; *hold_s *= 2) {
        boil_history h;
        boil_correct_work_place(c->a, *hold_s);
        boil_outcome outcome = run_plan(c, 10, &h);
        if (outcome != BOIL_OK)
            return outcome;
        needed = settled_s(c->a, &h);
        boil_history_free(&h);
    }
    *hold_s = fmax(BOIL_CORRECT_SETTLE_S, isnan(needed) ? longest_s : needed);
    return BOIL_OK;
}

static void note_end(boil_correction *a, const boil_history *h)
{
    const boil_summary *s = &h->summary;
    a->boiled_off_kg = s->vented_total_kg;
    a->end_K = s->boiling_point_end_K;
    a->end_fraction = s->salt_fraction_end;
    a->end_strength_kg_m3 = s->strength_end_kg_m3;
    a->end_still_m = s->still_level_end_m;
}

/* The boil-off hardly depends on the water that makes up for it: a few runs suffice. The plan is the one that was run last. */
static boil_outcome converge(boil_correct_work *c, double hold_s)
{
    boil_correction *a = c->a;
    double wanted = a->amounts.level_m * c->set_density_kg_m3 * c->area_m2;
    const int most = 6;
    boil_outcome outcome = BOIL_OK;
    for (int i = 1; outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE; i++) {
        boil_history h;
        double before_s = a->done_s;
        boil_correct_work_place(a, hold_s);
        if (a->boiled_off_kg > 0 && a->water.mass_kg > 0) { /* what boils off goes with the time */
            outcome = boil_correct_work_set_water(c, a->water.mass_kg + (a->done_s - before_s) * c->vent_kg_s);
            boil_correct_work_place(a, hold_s);
        }
        if (outcome != BOIL_OK || (outcome = run_plan(c, 0, &h)) != BOIL_OK)
            break;
        double lacks = wanted - h.summary.bath_mass_end_kg;
        note_end(a, &h);
        boil_history_free(&h);
        if (i == most || fabs(lacks) <= (boil_correct_work_adds(a) ? 1e-4 * wanted : 31 * c->vent_kg_s))
            break;
        if (!(boil_correct_work_adds(a) || a->boil_down_s > 0))
            break;
        outcome = boil_correct_work_set_water(c, a->water.mass_kg - a->boil_down_s * c->vent_kg_s + lacks);
    }
    return outcome;
}

/* A bath that is fuller than it should be, but only boils down, is not to be judged by that unless it boils over. */
static boil_outcome is_too_full(const boil_correct_work *c, bool *too_full)
{
    const boil_plant *start = &c->a->start;
    boil_row calm;
    boil_outcome outcome = boil_steady_state_first_row(start, &c->options, &calm);
    *too_full =
        outcome == BOIL_OK && c->a->boil_down_s > 0 && calm.freeboard_m < start->limits.freeboard_m && calm.freeboard_m > 0;
    return outcome;
}

/* The run of the whole, mixing fast: each pace was found alone. */
static boil_outcome find_harm(boil_correct_work *c)
{
    boil_correction *a = c->a;
    boil_schedule s;
    boil_history h;
    bool too_full;
    a->harm_id = a->harm = NULL;
    boil_outcome outcome = is_too_full(c, &too_full);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_correct_schedule(a, &s);
    if (outcome == BOIL_OK && (outcome = run_schedule(c, &s, BOIL_CLOSURES_GRAVE, 0, &h)) == BOIL_OK) {
        a->freeboard_min_m = h.summary.freeboard_min_m.value;
        if (a->done_s > 0 && !too_full)
            outcome = boil_pour_rate_forbids(&a->start, &s, &h, &a->harm_id, &a->harm);
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

/* A pace found for less than the water that it came to is found again; all are a little slower from then on. */
static boil_outcome slow_down(boil_correct_work *c, int time)
{
    const double share = 0.98;
    boil_correction *a = c->a;
    if (time == 2 && a->water.mass_kg > 0)
        return boil_correct_work_find_water_pace(c, a->water.mass_kg - c->vent_kg_s * a->water.over_s);
    a->water.pace.rate_kg_s *= share;
    a->salts.pace.rate_kg_s *= share;
    a->liquid.pace.rate_kg_s *= share;
    return BOIL_OK;
}

boil_outcome boil_correct_work_prove(boil_correct_work *c)
{
    boil_correction *a = c->a;
    double hold_s = 0;
    boil_outcome outcome = boil_correct_work_adds(a) ? find_hold(c, &hold_s) : BOIL_OK;
    for (int i = 0; i < 8 && outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE; i++) {
        outcome = converge(c, hold_s);
        if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE)
            outcome = find_harm(c);
        if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE && a->harm == NULL)
            return BOIL_OK;
        if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE)
            outcome = slow_down(c, i);
    }
    if (outcome == BOIL_OK && a->end == BOIL_CORRECT_DONE)
        a->end = BOIL_CORRECT_NO_POUR_RATE;
    return outcome;
}
