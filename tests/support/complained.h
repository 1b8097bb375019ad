/* support/complained.h -- what a function says on standard error, as text. */
#ifndef SUPPORT_COMPLAINED_H
#define SUPPORT_COMPLAINED_H

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

typedef struct {
    FILE *to;
    int before;
    char text[1024];
} complained;

static inline void complained_begin(complained *c)
{
    fflush(stderr);
    c->to = tmpfile();
    c->before = dup(STDERR_FILENO);
    if (c->to == NULL || c->before < 0 || dup2(fileno(c->to), STDERR_FILENO) < 0)
        abort();
}

/* The text since then; standard error is as before. */
static inline const char *complained_end(complained *c)
{
    fflush(stderr);
    dup2(c->before, STDERR_FILENO);
    close(c->before);
    rewind(c->to);
    c->text[fread(c->text, 1, sizeof c->text - 1, c->to)] = '\0';
    fclose(c->to);
    return c->text;
}

#endif
