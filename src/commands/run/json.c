#include "actions/action.h"
#include "commands/run/output.h"
#include "describe/costs.h"
#include "describe/report.h"
#include "describe/trace.h"
#include "describe/verdict.h"

static const char *const causes[] = {
    [BOIL_QUIET_START] = "start",   [BOIL_QUIET_LOAD] = "load",     [BOIL_QUIET_WATER] = "water", [BOIL_QUIET_HEAT] = "heat",
    [BOIL_QUIET_LOSSES] = "losses", [BOIL_QUIET_LIQUID] = "liquid", [BOIL_QUIET_SALTS] = "salts"};

static const char *const certainties[] = {[BOIL_POSSIBLE] = "possible", [BOIL_LIKELY] = "likely", [BOIL_CERTAIN] = "certain"};

/* As boil_closures_name has them. */
static const char *const closure_words[] = {
    [BOIL_CLOSURES_LIKELY] = "likely", [BOIL_CLOSURES_LIKELY_WIDE] = "likely-wide", [BOIL_CLOSURES_GRAVE] = "grave",
    [BOIL_CLOSURES_SUDDEN] = "sudden", [BOIL_CLOSURES_SUDDEN_3] = "sudden-3",       [BOIL_CLOSURES_SUDDEN_8] = "sudden-8",
    [BOIL_CLOSURES_MILD] = "mild",     [BOIL_CLOSURES_MILD_8] = "mild-8",           [BOIL_CLOSURES_TRIGGER] = "trigger"};

/* An action of the schedule and what became of it. */
typedef struct {
    double time_s, done_s;
    const char *keyword;
    action_name name;
    boil_act_end end;
} act;

/* clang-format off */
TELLS(bool, is_stopped, carried_out, carried_out_stopped(r))
WRITES(reason, carried_out, text, verdict_stop_reason(r, UNITS_SI).text)

static const char *const act_ends[] = {
    [BOIL_ACT_WAITING] = "waiting", [BOIL_ACT_DONE] = "done", [BOIL_ACT_LAPSED] = "lapsed",
    [BOIL_ACT_TOO_LATE] = "too-late", [BOIL_ACT_NOT_NEEDED] = "not-needed"};

static const char *const take_kinds[] = {[BOIL_ACTION_BAIL] = "bail", [BOIL_ACTION_DRAIN] = "drain"};

static const char *const pour_ends[] = {
    [BOIL_POUR_GOES_ON] = "run-ended", [BOIL_POUR_ALL_IN] = "all-in", [BOIL_POUR_GOAL] = "goal", [BOIL_POUR_TIME] = "time",
    [BOIL_POUR_BOIL_LOST] = "boil-lost", [BOIL_POUR_NEXT] = "next"};

#define RECORD act
static const field act_fields[] = {
    SAME(time_s, "when it was to be done, from the start: of one that waits, the earliest"),
    TEXT("kind", keyword, "its keyword in the scenario: load, lift, water, ..."),
    CHARS("act", name, "what is done, in the words of the scenario"),
    SAME(done_s, "when it was done, or begun; null: it was not"),
    WORD("end", end, act_ends, "waiting: it still was at the end; lapsed: the next of its line came; too-late: its time was over; not-needed: the goal was "
         "reached before"), FIELDS_END};
#undef RECORD

#define RECORD boil_load_result
static const field load[] = {
    COUNT("act", action, "its place among the acts, from 0"), SAME(time_s, "when it goes in, from the start"), SAME(mass_kg, "its parts, without basket"),
    BOOL("was_quiet", was_quiet, "the bath did not boil when it went in"),
    SAME(boil_lost_s, "when the boil stopped; null: it did not"),
    SAME(recovery_s, "from then until it was back; 0: never lost; null: still quiet at the end"),
    SAME(recovery_stored_s, "the same with the floor's heat store full; 0: weakened only"),
    SAME(lowest_temperature_K, "of the bath until then, or until it was lifted"),
    SAME(hot_s, "from entry until its mean is 95 % of the way to the bath; null: never"),
    SAME(lifted_s, "when its lifting began; null: still in at the end"),
    SAME(boil_short_s, "of one whose time counts at the boil: what it lacked of it as it was lifted, or at the end"),
    SAME(drag_out_kg, "bath liquid it carried out; 0 while in"),
    SAME(trapped_kg, "water trapped in its hollows"), SAME(released_s, "when that let go; null: never, or none"),
    SAME(pockets_left_m, "freeboard that would leave, afloat at its boil as the bath's returns; null: none"), FIELDS_END};
