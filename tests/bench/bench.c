/* bench.c -- `make bench`: what a run, a scenario's reading and a study cost. With a scenario's name alone: one run of it. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "bench.h"

void bench_row(FILE *csv, const char *name, const char *what, double value)
{
    fprintf(csv, "%s,%s,%.9g\n", name, what, value);
}

int main(int count, char **words)
{
    gsl_set_error_handler_off();
    if (count == 3 && strcmp(words[1], "--run") == 0) {
        bench_one_run(words[2]);
        return 0;
    }
    FILE *csv = count > 1 ? fopen(words[1], "w") : NULL;
    if (csv == NULL) {
        fprintf(stderr, "bench: cannot write '%s'\n", count > 1 ? words[1] : "");
        return 1;
    }
    fprintf(csv, "case,quantity,value\n");
    bench_runs(csv, words[0]);
    bench_reading(csv);
    bench_parts();
    bench_studies(csv);
    return fclose(csv) == 0 ? 0 : 1;
}
