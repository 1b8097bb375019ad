/* terminal/canvas.h -- a screen of 80 by 24 characters, of which only what has changed is sent to the terminal. Plain ASCII, bold and
   reverse: nothing is said by colour. */
#ifndef TERMINAL_CANVAS_H
#define TERMINAL_CANVAS_H

#include <stdbool.h>
#include <stdio.h>

enum { CANVAS_ROWS = 24, CANVAS_COLUMNS = 80 };

typedef enum { CANVAS_PLAIN, CANVAS_BOLD, CANVAS_REVERSE } canvas_look;

typedef struct {
    char character;
    unsigned char look; /* canvas_look */
} canvas_cell;

typedef struct {
    canvas_cell cell[CANVAS_ROWS][CANVAS_COLUMNS];
    canvas_cell sent[CANVAS_ROWS][CANVAS_COLUMNS];
    bool known; /* what the terminal shows is what was sent */
} canvas;

void canvas_clear(canvas *c); /* to blanks, to be drawn on anew */

/* A text at a place, cut off at the right edge; a character that is no printable ASCII becomes one "?". */
void canvas_put(canvas *c, int row, int column, canvas_look look, const char *text);
void canvas_print(canvas *c, int row, int column, canvas_look look, const char *format, ...)
    __attribute__((format(printf, 5, 6)));
void canvas_rule(canvas *c, int row); /* a line across */

/* Sends what has changed, and parks the cursor. */
void canvas_show(canvas *c, FILE *to);

#endif
