/* planning/probe.h -- what the search has to know of a bath and of its parts, from short runs of it: so it follows every change of the
   plant. Recoveries by the law under which a boil stays away longest (BOIL_CLOSURES_SUDDEN), since the gravest run of a set decides;
   all else by the likely one.

   Plates of a quarter inch, at 0.4, 0.8 and 1.1 of the heaviest usual load: r1, r2, r3 of Q1, Q2, Q3. In (1) of plan/plan.h
       quiet = (Q3 - Q1)/(r3 - r1),   offset = r2 - Q2/quiet.
   Boil-off from a still boiling run of 20 min; of the quiet bath from what the plates' runs gave off less. Room in the band: the water
   whose loss takes the boiling point 0.85 of the way to its upper end, or which takes it 0.8 of the way to its lower one (judgement: the
   rest is for what is not known).
   A pour's flow: the least of what may be poured and what pour_rate.h finds, by the grave laws; that of salts is half of what it
   finds. */
#ifndef BOIL_PLANNING_PROBE_H
#define BOIL_PLANNING_PROBE_H

#include "plan/plan.h"

#define BOIL_PLAN_BAND_UP 0.85
#define BOIL_PLAN_BAND_DOWN 0.8
#define BOIL_PLAN_ASKS_M 0.00635 /* a quarter inch of level, that parts may carry out: judgement */
#define BOIL_PLAN_GUARD_S 75.0   /* three mixing times of a trough: judgement; proofs make it longer */

/* Positions, hoist and all else of the problem but its jobs is heeded. *bath_K: at which parts are hot. BOIL_OK; BOIL_NO_ROOT: the bath
   does not come to its boil, or not back to it; or a failure of a run. */
boil_outcome boil_plan_probe_bath(const boil_plant *p, const boil_plan_problem *of, const boil_run_options *o,
                                  boil_plan_bath *out, double *bath_K);

/* The plant boiling, whatever it begins as: what it is once it is up. */
boil_plant boil_plan_at_boil(const boil_plant *p);

/* Water that a bath would have lost at another boiling point, kg; less than 0: gained. NaN where none is known. */
double boil_plan_water_lost(const boil_plant *p, const boil_initial_state *s, double boiling_point_K);

/* A part alone: until it is hot, and the heat by which (1) gives its recovery where it stops the boil. */
boil_outcome boil_plan_probe_part(const boil_plant *p, const boil_plan_bath *b, const boil_run_options *o,
                                  boil_plan_part *part);

/* So much of the plant's own salts, as warm as its room, all at once. */
boil_action boil_plan_sifting_action(const boil_plant *p, double mass_kg);

/* What each carries out; and where that and what is owed already is more than a quarter inch of level, how fast salts may be
   sifted in, if that is not known: at no pace, or with no water to go with them, none are. BOIL_OK, or a failure of a run. */
boil_outcome boil_plan_probe_salts(const boil_plant *p, const boil_run_options *o, boil_plan_part parts[], size_t count,
                                   boil_plan_bath *b);

#endif
