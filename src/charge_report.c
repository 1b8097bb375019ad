#include "charge_report.h"

#include <math.h>

#include "boil.h"
#include "plan.h"
#include "program.h"
#include "report.h"
#include "text.h"
#include "water.h"

typedef struct {
    const boil_charge_plan *p;
    const charge_answer *a;
    show_system system;
    FILE *to;
} writing;

/* Refusals -------------------------------------------------------------------------------------------------------- */

void charge_refuse_salts_first(const scenario *s, boil_charge_paste paste, show_system system)
{
    program_complain("%s: never water onto dry salts: the first of it makes a solution of %s salts on the spot, at up to %s, "
                     "and what follows meets that and flashes (water boils at %s): the salts cake, trap steam and erupt. "
                     "Water first, then salts onto it, slowly",
                     s->path, show(system, DIM_FRACTION, paste.fraction).text,
                     show(system, DIM_TEMPERATURE, paste.hottest_K).text,
                     show(system, DIM_TEMPERATURE, paste.water_boils_K).text);
}

void charge_refuse(const charge_answer *a, show_system s)
{
    const boil_charge_plan *p = &a->plan;
    const boil_plant *plant = &a->scenario->plant;
    const char *path = a->scenario->path;
    if (p->end == BOIL_CHARGE_NO_BATH)
        program_complain("%s: there is no such liquid bath: beyond what is known of these salts, or crystallised at %s", path,
                         show(s, DIM_TEMPERATURE, p->asked.from_K).text);
    else if (p->end == BOIL_CHARGE_TOO_MUCH)
        program_complain("%s: the bath in the tank holds more salts than are wanted: bail out first, or raise the level", path);
    else if (p->end == BOIL_CHARGE_TOO_HOT)
        program_complain("%s: at %s no water goes onto a bath that does not boil: let it cool below %s, or bring it to the boil "
                         "and use 'correct'",
                         path, show(s, DIM_TEMPERATURE, p->asked.from_K).text,
                         show(s, DIM_TEMPERATURE, BOIL_CHARGE_WATER_HOT_K).text);
    else if (p->end == BOIL_CHARGE_NO_ROOM)
        program_complain("%s: it would stand %s deep, and only %s leaves the freeboard: use stronger liquid, or dry salts, or a "
                         "lower level",
                         path, show(s, DIM_LENGTH, fmax(p->filled_level_m, p->hot_level_m)).text,
                         show(s, DIM_LENGTH, plant->tank.depth_m - plant->limits.freeboard_m).text);
    else
        program_complain("%s: a batch would not be below its boil again within a day", path);
}

/* The steps ------------------------------------------------------------------------------------------------------- */

static const char *step_name(boil_act_kind k)
{
    return k == BOIL_ACT_WATER ? "water" : k == BOIL_ACT_SALTS ? "dry salts" : "liquid";
}

static const char *step_caution(const boil_charge_step *s, size_t index)
{
    if (s->kind == BOIL_ACT_WATER)
        return index == 0 ? "Water before any salt. Heat off, mixer on." : "Stir it in.";
    if (s->kind == BOIL_ACT_LIQUID)
        return "Under the surface, never from above; it heats as it mixes.";
    return s->heat_J > 0 ? "Sift it, a little at a time, never a lump; stand aside of the fumes."
                         : "It cools the bath: do not hurry because of that.";
}

static void line_of_step(const writing *w, size_t i)
{
    const boil_charge_step *s = &w->p->steps[i];
    fprintf(w->to, " [ ] %2zu  %8s  %-10s %10s %9s %9s %9s %9s %8s\n", i + 1, show_clock(0, s->start_s).text,
            step_name(s->kind), show(w->system, DIM_MASS, s->mass_kg).text, show_span(s->over_s).text,
            show_span(s->wait_s).text, show_number(w->system, DIM_TEMPERATURE, s->temperature_K).text,
            show_number(w->system, DIM_TEMPERATURE, s->adiabatic_K).text,
            show_number(w->system, DIM_LENGTH, s->level_m).text);
    text_wrapped(w->to, step_caution(s, i), 0, 19, REPORT_WIDTH);
}

static void last_steps(const writing *w)
{
    const boil_charge_plan *p = w->p;
    size_t n = p->steps_count;
    fprintf(w->to, " [ ] %2zu  %8s  heat on, full\n", n + 1, show_clock(0, p->filled_s).text);
    text_wrapped(w->to, isnan(p->heat_up_s) ? "With this heat it does not boil within two weeks." :
                 "Nothing goes in until it boils: no water, no salts.", 0, 19, REPORT_WIDTH);
    if (isnan(p->heat_up_s))
        return;
    fprintf(w->to, " [ ] %2zu  %8s  it boils", n + 2, show_clock(0, p->filled_s + p->heat_up_s).text);
    if (p->water_to_add_kg >= 0)
        fprintf(w->to, "; add %s of water that evaporated\n", show(w->system, DIM_MASS, p->water_to_add_kg).text);
    else
        fprintf(w->to, "; boil down %s of water%s%s\n", show(w->system, DIM_MASS, -p->water_to_add_kg).text,
                isnan(p->boil_down_s) ? "" : ", about ", isnan(p->boil_down_s) ? "" : show_span(p->boil_down_s).text);
    text_wrapped(w->to, "Water only into the full boil, slowly. Read the boiling point, then 'correct'.", 0, 19, REPORT_WIDTH);
}

