#include "commands/charge/output.h"

#include <math.h>

#include "analysis/charge_batches.h"
#include "base/program.h"
#include "describe/listing.h"
#include "describe/report.h"

typedef struct {
    const boil_charge_plan *p;
    const charge_answer *a;
    unit_system system;
    FILE *to;
} writing;

#define CAUTIONS_AT 17 /* columns: under what is put in */

static void caution(const writing *w, const char *text)
{
    text_wrapped(w->to, text, 0, CAUTIONS_AT, REPORT_WIDTH);
}

void charge_refuse_unnamed(const scenario *s)
{
    program_complain(
        "%s: [bath] names no salts, so none can go in or be in the tank: write there of which the bath is, such as %s, "
        "and how strong, such as 'boiling point = 285 degF'",
        s->path, SCENARIO_SALTS_SUCH_AS);
}

void charge_refuse_salts_first(const scenario *s, boil_charge_paste paste, unit_system system)
{
    program_complain("%s: never water onto dry salts: the first of it makes a solution of %s salts on the spot, at up to %s, "
                     "and what follows meets that and flashes (water boils at %s): the salts cake, trap steam and erupt. Water "
                     "first, then salts onto it, slowly",
                     s->path, SHOWN(system, FRACTION, paste.fraction), SHOWN(system, TEMPERATURE, paste.hottest_K),
                     SHOWN(system, TEMPERATURE, paste.water_boils_K));
}

static void refuse_there(const charge_answer *a, unit_system s)
{
    const boil_charge_plan *p = &a->plan;
    const char *path = a->scenario->path;
    formatted_text from = format_quantity(s, DIM_TEMPERATURE, p->asked.from_K),
                   limit = format_quantity(s, DIM_TEMPERATURE, p->too_hot_above_K);
    if (p->end == BOIL_CHARGE_CRYSTALS)
        program_complain("%s: the bath in the tank crystallises below %s and is at %s: warm it first, or say how strong and "
                         "warm it is by --from-strength and --from-temperature",
                         path, SHOWN(s, TEMPERATURE, p->from_crystals_K), from.text);
    else if (p->end == BOIL_CHARGE_TOO_MUCH)
        program_complain("%s: the bath in the tank holds more salts than are wanted: bail out %s first, or raise the level",
                         path, SHOWN(s, VOLUME, p->bail_m3));
    else
        program_complain("%s: at %s nothing goes into a bath that does not boil, least of all water: bring it to the boil and "
                         "use 'correct', or let it cool below %s",
                         path, from.text, limit.text);
}

void charge_refuse(const charge_answer *a, unit_system s)
{
    const boil_charge_plan *p = &a->plan;
    const boil_plant *plant = &a->scenario->plant;
    const char *path = a->scenario->path;
    if (p->end == BOIL_CHARGE_NO_BATH)
        program_complain("%s: no such bath: what is wanted, or the bath in the tank, is beyond what is known of these salts",
                         path);
    else if (p->end == BOIL_CHARGE_HOT_LIQUID)
        program_complain(
            "%s: of %.4g %% salts these are liquid only from %s up: the water they meet would flash to steam. Take weaker "
            "liquid by --liquid-strength, or dry salts",
            path, 100 * p->asked.liquid_fraction, SHOWN(s, TEMPERATURE, p->asked.liquid_K));
    else if (p->end == BOIL_CHARGE_NO_FREEBOARD)
        program_complain(
            "%s: it would stand %s deep, and only %s leaves the freeboard: use stronger liquid, or dry salts, or a lower level",
            path, SHOWN(s, LENGTH, fmax(p->filled_level_m, p->hot_level_m)),
            SHOWN(s, LENGTH, plant->tank.depth_m - plant->limits.freeboard_m));
    else if (p->end == BOIL_CHARGE_NO_COOLING)
        program_complain("%s: a batch would not be %s below its boil again within a day", path,
                         SHOWN(s, DIFFERENCE, BOIL_CHARGE_MARGIN_K));
    else if (p->end == BOIL_CHARGE_NO_DISSOLVING)
        program_complain(
            "%s: with the heat off the last batches would not dissolve within a day: the bath is too cold, or stirred too "
            "little, to take so much. Charge to a weaker strength, bring it to the boil, and add the rest by 'correct'",
            path);
    else
        refuse_there(a, s);
}

