/* commands/lesson/deck.h -- several lessons as pages in one folder, with a page that leads to them and the trainer's key. */
#ifndef COMMANDS_LESSON_DECK_H
#define COMMANDS_LESSON_DECK_H

#include "replay/page/answer.h"

/* Writes a page a lesson, named as its file, and index.html. An exit status; what is wrong goes to standard error. */
int lesson_deck(const given *g, const output *o, const char *folder);

/* Of index.html: what stands before the lessons, one lesson, and what stands behind. */
void lesson_index_begin(html *h);
void lesson_index_add(html *h, const lesson_answer *a, const char *page);
void lesson_index_end(html *h);

#endif
