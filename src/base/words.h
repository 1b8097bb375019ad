/* base/words.h -- comparing what a person wrote with the words the program knows: without regard to case or number of
   blanks. */
#ifndef BASE_WORDS_H
#define BASE_WORDS_H

#include "base/text.h"

/* What is asked of every byte of a file stands here whole, for its callers to take in. */

/* Bytes of the blank at `at`: space and tab 1, no-break space 2; 0 when there is none. */
static inline size_t words_blank(const char *at, const char *end)
{
    if (at == end || (signed char)*at > ' ') /* nearly always: what is beyond ASCII is negative */
        return 0;
    if (*at == ' ' || *at == '\t')
        return 1;
    return *at == '\xC2' && end - at >= 2 && at[1] == '\xA0' ? 2 : 0;
}

/* The first byte that is no blank. */
static inline const char *words_skip(const char *at, const char *end)
{
    for (size_t n; (n = words_blank(at, end)) > 0;)
        at += n;
    return at;
}

const char *words_trim(const char *at, const char *end); /* the end without the blanks before it */

/* As all that is said without a number begins. */
static inline bool words_letter(char c)
{
    return (c | ' ') >= 'a' && (c | ' ') <= 'z';
}

/* By its first letter, small or large, which decides for nearly all that a text is compared with. What may be a blank or is
   beyond ASCII, and signs that count as alike here, are told apart by the whole. */
static inline bool words_may_begin(const char *at, const char *end, const char *words)
{
    return at < end && (((*at ^ *words) & ~' ') == 0 || (signed char)*at <= ' ');
}

/* What words_same and words_taken say, whatever the first letter. */
bool words_same_whole(const char *text, size_t length, const char *words);
size_t words_taken_whole(const char *at, const char *end, const char *words);

static inline bool words_same(const char *text, size_t length, const char *words)
{
    return (length == 0 || words_may_begin(text, text + length, words)) && words_same_whole(text, length, words);
}

/* Bytes of the text that `words` takes at its start, up to the end of a word; 0 when something else stands there. */
static inline size_t words_taken(const char *at, const char *end, const char *words)
{
    return words_may_begin(at, end, words) ? words_taken_whole(at, end, words) : 0;
}

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
