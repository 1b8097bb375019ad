#include "scenario/draft.h"
#include "scenario/scenario.h"

#include <stdio.h>
#include <string.h>

static void require(const draft *d, const key *k)
{
    char what[64];
    size_t i = key_index(k);
    snprintf(what, sizeof what, "'%s'", k->words);
    if (!d->found[i].found && !d->meant[i])
        draft_missing(d, k->section, what);
}

/* The words of a setting among which a case's must be, each a bit, and why a key stands in the wrong case, behind its name. */
static const struct {
    const char *section, *words;
    unsigned among;
    const char *not_here;
} cases[] = {
    [CASE_ANY] = {NULL, NULL, 0, ""},
    [CASE_BOX] = {"tank", "shape", 1u << BOIL_TANK_BOX,
                  "does not belong to this shape of tank; an upright cylinder has a 'diameter'"},
    [CASE_CYLINDER] = {"tank", "shape", 1u << BOIL_TANK_UPRIGHT_CYLINDER,
                       "does not belong to this shape of tank; a box has 'length' and 'width'"},
    [CASE_FUEL] = {"heat", "source", 1u << BOIL_HEAT_GAS | 1u << BOIL_HEAT_ELECTRIC,
                   "does not belong to a steam coil, whose heat follows from its steam, area and coefficient"},
    [CASE_GAS] = {"heat", "source", 1u << BOIL_HEAT_GAS, "belongs to source = gas"},
    [CASE_STEAM] = {"heat", "source", 1u << BOIL_HEAT_STEAM,
                    "belongs to a steam coil; this source has 'input' and 'efficiency'"},
    [CASE_BY_HAND] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_DIAL,
                      "belongs to control = dial; a control burns full fire, and 'heat 60 %' in the schedule takes it over"},
    [CASE_BY_CONTROL] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_THERMOSTAT | 1u << BOIL_HEAT_CONTROL_MODULATING,
                         "belongs to control = thermostat or modulating; that of automatic water stands in [water control]"},
    [CASE_NOT_MODULATING] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_DIAL | 1u << BOIL_HEAT_CONTROL_THERMOSTAT,
                             "belongs to an on/off thermostat; a modulating control has a 'band'"},
    [CASE_MODULATING] = {"heat", "control", 1u << BOIL_HEAT_CONTROL_MODULATING, "belongs to control = modulating"},
    [CASE_RINSE] = {NULL, NULL, 0, "belongs to a section [rinse]"},
    [CASE_PRICES] = {NULL, NULL, 0, "belongs to a section [prices]"},
    [CASE_EXHAUST] = {NULL, NULL, 0, "belongs to a section [exhaust]"},
    [CASE_DESIGN] = {NULL, NULL, 0, "belongs to a section [design]"},
    [CASE_LESSON] = {NULL, NULL, 0, "belongs to a section [lesson]"},
    [CASE_PLAN] = {NULL, NULL, 0, "belongs to a section [plan]"},
    [CASE_CONTROL] = {NULL, NULL, 0, "belongs to a section [water control]"},
    [CASE_ON_OFF] = {"water control", "mode", 1u << BOIL_WATER_CONTROL_NONE | 1u << BOIL_WATER_CONTROL_ON_OFF,
                     "belongs to mode = on/off; a time-proportioned valve has 'band' and 'period'"},
    [CASE_PROPORTIONED] = {"water control", "mode", 1u << BOIL_WATER_CONTROL_NONE | 1u << BOIL_WATER_CONTROL_PROPORTIONED,
                           "belongs to mode = time-proportioned; an on/off valve has a 'differential'"},
};

/* The section that a case is the presence of; NULL: it is none. */
static const char *section_of_case(key_case only)
{
    static const char *const sections[CASE_CONTROL] = {
        [CASE_RINSE] = "rinse",   [CASE_PRICES] = "prices", [CASE_EXHAUST] = "exhaust",
        [CASE_DESIGN] = "design", [CASE_LESSON] = "lesson", [CASE_PLAN] = "plan"};
    return only >= CASE_CONTROL ? "water control" : sections[only];
}

static bool case_holds(const draft *d, key_case only)
{
    unsigned word;
    const char *section = section_of_case(only);
    if (section != NULL && !draft_has(d, section))
        return false;
    if (cases[only].words == NULL)
        return true;
    memcpy(&word, (const char *)d->out + key_named(cases[only].section, cases[only].words)->where, sizeof word);
    return (cases[only].among >> word & 1) != 0;
}

/* The setting that decides a case was given, but could not be read: nothing is known. */
static bool case_unknown(const draft *d, key_case only)
{
    const setting_line *by = cases[only].words != NULL ? draft_line(d, cases[only].section, cases[only].words) : NULL;
    return by != NULL && by->found && !by->good;
}

/* A key that belongs to some scenarios only: refused elsewhere. */
static void refuse_elsewhere(draft *d, const key *k)
{
    setting_line *line = &d->found[key_index(k)];
    d->out->settings[key_index(k)].state = SETTING_ABSENT;
    if (line->found)
        cursor_error(&line->value, line->key_at, "'%s' %s", k->words, cases[k->only].not_here);
}

/* Of several keys that say the same thing in different ways, one counts. */
static void choose_one(draft *d, key_need need, const char *section, const char *none)
{
    const key *first = NULL, *meant = NULL;
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        setting_line *line = &d->found[i];
        if (k->need != need)
            continue;
        if (d->meant[i])
            meant = k;
        if (line->found && first != NULL)
            cursor_error(&line->value, line->key_at, "'%s' stands beside '%s' of line %zu: give only one of them", k->words,
                         first->words, d->found[key_index(first)].value.line);
        else if (line->found)
            first = k;
    }
    for (size_t i = 0; i < key_count(); i++)
        if (key_at(i)->need == need && !d->found[i].found && (first != NULL || none != NULL))
            d->out->settings[i].state = SETTING_ABSENT;
    if (first == NULL && meant == NULL && none != NULL)
        draft_missing(d, section, none);
}

/* No salts in the bath, so none need be named. */
static bool is_plain_water(const draft *d)
{
    bool by_amount = draft_line(d, "bath", "salt fraction")->good || draft_line(d, "bath", "strength")->good;
    return by_amount && d->out->plant.charge.value == 0;
}

static void require_salts(draft *d, const key *k)
{
    size_t i = key_index(k);
    if (d->found[i].found || d->meant[i])
        return;
    if (is_plain_water(d))
        d->out->settings[i].state = SETTING_ABSENT;
    else
        draft_missing(d, k->section, "'salts', such as " SCENARIO_SALTS_SUCH_AS);
}

void draft_check_needs(draft *d)
{
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (case_unknown(d, k->only))
            continue;
        if (!case_holds(d, k->only))
            refuse_elsewhere(d, k);
        else if (k->need == NEED_ALWAYS)
            require(d, k);
        else if (k->need == NEED_SALTS)
            require_salts(d, k);
    }
    choose_one(d, NEED_LEVEL, "tank", "'level'");
    choose_one(d, NEED_STRENGTH, "bath", "one of 'boiling point', 'strength' and 'salt fraction'");
    if (case_holds(d, CASE_STEAM))
        choose_one(d, NEED_STEAM, "heat", "one of 'steam temperature' and 'steam pressure'");
    choose_one(d, NEED_PRESSURE, "room", NULL);
    choose_one(d, NEED_FIRE, "heat", NULL);
}
