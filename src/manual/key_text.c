#include "key_text.h"

#include <ctype.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "scenario.h"
#include "show.h"

static void add(key_text *t, const char *more)
{
    size_t length = strlen(t->text);
    snprintf(t->text + length, sizeof t->text - length, "%s", more);
}

/* What is to be written ------------------------------------------------------------------------------------------- */

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
    for (size_t i = 0; k->choices[i] != NULL; i++) {
        add(&t, i > 0 ? "|" : "");
        add(&t, k->choices[i]);
    }
    return t;
}

/* NULL: the dimension says it. */
static const char *const kind_forms[] = {
    [KEY_TITLE] = "TEXT",   [KEY_PATH] = "FILE",          [KEY_CLOCK] = "CLOCK",
    [KEY_SPAN] = "CLOCK|TIME", [KEY_FACTOR] = "NUMBER",   [KEY_BLEND] = "PERCENTAGE SALT [, PERCENTAGE SALT]...",
};

static const char *kind_form(key_kind kind)
{
    return (size_t)kind < sizeof kind_forms / sizeof kind_forms[0] ? kind_forms[kind] : NULL;
}

key_text key_form(const key *k)
{
    key_text t = {""};
    if (k->choices != NULL)
        return choices_form(k);
    if (kind_form(k->kind) != NULL)
        add(&t, kind_form(k->kind));
    else
        t = key_dimension_form(k->dimension);
    if (k->kind == KEY_RANGE) {
        add(&t, " to ");
        add(&t, key_dimension_form(k->dimension).text);
    }
    if (k->zero != NULL) {
        add(&t, "|");
        add(&t, k->zero);
    }
    return t;
}

/* Bounds ---------------------------------------------------------------------------------------------------------- */

/* Four significant digits, and all digits of a large whole number. */
static void add_number(key_text *t, double x, const char *name)
{
    char text[80];
    snprintf(text, sizeof text, fabs(x) >= 1000 ? "%.0f%s%s" : "%.4g%s%s", x, name != NULL ? " " : "",
             name != NULL ? name : "");
    add(t, text);
}

/* The bounds again in US units, where those differ from what the table says. */
static void add_us_range(key_text *t, unit_dimension d, const bounds *b)
{
    double low = unit_to_si(d, b->unit, b->low), high = unit_to_si(d, b->unit, b->high);
    bool far = d == DIM_LENGTH && fabs(high) > 30;
    const char *us = far ? "ft" : show_unit(SHOW_US, d);
    if (us == NULL || strcmp(us, b->unit) == 0)
        return;
    add(t, " (");
    add_number(t, unit_from_si(d, us, low), us);
    add(t, " to ");
    add_number(t, unit_from_si(d, us, high), us);
    add(t, ")");
}

key_text key_range_text(unit_dimension d, const bounds *b)
{
    key_text t = {""};
    if (b->low == b->high)
        return t;
    if (d == DIM_TIME && b->unit != NULL) {
        snprintf(t.text, sizeof t.text, "%s to %s", show_span(unit_to_si(d, b->unit, b->low)).text,
                 show_span(unit_to_si(d, b->unit, b->high)).text);
        return t;
    }
    add_number(&t, b->low, b->unit);
    add(&t, " to ");
    add_number(&t, b->high, b->unit);
    if (b->unit != NULL)
        add_us_range(&t, d, b);
    return t;
}

key_text key_bounds(const key *k)
{
    return key_range_text(k->dimension, &k->within);
}

/* Needs ----------------------------------------------------------------------------------------------------------- */

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
        add(&t, done == 0 ? "'" : done + 1 == count ? " and '" : ", '");
        add(&t, key_at(i)->words);
        add(&t, "'");
        done++;
    }
    return t;
}

key_text key_needed(const key *k)
{
    if (k->need == NEED_NOT)
        return (key_text){""};
    if (k->need == NEED_ALWAYS)
        return (key_text){"required"};
    return only_one(k->need);
}

/* Defaults -------------------------------------------------------------------------------------------------------- */

static key_text in_both(unit_dimension d, double si)
{
    key_text t;
    shown us = show_exact(SHOW_US, d, si), metric = show_exact(SHOW_SI, d, si);
    bool same = strcmp(us.text, metric.text) == 0;
    snprintf(t.text, sizeof t.text, same ? "%s" : "%s (%s)", us.text, metric.text);
    return t;
}

static key_text value_text(const key *k, const double *value)
{
    key_text t = {""};
    if (k->choices != NULL)
        add(&t, k->choices[(size_t)value[0]]);
    else if (k->zero != NULL && value[0] == 0)
        add(&t, k->zero);
    else if (k->kind == KEY_CLOCK)
        add(&t, show_clock(value[0], 0).text);
    else if (k->kind == KEY_FACTOR)
        snprintf(t.text, sizeof t.text, "%.4g", value[0]);
    else
        t = in_both(k->dimension, value[0]);
    if (k->kind == KEY_RANGE) {
        add(&t, " to ");
        add(&t, in_both(k->dimension, value[1]).text);
    }
    return t;
}

/* A default outside the key's own bounds is no value but a mark for "none". */
static bool sound(const key *k, double si)
{
    const bounds *b = &k->within;
    if (k->choices != NULL || k->zero != NULL || b->low == b->high)
        return true;
    double low = b->unit != NULL ? unit_to_si(k->dimension, b->unit, b->low) : b->low;
    double high = b->unit != NULL ? unit_to_si(k->dimension, b->unit, b->high) : b->high;
    return si >= low - 1e-9 * fabs(low) && si <= high + 1e-9 * fabs(high);
}

/* What a scenario without this key would take. */
static key_text standard_in(const boil_plant *plant, const key *k)
{
    scenario s = {.plant = *plant, .altitude_m = (double)NAN};
    double value[SETTING_VALUES] = {0};
    s.settings = calloc(key_count(), sizeof *s.settings);
    if (s.settings == NULL)
        return (key_text){""};
    size_t index = key_index(k);
    s.settings[index] = (scenario_setting){.key = k, .state = SETTING_DEFAULT};
    size_t count = scenario_setting_value(&s, index, value);
    free(s.settings);
    return count > 0 && isfinite(value[0]) && sound(k, value[0]) ? value_text(k, value) : (key_text){""};
}

/* The source of heat sets defaults of its own. */
static key_text by_source(const key *k)
{
    const key *heat = key_find("heat", "source", strlen("source"));
    key_text first = {""}, all = {""};
    bool differ = false;
    for (unsigned i = 0; heat->choices[i] != NULL; i++) {
        boil_plant plant = boil_plant_default();
        plant.heater = boil_heater_default((boil_heat_source)i);
        key_text one = standard_in(&plant, k);
        if (i == 0)
            first = one;
        differ = differ || strcmp(one.text, first.text) != 0;
        add(&all, i > 0 ? ", " : "");
        add(&all, one.text);
        add(&all, " with ");
        add(&all, heat->choices[i]);
    }
    return differ && k != heat ? all : first;
}

key_text key_standard(const key *k)
{
    key_text t = {""};
    if (k->otherwise != NULL)
        add(&t, k->otherwise);
    else if (k->need == NEED_NOT && k->kind != KEY_TITLE && k->kind != KEY_PATH && k->kind != KEY_SPAN &&
             k->kind != KEY_BLEND)
        t = by_source(k);
    return t;
}
