/* analysis/steady_state.h -- the bath as it stands there boiling, nothing going in: what it loses, gives off and swells. */
#ifndef BOIL_ANALYSIS_STEADY_STATE_H
#define BOIL_ANALYSIS_STEADY_STATE_H

#include "boilback.h"
#include "simulate/run.h"

typedef struct {
    double losses_W;  /* least heat to the tank with which the bath boils at all */
    double volume_m3; /* of still bath */
    double boiling_point_K;
    double steam_kg_s; /* formed in the pool; 0 when the heat does not carry the boil */
    double evaporated_kg_s;
    double steam_m3_s; /* both, as steam at the boiling point and the room's pressure */
    double swell_m;    /* upper estimate of the level over the still one */
    double freeboard_m;
} boil_steady_state;

/* At the starting charge at its boil, with this heat to the tank. BOIL_OK or why there is no such bath; BOIL_NO_ROOT
   when nothing makes it boil. */
boil_outcome boil_steady_state_at(const boil_plant *p, double heat_W, boil_steady_state *out);

/* The plant as it stands, its own dial, lid and mixer: the first moment of its run. */
boil_outcome boil_steady_state_first_row(const boil_plant *p, const boil_run_options *o, boil_row *out);

/* The plant as it stands, with nothing done, for twice as long each time until it boils or two weeks are over: the
   last run, with some 240 rows if asked for. To be freed after BOIL_OK. */
boil_outcome boil_steady_state_reached(const boil_plant *p, const boil_run_options *o, bool rows, boil_history *out);

/* Time, s, from the room's temperature (at least 0 degC) to the boil with this heat; NaN when it does not boil within
   two weeks. BOIL_OK, or a failure of the run. */
boil_outcome boil_steady_state_heat_up(const boil_plant *p, const boil_run_options *o, double heat_W, double *time_s);

#endif
