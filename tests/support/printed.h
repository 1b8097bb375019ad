/* support/printed.h -- what a function writes to a stream, as text, and how often it says something. */
#ifndef SUPPORT_PRINTED_H
#define SUPPORT_PRINTED_H

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    char *text;
    size_t size;
    FILE *to;
} printed;

static inline void printed_begin(printed *p)
{
    *p = (printed){0};
    p->to = open_memstream(&p->text, &p->size);
    if (p->to == NULL)
        abort();
}

/* The text so far; to be freed. */
static inline char *printed_end(printed *p)
{
    fclose(p->to);
    return p->text;
}

/* Blanks and line ends in a row as one blank, so that nothing hangs on where a line is wrapped. */
static inline void printed_unwrap(char *text)
{
    char *to = text;
    for (const char *from = text; *from != '\0'; from++)
        if (*from != ' ' && *from != '\n')
            *to++ = *from;
        else if (to == text || to[-1] != ' ')
            *to++ = ' ';
    *to = '\0';
}

/* Whether it says so, wherever its lines are wrapped; what was printed is freed. */
static inline bool printed_says(printed *p, const char *words)
{
    char *text = printed_end(p);
    printed_unwrap(text);
    bool is = strstr(text, words) != NULL;
    free(text);
    return is;
}

static inline size_t printed_times(const char *text, const char *part)
{
    size_t n = 0;
    for (; (text = strstr(text, part)) != NULL; text += strlen(part))
        n++;
    return n;
}

#endif
