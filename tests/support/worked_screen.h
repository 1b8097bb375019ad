/* support/worked_screen.h -- a shift that is worked on a screen that is a canvas and no terminal: keys are pressed, and what is shown
   is read row by row. */
#ifndef SUPPORT_WORKED_SCREEN_H
#define SUPPORT_WORKED_SCREEN_H

#include "support/worked.h"

#include "practise/screen/parts.h"

typedef struct {
    worked w;
    screen_options o;
    screen s;
    char row[CANVAS_COLUMNS + 1];
} worked_screen;

/* Paused at the bath, as behind the briefing; twenty times as fast as a real clock. */
static inline void worked_screen_begin(worked_screen *t, const char *text, unit_system u)
{
    worked_begin(&t->w, text);
    t->o = (screen_options){.units = u, .read = &t->w.read, .speed = 20, .save = NULL, .page = NULL};
    t->s = (screen){.shift = &t->w.shift, .o = &t->o, .speed = t->o.speed, .found_s = -1, .fits = true};
}

static inline void worked_screen_end(worked_screen *t)
{
    happenings_free(&t->s.happened);
    happenings_free(&t->s.warned);
    free(t->s.page);
    worked_end(&t->w);
}

#define WORKED_SCREEN_TEXT "title = Two gallons\n" WORKED_TOP WORKED_PLANT

/* Before and after a test whose state it is. */
static inline int worked_screen_set_up(void **state)
{
    static worked_screen t;
    t = (worked_screen){.row = ""};
    worked_screen_begin(&t, WORKED_SCREEN_TEXT, UNITS_US);
    *state = &t;
    return 0;
}

static inline int worked_screen_tear_down(void **state)
{
    worked_screen_end(*state);
    return 0;
}

/* Drawn now: a row, without the blanks at its end; good until the next. */
static inline const char *worked_screen_row(worked_screen *t, int row)
{
    int length = 0;
    screen_picture(&t->s);
    for (int i = 0; i < CANVAS_COLUMNS; i++) {
        t->row[i] = t->s.canvas.cell[row][i].character;
        if (t->row[i] != ' ')
            length = i + 1;
    }
    t->row[length] = '\0';
    return t->row;
}

/* The row in which it stands, from 0; -1: in none. */
static inline int worked_screen_find(worked_screen *t, const char *words)
{
    for (int i = 0; i < CANVAS_ROWS; i++)
        if (strstr(worked_screen_row(t, i), words) != NULL)
            return i;
    return -1;
}

/* Each of these characters, as a key. */
static inline void worked_screen_press(worked_screen *t, const char *keys)
{
    for (; *keys != '\0'; keys++)
        screen_press(&t->s, (unsigned char)*keys);
}

/* An act, in place of whatever the line holds. */
static inline void worked_screen_do(worked_screen *t, const char *act)
{
    const char anew[] = {'a', 21, '\0'}; /* the last takes the line away */
    worked_screen_press(t, anew);
    worked_screen_press(t, act);
    worked_screen_press(t, "\n");
}

/* The clock runs to the moment, in drawings a tenth of a second apart, and stands. */
static inline void worked_screen_go_on(worked_screen *t, double until_s)
{
    for (double wall_s = 0.1; t->s.shift->now_s < until_s && !shift_is_over(t->s.shift); wall_s += 0.1) {
        t->s.running = true;
        screen_advance(&t->s, 0.1, wall_s);
    }
    t->s.running = false;
}

#endif
