/* pictures/picture_frame.h -- what every picture over time is told besides its traces: clock, units, lines across, and title.
   */
#ifndef PICTURES_PICTURE_FRAME_H
#define PICTURES_PICTURE_FRAME_H

#include "base/format.h"
#include "base/text.h"
#include "describe/carried_out.h"
#include "pictures/picture.h"

/* Columns of a line of text: in a drawing, and in the terminal. */
#define PICTURE_COLUMNS ((size_t)132)
#define PICTURE_TERMINAL_COLUMNS ((size_t)78)

size_t picture_columns(picture_format format);

/* A text cut to so many columns, where it is cut ending in "..."; wide letters, and characters
   beyond U+07FF, count twice. */
text_cell picture_fitted(const char *text, size_t columns);

/* Bytes of a text's first line: up to its last part, ended by a semicolon, that fits, else to a blank; all of it when it fits.
   */
size_t picture_line(const char *text, size_t columns);

/* One row of a file for a script: its name, two numbers, a text. */
void picture_row(FILE *to, const char *name, double a, double b, const char *text);

/* Shown value = SI value * the first number + the second. */
void picture_unit_row(FILE *to, const char *name, unit_system s, unit_dimension d);

/* Rows "title" and "program". `title` may be any text. */
void picture_names(FILE *to, picture_format format, const char *title);

/* Writes a file under that name: a row a thing, its name, two numbers, a text. `title` may be any text. */
void picture_frame(picture *p, const carried_out *o, unit_system s, picture_format format, const char *title, const char *name);

/* Writes a trace in SI, as --csv does, under that name. */
void picture_trace(picture *p, const boil_history *h, const char *name);

#endif
