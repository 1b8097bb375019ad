/* analysis/charge.h -- filling a tank to the working level and strength: water first, then dry salts in batches or ready-mixed
   liquid, each stirred in with the heat off, then heating up and what is still missing or too much of water.

   Amounts are balances. Every batch is a run of the model, from the bath that the one before left, with the mixer on
   and every loss. A batch raises the bath by 10 K at the most, and is an eighth of the salts at the most; it waits for
   the one before it to dissolve or mix in but for a hundredth and, if need be, to cool: with the batch in, well mixed
   and without losses, the bath must stay 15 K below its boil. Its pace keeps the surface below the boil too: what goes
   in within one mixing time gives its heat to a tenth of the bath,
       pace <= 0.1 M c (T_boil - T)/(q t_mix),   q its heat of solution in that bath, J/kg.                                (1)
   The adiabatic bound of a temperature leaves tank, losses and evaporation out. Once it boils, the water that
   evaporated goes in at the pace that its own run allows (analysis/pour_rate.h). */
#ifndef BOIL_ANALYSIS_CHARGE_H
#define BOIL_ANALYSIS_CHARGE_H

#include <stdbool.h>

#include "analysis/pour_rate.h"
#include "boilback.h"

#define BOIL_CHARGE_RISE_K 10.0        /* a batch's own rise; 5 to 20, judgement */
#define BOIL_CHARGE_MARGIN_K 15.0      /* below the boil; 10 to 30, judgement */
#define BOIL_CHARGE_ZONE 0.1           /* share of the bath that takes the heat at first; 0.05 to 0.3, judgement */
#define BOIL_CHARGE_WATER_HOT_K 363.15 /* a bath as hot as this takes no water without boiling: 90 degC, judgement */
#define BOIL_CHARGE_BY_HAND_W 50.0     /* that a person with a paddle gives the bath for long; 30 to 75, judgement */
#define BOIL_CHARGE_STEPS 96

typedef struct {
    double liquid_fraction;       /* fill with ready-mixed liquid of so many salts by mass; 0: with dry salts */
    double from_level_m;          /* still level of a bath of the same blend that is in the tank; 0: it is empty */
    double from_fraction, from_K; /* of that bath */
    double added_K;               /* temperature of water and salts */
    double liquid_K;              /* of the liquid */
} boil_charge_case;

typedef enum {
    BOIL_CHARGE_DONE,
    BOIL_CHARGE_NO_BATH,      /* no such bath is known */
    BOIL_CHARGE_CRYSTALS,     /* the bath in the tank has crystallised: see from_crystals_K */
    BOIL_CHARGE_TOO_MUCH,     /* it holds more salts than are wanted: see bail_m3 */
    BOIL_CHARGE_TOO_HOT,      /* it boils, or is too hot for what is to go in: see too_hot_above_K */
    BOIL_CHARGE_NO_FREEBOARD, /* the charge would leave less than the freeboard, still, before it has boiled down */
    BOIL_CHARGE_NO_COOLING,   /* a batch would not be below its boil again within a day */
    BOIL_CHARGE_NO_DISSOLVING /* nor dissolve: the bath is too cold to take it */
} boil_charge_end;

typedef struct {
    boil_action_kind kind; /* water, salts or liquid */
    double mass_kg, start_s, over_s, wait_s;
    double heat_J;        /* released at 25 degC; negative: taken up */
    double temperature_K; /* after the wait */
    double hottest_K;     /* on the way */
    double adiabatic_K;
    double boils_K;      /* the boiling point then */
    double next_below_K; /* nothing more goes in above that; NaN: the first thing into an empty tank */
    double level_m;
} boil_charge_step;

typedef struct {
    boil_charge_end end;
    boil_charge_case asked;
    /* What is to go in. */
    double water_kg, salts_kg, liquid_kg;
    double water_level_m;                      /* of the water alone, in an empty tank */
    double from_crystals_K, liquid_crystals_K; /* of bath in the tank and liquid; NaN: none above 0 degC */
    double too_hot_above_K, bail_m3;           /* of the bath in the tank, where that is why not */
    boil_charge_step steps[BOIL_CHARGE_STEPS];
    size_t steps_count;
    bool mixer_stated;             /* the scenario has a mixer's power; else a gentle one's is taken */
    double mixer_W, mixing_time_s; /* that the steps were found with; time constant at the end of them */
    double heat_J, filled_s;       /* all the steps */
    double filled_K, adiabatic_K, filled_level_m;
    double heat_J_kg; /* released at 25 degC, per kg of salts; NaN with liquid, or onto a bath */
    /* Heating up, with the heater on full. */
    double heat_up_s;          /* NaN: it does not boil within two weeks */
    double evaporated_kg;      /* while filling and heating up */
    double water_to_add_kg;    /* once it boils; negative: to be boiled down */
    boil_pour_rate water_pace; /* of that; rate NaN: none to add, or at no pace (limited_by says why) */
    double boil_down_s;        /* with that heat; NaN: it never is */
    /* The bath that it comes to. */
    double salt_fraction, boiling_point_K, mass_kg, bath_water_kg, bath_salts_kg;
    double strength_kg_m3;                             /* salts per volume of bath, at its boil */
    bool all_put_in;                                   /* all the water in it is put in as such: an empty tank, and dry salts */
    double per_water_kg_m3;                            /* salts per volume of the water in it, measured at 20 degC */
    double cold_level_m, hot_level_m, swelled_level_m; /* at the room's temperature, still at the boil, boiling */
    double freeboard_m;     /* least, boiling with the heat on full: as it begins to boil, or at the end */
    double crystals_from_K; /* the cold bath crystallises below that; NaN: not above 0 degC */
} boil_charge_plan;

/* BOIL_OK whatever the end, or a failure. `o`: tolerance only. */
boil_outcome boil_charge_plan_of(const boil_plant *p, const boil_charge_case *c, const boil_run_options *o,
                                 boil_charge_plan *out);

/* Why not salts first: water onto them makes, at once and on the spot, a solution of every strength up to the
   strongest; the hottest of these without losses, and how strong it is. Water boils on what is hotter than its own
   boiling point. */
typedef struct {
    double hottest_K, fraction, water_boils_K;
} boil_charge_paste;
boil_charge_paste boil_charge_salts_first(const boil_plant *p, double temperature_K);

#endif
