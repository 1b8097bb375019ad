/* actions/action.h -- one action of the scenario language as one row: how it is read, and all that reports say of its kind.

   A new one is a file action_NAME.c with its row, the row's place in action_table, its kind in the model and, if the bath has
   not learnt it yet, its function in simulate/actions.c. */
#ifndef ACTIONS_ACTION_H
#define ACTIONS_ACTION_H

#include "findings/findings.h"
#include "base/format.h"
#include "base/text.h"
#include "case/plant.h"
#include "actions/measure.h"
#include "case/schedule.h"
#include "reading/cursor.h"
#include "reading/quantity.h"
#include "simulate/run.h"

/* What is said of an action, put together bit by bit with TEXT_ADD. */
typedef TEXT_OF(500) action_text;

typedef enum { ACTION_US, ACTION_SI, ACTION_BOTH } action_units; /* both: the one, and the other in brackets */

typedef TEXT_OF(100) action_amount;
action_amount action_amount_of(action_units u, unit_dimension d, double si);

/* "Boil stops at 6:27, back after 4.5 min". A moment that is NaN never comes. */
void action_text_add_boil(action_text *t, double start_s, bool was_quiet, double lost_s, double recovery_s);

/* The clauses of an action, each its words and one quantity, read by one loop over a table. */

typedef struct {
    const char *words;
    const char *meaning; /* one line, no full stop, for the manual */
    unit_dimension dimension;
    bounds within; /* no unit: what is sane depends on the rest of the action, which checks it */
    size_t where;  /* in boil_action, double, SI; 0: the action makes something of it */
} action_clause;

typedef enum { ACTION_CLAUSE_READ, ACTION_CLAUSE_WRONG, ACTION_CLAUSE_UNKNOWN } action_clause_end;

/* Reads a part of an action as one of `count` clauses, into its place in `a` and into `said`, an item a clause, whose text
   is NULL until then. WRONG: with a message. */
action_clause_end action_clause_read(cursor *part, const action_clause *clauses, size_t count, quantity *said, boil_action *a);

/* False, with a message, when a clause was said before. */
bool action_clause_first(const cursor *part, const char *at, const char *words, bool said);

/* The names that loads are given, each with a number from 1; 0 is no name. */

#define LOAD_NAMES_MAX 1000
#define LOAD_NAMES_SLOTS 2048 /* a power of two, twice as many: a search ends soon */

typedef struct {
    char **list;
    size_t count, capacity;
    short numbers[LOAD_NAMES_SLOTS]; /* where a name's letters lead to, or as far behind it as slots are taken; 0: free */
    /* By number: a load is so named; one so named has a mistake, so that nothing is said about its lift. */
    bool loaded[LOAD_NAMES_MAX + 1], broken[LOAD_NAMES_MAX + 1];
    bool kept[LOAD_NAMES_MAX + 1]; /* bath liquid is taken under it */
} load_names;

/* The number of the name on the rest of a cursor, which is added when it is new; 0 and a message when it cannot be. */
int load_names_read(load_names *n, cursor *c);
const char *load_names_word(const load_names *n, int number); /* "" for 0 */
void load_names_free(load_names *n);

/* What an action is read against: the finished plant, and the names given so far. */
typedef struct {
    const boil_plant *plant;
    size_t positions; /* of the tank; 0: no limit */
    bool bath_known;  /* whether the plant was read without a mistake; if not, nothing is asked of its bath */
    boil_initial_state bath;
    measure_list measures;
    load_names names;
    bool (*moment)(void *moments, cursor *c, const char *what,
                   double *s); /* reads one, s from the start, as the schedule does */
    void *moments;
} action_reader;

/* The moment behind 'no later than', s from the start, whose clause stands at `start`, and there goes to *later, NULL until then. False,
   with a message, on a mistake. */
bool action_latest_read(const action_reader *r, cursor *part, const char *start, const char **later, double *s);

/* An action as the person wrote it; one of "every" stands for many. */
typedef struct {
    cursor place;      /* of its doing */
    char words[176];   /* "100 lb of 1/4 in plate" */
    bool most_by_time; /* what is poured is bounded by time alone: its mass is its pace to the end of the schedule's clock */
    bool reported;     /* one complaint about the order of events is enough for an "every" */
    size_t portions;   /* the act is done so often, ... */
    double portion_every_s; /* ... each so long after the one before */
} action_line;

/* An action of a schedule, for what is to be said of it. */
typedef struct {
    const boil_plant *plant;
    const boil_schedule *schedule;
    const boil_action *action; /* of the schedule */
    double start_s;            /* of the wall clock */
    double time_s;             /* when it is done, or begun; NaN: nobody knows yet */
    bool many;                 /* one of many like it: nothing is said that holds for its own moment only */
    action_units units;
    const boil_load_result *load; /* how it went; NULL: not known, or it has no such result */
    const boil_addition_result *addition;
} action_view;

/* "when boiling, not before 6:10", "5.0 min after the boil is back", behind what stands there; nothing for one that waits for nothing. */
void action_wait_add(const action_view *v, action_text *t);

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
    char letter; /* on the run sheet, where the cautions of a kind stand by it */
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

extern const action_type action_load, action_lift, action_water, action_salts, action_liquid, action_heat, action_mixer,
    action_lid, action_exhaust, action_crust, action_bail, action_drain, action_return, action_stir;

/* By kind, the keywords of what adds something, for tables of words; the others are NULL. */
extern const char *const action_addition_words[BOIL_ACTION_LIQUID + 1];

const action_type *action_type_listed(size_t index); /* in the order of the manual; NULL beyond the last */
const action_type *action_type_of(boil_action_kind kind);
double action_takes_s(const boil_action *a);           /* to put in, to pour; 0: it is done at once */
const boil_load *action_load_of(const boil_action *a); /* NULL: it is none */

/* Reads an action: kind, name and content of `a`, and its words for reports. False, with messages, otherwise. */
bool action_read(action_reader *r, cursor *c, boil_action *a, action_line *line);

#endif
