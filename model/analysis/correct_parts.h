/* analysis/correct_parts.h -- what the files of a correction share while it is found. From one to the next: what there is and
   is wanted (correct_reading), how much fits and what that takes (correct_freeboard), what to aim at and to bail out
   (correct_plan), the steps and their paces
   (correct_steps), and the run of the whole that proves them (correct_verify). */
#ifndef BOIL_ANALYSIS_CORRECT_PARTS_H
#define BOIL_ANALYSIS_CORRECT_PARTS_H

#include <stdbool.h>

#include "analysis/pour_rate.h"
#include "boilback.h"

#define BOIL_CORRECT_LEVEL_M 2e-3 /* a level is met to that: a dipstick's mark; judgement */
/* Salts or water less than this share are the noise of dipstick and thermometer: judgement. */
#define BOIL_CORRECT_WORTH_ADDING 5e-4
/* Water is left to mix before salts go in, and everything before the end: several mixing times of a gently boiling
   bath, 60 to 300 s, judgement. */
#define BOIL_CORRECT_SETTLE_S 120

/* So far below its band and set point a reading is none of a full boil: water for that would have raised the level by
   a third and more. 25 degF, judgement. */
#define BOIL_CORRECT_NO_FULL_BOIL_K 13.9

typedef struct {
    boil_correction *a;
    boil_run_options options;
    boil_conditions air;
    double set_fraction, set_density_kg_m3;
    double area_m2, vent_kg_s; /* what the calm bath gives off */
    double left, lost_kg;      /* share that is not bailed out; and what that loses of water until it boils again */
    boil_row cold;             /* the bath as it has cooled for bailing; time_s 0: not asked yet */
} boil_correct_work;

/* correct_reading: from the reading to strength, level and mass, and what is wanted. BOIL_OUT_OF_RANGE, BOIL_NO_ROOT: no such
   bath. */
boil_outcome boil_correct_work_reading(boil_correct_work *c, const boil_plant *p);

bool boil_correct_is_nearly_dry(double salt_fraction);

/* So much of a bath of a salt fraction is there; with those salts in all, or what there is if that is more, it is to
   have the wanted fraction. The level is left 0. */
boil_correct_amounts boil_correct_balance(double fraction, double mass_kg, double wanted_fraction, double wanted_salts_kg,
                                          double liquid_fraction);

/* What fits was judged by: the bath at the set point and a still level, and the load going in after a few seconds. */
boil_outcome boil_correct_loaded(const boil_correction *a, double still_level_m, boil_plant *plant, boil_schedule *out);

/* correct_plan: the plan, nothing bailed out where a lower level does without; else bailed out cold. */
boil_outcome boil_correct_work_make_plan(boil_correct_work *c);

/* correct_freeboard: the highest still level that leaves the freeboard, BOIL_NO_ROOT when none does; what would bring a
   bath of a fraction and a mass, or at a still level, to a level; the amounts, and whether any of it fits. */
boil_outcome boil_correct_work_find_freeboard(boil_correct_work *c);
boil_correct_amounts boil_correct_work_amounts_of(const boil_correct_work *c, double fraction, double mass_kg, double level_m);
boil_correct_amounts boil_correct_work_amounts_if(const boil_correct_work *c, double fraction, double still_m, double level_m);
void boil_correct_work_find_amounts(boil_correct_work *c);
boil_outcome boil_correct_work_load_in(const boil_correct_work *c, double still_level_m, double *freeboard_m);

/* correct_steps: the pace of each step, found alone in the bath that it meets; where the steps stand in time; the
   water, or the time to boil down, changed. All set the plan's end where there is no pace. */
boil_outcome boil_correct_work_find_paces(boil_correct_work *c);
boil_outcome boil_correct_work_set_water(boil_correct_work *c, double water_kg);
boil_outcome boil_correct_work_find_water_pace(boil_correct_work *c, double mass_kg);
void boil_correct_work_place(boil_correction *a, double hold_s);
bool boil_correct_work_adds(const boil_correction *a);

/* correct_verify: water, duration and, where it must be, the paces corrected until the run of the whole ends as wanted
   and does no harm. */
boil_outcome boil_correct_work_prove(boil_correct_work *c);

#endif