static const char *step_name(boil_action_kind k)
{
    return k == BOIL_ACTION_WATER ? "water" : k == BOIL_ACTION_SALTS ? "dry salts" : "liquid";
}

static const char *step_caution(const boil_charge_step *s)
{
    if (s->kind == BOIL_ACTION_WATER)
        return isnan(s->next_below_K) ? "Water before any salt. Heat off, mixer on." : "Stirred in, heat off, mixer on.";
    if (s->kind == BOIL_ACTION_LIQUID)
        return isnan(s->next_below_K) ? "Heat off. Let nothing splash."
                                      : "Under the surface, never from above; it heats as it mixes.";
    return s->heat_J > 0 ? "Sift it, never a lump; stand aside of the fumes."
                         : "It cools the bath: do not hurry because of that.";
}

/* "20 lb/min at the most; 33 kBtu set free. Next below 203 degF. " */
static void line_of_caution(const writing *w, const boil_charge_step *s)
{
    char text[400];
    if (isnan(s->next_below_K)) {
        caution(w, step_caution(s));
        return;
    }
    int used = snprintf(text, sizeof text, "%s a minute at the most", SHOWN(w->system, MASS, 60 * s->mass_kg / s->over_s));
    if (s->heat_J != 0)
        used += snprintf(text + used, sizeof text - (size_t)used, "; %s %s", SHOWN(w->system, ENERGY, fabs(s->heat_J)),
                         s->heat_J > 0 ? "set free" : "taken up");
    snprintf(text + used, sizeof text - (size_t)used, "; next below %s. %s", SHOWN(w->system, TEMPERATURE, s->next_below_K),
             step_caution(s));
    caution(w, text);
}

static void line_of_step(const writing *w, size_t i)
{
    const boil_charge_step *s = &w->p->steps[i];
    fprintf(w->to, " [ ] %2zu %7s  %-9s %9s %8s %8s %7s %7s %7s\n", i + 1, format_clock(0, s->start_s).text, step_name(s->kind),
            SHOWN(w->system, MASS, s->mass_kg), format_duration(s->over_s).text, format_duration(s->wait_s).text,
            format_number(w->system, DIM_TEMPERATURE, s->temperature_K).text,
            format_number(w->system, DIM_TEMPERATURE, s->adiabatic_K).text,
            format_number(w->system, DIM_LENGTH, s->level_m).text);
    line_of_caution(w, s);
}

static void heat_on(const writing *w)
{
    const boil_charge_plan *p = w->p;
    const boil_plant *plant = &w->a->scenario->plant;
    fprintf(w->to, " [ ] %2zu %7s  heat on, full\n", p->steps_count + 1, format_clock(0, p->filled_s).text);
    caution(w, isnan(p->heat_up_s) ? "With this heat it does not boil within two weeks."
                                   : "Nothing goes in until it boils: no water, no salts.");
    if (!(p->freeboard_m < plant->limits.freeboard_m))
        return;
    caution(w, p->freeboard_m > 0
                   ? "Boiling on full heat it leaves less than the freeboard: turn the heat down before it boils."
                   : "Boiling on full heat it goes over the rim: turn the heat down before it boils.");
}

static void add_water(const writing *w)
{
    const boil_charge_plan *p = w->p;
    char text[300];
    if (p->water_pace.rate_kg_s > 0)
        snprintf(text, sizeof text,
                 "Only into the full boil: no faster than %s a minute, what boils off meanwhile besides; faster: %s. Stop when "
                 "the boil stops.",
                 SHOWN(w->system, MASS, 60 * p->water_pace.rate_kg_s),
                 p->water_pace.limited_by != NULL ? p->water_pace.limited_by : "nobody pours faster");
    else if (p->water_pace.limited_by != NULL)
        snprintf(text, sizeof text, "On full heat at no pace (%s): less heat, and ask 'correct'.", p->water_pace.limited_by);
    else
        snprintf(text, sizeof text, "Too little to matter.");
    caution(w, text);
}

