#include "cli/options.h"

#include <stdarg.h>
#include <string.h>

#include "base/words.h"

typedef struct {
    const command *command;
    int count, at;
    char *const *words;
    given *given;
    options_problem *problem;
} reading;

__attribute__((format(printf, 2, 3))) static bool wrong(reading *r, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    vsnprintf(r->problem->text, sizeof r->problem->text, format, values);
    va_end(values);
    return false;
}

static words_quote quoted(const char *text)
{
    return words_quoted(text, strlen(text));
}

static bool unknown(reading *r, const char *word, size_t length)
{
    size_t dashes = strspn(word, "-");
    words_nearest near = words_near(word + dashes, length > dashes ? length - dashes : 0);
    for (size_t i = 0; i < r->command->options_count; i++)
        words_consider(&near, r->command->options[i].name);
    words_consider(&near, "help");
    if (near.word == NULL)
        return wrong(r, "unknown option '%s'", words_quoted(word, length).text);
    return wrong(r, "unknown option '%s'; did you mean '--%s'?", words_quoted(word, length).text, near.word);
}

static bool is_name(const char *name, const char *text, size_t length)
{
    return strlen(name) == length && memcmp(name, text, length) == 0;
}

int options_place(const option *o, const char *word)
{
    const size_t length = strlen(word);
    const char *at = o->value;
    for (int place = 0;; place++) {
        size_t n = strcspn(at, "|");
        if (n == length && memcmp(at, word, length) == 0)
            return place;
        if (at[n] == '\0')
            return -1;
        at += n + 1;
    }
}

/* The value of an option: after its "=", or the next word. An option never takes another option for its value. */
static bool value_read(reading *r, const option *o, const char *joined, const char **value)
{
    *value = joined;
    if (o->kind == OPTION_FLAG) {
        *value = "";
        return joined == NULL || wrong(r, "option '--%s' takes no value", o->name);
    }
    if (joined == NULL && r->at < r->count && strncmp(r->words[r->at], "--", 2) != 0)
        *value = r->words[r->at++];
    if (*value == NULL || **value == '\0')
        return wrong(r, "option '--%s' needs a value: %s", o->name, o->value);
    return o->kind != OPTION_CHOICE || options_place(o, *value) >= 0 ||
           wrong(r, "option '--%s' must be one of %s, got '%s'", o->name, o->value, quoted(*value).text);
}

static bool option_read(reading *r, const char *word)
{
    const char *equals = strchr(word, '=');
    size_t length = equals == NULL ? strlen(word) : (size_t)(equals - word);
    for (size_t i = 0; strncmp(word, "--", 2) == 0 && i < r->command->options_count; i++) {
        const option *o = &r->command->options[i];
        if (!is_name(o->name, word + 2, length - 2))
            continue;
        if (r->given->values[i] != NULL)
            return wrong(r, "option '--%s' is given twice", o->name);
        return value_read(r, o, equals == NULL ? NULL : equals + 1, &r->given->values[i]);
    }
    return unknown(r, word, length);
}

static bool argument_read(reading *r, const char *word)
{
    if (r->command->argument == NULL)
        return wrong(r, "'%s' takes options only, got '%s'", r->command->name, quoted(word).text);
    given *g = r->given;
    if (g->argument != NULL && r->command->several == NULL)
        return wrong(r, "'%s' takes one %s, got '%s' as well", r->command->name, r->command->argument, quoted(word).text);
    if (g->arguments_count == OPTIONS_ARGUMENTS_MAX)
        return wrong(r, "'%s' takes at most %zu of %s", r->command->name, OPTIONS_ARGUMENTS_MAX, r->command->argument);
    g->arguments[g->arguments_count++] = word;
    g->argument = g->arguments[0];
    return true;
}

const char *options_arguments(const command *c)
{
    return c->several != NULL ? c->several : c->argument != NULL ? c->argument : "";
}

static bool asks_for_help(int count, char *const words[])
{
    for (int i = 0; i < count && strcmp(words[i], "--") != 0; i++)
        if (strcmp(words[i], "--help") == 0 || strcmp(words[i], "-h") == 0)
            return true;
    return false;
}

bool options_given(const given *g, const char *name)
{
    for (size_t i = 0; i < g->command->options_count; i++)
        if (strcmp(g->command->options[i].name, name) == 0)
            return g->values[i] != NULL;
    return false;
}

options_outcome options_read(const command *c, int count, char *const words[], given *g, options_problem *problem)
{
    reading r = {.command = c, .count = count, .words = words, .given = g, .problem = problem};
    bool options_end = false;
    *g = (given){.command = c};
    problem->text[0] = '\0';
    if (asks_for_help(count, words))
        return OPTIONS_HELP;
    while (r.at < count) {
        const char *word = words[r.at++];
        bool is_option = !options_end && word[0] == '-' && word[1] != '\0';
        if (is_option && strcmp(word, "--") == 0)
            options_end = true;
        else if (!(is_option ? option_read(&r, word) : argument_read(&r, word)))
            return OPTIONS_WRONG;
    }
    bool without = c->without != NULL && options_given(g, c->without);
    if (c->argument != NULL && g->argument == NULL && !without) {
        wrong(&r, "'%s' needs a %s%s%s", c->name, c->argument, c->without != NULL ? ", or --" : "",
              c->without != NULL ? c->without : "");
        return OPTIONS_WRONG;
    }
    return OPTIONS_READ;
}

option_expects options_expects(const option *o)
{
    return o->kind == OPTION_FLAG     ? EXPECTS_NOTHING
           : o->kind == OPTION_CHOICE ? EXPECTS_WORDS
           : o->kind == OPTION_FILE   ? EXPECTS_FILE
                                      : EXPECTS_TEXT;
}

void options_choice(const option *o, const char *before, const char *behind, FILE *to)
{
    fputs(before, to);
    for (const char *at = o->value; *at != '\0'; at++)
        fputc(*at == '|' ? ' ' : *at, to);
    fputs(behind, to);
}
