/* reading/cursor.h -- what is still to be read of a line, or of a part of one, and where to complain. */
#ifndef READING_CURSOR_H
#define READING_CURSOR_H

#include "reading/messages.h"

typedef struct {
    messages *messages;
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

#endif
