/* reading/cursor.h -- what is still to be read of a line, or of a part of one, and where to complain. */
#ifndef READING_CURSOR_H
#define READING_CURSOR_H

#include "reading/source.h"

typedef struct {
    messages *messages; /* NULL: of what is only tried nothing is said */
    const source *source;
    size_t line; /* from 1 */
    const char *at, *end;
} cursor;

/* A line without its comment and outer blanks. A "#" starts a comment as the first character or after a blank. */
cursor cursor_of_line(const source *s, size_t line, messages *m);
const char *cursor_comment(const char *at, const char *end); /* where the comment starts, or the end */

bool cursor_done(cursor *c);                    /* passes blanks; true when nothing is left */
bool cursor_take(cursor *c, const char *words); /* passes these words if they come next */
size_t cursor_token(cursor *c);                 /* passes blanks; bytes up to the next blank or comma */

/* The next part up to a comma, without outer blanks; false when nothing is left. A comma between two digits does not
   separate: it is a mistake that the reader of numbers reports. */
bool cursor_part(cursor *c, cursor *part);

/* True at the end; otherwise says what is too much. */
bool cursor_expect_end(cursor *c);

/* Always false, for a reader to hand on. */
bool cursor_error(const cursor *c, const char *at, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* Rows of a CSV file cell by cell: for what people write or export, a run sheet or a log. A cell may be
   quoted; no word of ours holds a quote, so one that is doubled inside a cell is left for its reader to refuse. */

/* A line without outer blanks. */
cursor csv_row(const source *s, size_t line, messages *m);
bool csv_is_blank(const cursor *row); /* nothing, or a comment: begins with "#" */

/* The cell at the cursor, without outer blanks and quotes; the cursor then stands at the next, or at its end. False, with a
   message, when a quote does not end before what separates the cells: a comma, semicolon or tab. */
bool csv_cell(cursor *row, char separator, cursor *cell);

#endif
