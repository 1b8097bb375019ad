#include "schedule/breaks.h"

/* "8:00 to 8:15" */
static bool read_span(const moment_frame *f, cursor *c, const char *what, boil_break *span)
{
    quantity from, to;
    cursor_done(c);
    const char *start = c->at;
    if (!moment_read(f, c, what, &from) || !moment_within(f, c, from.text, from.si))
        return false;
    if (!cursor_take(c, "to"))
        return cursor_error(c, c->at, "say 'to', and when the '%s' ends", what);
    if (!moment_read(f, c, "to", &to) || !moment_within(f, c, to.text, to.si))
        return false;
    if (!(to.si > from.si))
        return cursor_error(c, start, "'%s%s' ends before it begins", what[0] == 'e' ? "except " : "",
                            words_quoted(start, (size_t)(words_trim(start, c->at) - start)).text);
    *span = (boil_break){from.si, to.si};
    return true;
}

bool break_read(const moment_frame *f, cursor *c, break_list *b)
{
    boil_break span;
    cursor_done(c);
    const char *start = c->at;
    if (!read_span(f, c, "break", &span))
        return false;
    if (b->count == BOIL_BREAKS_MAX)
        return cursor_error(c, start, "there are more than %d breaks", BOIL_BREAKS_MAX);
    cursor_done(c);
    b->words[b->count] = words_quoted(c->at, (size_t)(c->end - c->at));
    b->list[b->count++] = span;
    return true;
}

static bool add(const cursor *c, const char *at, exceptions *e, boil_break span)
{
    if (e->count == BOIL_BREAKS_MAX)
        return cursor_error(c, at, "there are more than %d exceptions", BOIL_BREAKS_MAX);
    e->list[e->count++] = span;
    return true;
}

static bool add_breaks(const cursor *c, const char *at, const break_list *b, exceptions *e)
{
    bool good = b->count > 0 || cursor_error(c, at, "'except breaks', but there is no [breaks]");
    for (size_t i = 0; good && i < b->count; i++)
        good = add(c, at, e, b->list[i]);
    return good;
}

bool exceptions_read(const moment_frame *f, const break_list *b, cursor *c, exceptions *e)
{
    bool good = true;
    e->count = 0;
    while (good) {
        boil_break span;
        cursor_done(c);
        const char *start = c->at;
        if (!cursor_take(c, "except"))
            break;
        good =
            cursor_take(c, "breaks") ? add_breaks(c, start, b, e) : read_span(f, c, "except", &span) && add(c, start, e, span);
    }
    return good;
}

bool exceptions_hold(const exceptions *e, double s)
{
    const double rounding_s = 1e-6;
    size_t i = 0;
    while (i < e->count && !(s >= e->list[i].from_s - rounding_s && s < e->list[i].to_s - rounding_s))
        i++;
    return i < e->count;
}
