#include "commands/run/output.h"

#include <math.h>

#include "base/json.h"
#include "base/program.h"
#include "describe/verdict.h"

static const char *cause_word(boil_quiet_cause c)
{
    static const char *const words[] = {
        [BOIL_QUIET_START] = "start", [BOIL_QUIET_LOAD] = "load",     [BOIL_QUIET_WATER] = "water",
        [BOIL_QUIET_HEAT] = "heat",   [BOIL_QUIET_LOSSES] = "losses", [BOIL_QUIET_LIQUID] = "liquid",
        [BOIL_QUIET_SALTS] = "salts"};
    return words[c];
}

static const char *addition_word(boil_action_kind kind)
{
    return kind == BOIL_ACTION_SALTS ? "salts" : kind == BOIL_ACTION_LIQUID ? "liquid" : "water";
}

static const char *unit_word(boil_unit_kind u)
{
    static const char *const words[] = {
        [BOIL_UNIT_TIME] = "s",         [BOIL_UNIT_LENGTH] = "m",      [BOIL_UNIT_MASS] = "kg",
        [BOIL_UNIT_MASS_FLOW] = "kg/s", [BOIL_UNIT_TEMPERATURE] = "K", [BOIL_UNIT_DIFFERENCE] = "K",
        [BOIL_UNIT_POWER] = "W",        [BOIL_UNIT_DENSITY] = "kg/m3", [BOIL_UNIT_RATIO] = "1"};
    return words[u];
}

static void stopped(json *j, const outcome *o)
{
    if (!outcome_stopped(o)) {
        json_null(j, "stopped");
        return;
    }
    json_object(j, "stopped");
    json_number(j, "time_s", o->central.end_s);
    json_text(j, "reason", verdict_stop_reason(o, UNITS_SI).text);
    json_close(j);
}

static void loads(json *j, const boil_history *h)
{
    json_list(j, "loads");
    for (size_t i = 0; i < h->loads_count; i++) {
        const boil_load_result *l = &h->loads[i];
        json_object(j, NULL);
        json_number(j, "time_s", l->time_s);
        json_number(j, "mass_kg", l->mass_kg);
        json_bool(j, "was_quiet", l->was_quiet);
        json_number(j, "boil_lost_s", l->boil_lost_s);
        json_number(j, "recovery_s", l->recovery_s);
        json_number(j, "lowest_temperature_K", l->lowest_temperature_K);
        json_number(j, "hot_s", l->hot_s);
        json_number(j, "lifted_s", l->lifted_s);
        json_number(j, "drag_out_kg", l->drag_out_kg);
        json_close(j);
    }
    json_close(j);
}

static void additions(json *j, const boil_history *h)
{
    json_list(j, "additions");
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        json_object(j, NULL);
        json_number(j, "time_s", a->time_s);
        json_text(j, "kind", addition_word(a->kind));
        json_number(j, "mass_kg", a->mass_kg);
        json_number(j, "over_s", a->over_s);
        json_bool(j, "was_quiet", a->was_quiet);
        json_number(j, "steam_before_kg_s", a->steam_before_kg_s);
        json_number(j, "steam_peak_kg_s", a->steam_peak_kg_s);
        json_number(j, "boil_lost_s", a->boil_lost_s);
        json_number(j, "recovery_s", a->recovery_s);
        json_number(j, "layer_peak_kg", a->layer_peak_kg);
        json_number(j, "level_rise_m", a->level_rise_m);
        json_close(j);
    }
    json_close(j);
}

static void quiet(json *j, const boil_history *h)
{
    json_list(j, "quiet");
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        json_object(j, NULL);
        json_number(j, "start_s", q->start_s);
        json_number(j, "end_s", q->end_s);
        json_number(j, "lowest_temperature_K", q->lowest_temperature_K);
        json_text(j, "cause", cause_word(q->cause));
        json_close(j);
    }
    json_close(j);
}

static void findings(json *j, const boil_findings *f)
{
    json_list(j, "findings");
    for (size_t i = 0; i < f->count; i++) {
        const boil_finding *g = &f->list[i];
        json_object(j, NULL);
        json_text(j, "id", g->id);
        json_text(j, "severity", boil_severity_word(g->severity));
        json_number(j, "time_s", g->time_s);
        json_number(j, "value", g->value);
        json_number(j, "limit", g->limit);
        json_text(j, "unit", unit_word(g->unit));
        json_number(j, "needed_W", g->needed_W);
        json_number(j, "needed_kg", g->needed_kg);
        json_number(j, "count", (double)g->count);
        json_text(j, "title", g->title);
        json_text(j, "advice", g->advice);
        json_close(j);
    }
    json_close(j);
}

