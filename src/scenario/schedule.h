/* scenario/schedule.h -- the run sheet: what is done, and when.

   An action is read against the finished plant (water and parts are as warm as the room unless they say so); once all are
   read, "every" is unrolled, the actions are put in order, and the comings and goings of named loads are checked. */
#ifndef SCENARIO_SCHEDULE_H
#define SCENARIO_SCHEDULE_H

#include "scenario/scenario.h"

/* All repetitions of all "every" together. */
#define ACTIONS_MAX 100000.0
/* No action is later, and no shift longer: 14 days. */
#define ACTIONS_LATEST_S (14 * 86400.0)
#define ACTIONS_NAMES_MAX 1000

typedef struct {
    cursor place;  /* of its doing */
    bool reported; /* one complaint about the order of events is enough for an "every" */
    char words[sizeof(((scenario_words *)NULL)->words)];
} action_line;

typedef struct {
    boil_action action;
    size_t line;    /* index of its action_line */
    double lifts_s; /* a load: when its lifting begins; infinity: never */
} action_planned;

typedef struct {
    const boil_plant *plant;
    bool bath_known; /* whether the plant was read without a mistake; if not, nothing is asked of its bath */
    boil_initial_state bath;
    double end_s; /* of the shift; infinity: 30 min after the last action */
    action_line *lines;
    size_t line_count, line_capacity;
    action_planned *list;
    size_t count, capacity;
    char **names;
    size_t name_count, name_capacity;
    /* By number of the name: a load is so named; one so named has a mistake, so that nothing is said about its lift. */
    bool loaded[ACTIONS_NAMES_MAX + 1], broken[ACTIONS_NAMES_MAX + 1];
} action_list;

/* plant_good: the plant was read without a mistake. */
action_list actions_begin(const boil_plant *plant, bool plant_good, double end_s);
void actions_free(action_list *a);

/* Reads one action: "when doing" on one cursor, or the time and the doing on two (the cells of a run sheet). */
void actions_read(action_list *a, cursor *when, cursor *doing);

/* Orders and checks all, and hands them to the scenario with the duration. */
void actions_finish(action_list *a, scenario *out, messages *m);

#endif
