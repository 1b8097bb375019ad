/* cli/command_scenario.h -- how every command gets its scenario, and what it says when there is nothing to be made of it. */
#ifndef CLI_COMMAND_SCENARIO_H
#define CLI_COMMAND_SCENARIO_H

#include "cli/output.h"
#include "scenario/scenario.h"

/* Prints all messages on standard error and frees them; hands `good` on. Where memory was refused for them that alone is said, in
   the end (base/memory.h): they may be wrong. */
bool command_scenario_told(bool good, messages *m);

/* Reads FILE; what is wrong with it goes to standard error, also that an output is its run sheet or list of
   jobs, and that jobs are only planned, for what looks calm without them. To be freed either way. */
bool command_scenario_read(const output *o, const char *path, scenario *s);

/* Says it of jobs alone, where there are any. */
void command_scenario_jobs(const scenario *s);

/* The same, without a word on jobs, with its text kept, to be read again with other numbers in it. */
bool command_scenario_text(const output *o, const char *path, scenario_text *t, scenario *s);

/* Takes the options into the command's record, whose output `o` is, reads FILE, and hands it on with the record: the exit
   status is what `answer` returns. */
int command_scenario_answer(const given *g, void *record, output *o, int (*answer)(void *record, const scenario *s));

/* Two files, of which one at most is standard input; else false, with the complaint `needs` or `both`. */
bool command_scenario_two(const given *g, const char *needs, const char *both);

/* A scenario that reads well but cannot be carried out: complains, and gives the exit status. `result` as of the model. */
int command_scenario_refuse(const scenario *s, int result);

#endif
