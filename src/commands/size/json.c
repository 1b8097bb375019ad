#include <math.h>

#include "base/json.h"
#include "base/program.h"
#include "commands/size/output.h"

static const char *found_word(size_found f)
{
    static const char *const words[] = {[SIZE_FOUND] = "found", [SIZE_NONE] = "none", [SIZE_BEYOND] = "out of range"};
    return words[f];
}

static const char *rim_word(size_rim r)
{
    static const char *const words[] = {
        [SIZE_RIM_AT] = "boils over above", [SIZE_RIM_NEVER] = "never", [SIZE_RIM_BEYOND] = "out of range"};
    return words[r];
}

static void end(json *j, const char *name, const size_end *e)
{
    json_object(j, name);
    json_text(j, "rim", size_end_shut(e) ? "boils over" : rim_word(e->rim));
    json_number(j, "from_W", e->from_W);
    json_number(j, "heat_W", e->heat_W);
    json_close(j);
}

static void loads(json *j, const size_answer *a)
{
    json_list(j, "loads");
    for (size_t i = 0; i < a->proof.loads_count; i++) {
        const boil_load_result *r = &a->proof.loads[i];
        json_object(j, NULL);
        json_number(j, "time_s", r->time_s);
        json_number(j, "mass_kg", r->mass_kg);
        json_number(j, "boil_lost_s", r->boil_lost_s);
        json_number(j, "recovery_s", r->recovery_s);
        json_number(j, "recovery_at_99_percent_s", i < a->less.loads_count ? a->less.loads[i].recovery_s : (double)NAN);
        json_close(j);
    }
    json_close(j);
}

static void calm(json *j, const boil_steady_state *c)
{
    json_object(j, "calm");
    json_number(j, "losses_W", c->losses_W);
    json_number(j, "bath_m3", c->volume_m3);
    json_number(j, "boiling_point_K", c->boiling_point_K);
    json_number(j, "steam_kg_s", c->steam_kg_s);
    json_number(j, "evaporated_kg_s", c->evaporated_kg_s);
    json_number(j, "steam_m3_s", c->steam_m3_s);
    json_number(j, "swell_m", c->swell_m);
    json_number(j, "freeboard_m", c->freeboard_m);
    json_close(j);
}

static void around_heat(json *j, const size_answer *a)
{
    json_number(j, "heat_W", a->heat_W);
    json_number(j, "input_W", a->input_W);
    json_number(j, "own_heat_W", a->own_W);
    json_number(j, "heat_per_bath_W_m3", a->heat_W / a->calm.volume_m3);
    json_number(j, "heat_up_s", a->heat_up_s);
    calm(j, &a->calm);
    end(j, "likely", &a->likely);
    end(j, "possible", &a->possible);
    json_bool(j, "never_stops_the_boil", size_answer_never_stops(a));
    json_number(j, "freeboard_min_m", a->proof.summary.freeboard_min_m.value);
    json_number(j, "steam_peak_kg_s", a->proof.summary.steam_peak_kg_s.value);
    loads(j, a);
}

void size_json(const size_answer *a, FILE *to)
{
    json j = json_to(to);
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", a->size->scenario->path);
    json_number(&j, "limit_s", a->size->limit_s);
    json_bool(&j, "one_load", a->size->one_load);
    json_text(&j, "found", found_word(a->found));
    json_bool(&j, "window_shut", size_answer_shut(a));
    if (a->found == SIZE_FOUND)
        around_heat(&j, a);
    json_number(&j, "opening_load_share", a->opening_load);
    json_number(&j, "opening_area_times", a->opening_area);
    json_close(&j);
}
