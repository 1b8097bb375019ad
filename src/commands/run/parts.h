/* commands/run/parts.h -- what the report and the page of a run are made of. */
#ifndef COMMANDS_RUN_PARTS_H
#define COMMANDS_RUN_PARTS_H

#include <stdio.h>

#include "base/format.h"
#include "cli/output.h"
#include "describe/carried_out.h"

/* What a run took and gave: heat, water, salts and liquid, in all, per load and per 100 lb or kg of steel; and what automatic
   water, dry salt and cold did. Only what applies is in it. */

#define ACCOUNT_ROWS_MAX 32
#define ACCOUNT_TOLD_MAX 10

typedef struct {
    const char *what;                            /* begins with a blank: part of the row above it */
    formatted_text total, per_load, per_hundred; /* the last two are empty without loads */
} account_row;

typedef struct {
    bool has_loads;
    const char *hundred; /* "per 100 lb of steel" */
    account_row rows[ACCOUNT_ROWS_MAX];
    size_t rows_count;
    char told[ACCOUNT_TOLD_MAX][400]; /* sentences */
    size_t told_count;
} account;

account account_of(const carried_out *o, unit_system s);
void account_print(const carried_out *o, unit_system s, FILE *to);

/* As it went: one line a load or addition, in columns. At most this many lines; what is over is summed up in the last one. */
#define SHEET_LINES_MAX ((size_t)40)

void sheet_print(const carried_out *o, unit_system s, FILE *to);

/* Over the clock, in plain characters: where it boils, the swelled level, the boil, what was poured and loaded; of each column
   the extreme. `trace`: the same run with rows fine enough. Nothing of a run that took no time. */
#define CHART_COLUMNS 64

typedef struct {
    unit_system system;
    int boils_lines, level_lines;
    double worst_s; /* marked below; NaN: nothing is */
} chart_form;

int chart_lines(const carried_out *o, int boils_lines, int level_lines); /* how many it takes */
void chart_print(const carried_out *o, const boil_history *trace, const chart_form *form, FILE *to);

/* What a terminal shows at once, and its parts. */
void screen_print(const carried_out *o, const boil_history *trace, const output *how, FILE *to);
void screen_head(const carried_out *o, const output *how, FILE *to); /* the first line alone */
void screen_gist(const carried_out *o, const output *how, FILE *to);
void screen_chart(const carried_out *o, const boil_history *trace, const output *how, int boils_lines, int level_lines,
                  FILE *to);

typedef enum {
    FINDING_BARE,   /* what it is, how bad, and what to do */
    FINDING_CAUSED, /* with its cause */
    FINDING_WHOLE   /* with its grades as well */
} finding_depth;

/* How many lines. What the gist says of the first of all is not repeated, unless it is to be told whole. */
int screen_finding(const carried_out *o, const boil_finding *f, const output *how, finding_depth depth, FILE *to);

/* As it is worked: what is done, by the clock, the lifting of loads as well, and what is to be expected of each. */

/* More than this, and what one line of the scenario asks for is one order, done many times. */
#define ORDERS_SINGLE_MAX ((size_t)55) /* two sheets of paper */

typedef struct {
    double time_s, last_s; /* the first time and the last: the same for an order done once */
    size_t times;
    size_t action;         /* in the schedule: the first of them */
    bool lifting;          /* the load of that action comes out again */
    carried_out_line line; /* how it goes, of many the worst; neither load nor addition when that is not known */
} run_action;

/* By the first time, to be freed by the caller; NULL when there are none, or memory is refused. */
run_action *run_actions_of(const carried_out *o, size_t *count);

/* Of a load that comes out again by itself, the lifting. */
const action_type *run_action_type(const carried_out *o, const run_action *r);

action_text run_action_clock(const carried_out *o, const run_action *r); /* "9:05"; "6:05 to 9:35, every 30 min" */
action_text run_action_done(const carried_out *o, const run_action *r);  /* "pour 2 gal of water over 1 min" */

/* "70.7 lb at 75.0 degF; until 6:27; 4.16 lb (0.500 gal) a minute" */
action_text run_action_details(const carried_out *o, const run_action *r, unit_system s);
action_text run_action_expected(const carried_out *o, const run_action *r, unit_system s);

const char *run_action_caution(const carried_out *o, const run_action *r);

/* What the run itself warns of at this order: a bath that is quiet then. NULL: nothing. */
const char *run_action_warning(const carried_out *o, const run_action *r, boil_severity *severity);

#endif