static void steps(const writing *w)
{
    fprintf(w->to, "\nSteps, from 0:00 (%s, %s)\n", show_unit(w->system, DIM_TEMPERATURE), show_unit(w->system, DIM_LENGTH));
    fprintf(w->to, "         %8s  %-10s %10s %9s %9s %9s %9s %8s\n", "at", "put in", "how much", "over", "then wait", "bath",
            "bound", "level");
    for (size_t i = 0; i < w->p->steps_count; i++)
        line_of_step(w, i);
    last_steps(w);
}

/* The rest -------------------------------------------------------------------------------------------------------- */

static void amounts(const writing *w)
{
    const boil_charge_plan *p = w->p;
    double water_m3 = p->water_kg / boil_water_density(p->asked.added_K);
    fputs("\nWhat goes in\n", w->to);
    if (p->water_kg > 0) {
        plan_line(w->to, "water", DIM_MASS, p->water_kg, "");
        plan_line(w->to, "", DIM_VOLUME, water_m3, "");
    }
    if (p->water_kg > 0 && !(p->asked.from_level_m > 0))
        plan_line(w->to, "alone it stands", DIM_LENGTH, p->water_level_m, "deep");
    if (p->salts_kg > 0)
        plan_line(w->to, "dry salts", DIM_MASS, p->salts_kg, "");
    if (p->liquid_kg > 0)
        plan_line(w->to, "ready-mixed liquid", DIM_MASS, p->liquid_kg, show(w->system, DIM_FRACTION, p->asked.liquid_fraction).text);
    if (p->steps_count > 0 && p->heat_J > 0)
        plan_line(w->to, "heat set free", DIM_ENERGY, p->heat_J, "all of it, at 25 degC");
    plan_line(w->to, "mixer power", DIM_POWER, p->mixer_W, "the steps count on it");
    fprintf(w->to, " %-19s %s\n", "mixes within", show_span(3 * p->mixing_time_s).text);
}

static void bath(const writing *w)
{
    const boil_charge_plan *p = w->p;
    fputs("\nThe bath that it comes to\n", w->to);
    plan_line(w->to, "boils at", DIM_TEMPERATURE, p->boiling_point_K, "");
    plan_line(w->to, "salts by mass", DIM_FRACTION, p->salt_fraction, "");
    plan_line(w->to, "strength", DIM_CONCENTRATION, p->strength_kg_m3, "salts per volume of hot bath");
    plan_line(w->to, "", DIM_CONCENTRATION, p->per_water_kg_m3, "salts per volume of the water in it, at 20 degC");
    plan_line(w->to, "level cold", DIM_LENGTH, p->cold_level_m, "at the room's temperature");
    plan_line(w->to, "level hot", DIM_LENGTH, p->hot_level_m, "still");
    plan_line(w->to, "level boiling", DIM_LENGTH, p->swelled_level_m, "upper estimate, heat on full");
    plan_line(w->to, "evaporates", DIM_MASS, p->evaporated_kg, "until it boils");
    if (!isnan(p->heat_up_s))
        fprintf(w->to, " %-19s %s\n", "heating up", show_span(p->heat_up_s).text);
    if (!isnan(p->crystals_from_K))
        plan_line(w->to, "crystals below", DIM_TEMPERATURE, p->crystals_from_K, "");
}

static double hottest_bound(const boil_charge_plan *p)
{
    double hottest_K = 0;
    for (size_t i = 0; i < p->steps_count; i++)
        hottest_K = fmax(hottest_K, p->steps[i].adiabatic_K);
    return hottest_K;
}

void charge_report(const charge_answer *a, show_system s, FILE *to)
{
    writing w = {&a->plan, a, s, to};
    const boil_charge_plan *p = w.p;
    shown heating;
    snprintf(heating.text, sizeof heating.text, "%.30s to the boil", show_span(p->heat_up_s).text);
    fprintf(to, "%s to put in over %s, heat off, at most %s; then %s\n", p->liquid_kg > 0 && p->water_kg > 0 ? "Water and liquid" : p->liquid_kg > 0 ? "Liquid" : "Water and salts",
            show_span(p->filled_s).text, show(s, DIM_TEMPERATURE, hottest_bound(p)).text,
            isnan(p->heat_up_s) ? "it never boils" : heating.text);
    fprintf(to, "\n%s\n", text_plain(a->scenario->title).text);
    amounts(&w);
    steps(&w);
    bath(&w);
    fputc('\n', to);
    report_paragraph(to, "Bath: as it is after the wait, with losses. Bound: without losses, tank and evaporation. A batch "
                         "that is late or a bath that is hotter than its line: wait, do not add.");
    report_uncertainty(&a->scenario->plant.charge, s, to);
    report_caution(to);
}
