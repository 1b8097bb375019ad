#include "base/json_table.h"
#include "base/program.h"
#include "commands/charge/output.h"

/* clang-format off */
static const char *const kinds[] = {
    [BOIL_ACTION_WATER] = "water", [BOIL_ACTION_SALTS] = "salts", [BOIL_ACTION_LIQUID] = "liquid"};

#define RECORD boil_charge_step
static const json_row step[] = {
    JSON_WORDS("kind", RECORD, kind, kinds), SAME(mass_kg), SAME(start_s), SAME(over_s), SAME(wait_s), SAME(heat_J),
    SAME(temperature_K), SAME(hottest_K), SAME(adiabatic_K), SAME(boils_K), SAME(next_below_K), SAME(level_m), JSON_LAST};
#undef RECORD

#define RECORD boil_charge_plan
static const json_row bath[] = {
    SAME(salt_fraction), SAME(boiling_point_K), SAME(mass_kg), NUMBER("water_kg", bath_water_kg),
    NUMBER("salts_kg", bath_salts_kg), SAME(strength_kg_m3), NUMBER("salts_per_water_kg_m3", per_water_kg_m3),
    SAME(cold_level_m), SAME(hot_level_m), SAME(swelled_level_m), BOOL("water_all_put_in", all_put_in), SAME(freeboard_m),
    SAME(crystals_from_K), JSON_LAST};

static const json_row plan[] = {
    SAME(water_kg), SAME(salts_kg), SAME(liquid_kg), NUMBER("liquid_fraction", asked.liquid_fraction),
    NUMBER("liquid_crystals_from_K", liquid_crystals_K), SAME(mixer_W), BOOL("mixer_stated", mixer_stated),
    SAME(mixing_time_s), SAME(heat_J), SAME(heat_J_kg), SAME(filled_s), SAME(filled_K), SAME(adiabatic_K), SAME(heat_up_s),
    SAME(evaporated_kg), SAME(water_to_add_kg), NUMBER("water_rate_kg_s", water_pace.rate_kg_s), SAME(boil_down_s),
    JSON_ITEMS(JSON_ROW, "steps", RECORD, steps, steps_count, boil_charge_step, step),
    {JSON_OBJECT, "bath", 0, bath, 0, 0, NULL, NULL}, JSON_LAST};
#undef RECORD

void charge_json(const charge_answer *a, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", a->scenario->path);
    json_members(&j, plan, &a->plan);
    json_close(&j);
}
/* clang-format on */
