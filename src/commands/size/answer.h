/* commands/size/answer.h -- the heat that a case needs, and what comes with it: all that the writers of the answer are given.
   */
#ifndef COMMANDS_SIZE_ANSWER_H
#define COMMANDS_SIZE_ANSWER_H

#include "analysis/steady_state.h"
#include "boilback.h"
#include "commands/size/case.h"
#include "describe/carried_out.h"

typedef enum {
    SIZE_FOUND,
    SIZE_NONE,  /* no heat brings every boil back in time */
    SIZE_BEYOND /* the run leaves what is known of the bath before one does */
} size_found;

typedef enum {
    SIZE_RIM_AT,    /* boils over above heat_W */
    SIZE_RIM_NEVER, /* whatever the heat */
    SIZE_RIM_BEYOND /* the run leaves what is known of the bath before it does */
} size_rim;

/* The window of one run: from from_W, at least the heat that brings the boil back, to heat_W it stays below the rim. from_W
   NaN: with none. It is the greater where the smallest heat still lets water float that surges over the rim. */
typedef struct {
    size_rim rim;
    double from_W, heat_W;
} size_end;

typedef struct {
    const size_case *size;
    size_found found;
    double heat_W;          /* to the tank, rounded up to four digits of a kW; what follows is valid if found */
    double input_W;         /* fuel or current; NaN for a steam coil */
    double own_W;           /* heat to the tank of the scenario's own heater at full dial */
    boil_steady_state calm; /* with heat_W */
    double heat_up_s;
    boil_history proof, less;          /* the run with heat_W, and with 1 % less */
    size_end likely, possible;         /* central mixing, fast mixing */
    double opening_load, opening_area; /* where the window is shut: what would open it; NaN: nothing tried does */
} size_answer;

/* BOIL_OK, or a failure after which nothing is left to free. */
boil_outcome size_answer_of(const size_case *c, size_answer *out);
void size_answer_free(size_answer *a);

enum { SIZE_CELL_LOADS = 3, SIZE_CELL_PLATES = 5 };

typedef struct {
    double load_kg, plate_m;
    double heat_W; /* NaN: none does */
} size_cell;

/* The heat for loads of several weights, each in plates of several thicknesses. */
typedef struct {
    const scenario *scenario;
    double limit_s;
    size_cell cells[SIZE_CELL_LOADS * SIZE_CELL_PLATES];
    size_t count;
} size_cells;

/* Half, once, and twice the load in question (NULL: the scenario's limit), in plates of an eighth of an inch to an inch.
   BOIL_OK or a failure. */
int size_cells_of(const scenario *s, double limit_s, const quantity *heaviness, size_cells *out);

bool size_end_shut(const size_end *e);                  /* with no heat it stays below the rim */
bool size_end_surges(const size_end *e, double heat_W); /* with heat_W it boils over, with more it does not */
bool size_answer_shut(const size_answer *a);            /* no heat brings the boil back in time and stays below the rim */
bool size_answer_never_stops(const size_answer *a);     /* with heat_W no load stops the boil at all */

#endif
