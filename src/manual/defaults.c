#include "manual/key_text.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/program.h"
#include "base/text.h"
#include "describe/listing.h"

#define BATH "[bath]\nsalts = 100 % NaOH\nboiling point = 140 degC\n"
#define BOX "[tank]\nlength = 2 m\nwidth = 1 m\ndepth = 1 m\nlevel = 0.5 m\n"
#define CYLINDER "[tank]\nshape = upright cylinder\ndiameter = 1 m\ndepth = 1 m\nlevel = 0.5 m\n"
#define CONTROL "[water control]\nset point = 140 degC\nrate = 1 L/min\n"

/* Between them they leave out every key that may be left out. */
static const struct {
    const char *source, *text;
} shortest[DEFAULTS_CASES] = {
    {"gas", BOX BATH CONTROL "[heat]\ninput = 100 kW\n"},
    {"electric", CYLINDER BATH CONTROL "[heat]\nsource = electric\ninput = 100 kW\n"},
    {"steam", BOX BATH CONTROL "mode = time-proportioned\n"
                               "[heat]\nsource = steam\nsteam temperature = 180 degC\ncoil area = 2 m2\n"},
};

/* The reader takes a file's name. */
static bool text_read(const char *text, scenario *out)
{
    char path[] = "/tmp/boilback-XXXXXX";
    messages m;
    int file = mkstemp(path);
    FILE *to = file >= 0 ? fdopen(file, "w") : NULL;
    *out = (scenario){0};
    if (to == NULL)
        return program_complain("could not write to /tmp");
    fputs(text, to);
    fclose(to);
    messages_init(&m);
    bool good = scenario_read(path, out, &m) == BOIL_OK;
    messages_print(&m, stderr, PROGRAM_NAME);
    messages_free(&m);
    unlink(path);
    return good;
}

bool defaults_read(defaults *d)
{
    bool good = true;
    for (size_t i = 0; i < DEFAULTS_CASES; i++)
        good = text_read(shortest[i].text, &d->cases[i]) && good;
    if (!good)
        defaults_free(d);
    return good;
}

void defaults_free(defaults *d)
{
    for (size_t i = 0; i < DEFAULTS_CASES; i++)
        scenario_free(&d->cases[i]);
}

/* Empty where the key was given, or does not belong. */
static key_text one_of(const scenario *s, const key *k)
{
    key_text t = {""};
    size_t index = key_index(k);
    if (s->settings[index].state != SETTING_DEFAULT)
        return t;
    setting_words us = setting_words_of(s, index, UNITS_US), si = setting_words_of(s, index, UNITS_SI);
    bool same = strcmp(us.text, si.text) == 0;
    snprintf(t.text, sizeof t.text, same ? "%.190s" : "%.190s (%.190s)", us.text, si.text);
    return t;
}

/* The defaults of the cases that have one, each with its source. */
static key_text by_source(const defaults *d, const key *k)
{
    key_text all = {""};
    for (size_t i = 0; i < DEFAULTS_CASES; i++) {
        key_text one = one_of(&d->cases[i], k);
        if (one.text[0] == '\0')
            continue;
        TEXT_ADD(all.text, "%s%s with %s", all.text[0] != '\0' ? ", " : "", one.text, shortest[i].source);
    }
    return all;
}

/* Of a title and a span the meaning says what holds. */
key_text defaults_of(const defaults *d, const key *k)
{
    key_text first = {""};
    if (k->kind == KEY_TITLE || k->kind == KEY_SPAN)
        return first;
    for (size_t i = 0; i < DEFAULTS_CASES; i++) {
        key_text one = one_of(&d->cases[i], k);
        if (first.text[0] == '\0')
            first = one;
        else if (one.text[0] != '\0' && strcmp(one.text, first.text) != 0)
            return by_source(d, k);
    }
    return first;
}
