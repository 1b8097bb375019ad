#include "commands/plan/rest.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "base/program.h"
#include "plan/parts.h"
#include "planning/probe.h"

/* The whole job, or one of its baskets, is spoken for. */
static bool is_taken(const now_section *n, size_t job, size_t number, size_t *of)
{
    bool taken = false;
    for (size_t i = 0; i < n->count; i++) {
        const now_job *j = &n->list[i];
        if (j->job != job || j->kind == NOW_URGENT)
            continue;
        *of = j->of;
        taken = taken || j->of == 1 || j->number == number;
    }
    return taken;
}

/* What is left of a job: the baskets that nothing was said of. False: nothing is. */
static bool rest_of_job(const now_section *n, size_t job, boil_plan_job *j)
{
    const boil_plan_job whole = *j;
    size_t of = 1, left = 0;
    is_taken(n, job, 0, &of);
    for (size_t i = 0; i < of; i++) {
        boil_load part = boil_plan_part_load(&whole, i, of);
        if (is_taken(n, job, i, &of))
            continue;
        if (left++ == 0) {
            j->load = part;
            continue;
        }
        j->load.mass_kg += part.mass_kg;
        j->load.pieces += part.pieces;
    }
    if (j->load.pieces == 1)
        j->may_split = false;
    return left > 0;
}

/* In the clock that begins now; what is urgent is due when that says, and comes in before its earliest where it could not be done else. */
static void shift_times(const now_section *n, size_t job, boil_plan_job *j)
{
    for (size_t i = 0; i < n->count; i++)
        if (n->list[i].job == job && n->list[i].kind == NOW_URGENT) {
            j->priority = BOIL_PLAN_MUST;
            j->due_s = n->list[i].due_s;
            if (j->earliest_s + j->least_s > j->due_s)
                j->earliest_s = fmin(j->earliest_s, n->clock_s);
        }
    j->due_s -= n->clock_s;
    j->earliest_s = fmax(0, j->earliest_s - n->clock_s);
}

/* What is left of a job of the list, as it is from now. False: nothing is. */
static bool job_left(const scenario *s, size_t job, boil_plan_job *out)
{
    *out = s->jobs.list[job].job;
    if (!rest_of_job(&s->now, job, out))
        return false;
    shift_times(&s->now, job, out);
    return true;
}

static void take_jobs(const scenario *s, plan_rest *out)
{
    scenario_jobs *left = &out->scenario.jobs;
    left->count = 0;
    for (size_t i = 0; i < s->jobs.count; i++) {
        boil_plan_job j;
        if (!job_left(s, i, &j))
            continue;
        left->list[left->count] = s->jobs.list[i];
        left->list[left->count++].job = j;
    }
}

void plan_rest_drawn(const plan_rest *r, const scenario *drawn, boil_plant *plant, boil_plan_job jobs[])
{
    size_t left = 0;
    *plant = drawn->plant;
    plant->tank.level_m = r->scenario.plant.tank.level_m;
    plant->charge = r->scenario.plant.charge;
    for (size_t i = 0; i < drawn->jobs.count && left < r->scenario.jobs.count; i++)
        left += job_left(drawn, i, &jobs[left]);
}

bool plan_rest_reads(const key *k)
{
    static const char *const read[][2] = {{"tank", "level"},         {"tank", "freeboard"}, {"bath", "boiling point"},
                                          {"bath", "salt fraction"}, {"bath", "strength"},  {"bath", "temperature"}};
    for (size_t i = 0; i < sizeof read / sizeof read[0]; i++)
        if (k == key_named(read[i][0], read[i][1]))
            return true;
    return false;
}

static void take_hung(const scenario *s, plan_rest *out)
{
    for (size_t i = 0; i < s->now.count; i++) {
        const now_job *n = &s->now.list[i];
        const boil_plan_job *j = &s->jobs.list[n->job].job;
        if (n->kind == NOW_HANGS)
            out->hung[out->under_way.count++] = (boil_plan_hung){.load = boil_plan_part_load(j, n->number, n->of),
                                                                 .least_s = j->least_s,
                                                                 .most_s = j->most_s,
                                                                 .since_s = n->since_s - s->now.clock_s,
                                                                 .out_s = n->out_s - s->now.clock_s,
                                                                 .dip = n->dip};
    }
}

