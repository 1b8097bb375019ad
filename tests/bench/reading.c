/* reading.c -- scenarios up to a mebibyte, each second of them water: what a byte costs is the same in all. */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "bench.h"
#include "boilback.h"
#include "scenario/scenario.h"

enum { MEBIBYTE = 1 << 20, TIMES = 5 };

static const long sizes[] = {MEBIBYTE / 64, MEBIBYTE / 8, MEBIBYTE};

/* The eight hours' settings, and comments to fill: most of what people write in a file that long. */
static bool write_long(FILE *to, long size)
{
    char line[256];
    FILE *from = fopen("tests/bench/eight-hours.bath", "r");
    if (from == NULL)
        return false;
    while (fgets(line, sizeof line, from))
        fputs(line, to);
    fclose(from);
    for (int i = 0; ftell(to) < size - 64; i++)
        fprintf(to, "%d:%02d:%02d  water 0.1 gal over 2 s   # a cup, and another\n", i / 3600, i / 60 % 60, i % 60);
    return fflush(to) == 0;
}

/* A mebibyte of it in all, so that the processor's clock sees it. */
static double read_s(const char *path, long size)
{
    double start = bench_user_now();
    for (long read = 0; read < MEBIBYTE; read += size) {
        messages m;
        scenario c = {0};
        messages_init(&m);
        scenario_read(path, &c, &m);
        scenario_free(&c);
        messages_free(&m);
    }
    return bench_user_now() - start;
}

/* The least of some, s; infinity: it could not be written. */
static double best_s(long size)
{
    char path[] = "/tmp/boilback-bench-XXXXXX";
    int file = mkstemp(path);
    FILE *to = file >= 0 ? fdopen(file, "w") : NULL;
    if (to == NULL)
        return HUGE_VAL;
    bool written = write_long(to, size);
    fclose(to);
    double best = HUGE_VAL;
    for (int i = 0; i < TIMES && written; i++) {
        double took = read_s(path, size);
        best = took < best ? took : best;
    }
    unlink(path);
    return best;
}

void bench_reading(FILE *csv)
{
    double best = 0;
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        best = best_s(sizes[i]);
        printf("a scenario of %4ld KiB is read at %.0f ns a byte\n", sizes[i] / 1024, 1e9 * best / MEBIBYTE);
    }
    printf("one of a mebibyte in %.0f ms\n\n", 1e3 * best);
    bench_row(csv, "scenario of a mebibyte", "user time ms", 1e3 * best);
}
