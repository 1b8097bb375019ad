#include "reading/source.h"

#include <stdarg.h>
#include <stdint.h>
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
    for (size_t i = 0; i < m->readings_count; i++) {
        free(m->readings[i].text);
        free(m->readings[i].from);
    }
    free(m->readings);
    free(m->list);
    *m = (messages){0};
}

bool messages_full(const messages *m)
{
    return m->count - m->remarks >= MESSAGES_MAX;
}

bool messages_any(const messages *m)
{
    return m->count > m->remarks || m->lost;
}

const char *messages_keep_reading(messages *m, const message_reading *r)
{
    size_t bytes = (r->length + 1) * sizeof *r->from;
    message_reading *list = boil_array_reserve(m->readings, &m->readings_capacity, m->readings_count, sizeof *list);
    message_reading copy = {text_copy(r->text, r->length), r->length, r->typed, malloc(bytes)};
    if (list != NULL)
        m->readings = list;
    if (list == NULL || copy.text == NULL || copy.from == NULL) {
        free(copy.text);
        free(copy.from);
        m->lost = true;
        return NULL;
    }
    memcpy(copy.from, r->from, bytes);
    list[m->readings_count++] = copy;
    return copy.text;
}

/* The place in the line as it was typed. */
static const char *typed_at(const messages *m, const char *at)
{
    for (size_t i = 0; i < m->readings_count; i++) {
        const message_reading *r = &m->readings[i];
        uintptr_t place = (uintptr_t)at, start = (uintptr_t)r->text;
        if (place >= start && place <= start + r->length)
            return typed_at(m, r->typed + r->from[place - start]);
    }
    return at;
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
        } else if (n == 0 || text_is_control(at, n) || text_unseen(at, n) > 0) {
            *to++ = '?';
        } else {
            memmove(to, at, n);
            to += n;
        }
        at += blank > 0 ? blank : n > 0 ? n : 1;
    }
    *to = '\0';
}

static bool echo(message *g, const source_line *l, const char *at)
{
    const char *end = l->text + l->length;
    const char *from = move(at, l->text, ECHO_BEFORE), *to = move(at, end, ECHO_AFTER);
    g->echo = text_copy(from, (size_t)(to - from));
    g->caret = text_characters(from, at);
    if (g->echo != NULL)
        make_printable(g->echo, (size_t)(to - from));
    return g->echo != NULL;
}

bool messages_lost(messages *m)
{
    m->lost = true;
    return false;
}

static message *next(messages *m, const source *s, size_t line)
{
    message *list = boil_array_reserve(m->list, &m->capacity, m->count, sizeof *list);
    if (list == NULL) {
        m->lost = true;
        return NULL;
    }
    m->list = list;
    list[m->count] = (message){.order = s->order, .line = line, .sequence = m->count};
    return &list[m->count++];
}

static void add(messages *m, const source *s, size_t line, const char *at, bool remark, const char *text)
{
    message *g = next(m, s, line);
    if (g == NULL)
        return;
    g->remark = remark;
    m->remarks += remark;
    g->file = text_copy(s->name, strlen(s->name));
    g->text = text_copy(text, strlen(text));
    m->lost = m->lost || g->file == NULL || g->text == NULL;
    if (line == 0)
        return;
    const source_line *l = &s->lines[line - 1];
    const char *typed = typed_at(m, at);
    g->column = text_characters(l->text, typed) + 1;
    if (!remark)
        m->lost = !echo(g, l, typed) || m->lost;
}

bool messages_add(messages *m, const source *s, size_t line, const char *at, const char *format, ...)
{
    char text[800];
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    if (!messages_full(m))
        add(m, s, line, at, false, text);
    return false;
}

void messages_remark(messages *m, const source *s, size_t line, const char *at, const char *format, ...)
{
    char text[800];
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    if (m->remarks < MESSAGES_MAX)
        add(m, s, line, at, true, text);
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
    fprintf(to, "%s: ", program);
    text_show(to, g->file);
    fputc(':', to);
    if (g->line > 0)
        fprintf(to, "%zu:%zu:", g->line, g->column);
    fputc(' ', to);
    text_show(to, g->text);
    fputc('\n', to);
    if (g->echo != NULL)
        fprintf(to, "    %s\n    %*s^\n", g->echo, (int)g->caret, "");
}

/* Those of one kind, in their order; returns how many are left out. */
static size_t print_some(const messages *m, bool remarks, size_t most, FILE *to, const char *program)
{
    size_t met = 0;
    for (size_t i = 0; i < m->count; i++)
        if (m->list[i].remark == remarks && met++ < most)
            print(&m->list[i], to, program);
    return met > most ? met - most : 0;
}

void messages_print(const messages *m, FILE *to, const char *program)
{
    size_t more = print_some(m, true, REMARKS_SHOWN, to, program);
    if (more > 0)
        fprintf(to, "%s: %zu more such remarks\n", program, more);
    more = print_some(m, false, MESSAGES_SHOWN, to, program);
    if (messages_full(m))
        fprintf(to, "%s: at least %zu more; reading stopped there\n", program, more);
    else if (more > 0)
        fprintf(to, "%s: %zu more\n", program, more);
}
