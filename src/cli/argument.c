#include "cli/argument.h"

#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "base/words.h"
#include "scenario/settings.h"

/* A scenario of one line: the option's value. "#" has no meaning there, so the cursor is set by hand. */
typedef struct {
    source source;
    source_line line;
    messages messages;
    char name[40];
} argument;

static cursor begin(argument *a, const char *option, const char *text)
{
    size_t length = strlen(text);
    *a = (argument){.line = {text, length}};
    snprintf(a->name, sizeof a->name, "--%s", option);
    a->source = (source){.name = a->name, .lines = &a->line, .count = 1};
    messages_init(&a->messages);
    return (cursor){&a->messages, &a->source, 1, text, text + length};
}

/* The first complaint says enough. */
static bool end(argument *a, bool good)
{
    if (!good)
        program_complain("--%s: %s", a->name + 2,
                         a->messages.count > 0 && a->messages.list[0].text != NULL ? a->messages.list[0].text
                                                                                   : "out of memory");
    messages_free(&a->messages);
    return good;
}

bool argument_quantity(const char *option, const char *text, unit_dimension d, const bounds *within, double *si)
{
    argument a;
    quantity q;
    if (text == NULL)
        return true;
    cursor c = begin(&a, option, text);
    bool good = (d == DIM_FRACTION ? quantity_share(&c, option, &q) : quantity_read(&c, option, UNIT_OF(d), &q)) &&
                cursor_expect_end(&c) && quantity_within(&c, option, &q, within);
    if (good)
        *si = q.si;
    return end(&a, good);
}

bool argument_number(const char *option, const char *text, const bounds *within, double *x)
{
    argument a;
    quantity q;
    cursor c = begin(&a, option, text);
    bool good = quantity_factor(&c, option, &q) && cursor_expect_end(&c) && quantity_within(&c, option, &q, within);
    if (good)
        *x = q.si;
    return end(&a, good);
}

bool argument_read(const char *option, const char *text, bool (*read)(cursor *c, void *into), void *into)
{
    argument a;
    cursor c = begin(&a, option, text);
    return end(&a, read(&c, into));
}

bool argument_count(const char *option, const char *text, const bounds *within, unsigned long *n)
{
    double x;
    if (!argument_number(option, text, within, &x))
        return false;
    *n = (unsigned long)x;
    if ((double)*n == x)
        return true;
    program_complain("--%s: '%s' must be a whole number", option, words_quoted(text, strlen(text)).text);
    return false;
}

/* "1 lb per 2 gal" begins like a mass, so each dimension is tried alone; what is neither is told about both. */
bool argument_either(const char *option, const char *text, unit_dimension one, const bounds *within_one, unit_dimension other,
                     const bounds *within_other, quantity *q)
{
    argument a;
    cursor c = begin(&a, option, text);
    bool is_one = quantity_read(&c, option, UNIT_OF(one), q) && cursor_done(&c);
    messages_free(&a.messages);
    c = begin(&a, option, text);
    bool good = quantity_read(&c, option, is_one ? UNIT_OF(one) : UNIT_OF(other) | UNIT_OF(one), q);
    if (good && !is_one && !cursor_done(&c)) {
        c.at = text;
        good = quantity_read(&c, option, UNIT_OF(other), q);
    }
    good = good && cursor_expect_end(&c) && quantity_within(&c, option, q, is_one ? within_one : within_other);
    return end(&a, good);
}

bool argument_setting(const char *option, const char *text, const key *k, scenario *into)
{
    argument a;
    setting_line line = {.found = true, .key_at = text, .value = begin(&a, option, text)};
    return end(&a, setting_read(k, &line, into));
}
