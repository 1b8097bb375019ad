#include "manual/key_text.h"

#include <ctype.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/program.h"
#include "cli/command_scenario.h"
#include "describe/listing.h"

key_text key_dimension_form(unit_dimension d)
{
    key_text t;
    unit_describe(UNIT_OF(d), t.text, sizeof t.text);
    const char *article = strchr(t.text, ' ');
    size_t skip = article != NULL ? (size_t)(article - t.text) + 1 : 0;
    memmove(t.text, t.text + skip, strlen(t.text + skip) + 1);
    for (char *c = t.text; *c != '\0'; c++)
        *c = (char)toupper((unsigned char)*c);
    return t;
}

static key_text choices_form(const key *k)
{
    key_text t = {""};
    for (size_t i = 0; k->choices[i] != NULL; i++)
        TEXT_ADD(t.text, "%s%s", i > 0 ? "|" : "", k->choices[i]);
    return t;
}

/* NULL: the dimension says it. */
static const char *const kind_forms[KEY_SWITCH + 1] = {
    [KEY_TITLE] = "TEXT",
    [KEY_PATH] = "FILE",
    [KEY_CLOCK] = "CLOCK",
    [KEY_SPAN] = "CLOCK|TIME",
    [KEY_WORD] = "WORD",
    [KEY_PRICE] = "NUMBER per UNIT",
    [KEY_FACTOR] = "NUMBER",
    [KEY_WHOLE] = "NUMBER",
    [KEY_TURNDOWN] = "NUMBER to 1",
    [KEY_AFLOAT] = "VOLUME|MASS [at TEMPERATURE]",
    [KEY_BLEND] = "PERCENTAGE SALT [, PERCENTAGE SALT]...",
};

key_text key_form(const key *k)
{
    key_text t = {""};
    if (k->choices != NULL)
        return choices_form(k);
    if (kind_forms[k->kind] != NULL)
        TEXT_ADD(t.text, "%s", kind_forms[k->kind]);
    else
        t = key_dimension_form(k->dimension);
    if (key_has_other(k) && kind_forms[k->kind] == NULL)
        TEXT_ADD(t.text, "|%s", key_dimension_form(k->other).text);
    if (k->kind == KEY_RANGE)
        TEXT_ADD(t.text, " to %s", key_dimension_form(k->dimension).text);
    if (k->zero != NULL)
        TEXT_ADD(t.text, "|%s", k->zero);
    return t;
}

/* Four significant digits, and all digits of a large whole number. */
static void add_number(key_text *t, double x, const char *name)
{
    TEXT_ADD(t->text, fabs(x) >= 1000 ? "%.0f%s%s" : "%.4g%s%s", x, name != NULL ? " " : "", name != NULL ? name : "");
}

static void add_range(key_text *t, double low, double high, const char *name)
{
    add_number(t, low, name);
    TEXT_ADD(t->text, " to ");
    add_number(t, high, name);
}

/* The bounds again in US units, where those differ from what the table says. */
static void add_us_range(key_text *t, unit_dimension d, const bounds *b)
{
    double low = unit_to_si(d, b->unit, b->low), high = unit_to_si(d, b->unit, b->high);
    const char *us = format_unit_for(UNITS_US, d, high);
    if (us == NULL || strcmp(us, b->unit) == 0)
        return;
    TEXT_ADD(t->text, " (");
    add_range(t, unit_from_si(d, us, low), unit_from_si(d, us, high), us);
    TEXT_ADD(t->text, ")");
}

key_text key_range_text(unit_dimension d, const bounds *b)
{
    key_text t = {""};
    if (b->low == b->high)
        return t;
    if (d == DIM_TIME && b->unit != NULL) {
        snprintf(t.text, sizeof t.text, "%s to %s", format_duration(unit_to_si(d, b->unit, b->low)).text,
                 format_duration(unit_to_si(d, b->unit, b->high)).text);
        return t;
    }
    add_range(&t, b->low, b->high, b->unit);
    if (b->unit != NULL)
        add_us_range(&t, d, b);
    return t;
}

key_text key_bounds(const key *k)
{
    key_text t = key_range_text(k->dimension, &k->within);
    if (key_has_other(k))
        TEXT_ADD(t.text, ", or from %s", key_range_text(k->other, &k->within_other).text);
    return t;
}

/* Keys of the same need say the same in different ways. */
static key_text only_one(key_need need)
{
    key_text t = {"give only one of "};
    size_t count = 0, done = 0;
    for (size_t i = 0; i < key_count(); i++)
        count += key_at(i)->need == need;
    for (size_t i = 0; i < key_count(); i++) {
        if (key_at(i)->need != need)
            continue;
        TEXT_ADD(t.text, "%s'%s'", done == 0 ? "" : done + 1 == count ? " and " : ", ", key_at(i)->words);
        done++;
    }
    return t;
}

/* Where a key belongs. A section says its own case. */
static const char *const places[CASE_PROPORTIONED + 1] = {
    [CASE_BOX] = "with a box",
    [CASE_CYLINDER] = "with an upright cylinder",
    [CASE_FUEL] = "with gas or electric heat",
    [CASE_GAS] = "with gas",
    [CASE_STEAM] = "with a steam coil",
    [CASE_BY_HAND] = "with the control dial",
    [CASE_BY_CONTROL] = "with a thermostat or modulating",
    [CASE_NOT_MODULATING] = "with the control dial or thermostat",
    [CASE_MODULATING] = "with a modulating control",
    [CASE_ON_OFF] = "with the mode on/off",
    [CASE_PROPORTIONED] = "with the mode time-proportioned",
};

key_text key_needed(const key *k)
{
    const char *place = places[k->only];
    key_text t = {""};
    if (k->need == NEED_NOT)
        TEXT_ADD(t.text, "%s", place != NULL ? "only " : "");
    else if (k->need == NEED_ALWAYS)
        TEXT_ADD(t.text, "%s", place != NULL ? "required, and only allowed, " : "required");
    else if (k->need == NEED_SALTS)
        TEXT_ADD(t.text, "required, but for plain water%s", place != NULL ? ", " : "");
    else
        TEXT_ADD(t.text, "%s%s", only_one(k->need).text, place != NULL ? ", " : "");
    TEXT_ADD(t.text, "%s", place != NULL ? place : "");
    return t;
}

#define BATH "[bath]\nsalts = 100 % NaOH\nboiling point = 140 degC\n"
#define BOX "[tank]\nlength = 2 m\nwidth = 1 m\ndepth = 1 m\nlevel = 0.5 m\n"
#define CYLINDER "[tank]\nshape = upright cylinder\ndiameter = 1 m\ndepth = 1 m\nlevel = 0.5 m\n"
#define CONTROL "[water control]\nset point = 140 degC\nrate = 1 L/min\n"

/* Between them they leave out every key that may be left out. */
static const struct {
    const char *source, *text;
} shortest[DEFAULTS_CASES] = {
    {"gas", BOX BATH CONTROL "[rinse]\n[heat]\ninput = 100 kW\n[prices]\n[exhaust]\n[design]\n[plan]\n"},
    {"electric", CYLINDER BATH CONTROL "[heat]\nsource = electric\ninput = 100 kW\n"},
    {"steam", BOX BATH CONTROL "mode = time-proportioned\n"
                               "[heat]\nsource = steam\nsteam temperature = 180 degC\ncoil area = 2 m2\n"
                               "control = modulating\nset point = 140 degC\n"},
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
    unlink(path);
    return command_scenario_told(good, &m);
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
