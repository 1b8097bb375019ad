/* practise/shift.h -- a shift under way: the bath is carried on with the clock, acts go in as they are asked for, and the last of them
   can be taken back. SI; times from the start, s.

   The model stands at two moments: where it last could be told something, at or before now, and one stretch further on, beyond
   now, where what is shown between two moments is read from its rows. An act is told to the first, so that a shift is, to the last
   digit, the run of the scenario that its journal is; a look at it changes nothing. */
#ifndef PRACTISE_SHIFT_H
#define PRACTISE_SHIFT_H

#include "practise/journal.h"
#include "simulate/run.h"

typedef struct {
    journal journal;
    scenario *scenario; /* as the journal has it */
    boil_run_options options;
    boil_simulation *stands, *ahead;
    boil_simulation *then_stands, *then_ahead; /* workspaces: what may take their places */
    double now_s;
} shift;

/* Of a file and what was read from it; nothing is done yet. BOIL_OK, or as of boil_run. To be freed either way. */
boil_outcome shift_begin(shift *s, const source *file, const scenario *read);
void shift_free(shift *s);

double shift_end_s(const shift *s);
bool shift_is_over(const shift *s); /* at its end, or where the run ended early */

/* The clock goes on, to the shift's end at most. BOIL_OK, BOIL_NO_MEMORY. */
boil_outcome shift_go_on(shift *s, double until_s);

/* The same, but it stops when what is waited for is so: *due then. Who asks for a bath that boils, or is quiet, for a time watches it
   for that long: what was before asked_s does not count. */
boil_outcome shift_go_on_when(shift *s, double until_s, const boil_wait *w, double asked_s, bool *due);

/* When the bath next may change of itself, or something begins or ends; beyond now unless it is over. */
double shift_next_change_s(const shift *s);

/* Goes on to a whole second, and does it there; its time is put in. BOIL_BAD_INPUT with what is wrong in `m`, and nothing is done. */
boil_outcome shift_act(shift *s, const journal_act *act, messages *m);

/* Back to just before the last act, which is undone; without acts to the start. */
boil_outcome shift_go_back(shift *s);

/* What happened, also a little beyond now. Good until it goes on. */
const boil_history *shift_history(const shift *s);

/* What happened until now and nothing else, as the history of a run that ended now, its rows up to where it last was told something;
   to be freed by boil_history_free. */
boil_outcome shift_so_far(const shift *s, boil_history *out);

/* "0:06:25.8": as the schedule counts, tenths only where there are any. */
typedef TEXT_OF(40) shift_clock_text;
shift_clock_text shift_clock(const shift *s, double time_s);

#endif
