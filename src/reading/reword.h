/* reading/reword.h -- a stretch of a line put into the words of the language where a person used others. What is then read is
   the new text; messages still point at what was typed, and one remark says how it is read. */
#ifndef READING_REWORD_H
#define READING_REWORD_H

#include "base/words.h"
#include "reading/cursor.h"

#define REWORD_MAX ((size_t)1000) /* bytes: what is longer is read as it stands */

typedef struct {
    cursor typed;
    char text[REWORD_MAX + 1];
    size_t from[REWORD_MAX + 1]; /* per byte, and for the end */
    size_t length;
    bool changed;
    size_t first; /* the first change: where in what was typed */
} reword;

/* False when the stretch is too long. */
bool reword_begin(reword *w, const cursor *c);

/* Puts a text in place of some bytes; where it would become too long nothing is changed. */
void reword_replace(reword *w, size_t at, size_t length, const char *with);

/* The next word from `at` on: passes blanks; a comma is a word of its own, any other ends before a blank or comma. Its length;
   0 at the end. */
size_t reword_word(const reword *w, size_t *at);
bool reword_number_at(const reword *w, size_t at); /* blanks passed: a digit */

/* As words_taken. */
static inline size_t reword_taken(const reword *w, size_t at, const char *words)
{
    return words_taken(w->text + at, w->text + w->length, words);
}

/* Where it was changed, the cursor reads the new text from here on. */
void reword_finish(reword *w, cursor *c);

#endif
