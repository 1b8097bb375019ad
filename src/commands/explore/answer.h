/* commands/explore/answer.h -- many runs of one scenario with uncertain numbers: what varied, and one row of results a run. Everything that is
   reported is made from this alone, so rows may come from any machine.

   Rows stand in order: grid cell by cell, in each the rows of the design (statistics/sampling.h), so a row's number says all about it. */
#ifndef COMMANDS_EXPLORE_ANSWER_H
#define COMMANDS_EXPLORE_ANSWER_H

#include <stdbool.h>
#include <stddef.h>

#include "analysis/findings.h"
#include "scenario/uncertain.h"

/* Something that varies. */
typedef struct {
    char words[64];        /* "heat efficiency" */
    char said[80];         /* its spread, or its grid, as written */
    unit_dimension dimension;
    boil_spread spread;
} study_input;

#define STUDY_GRID_MAX ((size_t)UNCERTAIN_STEPS_MAX)

/* Steps over one thing; count 0: none, and there is one cell. */
typedef struct {
    study_input input;     /* spread: low and high, both ends of the steps */
    size_t count;
} study_grid;

/* Of a load. */
typedef struct {
    double time_s;
    char words[128];
} study_load;

#define STUDY_LOADS_MAX ((size_t)200) /* the first so many are told one by one */

/* Results of a row, in this order: the fixed ones, the findings' severities (0: not found, 1 to 4), then those of each load. */
typedef enum {
    STUDY_DONE,            /* 1: the run reached its end; 0: it left what is known of the bath, or there was no such bath */
    STUDY_SLOWEST_S,       /* slowest recovery of a load; NaN when one never recovered */
    STUDY_BACK_SHARE,      /* of the loads back within the limit */
    STUDY_QUIET_S,         /* time without boil */
    STUDY_FREEBOARD_M,     /* least */
    STUDY_LEVEL_M,         /* highest, swelled */
    STUDY_STEAM_KG_S,      /* most */
    STUDY_LAYER_KG,        /* most water afloat */
    STUDY_TEMPERATURE_MAX_K, /* while boiling */
    STUDY_TEMPERATURE_END_K,
    STUDY_VENTED_KG,       /* vapour given off */
    STUDY_FIXED
} study_output;

typedef enum {
    STUDY_LOAD_RECOVERY_S,
    STUDY_LOAD_LOWEST_K,
    STUDY_LOAD_LEVEL_M,    /* highest from this load to the next, or the end */
    STUDY_LOAD_OUTPUTS
} study_load_output;

typedef struct {
    char title[200], path[300];
    double start_s, limit_s, freeboard_limit_m;
    size_t input_count;
    study_input inputs[BOIL_SAMPLE_INPUTS];
    study_grid grid;
    boil_sample_plan plan; /* without inputs: one row a cell */
    size_t load_count;
    study_load loads[STUDY_LOADS_MAX];

    boil_sample design;
    size_t findings, outputs;
    double *values;        /* [row * outputs + output]; NaN: not made, or it did not happen */
} study;

/* Most numbers kept at once: 4 GB. A larger study is for smaller studies with other seeds. */
#define STUDY_VALUES_MAX ((size_t)500000000)

/* Sets up design and values once the rest is filled in. BOIL_OK, BOIL_BAD_INPUT, BOIL_NO_MEMORY (too large, too). */
int study_begin(study *s);
void study_free(study *s);

size_t study_cells(const study *s);     /* 1 without a grid */
size_t study_cell_rows(const study *s);
size_t study_rows(const study *s);
bool study_needs(const study *s, size_t row); /* rows that serve indices alone are not made for a grid */
bool study_made(const study *s, size_t row);
size_t study_count(const study *s, bool made); /* rows that are needed, or made of them */

/* Whether water's mixing time is among what varies; if not, all rows have the central one. */
bool study_varies_mixing(const study *s);

double study_grid_value(const study *s, size_t cell);

/* The values of grid (if any) and inputs for a row: first the grid's. Returns how many. */
size_t study_values(const study *s, size_t row, double value[BOIL_SAMPLE_INPUTS + 1]);

double *study_row(const study *s, size_t row);
size_t study_finding_output(size_t finding);
size_t study_load_output_of(const study *s, size_t load, study_load_output o);

typedef struct {
    char text[48];
} study_name;
study_name study_output_name(const study *s, size_t output); /* "slowest_recovery_s", "finding_overflow", "load1_recovery_s" */

/* Of one cell. */
boil_sample_results study_results(const study *s, size_t cell);

#endif
