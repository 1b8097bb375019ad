/* planning/draws.h -- a timetable carried out in baths that differ from the one it was made for, as far as that one is not known: in how
   many of them it holds, and how much more time a plan has to leave that holds in more. What is drawn, and how the draws lie, the
   caller says; each is one run, by the likely laws of mixing. */
#ifndef BOIL_PLANNING_DRAWS_H
#define BOIL_PLANNING_DRAWS_H

#include "planning/proof.h"
#include "simulate/run.h"

enum { BOIL_PLAN_DRAW_FINDINGS = 12 };

typedef struct {
    bool back;  /* every boil is back within the draw's own limit */
    bool holds; /* and nothing above NOTICE is found, all that must be out is out in time, and each part had its minutes */
    double slowest_s; /* longest that a boil was away; infinity: one never was back, or there is no such bath */
    double lacks_s;   /* the most that a part lacked of its minutes; 0: none did */
    const char *found[BOIL_PLAN_DRAW_FINDINGS]; /* above NOTICE, by their names: static text; NULL from the last on */
} boil_plan_draw;

/* What is left where no bath could be made of a draw, or a run failed. */
boil_plan_draw boil_plan_draw_failed(void);

/* The timetable in another plant, with the jobs as they are there, as many as the problem has and in its order: loads wait for the boil
   in it as in the plan; in one's own workspace. A run that fails is a draw that does not hold. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_plan_draw_of(const boil_planning *g, const boil_plan_timetable *t, const boil_plant *plant,
                               const boil_plan_job jobs[], boil_simulation **own, boil_plan_draw *out);

typedef struct {
    boil_odds holds, back;
} boil_plan_odds;
boil_plan_odds boil_plan_odds_of(const boil_plan_draw draws[], size_t count);

/* Into *bath what a plan has to leave to hold in a share of such draws, by how the proven one fared in them: the boil back later by the
   ratio of the draws' slowest, at that share of them, to its own; longer stays; and where water made what was found, longer guards and
   slower pours. More than it had before in any case, so that to ask again and again comes to an end. BOIL_OK; BOIL_NO_ROOT: in more of
   the draws than may fail a boil never comes back; BOIL_NO_MEMORY. */
boil_outcome boil_plan_spare(const boil_plan_draw draws[], size_t count, double share, const boil_plan_proof *of,
                             boil_plan_bath *bath);

#endif
