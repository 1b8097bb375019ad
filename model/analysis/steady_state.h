/* analysis/steady_state.h -- the bath as it stands there boiling, nothing going in: what it loses, gives off and swells. */
#ifndef BOIL_ANALYSIS_STEADY_STATE_H
#define BOIL_ANALYSIS_STEADY_STATE_H

#include "boilback.h"
#include "simulate/run.h"

/* The plant as it stands, its own dial, lid and mixer: the first moment of its run. */
boil_outcome boil_steady_state_first_row(const boil_plant *p, const boil_run_options *o, boil_row *out);

/* The plant as it stands, with nothing done, for twice as long each time until it boils or two weeks are over: the
   last run, with some 240 rows if asked for. To be freed after BOIL_OK. */
boil_outcome boil_steady_state_reached(const boil_plant *p, const boil_run_options *o, bool rows, boil_history *out);

#endif
