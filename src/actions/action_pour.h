/* actions/action_pour.h -- what the actions share that add something: how much of it, how fast, how warm.

   Mass, time and temperature stand first in all three of boil_action.is.water, .salts and .liquid, so that what holds for all
   of them is read and written as .water (C17 6.5.2.3, common initial sequence). */
#ifndef ACTIONS_ACTION_POUR_H
#define ACTIONS_ACTION_POUR_H

#include "actions/action.h"
#include "actions/pour_hangs.h"

#define ACTION_POUR_CLAUSES_MAX 3

/* The clause that every one of them takes first; the bounds depend on what is poured. */
/* clang-format off */
#define ACTION_POUR_AT {"at", NULL, DIM_TEMPERATURE, {NULL, 0, 0}, offsetof(boil_action, is.water.temperature_K)}
/* clang-format on */

/* What is poured, and in what words. */
typedef struct {
    const char *example, *how_fast;
    unsigned amounts;     /* dimensions */
    bool by_rate;         /* "at 30 gal/h" in place of "over 4 min" */
    bool until;           /* "at 30 gal/h until the mark" in place of both */
    bool blend;           /* takes the clause "blend" */
    const char *expected; /* in place of an unknown clause */
} action_material;

/* The action as written. */
typedef struct {
    const action_type *type;
    const action_material *material;
    cursor place; /* for complaints */
    quantity amount, pace;
    const own_measure *measure; /* that the amount is counted in; NULL: a unit */
    double count;               /* of measures */
    const char *pace_at;        /* where it says how fast */
    bool at_rate, blend_said;
    pour_hangs hangs;
    quantity said[ACTION_POUR_CLAUSES_MAX]; /* a clause; text NULL: not said */
    double blend[BOIL_SALTS];
} action_pour;

/* All of these return false, with a message, on a mistake. */
bool action_pour_read(const action_reader *r, cursor *c, const action_material *m, action_pour *p, boil_action *a,
                      action_line *line);

/* Whether the bath says of what salts it is: one of plain water need not. True where the bath is not known. */
bool action_pour_names_salts(const action_reader *r);

/* As warm as the room unless it says so; what is liquid must not be frozen. */
bool action_pour_settle_temperature(const action_pour *p, const boil_plant *plant, const bounds *within, boil_action *a);
bounds action_pour_liquid_below(double boiling_point_K); /* liquid in the air it is poured through */

/* Volumes become masses at the density of what is poured, kg/m3. */
bool action_pour_settle_amount(const action_pour *p, double density, boil_action *a, action_line *line);

/* For reports: "70.7 lb at 75.0 degF"; "; until 6:27; 4.16 lb (0.500 gal) a minute", density 0: by mass alone; how the bath
   answers. */
void action_pour_details(const action_view *v, action_text *t);
void action_pour_pace(const action_view *v, double density, action_text *t);
void action_pour_expected(const action_view *v, action_text *t);

#endif
