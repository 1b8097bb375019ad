/* actions/action.h -- one action of the scenario language as one row: how it is read, and all that reports say of its kind.

   A new one is a file action_NAME.c with its row, the row's place in action_table, its kind in the model and, if the bath has
   not learnt it yet, its function in simulate/actions.c. */
#ifndef ACTIONS_ACTION_H
#define ACTIONS_ACTION_H

#include "actions/action_clauses.h"
#include "actions/action_text.h"
#include "actions/load_names.h"
#include "analysis/findings.h"
#include "case/plant.h"
#include "case/schedule.h"
#include "reading/cursor.h"
#include "simulate/run.h"

/* What an action is read against: the finished plant, and the names given so far. */
typedef struct {
    const boil_plant *plant;
    bool bath_known; /* whether the plant was read without a mistake; if not, nothing is asked of its bath */
    boil_initial_state bath;
    load_names names;
} action_reader;

/* An action as the person wrote it; one of "every" stands for many. */
typedef struct {
    cursor place;    /* of its doing */
    char words[176]; /* "100 lb of 1/4 in plate" */
    bool reported;   /* one complaint about the order of events is enough for an "every" */
} action_line;

/* An action of a schedule, for what is to be said of it. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_action *action; /* of the schedule */
    double start_s;            /* of the wall clock */
    bool many;                 /* one of many like it: nothing is said that holds for its own moment only */
    action_units units;
    const boil_load_result *load; /* how it went; NULL: not known, or it has no such result */
    const boil_addition_result *addition;
} action_view;

/* What it leaves behind: a load's results, the end of a load's, an addition's, none. */
typedef enum { ACTION_LOAD, ACTION_LIFT, ACTION_ADDITION, ACTION_SWITCH } action_group;

/* Where a picture shows it: in a lane of its kind, or with all that is switched. A lift shows as the end of its load. */
typedef enum {
    ACTION_LANE_LOADS,
    ACTION_LANE_WATER,
    ACTION_LANE_SALTS,
    ACTION_LANE_LIQUID,
    ACTION_LANE_SET,
    ACTION_LANES
} action_lane;

typedef struct {
    const char *keyword;          /* "water": read, named in reports, in JSON */
    const char *form;             /* what follows the keyword: capitals stand for a value, brackets for what may be left out */
    const char *meaning;          /* one line, no full stop */
    const action_clause *clauses; /* of one quantity each; NULL: it has none */
    size_t clause_count;
    action_group group;
    action_lane lane;
    size_t takes_at; /* where its boil_action keeps how long it takes, double, s; 0: no time */

    /* Reads what follows the keyword: name and content of `a`, whose kind is set, and its words. False, with messages,
       otherwise. */
    bool (*parse)(action_reader *r, cursor *c, boil_action *a, action_line *line);

    void (*details)(const action_view *v, action_text *t); /* "70 lb at 75 degF"; NULL: its words say all */

    /* The run sheet. What to mind is common practice, no source. */
    const char *verb;                                       /* before its words: "pour "; NULL: they are enough */
    const char *(*verb_of)(const boil_action *a);           /* where that depends on the action; or NULL */
    void (*pace)(const action_view *v, action_text *t);     /* how fast, behind the details; or NULL */
    void (*expected)(const action_view *v, action_text *t); /* of one with a result; or NULL */
    const char *caution;
    const char *(*caution_of)(const action_view *v); /* where that depends on the action; or NULL */
    const char *caution_off;                         /* of what is switched off, in place of the first; or NULL */
    const char *when_quiet;                          /* a bath that is predicted quiet as it is done; or NULL */
    boil_severity quiet_severity;
    const char *when_it_stops; /* a boil that is predicted to stop meanwhile; or NULL */
} action_type;

#endif
