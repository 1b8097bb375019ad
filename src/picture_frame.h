/* picture_frame.h -- what every picture over time is told besides its traces: clock, units, lines across, and title. */
#ifndef PICTURE_FRAME_H
#define PICTURE_FRAME_H

#include "outcome.h"
#include "picture.h"
#include "show.h"
#include "text.h"

/* Columns of a line of text: in a drawing, and in the terminal. */
#define PICTURE_COLUMNS ((size_t)132)
#define PICTURE_TERMINAL_COLUMNS ((size_t)78)

size_t picture_columns(picture_format format);

/* A text cut to so many columns, where it is cut ending in "..."; wide letters, and characters
   beyond U+07FF, count twice. */
text_cell picture_fitted(const char *text, size_t columns);

/* Writes a file under that name: a row a thing, its name, two numbers, a text. `title` may be any text. */
void picture_frame(picture *p, const outcome *o, show_system s, picture_format format, const char *title,
                   const char *name);

/* Writes a trace in SI, as --csv does, under that name. */
void picture_trace(picture *p, const boil_history *h, const char *name);

#endif
