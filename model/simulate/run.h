/* simulate/run.h -- a schedule carried out on a plant: what happened, moment by moment and action by action. SI; times from the
   start. A time that never came is NaN. The result is plain data: nothing in it points into the plant or the schedule. */
#ifndef BOIL_SIMULATE_RUN_H
#define BOIL_SIMULATE_RUN_H

#include <stdbool.h>
#include <stddef.h>

#include "boilback.h"
#include "case/plant.h"
#include "case/schedule.h"

typedef struct {
    double mixing_time_factor; /* 1: central run; 1/3: fast run */
    double tolerance;          /* error per step relative to each unknown's size; 1e-4 to 1e-11 */
    bool use_rkc; /* for studies of many runs: steps of simulate/integrator_rkc.h, in half the time, at a tolerance of 1e-4 */
    double row_interval_s; /* rows of the trace; 0: no trace */
    bool (*keep_going)(void *context,
                       double time_s); /* told after each step, may be NULL; false ends the run as "interrupted" */
    void *context;
} boil_run_options;
boil_run_options boil_run_options_default(void); /* central, the tested tolerance, no trace */

/* One row of the trace. */
typedef struct {
    double time_s;
    bool boiling;
    double temperature_K, boiling_point_K;
    double salt_fraction; /* dissolved salts by mass of solution */
    double water_kg, naoh_kg, nano3_kg, nano2_kg;
    double steam_kg_s;  /* formed in the pool */
    double vented_kg_s; /* formed, evaporated and boiled off the layer */
    double evaporated_kg_s;
    double heater_W, wall_W, surface_W, loads_W; /* surface: convection and radiation */
    double layer_kg, layer_m, layer_K;
    bool layer_boiling;
    double undissolved_kg; /* dry salts not yet dissolved */
    bool valve_open;       /* of the automatic water addition */
    double sensor_K;
    double still_level_m; /* no steam in it */
    double level_m;       /* swelled: upper estimate, with surge */
    double level_lower_m; /* swelled: lower estimate */
    double freeboard_m;   /* rim less level_m; negative: over the rim */
    double void_fraction;
    double coldest_load_K; /* mean temperature of the coldest load in the bath; NaN: none in */
} boil_row;

typedef struct {
    double time_s;
    double mass_kg;              /* parts, without basket */
    bool was_quiet;              /* the bath did not boil when it went in */
    double boil_lost_s;          /* first quiet moment at or after entry and before lifting; entry if already quiet; NaN none */
    double recovery_s;           /* from then to the end of that spell; 0 never lost; NaN: still quiet at the end */
    double lowest_temperature_K; /* of the bath, from entry to the end of that spell (or to lifting) */
    double hot_s;                /* from entry until its mean is 95 % of the way to the bath; NaN never */
    double lifted_s;             /* when its lifting began; NaN: still in at the end */
    double drag_out_kg;          /* bath liquid it carried out; 0 while in */
    double level_max_m;          /* highest swelled level from its entry to that of a later one, or the end */
} boil_load_result;

typedef struct {
    boil_action_kind kind; /* water, salts or liquid */
    double time_s;
    double over_s;
    double mass_kg;
    bool was_quiet_before;          /* the bath did not boil as it began */
    bool was_quiet;                 /* the bath did not boil at some moment of the pour */
    double quiet_poured_kg;         /* share that went onto a quiet bath */
    double steam_peak_kg_s;         /* largest steam formed, from its start to 10 min after its end (or the next addition) */
    double steam_before_kg_s;       /* as it began */
    double boil_lost_s, recovery_s; /* as for a load; spells that begin while it pours, or that water causes within ten
                                           minutes of its end; NaN, 0: never lost */
    double layer_peak_kg;
    double freeboard_min_m;
    double level_rise_m; /* highest less the level as it began */
} boil_addition_result;

typedef enum {
    BOIL_QUIET_START,
    BOIL_QUIET_LOAD,
    BOIL_QUIET_WATER,
    BOIL_QUIET_HEAT,
    BOIL_QUIET_LOSSES,
    BOIL_QUIET_LIQUID,
    BOIL_QUIET_SALTS
} boil_quiet_cause;

typedef struct {
    double start_s, end_s; /* end NaN: never */
    double lowest_temperature_K;
    boil_quiet_cause cause;
    double layer_s;               /* when a layer of 1 mm first floated in it; NaN never */
    double layer_max_m;           /* thickest water layer while quiet */
    double layer_at_return_kg;    /* water floating when the boil came back; 0 if never */
    double steam_peak_after_kg_s; /* within ten minutes of its end, or until the next spell; 0 if never back */
    double level_max_after_m;     /* likewise; 0 if never back */
} boil_quiet_result;