static void last_steps(const writing *w)
{
    const boil_charge_plan *p = w->p;
    heat_on(w);
    if (isnan(p->heat_up_s))
        return;
    double boils_s = 60 * ceil((p->filled_s + p->heat_up_s) / 60); /* told too early it would be a quiet bath */
    fprintf(w->to, " [ ] %2zu %7s  it boils", p->steps_count + 2, format_clock(0, boils_s).text);
    if (p->water_to_add_kg >= 0) {
        fprintf(w->to, "; add %s of water that evaporated\n", SHOWN(w->system, MASS, p->water_to_add_kg));
        add_water(w);
    } else {
        fprintf(w->to, "; boil down %s of water%s%s\n", SHOWN(w->system, MASS, -p->water_to_add_kg),
                isnan(p->boil_down_s) ? "" : ", about ", isnan(p->boil_down_s) ? "" : format_duration(p->boil_down_s).text);
        caution(w, "Adding nothing; exhaust on. Watch the level.");
    }
    caution(w, "Read the boiling point, then 'correct'.");
}

static void steps(const writing *w)
{
    fprintf(w->to, "\nSteps, from 0:00 (%s, %s)\n", format_unit(w->system, DIM_TEMPERATURE),
            format_unit(w->system, DIM_LENGTH));
    fprintf(w->to, "        %7s  %-9s %9s %8s %8s %7s %7s %7s\n", "at", "put in", "how much", "over", "wait", "bath", "bound",
            "level");
    for (size_t i = 0; i < w->p->steps_count; i++)
        line_of_step(w, i);
    last_steps(w);
}

static void amounts(const writing *w)
{
    const boil_charge_plan *p = w->p;
    double water_m3 = p->water_kg / boil_water_density(p->asked.added_K);
    char liquid[140];
    fputs("\nWhat goes in\n", w->to);
    if (p->steps_count == 0)
        fputs(" nothing\n", w->to);
    if (p->water_kg > 0) {
        listing_line(w->to, "water", DIM_MASS, p->water_kg, "");
        listing_line(w->to, "", DIM_VOLUME, water_m3, "");
    }
    if (p->water_kg > 0 && !(p->asked.from_level_m > 0))
        listing_line(w->to, "alone it stands", DIM_LENGTH, p->water_level_m, "deep");
    if (p->salts_kg > 0)
        listing_line(w->to, "dry salts", DIM_MASS, p->salts_kg, "");
    snprintf(liquid, sizeof liquid, "%s salts, put in at %s", SHOWN(w->system, FRACTION, p->asked.liquid_fraction),
             SHOWN(w->system, TEMPERATURE, p->asked.liquid_K));
    if (p->liquid_kg > 0)
        listing_line(w->to, "ready-mixed liquid", DIM_MASS, p->liquid_kg, liquid);
    if (p->liquid_kg > 0 && !isnan(p->liquid_crystals_K))
        listing_line(w->to, "it crystallises", DIM_TEMPERATURE, p->liquid_crystals_K, "and below: keep drum and hose warmer");
    if (p->heat_J > 0)
        listing_line(w->to, "heat set free", DIM_ENERGY, p->heat_J, "all of it, at 25 degC");
}

