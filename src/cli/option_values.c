/* option_values.c -- from the words given for options to the values in a command's record, by the scenario's rules. */
#include <string.h>

#include "base/program.h"
#include "base/memory.h"
#include "base/words.h"
#include "cli/options.h"
#include "scenario/scenario.h"

/* A scenario of one line: the option's value. "#" has no meaning there, so the cursor is set by hand. */
typedef struct {
    const option *option;
    source source;
    source_line line;
    messages messages;
    char name[40];
    cursor at;
} value;

static void begin(value *v, const option *o, const char *text)
{
    size_t length = strlen(text);
    *v = (value){.option = o, .line = {text, length}};
    snprintf(v->name, sizeof v->name, "--%s", o->name);
    v->source = (source){.name = v->name, .lines = &v->line, .count = 1};
    messages_init(&v->messages);
    v->at = (cursor){&v->messages, &v->source, 1, text, text + length};
}

/* The first complaint says enough. */
static void complain(const value *v)
{
    if (v->messages.lost)
        memory_refused();
    else
        program_complain("%s: %s", v->name, v->messages.list[0].text);
}

static bool ends_within(value *v, quantity *q, const bounds *within)
{
    return cursor_expect_end(&v->at) && quantity_within(&v->at, v->option->name, q, within);
}

static bool quantity_taken(value *v, double *si)
{
    const option *o = v->option;
    quantity q;
    bool good = o->kind == OPTION_COUNT        ? quantity_count(&v->at, o->name, &q)
                : o->kind != OPTION_QUANTITY   ? quantity_factor(&v->at, o->name, &q)
                : o->dimension == DIM_FRACTION ? quantity_share(&v->at, o->name, &q)
                                               : quantity_read(&v->at, o->name, UNIT_OF(o->dimension), &q);
    if (!good || !ends_within(v, &q, &o->within))
        return false;
    *si = q.si;
    return true;
}

static bool count_taken(value *v, unsigned long *n)
{
    const char *text = v->at.at;
    double x;
    if (!quantity_taken(v, &x))
        return false;
    if ((double)(unsigned long)x == x)
        *n = (unsigned long)x;
    else
        cursor_error(&v->at, text, "'%s' must be a whole number", words_quoted(text, strlen(text)).text);
    return (double)(unsigned long)x == x;
}

/* "1 lb per 2 gal" begins like a mass, so each dimension is tried alone; what is neither is told about both. */
static bool either_taken(value *v, quantity *q)
{
    const option *o = v->option;
    const char *text = v->at.at;
    bool is_one = quantity_read(&v->at, o->name, UNIT_OF(o->dimension), q) && cursor_done(&v->at);
    messages_free(&v->messages);
    begin(v, o, text);
    bool good = quantity_read(&v->at, o->name, is_one ? UNIT_OF(o->dimension) : UNIT_OF(o->other) | UNIT_OF(o->dimension), q);
    if (good && !is_one && !cursor_done(&v->at)) {
        v->at.at = text;
        good = quantity_read(&v->at, o->name, UNIT_OF(o->other), q);
    }
    return good && ends_within(v, q, is_one ? &o->within : &o->within_other);
}

static bool setting_taken(value *v, scenario *into)
{
    const option *o = v->option;
    const key *k = key_named(o->section, o->key);
    return setting_read(k, &(setting_line){.found = true, .key_at = v->at.at, .value = v->at}, into);
}

static bool taken(value *v, void *into)
{
    const char *text = v->at.at;
    switch (v->option->kind) {
    case OPTION_FLAG:
        *(bool *)into = true;
        return true;
    case OPTION_FILE:
        *(const char **)into = text;
        return true;
    case OPTION_CHOICE:
        *(unsigned *)into = (unsigned)options_place(v->option, text);
        return true;
    case OPTION_COUNT:
        return count_taken(v, into);
    case OPTION_EITHER:
        return either_taken(v, into);
    case OPTION_READ:
        return v->option->read(&v->at, into);
    case OPTION_SETTING:
        return setting_taken(v, into);
    case OPTION_NUMBER:
    case OPTION_QUANTITY:
        break;
    }
    return quantity_taken(v, into);
}

static bool take(const option *o, const char *text, void *record)
{
    value v;
    begin(&v, o, text);
    bool good = taken(&v, (char *)record + o->where);
    if (!good)
        complain(&v);
    messages_free(&v.messages);
    return good;
}

bool options_take(const given *g, void *record)
{
    bool good = true;
    for (size_t i = 0; i < g->command->options_count; i++)
        if (g->values[i] != NULL)
            good = take(&g->command->options[i], g->values[i], record) && good;
    return good;
}
