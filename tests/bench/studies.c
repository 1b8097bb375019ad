/* studies.c -- studies of a shift, as explore makes them, each in a process of its own. */
#include <math.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "bench.h"
#include "boilback.h"
#include "commands/explore/answer.h"

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
    double start = bench_now();
    explore_run(&s, &text, &work);
    double took = bench_now() - start;
    getrusage(RUSAGE_SELF, &used);
    studied r = {(double)explore_rows(&s) / took, bench_user_now(),
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

void bench_studies(FILE *csv)
{
    const char *shift_path = "scenarios/uncertain-shift.bath", *short_path = "tests/cli/baths/uncertain.bath";
    studied one = explore_of(shift_path, 4, 1), two = explore_of(shift_path, 4, 2);
    printf("a study of a shift of four hours and eight loads, runs a second\n");
    printf("one thread %.1f   two threads %.1f, %.2f times   10 000 on two in %.1f min\n", one.runs_s, two.runs_s,
           two.runs_s / one.runs_s, 10000 / two.runs_s / 60);
    printf("processor time on two threads %.2f times that on one: 1 is no loss, whatever else the machine does\n",
           two.processor_s / one.processor_s);
    bench_row(csv, "a study", "runs a second on one thread", one.runs_s);
    bench_row(csv, "a study", "runs a second on two threads", two.runs_s);
    studied few = explore_of(short_path, 16, 2), many = explore_of(short_path, 128, 2);
    printf("peak memory besides the rows: %ld kB with 256 samples, %ld kB with 2048\n", few.peak_kB, many.peak_kB);
}
