#include <math.h>

#include "commands/correct/output.h"
#include "describe/report.h"

static const char *const bails[] = {
    [BOIL_BAIL_NOTHING] = NULL, [BOIL_BAIL_FOR_LOAD] = "next load", [BOIL_BAIL_FOR_POUR] = "addition"};

static const char *limit_of(const boil_correct_step *s)
{
    return s->pace.limited_id != NULL ? s->pace.limited_id : s->pace.limited_by;
}

/* clang-format off */
WRITES(limited_by, boil_correct_step, text, limit_of(r))
TELLS(bool, is_there, boil_correct_step, r->mass_kg > 0)

#define RECORD boil_correct_amounts
static const field amounts[] = {
    SAME(water_kg, "water; negative: to be boiled off"), SAME(salts_kg, "dry salts"),
    SAME(liquid_kg, "ready-mixed liquid"), SAME(level_m, "still level at the set point afterwards"), FIELDS_END};
#undef RECORD

#define RECORD boil_correct_step
static const field step[] = {
    SAME(mass_kg, "how much"), SAME(start_s, "when its pour begins, from boils_again_s"), SAME(over_s, "how long it is poured"),
    NUMBER("rate_kg_s", pace.rate_kg_s, "fastest pace that does no harm"),
    GIVEN(FIELD_TEXT, "limited_by", NULL, limited_by, "the finding, or what else, that a faster pace raises; null: nothing"),
    FIELDS_END};
#undef RECORD

#define RECORD correct_answer
static const field there[] = {
    NUMBER("boiling_point_K", plan.asked.reads_K, "where it boils, as read"),
    NUMBER("uncertainty_K", plan.asked.uncertain_K, "of that reading, either way"),
    NUMBER("salt_fraction", plan.salt_fraction, "salts by mass that this means"),
    NUMBER("salt_fraction_low", plan.salt_fraction_low, "least, by the reading's uncertainty"),
    NUMBER("salt_fraction_high", plan.salt_fraction_high, "most, by the reading's uncertainty"),
    NUMBER("strength_kg_m3", plan.strength_kg_m3, "salts per volume of hot bath"),
    NUMBER("mass_kg", plan.mass_kg, "mass of bath"), NUMBER("still_level_m", plan.still_level_m, "still level"),
    NUMBER("swell_taken_out_m", plan.swell_m, "swell that the level was measured with, upper estimate"),
    NUMBER("freeboard_m", plan.freeboard_now_m, "freeboard as it boils"), FIELDS_END};

static const field end[] = {
    NUMBER("time_s", plan.done_s, "when it is done, from boils_again_s"),
    NUMBER("boiled_off_kg", plan.boiled_off_kg, "boiled and evaporated until then"),
    NUMBER("boiling_point_K", plan.end_K, "where it boils"),
    NUMBER("salt_fraction", plan.end_fraction, "salts by mass"),
    NUMBER("strength_kg_m3", plan.end_strength_kg_m3, "salts per volume of hot bath"),
    NUMBER("still_level_m", plan.end_still_m, "still level"),
    NUMBER("boiling_level_m", plan.end_boiling_m, "level boiling, upper estimate"),
    NUMBER("loaded_level_m", plan.end_loaded_m, "highest as the next load goes in, at the gravest"),
    NUMBER("freeboard_min_m", plan.freeboard_min_m, "least freeboard until then, at the gravest"),
    NUMBER("freeboard_loaded_m", plan.freeboard_loaded_m, "least freeboard as the next load goes in"), FIELDS_END};

