/* analysis/heater_window.h -- the window of heats of a case: the smallest with which every boil is back in time, the most with
   which it leaves the freeboard and stays below the rim, and what would open a window that is shut. Found by running the case
   itself, held as sizing/holding.h has it. Heat is that to the tank at full dial, W. */
#ifndef BOIL_ANALYSIS_HEATER_WINDOW_H
#define BOIL_ANALYSIS_HEATER_WINDOW_H

#include <stdbool.h>

#include "boilback.h"
#include "sizing/holding.h"

typedef enum {
    BOIL_WINDOW_FOUND,
    BOIL_WINDOW_NONE,  /* no heat brings every boil back in time */
    BOIL_WINDOW_BEYOND /* the run leaves what is known of the bath before one does */
} boil_window_found;

typedef enum {
    BOIL_RIM_AT,    /* boils over above heat_W */
    BOIL_RIM_NEVER, /* whatever the heat */
    BOIL_RIM_BEYOND /* the run leaves what is known of the bath before it does */
} boil_window_rim;

/* From from_W, the heat that brings the boil back, to heat_W it stays below the rim, or leaves the freeboard. from_W NaN: it does
   not with that heat. */
typedef struct {
    boil_window_rim rim;
    double from_W, heat_W;
} boil_window_end;

typedef struct {
    boil_window_found found;
    double heat_W;            /* the smallest, rounded up to four digits; what follows is valid if found */
    double input_W;           /* fuel or current for it; NaN for a steam coil */
    double own_W;             /* of the plant's own heater at full dial */
    boil_steady_state calm;   /* with heat_W */
    double hold_W;            /* boil_steady_state_hold; NaN: none was found */
    double heat_up_s;         /* NaN: it never boils, or cannot stand cold */
    boil_history proof, less; /* the grave run with heat_W, and with 1 % less */
    boil_holding at;          /* with heat_W, by all laws */
    /* Below the rim: by the likely laws as far as the heaviest load; and by those and the graver ones, by these in all that is done. */
    boil_window_end likely, possible;
    boil_window_end leaves_likely, leaves_possible; /* likewise, with the freeboard that is asked for */
    double
        strength_W; /* most with which a water control of the plant's own keeps the strength; NaN: any that leaves the freeboard */
    double opening_load, opening_area; /* where it is shut: what would open it, as those below find; NaN: nothing tried */
} boil_heater_window;

/* limit_s: the longest a boil may be away. BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome boil_heater_window_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                   boil_heater_window *out);
void boil_heater_window_free(boil_heater_window *w);

/* Of a window that is shut: the load and the area that would open it, each of which takes half as long again; one writes nothing that
   the other reads. BOIL_OK or a failure. */
boil_outcome boil_heater_window_opening_load(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             double limit_s, boil_heater_window *w);
boil_outcome boil_heater_window_opening_area(const boil_plant *p, const boil_schedule *s, const boil_run_options *o,
                                             double limit_s, boil_heater_window *w);

bool boil_window_end_shut(const boil_window_end *e);              /* with the heat that is needed it does not stay so */
bool boil_heater_window_shut(const boil_heater_window *w);        /* with heat_W, or any, it does not hold: at.breaks */
bool boil_heater_window_never_stops(const boil_heater_window *w); /* with heat_W no load stops the boil at all */

/* How recovery and rim go with the heat: the beginning of the case with many, by the grave laws. */

typedef enum {
    BOIL_CURVE_BELOW, /* stays below the rim */
    BOIL_CURVE_OVER,  /* boils over */
    BOIL_CURVE_BEYOND /* left what is known of the bath before its end */
} boil_curve_kind;

typedef struct {
    double heat_W;
    double slowest_s; /* recovery; NaN: a boil was never back, or the run did not come so far */
    boil_curve_kind kind;
} boil_curve_point;

enum { BOIL_CURVE_POINTS = 33 };

/* From the calm losses to beyond the window, closer together at first; the window's own heat is one of them. */
typedef struct {
    double from_W, to_W;
    size_t count;
    boil_curve_point points[BOIL_CURVE_POINTS];
} boil_heater_curve;

/* Of the case of that window. BOIL_OK or a failure. */
boil_outcome boil_heater_curve_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double limit_s,
                                  const boil_heater_window *w, boil_heater_curve *out);

#endif
