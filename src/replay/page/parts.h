/* replay/page/parts.h -- of what the page is made.

   One file that fetches nothing and forbids itself to, by its own policy in the head; XML too. Without its script it shows what
   paper does: four moments drawn, the events as a table. The script moves what the program drew and works nothing out. Nothing
   depends on a colour: likely is a full line or a filled sign, possible is hatched or hollow.

   When a part has changed, look at it (make browser draws it): 1280, 390 and 320 px wide, on a projector, printed, grey, in forced
   colours, dark. */
#ifndef REPLAY_PAGE_PARTS_H
#define REPLAY_PAGE_PARTS_H

#include "replay/page/answer.h"

/* What all tanks of the page are drawn to: one scale, mm, floor at 0, up negative. */
typedef struct {
    double top, bottom, left, right; /* of the picture */
    double unit;                     /* as large as a mm in the usual tank, so that signs have one size on the screen */
} lesson_view;

lesson_view lesson_view_of(const lesson_answer *a);

double lesson_wide_m(const boil_tank *t); /* the side that is drawn */

/* How high salt lies on the floor, m a kg. */
double lesson_heap_m_kg(const replay *r);

/* "water", "salt", "liquid": the word beside a pour. */
const char *lesson_poured(boil_action_kind kind);

/* Patterns that all pictures share, once. */
void lesson_patterns(const lesson_answer *a, FILE *to);

/* The tank at a moment: all its parts, those that are not there hidden. */
void lesson_picture(html *h, const lesson_answer *a, size_t run, double time_s);

void lesson_sheet(html *h, const lesson_answer *a); /* two sides to print */
void lesson_data(const lesson_answer *a, FILE *to); /* all runs, as JSON that holds no markup */

/* The page's own files, a line a text, NULL behind the last (Makefile). */
extern const char *const page_css[], *const stage_html[];
extern const char *const data_js[], *const picture_js[], *const reading_js[];
extern const char *const strip_js[], *const time_js[], *const events_js[];
extern const char *const question_js[], *const keys_js[], *const start_js[];

#endif
