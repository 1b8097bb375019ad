/* bench.c -- measured here and now, never asserted: what the parts cost, and a work-precision table for the choice of stepper
   tolerance. Run by `make bench`. */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "boilback.h"
#include "base/constants.h"
#include "commands/explore/answer.h"
#include "bath/modes.h"
#include "bath/rates.h"
#include "simulate/run.h"

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static boil_plant trough(void)
{
    boil_plant p = boil_plant_default();
    p.tank.length_m = 1.5;
    p.tank.width_m = 0.6;
    p.tank.depth_m = 0.8;
    p.tank.level_m = 0.5;
    p.charge = (boil_initial_charge){{0.80, 0.15, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, BOIL_ZERO_CELSIUS + 140.5, 0};
    p.heater = boil_heater_default(BOIL_HEAT_ELECTRIC);
    p.heater.input_W = 34e3;
    return p;
}

/* Four hours, eight loads of 20 kg of 6 mm plate, water after each. */
static void shift(boil_schedule *s)
{
    boil_schedule_init(s, 4 * 3600);
    for (int i = 0; i < 8; i++) {
        boil_action load = {.time_s = 300 + 1800.0 * i, .kind = BOIL_ACTION_LOAD};
        load.is.load = boil_load_default();
        load.is.load.mass_kg = 20;
        load.is.load.size_m = 0.006;
        load.is.load.immersed_s = 1200;
        boil_action water = {.time_s = 700 + 1800.0 * i, .kind = BOIL_ACTION_WATER};
        water.is.water = (boil_action_water){7.5, 600, BOIL_ZERO_CELSIUS + 20};
        boil_schedule_add(s, &load);
        boil_schedule_add(s, &water);
    }
}

static void work_and_precision(void)
{
    boil_plant p = trough();
    boil_schedule s;
    boil_run_options o = boil_run_options_default();
    boil_history exact, h;
    shift(&s);
    o.tolerance = 1e-11;
    if (boil_run(&p, &s, &o, &exact) != BOIL_OK)
        return;
    printf("a shift of four hours and eight loads\n");
    printf("tolerance    time  steps  evaluations  worst event  end temperature  energy closure\n");
    for (double tolerance = 1e-4; tolerance > 5e-11; tolerance /= 10) {
        o.tolerance = tolerance;
        double start = now(), worst = 0;
        if (boil_run(&p, &s, &o, &h) != BOIL_OK)
            return;
        double took = now() - start;
        for (size_t i = 0; i < h.quiet_count && i < exact.quiet_count; i++)
            worst = fmax(worst, fabs(h.quiet[i].end_s - exact.quiet[i].end_s));
        printf("   %.0e  %4.0f ms  %5zu  %11zu    %.1e s        %.1e K         %.0e\n", tolerance, 1e3 * took, h.steps,
               h.evaluations, worst, fabs(h.summary.temperature_end_K - exact.summary.temperature_end_K),
               fabs(h.balance.energy.closure));
        boil_history_free(&h);
    }
    boil_history_free(&exact);
    boil_schedule_free(&s);
}

static void parts(void)
{
    enum { MANY = 200000 };
    boil_plant p = trough();
    boil_bath b;
    boil_rates_view v;
    boil_rates_guess warm;
    double y[BOIL_STATE_FIXED], rates[BOIL_STATE_FIXED], T = 0;
    if (boil_modes_start(&b, &p, y, &warm) != BOIL_OK)
        return;
    boil_mixture m = {y[BOIL_STATE_BATH_WATER], {y[BOIL_STATE_BATH_NAOH], y[BOIL_STATE_BATH_NANO3], y[BOIL_STATE_BATH_NANO2]}};
    boil_solution_guess guess = {0, 0};
    boil_slope slope;
    double water = m.water, sum = 0, start = now();
    for (int i = 0; i < MANY; i++) {
        m.water = water * (1 + 1e-6 * (i % 100));
        boil_solution_boiling_point_near(&b.air, &m, &guess, &T, &slope);
        sum += T;
    }
    printf("boiling point with slopes, warm  %4.0f ns\n", (now() - start) / MANY * 1e9);
    start = now();
    for (int i = 0; i < MANY; i++)
        sum += boil_solution_heat(&m, T + 1e-6 * (i % 100)).water;
    printf("enthalpy with its derivatives    %4.0f ns\n", (now() - start) / MANY * 1e9);
    start = now();
    for (int i = 0; i < MANY; i++) {
        y[BOIL_STATE_BATH_WATER] = water * (1 + 1e-6 * (i % 100));
        boil_rates_at(&b, 0, y, &warm, &v, rates);
        sum += rates[BOIL_STATE_BATH_WATER];
    }
    printf("rates of the whole bath          %4.0f ns   (%g)\n", (now() - start) / MANY * 1e9, sum > 0 ? 1.0 : 0.0);
    boil_bath_free(&b);
}

/* A study of a shift, as explore makes it: runs a second, or peak memory, each in a process of its own. */
typedef struct {
    double runs_s;
    double processor_s; /* of all runs together: on a busy machine it tells more than the clock */
    long peak_kB;
} studied;

static void explore_in_child(const char *path, size_t points, int threads, int to)
{
    static explore_answer s;
    scenario_text text;
    scenario c = {0};
    messages m;
    struct rusage used;
    messages_init(&m);
    if (!scenario_text_read(path, &text, &m) || scenario_of_text(&text, NULL, 0, &c, &m) != BOIL_OK)
        _exit(1);
    s = (explore_answer){.input_count = c.uncertain_count, .plan = {c.uncertain_count, points, 8, 1}, .load_count = 8};
    explore_work work = {.thing_count = c.uncertain_count, .shards = 1, .threads = threads};
    for (size_t i = 0; i < c.uncertain_count; i++) {
        s.inputs[i].spread = c.uncertain[i].spread;
        work.things[i] = &c.uncertain[i].thing;
    }
    if (!explore_begun(&s))
        _exit(1);
    double start = now();
    explore_run(&s, &text, &work);
    double took = now() - start;
    getrusage(RUSAGE_SELF, &used);
    double processor_s = (double)used.ru_utime.tv_sec + 1e-6 * (double)used.ru_utime.tv_usec;
    studied r = {(double)explore_rows(&s) / took, processor_s,
                 used.ru_maxrss - (long)(explore_rows(&s) * s.outputs * sizeof(double) / 1024)};
    _exit(write(to, &r, sizeof r) == sizeof r ? 0 : 1);
}

static studied explore_of(const char *path, size_t points, int threads)
{
    studied r = {(double)NAN, (double)NAN, 0};
    int ends[2];
    fflush(stdout);
    if (pipe(ends) != 0)
        return r;
    pid_t child = fork();
    if (child == 0)
        explore_in_child(path, points, threads, ends[1]);
    close(ends[1]);
    if (child < 0 || read(ends[0], &r, sizeof r) != sizeof r)
        r.runs_s = (double)NAN;
    close(ends[0]);
    if (child > 0)
        waitpid(child, NULL, 0);
    return r;
}

static void studies(void)
{
    const char *shift_path = "scenarios/uncertain-shift.bath", *short_path = "tests/cli/baths/uncertain.bath";
    studied one = explore_of(shift_path, 4, 1), two = explore_of(shift_path, 4, 2);
    printf("a study of a shift of four hours and eight loads, runs a second\n");
    printf("one thread %.1f   two threads %.1f, %.2f times   10 000 on two in %.1f min\n", one.runs_s, two.runs_s,
           two.runs_s / one.runs_s, 10000 / two.runs_s / 60);
    printf("processor time on two threads %.2f times that on one: 1 is no loss, whatever else the machine does\n",
           two.processor_s / one.processor_s);
    studied few = explore_of(short_path, 16, 2), many = explore_of(short_path, 128, 2);
    printf("peak memory besides the rows: %ld kB with 256 samples, %ld kB with 2048\n", few.peak_kB, many.peak_kB);
}

int main(void)
{
    gsl_set_error_handler_off();
    parts();
    work_and_precision();
    studies();
    return 0;
}
