#include "planning/idle.h"

#include <math.h>

#include "findings/findings.h"
#include "findings/run_set.h"

static void keep(boil_planning *g, const boil_findings *f)
{
    for (size_t i = 0; i < f->count; i++)
        if (f->list[i].severity > BOIL_SEVERITY_NOTICE && g->idle_count < BOIL_PLAN_IDLE_KEPT)
            g->idle[g->idle_count++] = (boil_plan_fault){f->list[i].title, f->list[i].severity};
}

static boil_outcome judge(boil_planning *g, const boil_schedule *s, const boil_run_set *set)
{
    boil_findings found, possible;
    boil_outcome outcome =
        boil_findings_of_unchecked(g->plant, s, NULL, &set->likely, set->other, set->count, &found, &possible);
    if (outcome != BOIL_OK)
        return outcome;
    keep(g, &found);
    keep(g, &possible);
    boil_findings_free(&found);
    boil_findings_free(&possible);
    return BOIL_OK;
}

boil_outcome boil_plan_look_idle(boil_planning *g)
{
    boil_run_options o = g->options;
    boil_run_set set = {.count = 0};
    boil_schedule nothing;
    if (g->was_idle || g->bath.ready_s > 0 || g->bath.valve)
        return BOIL_OK;
    g->was_idle = true;
    o.row_interval_s = 0;
    boil_schedule_init(&nothing, fmin(g->problem->hoist_s, g->bath.steady_s));
    boil_outcome outcome = boil_run_set_of(g->plant, &nothing, &o, &set);
    if (outcome == BOIL_OK)
        outcome = judge(g, &nothing, &set);
    boil_run_set_free(&set);
    boil_schedule_free(&nothing);
    return outcome;
}
