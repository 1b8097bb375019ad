/* commands/size/answer.h -- what is to be sized for, the loads of a scenario's schedule or one load into the steady boil; the
   heat that it needs, and what comes with that; and how much steel the heat that is there carries. */
#ifndef COMMANDS_SIZE_ANSWER_H
#define COMMANDS_SIZE_ANSWER_H

#include "analysis/heater_window.h"
#include "analysis/load_size.h"
#include "base/format.h"
#include "boilback.h"
#include "cli/output.h"
#include "describe/carried_out.h"
#include "reading/quantity.h"

typedef struct {
    const scenario *scenario;
    bool one_load;          /* not the schedule's */
    boil_load load;         /* the one, or the first of the schedule */
    boil_schedule schedule; /* the one load's; else the scenario's own, which stays its own */
    double limit_s;         /* longest the boil may be lost */
    boil_run_options run;   /* as everything here is run */
    boil_plant plant;       /* the scenario's, with as many positions as are counted on */
    bool counted;           /* their number is worked out from the tank's longer side, not said */
} size_case;

/* Whole baskets so far apart, and 4 in from the ends, along a side [judgement, as shops hang them]; 0 or less: none. */
double size_places(double side_m, double basket_m, double apart_m);
void size_case_place(size_case *c, double asked); /* 0: as the scenario says, or as worked out */

/* One load of steel plate, at 20 degC, or as cold as the room or the schedule's first load, and in its basket: of that mass, or of
   that mass per volume of bath. */
boil_load size_case_plate(const scenario *s, const quantity *heaviness, double thickness_m);

/* A quarter of an inch thick. `heaviness` NULL: the schedule's loads, or, without any, one as heavy as the scenario's limit.
   BOIL_OK or BOIL_NO_MEMORY; to be freed either way. */
boil_outcome size_case_of(const scenario *s, double limit_s, const quantity *heaviness, size_case *out);
boil_outcome size_case_one(const scenario *s, double limit_s, const boil_load *load, size_case *out);
void size_case_free(size_case *c);

double size_case_heaviest(const size_case *c); /* kg, of its loads, without basket */

action_name size_case_words(const size_case *c, unit_system system, size_t load); /* the load of that number, from 0 */

/* The heat that the case needs, and what comes with it. To be freed by boil_heater_window_free after BOIL_OK. */
typedef struct {
    const size_case *size;
    boil_heater_window heats;
} size_answer;

boil_outcome size_answer_of(const size_case *c, size_answer *out);
boil_outcome size_opening_of(size_answer *a); /* and, where no heat does, what would open the window */

/* What it is with this plant and so much heat to its tank, held as for every size, by all laws. BOIL_OK or a failure. */
int size_held_of(const size_case *c, const boil_plant *p, double heat_W, boil_holding *at);

/* The heat alone, rounded up, and what it is with it by all laws; NaN: none does. BOIL_OK or a failure. */
int size_need_of(const size_case *c, double *heat_W, boil_holding *at);

enum { SIZE_CELL_LOADS = 3, SIZE_CELL_PLATES = 5 };

typedef struct {
    double load_kg, plate_m;
    double heat_W; /* NaN: none does */
    bool holds;    /* and with it the freeboard is left, and the bath in its band */
    boil_holding at;
} size_cell;

/* The heat for loads of several weights, each in plates of several thicknesses. */
typedef struct {
    const scenario *scenario;
    double limit_s;
    double parts_K; /* as cold as they go in */
    size_cell cells[SIZE_CELL_LOADS * SIZE_CELL_PLATES];
    size_t count;
} size_cells;

/* Half, once, and twice the load in question (NULL: the scenario's limit), in plates of an eighth of an inch to an inch.
   BOIL_OK or a failure. */
int size_cells_of(const scenario *s, double limit_s, const quantity *heaviness, size_cells *out);

typedef struct {
    const size_case *size;
    double times;            /* as heavy as planned all loads may be; 0: not even the lightest holds */
    boil_holding at, beyond; /* with such loads, or the lightest, and with 1 % heavier ones */
} size_heaviest;

/* BOIL_OK, or a failure. */
int size_heaviest_of(const size_case *c, size_heaviest *out);

typedef struct {
    const size_case *size;
    double interval_s; /* NaN: not even four hours apart they hold, and *at says why not */
    double soonest_s;  /* for which there is room */
    boil_holding at, beyond;
    boil_history proof; /* loads at that interval, by the grave laws; none when there is no interval */
} size_interval;

/* BOIL_OK, or a failure after which nothing is left to free. */
int size_interval_of(const size_case *c, size_interval *out);
void size_interval_free(size_interval *i);

/* Of a size_answer, size_heaviest, size_interval, size_cells. */
void size_report(const void *answer, const output *o, FILE *to);
void size_heaviest_report(const void *answer, const output *o, FILE *to);
void size_interval_report(const void *answer, const output *o, FILE *to);
void size_table_report(const void *answer, const output *o, FILE *to);

extern const document size_documents[]; /* of the same four, in that order, the sheet, the grid, then: */
void size_table_csv(const void *cells, FILE *to);

bool size_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);

/* Four digits, never less than the value: "41.38 kW". */
formatted_text size_shown_up(unit_system s, unit_dimension d, double si);
formatted_text size_shown_down(unit_system s, unit_dimension d, double si); /* three, never more */
formatted_text size_number_up(unit_system s, unit_dimension d, double si);  /* without the unit */

/* Whether so much heat is more than an end allows, or than any where it is shut. */
bool size_is_beyond(const boil_window_end *e, double heat_W);

/* Whether the boil comes back so long after the limit, one per cent beyond what holds, that the limit is no place to stand.
   NaN: not back, which is. */
bool size_is_cliff(double recovery_s, double limit_s);

/* "23.4 s", finer than elsewhere: what is told beside it stands one per cent away. NaN: "not back". */
formatted_text size_back_after(double recovery_s);

/* The head of every answer about a case: its title, and what its loads are. */
void size_report_case(const size_case *c, unit_system s, FILE *to);

#endif
