#include "base/words.h"

#include <string.h>

/* Longer words get no suggestion. */
#define WORD_MAX 40

const char *words_trim(const char *at, const char *end)
{
    for (;;) {
        if (end - at >= 1 && words_blank(end - 1, end) > 0)
            end -= 1;
        else if (end - at >= 2 && words_blank(end - 2, end) == 2)
            end -= 2;
        else
            return end;
    }
}

static char lower(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Where the text stands after `words`; NULL when it says something else. A blank in `words` stands for any number. */
static const char *after(const char *at, const char *end, const char *words)
{
    for (; *words != '\0'; words++) {
        if (*words == ' ') {
            if (words_blank(at, end) == 0)
                return NULL;
            at = words_skip(at, end);
        } else if (at == end || (*at != *words && lower(*at) != lower(*words))) {
            return NULL;
        } else {
            at++;
        }
    }
    return at;
}

bool words_same_whole(const char *text, size_t length, const char *words)
{
    const char *at = words_skip(text, text + length);
    const char *end = words_trim(at, text + length);
    return after(at, end, words) == end;
}

size_t words_taken_whole(const char *at, const char *end, const char *words)
{
    const char *rest = after(at, end, words);
    if (rest == NULL)
        return 0;
    bool ends = rest == end || words_blank(rest, end) > 0 || strchr(",|+=", *rest) != NULL;
    return ends ? (size_t)(rest - at) : 0;
}

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

words_quote words_quoted(const char *text, size_t length)
{
    words_quote q;
    size_t most = sizeof q.text - sizeof "...", taken = least(length, most);
    while (length > most && taken > 0 && ((unsigned char)text[taken] & 0xC0) == 0x80)
        taken--;
    memcpy(q.text, text, taken);
    strcpy(q.text + taken, length > most ? "..." : "");
    return q;
}

/* Lower case, each run of blanks one space. Returns the length, or 0 when it does not fit. */
static size_t plain(const char *text, size_t length, char out[WORD_MAX])
{
    const char *end = text + length;
    size_t n = 0;
    while (text < end) {
        size_t blank = words_blank(text, end);
        if (n == WORD_MAX)
            return 0;
        out[n++] = blank > 0 ? ' ' : lower(*text);
        text = blank > 0 ? words_skip(text, end) : text + 1;
    }
    return n;
}

/* Insertions, deletions, substitutions and swaps of neighbours that turn a into b (optimal string alignment); `most` or more
   where there are as many. Each moves by one letter: further than `most` from the diagonal nothing need be worked out. */
static size_t distance(const char *a, size_t na, const char *b, size_t nb, size_t most)
{
    size_t rows[3][WORD_MAX + 1] = {{0}};
    size_t *before = rows[0], *last = rows[1], *row = rows[2];
    for (size_t j = 0; j <= nb; j++)
        last[j] = j;
    for (size_t i = 1; i <= na; i++) {
        size_t from = i >= most ? i - most + 1 : 1, to = least(nb, i + most - 1);
        row[from - 1] = from > 1 ? most : i;
        for (size_t j = from; j <= to; j++) {
            row[j] = least(least(last[j], row[j - 1]) + 1, last[j - 1] + (a[i - 1] != b[j - 1]));
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = least(row[j], before[j - 2] + 1);
        }
        if (to < nb)
            row[to + 1] = most;
        size_t *spare = before;
        before = last;
        last = row;
        row = spare;
    }
    return last[nb];
}

/* One slip in each three letters is still the same word. */
words_nearest words_near(const char *text, size_t length)
{
    return (words_nearest){.text = text, .length = length, .distance = (length + 2) / 3 + 1};
}

void words_consider(words_nearest *n, const char *candidate)
{
    char a[WORD_MAX], b[WORD_MAX];
    size_t na = plain(n->text, n->length, a), nb = plain(candidate, strlen(candidate), b);
    if (na == 0 || nb == 0 || na >= nb + n->distance || nb >= na + n->distance)
        return;
    size_t d = distance(a, na, b, nb, n->distance);
    if (d < n->distance) {
        n->distance = d;
        n->word = candidate;
    }
}

words_hint words_suggestion(const words_nearest *n)
{
    words_hint h = {""};
    if (n->word != NULL)
        snprintf(h.text, sizeof h.text, "; did you mean '%s'?", n->word);
    return h;
}
