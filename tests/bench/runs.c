/* runs.c -- one run of a case: the likely laws, one mixing time, no trace. */
#include <math.h>
#include <stdlib.h>
#include <sys/resource.h>

#include "bench.h"
#include "boilback.h"
#include "scenario/scenario.h"
#include "simulate/run.h"

enum { TIMES = 5 };

/* False: it cannot be read. */
static bool read_case(const char *path, scenario *c)
{
    messages m;
    messages_init(&m);
    *c = (scenario){0};
    return scenario_read(path, c, &m) == BOIL_OK;
}

void bench_one_run(const char *path)
{
    scenario c;
    boil_history h;
    const boil_run_options o = boil_run_options_default();
    if (read_case(path, &c) && boil_run(&c.plant, &c.schedule, &o, &h) == BOIL_OK)
        boil_history_free(&h);
    scenario_free(&c);
}

static int ascending(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median_ms(const scenario *c, const boil_run_options *o)
{
    double ms[TIMES];
    for (int i = 0; i < TIMES; i++) {
        boil_history h;
        double start = bench_user_now();
        if (boil_run(&c->plant, &c->schedule, o, &h) == BOIL_OK)
            boil_history_free(&h);
        ms[i] = 1e3 * (bench_user_now() - start);
    }
    qsort(ms, TIMES, sizeof *ms, ascending);
    return ms[TIMES / 2];
}

/* Of a run: its stretches, all its allocations, and those after its beginning. */
typedef struct {
    size_t stretches, allocations, later;
} counts;

static counts count(const scenario *c, const boil_run_options *o)
{
    boil_simulation *r = NULL;
    counts n = {0, 0, 0};
    size_t before = bench_allocations();
    if (boil_simulation_begin(&c->plant, &c->schedule, o, &r) != BOIL_OK) {
        boil_simulation_free(r);
        return n;
    }
    size_t begun = bench_allocations();
    for (boil_simulation_place at = boil_simulation_at(r); !at.over; at = boil_simulation_at(r), n.stretches++)
        if (boil_simulation_advance(r, nextafter(at.time_s, HUGE_VAL)) != BOIL_OK)
            break;
    if (boil_simulation_finish(r) == BOIL_OK) {
        n.allocations = bench_allocations() - before;
        n.later = bench_allocations() - begun;
    }
    boil_simulation_free(r);
    return n;
}

static void one(FILE *csv, const char *self, const char *name, const char *path)
{
    scenario c;
    boil_history h;
    const boil_run_options o = boil_run_options_default();
    if (!read_case(path, &c) || boil_run(&c.plant, &c.schedule, &o, &h) != BOIL_OK) {
        printf("%-28s cannot be run\n", name);
        scenario_free(&c);
        return;
    }
    const counts n = count(&c, &o);
    double millions = bench_instructions(self, "--run", path), ms = median_ms(&c, &o);
    printf("%-28s %11zu %6zu %9zu %10.1f %11.1f %12.1f %7zu %6zu\n", name, h.evaluations, h.steps, n.stretches, millions,
           1e3 * millions / (double)h.evaluations, ms, n.allocations, n.later);
    bench_row(csv, name, "evaluations", (double)h.evaluations);
    bench_row(csv, name, "steps", (double)h.steps);
    bench_row(csv, name, "restarts", (double)n.stretches);
    bench_row(csv, name, "million instructions", millions);
    bench_row(csv, name, "user time ms", ms);
    bench_row(csv, name, "allocations", (double)n.allocations);
    bench_row(csv, name, "allocations after the start", (double)n.later);
    boil_history_free(&h);
    scenario_free(&c);
}

void bench_runs(FILE *csv, const char *self)
{
    struct rusage used;
    printf("one run, its likely laws          evaluations  steps  restarts  M instr.  1000/evaluation  user ms  allocations  "
           "later\n");
    one(csv, self, "four hours 8 loads", "scenarios/normal-shift.bath");
    one(csv, self, "eight hours 24 loads", "tests/bench/eight-hours.bath");
    one(csv, self, "a weekend", "scenarios/weekend.bath");
    getrusage(RUSAGE_SELF, &used);
    printf("peak memory %ld kB\n\n", used.ru_maxrss);
    bench_row(csv, "these runs", "peak memory kB", (double)used.ru_maxrss);
}
