/* reading.c -- a scenario of a mebibyte: every minute of many days water is poured. */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "bench.h"
#include "boilback.h"
#include "scenario/scenario.h"

enum { MEBIBYTE = 1 << 20, TIMES = 5 };

/* The eight hours' settings, and comments to fill: most of what people write in a file that long. */
static bool write_long(FILE *to)
{
    char line[256];
    FILE *from = fopen("tests/bench/eight-hours.bath", "r");
    if (from == NULL)
        return false;
    while (fgets(line, sizeof line, from))
        fputs(line, to);
    fclose(from);
    for (int i = 0; ftell(to) < MEBIBYTE - 64; i++)
        fprintf(to, "%d:%02d:%02d  water 0.1 gal over 2 s   # a cup, and another\n", i / 3600, i / 60 % 60, i % 60);
    return fflush(to) == 0;
}

static double read_s(const char *path)
{
    messages m;
    scenario c = {0};
    messages_init(&m);
    double start = bench_user_now();
    scenario_read(path, &c, &m);
    double took = bench_user_now() - start;
    scenario_free(&c);
    return took;
}

void bench_reading(FILE *csv)
{
    char path[] = "/tmp/boilback-bench-XXXXXX";
    int file = mkstemp(path);
    FILE *to = file >= 0 ? fdopen(file, "w") : NULL;
    if (to == NULL)
        return;
    bool written = write_long(to);
    fclose(to);
    double best = HUGE_VAL;
    for (int i = 0; i < TIMES && written; i++) {
        double took = read_s(path);
        best = took < best ? took : best;
    }
    unlink(path);
    printf("a scenario of a mebibyte is read in %.0f ms\n\n", 1e3 * best);
    bench_row(csv, "scenario of a mebibyte", "user time ms", 1e3 * best);
}
