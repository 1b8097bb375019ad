/* commands/explore/answer.h -- many runs of one scenario with uncertain numbers: what varied, and one row of results a run.
   Everything that is reported is made from this alone, so rows may come from any machine.

   The text of a scenario is read once and made a scenario anew for every row, with other numbers in it, so that all that
   follows from a number follows. Every statistic is a sum over the rows in their order: that is why threads, shards and
   machines change nothing. Files of rows hold the whole plan, and are read as if anyone had written them.

   Rows stand in order: grid cell by cell, in each the rows of the design (statistics/sampling.h), so a row's number says all
   about it. */
#ifndef COMMANDS_EXPLORE_ANSWER_H
#define COMMANDS_EXPLORE_ANSWER_H

#include <stdbool.h>
#include <stddef.h>

#include "findings/findings.h"
#include "base/format.h"
#include "boilback.h"
#include "cli/output.h"
#include "scenario/scenario.h"
#include "scenario/uncertain.h"
#include "simulate/run.h"

/* Something that varies. */
typedef struct {
    char words[64];                     /* "heat efficiency" */
    char as_written[UNCERTAIN_WRITTEN]; /* its spread, or its grid, as written */
    unit_dimension dimension;
    boil_spread spread;
} explore_input;

#define EXPLORE_GRID_MAX ((size_t)UNCERTAIN_STEPS_MAX)

/* Steps over one thing; count 0: none, and there is one cell. */
typedef struct {
    explore_input input; /* spread: low and high, both ends of the steps */
    size_t count;
} explore_grid;

/* Of a load. */
typedef struct {
    double time_s;
    char words[128];
} explore_load;

#define EXPLORE_LOADS_MAX ((size_t)200) /* the first so many are told one by one */

/* Results of a row, in this order: the fixed ones, the findings' severities (0: not found, 1 to 4), then those of each load. */
typedef enum {
    EXPLORE_DONE, /* 1: the run reached its end, or the tank was full; 0: it left what is known of the bath, or there was no such bath */
    EXPLORE_SLOWEST_S,         /* slowest recovery of a load; NaN when one never recovered */
    EXPLORE_BACK_SHARE,        /* of the loads back within the limit */
    EXPLORE_QUIET_S,           /* time without boil */
    EXPLORE_FREEBOARD_M,       /* least */
    EXPLORE_LEVEL_M,           /* highest, swelled */
    EXPLORE_STEAM_KG_S,        /* most */
    EXPLORE_LAYER_KG,          /* most water afloat */
    EXPLORE_TEMPERATURE_MAX_K, /* while boiling */
    EXPLORE_TEMPERATURE_END_K,
    EXPLORE_VENTED_KG, /* vapour given off */
    EXPLORE_FIXED
} explore_output;

typedef enum {
    EXPLORE_LOAD_RECOVERY_S,
    EXPLORE_LOAD_LOWEST_K,
    EXPLORE_LOAD_LEVEL_M, /* highest from this load to the next, or the end */
    EXPLORE_LOAD_OUTPUTS
} explore_load_output;

typedef struct {
    char title[200], path[300];
    double start_s, limit_s, freeboard_limit_m;
    size_t input_count;
    explore_input inputs[BOIL_SAMPLING_INPUTS];
    explore_grid grid;
    boil_sampling_plan plan; /* without inputs: one row a cell */
    size_t load_count;
    explore_load loads[EXPLORE_LOADS_MAX];

    boil_sampling design;
    size_t findings, outputs;
    double *values; /* [row * outputs + output]; NaN: not made, or it did not happen */
} explore_answer;

/* Most numbers kept at once: 4 GB. A larger study is for smaller studies with other seeds. */
#define EXPLORE_VALUES_MAX ((size_t)500000000)

/* Sets up design and values once the rest is filled in. False, with a complaint, when they are too large. */
bool explore_begun(explore_answer *s);
void explore_free(explore_answer *s);

size_t explore_cells(const explore_answer *s); /* 1 without a grid */
size_t explore_cell_rows(const explore_answer *s);
size_t explore_rows(const explore_answer *s);
bool explore_is_draw(const explore_answer *s, size_t row); /* else it serves indices alone */
bool explore_needs(const explore_answer *s, size_t row);   /* rows that serve indices alone are not made for a grid */
bool explore_made(const explore_answer *s, size_t row);
size_t explore_count(const explore_answer *s, bool made); /* rows that are needed, or made of them */

/* Whether water's mixing time is among what varies; if not, all rows have the central one. */
bool explore_varies_mixing(const explore_answer *s);

double explore_grid_value(const explore_answer *s, size_t cell);

