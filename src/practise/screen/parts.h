/* practise/screen/parts.h -- a shift on the screen, for the files that carry it out: loop.c (the clock of the wall), clock.c (time
   goes on, what happens is noted), keys.c (a key is pressed), acts.c (an act is written and done), draw.c and pages.c (what is
   shown). */
#ifndef PRACTISE_SCREEN_PARTS_H
#define PRACTISE_SCREEN_PARTS_H

#include "terminal/canvas.h"
#include "practise/happened.h"
#include "practise/order.h"
#include "practise/panel.h"
#include "practise/screen/screen.h"
#include "terminal/terminal.h"

typedef enum {
    SCREEN_WATCHING, /* the clock goes on, or stands */
    SCREEN_WRITING,  /* an act */
    SCREEN_NAMING,   /* the file to keep the shift in */
    SCREEN_LEAVING,  /* asked whether */
    SCREEN_READING   /* keys, or the debrief: pages of text */
} screen_mode;

#define SCREEN_LINE_MOST 300
#define SCREEN_NOTES 3

/* A shift under way on the screen. */
typedef struct {
    shift *shift;
    const screen_options *o;
    screen_outcome outcome;
    terminal terminal;
    canvas canvas;
    screen_mode mode;
    bool done, running, fits;
    double speed;
    unsigned moment; /* drawings so far */
    double looked_s; /* wall clock, when it was last looked at what was found */
    double found_s;  /* of the shift, until when it was */
    happened_findings found;
    happenings happened, warned; /* what the bath did and was done to it; what was found */
    bool erupts, slow;           /* it is coming over, or what floats lets go; shown slowly */
    double slow_until_s;         /* of the shift: not before */
    bool met_rim;                /* the clock has been stopped for it */
    bool waits;                  /* an act waits for the bath */
    order waited;
    size_t asked; /* questions of the lesson so far */
    double asked_s;
    TEXT_OF(SCREEN_LINE_MOST) line, waiting, message; /* being written; the act that waits; said below */
    bool briefing, debrief;                           /* the page is the one before the shift, or what came of it */
    char *page;                                       /* that is read */
    size_t page_line;                                 /* its first one that is shown */
} screen;

/* clock.c. Moves the shift by so much of the wall clock; to_next: until something happens, at once. */
void screen_advance(screen *s, double wall_s, double now_wall_s);
void screen_to_next(screen *s);
double screen_speed(const screen *s);           /* of the clock as it is shown: slower while it erupts */
void screen_note(screen *s, const char *words); /* what was done, now */
void screen_forget(screen *s);                  /* after going back: what happened is gathered anew */
bool screen_memory(screen *s, bool good);       /* hands it on; refused, it ends */

/* acts.c. */
void screen_open(screen *s, const char *keyword); /* an act filled in; "": an empty line */
void screen_write(screen *s, int pressed);
void screen_do_waiting(screen *s); /* what was waited for has come */

/* keys.c */
void screen_press(screen *s, int pressed);

/* draw.c, pages.c */
void screen_draw(screen *s);
void screen_picture(screen *s); /* of the bath or a page, on the canvas alone */
void screen_draw_page(screen *s);
void screen_show_keys(screen *s);
void screen_show_briefing(screen *s);
void screen_show_debrief(screen *s);
void screen_write_debrief(screen *s); /* as a page for a browser */

#endif
