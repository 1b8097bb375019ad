#include "plan.h"

#include <math.h>
#include <string.h>

#include "act_words.h"
#include "boil.h"
#include "said.h"
#include "setting_words.h"
#include "show.h"
#include "text.h"

/* A name, the same value in US and SI units, and a note. */
static void in_both(FILE *to, const char *name, const char *us, const char *si, const char *note)
{
    char line[1300];
    snprintf(line, sizeof line, " %-19s %-20s %-20s %s", name, us, si, note);
    text_line(to, line);
}

void plan_line(FILE *to, const char *name, unit_dimension d, double si, const char *note)
{
    in_both(to, name, show_exact(SHOW_US, d, si).text, show_exact(SHOW_SI, d, si).text, note);
}

/* Settings -------------------------------------------------------------------------------------------------------- */

/* One text where both systems say the same. */
static void setting_line_print(const scenario *s, size_t index, FILE *to)
{
    const char *note = s->settings[index].state == SETTING_DEFAULT ? "default" : "", *name = s->settings[index].key->words;
    setting_words us = setting_words_of(s, index, SHOW_US), si = setting_words_of(s, index, SHOW_SI);
    char line[700];
    if (strcmp(us.text, si.text) != 0) {
        in_both(to, name, us.text, si.text, note);
        return;
    }
    snprintf(line, sizeof line, " %-19s %-41s %s", name, us.text, note);
    text_line(to, line);
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

/* The charge ------------------------------------------------------------------------------------------------------ */

static void charge_print(const scenario *s, FILE *to)
{
    static const char *const salts[] = {
        [BOIL_NAOH] = "of it NaOH", [BOIL_NANO3] = "of it NaNO3", [BOIL_NANO2] = "of it NaNO2"};
    const boil_plant *p = &s->plant;
    boil_charge_state c;
    if (boil_plant_charge(p, &c) != BOIL_OK)
        return; /* a scenario that was read has a charge */
    fputs("\nWhat that comes to\n", to);
    plan_line(to, "salts by mass", DIM_FRACTION, c.salt_fraction, "");
    plan_line(to, "boils at", DIM_TEMPERATURE, c.boiling_point_K, "");
    plan_line(to, "temperature", DIM_TEMPERATURE, c.temperature_K,
              c.temperature_K < c.boiling_point_K - 1e-6 ? "below its boiling point: it starts quiet"
                                                         : "it starts boiling");
    plan_line(to, "density", DIM_CONCENTRATION, c.density_kg_m3, "");
    plan_line(to, "volume of bath", DIM_VOLUME, c.volume_m3, "still");
    plan_line(to, "mass of bath", DIM_MASS, boil_mixture_mass(&c.mixture), "");
    plan_line(to, "of it water", DIM_MASS, c.mixture.water, "");
    for (int i = 0; i < BOIL_SALTS; i++)
        if (c.mixture.salt[i] > 0)
            plan_line(to, salts[i], DIM_MASS, c.mixture.salt[i], "");
    plan_line(to, "freeboard", DIM_LENGTH, p->tank.depth_m - p->tank.level_m, "still, before anything goes in");
    if (p->heater.source == BOIL_HEAT_STEAM)
        plan_line(to, "steam in the coil", DIM_TEMPERATURE, p->heater.steam_K, "");
    plan_line(to, "heat to the tank", DIM_POWER, boil_heater_output(&p->heater, p->heater.dial, c.boiling_point_K),
              "steady");
    plan_line(to, "heaviest usual load", DIM_MASS, p->limits.load_per_volume_kg_m3 * c.volume_m3, "at that limit");
}

/* The acts -------------------------------------------------------------------------------------------------------- */

static void act_line_print(const scenario *s, size_t index, FILE *to)
{
    char line[1000];
    snprintf(line, sizeof line, " %8s  %s  %s", show_clock(s->start_s, s->schedule.acts[index].time_s).text,
             text_fitted(said_of(s, index).text, 34).text, act_details(s, index, ACT_BOTH).text);
    text_line(to, line);
}

static void acts_print(const scenario *s, FILE *to)
{
    size_t count = s->schedule.count, listed = count < PLAN_ACTS_MAX ? count : PLAN_ACTS_MAX;
    fputs("\nWhat is done\n", to);
    for (size_t i = 0; i < listed; i++)
        act_line_print(s, i, to);
    if (count > listed)
        fprintf(to, " ... and %zu acts more, the last at %s\n", count - listed,
                show_clock(s->start_s, s->schedule.acts[count - 1].time_s).text);
    if (count == 0)
        fputs(" nothing\n", to);
}

void plan_print(const scenario *s, FILE *to)
{
    settings_print(s, to);
    charge_print(s, to);
    acts_print(s, to);
}
