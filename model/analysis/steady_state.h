/* analysis/steady_state.h -- the bath as it stands there boiling, nothing going in: what it loses, gives off and swells, and
   what water holds it so.

   Strength and level are steady where as much water comes in as leaves, and the heat that is not lost dry warms it and makes it
   vapour. Feed m, vapour e evaporated and s of steam, condensate d back from a lid, h_v of steam at the boil, h_e of what
   evaporates, h_c and h_w of liquid water, Q_dry to walls, radiation and convection:
       m + d = s + e,   Q - Q_dry = s h_v + e h_e - d h_c - m h_w
       m = [Q - Q_dry + e (h_v - h_e) - d (h_v - h_c)]/(h_v - h_w).                                                    (1)
   The heat of dilution is not in it: what goes in comes out. A bath that nobody feeds gives off less, since part of its heat
   warms it to its rising boil.
   The losses are the heat that leaves none for steam, K of water as the boiling bath counts it (bath/bath.h):
       Q = Q_dry + e (h_e - K).                                                                                         (2)
   To hold the boil takes more by the grave laws: nothing then keeps what evaporates down (transfer/skin.h), and what floats,
   cold feed or the drip of a lid, stays afloat while little stirs it. A covered bath that just lost its boil loses more than a
   boiling one, as the drip floats on it and boils there; a degree further down no more (bath/rates_water.c). So a hold is
   found by runs. */
#ifndef BOIL_ANALYSIS_STEADY_STATE_H
#define BOIL_ANALYSIS_STEADY_STATE_H

#include "boilback.h"
#include "simulate/run.h"

/* (1) with that heat to the tank, W, and water of that temperature, 273 to 373 K: kg/s. BOIL_OK or why there is no such
   bath. */
boil_outcome boil_steady_state_makeup(const boil_plant *p, double heat_W, double water_K, double *makeup_kg_s);

/* The plant as it stands, its own dial, lid and mixer: the first moment of its run. */
boil_outcome boil_steady_state_first_row(const boil_plant *p, const boil_run_options *o, boil_row *out);

/* The plant as it stands, with nothing done, for twice as long each time until it boils or two weeks are over: the
   last run, with some 240 rows if asked for. To be freed after BOIL_OK. */
boil_outcome boil_steady_state_reached(const boil_plant *p, const boil_run_options *o, bool rows, boil_history *out);

#endif
