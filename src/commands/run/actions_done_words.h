/* commands/run/actions_done_words.h -- an order of the run sheet in words: when, what, how fast, what is to be expected, what
   to mind. */
#ifndef COMMANDS_RUN_ACTIONS_DONE_WORDS_H
#define COMMANDS_RUN_ACTIONS_DONE_WORDS_H

#include "base/format.h"
#include "commands/run/actions_done.h"

action_text run_action_clock(const carried_out *o, const run_action *r); /* "9:05"; "6:05 to 9:35, every 30 min" */
action_text run_action_done(const carried_out *o, const run_action *r);  /* "pour 2 gal of water over 1 min" */

/* "70.7 lb at 75.0 degF; until 6:27; 4.16 lb (0.500 gal) a minute" */
action_text run_action_details(const carried_out *o, const run_action *r, unit_system s);
action_text run_action_expected(const carried_out *o, const run_action *r, unit_system s);

const char *run_action_caution(const carried_out *o, const run_action *r);

/* What the run itself warns of at this order: a bath that is quiet then. NULL: nothing. */
const char *run_action_warning(const carried_out *o, const run_action *r, boil_severity *severity);

#endif
