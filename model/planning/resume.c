#include "planning/resume.h"

#include <math.h>
#include <stdlib.h>

#include "case/plant.h"
#include "plan/hands.h"
#include "planning/probe.h"

#define WORTH_S 1.0 /* of a recovery, by the heat that is still taken: judgement */

/* Water for the set point, the band counted from there, and salts. */
static boil_outcome find_missing(boil_planning *g, double set_K, double salts_kg)
{
    boil_initial_state s;
    double high_K = g->plant->limits.boiling_point_high_K, low_K = g->plant->limits.boiling_point_low_K;
    boil_plant hot = boil_plan_at_boil(g->plant);
    boil_outcome outcome = boil_plant_initial(&hot, &s);
    if (outcome != BOIL_OK)
        return outcome;
    double missing = -boil_plan_water_lost(&hot, &s, set_K);
    g->bath.missing_kg = isnan(missing) ? 0 : missing;
    double room = boil_plan_water_lost(&hot, &s, set_K + BOIL_PLAN_BAND_UP * (high_K - set_K)) + g->bath.missing_kg;
    if (high_K > 0 && !isnan(room))
        g->bath.strongest_kg = room;
    double below = -boil_plan_water_lost(&hot, &s, set_K - BOIL_PLAN_BAND_DOWN * (set_K - low_K)) - g->bath.missing_kg;
    if (low_K > 0)
        g->bath.weakest_kg = below > 0 ? below : 0;
    g->bath.owed_kg = fmax(0, salts_kg - boil_mixture_salts(&s.mixture));
    return boil_plan_probe_salts(g->plant, &g->options, g->parts.list, g->parts.count, &g->bath);
}

/* When a dip has what it needs, and its most; and when it was to be out. */
typedef struct {
    double least_s, most_s, out_s;
} need;

static boil_outcome add_basket(const boil_planning *g, const boil_plan_hung *h, need *n, double *left_J, double *warm_s)
{
    bool boils = !(g->bath.ready_s > 0);
    boil_plan_part part = {.of = 1, .load = h->load};
    boil_plan_part_estimate(&part, g->bath_K);
    boil_outcome outcome = boil_plan_probe_part(g->plant, &g->bath, &g->options, &part);
    if (outcome != BOIL_OK)
        return outcome;
    double hot_s = boils ? h->since_s + part.hot_s : fmax(g->bath.ready_s, h->since_s + part.hot_s);
    n->least_s = fmax(n->least_s, hot_s + h->least_s);
    n->most_s = fmin(n->most_s, hot_s + h->most_s);
    n->out_s = isnan(h->out_s) ? n->out_s : h->out_s;
    *left_J += part.heat_J * exp(h->since_s / part.lag_s);
    double gone_s = part.lag_s * log(fmax(1, part.heat_J / (WORTH_S * g->bath.quiet_W)));
    *warm_s = fmax(*warm_s, h->since_s + gone_s);
    return BOIL_OK;
}

static double wanted_s(const need *n)
{
    return fmax(0, isnan(n->out_s) ? n->least_s : n->out_s);
}

/* One lift after the other, what is wanted first first; what was planned before keeps its time where the hoist is free. */
static void find_lifts(const boil_planning *g, const need needs[], boil_plan_resumed out[], size_t dips,
                       boil_plan_hanging list[])
{
    boil_plan_hands hands = {g->problem, list, 0};
    for (size_t i = 0; i < dips; i++) {
        size_t next = dips;
        for (size_t k = 0; k < dips; k++)
            if (out[k].dip.number == 0 && (next == dips || wanted_s(&needs[k]) < wanted_s(&needs[next])))
                next = k;
        double leaves_s = boil_plan_hands_lift(&hands, wanted_s(&needs[next]));
        out[next] = (boil_plan_resumed){{leaves_s, i + 1}, needs[next].most_s};
        list[hands.count++] = (boil_plan_hanging){-HUGE_VAL, leaves_s};
    }
}

boil_outcome boil_plan_resume(boil_planning *g, const boil_plan_under_way *w, boil_plan_resumed out[], double *warm_s)
{
    const size_t dips = w->dips;
    need *needs = calloc(dips + 1, sizeof *needs);
    boil_plan_hanging *list = calloc(dips + 1, sizeof *list);
    double left_J = 0;
    boil_outcome outcome = needs != NULL && list != NULL ? find_missing(g, w->set_K, w->salts_kg) : BOIL_NO_MEMORY;
    *warm_s = 0;
    for (size_t k = 0; k < dips && outcome == BOIL_OK; k++) {
        needs[k] = (need){0, HUGE_VAL, (double)NAN};
        out[k] = (boil_plan_resumed){.most_s = HUGE_VAL};
    }
    for (size_t i = 0; i < w->count && outcome == BOIL_OK; i++)
        outcome = add_basket(g, &w->hung[i], &needs[w->hung[i].dip], &left_J, warm_s);
    if (outcome == BOIL_OK)
        find_lifts(g, needs, out, dips, list);
    if (outcome == BOIL_OK && g->bath.ready_s > 0)
        g->bath.ready_s += left_J / g->bath.quiet_W;
    free(needs);
    free(list);
    return outcome;
}

boil_outcome boil_plan_take_up(boil_planning *g, const boil_plan_under_way *w, boil_plan_problem *of, boil_plan_job jobs[],
                               boil_plan_resumed out[], boil_plan_hanging_dip lifts[])
{
    double warm_s;
    boil_outcome outcome = boil_plan_resume(g, w, out, &warm_s);
    if (outcome != BOIL_OK)
        return outcome;
    for (size_t i = 0; i < w->dips; i++)
        lifts[i] = out[i].dip;
    for (size_t i = 0; i < of->jobs_count; i++)
        jobs[i].earliest_s = fmax(jobs[i].earliest_s, boil_plan_hands_second(warm_s));
    of->hanging = lifts;
    of->hanging_count = w->dips;
    return BOIL_OK;
}
