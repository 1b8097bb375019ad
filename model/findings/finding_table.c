/* finding_table.c -- everything that can be found, a row each. */
#include "findings/finding_parts.h"
#include "findings/findings.h"

const char *const boil_unit_words[BOIL_UNITS] = {
    [BOIL_UNIT_TIME] = "s",         [BOIL_UNIT_LENGTH] = "m",      [BOIL_UNIT_MASS] = "kg",
    [BOIL_UNIT_MASS_FLOW] = "kg/s", [BOIL_UNIT_TEMPERATURE] = "K", [BOIL_UNIT_DIFFERENCE] = "K",
    [BOIL_UNIT_POWER] = "W",        [BOIL_UNIT_DENSITY] = "kg/m3", [BOIL_UNIT_RATIO] = "1"};

/* clang-format off */
static const boil_finding_row rows[] = {
    {"never-boils", "the bath never boils", BOIL_UNIT_POWER, boil_judge_never_boils, false,
     "Add no water; give it more heat, less draught, a lid or insulation before loading.",
     NULL},
    {"boil-never-returns", "the boil does not come back before the end", BOIL_UNIT_TIME, boil_judge_never_returns, false,
     "Add no water; load less at a time, wait longer between loads, or give it more heat.",
     NULL},
    {"boil-lost-long", "boil lost longer than the limit", BOIL_UNIT_TIME, boil_judge_boil_lost, true,
     "Load less at a time, warm the parts in a hot rinse, or raise the heat.",
     NULL},
    {"load-heavy", "load over the rule of thumb for this volume", BOIL_UNIT_DENSITY, boil_judge_load_heavy, false,
     "Split the load: a heavy cold load stops the boil for long.",
     NULL},
    {"load-on-quiet-bath", "load put in before the boil was back", BOIL_UNIT_TIME, boil_judge_load_quiet, false,
     "Wait for a steady boil before the next load.",
     NULL},
    {"load-not-hot", "parts lifted before they were hot through", BOIL_UNIT_TIME, boil_judge_load_cold, false,
     "Leave them in longer: a boil that is back does not show that the steel is hot.",
     NULL},
    {"not-resolved", "a run that it is judged by did not come to its end", BOIL_UNIT_TIME, boil_judge_not_resolved, true,
     "What it would have shown is not known: take the gravest for granted, and change the plan.",
     NULL},
    {"tubes", "tubes or hollow parts", BOIL_UNIT_MASS, boil_judge_tubes, false,
     "Open both ends, drain them, lower them slowly and point them away from people: steam in a bore throws hot caustic.",
     NULL},
    {"water-on-quiet-bath", "water added while the bath does not boil", BOIL_UNIT_MASS, boil_judge_water_quiet, true,
     "Stop the water. It floats and can erupt when the boil returns; add water only while it boils.",
     NULL},
    {"water-layer", "water afloat: freeboard left if it lets go", BOIL_UNIT_LENGTH, boil_judge_layer, true,
     "Stand back, add nothing, keep hands and parts away; let the boil come back slowly at low heat.",
     NULL},
    {"surface-boils", "the surface boils, the bath does not", BOIL_UNIT_TIME, boil_judge_surface_boils, true,
     "Do not take this for the boil: a water layer is boiling on a bath that is still below its own boiling point.",
     NULL},
    {"steam-surge", "surge of steam", BOIL_UNIT_RATIO, boil_judge_surge, true,
     "Add water more slowly, and only into a full boil; keep people away from the rim.",
     NULL},
    {"overflow", "the boiling surface reaches the rim", BOIL_UNIT_LENGTH, boil_judge_overflow, true,
     "Hot caustic leaves the tank: cut the heat early, lower the level, add water more slowly; what follows in this run is "
     "not a prediction.",
     NULL},
    {"overflow-still", "the still surface reaches the rim", BOIL_UNIT_LENGTH, boil_judge_overflow_still, true,
     "The tank is too full for what goes in: bail out liquid into a dry steel vessel before adding anything.",
     NULL},
    {"freeboard-low", "freeboard below the limit", BOIL_UNIT_LENGTH, boil_judge_freeboard, true,
     "Lower the level, load less at a time, or turn the heat down while it swells.",
     NULL},
    {"bath-too-hot", "the bath boils above its band", BOIL_UNIT_TEMPERATURE, boil_judge_too_hot, false,
     "It is too strong: add water slowly, while it boils.",
     NULL},
    {"bath-too-cool", "the bath boils below its band", BOIL_UNIT_TEMPERATURE, boil_judge_too_cool, false,
     "It is too weak: let water boil off, or add salts in small portions.",
     NULL},
    {"heater-uncovered", "the level falls below the top of the heater", BOIL_UNIT_LENGTH, boil_judge_heater_bare, true,
     "Keep the heater covered: a bare one burns out and can ignite what touches it.",
     NULL},
    {"parts-uncovered", "the level falls below the top of the parts", BOIL_UNIT_LENGTH, boil_judge_parts_bare, true,
     "Make up the level before the next load.",
     NULL},
    {"superheat-stored", "stored steam, were a tenth stirred up, would fill", BOIL_UNIT_LENGTH, boil_judge_superheat, false,
     "A deep bath stores heat that a stir or a load sets free at once; a shallow one does not.",
     NULL},
    {"tank-tall", "the bath is deep for its area", BOIL_UNIT_RATIO, boil_judge_tall, false,
     "Steam per area makes tall narrow tanks boil over: give it more area or less heat.",
     NULL},
    {"salt-on-quiet-bath", "dry salt on a bath that neither boils nor is mixed", BOIL_UNIT_MASS, boil_judge_salt_quiet, true,
     "Stop. It sinks, heats and lies hot on the floor; add salt slowly, into a boiling or mixed bath only.",
     NULL},
    {"salt-slug", "slug of dry salt boils up", BOIL_UNIT_LENGTH, boil_judge_salt_slug, true,
     "Sift it in many times more slowly, in small portions, and let each dissolve.",
     NULL},
    {"water-on-dry-salt", "water on dry salt: steam it can give at once", BOIL_UNIT_MASS_FLOW, boil_judge_dry_salt, true,
     "Never water on dry salt: it erupts. Stop and stand back; put water in first, and sift the salt into it, the mixer on.",
     NULL},
    {"salt-bed", "bed of undissolved salt on the floor", BOIL_UNIT_LENGTH, boil_judge_salt_bed, true,
     "Add no more; turn the heat down and the mixer on until it is gone: a heated floor under salt overheats and can throw "
     "the bath out when the bed breaks.",
     NULL},
    {"salt-too-much", "too much salt for the tank", BOIL_UNIT_LENGTH, boil_judge_salt_much, true,
     "The water that brings the boiling point back would not fit: bail out liquid into a dry steel vessel before adding "
     "it.",
     "water to bring the boiling point back:"},
    {"liquid-stops-boil", "liquid stops the boil for longer than the limit", BOIL_UNIT_TIME, boil_judge_liquid_stops, false,
     "Add it in smaller portions, each after the boil is back.",
     "the largest addition that would not:"},
    {"control-hunts", "the automatic water hunts", BOIL_UNIT_RATIO, boil_judge_valve_hunts, false,
     "Use a smaller valve, a wider differential or a quicker thermometer.",
     NULL},
    {"control-cannot-keep-up", "the automatic water cannot keep up", BOIL_UNIT_TEMPERATURE, boil_judge_valve_short, false,
     "Use a larger valve or less heat.",
     NULL},
    {"control-on-quiet-bath", "the valve adds water while the bath does not boil", BOIL_UNIT_MASS, boil_judge_valve_quiet, false,
     "Fit and test the interlock: no boil, no water.",
     NULL},
    {"crystals", "salts crystallise as the bath cools", BOIL_UNIT_TEMPERATURE, boil_judge_crystals, false,
     "Let it cool undisturbed under its lid; expect a crust on floor and surface, and measure nothing until it has "
     "dissolved again.",
     "nitrate and nitrite that fall out:"},
    {"restart-over-crystals", "heat under crystals", BOIL_UNIT_MASS, boil_judge_restart, false,
     "Break the crust before any heat; then heat gently, from the side or the top first: liquid trapped under a crust "
     "overheats and can throw it out without warning.",
     NULL},
};
/* clang-format on */

const boil_finding_row *boil_finding_row_at(size_t index)
{
    return index < sizeof rows / sizeof rows[0] ? &rows[index] : NULL;
}

const char *boil_finding_listed(size_t index, const char **title)
{
    const boil_finding_row *r = boil_finding_row_at(index);
    if (r == NULL)
        return NULL;
    *title = r->title;
    return r->id;
}
