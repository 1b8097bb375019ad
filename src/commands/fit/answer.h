/* commands/fit/answer.h -- the model fitted to a log: the numbers of [uncertain] as they agree best with what was measured, and
   how well the runs before and after agree. The mean and the standard deviation of a spread are what was known before. A number
   that is a list of values stays what the scenario says.

   Runs keep the fifth-order step: derivatives by differences need its smoothness. What was known before counts as one reading
   of each number, weighed against the log's scatter without it: otherwise a number that the log does not tell runs to the end
   of its range and drags the others along (seen: 57 % truth outside of 57.4 to 59.0 %). */
#ifndef COMMANDS_FIT_ANSWER_H
#define COMMANDS_FIT_ANSWER_H

#include "cli/output.h"
#include "scenario/scenario.h"
#include "statistics/least_squares.h"
#include "reading/source.h"

/* What was measured on a real tank: a CSV file whose header names its columns.

       time,temperature degF,still level in         time_s,temperature_K,still_level_m
       6:00,284.5,20.1                              0,413.55,0.5105
       6:05,283.9,                                  300,413.22,

   `time` is by the clock, `time_s` in seconds from the start of the scenario. Either reading may be missing, as a column or in
   a row; other columns are passed over, so that a trace written by this program can be read as well. */

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

/* Standard deviations of single readings; they weigh temperatures against levels, and say what no instrument explains. 0.5 K,
   0.05 to 2, and 5 mm, 1 to 20: judgement. */
typedef struct {
    double temperature_K, level_m;
} fit_weights;

typedef enum { FIT_TEMPERATURE, FIT_LEVEL } fit_kind;

/* A reading that the scenario covers. */
typedef struct {
    fit_kind kind;
    const char *name; /* of the kind: "temperature_K", "still_level_m" */
    double time_s, measured, weight;
    double guess, best; /* of the runs before and after; NaN: there is none */
} fit_reading;

/* How one kind of reading agrees with a run. */
typedef struct {
    double rms, largest; /* of model less measured; NaN without readings */
    double largest_s;    /* when */
} fit_misses;

typedef struct {
    const scenario *scenario; /* as written */
    const char *log_path;
    fit_weights weights;
    size_t temperatures, levels; /* readings used */
    size_t left_out;             /* before the start or after the end of the scenario */
    size_t
        things[BOIL_LEAST_SQUARES_PARAMETERS]; /* which of the scenario's uncertain numbers is fitted: all that have a range */
    boil_least_squares_problem problem;        /* its start: the guess */
    boil_least_squares fit;
    fit_misses guess[2], best[2]; /* of temperatures, of levels */
    fit_reading *readings;        /* temperatures first, then levels, each in the order of time */
    size_t readings_count;
} fit_answer;

typedef enum {
    FITTING_DONE,
    FITTING_NOTHING, /* nothing in [uncertain] has a range, or more than can be fitted: complained about */
    FITTING_FEW,     /* no more readings than things */
    FITTING_NO_CASE, /* the guess itself cannot be carried out, or stops early */
    FITTING_FAILED
} fit_end;

/* The i-th of what is fitted. */
const uncertain_thing *fit_thing(const fit_answer *f, size_t i);

/* How wide its interval is now, relative to 95 % of what was known before: 1 when the log tells nothing of it. NaN without one.
   */
double fit_left(const fit_answer *f, size_t i);

/* The text is that of the scenario. To be freed whatever the end. */
fit_end fit_run(scenario_text *text, const scenario *s, const fit_log *l, const fit_weights *w, fit_answer *out);
void fit_free(fit_answer *f);

void fit_report(const void *answer, const output *o, FILE *to);
void fit_csv(const void *answer, FILE *to); /* the readings */
bool fit_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);
extern const document fit_documents[];

#endif
