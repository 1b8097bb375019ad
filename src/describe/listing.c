#include "describe/listing.h"

#include <math.h>
#include <string.h>

#include "describe/report.h"
#include "base/memory.h"

/* The day does not begin anew in a span. */
static setting_words value_words(const key *k, const double value[], unit_system s)
{
    setting_words w = {""};
    if (k->choices != NULL)
        TEXT_ADD(w.text, "%s", k->choices[(size_t)value[0]]);
    else if (k->kind == KEY_RANGE)
        TEXT_ADD(w.text, "%.16s to %.24s", format_number(s, k->dimension, value[0]).text,
                 format_quantity(s, k->dimension, value[1]).text);
    else if (k->kind == KEY_BLEND)
        TEXT_ADD(w.text, "%.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * value[BOIL_NAOH], 100 * value[BOIL_NANO3],
                 100 * value[BOIL_NANO2]);
    else if (k->kind == KEY_FACTOR || k->kind == KEY_WHOLE)
        TEXT_ADD(w.text, "%.4g", value[0]);
    else if (k->kind == KEY_TURNDOWN)
        TEXT_ADD(w.text, "%.4g to 1", value[0]);
    else if (k->zero != NULL && value[0] == 0)
        TEXT_ADD(w.text, "%s", k->zero);
    else
        TEXT_ADD(w.text, "%s",
                 (k->kind == KEY_CLOCK ? format_clock(value[0], 0) : format_exact(s, k->dimension, value[0])).text);
    return w;
}

/* What holds where no value says so. */
static const char *instead(const scenario *s, const scenario_setting *set)
{
    if (set->state == SETTING_GIVEN)
        return set->given != NULL ? set->given : "";
    if (set->key->otherwise != NULL)
        return set->key->otherwise;
    return set->key->kind == KEY_TITLE ? s->title : "none";
}

setting_words setting_words_of(const scenario *s, size_t index, unit_system system)
{
    double value[SETTING_VALUES];
    setting_words w = {""};
    const scenario_setting *set = &s->settings[index];
    if (scenario_setting_value(s, index, value) > 0)
        return value_words(set->key, value, system);
    TEXT_ADD(w.text, "%s", text_plain(instead(s, set)).text);
    return w;
}

#define VALUES_AT 21 /* columns: where the first value begins */

static int columns_of(const char *text)
{
    return (int)text_characters(text, text + strlen(text));
}

/* Behind the values where it has room, else below them. */
static void noted_line(FILE *to, const char *values, const char *note)
{
    char line[1300];
    snprintf(line, sizeof line, "%s %s", values, note);
    bool fits = columns_of(line) <= REPORT_WIDTH || note[0] == '\0';
    text_line(to, fits ? line : values);
    if (!fits)
        text_wrapped(to, note, 0, VALUES_AT, REPORT_WIDTH);
}

/* Of settings, which may be ranges, 20 columns, of what is worked out 14. */
static void values_line(FILE *to, const char *name, int width, const char *us, const char *si, const char *note)
{
    char values[1300];
    snprintf(values, sizeof values, " %-19s %-*s %-*s", name, width, us, width, si);
    noted_line(to, values, note);
}

void listing_both(FILE *to, const char *name, const char *us, const char *si, const char *note)
{
    values_line(to, name, 14, us, si, note);
}

void listing_one(FILE *to, const char *name, const char *value, const char *note)
{
    char values[300];
    snprintf(values, sizeof values, " %-19s %-29s", name, value);
    noted_line(to, values, note);
}

/* A value of any length, the same in both systems. */
static void text_value_line(FILE *to, const char *name, const char *value, const char *note)
{
    char values[700];
    if (columns_of(value) > REPORT_WIDTH - VALUES_AT) {
        text_wrapped(to, value, fprintf(to, " %-19s", name), VALUES_AT, REPORT_WIDTH);
        if (note[0] != '\0')
            text_wrapped(to, note, 0, VALUES_AT, REPORT_WIDTH);
        return;
    }
    snprintf(values, sizeof values, " %-19s %-41s", name, value);
    noted_line(to, values, note);
}