#undef RECORD

#define RECORD boil_addition_result
static const field addition[] = {
    COUNT("act", action, "its place among the acts, from 0"), SAME(time_s, "when its pour begins, from the start"), WORD("kind", kind, action_addition_words, "what goes in"),
    SAME(mass_kg, "how much of it"), SAME(over_s, "how long it is poured"),
    WORD("end", end, pour_ends, "why it ended: all-in: its amount, or the most that was to go in; next: the next of its line came"),
    SAME(missed_by_m, "what the level lacked to the goal as it ended; null: reached, or no such goal"),
    SAME(missed_by_K, "what the boiling point lacked to the goal; null likewise"),
    SAME(quiet_poured_kg, "of it while the bath did not boil, ready-mixed liquid apart"),
    BOOL("was_quiet", was_quiet, "the bath did not boil at some moment of the pour"),
    SAME(steam_before_kg_s, "steam as it began"),
    SAME(steam_peak_kg_s, "most steam, until ten minutes after its end or the next addition"),
    BOOL("steam_more_than", steam_more_than, "it was that or more: no law holds so far above what lifts the bath to the rim"),
    SAME(boil_lost_s, "when the boil stopped; null: it did not"),
    SAME(recovery_s, "from then until it was back; 0: never lost; null: still quiet at the end"),
    SAME(recovery_stored_s, "the same with the floor's heat store full; 0: weakened only"),
    SAME(layer_peak_kg, "most water afloat"), SAME(level_rise_m, "highest level less the level as it began"),
    FIELDS_END};
#undef RECORD

#define RECORD boil_take_result
static const field take[] = {
    COUNT("act", action, "its place among the acts, from 0"), SAME(time_s, "when it begins, from the start"),
    WORD("kind", kind, take_kinds, "bail: from the surface; drain: from the floor"),
    SAME(mass_kg, "how much left: liquid, salt not dissolved, water that floated"), SAME(over_s, "how long it took"),
    WORD("end", end, pour_ends, "why it ended"),
    SAME(missed_by_m, "what was lacking to its level as it ended; null: reached, or none"),
    SAME(temperature_K, "of the bath as it began"), BOOL("was_boiling", was_boiling, "the bath boiled as it began"),
    SAME(layer_kg, "water afloat as it began"), FIELDS_END};
#undef RECORD

#define RECORD boil_quiet_result
static const field quiet[] = {
    SAME(start_s, "when the boil stopped"), SAME(end_s, "when it was back; null: never"),
    SAME(lowest_temperature_K, "of the bath meanwhile"), WORD("cause", cause, causes, "what stopped it"),
    SAME(potential_kg, "steam that the water afloat could give"),
    SAME(left_m, "least freeboard that would leave; null: nothing afloat lowers it"), FIELDS_END};
#undef RECORD

#define RECORD boil_finding_grade
static const field grade[] = {
    WORD("severity", severity, document_severities, "signal word"), SAME(from_s, "when it was first so grave; null: never"),
    SAME(limit, "from which value on it is; null: no such grade, or its value alone does not make it"), FIELDS_END};
#undef RECORD

#define RECORD boil_finding
static const field finding[] = {
    TEXT("id", id, "a name that stays"), WORD("severity", severity, document_severities, "signal word"),
    WORD("certainty", certainty, certainties, "certain: all runs of the set show it; likely: the likely one; possible: another"),
    BOOL("before_boil", before_boil, "it may erupt before the bath boils"),
    BOOL("more_than", more_than, "the value is that or more: no law holds so far above what lifts the bath to the rim"),
    SAME(rank, "by which the list is sorted, the gravest first"),
    SAME(time_s, "when it was first so grave; null: it holds for the whole run"),
    SAME(value, "the worst of it, in the unit below"),
    TEXT("value_words", value_words, "what the value is; null: what the title says"), SAME(worst_s, "when; null: it holds for the whole run"),
    SAME(limit, "its limit; null: none"), SAME(outside_s, "time beyond it; null: not a matter of time"), WORD("unit", unit, boil_unit_words, "SI unit of value and limit"),
    SAME(needed_W, "smallest heat that would do, where heat is what lacks"),
    SAME(needed_kg, "largest liquid addition that would not stop the boil, water to restore, or salt that falls out"),
    COUNT("count", count, "spells or times it was found; the worst is told"),
    ARRAY("grades", grades, grades_count, grade, "from when on it had each grade, and from which value on"),
    TEXT("because", because, "id of a finding that causes it; null: none is known"),
    TEXT("title", title, "a few words"), TEXT("advice", advice, "what to do"), FIELDS_END};
