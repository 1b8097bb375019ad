/* pictures/picture_frame.h -- what every picture over time is told besides its traces: clock, units, lines, title. */
#ifndef PICTURES_PICTURE_FRAME_H
#define PICTURES_PICTURE_FRAME_H

#include "base/format.h"
#include "describe/carried_out.h"
#include "pictures/picture.h"

/* Columns of a line of text: in a drawing, and in the terminal. */
#define PICTURE_COLUMNS ((size_t)132)
#define PICTURE_TERMINAL_COLUMNS ((size_t)78)

size_t picture_columns(picture_format format);

/* A text cut to so many columns, where it is cut ending in "..."; wide letters, and characters beyond U+07FF, count twice. */
text_cell picture_fitted(const char *text, size_t columns);

/* One row of a file for a script: its name, two numbers, a text. */
void picture_row(FILE *to, const char *name, double a, double b, const char *text);

/* Shown value = SI value * the first number + the second. */
void picture_unit_row(FILE *to, const char *name, unit_system s, unit_dimension d);

/* Rows "title" and "program". `title` may be any text. */
void picture_names(FILE *to, picture_format format, const char *title);

/* What was done, as bars over time: loads in lanes of their own, below them water, salts and
   liquid, below those what was switched. */

/* More loads at once than this share the last lane. */
#define BAR_LANES_MAX 3

typedef struct {
    action_lane kind;
    double from_s, to_s;
    size_t lane;       /* of its kind, from 0 */
    action_name words; /* whole, or as many as have room before the next bar of the lane, or none */
} bar;

/* The bars in the order of time, to be freed; NULL when there are none, or memory is refused. `columns`: characters that
   fit into the whole run. */
bar *picture_bars(const carried_out *o, size_t columns, size_t *count);

/* A run as its inputs are written from it, all but the trace standing elsewhere. */
typedef struct {
    const carried_out *of;
    unit_system system;
    picture_format format;
    boil_history trace;
    bar *bars;
    size_t bars_count;
} picture_run;

/* Carries the run out once more for its trace (describe/trace.h); false when that fails. The picture ends at `end_s`. To be
   freed either way. */
bool picture_run_begin(picture_run *r, const carried_out *o, unit_system s, picture_format format, double end_s);
void picture_run_end(picture_run *r);

/* Inputs of a script from a picture_run. Frame: a row a thing, its name, two numbers, a text. Actions, a row a bar: lane from
   the top over all kinds, from, to, kind, words. Lanes, a row each: its number, its kind. Both empty: nothing was done. */
void picture_frame(const void *run, FILE *to);
void picture_actions(const void *run, FILE *to);
void picture_lanes(const void *run, FILE *to);

/* The findings as numbered marks over time, with a list of what they say. */

/* Listed at most; one line then tells how many more there are. */
#define MARKS_MAX ((size_t)14)

/* Of each, at most; plots/run.gp has room for as many, and for that line. */
#define MARK_LINES_MAX ((size_t)3)

/* A row a finding: number, time (NaN: the whole run), lane from 0 (marks that would overlap take different ones), severity from
   0, 1 when it is likely and 0 when only possible, clock, words. Words that are too long go on in rows of number 0. */
void picture_marks(const void *run, FILE *to);

#endif
