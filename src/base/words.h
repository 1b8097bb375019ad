/* base/words.h -- comparing what a person wrote with the words the program knows: without regard to case or number of
   blanks. */
#ifndef BASE_WORDS_H
#define BASE_WORDS_H

#include "base/text.h"

/* Bytes of the blank at `at`: space and tab 1, no-break space 2; 0 when there is none. */
size_t words_blank(const char *at, const char *end);
const char *words_skip(const char *at, const char *end); /* the first byte that is no blank */
const char *words_trim(const char *at, const char *end); /* the end without the blanks before it */

bool words_same(const char *text, size_t length, const char *words);

/* Bytes of the text that `words` takes at its start, up to the end of a word; 0 when something else stands there. */
size_t words_taken(const char *at, const char *end, const char *words);

/* A copy fit for a message: at most some forty bytes, cut between characters, with "..." where it was cut. */
typedef TEXT_OF(48) words_quote;
words_quote words_quoted(const char *text, size_t length);

/* The known word nearest to what was written, by edit distance with transpositions, among those considered. */
typedef struct {
    const char *text;
    size_t length;
    const char *word; /* NULL: none is near */
    size_t distance;
} words_nearest;
words_nearest words_near(const char *text, size_t length);
void words_consider(words_nearest *n, const char *candidate);

/* "; did you mean 'depth'?", or nothing. */
typedef TEXT_OF(80) words_hint;
words_hint words_suggestion(const words_nearest *n);

#endif
