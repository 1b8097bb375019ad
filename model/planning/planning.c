#include "planning/planning.h"

#include <string.h>

#include "planning/probe.h"

/* The same but for which part of which job it is; where blanks between members differ it is only probed once more. */
static const boil_plan_part *probed_before(const boil_plan_parts *all, size_t part)
{
    for (size_t i = 0; i < part; i++)
        if (memcmp(&all->list[i].load, &all->list[part].load, sizeof all->list[part].load) == 0)
            return &all->list[i];
    return NULL;
}

static boil_outcome probe_parts(boil_planning *g)
{
    boil_outcome outcome = BOIL_OK;
    for (size_t i = 0; i < g->parts.count && outcome == BOIL_OK; i++) {
        boil_plan_part *part = &g->parts.list[i];
        const boil_plan_part *same = probed_before(&g->parts, i);
        if (same == NULL) {
            outcome = boil_plan_probe_part(g->plant, &g->bath, &g->options, part);
            continue;
        }
        part->heat_J = same->heat_J;
        part->hot_s = same->hot_s;
    }
    return outcome;
}

static boil_outcome take_parts(boil_planning *g)
{
    boil_outcome outcome = boil_plan_parts_of(g->problem, &g->bath, g->bath_K, &g->parts);
    if (outcome == BOIL_OK)
        outcome = probe_parts(g);
    if (outcome == BOIL_OK)
        outcome = boil_plan_probe_salts(g->plant, &g->options, g->parts.list, g->parts.count, &g->bath);
    if (outcome != BOIL_OK)
        boil_planning_free(g);
    return outcome;
}

boil_outcome boil_planning_begin(const boil_plant *p, const boil_plan_problem *of, const boil_run_options *o,
                                 boil_planning *out)
{
    *out = (boil_planning){.plant = p, .problem = of, .options = *o};
    if (boil_plan_problem_wrong(of) != NULL)
        return BOIL_BAD_INPUT;
    boil_outcome outcome = boil_plan_probe_bath(p, of, o, &out->bath, &out->bath_K);
    return outcome == BOIL_OK ? take_parts(out) : outcome;
}

boil_outcome boil_planning_again(const boil_planning *of, const boil_plan_bath *bath, boil_planning *out)
{
    *out = (boil_planning){
        .plant = of->plant, .problem = of->problem, .options = of->options, .bath = *bath, .bath_K = of->bath_K};
    return take_parts(out);
}

void boil_planning_free(boil_planning *g)
{
    boil_plan_parts_free(&g->parts);
    boil_plan_lessons_free(&g->lessons);
}

boil_plan_case boil_planning_case(const boil_planning *g)
{
    return (boil_plan_case){g->problem, &g->bath, g->parts.list, g->parts.count, &g->lessons};
}
