#include "base/json.h"
#include "base/program.h"
#include "commands/charge/text.h"

static void steps(json *j, const boil_charge_plan *p)
{
    json_list(j, "steps");
    for (size_t i = 0; i < p->steps_count; i++) {
        const boil_charge_step *s = &p->steps[i];
        json_object(j, NULL);
        json_text(j, "kind", s->kind == BOIL_ACTION_WATER ? "water" : s->kind == BOIL_ACTION_SALTS ? "salts" : "liquid");
        json_number(j, "mass_kg", s->mass_kg);
        json_number(j, "start_s", s->start_s);
        json_number(j, "over_s", s->over_s);
        json_number(j, "wait_s", s->wait_s);
        json_number(j, "heat_J", s->heat_J);
        json_number(j, "temperature_K", s->temperature_K);
        json_number(j, "hottest_K", s->hottest_K);
        json_number(j, "adiabatic_K", s->adiabatic_K);
        json_number(j, "boils_K", s->boils_K);
        json_number(j, "next_below_K", s->next_below_K);
        json_number(j, "level_m", s->level_m);
        json_close(j);
    }
    json_close(j);
}

static void bath(json *j, const boil_charge_plan *p)
{
    json_object(j, "bath");
    json_number(j, "salt_fraction", p->salt_fraction);
    json_number(j, "boiling_point_K", p->boiling_point_K);
    json_number(j, "mass_kg", p->mass_kg);
    json_number(j, "water_kg", p->bath_water_kg);
    json_number(j, "salts_kg", p->bath_salts_kg);
    json_number(j, "strength_kg_m3", p->strength_kg_m3);
    json_number(j, "salts_per_water_kg_m3", p->per_water_kg_m3);
    json_number(j, "cold_level_m", p->cold_level_m);
    json_number(j, "hot_level_m", p->hot_level_m);
    json_number(j, "swelled_level_m", p->swelled_level_m);
    json_bool(j, "water_all_put_in", p->all_put_in);
    json_number(j, "freeboard_m", p->freeboard_m);
    json_number(j, "crystals_from_K", p->crystals_from_K);
    json_close(j);
}

void charge_json(const charge_answer *a, FILE *to)
{
    const boil_charge_plan *p = &a->plan;
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", a->scenario->path);
    json_number(&j, "water_kg", p->water_kg);
    json_number(&j, "salts_kg", p->salts_kg);
    json_number(&j, "liquid_kg", p->liquid_kg);
    json_number(&j, "liquid_fraction", p->asked.liquid_fraction);
    json_number(&j, "liquid_crystals_from_K", p->liquid_crystals_K);
    json_number(&j, "mixer_W", p->mixer_W);
    json_bool(&j, "mixer_stated", p->mixer_stated);
    json_number(&j, "mixing_time_s", p->mixing_time_s);
    json_number(&j, "heat_J", p->heat_J);
    json_number(&j, "heat_J_kg", p->heat_J_kg);
    json_number(&j, "filled_s", p->filled_s);
    json_number(&j, "filled_K", p->filled_K);
    json_number(&j, "adiabatic_K", p->adiabatic_K);
    json_number(&j, "heat_up_s", p->heat_up_s);
    json_number(&j, "evaporated_kg", p->evaporated_kg);
    json_number(&j, "water_to_add_kg", p->water_to_add_kg);
    json_number(&j, "water_rate_kg_s", p->water_pace.rate_kg_s);
    json_number(&j, "boil_down_s", p->boil_down_s);
    steps(&j, p);
    bath(&j, p);
    json_close(&j);
}