typedef enum { BOIL_RUN_DONE, BOIL_RUN_OUT_OF_RANGE, BOIL_RUN_FAILED, BOIL_RUN_INTERRUPTED } boil_run_end;

/* Extremes and the moment of each. */
typedef struct {
    double value, time_s;
} boil_extreme;

typedef struct {
    double temperature_start_K, temperature_end_K;
    double boiling_point_start_K, boiling_point_end_K;
    double salt_fraction_start, salt_fraction_end;
    double strength_start_kg_m3, strength_end_kg_m3; /* salts per volume of bath at its boiling point */
    double bath_mass_start_kg, bath_mass_end_kg;
    double still_level_start_m, still_level_end_m;
    boil_extreme level_max_m, freeboard_min_m, still_level_min_m;
    boil_extreme steam_peak_kg_s, layer_max_kg;
    boil_extreme temperature_max_K, temperature_min_K; /* while boiling: the band finding; NaN if it never boiled */
    boil_extreme surge_peak_kg_s;                      /* most steam over the steady steam of that moment */
    double steam_steady_kg_s;                          /* at the start if boiling, else at the first minute of boil; NaN */
    double swell_spread_m;                             /* upper less lower level at the highest */
    double steam_total_kg, vented_total_kg, evaporated_total_kg, layer_boiled_total_kg;
    double water_added_kg, rinse_added_kg; /* by hand; with the parts */
    double water_controlled_kg;            /* by the automatic valve */
    double condensate_kg;                  /* dripped back from the lid */
    double salts_added_kg, liquid_added_kg;
    double drag_out_kg, drag_out_salts_kg; /* carried out with the parts: liquid, and the salts in it */
    double heater_total_J, input_total_J;  /* to the tank; fuel or electricity (of a steam coil: the same) */
    double steel_kg;                       /* parts worked, without baskets */
    double undissolved_max_kg, bed_max_m;  /* salt not yet dissolved; thickest bed on the floor */
    boil_extreme bed_superheat_max_K;      /* floor under the bed above the bath */
    double valve_quiet_kg;                 /* let in by the valve while the bath did not boil */
    double restoring_water_kg;             /* water that would bring the boiling point back to where it began; NaN: none can */
    double restored_level_m;               /* still level of the bath then, hot */
    size_t valve_openings;
    double valve_open_share;         /* of the time */
    double crystals_from_K;          /* bath temperature at which the first salt would crystallise; NaN none
                                                          above 0 degC */
    double crystals_s;               /* when the bath first was below it; NaN never */
    double crystals_max_kg;          /* nitrate and nitrite that would have fallen out, at the most */
    boil_extreme heated_crystals_kg; /* the most that lay there while the heat was on; NaN none */
    double time_to_boil_s;           /* from a quiet start; NaN otherwise */
    double boiling_share;            /* of the time */
    double overflow_s;               /* level first at the rim; NaN never */
    double still_overflow_s;         /* still surface first at the rim; NaN never */
    double layer_boil_s;             /* layer first boils while the bath does not; NaN never */
    double hydrostatic_superheat_K;  /* boiling point at the floor less at the surface, at the start */
    double flash_bound_kg;           /* adiabatic mix, then flash, of the largest layer at a return of the boil */
} boil_summary;

/* Inventory at the end less inventory at the start less what crossed, over the larger of inventory and crossing. */
typedef struct {
    double water, salts, energy;
} boil_balance;

typedef struct {
    boil_load_result *loads;
    size_t loads_count;
    boil_addition_result *additions;
    size_t additions_count;
    boil_quiet_result *quiet;
    size_t quiet_count;
    boil_row *rows;
    size_t rows_count;
    double *valve_s;
    size_t valve_count; /* when the automatic valve opened, shut, opened, ... */
    boil_summary summary;
    boil_balance balance;
    boil_run_end end;
    double end_s; /* when the run ended */
    /* when out of range: what, its value and limit (SI) */
    const char *stop_quantity; /* static text, e.g. "sodium hydroxide strength" ; NULL when done */
    double stop_value, stop_limit;
    const char *stop_unit; /* "kg/kg", "K", ... */
    size_t steps, evaluations, mode_changes;
} boil_history;

/* Carry it out. On BOIL_OK the history is filled (even when the run stopped early: see `end`); free it with
   boil_history_free. BOIL_NO_MEMORY, BOIL_BAD_INPUT (call the problem functions first), BOIL_OUT_OF_RANGE (no such bath). */
boil_outcome boil_run(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, boil_history *out);
void boil_history_free(boil_history *h);

/* Of all loads of a run. */
typedef struct {
    size_t back, never; /* within the limit; not at all */
    double slowest_s;   /* NaN when one never was back, or there is none */
} boil_recoveries;
boil_recoveries boil_history_recoveries(const boil_history *h, double limit_s);

#endif
