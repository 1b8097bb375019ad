/* analysis/charge_batches.h -- a tank as it is being charged, heat off and mixer on: one batch after the other put in and
   waited out. */
#ifndef BOIL_ANALYSIS_CHARGE_BATCHES_H
#define BOIL_ANALYSIS_CHARGE_BATCHES_H

#include "boilback.h"

#define BOIL_CHARGE_RISE_K 10.0   /* a batch's own rise; 5 to 20, judgement */
#define BOIL_CHARGE_MARGIN_K 15.0 /* below the boil; 10 to 30, judgement */
#define BOIL_CHARGE_ZONE 0.1      /* share of the bath that takes the heat at first; 0.05 to 0.3, judgement */

typedef struct {
    boil_charge_plan *plan;
    boil_plant plant; /* heat off, mixer on */
    boil_run_options options;
    boil_conditions air;
    double area_m2;
    boil_mixture there;
    double temperature_K, time_s;
    double bound_J;     /* heat in the solution without tank, losses and evaporation */
    boil_mixture bound; /* that solution: nothing has evaporated */
} boil_charge_work;

/* An empty tank. */
boil_charge_work boil_charge_work_begin(const boil_plant *p, const boil_run_options *o, boil_charge_plan *plan);

/* Puts in all of something, in as many batches as its heat takes; into an empty tank at once. The plan's end says why
   not when it cannot be. BOIL_OK, or a failure of a run. */
boil_outcome boil_charge_work_put(boil_charge_work *f, boil_action_kind kind, const boil_mixture *all);

boil_plant boil_charge_work_plant(const boil_charge_work *f);                       /* what is in the tank as a plant to run */
double boil_charge_work_mixing_time(const boil_charge_work *f);                     /* time constant, s */
double boil_charge_work_boils_at(const boil_charge_work *f, const boil_mixture *m); /* K, NaN when it does not */
double boil_charge_work_level(const boil_charge_work *f, const boil_mixture *m, double temperature_K); /* m */

/* Heat in what is put in, J: water, dry salts or a solution. */
double boil_charge_work_heat_in(boil_action_kind kind, const boil_mixture *m, double temperature_K);

#endif
