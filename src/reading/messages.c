#include "reading/source.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/words.h"

/* Characters of a long line that are shown around the place. */
#define ECHO_BEFORE 100
#define ECHO_AFTER 60

void messages_init(messages *m)
{
    *m = (messages){0};
}

void messages_free(messages *m)
{
    for (size_t i = 0; i < m->count; i++) {
        free(m->list[i].file);
        free(m->list[i].text);
        free(m->list[i].echo);
    }
    free(m->list);
    *m = (messages){0};
}

bool messages_full(const messages *m)
{
    return m->count >= MESSAGES_MAX;
}

bool messages_any(const messages *m)
{
    return m->count > 0 || m->lost;
}

/* Moves from `at` by some characters towards `stop`. */
static const char *move(const char *at, const char *stop, size_t n)
{
    ptrdiff_t way = at < stop ? 1 : -1;
    while (n > 0 && at != stop) {
        at += way;
        if (at == stop || text_begins_character(*at))
            n--;
    }
    return at;
}

/* Blanks that would shift the caret become plain ones; what a terminal should not get becomes a question mark. */
static void make_printable(char *text, size_t length)
{
    char *to = text;
    for (const char *at = text, *end = text + length; at < end;) {
        size_t blank = words_blank(at, end), n = text_character_within(at, (size_t)(end - at));
        if (blank > 0) {
            *to++ = ' ';
        } else if (n == 0 || text_is_control(at, n)) {
            *to++ = '?';
        } else {
            memmove(to, at, n);
            to += n;
        }
        at += blank > 0 ? blank : n > 0 ? n : 1;
    }
    *to = '\0';
}

static void echo(message *g, const source_line *l, const char *at)
{
    const char *end = l->text + l->length;
    const char *from = move(at, l->text, ECHO_BEFORE), *to = move(at, end, ECHO_AFTER);
    g->echo = text_copy(from, (size_t)(to - from));
    g->caret = text_characters(from, at);
    if (g->echo != NULL)
        make_printable(g->echo, (size_t)(to - from));
}

bool messages_add(messages *m, const source *s, size_t line, const char *at, const char *format, ...)
{
    if (messages_full(m))
        return false;
    message *list = boil_array_reserve(m->list, &m->capacity, m->count, sizeof *list);
    if (list == NULL) {
        m->lost = true;
        return false;
    }
    m->list = list;
    message *g = &list[m->count];
    *g = (message){.order = s->order, .line = line, .sequence = m->count};
    m->count++;
    if (s->name != NULL)
        g->file = text_copy(s->name, strlen(s->name));
    char text[800];
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    g->text = text_copy(text, strlen(text));
    if (line > 0) {
        const source_line *l = &s->lines[line - 1];
        g->column = text_characters(l->text, at) + 1;
        echo(g, l, at);
    }
    return false;
}

static int compare(size_t a, size_t b)
{
    return a < b ? -1 : a > b;
}

static int by_place(const void *left, const void *right)
{
    const message *a = left, *b = right;
    if (a->order != b->order)
        return a->order < b->order ? -1 : 1;
    int c = compare(a->line, b->line);
    if (c == 0)
        c = compare(a->column, b->column);
    return c != 0 ? c : compare(a->sequence, b->sequence);
}

void messages_sort(messages *m)
{
    if (m->count > 1)
        qsort(m->list, m->count, sizeof *m->list, by_place);
}

static void print(const message *g, FILE *to, const char *program)
{
    fprintf(to, "%s: %s:", program, g->file != NULL ? g->file : "?");
    if (g->line > 0)
        fprintf(to, "%zu:%zu:", g->line, g->column);
    fprintf(to, " %s\n", g->text != NULL ? g->text : "out of memory");
    if (g->echo != NULL)
        fprintf(to, "    %s\n    %*s^\n", g->echo, (int)g->caret, "");
}

void messages_print(const messages *m, FILE *to, const char *program)
{
    size_t shown = m->count < MESSAGES_SHOWN ? m->count : MESSAGES_SHOWN;
    for (size_t i = 0; i < shown; i++)
        print(&m->list[i], to, program);
    if (messages_full(m))
        fprintf(to, "%s: at least %zu more; reading stopped there\n", program, m->count - shown);
    else if (m->count > shown)
        fprintf(to, "%s: %zu more\n", program, m->count - shown);
    if (m->lost)
        fprintf(to, "%s: out of memory\n", program);
}
