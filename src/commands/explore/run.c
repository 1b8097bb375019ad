#include "commands/explore/answer.h"

#include <math.h>
#include <stdatomic.h>
#include <string.h>

#include "base/clock.h"
#include "base/threads.h"
#include "case/checks.h"

static void keep_findings(double *row, const boil_findings *found)
{
    const char *id, *title;
    for (size_t k = 0; (id = boil_finding_listed(k, &title)) != NULL; k++) {
        double *severity = &row[explore_finding_output(k)];
        *severity = 0;
        for (size_t i = 0; i < found->count; i++)
            if (strcmp(found->list[i].id, id) == 0)
                *severity = 1 + (double)found->list[i].severity;
    }
}

/* How many loads stand before it in the schedule: one that waits may go in later than the next. */
static size_t place_of(const boil_schedule *s, size_t action)
{
    size_t place = 0;
    for (size_t i = 0; i < action; i++)
        place += s->actions[i].kind == BOIL_ACTION_LOAD;
    return place;
}

static void keep_loads(const explore_answer *s, const boil_schedule *schedule, double *row, const boil_history *h,
                       double limit_s)
{
    boil_recoveries all = boil_history_recoveries(h, limit_s);
    for (size_t k = 0; k < h->loads_count; k++) {
        const boil_load_result *r = &h->loads[k];
        size_t i = place_of(schedule, r->action);
        if (i >= s->load_count)
            continue;
        row[explore_load_output_of(s, i, EXPLORE_LOAD_RECOVERY_S)] = r->recovery_s;
        row[explore_load_output_of(s, i, EXPLORE_LOAD_LOWEST_K)] = r->lowest_temperature_K;
        row[explore_load_output_of(s, i, EXPLORE_LOAD_LEVEL_M)] = r->level_max_m;
    }
    row[EXPLORE_SLOWEST_S] = all.slowest_s;
    row[EXPLORE_BACK_SHARE] = h->loads_count > 0 ? (double)all.back / (double)h->loads_count : (double)NAN;
}

static void keep_summary(double *row, const boil_history *h)
{
    const boil_summary *m = &h->summary;
    row[EXPLORE_DONE] = h->end == BOIL_RUN_DONE || h->end == BOIL_RUN_FULL; /* of a full tank all is known that counts */
    row[EXPLORE_QUIET_S] = (1 - m->boiling_share) * h->end_s;
    row[EXPLORE_FREEBOARD_M] = m->freeboard_min_m.value;
    row[EXPLORE_LEVEL_M] = m->level_max_m.value;
    row[EXPLORE_STEAM_KG_S] = m->steam_peak_kg_s.value;
    row[EXPLORE_LAYER_KG] = m->layer_max_kg.value;
    row[EXPLORE_TEMPERATURE_MAX_K] = m->temperature_max_K.value;
    row[EXPLORE_TEMPERATURE_END_K] = m->temperature_end_K;
    row[EXPLORE_VENTED_KG] = m->vented_total_kg;
}

static boil_outcome carry_out(const explore_answer *s, const scenario *c, boil_simulation **own, double *row)
{
    const boil_history *h;
    boil_findings found;
    boil_run_options o = boil_run_options_default();
    if (!boil_check_case(&c->plant, &c->schedule, &o))
        return BOIL_BAD_INPUT;
    boil_outcome outcome = boil_run_in(own, &c->plant, &c->schedule, &o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = boil_findings_of(&c->plant, &c->schedule, NULL, h, NULL, 0, &found, NULL);
    if (outcome == BOIL_OK) {
        keep_loads(s, &c->schedule, row, h, c->plant.limits.recovery_s);
        keep_summary(row, h);
        keep_findings(row, &found);
    }
    boil_findings_free(&found);
    return outcome;
}

/* No such bath, or a run that could not be made, is a result too. False when memory was refused for it: it is not made then. */
static bool make(explore_answer *s, scenario_text *text, const explore_work *w, boil_simulation **own, size_t row)
{
    double value[BOIL_SAMPLING_INPUTS + 1];
    scenario_change changes[BOIL_SAMPLING_INPUTS + 1];
    scenario c;
    messages m;
    size_t count = explore_values(s, row, value);
    for (size_t i = 0; i < count; i++)
        changes[i] = (scenario_change){w->things[i], value[i]};
    messages_init(&m);
    explore_row(s, row)[EXPLORE_DONE] = 0;
    boil_outcome outcome = scenario_of_text(text, changes, count, &c, &m);
    if (outcome == BOIL_OK)
        outcome = carry_out(s, &c, own, explore_row(s, row));
    if (outcome == BOIL_NO_MEMORY)
        explore_row(s, row)[EXPLORE_DONE] = (double)NAN;
    messages_free(&m);
    scenario_free(&c);
    return outcome != BOIL_NO_MEMORY;
}

typedef struct {
    threads threads;
    size_t done, all;
    double begun_s, shown_s;
    bool wanted;
    atomic_bool refused; /* memory, for a run: the rest is left */
} progress;

static void progress_step(progress *p)
{
    enum { WIDTH = 40 };
    double now = clock_now_s(), often_s = 0.2;
    p->done++;
    if (!p->wanted || (now - p->shown_s < often_s && p->done < p->all))
        return;
    p->shown_s = now;
    int full = (int)(WIDTH * p->done / p->all);
    double left_s = (now - p->begun_s) / (double)p->done * (double)(p->all - p->done);
    fprintf(stderr, "\r [%.*s%.*s] %zu of %zu runs, %s left   ", full, "########################################", WIDTH - full,
            "                                        ", p->done, p->all, format_duration(left_s).text);
    if (p->done == p->all)
        fputc('\n', stderr);
}

static bool is_mine(const explore_answer *s, const explore_work *w, size_t row)
{
    return row % w->shards == w->shard && explore_needs(s, row);
}

/* What one thread makes of them, all in one workspace. */
static void make_some(explore_answer *s, scenario_text *text, const explore_work *w, progress *p)
{
    size_t rows = explore_rows(s);
    boil_simulation *own = NULL;
#ifdef _OPENMP
#pragma omp for schedule(dynamic)
#endif
    for (size_t row = 0; row < rows; row++) {
        if (threads_asked_to_stop() || atomic_load(&p->refused) || !is_mine(s, w, row))
            continue;
        if (!make(s, text, w, &own, row)) {
            atomic_store(&p->refused, true);
            continue;
        }
#ifdef _OPENMP
#pragma omp critical
#endif
        progress_step(p);
    }
    boil_simulation_free(own);
}

static void make_all(explore_answer *s, scenario_text *text, const explore_work *w, progress *p)
{
#ifdef _OPENMP
#pragma omp parallel num_threads(p->threads.count)
#endif
    make_some(s, text, w, p);
}

explore_end explore_run(explore_answer *s, scenario_text *text, const explore_work *w)
{
    progress p = {.begun_s = clock_now_s(), .wanted = w->progress};
    for (size_t row = 0; row < explore_rows(s); row++)
        p.all += is_mine(s, w, row);
    threads_begin(&p.threads, (unsigned long)w->threads);
    make_all(s, text, w, &p);
    threads_end(&p.threads);
    if (p.wanted && p.done < p.all)
        fputc('\n', stderr);
    return p.refused ? EXPLORE_NO_MEMORY : p.done == p.all ? EXPLORE_WHOLE : EXPLORE_INTERRUPTED;
}
