#include "terminal/canvas.h"

#include <stdarg.h>
#include <string.h>

#include "base/text.h"

void canvas_clear(canvas *c)
{
    for (int row = 0; row < CANVAS_ROWS; row++)
        for (int column = 0; column < CANVAS_COLUMNS; column++)
            c->cell[row][column] = (canvas_cell){' ', CANVAS_PLAIN};
}

void canvas_put(canvas *c, int row, int column, canvas_look look, const char *text)
{
    for (size_t bytes; *text != '\0' && column < CANVAS_COLUMNS; text += bytes, column++) {
        bool shown = *text >= ' ' && *text <= '~';
        bytes = text_character(text);
        if (bytes == 0)
            bytes = 1;
        if (row >= 0 && row < CANVAS_ROWS && column >= 0)
            c->cell[row][column] = (canvas_cell){shown ? *text : '?', (unsigned char)look};
    }
}

void canvas_print(canvas *c, int row, int column, canvas_look look, const char *format, ...)
{
    char text[4 * CANVAS_COLUMNS + 1]; /* bytes of a character: up to four */
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    canvas_put(c, row, column, look, text);
}

void canvas_rule(canvas *c, int row)
{
    for (int column = 0; column < CANVAS_COLUMNS; column++)
        c->cell[row][column] = (canvas_cell){'-', CANVAS_PLAIN};
}

static bool same(const canvas_cell *a, const canvas_cell *b)
{
    return a->character == b->character && a->look == b->look;
}

/* ECMA-48: select graphic rendition. */
static void change_look(FILE *to, unsigned char look)
{
    static const char *const sequences[] = {
        [CANVAS_PLAIN] = "\033[0m", [CANVAS_BOLD] = "\033[0;1m", [CANVAS_REVERSE] = "\033[0;7m"};
    fputs(sequences[look], to);
}

/* The last column of the last row stays blank: some terminals scroll when it is written. */
static void show_row(canvas *c, int row, unsigned char *look, FILE *to)
{
    bool there = false;
    int columns = row == CANVAS_ROWS - 1 ? CANVAS_COLUMNS - 1 : CANVAS_COLUMNS;
    for (int column = 0; column < columns; column++) {
        const canvas_cell *cell = &c->cell[row][column];
        if (c->known && same(cell, &c->sent[row][column])) {
            there = false;
            continue;
        }
        if (!there)
            fprintf(to, "\033[%d;%dH", row + 1, column + 1);
        there = true;
        if (cell->look != *look)
            change_look(to, cell->look);
        *look = cell->look;
        fputc(cell->character, to);
    }
}

void canvas_show(canvas *c, FILE *to)
{
    unsigned char look = CANVAS_PLAIN;
    if (!c->known)
        fputs("\033[0m\033[2J", to);
    for (int row = 0; row < CANVAS_ROWS; row++)
        show_row(c, row, &look, to);
    if (look != CANVAS_PLAIN)
        change_look(to, CANVAS_PLAIN);
    fprintf(to, "\033[%d;%dH", CANVAS_ROWS, CANVAS_COLUMNS);
    fflush(to);
    memcpy(c->sent, c->cell, sizeof c->sent);
    c->known = true;
}