static void fast(json *j, const outcome *o)
{
    json_object(j, "fast");
    json_number(j, "steam_peak_kg_s", o->fast.summary.steam_peak_kg_s.value);
    json_number(j, "freeboard_min_m", o->fast.summary.freeboard_min_m.value);
    findings(j, &o->possible);
    json_close(j);
}

static void summary(json *j, const boil_summary *s)
{
    json_object(j, "summary");
    json_number(j, "temperature_start_K", s->temperature_start_K);
    json_number(j, "temperature_end_K", s->temperature_end_K);
    json_number(j, "boiling_point_start_K", s->boiling_point_start_K);
    json_number(j, "boiling_point_end_K", s->boiling_point_end_K);
    json_number(j, "salt_fraction_start", s->salt_fraction_start);
    json_number(j, "salt_fraction_end", s->salt_fraction_end);
    json_number(j, "bath_mass_start_kg", s->bath_mass_start_kg);
    json_number(j, "level_max_m", s->level_max_m.value);
    json_number(j, "freeboard_min_m", s->freeboard_min_m.value);
    json_number(j, "steam_peak_kg_s", s->steam_peak_kg_s.value);
    json_number(j, "steam_total_kg", s->steam_total_kg);
    json_number(j, "vented_total_kg", s->vented_total_kg);
    json_number(j, "evaporated_total_kg", s->evaporated_total_kg);
    json_number(j, "water_added_kg", s->water_added_kg);
    json_number(j, "layer_max_kg", s->layer_max_kg.value);
    json_number(j, "time_to_boil_s", s->time_to_boil_s);
    json_number(j, "undissolved_max_kg", s->undissolved_max_kg);
    json_number(j, "bed_max_m", s->bed_max_m);
    json_number(j, "bed_superheat_max_K", s->bed_superheat_max_K.value);
    json_number(j, "crystals_from_K", s->crystals_from_K);
    json_number(j, "crystals_s", s->crystals_s);
    json_number(j, "crystals_max_kg", s->crystals_max_kg);
    json_number(j, "restoring_water_kg", s->restoring_water_kg);
    json_number(j, "restored_level_m", s->restored_level_m);
    json_close(j);
}

static void account(json *j, const boil_history *h)
{
    const boil_summary *s = &h->summary;
    json_object(j, "account");
    json_number(j, "loads", (double)h->loads_count);
    json_number(j, "steel_kg", s->steel_kg);
    json_number(j, "input_J", s->input_total_J);
    json_number(j, "heater_J", s->heater_total_J);
    json_number(j, "vented_kg", s->vented_total_kg);
    json_number(j, "evaporated_kg", s->evaporated_total_kg);
    json_number(j, "layer_boiled_kg", s->layer_boiled_total_kg);
    json_number(j, "water_by_hand_kg", s->water_added_kg);
    json_number(j, "water_by_valve_kg", s->water_controlled_kg);
    json_number(j, "water_by_valve_while_quiet_kg", s->valve_quiet_kg);
    json_number(j, "water_with_parts_kg", s->rinse_added_kg);
    json_number(j, "condensate_kg", s->condensate_kg);
    json_number(j, "salts_kg", s->salts_added_kg);
    json_number(j, "liquid_kg", s->liquid_added_kg);
    json_number(j, "drag_out_kg", s->drag_out_kg);
    json_number(j, "drag_out_salts_kg", s->drag_out_salts_kg);
    json_number(j, "valve_openings", (double)s->valve_openings);
    json_number(j, "valve_open_share", s->valve_open_share);
    json_close(j);
}

static void balance(json *j, const boil_balance *b)
{
    json_object(j, "balance");
    json_number(j, "water", b->water);
    json_number(j, "salts", b->salts);
    json_number(j, "energy", b->energy);
    json_close(j);
}

void run_json(const outcome *o, FILE *to)
{
    json j = json_to(to);
    const boil_history *h = &o->central;
    json_object(&j, NULL);
    json_text(&j, "version", PROGRAM_VERSION);
    json_text(&j, "scenario", o->scenario->path);
    json_text(&j, "title", o->scenario->title);
    json_number(&j, "tolerance", o->tolerance);
    json_number(&j, "end_s", h->end_s);
    stopped(&j, o);
    json_number(&j, "overflow_s", h->summary.overflow_s);
    loads(&j, h);
    additions(&j, h);
    quiet(&j, h);
    findings(&j, &o->found);
    fast(&j, o);
    summary(&j, &h->summary);
    account(&j, h);
    balance(&j, &h->balance);
    json_close(&j);
}
