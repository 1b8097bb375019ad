/* bench.h -- measured here and now, never asserted. Each part prints its table and writes its rows "case,quantity,value". */
#ifndef BENCH_H
#define BENCH_H

#include <stdio.h>

double bench_now(void);         /* s, by the clock */
double bench_user_now(void);    /* s of processor time of this process */
size_t bench_allocations(void); /* there have been until now */

/* Millions within boil_run of `self run path`, by callgrind; NaN: there is none. */
double bench_instructions(const char *self, const char *run, const char *path);

/* A row of the file. */
void bench_row(FILE *csv, const char *name, const char *what, double value);

void bench_parts(void);                       /* what a look at the rates costs, and tolerance against work */
void bench_runs(FILE *csv, const char *self); /* one run of each case, the likely one */
void bench_one_run(const char *path);         /* all that `self --run path` does */
void bench_reading(FILE *csv);                /* scenarios up to a mebibyte */
void bench_studies(FILE *csv);                /* on one thread and on two */

#endif
