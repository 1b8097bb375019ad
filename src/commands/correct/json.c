#include "base/json.h"
#include "base/program.h"
#include "commands/correct/text.h"

static void amounts(json *j, const char *name, const boil_correct_amounts *m)
{
    json_object(j, name);
    json_number(j, "water_kg", m->water_kg);
    json_number(j, "salts_kg", m->salts_kg);
    json_number(j, "liquid_kg", m->liquid_kg);
    json_number(j, "level_m", m->level_m);
    json_close(j);
}

static void step(json *j, const char *name, const boil_correct_step *s)
{
    if (!(s->mass_kg > 0)) {
        json_null(j, name);
        return;
    }
    json_object(j, name);
    json_number(j, "mass_kg", s->mass_kg);
    json_number(j, "start_s", s->start_s);
    json_number(j, "over_s", s->over_s);
    json_number(j, "rate_kg_s", s->pace.rate_kg_s);
    json_text(j, "limited_by", s->pace.limited_id != NULL ? s->pace.limited_id : s->pace.limited_by);
    json_close(j);
}

static void there(json *j, const boil_correction *p)
{
    json_object(j, "there");
    json_number(j, "boiling_point_K", p->asked.reads_K);
    json_number(j, "uncertainty_K", p->asked.uncertain_K);
    json_number(j, "salt_fraction", p->salt_fraction);
    json_number(j, "salt_fraction_low", p->salt_fraction_low);
    json_number(j, "salt_fraction_high", p->salt_fraction_high);
    json_number(j, "strength_kg_m3", p->strength_kg_m3);
    json_number(j, "mass_kg", p->mass_kg);
    json_number(j, "still_level_m", p->still_level_m);
    json_number(j, "swell_taken_out_m", p->swell_m);
    json_number(j, "freeboard_m", p->freeboard_now_m);
    json_close(j);
}

static void end(json *j, const boil_correction *p)
{
    json_object(j, "end");
    json_number(j, "time_s", p->done_s);
    json_number(j, "boiled_off_kg", p->boiled_off_kg);
    json_number(j, "boiling_point_K", p->end_K);
    json_number(j, "salt_fraction", p->end_fraction);
    json_number(j, "strength_kg_m3", p->end_strength_kg_m3);
    json_number(j, "still_level_m", p->end_still_m);
    json_number(j, "boiling_level_m", p->end_boiling_m);
    json_number(j, "loaded_level_m", p->end_loaded_m);
    json_number(j, "freeboard_min_m", p->freeboard_min_m);
    json_number(j, "freeboard_loaded_m", p->freeboard_loaded_m);
    json_close(j);
}

void correct_json(const correct_answer *a, FILE *to)
{
    static const char *const bails[] = {
        [BOIL_BAIL_NOTHING] = NULL, [BOIL_BAIL_FOR_LOAD] = "next load", [BOIL_BAIL_FOR_POUR] = "addition"};
    const boil_correction *p = &a->plan;
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", a->scenario->path);
    there(&j, p);
    json_number(&j, "set_point_K", p->set_point_K);
    json_number(&j, "wanted_level_m", p->wanted_level_m);
    json_number(&j, "most_level_m", p->most_level_m);
    json_text(&j, "bail_for", bails[p->bail]);
    json_number(&j, "bail_kg", p->bail_kg);
    json_number(&j, "bail_m3", p->bail_m3);
    json_number(&j, "bail_to_wanted_level_m3", p->bail_to_wanted_m3);
    json_number(&j, "boil_down_s", p->boil_down_s);
    step(&j, "water", &p->water);
    step(&j, "salts", &p->salts);
    step(&j, "liquid", &p->liquid);
    amounts(&j, "amounts", &p->amounts);
    amounts(&j, "amounts_low", &p->amounts_low);
    amounts(&j, "amounts_high", &p->amounts_high);
    end(&j, p);
    json_close(&j);
}
