/* commands/run/parts.h -- what the report and the page of a run are made of. */
#ifndef COMMANDS_RUN_PARTS_H
#define COMMANDS_RUN_PARTS_H

#include <stdio.h>

#include "base/format.h"
#include "describe/carried_out.h"

/* What a run took and gave: heat, water, salts and liquid, in all, per load and per 100 lb or kg of steel; and what automatic
   water, dry salt and cold did. Only what applies is in it. */

#define ACCOUNT_ROWS_MAX 16
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

void chart_print(const carried_out *o, unit_system s, FILE *to); /* 80 columns of plain characters; nothing without a trace */

/* As it is worked: what is done, by the clock, the lifting of loads as well, and what is to be expected of each. */

/* More than this, and what one line of the scenario asks for is one order, done many times. */
#define ORDERS_SINGLE_MAX ((size_t)120)

typedef struct {
    double time_s, last_s; /* the first time and the last: the same for an order done once */
    size_t times;
    size_t action;         /* in the schedule: the first of them */
    bool lifting;          /* the load of that action comes out again */
    carried_out_line line; /* how it goes, of many the worst; neither load nor addition when that is not known */
} run_action;

/* By the first time, to be freed by the caller; NULL when there are none, or memory is refused. */
run_action *run_actions_of(const carried_out *o, size_t *count);

action_text run_action_clock(const carried_out *o, const run_action *r); /* "9:05"; "6:05 to 9:35, every 30 min" */
action_text run_action_done(const carried_out *o, const run_action *r);  /* "pour 2 gal of water over 1 min" */

/* "70.7 lb at 75.0 degF; until 6:27; 4.16 lb (0.500 gal) a minute" */
action_text run_action_details(const carried_out *o, const run_action *r, unit_system s);
action_text run_action_expected(const carried_out *o, const run_action *r, unit_system s);

const char *run_action_caution(const carried_out *o, const run_action *r);

/* What the run itself warns of at this order: a bath that is quiet then. NULL: nothing. */
const char *run_action_warning(const carried_out *o, const run_action *r, boil_severity *severity);

#endif