#undef RECORD

#define RECORD boil_band
static const field band[] = {
    SAME(likely, "in the likely run"), SAME(low, "the least of all runs"),
    SAME(high, "the most of all runs; null: without end"), FIELDS_END};
#undef RECORD

#define RECORD boil_bands
static const field bands[] = {
    OBJECT("recovery_s", recovery_s, band, "slowest boil back of all loads; low: with the floor's heat store full"),
    OBJECT("steam_peak_kg_s", steam_peak_kg_s, band, "most steam formed in the bath"),
    OBJECT("level_max_m", level_max_m, band, "highest level, swelled"),
    BOOL("steam_more_than", steam_more_than, "read the most of that steam as more than it says"), FIELDS_END};
#undef RECORD

#define RECORD boil_run_of_set
static const field other_run[] = {
    WORD("closures", closures, closure_words, "the uncertain laws it was made with"),
    BOOL("continued", continued, "it went on without actions beyond the schedule"),
    BOOL("usual_drift", usual_drift, "made with the usual drift in place of the scenario's"),
    BOOL("held_back", held_back, "made with the loads held back that go in through water afloat"),
    BOOL("own_elevation", own_elevation, "made with the scenario's own boiling curve, the graver having left what is known"),
    SAME(let_go_s, "when what floats lets go before the bath boils, in a trigger run; null: another run"),
    BOOL("refused", refused, "it could not be carried out"),
    NUMBER("steam_peak_kg_s", history.summary.steam_peak_kg_s.value, "most steam"),
    BOOL("steam_more_than", history.summary.steam_more_than, "it was that or more"),
    NUMBER("freeboard_min_m", history.summary.freeboard_min_m.value, "least freeboard"),
    FIELDS_END};
#undef RECORD

static void acts(json *j, const char *name, const void *record)
{
    const carried_out *o = record;
    const boil_schedule *s = &o->scenario->schedule;
    json_list(j, name);
    for (size_t i = 0; i < s->count; i++) {
        act a = {s->actions[i].time_s, carried_out_done_s(o, i), action_type_of(s->actions[i].kind)->keyword,
                 action_name_of(o->scenario, i), i < o->central.acts_count ? o->central.acts[i].end : BOIL_ACT_WAITING};
        json_record(j, NULL, act_fields, &a);
    }
    json_close(j);
}

#define RECORD carried_out
static const field stopped[] = {
    NUMBER("time_s", central.end_s, "when"), GIVEN(FIELD_TEXT, "reason", NULL, reason, "what left the known range, or that the tank is full"),
    FIELDS_END};

#undef RECORD

