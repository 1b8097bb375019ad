/* analysis/correct.h -- back to set point and level from what thermometer and dipstick say: what to add, in which order, how
   fast, or how long to boil down; whether it fits, and how much to bail out first when it does not.

   Strength follows from the boiling temperature read, mass from the level. With S kg of salts and W of water in the
   tank, and a bath of salt fraction s and mass M wanted,  dry salts  s M - S,  water  (1 - s) M - W  and what boils
   off meanwhile. Too much salt for the level wanted makes the level higher. Order: water first (or boil down), then
   salts or liquid, so that the bath is never stronger on the way and no water meets undissolved salt; each at the
   fastest pace that its own run allows (analysis/pour_rate.h). Water and duration are then corrected until the run of the whole
   ends at the set point.

   It fits, and nothing has to be bailed out, when the bath as it will be keeps the freeboard with the next load going
   in, mixing fast, and each addition keeps it too. Automatic water is shut meanwhile; nothing is dragged out. The
   mixer, the dial and the lid stay as the scenario has them at the start. */
#ifndef BOIL_ANALYSIS_CORRECT_H
#define BOIL_ANALYSIS_CORRECT_H

#include <stdbool.h>

#include "analysis/pour_rate.h"
#include "boilback.h"

#define BOIL_CORRECT_LEVEL_M 2e-3 /* a level is met to that: a dipstick's mark; judgement */

typedef struct {
    double reads_K;           /* temperature at which it boils, as read */
    double uncertain_K;       /* of that reading, either way; 0 or more */
    double level_m;           /* surface above the floor, as measured */
    bool level_boiling;       /* measured while it boiled: the swell is taken out */
    double liquid_fraction;   /* make up with ready-mixed liquid of so many salts by mass; 0: with dry salts */
    double added_K, liquid_K; /* temperature of the water and salts, and of the liquid, that are added */
    boil_load next_load;
} boil_correct_case;

typedef enum {
    BOIL_CORRECT_DONE,         /* there is a plan */
    BOIL_CORRECT_NO_BATH,      /* no bath of these salts boils at the reading, or at the set point */
    BOIL_CORRECT_NO_SALTS,     /* the scenario's bath is plain water: it has no set point to come back to */
    BOIL_CORRECT_NO_BOIL,      /* the heat does not keep it boiling: the reading is none of a boiling point */
    BOIL_CORRECT_NO_FREEBOARD, /* no bath at the set point, however low, keeps the freeboard with the next load in */
    BOIL_CORRECT_NO_POUR_RATE, /* an addition does harm at any pace: see `pace` of that step; or the whole: see `harm` */
    BOIL_CORRECT_TOO_WEAK      /* to make place for so weak a liquid the bath would first boil down too far: see makeup_K */
} boil_correct_end;

/* Why something has to be bailed out first. */
typedef enum {
    BOIL_BAIL_NOTHING,
    BOIL_BAIL_FOR_LOAD, /* the next load would not leave the freeboard */
    BOIL_BAIL_FOR_POUR  /* at no pace does the addition leave it */
} boil_bail;

/* By balance alone, without what boils off. Negative water: to be boiled off. */
typedef struct {
    double salts_kg, liquid_kg, water_kg;
    double level_m; /* still, at the set point, afterwards */
} boil_correct_amounts;

typedef struct {
    double start_s, over_s, mass_kg; /* mass 0: there is no such step */
    boil_pour_rate pace;
} boil_correct_step;

typedef struct {
    boil_correct_end end;
    boil_correct_case asked;
    /* What there is. */
    double salt_fraction, strength_kg_m3, still_level_m, swell_m /* upper estimate, taken out */, mass_kg;
    double salt_fraction_low, salt_fraction_high; /* by the reading's uncertainty */
    double freeboard_now_m;                       /* as it boils */
    /* What is wanted. */
    double set_point_K;
    double wanted_level_m; /* both are those of the scenario's bath */
    double most_level_m;   /* highest still level at the set point that keeps the freeboard with the next load in */
    /* Before anything else. */
    boil_bail bail;
    double bail_kg, bail_m3;  /* of the bath as it is */
    double unbailed_level_m;  /* still level that it would come to without */
    double bail_to_wanted_m3; /* what to bail out in all so that it ends at the level wanted; 0: it does */
    /* The plan, from the bath that is left. */
    boil_plant start;
    boil_correct_amounts amounts, amounts_low, amounts_high; /* for the reading, and for both ends of its uncertainty */
    boil_correct_step water, salts, liquid;                  /* the water with what boils off meanwhile */
    double boil_down_s;                                      /* before the salts, or alone */
    double makeup_K;                                         /* where it boils as salts or liquid begin */
    const char *harm_id, *harm; /* finding that the whole raises however slowly, and its title; NULL: none */
    double done_s;              /* whole minutes */
    double boiled_off_kg;       /* boiled and evaporated until then */
    /* How it ends, by its run: central, and the least freeboard mixing fast. */
    double end_K, end_fraction, end_strength_kg_m3;
    double end_still_m, end_boiling_m, end_loaded_m /* highest as the next load goes in, mixing fast */;
    double freeboard_min_m, freeboard_loaded_m;
} boil_correction;

/* So much of a bath of a salt fraction is there; with those salts in all, or what there is if that is more, it is to
   have the wanted fraction. The level is left 0. */
boil_correct_amounts boil_correct_balance(double fraction, double mass_kg, double wanted_fraction, double wanted_salts_kg,
                                          double liquid_fraction);

/* `o`: tolerance only. BOIL_OK whatever the end, or a failure. */
boil_outcome boil_correct(const boil_plant *p, const boil_correct_case *c, const boil_run_options *o, boil_correction *out);

/* The plan as actions on `start`, to the minute it is done; to be freed, also after BOIL_NO_MEMORY. */
boil_outcome boil_correct_schedule(const boil_correction *a, boil_schedule *out);

/* What fits was judged by: the bath at the set point and a still level, and the load going in after a few seconds. */
boil_outcome boil_correct_loaded(const boil_correction *a, double still_level_m, boil_plant *plant, boil_schedule *out);

/* The heaviest load of the schedule; without any, quarter-inch plate as heavy as the limit for the bath allows. */
boil_load boil_correct_next_load(const boil_plant *p, const boil_schedule *s);

#endif