/* Steps of the grid in the words of reports and pictures. */
const char *explore_grid_unit(const explore_answer *s, unit_system system);          /* of all steps; "" for a bare number */
double explore_grid_shown(const explore_answer *s, unit_system system, size_t cell); /* in that unit */
formatted_text explore_grid_words(const explore_answer *s, unit_system system, size_t cell); /* "300 kBtu/h" */

/* The values of grid (if any) and inputs for a row: first the grid's. Returns how many. */
size_t explore_values(const explore_answer *s, size_t row, double value[BOIL_SAMPLING_INPUTS + 1]);

double *explore_row(const explore_answer *s, size_t row);
size_t explore_finding_output(size_t finding);
size_t explore_load_output_of(const explore_answer *s, size_t load, explore_load_output o);

/* "slowest_recovery_s", "finding_overflow", "load1_recovery_s" */
typedef TEXT_OF(48) explore_name;
explore_name explore_output_name(const explore_answer *s, size_t column);

/* Of one cell. */
boil_sampling_results explore_results(const explore_answer *s, size_t cell);

/* What the rows say. Sums run over the rows in their order, so the same rows give the same numbers, whoever made them. */

/* The draws of one output in one cell, ascending. What did not happen (a boil that never came back) is later than all. */
typedef struct {
    double *sorted; /* to be freed with explore_spread_free */
    size_t count, never;
} explore_spread;

explore_spread explore_spread_of(const explore_answer *s, size_t cell, size_t column); /* nothing when memory is refused */
void explore_spread_free(explore_spread *p);
double explore_spread_at(const explore_spread *p, double share); /* NaN: never, or nothing there */

/* Odds, among the draws made, that an output is at least so much. What did not happen is not. */
boil_odds explore_odds(const explore_answer *s, size_t cell, size_t column, double least);

/* Odds, among the draws made, of a finding of WARNING or graver. */
boil_odds explore_grave_odds(const explore_answer *s, size_t cell);

/* A finding over all draws of a cell. */
typedef struct {
    const char *id, *title;
    boil_severity gravest;
    boil_odds odds;
} explore_finding;

#define EXPLORE_FINDINGS_MAX 64

/* Those found at least once, gravest first, then likeliest. Returns how many. */
size_t explore_findings_of(const explore_answer *s, size_t cell, explore_finding found[EXPLORE_FINDINGS_MAX]);

/* Of a study without a grid and with inputs. */
boil_sensitivity explore_sensitivity(const explore_answer *s, size_t column);

/* The outputs whose causes are told, each by a few words. */
typedef struct {
    explore_output output;
    const char *words;
} explore_target;
const explore_target *explore_target_listed(const explore_answer *s, size_t index); /* NULL beyond the last */

/* Carrying out its rows, on as many threads as asked for. */
typedef struct {
    const uncertain_thing *things[BOIL_SAMPLING_INPUTS + 1]; /* as explore_values gives them */
    size_t thing_count;
    size_t shard, shards; /* rows with number % shards == shard */
    int threads;          /* 0: as many as there are processors */
    bool progress;        /* on standard error */
} explore_work;

typedef enum {
    EXPLORE_WHOLE,
    EXPLORE_INTERRUPTED, /* by a signal, interrupt or termination: the runs in hand are finished */
    EXPLORE_NO_MEMORY    /* for a run: it is not made, the runs in hand are finished */
} explore_end;

/* Each result goes into its own row, whoever makes it, so any number of threads and shards gives the same study. Runs whose
   row failed have EXPLORE_DONE 0. */
explore_end explore_run(explore_answer *s, scenario_text *text, const explore_work *w);

void explore_report(const void *answer, const output *o, FILE *to);
extern const document explore_documents[];

void explore_csv_write(const void *answer, FILE *to); /* the rows that were made */

/* The file of rows: names of columns, then a row a run, in SI. The first row says in its last cell, under "study", what study
   it is; from this and the rows everything that is reported can be made again. */

#define EXPLORE_CSV_FIXED 2              /* the first of explore_output among them */
extern const field explore_csv_fields[]; /* for the manual; results in the order of explore_output */

/* The plan, a line a fact, to be freed: equal texts mean the same study. NULL when memory is refused. */
char *explore_csv_plan(const explore_answer *s);
void explore_csv_names(const explore_answer *s, FILE *to);

/* Reads the rows of one or more files of the same study, each row once. False, with a complaint, when one is none, or of
   another study, or a row stands in two of them and differs. To be freed either way. */
bool explore_csv_read(explore_answer *s, const char *const paths[], size_t count);

bool explore_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn,
                     picture_problem *problem);

/* A share of the variance as a share can be: an estimate of few draws may lie outside 0 to 1, and so may its interval. NaN as it
   is. */
typedef struct {
    double value, low, high;
} explore_share;
explore_share explore_share_of(const boil_estimate *e);

#endif