#define RECORD boil_summary
static const field summary[] = {
    SAME(temperature_start_K, "of the bath"), SAME(temperature_end_K, "at the end"),
    SAME(boiling_point_start_K, "where it boils"), SAME(boiling_point_end_K, "at the end"),
    SAME(salt_fraction_start, "dissolved salts by mass of solution"), SAME(salt_fraction_end, "at the end"),
    SAME(bath_mass_start_kg, "mass of bath at the start"),
    NUMBER("level_max_m", level_max_m.value, "highest level, swelled"),
    NUMBER("freeboard_min_m", freeboard_min_m.value, "least height up to the rim; negative: over it"),
    NUMBER("steam_peak_kg_s", steam_peak_kg_s.value, "most steam formed in the bath"),
    BOOL("steam_more_than", steam_more_than, "it was that or more"),
    SAME(steam_total_kg, "steam formed in the bath, in all"),
    SAME(vented_total_kg, "steam and evaporation into the room, in all"),
    SAME(evaporated_total_kg, "evaporation from the surface, in all; below zero: from the air"),
    SAME(water_added_kg, "water put in by hand"),
    NUMBER("layer_max_kg", layer_max_kg.value, "most water afloat"),
    SAME(time_to_boil_s, "from a quiet start; null otherwise"), SAME(undissolved_max_kg, "most salt not yet dissolved"),
    SAME(bed_max_m, "thickest bed of it on the floor"),
    NUMBER("bed_superheat_max_K", bed_superheat_max_K.value, "most by which the floor under the bed is above the bath"),
    SAME(crystals_from_K, "the first salt would crystallise below that; null: not above 0 degC"),
    SAME(crystals_s, "when the bath first was below it; null: never"),
    SAME(crystals_max_kg, "nitrate and nitrite that would have fallen out, at the most"),
    SAME(crust_max_kg, "of these, the most that hung over the bath as a crust"),
    NUMBER("crust_superheat_K", crust_superheat_K.value, "furthest over its boil that the bath was under it; null: never"),
    SAME(restoring_water_kg, "water that would bring the boiling point back to where it began"),
    SAME(restored_level_m, "still level then, hot"), FIELDS_END};
#undef RECORD

TELLS(double, cost_of_heat, carried_out, costs_of(r).of[COST_HEAT])
TELLS(double, cost_of_mixer, carried_out, costs_of(r).of[COST_MIXER])
TELLS(double, cost_of_water, carried_out, costs_of(r).of[COST_WATER])
TELLS(double, cost_of_salts, carried_out, costs_of(r).of[COST_SALTS])
TELLS(double, cost_of_liquid, carried_out, costs_of(r).of[COST_LIQUID])
TELLS(double, cost_of_waste, carried_out, costs_of(r).of[COST_WASTE])
TELLS(double, cost_of_labour, carried_out, costs_of(r).of[COST_LABOUR])
TELLS(double, cost_in_all, carried_out, costs_of(r).total)
WRITES(currency, carried_out, text, r->scenario->prices.currency)

#define RECORD carried_out
static const field costs_by_item[] = {
    GIVEN(FIELD_TEXT, "currency", NULL, currency, "as the scenario calls it; null: it does not"),
    WORKED_OUT("heat", cost_of_heat, "fuel, electricity or the steam of a coil; null: no price is stated"),
    WORKED_OUT("mixer", cost_of_mixer, "electricity that turns it"),
    WORKED_OUT("water", cost_of_water, "by hand and by the valve"),
    WORKED_OUT("salts", cost_of_salts, "put in, carried out with the parts, and in what is bailed or drained and not run back"),
    WORKED_OUT("liquid", cost_of_liquid, "ready-mixed liquid put in"),
    WORKED_OUT("waste", cost_of_waste, "getting rid of what is bailed or drained and not run back"),
    WORKED_OUT("labour", cost_of_labour, "of the whole run"),
    WORKED_OUT("total", cost_in_all, "of all that has a price"), FIELDS_END};

