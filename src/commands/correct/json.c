#include "base/json_table.h"
#include "base/program.h"
#include "commands/correct/output.h"

static const char *const bails[] = {
    [BOIL_BAIL_NOTHING] = NULL, [BOIL_BAIL_FOR_LOAD] = "next load", [BOIL_BAIL_FOR_POUR] = "addition"};

#define RECORD boil_correct_amounts
static const json_row amounts[] = {SAME(water_kg), SAME(salts_kg), SAME(liquid_kg), SAME(level_m), JSON_LAST};
#undef RECORD

#define RECORD boil_correct_step
static void limited_by(json *j, const char *name, const void *record)
{
    const boil_correct_step *s = record;
    json_text(j, name, s->pace.limited_id != NULL ? s->pace.limited_id : s->pace.limited_by);
}

/* clang-format off */
static const json_row step[] = {SAME(mass_kg), SAME(start_s), SAME(over_s), NUMBER("rate_kg_s", pace.rate_kg_s),
                                JSON_GIVEN("limited_by", limited_by), JSON_LAST};
#undef RECORD

#define RECORD boil_correction
static const json_row there[] = {
    NUMBER("boiling_point_K", asked.reads_K), NUMBER("uncertainty_K", asked.uncertain_K), SAME(salt_fraction),
    SAME(salt_fraction_low), SAME(salt_fraction_high), SAME(strength_kg_m3), SAME(mass_kg), SAME(still_level_m),
    NUMBER("swell_taken_out_m", swell_m), NUMBER("freeboard_m", freeboard_now_m), JSON_LAST};

static const json_row end[] = {
    NUMBER("time_s", done_s), SAME(boiled_off_kg), NUMBER("boiling_point_K", end_K), NUMBER("salt_fraction", end_fraction),
    NUMBER("strength_kg_m3", end_strength_kg_m3), NUMBER("still_level_m", end_still_m),
    NUMBER("boiling_level_m", end_boiling_m), NUMBER("loaded_level_m", end_loaded_m), SAME(freeboard_min_m),
    SAME(freeboard_loaded_m), JSON_LAST};

static void steps(json *j, const char *name, const void *record)
{
    const boil_correction *p = record;
    const struct {
        const char *word;
        const boil_correct_step *step;
    } all[] = {{"water", &p->water}, {"salts", &p->salts}, {"liquid", &p->liquid}};
    (void)name;
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        if (all[i].step->mass_kg > 0)
            json_record(j, all[i].word, step, all[i].step);
        else
            json_null(j, all[i].word);
}
/* clang-format on */

/* clang-format off */
static const json_row plan[] = {
    {JSON_OBJECT, "there", 0, there, 0, 0, NULL, NULL}, SAME(set_point_K), SAME(wanted_level_m), SAME(most_level_m),
    JSON_WORDS("bail_for", RECORD, bail, bails), SAME(bail_kg), SAME(bail_m3),
    NUMBER("bail_to_wanted_level_m3", bail_to_wanted_m3), SAME(boil_down_s), JSON_GIVEN(NULL, steps),
    JSON_INSIDE("amounts", RECORD, amounts, amounts), JSON_INSIDE("amounts_low", RECORD, amounts_low, amounts),
    JSON_INSIDE("amounts_high", RECORD, amounts_high, amounts), {JSON_OBJECT, "end", 0, end, 0, 0, NULL, NULL}, JSON_LAST};
#undef RECORD

void correct_json(const correct_answer *a, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", a->scenario->path);
    json_members(&j, plan, &a->plan);
    json_close(&j);
}
/* clang-format on */
