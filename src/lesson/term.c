#include "lesson/lesson.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"

void lesson_free(lesson *l)
{
    char *texts[] = {l->goal, l->question, l->hint, l->debrief, l->care};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
        free(texts[i]);
    for (size_t i = 0; i < l->stops_count; i++)
        free(l->stops[i].asks);
    for (size_t i = 0; i < l->choices_count; i++)
        free(l->choices[i].says);
    *l = (lesson){0};
}

static const char *const signs[] = {">=", "<=", "="};
typedef enum { SIGN_LEAST, SIGN_MOST, SIGN_EQUAL, SIGNS } sign;

/* Where the measure's words end: at a sign, or with the line. */
static const char *measure_end(const cursor *c)
{
    const char *at = c->at;
    while (at < c->end && strchr("<>=", *at) == NULL)
        at++;
    return at;
}

static void unknown_measure(const cursor *c, const char *at, size_t length)
{
    TEXT_OF(240) known = {""};
    words_nearest n = words_near(at, length);
    const lesson_measure *m;
    for (size_t i = 0; (m = lesson_measure_listed(i)) != NULL; i++) {
        TEXT_ADD(known.text, "%s%s", i == 0 ? "" : lesson_measure_listed(i + 1) != NULL ? ", " : " and ", m->words);
        words_consider(&n, m->words);
    }
    cursor_error(c, at, "nothing is measured as '%s'; known are %s%s", words_quoted(at, length).text, known.text,
                 words_suggestion(&n).text);
}

/* NULL, with a message: it is none. */
static const lesson_measure *read_measure(cursor *c)
{
    const char *start = c->at, *end = measure_end(c);
    size_t length = (size_t)(words_trim(start, end) - start);
    const lesson_measure *m = lesson_measure_named(start, length);
    c->at = end;
    if (m == NULL)
        unknown_measure(c, start, length);
    return m;
}

static sign read_sign(cursor *c)
{
    for (sign s = SIGN_LEAST; s < SIGNS; s++) {
        size_t length = strlen(signs[s]);
        if ((size_t)(c->end - c->at) >= length && memcmp(c->at, signs[s], length) == 0) {
            c->at += length;
            return s;
        }
    }
    return SIGNS;
}

/* "0" alone needs no unit where nothing is nothing in all of them. */
static bool is_nothing(const cursor *c, const lesson_measure *m)
{
    return m->dimension != DIM_TEMPERATURE && words_same(c->at, (size_t)(words_trim(c->at, c->end) - c->at), "0");
}

static bool read_value(cursor *c, const lesson_measure *m, double *si, words_quote *words)
{
    quantity q = {.si = 0};
    cursor_done(c);
    const char *start = c->at;
    bool good = true;
    if (is_nothing(c, m))
        c->at = words_trim(c->at, c->end);
    else if (m->dimension == DIM_COUNT)
        good = quantity_factor(c, m->words, &q);
    else if (m->dimension == DIM_FRACTION)
        good = quantity_share(c, m->words, &q);
    else if (m->dimension == DIM_TIME)
        good = quantity_when(c, m->words, &q);
    else
        good = quantity_read(c, m->words, UNIT_OF(m->dimension), &q);
    *si = q.si;
    *words = words_quoted(start, (size_t)(words_trim(start, c->at) - start));
    return good;
}

/* "281 degF to 291 degF", or 0. */
static bool read_range(cursor *c, lesson_term *t)
{
    const lesson_measure *m = t->measure;
    cursor_done(c);
    const char *start = c->at;
    if (is_nothing(c, m)) {
        t->low = 0;
        return read_value(c, m, &t->high, &t->high_words);
    }
    if (!read_value(c, m, &t->low, &t->low_words))
        return false;
    if (!cursor_take(c, "to"))
        return cursor_error(c, start, "'=' takes a range, such as '%s = %s to ...': else write >= or <=", m->words,
                            t->low_words.text);
    if (!read_value(c, m, &t->high, &t->high_words))
        return false;
    return t->low < t->high || cursor_error(c, start, "'%s' must run from a lower to a higher value", m->words);
}

static bool read_limit(cursor *c, lesson_term *t)
{
    const lesson_measure *m = t->measure;
    sign s = read_sign(c);
    if (m->holds) {
        t->low = 1;
        return s == SIGNS || cursor_error(c, c->at, "'%s' holds or does not: it stands alone", m->words);
    }
    switch (s) {
    case SIGN_LEAST:
        return read_value(c, m, &t->low, &t->low_words);
    case SIGN_MOST:
        return read_value(c, m, &t->high, &t->high_words);
    case SIGN_EQUAL:
        return read_range(c, t);
    case SIGNS:
        break;
    }
    return cursor_error(c, c->at, "expected '%s >= ...', '<= ...' or '= ... to ...'", m->words);
}

bool lesson_term_read(cursor *c, lesson *l)
{
    lesson_term t = {.line = c->line, .low = -(double)INFINITY, .high = (double)INFINITY};
    if (cursor_done(c))
        return cursor_error(c, c->at, "'pass' has no value");
    const char *start = c->at;
    t.measure = read_measure(c);
    if (t.measure == NULL || !read_limit(c, &t) || !cursor_expect_end(c))
        return false;
    if (l->terms_count == LESSON_TERMS_MAX)
        return cursor_error(c, start, "a lesson has at most %d terms", LESSON_TERMS_MAX);
    l->terms[l->terms_count++] = t;
    return true;
}

/* NULL, with a message: nothing is found under that id. */
static const char *read_name(const cursor *part)
{
    size_t length = (size_t)(part->end - part->at);
    words_nearest n = words_near(part->at, length);
    const char *id;
    for (size_t i = 0; (id = boil_finding_listed(i, NULL)) != NULL; i++) {
        if (words_same(part->at, length, id))
            return id;
        words_consider(&n, id);
    }
    cursor_error(part, part->at, "no finding is called '%s'%s", words_quoted(part->at, length).text, words_suggestion(&n).text);
    return NULL;
}

bool lesson_names_read(cursor *c, lesson *l)
{
    cursor part;
    while (cursor_part(c, &part)) {
        const char *id = read_name(&part);
        if (id == NULL)
            return false;
        if (l->must_name_count == LESSON_NAMES_MAX)
            return cursor_error(&part, part.at, "a lesson names at most %d findings", LESSON_NAMES_MAX);
        l->must_name[l->must_name_count++] = id;
    }
    return true;
}
