#include "habits/load.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "actions/action.h"
#include "actions/load_shape.h"
#include "base/words.h"
#include "habits/table.h"

/* The last byte before a place that is no blank; a comma where the line begins. */
static char last_before(const reword *w, size_t at)
{
    const char *end = words_trim(w->text, w->text + at);
    return end > w->text ? end[-1] : ',';
}

static size_t end_before(const reword *w, size_t at)
{
    return (size_t)(words_trim(w->text, w->text + at) - w->text);
}

static bool shape_at(const reword *w, size_t at)
{
    const load_shape *shape;
    for (size_t i = 0; (shape = load_shape_listed(i)) != NULL; i++) {
        size_t taken = reword_taken(w, at, shape->words);
        if (taken > 0)
            return reword_number_at(w, at + taken);
    }
    return false;
}

/* A clause is known by its word and a number; "as" by its word alone. */
static bool clause_at(const reword *w, size_t at)
{
    for (size_t i = 0; i < action_load.clause_count; i++) {
        size_t taken = reword_taken(w, at, action_load.clauses[i].words);
        if (taken > 0)
            return reword_number_at(w, at + taken);
    }
    return reword_taken(w, at, "as") > 0;
}

static size_t next_comma(const reword *w, size_t at)
{
    const char *comma = memchr(w->text + at, ',', w->length - at);
    return comma != NULL ? (size_t)(comma - w->text) : w->length;
}

/* "40 x 2 lb" behind the act: what they weigh together, and the pieces at the end. */
static void multiply(reword *w, size_t at)
{
    char *end, text[40];
    size_t n = reword_word(w, &at);
    double pieces = n > 0 && reword_number_at(w, at) ? strtod(w->text + at, &end) : 0;
    size_t x = at + n;
    if (pieces < 1 || pieces > 1e6 || end != w->text + at + n || pieces != (double)(long)pieces || reword_word(w, &x) == 0 ||
        reword_taken(w, x, "x") == 0)
        return;
    size_t each = x + 1, length = reword_word(w, &each);
    double mass = reword_number_at(w, each) ? strtod(w->text + each, &end) : 0;
    if (end != w->text + each + length)
        return;
    snprintf(text, sizeof text, ", %.0f pieces", pieces);
    reword_replace(w, w->length, 0, text);
    snprintf(text, sizeof text, "%.10g", pieces * mass);
    reword_replace(w, at, each + length - at, text);
}

/* Where the part begins that a place is in. */
static size_t part_begin(const reword *w, size_t at)
{
    while (at > 0 && w->text[at - 1] != ',')
        at--;
    return at;
}

static bool holds_digit(const reword *w, size_t at, size_t end)
{
    while (at < end && !(w->text[at] >= '0' && w->text[at] <= '9'))
        at++;
    return at < end;
}

/* A comma before a shape or a clause that has none. Where only the metal stands before the shape, "80 lb, steel plate", the comma
   goes behind it. */
static void separate(reword *w, size_t at, bool shape)
{
    size_t begin = part_begin(w, at), end = end_before(w, at);
    bool metal = shape && begin > 0 && !holds_digit(w, begin, end);
    reword_replace(w, end, 0, ",");
    if (metal)
        reword_replace(w, begin - 1, 1, "");
}

static void parts(reword *w, size_t at)
{
    bool shaped = false;
    for (size_t n; (n = reword_word(w, &at)) > 0; at += n) {
        if (!words_letter(w->text[at]))
            continue;
        habit_replace(w, at, HABIT_LOAD);
        n = reword_word(w, &at);
        bool shape = !shaped && shape_at(w, at), named = reword_taken(w, at, "as") > 0;
        size_t before = w->length;
        if (last_before(w, at) != ',' && (shape || clause_at(w, at)))
            separate(w, at, shape);
        at += w->length - before;
        shaped = shaped || shape;
        if (named)
            n = next_comma(w, at) - at; /* a name is left alone */
    }
}

/* Marks behind numbers, but not in names. */
static void marks(reword *w, size_t at)
{
    while (at < w->length) {
        size_t start = at;
        size_t n = reword_word(w, &start);
        size_t end = next_comma(w, at);
        at = n > 0 && reword_taken(w, start, "as") > 0 ? end : habit_replace_marks(w, at, end);
        at += at < w->length;
    }
}

void load_reword(reword *w, size_t start)
{
    multiply(w, start);
    parts(w, start);
    marks(w, start);
}
