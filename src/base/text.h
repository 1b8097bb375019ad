/* base/text.h -- text in columns. A character is one column wide; bytes that could move the cursor are shown as "?". */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

/* A text that is handed on as a value, in its member `text`. */
#define TEXT_OF(size)                                                                                                          \
    struct {                                                                                                                   \
        char text[size];                                                                                                       \
    }

/* Bytes of the character at `at`: 1 to 4; 0 when it is not valid UTF-8 there (or the text ends). */
size_t text_character(const char *at);
size_t text_character_within(const char *at, size_t left); /* of a text that need not end: so many bytes are left of it */
bool text_is_control(const char *at, size_t length);       /* a character of this length in bytes: C0, C1 or DEL */
/* Its code point where it is one that is not seen but moves or hides what is: it turns the direction of writing or has no width
   [Unicode 15, Bidi_Control and Default_Ignorable_Code_Point, without the selectors of variants]. 0: it is none. */
unsigned long text_unseen(const char *at, size_t length);
bool text_begins_character(char c); /* a byte of UTF-8 that is well-formed */
size_t text_characters(const char *at, const char *end);

/* Adds to a text, as by printf, what has room in its `size` bytes. */
void text_add(char *text, size_t size, const char *format, ...) __attribute__((format(printf, 3, 4)));
#define TEXT_ADD(array, ...) text_add(array, sizeof(array), __VA_ARGS__)
/* The same of another text as it stands, for what is done once a line of a file. */
void text_join(char *text, size_t size, const char *more);
#define TEXT_JOIN(array, more) text_join(array, sizeof(array), more)

/* Writes a text broken at blanks, a number kept by its unit, from column `used` of a line on, each further line from column `indent`
   on: no line is over `width` columns, and a word that has no room on a line of its own is broken. How many lines end in it. To
   NULL: only counts them. */
int text_wrapped(FILE *to, const char *text, int used, int indent, int width);

/* A text of exactly `width` columns (at most 100), padded with blanks. One that is too long ends in "...", cut behind a
   comma or blank if one stands in its second half. */
typedef TEXT_OF(412) text_cell;
text_cell text_fitted(const char *text, size_t width);

size_t text_lines(const char *text); /* that end in it */

void text_line(FILE *to, const char *line); /* without the blanks at its end, and a line's end */

char *text_copy(const char *text, size_t length); /* ends in NUL, to be freed; NULL when memory is refused */
char *text_printed(const char *format, ...) __attribute__((format(printf, 1, 2))); /* the same, as by printf */

text_cell text_plain(const char *text); /* only made printable; at most 400 bytes */

/* Writes a text made printable, however long: a file's name may hold anything, line ends too. */
void text_show(FILE *to, const char *text);

#endif