/* What lay on the bath as the shift began, or under it, may lie there still: it is not read off a thermometer. */
static bool is_clear(const scenario *s)
{
    const boil_plant *p = &s->plant;
    if (!(p->afloat.mass_kg > 0) && !(p->crust_kg > 0) && !(p->bed_kg > 0))
        return true;
    return program_complain(
        "%s: its bath begins with water afloat, a crust or salt on the floor ('check' shows it): put nothing in "
        "before it has boiled all over for some minutes; then take that line out, and plan again",
        s->path);
}

/* The bath as it was read. A thermometer in a quiet bath says nothing of its strength: that is as it boiled last. */
static bool take_bath(const scenario *s, plan_rest *out, boil_outcome *result)
{
    const double rounding_K = 1e-6; /* of a boiling point that is found by a search */
    const now_section *n = &s->now;
    boil_plant *p = &out->scenario.plant;
    boil_initial_state state;
    boil_plant hot = boil_plan_at_boil(&s->plant);
    *result = boil_plant_initial(&hot, &state);
    if (*result != BOIL_OK)
        return false;
    out->under_way.set_K = state.boiling_point_K;
    out->under_way.salts_kg = boil_mixture_salts(&state.mixture);
    p->tank.level_m = n->level_m;
    p->charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    p->charge.value = n->boils ? n->reads_K : isnan(n->boiled_K) ? out->under_way.set_K : n->boiled_K;
    p->charge.temperature_K = n->boils ? 0 : n->reads_K;
    if (!n->boils && n->reads_K > p->charge.value - rounding_K)
        return program_complain(
            "%s:%zu:%zu: at what it reads this bath boils: say 'boils = yes', or in 'last boiled' where it boiled last",
            s->path, n->reads_line, n->reads_column);
    *result = boil_plant_initial(p, &state);
    if (*result == BOIL_NO_MEMORY)
        return false;
    bool known = *result == BOIL_OK;
    *result = BOIL_OK;
    return known ||
           program_complain("%s:%zu:%zu: there is no bath of these salts that boils there, as far as is known: read it again",
                            s->path, n->reads_line, n->reads_column);
}

bool plan_rest_of(const scenario *s, plan_rest *out, boil_outcome *result)
{
    const double day_s = 86400;
    *out = (plan_rest){.scenario = *s, .now = &s->now, .of = s->jobs.list};
    *result = BOIL_OK;
    out->scenario.jobs.list = NULL;
    if (s->now.line == 0)
        return program_complain(
            "%s: '--now' needs a section [now] that says where the shift stands: 'clock', 'reads', 'boils' and "
            "'level', and what hangs or is out",
            s->path);
    if (!is_clear(s) || !take_bath(s, out, result))
        return false;
    out->scenario.jobs.list = calloc(s->jobs.count + 1, sizeof *out->scenario.jobs.list);
    out->hung = calloc(s->now.count + 1, sizeof *out->hung);
    if (out->scenario.jobs.list == NULL || out->hung == NULL) {
        *result = BOIL_NO_MEMORY;
        return false;
    }
    take_jobs(s, out);
    take_hung(s, out);
    out->under_way.hung = out->hung;
    out->under_way.dips = s->now.dips;
    out->scenario.start_s = fmod(s->start_s + s->now.clock_s, day_s);
    out->scenario.plan.end_s -= s->now.clock_s;
    for (size_t i = 0; i < s->schedule.breaks_count; i++) {
        out->scenario.schedule.breaks[i].from_s -= s->now.clock_s;
        out->scenario.schedule.breaks[i].to_s -= s->now.clock_s;
    }
    return out->scenario.jobs.count > 0 || s->jobs.count == 0 ||
           program_complain("%s: nothing of its list of jobs is left to go in", s->path);
}

void plan_rest_free(plan_rest *r)
{
    free(r->scenario.jobs.list);
    free(r->hung);
    *r = (plan_rest){.now = NULL};
}
