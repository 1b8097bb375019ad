#include <math.h>

#include "base/constants.h"
#include "commands/plan/answer.h"
#include "plan/pours.h"
#include "planning/probe.h"

bool plan_valve_unlocked(const plan_answer *a)
{
    const boil_water_control *c = &a->scenario->plant.control;
    return c->mode != BOIL_WATER_CONTROL_NONE && !c->only_while_boiling;
}

/* That the runs found it shut as a load went in is luck of the second. */
static plan_words valve(const plan_answer *a)
{
    const boil_water_control *c = &a->scenario->plant.control;
    plan_words w = {""};
    if (plan_valve_unlocked(a))
        TEXT_ADD(w.text,
                 "THE VALVE HAS NO INTERLOCK: it may be open as a load goes in, and stays so for %s and more on a quiet bath. "
                 "Shut it "
                 "%s before each load, until the boil is back; better set 'only while boiling = yes'.",
                 format_duration(c->dead_time_s + c->sensor_lag_s).text, format_duration(BOIL_PLAN_GUARD_S).text);
    return w;
}

/* A quarter inch of level is owed at the most before they are put back. */
static double level_m(const plan_answer *a, double salts_kg)
{
    return BOIL_PLAN_ASKS_M * salts_kg / a->planning.bath.owes_kg;
}

static plan_words salts(const plan_answer *a)
{
    const boil_plan_proof *p = a->best;
    const boil_plan_bath *b = &a->planning.bath;
    double given_kg = 0, gone_kg = b->owed_kg + p->drag_out_salts_kg;
    plan_words w = {""};
    for (size_t i = 0; i < p->table.salts_count; i++)
        given_kg += p->table.salts[i].mass_kg;
    bool is_left = level_m(a, gone_kg - given_kg) > BOIL_PLAN_ASKS_M;
    if (!(given_kg > 0) && !is_left)
        return w;
    TEXT_ADD(w.text, "%s %s of salts%s, which lowers the level by %s",
             b->owed_kg > 0 ? "By the reading, and what parts carry out yet," : "Parts carry out",
             format_quantity(a->system, DIM_MASS, gone_kg).text, b->owed_kg > 0 ? " go in the whole shift" : "",
             format_quantity(a->system, DIM_LENGTH, level_m(a, gone_kg)).text);
    if (given_kg > 0)
        TEXT_ADD(w.text, ": %s is sifted back in", format_quantity(a->system, DIM_MASS, given_kg).text);
    else
        TEXT_ADD(w.text, b->sift_kg_s > 0 ? ": there is no time to put them back" : ": at no pace do they go back in well");
    if (is_left)
        TEXT_ADD(w.text, "%s. After the last load read the bath, and make it up as 'correct' says",
                 given_kg > 0 ? ", not all" : "");
    TEXT_ADD(w.text, ".");
    return w;
}

/* A quarter inch misread is as much as is asked to be put back. */
static plan_words read_again(const plan_answer *a)
{
    plan_words w = {""};
    if (a->planning.bath.owed_kg > 0 && a->best->table.salts_count > 0)
        TEXT_ADD(w.text, "Before salts go in read level and boiling point once more: a level read too low asks for salts that "
                         "are not gone.");
    return w;
}

/* Nobody opens a tap for less than the shortest pour. */
static plan_words water_left(const plan_answer *a)
{
    double left_kg = a->best->table.left_kg, flow_kg_s = a->planning.bath.flow_kg_s;
    double water_K = fmax(a->scenario->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    plan_words w = {""};
    if (isfinite(a->problem.end_s) && left_kg > BOIL_PLAN_POUR_LEAST_S * flow_kg_s)
        TEXT_ADD(
            w.text,
            "As the shift ends the bath still lacks %s of water: pour it after the end, only while it boils, or before the "
            "next shift's first load.",
            format_quantity(a->system, DIM_VOLUME, left_kg / boil_water_density(water_K)).text);
    return w;
}

plan_words plan_bath_told(const plan_answer *a, size_t index)
{
    static plan_words (*const all[])(const plan_answer *a) = {valve, salts, read_again, water_left};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        plan_words w = all[i](a);
        if (w.text[0] != '\0' && index-- == 0)
            return w;
    }
    return (plan_words){""};
}

plan_words plan_told(const plan_answer *a, size_t index)
{
    static plan_words (*const all[])(const plan_answer *a, size_t index) = {plan_now_told, plan_bath_told, plan_odds_told};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        for (size_t k = 0;; k++) {
            plan_words w = all[i](a, k);
            if (w.text[0] == '\0')
                break;
            if (index-- == 0)
                return w;
        }
    return (plan_words){""};
}
