#include "plan.h"

#include <math.h>
#include <string.h>

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

typedef struct {
    char text[100];
} both;

static both in_brackets(unit_dimension d, double si)
{
    both b;
    snprintf(b.text, sizeof b.text, "%s (%s)", show(SHOW_US, d, si).text, show(SHOW_SI, d, si).text);
    return b;
}

static both poured(double mass_kg, double temperature_K)
{
    both b;
    snprintf(b.text, sizeof b.text, "%.46s at %.46s", in_brackets(DIM_MASS, mass_kg).text,
             in_brackets(DIM_TEMPERATURE, temperature_K).text);
    return b;
}

static void load_details(const boil_load *l, double start_s, double time_s, char *out, size_t size)
{
    char basket[120] = "", drag_out[120] = "";
    bool lifted = isfinite(l->immersed_s);
    if (l->basket_kg > 0)
        snprintf(basket, sizeof basket, ", basket %s", in_brackets(DIM_MASS, l->basket_kg).text);
    if (l->drag_out_kg_m2 >= 0)
        snprintf(drag_out, sizeof drag_out, ", drag-out %s",
                 in_brackets(DIM_MASS, l->drag_out_kg_m2 * boil_load_wetted(l)).text);
    snprintf(out, size, "at %s, %s%s%s%s", in_brackets(DIM_TEMPERATURE, l->temperature_K).text,
             lifted ? "out at " : "in until lifted", lifted ? show_clock(start_s, time_s + l->immersed_s).text : "",
             basket, drag_out);
}

static void salts_details(const scenario *s, const boil_salts_act *a, char *out, size_t size)
{
    int n = snprintf(out, size, "%s", poured(a->mass_kg, a->temperature_K).text);
    if (memcmp(a->blend, s->plant.charge.blend, sizeof a->blend) != 0)
        snprintf(out + n, size - (size_t)n, ", %.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * a->blend[BOIL_NAOH],
                 100 * a->blend[BOIL_NANO3], 100 * a->blend[BOIL_NANO2]);
}

static void act_details(const scenario *s, const boil_act *a, char *out, size_t size)
{
    out[0] = '\0';
    switch (a->kind) {
    case BOIL_ACT_LOAD:
        load_details(&a->is.load, s->start_s, a->time_s, out, size);
        break;
    case BOIL_ACT_WATER:
        snprintf(out, size, "%s", poured(a->is.water.mass_kg, a->is.water.temperature_K).text);
        break;
    case BOIL_ACT_SALTS:
        salts_details(s, &a->is.salts, out, size);
        break;
    case BOIL_ACT_LIQUID:
        snprintf(out, size, "%s, %.1f %% salts", poured(a->is.liquid.mass_kg, a->is.liquid.temperature_K).text,
                 100 * a->is.liquid.salt_fraction);
        break;
    case BOIL_ACT_LIFT:
    case BOIL_ACT_HEAT:
    case BOIL_ACT_MIXER:
    case BOIL_ACT_LID:
    case BOIL_ACT_EXHAUST:
        break;
    }
}

static void act_line_print(const scenario *s, size_t index, FILE *to)
{
    const boil_act *a = &s->schedule.acts[index];
    char details[500], line[1000];
    act_details(s, a, details, sizeof details);
    snprintf(line, sizeof line, " %8s  %s  %s", show_clock(s->start_s, a->time_s).text,
             text_fitted(said_of(s, index).text, 34).text, details);
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
