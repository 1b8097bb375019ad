/* commands/fit/log.h -- what was measured on a real tank: a CSV file whose header names its columns.

       time,temperature degF,still level in         time_s,temperature_K,still_level_m
       6:00,284.5,20.1                              0,413.55,0.5105
       6:05,283.9,                                  300,413.22,

   `time` is by the clock, `time_s` in seconds from the start of the scenario. Either reading may be missing, as a column or in
   a row; other columns are passed over, so that a trace written by this program can be read as well. */
#ifndef COMMANDS_FIT_LOG_H
#define COMMANDS_FIT_LOG_H

#include "reading/source.h"

typedef struct {
    double time_s;        /* from the start of the scenario */
    double temperature_K; /* NaN: not read */
    double level_m;       /* still surface above the floor; NaN: not read */
} fit_log_row;

typedef struct {
    fit_log_row *rows; /* in the order of time */
    size_t count, capacity;
} fit_log;

/* Reads a file, or standard input for "-". `start_s`: of the scenario, wall clock. False, with all that is wrong in `m`. To be
   freed either way. */
bool fit_log_read(const char *path, double start_s, fit_log *l, messages *m);
void fit_log_free(fit_log *l);

#endif