void listing_line(FILE *to, const char *name, unit_dimension d, double si, const char *note)
{
    listing_both(to, name, format_exact(UNITS_US, d, si).text, format_exact(UNITS_SI, d, si).text, note);
}

/* One text where both systems say the same. */
static void setting_line_print(const scenario *s, size_t index, FILE *to)
{
    const char *note = s->settings[index].state == SETTING_DEFAULT ? "default" : "", *name = s->settings[index].key->words;
    setting_words us = setting_words_of(s, index, UNITS_US), si = setting_words_of(s, index, UNITS_SI);
    if (strcmp(us.text, si.text) != 0)
        values_line(to, name, 20, us.text, si.text, note);
    else
        text_value_line(to, name, us.text, note);
}

static void settings_print(const scenario *s, FILE *to)
{
    const char *section = "";
    for (size_t i = 0; i < key_count(); i++) {
        const key *k = key_at(i);
        if (s->settings[i].state == SETTING_ABSENT)
            continue;
        if (strcmp(k->section, section) != 0)
            fprintf(to, "\n[%s]\n", k->section);
        section = k->section;
        setting_line_print(s, i, to);
    }
}

static void add(listing_charge *p, const char *name, unit_dimension d, double si, const char *note)
{
    p->rows[p->count++] = (listing_row){name, d, si, note};
}

static void add_salts(listing_charge *p, const boil_mixture *m)
{
    static const char *const salts[] = {[BOIL_NAOH] = "of it NaOH", [BOIL_NANO3] = "of it NaNO3", [BOIL_NANO2] = "of it NaNO2"};
    for (int i = 0; i < BOIL_SALTS; i++)
        if (m->salt[i] > 0)
            add(p, salts[i], DIM_MASS, m->salt[i], "");
}

listing_charge listing_charge_of(const scenario *s)
{
    const boil_plant *plant = &s->plant;
    listing_charge p = {.count = 0};
    boil_initial_state c;
    if (!memory_good(boil_plant_initial(plant, &c)))
        return p; /* a scenario that was read has a charge */
    add(&p, "salts by mass", DIM_FRACTION, c.salt_fraction, "");
    add(&p, "boils at", DIM_TEMPERATURE, c.boiling_point_K, "");
    add(&p, "temperature", DIM_TEMPERATURE, c.temperature_K,
        c.temperature_K < c.boiling_point_K - 1e-6 ? "below its boiling point: it starts quiet" : "it starts boiling");
    double crystals_K = boil_solubility_crystals_from(&c.mixture);
    if (!isnan(crystals_K))
        add(&p, "salts fall out at", DIM_TEMPERATURE, crystals_K,
            crystals_K <= c.temperature_K ? "and below"
            : plant->salt_stated          ? "and below: they do at the start"
                                          : "and below: they do at the start; state 'crust' and 'salt on the floor'");
    add(&p, "density", DIM_CONCENTRATION, c.density_kg_m3, "");
    add(&p, "volume of bath", DIM_VOLUME, c.volume_m3, "still");
    add(&p, "mass of bath", DIM_MASS, boil_mixture_mass(&c.mixture), "");
    add(&p, "of it water", DIM_MASS, c.mixture.water, "");
    add_salts(&p, &c.mixture);
    if (plant->afloat.mass_kg > 0)
        add(&p, "water afloat at", DIM_TEMPERATURE, plant->afloat.temperature_K, "");
    if (plant->crust_kg > 0)
        add(&p, "crust of salt", DIM_MASS, plant->crust_kg, "of these salts, over the bath");
    if (plant->bed_kg > 0)
        add(&p, "salt on the floor", DIM_MASS, plant->bed_kg, "of these salts, not dissolved");
    add(&p, "freeboard", DIM_LENGTH, plant->tank.depth_m - plant->tank.level_m, "still, before anything goes in");
    if (plant->heater.source == BOIL_HEAT_STEAM)
        add(&p, "steam in the coil", DIM_TEMPERATURE, plant->heater.steam_K, "");
    add(&p, "heat to the tank", DIM_POWER, boil_heater_output(&plant->heater, plant->heater.dial, c.boiling_point_K), "steady");
    add(&p, "heaviest usual load", DIM_MASS, plant->limits.load_per_volume_kg_m3 * c.volume_m3, "at that limit");
    return p;
}