static void stirring(const writing *w)
{
    const boil_charge_plan *p = w->p;
    if (p->steps_count < 2 && !(p->asked.from_level_m > 0 && p->steps_count > 0))
        return;
    fputs("\nStirring needed\n", w->to);
    listing_line(w->to, "power to the bath", DIM_POWER, p->mixer_W,
                 p->mixer_stated ? "the scenario's mixer" : "no mixer's power is stated: as of a gentle one");
    listing_one(w->to, "mixed through in", format_duration(3 * p->mixing_time_s).text, "95 %, full tank");
    report_paragraph(
        w->to,
        "Paces and waits count on that, from the first salts to the last.%s Mixing times are known to three either way; "
        "stirred worse, go slower: the pace goes with one over the mixing time.",
        p->mixer_stated ? ""
        : p->mixer_W <= BOIL_CHARGE_BY_HAND_W
            ? " A person with a paddle does it, or gentle air from a steel pipe."
            : " It is more than a person with a paddle gives (some 50 W): a mixer, or gentle air from a steel pipe.");
}

static void bath(const writing *w)
{
    const boil_charge_plan *p = w->p;
    fputs("\nThe bath that it comes to\n", w->to);
    listing_line(w->to, "boils at", DIM_TEMPERATURE, p->boiling_point_K, "");
    listing_line(w->to, "salts by mass", DIM_FRACTION, p->salt_fraction, "");
    listing_line(w->to, "strength", DIM_CONCENTRATION, p->strength_kg_m3, "salts per volume of hot bath");
    listing_line(w->to, "", DIM_CONCENTRATION, p->per_water_kg_m3,
                 p->all_put_in ? "salts per volume of water put in, at 20 degC"
                               : "salts per volume of all the water in it, at 20 degC");
    listing_line(w->to, "level cold", DIM_LENGTH, p->cold_level_m, "at the room's temperature");
    listing_line(w->to, "level hot", DIM_LENGTH, p->hot_level_m, "still");
    listing_line(w->to, "level boiling", DIM_LENGTH, p->swelled_level_m, "upper estimate, heat on full");
    listing_line(w->to, "rim", DIM_LENGTH, w->a->scenario->plant.tank.depth_m, "");
    listing_line(w->to, "evaporates", DIM_MASS, p->evaporated_kg, "until it boils");
    if (!isnan(p->heat_up_s))
        listing_one(w->to, "heating up", format_duration(p->heat_up_s).text, "");
    if (!isnan(p->crystals_from_K))
        listing_line(w->to, "it crystallises", DIM_TEMPERATURE, p->crystals_from_K,
                     "and below: kept warmer, or the salts cake");
}

static double hottest_bound(const boil_charge_plan *p)
{
    double hottest_K = 0;
    for (size_t i = 0; i < p->steps_count; i++)
        hottest_K = fmax(hottest_K, p->steps[i].adiabatic_K);
    return hottest_K;
}

static void verdict(const writing *w)
{
    const boil_charge_plan *p = w->p;
    const char *what = p->liquid_kg > 0  ? (p->water_kg > 0 ? "Water and liquid" : "Liquid")
                       : p->salts_kg > 0 ? (p->water_kg > 0 ? "Water and salts" : "Salts")
                                         : "Water";
    char first[200], then[60];
    if (p->steps_count == 0)
        snprintf(first, sizeof first, "Nothing to put in");
    else
        snprintf(first, sizeof first, "%s to put in over %s, heat off, at most %s", what, format_duration(p->filled_s).text,
                 SHOWN(w->system, TEMPERATURE, hottest_bound(p)));
    if (isnan(p->heat_up_s))
        snprintf(then, sizeof then, "it never boils");
    else
        snprintf(then, sizeof then, "%.40s to the boil", format_duration(p->heat_up_s).text);
    report_verdict(w->to, "%s; then %s", first, then);
}

void charge_report(const void *answer, const output *o, FILE *to)
{
    const charge_answer *a = answer;
    writing w = {&a->plan, a, o->system, to};
    verdict(&w);
    report_title(to, a->scenario->title);
    amounts(&w);
    steps(&w);
    stirring(&w);
    bath(&w);
    fputc('\n', to);
    report_paragraph(to, "Bath: as it is after the wait, with losses. Bound: without losses, tank and evaporation. A batch "
                         "that is late or a bath that is hotter than its line: wait, do not add.");
    report_uncertainty(&a->scenario->plant.charge, o->system, to);
    report_caution(to);
}
