#include "actions/action.h"
#include "commands/charge/output.h"
#include "describe/report.h"

/* clang-format off */
#define RECORD boil_charge_step
static const field step[] = {
    WORD("kind", kind, action_addition_words, "what goes in"), SAME(mass_kg, "how much of it"),
    SAME(start_s, "when its pour begins, from the start of filling"), SAME(over_s, "how long it is poured"),
    SAME(wait_s, "how long to wait after it"), SAME(heat_J, "heat of solution released at 25 degC; negative: taken up"),
    SAME(temperature_K, "of the bath after the wait"), SAME(hottest_K, "highest temperature of the bath on the way"),
    SAME(adiabatic_K, "highest temperature without tank, losses and evaporation"), SAME(boils_K, "boiling point then"),
    SAME(next_below_K, "nothing more goes in while the bath is above that; null: the first thing into an empty tank"),
    SAME(level_m, "level after it"), FIELDS_END};
#undef RECORD

#define RECORD charge_answer
static const field bath[] = {
    NUMBER("salt_fraction", plan.salt_fraction, "salts by mass"),
    NUMBER("boiling_point_K", plan.boiling_point_K, "where it boils"), NUMBER("mass_kg", plan.mass_kg, "mass of bath"),
    NUMBER("water_kg", plan.bath_water_kg, "of it water"), NUMBER("salts_kg", plan.bath_salts_kg, "of it salts"),
    NUMBER("strength_kg_m3", plan.strength_kg_m3, "salts per volume of bath at its boil"),
    NUMBER("salts_per_water_kg_m3", plan.per_water_kg_m3, "salts per volume of the water in it, measured at 20 degC"),
    NUMBER("cold_level_m", plan.cold_level_m, "level at the room's temperature"),
    NUMBER("hot_level_m", plan.hot_level_m, "still level at the boil"),
    NUMBER("swelled_level_m", plan.swelled_level_m, "level boiling, upper estimate"),
    BOOL("water_all_put_in", plan.all_put_in, "all the water in it is put in as such: an empty tank, and dry salts"),
    NUMBER("freeboard_m", plan.freeboard_m, "least, boiling with the heat on full"),
    NUMBER("crystals_from_K", plan.crystals_from_K, "the cold bath crystallises below that; null: not above 0 degC"),
    FIELDS_END};

static const field plan[] = {
    VERSION_FIELD, SCENARIO_FIELD, NUMBER("water_kg", plan.water_kg, "water to go in"),
    NUMBER("salts_kg", plan.salts_kg, "dry salts to go in"),
    NUMBER("liquid_kg", plan.liquid_kg, "ready-mixed liquid to go in"),
    NUMBER("liquid_fraction", plan.asked.liquid_fraction, "salts by mass of that liquid; 0: dry salts"),
    NUMBER("liquid_crystals_from_K", plan.liquid_crystals_K, "that liquid crystallises below; null: not above 0 degC"),
    NUMBER("mixer_W", plan.mixer_W, "power of the mixer that the steps were found with"),
    BOOL("mixer_stated", plan.mixer_stated, "the scenario says that power; else a gentle mixer's is taken"),
    NUMBER("mixing_time_s", plan.mixing_time_s, "time constant of mixing at the end of the steps"),
    NUMBER("heat_J", plan.heat_J, "heat of solution of all steps, released at 25 degC"),
    NUMBER("heat_J_kg", plan.heat_J_kg, "the same per mass of salts; null with liquid, or onto a bath"),
    NUMBER("filled_s", plan.filled_s, "when all is in"),
    NUMBER("filled_K", plan.filled_K, "temperature of the bath then"),
    NUMBER("adiabatic_K", plan.adiabatic_K, "the same without tank, losses and evaporation"),
    NUMBER("heat_up_s", plan.heat_up_s, "from then to the boil, heater on full; null: not within two weeks"),
    NUMBER("evaporated_kg", plan.evaporated_kg, "while filling and heating up"),
    NUMBER("water_to_add_kg", plan.water_to_add_kg, "once it boils; negative: to be boiled down"),
    NUMBER("water_rate_kg_s", plan.water_pace.rate_kg_s,
           "fastest pace for that water; null: none to add, or none does no harm"),
    NUMBER("boil_down_s", plan.boil_down_s, "how long boiling down takes; null: it never is"),
    ARRAY("steps", plan.steps, plan.steps_count, step, "what goes in, in its order"),
    GROUP("bath", bath, "what it comes to"), FIELDS_END};
/* clang-format on */

const document charge_documents[] = {{"--json", "the plan", plan, false}, {"--csv", "the steps, one a line", step, true}, {0}};

void charge_csv(const void *answer, FILE *to)
{
    const charge_answer *a = answer;
    csv_document(to, step, a->plan.steps, a->plan.steps_count, sizeof a->plan.steps[0]);
}