static void charge_print(const scenario *s, FILE *to)
{
    listing_charge p = listing_charge_of(s);
    if (p.count > 0)
        fputs("\nWhat that comes to\n", to);
    for (size_t i = 0; i < p.count; i++)
        listing_line(to, p.rows[i].name, p.rows[i].dimension, p.rows[i].si, p.rows[i].note);
}

#define ACTS_AT 11     /* columns: where an act begins */
#define ACT_COLUMNS 34 /* of its words, where what else there is to know of it stands on the same line */

static void action_line_print(const scenario *s, size_t index, FILE *to)
{
    action_name name = action_name_of(s, index);
    action_text details = action_details(s, index, ACTION_BOTH);
    formatted_text clock = format_clock_exact(s->start_s, s->schedule.actions[index].time_s);
    bool one_line =
        columns_of(name.text) <= ACT_COLUMNS && ACTS_AT + ACT_COLUMNS + 2 + columns_of(details.text) <= REPORT_WIDTH;
    if (one_line && details.text[0] != '\0') {
        fprintf(to, " %8s  %s  %s\n", clock.text, text_fitted(name.text, ACT_COLUMNS).text, details.text);
        return;
    }
    text_wrapped(to, text_plain(name.text).text, fprintf(to, " %8s", clock.text), ACTS_AT, REPORT_WIDTH);
    if (details.text[0] != '\0')
        text_wrapped(to, details.text, 0, ACTS_AT + 2, REPORT_WIDTH);
}

static void actions_print(const scenario *s, FILE *to)
{
    size_t count = s->schedule.count, listed = count < PLAN_ACTIONS_MAX ? count : PLAN_ACTIONS_MAX;
    for (size_t i = 0; i < listed; i++)
        action_line_print(s, i, to);
    if (count > listed)
        fprintf(to, " ... and %s more, the last at %s\n", format_count(count - listed, "act", "acts").text,
                format_clock(s->start_s, s->schedule.actions[count - 1].time_s).text);
    if (count == 0)
        fputs(" nothing\n", to);
}

static void breaks_print(const scenario *s, FILE *to)
{
    if (s->schedule.breaks_count > 0)
        fputs("\n[breaks]\n", to);
    for (size_t i = 0; i < s->schedule.breaks_count; i++)
        text_value_line(to, scenario_break_time(s, i).text, s->wording.breaks[i].text, "");
}

/* Of a lesson: all that is done in each script that does more than [schedule]. */
static void scripts_print(const scenario *s, FILE *to)
{
    for (size_t i = 0; i < LESSON_SCRIPTS; i++) {
        scenario script = scenario_with(s, &s->scripts[i]);
        if (script.schedule.count <= s->schedule.count)
            continue;
        fprintf(to, "\nWhat is done in [%s]\n", lesson_script_words[i]);
        actions_print(&script, to);
    }
}

static void questions_print(const scenario *s, FILE *to)
{
    const lesson *l = &s->lesson;
    for (size_t i = 0; i < l->stops_count; i++) {
        fputs("\nWhat is asked\n", to);
        text_wrapped(to, text_plain(l->stops[i].asks).text,
                     fprintf(to, " %8s", format_clock_exact(s->start_s, l->stops[i].at_s).text), ACTS_AT, REPORT_WIDTH);
        for (size_t k = 0; k < l->choices_count; k++)
            if (l->choices[k].stop == i)
                text_wrapped(to, text_plain(l->choices[k].says).text, fprintf(to, " %8zu", k + 1), ACTS_AT, REPORT_WIDTH);
    }
}

void listing_print(const scenario *s, FILE *to)
{
    settings_print(s, to);
    breaks_print(s, to);
    charge_print(s, to);
    fputs("\nWhat is done\n", to);
    actions_print(s, to);
    scripts_print(s, to);
    questions_print(s, to);
}