static const field plan[] = {
    VERSION_FIELD, SCENARIO_FIELD, GROUP("there", there, "the bath as it is"),
    NUMBER("set_point_K", plan.set_point_K, "where it is wanted to boil"),
    NUMBER("wanted_level_m", plan.wanted_level_m, "still level wanted"),
    NUMBER("most_level_m", plan.most_level_m, "highest still level that keeps the freeboard with the next load in"),
    WORD("bail_for", plan.bail, bails, "why something has to be bailed out first; null: nothing has to"),
    NUMBER("bail_kg", plan.bail_kg, "what to bail out first, heat off, when it has cooled for that"),
    NUMBER("bail_m3", plan.bail_m3, "the same as volume of the cooled bath"),
    NUMBER("cooled_s", plan.cool_s, "when it is bailed out, the heat off from 0"),
    NUMBER("cooled_K", plan.cold_K, "as warm as this then"),
    NUMBER("relight_s", plan.relight_s, "when the heat is on again"),
    NUMBER("boils_again_s", plan.back_s, "when it boils again; 0: nothing has to be bailed out"),
    NUMBER("lowered_from_m", plan.lowered_from_m, "still level given up so that nothing is bailed out; 0: none"),
    NUMBER("bail_to_wanted_level_m3", plan.bail_to_wanted_m3, "to bail out in all so that it ends at the level wanted"),
    NUMBER("boil_down_s", plan.boil_down_s, "how long to boil down first, from boils_again_s"),
    OBJECT_IF("water", plan.water, step, is_there, "the water to pour; null: none"),
    OBJECT_IF("salts", plan.salts, step, is_there, "the dry salts to sift in; null: none"),
    OBJECT_IF("liquid", plan.liquid, step, is_there, "the ready-mixed liquid to run in; null: none"),
    OBJECT("amounts", plan.amounts, amounts, "by balance alone, without what boils off"),
    OBJECT("amounts_low", plan.amounts_low, amounts, "the same at the low end of the reading's uncertainty"),
    OBJECT("amounts_high", plan.amounts_high, amounts, "the same at its high end"), GROUP("end", end, "how it ends"),
    FIELDS_END};
#undef RECORD

/* A line of the CSV. */
typedef struct {
    const char *what, *limited_by;
    double mass_kg, start_s, over_s, rate_kg_s;
} line;

#define RECORD line
static const field line_fields[] = {
    TEXT("step", what, "cool, bail out, heat up, boil down, water, salts or liquid"),
    SAME(mass_kg, "how much; empty where nothing goes in or out"), SAME(start_s, "when it begins"),
    SAME(over_s, "how long it takes"), SAME(rate_kg_s, "fastest pace that does no harm"),
    TEXT("limited_by", limited_by, "the finding, or what else, that a faster pace raises"), FIELDS_END};
/* clang-format on */

const document correct_documents[] = {
    {"--json", "the plan", plan, false}, {"--csv", "the steps, one a line", line_fields, true}, {0}};

static void pour(FILE *to, const char *what, const boil_correct_step *s, double from_s)
{
    line l = {what, limit_of(s), s->mass_kg, from_s + s->start_s, s->over_s, s->pace.rate_kg_s};
    if (is_there(s))
        csv_record(to, line_fields, &l);
}

static void bail(FILE *to, const boil_correction *p)
{
    const double none = (double)NAN;
    const line lines[] = {{"cool", NULL, none, 0, p->cool_s, none},
                          {"bail out", bails[p->bail], p->bail_kg, p->cool_s, p->relight_s - p->cool_s, none},
                          {"heat up", NULL, none, p->relight_s, p->back_s - p->relight_s, none}};
    for (size_t i = 0; i < sizeof lines / sizeof lines[0] && p->bail != BOIL_BAIL_NOTHING; i++)
        csv_record(to, line_fields, &lines[i]);
}

void correct_csv(const void *answer, FILE *to)
{
    const correct_answer *a = answer;
    const boil_correction *p = &a->plan;
    csv_header(to, line_fields);
    bail(to, p);
    if (p->boil_down_s > 0)
        csv_record(to, line_fields, &(line){"boil down", NULL, (double)NAN, p->back_s, p->boil_down_s, (double)NAN});
    pour(to, "water", &p->water, p->back_s);
    pour(to, "salts", &p->salts, p->back_s);
    pour(to, "liquid", &p->liquid, p->back_s);
}
