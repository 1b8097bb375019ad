#include "describe/listing.h"

#include <stdio.h>

#include "base/text.h"

static setting_words plain(const char *text)
{
    setting_words w;
    snprintf(w.text, sizeof w.text, "%s", text_plain(text).text);
    return w;
}

static setting_words range(const key *k, const double value[], unit_system s)
{
    setting_words w;
    snprintf(w.text, sizeof w.text, "%.16s to %.24s", format_number(s, k->dimension, value[0]).text,
             format_quantity(s, k->dimension, value[1]).text);
    return w;
}

static setting_words blend(const double value[])
{
    setting_words w;
    snprintf(w.text, sizeof w.text, "%.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * value[BOIL_NAOH],
             100 * value[BOIL_NANO3], 100 * value[BOIL_NANO2]);
    return w;
}

static setting_words factor(double value)
{
    setting_words w;
    snprintf(w.text, sizeof w.text, "%.4g", value);
    return w;
}

/* The day does not begin anew in a span. */
static setting_words number(const key *k, double value, unit_system s)
{
    if (k->zero != NULL && value == 0)
        return plain(k->zero);
    if (k->kind == KEY_CLOCK)
        return plain(format_clock(value, 0).text);
    return plain(format_exact(s, k->dimension, value).text);
}

static setting_words value_words(const key *k, const double value[], unit_system s)
{
    if (k->choices != NULL)
        return plain(k->choices[(size_t)value[0]]);
    return k->kind == KEY_RANGE    ? range(k, value, s)
           : k->kind == KEY_BLEND  ? blend(value)
           : k->kind == KEY_FACTOR ? factor(value[0])
                                   : number(k, value[0], s);
}

/* What holds where no value says so. */
static const char *instead(const scenario *s, const scenario_setting *set)
{
    if (set->state == SETTING_GIVEN)
        return set->given != NULL ? set->given : "";
    if (set->key->kind == KEY_TITLE)
        return s->title;
    return set->key->otherwise != NULL ? set->key->otherwise : "none";
}

setting_words setting_words_of(const scenario *s, size_t index, unit_system system)
{
    double value[SETTING_VALUES];
    const scenario_setting *set = &s->settings[index];
    if (scenario_setting_value(s, index, value) > 0)
        return value_words(set->key, value, system);
    return plain(instead(s, set));
}
