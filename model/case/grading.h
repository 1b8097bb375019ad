/* case/grading.h -- how grave a thing found is: one number, from one table.

   The signal words mean, after ANSI Z535 (from memory), if the shift is run as written and nobody steps in:
       DANGER   hot caustic leaves the tank, or who does the next act will be hurt;
       WARNING  it could: one more ordinary act or one unlucky moment away;
       CAUTION  a state that leads into a WARNING, harms tank or heater, or hurts slightly;
       NOTICE   work quality, wear, money.
   Each thing has a measure x that grows with the harm, in the unit its row says, and break points, of which some may be missing:
       severity  S, the last break point passed
       depth     d = 1 - exp(-(x - b_S)/s),  s from it to the next that there is, else the row's own
       rank      R = 1000 S + 200 k + 50 c + 49 d                                                                       (1)
   k: 2 hot caustic leaves the tank, 1 something happens to bath or people, 0 a rule of thumb or a cause; c: 1 likely or certain, 0
   only possible. So a possible DANGER comes before a likely WARNING, and a rule of thumb never above CAUTION. The break points are
   common practice or judgement, no source, but where the row says otherwise; the words' limits are the user's own. */
#ifndef BOIL_CASE_GRADING_H
#define BOIL_CASE_GRADING_H

#include "boilback.h"

typedef enum {
    BOIL_FOUND_NEVER_BOILS,
    BOIL_FOUND_NEVER_RETURNS,
    BOIL_FOUND_LAYER_OUTLASTS,
    BOIL_FOUND_BOIL_LOST,
    BOIL_FOUND_LIQUID_STOPS,
    BOIL_FOUND_LOAD_HEAVY,
    BOIL_FOUND_LOAD_QUIET,
    BOIL_FOUND_LOAD_THROUGH,
    BOIL_FOUND_LOAD_COLD,
    BOIL_FOUND_TUBES,
    BOIL_FOUND_NOT_RESOLVED,
    BOIL_FOUND_LEFT_RANGE,
    BOIL_FOUND_WATER_QUIET,
    BOIL_FOUND_LAYER,
    BOIL_FOUND_SURFACE_BOILS,
    BOIL_FOUND_WATER_QUENCHES,
    BOIL_FOUND_WATER_FAST,
    BOIL_FOUND_WATER_SHORT,
    BOIL_FOUND_SURGE,
    BOIL_FOUND_OVERFLOW,
    BOIL_FOUND_OVERFLOW_STILL,
    BOIL_FOUND_FREEBOARD,
    BOIL_FOUND_TOO_HOT,
    BOIL_FOUND_TOO_COOL,
    BOIL_FOUND_NEARLY_DRY,
    BOIL_FOUND_HEATER_BARE,
    BOIL_FOUND_FLOOR_BARE,
    BOIL_FOUND_FLOOR_HOT,
    BOIL_FOUND_PARTS_BARE,
    BOIL_FOUND_SUPERHEAT,
    BOIL_FOUND_TALL,
    BOIL_FOUND_SALT_QUIET,
    BOIL_FOUND_SALT_SLUG,
    BOIL_FOUND_DRY_SALT,
    BOIL_FOUND_SALT_BED,
    BOIL_FOUND_SALT_MUCH,
    BOIL_FOUND_VALVE_HUNTS,
    BOIL_FOUND_VALVE_SHORT,
    BOIL_FOUND_VALVE_QUIET,
    BOIL_FOUND_CRYSTALS,
    BOIL_FOUND_CRUST,
    BOIL_FOUND_RESTART,
    BOIL_FOUND_THERMOSTAT,
    BOIL_FOUND_HOLLOWS,
    BOIL_FOUND_BAIL_HOT,
    BOIL_FOUND_GOAL_MISSED,
    BOIL_FOUND_LEVEL_HIGH,
    BOIL_FOUND_UNATTENDED,
    BOIL_FOUND_BOIL_SHORT,
    BOIL_FOUND_PLACE_TAKEN,
    BOIL_FOUND_BREAK_QUIET,
    BOIL_FOUND_SALT_UNSTATED,
    BOIL_FOUND_KINDS
} boil_found_kind;

typedef enum { BOIL_PER_ONE, BOIL_PER_RECOVERY, BOIL_PER_FREEBOARD } boil_grading_per; /* x's own unit; the user's limits */

typedef struct {
    double from[BOIL_SEVERITIES]; /* break points of x, never falling; NaN: no such grade */
    double last;                  /* s beyond the last of them */
    int weight;                   /* k */
    double margin;                /* in the unit of `per`: beyond a break point by no more is not past it */
    boil_grading_per per;         /* what x is counted in */
} boil_grading;

/* Of the bath, kg/kg: crystals of less are a haze (judgement). */
#define BOIL_GRADING_HAZE 1e-3

extern const boil_grading boil_gradings[BOIL_FOUND_KINDS];

/* What x of a row is counted in, m or s or 1; and its margin in x. A freeboard limit of nothing counts as a millimetre. */
double boil_grading_unit(const boil_grading *g, const boil_limits *l);
double boil_grading_margin(const boil_grading *g, const boil_limits *l);

/* The grade of x, BOIL_SEVERITIES when no break point is passed by more than the margin; and whether one is. */
boil_severity boil_grading_of(const boil_grading *g, double x, double margin);
bool boil_grading_is_past(const boil_grading *g, boil_severity s, double x, double margin);

/* (1), of x at a severity that what else was so may have raised or lowered. */
double boil_grading_rank(const boil_grading *g, double x, boil_severity s, bool likely);

/* What is followed from moment to moment, and graded by its worst: x of the kind for each of boil_watch_kind. */
extern const boil_found_kind boil_grading_watched[BOIL_WATCHES];

#endif