static const field account[] = {
    COUNT("loads", central.loads_count, "loads worked"),
    NUMBER("steel_kg", central.summary.steel_kg, "parts worked, without baskets"),
    NUMBER("input_J", central.summary.input_total_J, "fuel or electricity; of a steam coil, heat to the tank"),
    NUMBER("heater_J", central.summary.heater_total_J, "heat to the tank"),
    NUMBER("vented_kg", central.summary.vented_total_kg, "steam and evaporation into the room"),
    NUMBER("evaporated_kg", central.summary.evaporated_total_kg, "of it evaporation from the surface; below zero: from the air"),
    NUMBER("layer_boiled_kg", central.summary.layer_boiled_total_kg, "of it boiled off floating water"),
    NUMBER("water_by_hand_kg", central.summary.water_added_kg, "water put in by hand"),
    NUMBER("water_by_valve_kg", central.summary.water_controlled_kg, "water let in by the automatic valve"),
    NUMBER("water_by_valve_while_quiet_kg", central.summary.valve_quiet_kg, "of it while the bath did not boil"),
    NUMBER("water_with_parts_kg", central.summary.rinse_added_kg, "rinse water that came in with the parts"),
    NUMBER("water_trapped_kg", central.summary.trapped_kg, "water that came in in hollows of parts"),
    NUMBER("water_released_kg", central.summary.released_kg, "of it let go in the bath"),
    NUMBER("condensate_kg", central.summary.condensate_kg, "dripped back from the lid"),
    NUMBER("salts_kg", central.summary.salts_added_kg, "dry salts put in"),
    NUMBER("liquid_kg", central.summary.mixed_kg, "ready-mixed liquid put in"),
    NUMBER("drag_out_kg", central.summary.drag_out_kg, "bath liquid carried out with the parts"),
    NUMBER("drag_out_salts_kg", central.summary.drag_out_salts_kg, "salts in it"),
    NUMBER("taken_kg", central.summary.taken_kg, "bath liquid bailed and drained"),
    NUMBER("taken_salts_kg", central.summary.taken_salts_kg, "salts in it, dissolved and not"),
    NUMBER("returned_kg", central.summary.returned_kg, "of it run back in"),
    NUMBER("waste_salts_kg", central.summary.waste_salts_kg, "salts in what was not"),
    NUMBER("waste_kg", central.summary.waste_kg, "of it not run back in"),
    COUNT("valve_openings", central.summary.valve_openings, "how often the automatic valve opened"),
    NUMBER("valve_open_share", central.summary.valve_open_share, "share of the time it was open"),
    COUNT("fires_lit", central.summary.fires_lit, "how often the control of the heat lit the fire"),
    COUNT("thermostat_stilled", central.summary.thermostat_stilled, "how often it stilled the boil"),
    COUNT("thermostat_met", central.summary.thermostat_met, "of these, what a load or a pour met"),
    NUMBER("high_limit_s", central.summary.high_limit_s, "when the high limit first put the heat out; null: never"),
    GROUP("costs", costs_by_item, "by the prices of the scenario, in its currency"), FIELDS_END};

static const field balance[] = {
    NUMBER("water", central.balance.water.closure, "mass of water"),
    NUMBER("salts", central.balance.salts.closure, "mass of salts"),
    NUMBER("energy", central.balance.energy.closure, "energy"), FIELDS_END};

static const field answer[] = {
    VERSION_FIELD, SCENARIO_FIELD, TITLE_FIELD, SAME(tolerance, "error per step relative to each unknown's size"),
    NUMBER("end_s", central.end_s, "when the run ended"),
    {.kind = FIELD_OBJECT, .key = "stopped", .inside = stopped, .when = is_stopped,
     .meaning = "where the run left what is known of the bath, or the tank was full; null: it reached its end"},
    NUMBER("overflow_s", central.summary.overflow_s, "when the level first was at the rim; null: never"),
    GIVEN(FIELD_LIST, "acts", act_fields, acts, "the schedule, act by act, and when each was done"),
    LIST("loads", central.loads, central.loads_count, load, "what became of each load"),
    LIST("additions", central.additions, central.additions_count, addition, "what became of each addition"),
    LIST("takes", central.takes, central.takes_count, take, "bath liquid bailed and drained"),
    LIST("quiet", central.quiet, central.quiet_count, quiet, "spells in which the bath did not boil"),
    LIST("findings", found.list, found.count, finding, "what deserves a word: likely; gravest first"),
    LIST("possible", possible.list, possible.count, finding, "what only other runs of the set show, or show graver"),
    GIVEN(FIELD_LIST, "belongs", run_belongs_fields, run_belongs, "which act each of these comes of, a pair a row; of a bath that was cold, tall or "
          "deep from the start none"),
    ARRAY("runs", set.other, set.count, other_run, "the other runs that it is judged by"),
    OBJECT("bands", bands, bands, "how far the runs lie apart"),
    OBJECT("summary", central.summary, summary, "the run as a whole"),
    GROUP("account", account, "what it took and gave"),
    GROUP("balance", balance, "closure of each balance: what is missing, relative to what there was or crossed"),
    FIELDS_END};
/* clang-format on */

const document run_documents[] = {
    {"--json", "the outcome", answer, false}, {"--csv", "the trace, a step of time a line", trace_fields, true}, {0}};
