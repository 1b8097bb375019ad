/* schedule/schedule.h -- what is done, and when.

   An action is read against the finished plant (water and parts are as warm as the room unless they say so); once all are
   read, "every" is unrolled, the actions are put in order, and the comings and goings of named loads are checked. */
#ifndef SCHEDULE_SCHEDULE_H
#define SCHEDULE_SCHEDULE_H

#include "schedule/draft.h"

/* An action as the person wrote it; one of "every" stands for many. */
typedef struct {
    char words[sizeof(((action_line *)NULL)->words)];
    size_t line; /* in the scenario, or in its run sheet */
} schedule_line;

/* The words for the actions of a schedule. */
typedef struct {
    schedule_line *lines;
    size_t lines_count;
    size_t *line_of; /* schedule.actions[i] came of lines[line_of[i]] */
    char **names;    /* of loads: boil_action.name n is names[n - 1] */
    size_t names_count;
    words_quote breaks[BOIL_BREAKS_MAX]; /* what each break of the schedule is called */
} schedule_wording;

void schedule_wording_free(schedule_wording *w);

/* plant_good: the plant was read without a mistake. */
schedule_draft schedule_begin(const boil_plant *plant, bool plant_good, const moment_frame *frame);
void schedule_draft_free(schedule_draft *d);

/* What other lines of its scenario read loads and moments by: good as long as the draft stays where it is. */
action_reader *schedule_reader(schedule_draft *d);

/* Reads one action: "when doing" on one cursor, or the time and the doing on two (the cells of a run sheet). */
void schedule_read(schedule_draft *d, cursor *when, cursor *doing);

/* Orders and checks all, and hands them over with the duration. False when memory is refused; both must be freed either way. */
bool schedule_finish(schedule_draft *d, boil_schedule *schedule, schedule_wording *w);

/* The actions of a CSV file: the header time,action, then a row an action. */

/* Reads all rows. A cell may be quoted; an action that is not may hold commas, and is then the whole rest of its row.
   Empty rows, and rows that start with "#", are passed over. */
void run_sheet_read(const source *s, schedule_draft *d, messages *m);

#endif
