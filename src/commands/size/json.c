#include <math.h>

#include "commands/size/answer.h"
#include "commands/size/grid.h"
#include "commands/size/sheet.h"
#include "describe/report.h"

static const char *const founds[] = {
    [BOIL_WINDOW_FOUND] = "found", [BOIL_WINDOW_NONE] = "none", [BOIL_WINDOW_BEYOND] = "out of range"};

static const char *const rims[] = {
    [BOIL_RIM_AT] = "boils over above", [BOIL_RIM_NEVER] = "never", [BOIL_RIM_BEYOND] = "out of range"};

/* clang-format off */
WRITES(rim, boil_window_end, text, boil_window_end_shut(r) ? "boils over" : rims[r->rim])
WRITES(scenario_path, size_case *const, text, (*r)->scenario->path)
TELLS(double, limit, size_case *const, (*r)->limit_s)
WRITES(one_load, size_answer, bool, r->size->one_load)
WRITES(window_shut, size_answer, bool, boil_heater_window_shut(&r->heats))
WRITES(never_stops, size_answer, bool, boil_heater_window_never_stops(&r->heats))
TELLS(double, heat_per_bath, size_answer, r->heats.heat_W / r->heats.calm.volume_m3)
TELLS(bool, is_found, size_answer, r->heats.found == BOIL_WINDOW_FOUND)
TELLS(double, heaviest_load, size_heaviest, r->times * size_case_heaviest(r->size))
TELLS(double, places, size_interval, r->size->plant.tank.positions)
WRITES(counted, size_interval, bool, r->size->counted)
TELLS(double, equal_load, size_interval, r->size->load.mass_kg)

typedef struct {
    boil_load_result with;
    double less_s; /* recovery with 1 % less heat */
} load;

#define RECORD load
static const field load_fields[] = {
    NUMBER("time_s", with.time_s, "when it goes in"), NUMBER("mass_kg", with.mass_kg, "its parts, without basket"),
    NUMBER("boil_lost_s", with.boil_lost_s, "when the boil stopped; null: it did not"),
    NUMBER("recovery_s", with.recovery_s, "from then until it was back; null: never"),
    NUMBER("recovery_at_99_percent_s", less_s, "the same with 1 % less heat"), FIELDS_END};
#undef RECORD
/* clang-format on */

static void loads(json *j, const char *name, const void *record)
{
    const size_answer *a = record;
    json_list(j, name);
    for (size_t i = 0; i < a->heats.proof.loads_count; i++) {
        load l = {a->heats.proof.loads[i], i < a->heats.less.loads_count ? a->heats.less.loads[i].recovery_s : (double)NAN};
        json_record(j, NULL, load_fields, &l);
    }
    json_close(j);
}

/* clang-format off */
#define RECORD boil_window_end
static const field end[] = {
    GIVEN(FIELD_TEXT, "rim", NULL, rim, "boils over above (or too little freeboard), boils over (whatever the heat), never, or out of range"),
    SAME(from_W, "least heat of the window; null: there is none"), SAME(heat_W, "most heat of the window"), FIELDS_END};
#undef RECORD

#define RECORD boil_steady_state
static const field calm[] = {
    SAME(losses_W, "least heat with which the bath boils at all"), NUMBER("bath_m3", volume_m3, "still bath"),
    SAME(boiling_point_K, "where it boils"), SAME(steam_kg_s, "steam formed in the bath"),
    SAME(evaporated_kg_s, "water evaporated from the surface"), SAME(makeup_kg_s, "water that holds strength and level, as warm as the room"),
    SAME(steam_m3_s, "both, as steam at the boiling point"),
    SAME(swell_m, "boiling level over the still one, upper estimate"), SAME(freeboard_m, "freeboard as it boils"),
    FIELDS_END};
#undef RECORD

#define RECORD boil_holding
static const field holding[] = {
    SAME(slowest_s, "slowest return of the boil; null: not back"), SAME(freeboard_min_m, "least freeboard"),
    SAME(end_K, "boiling point at the end"), SAME(end_level_m, "still level at the end"), FIELDS_END};
#undef RECORD

#define RECORD size_answer
static const field heat[] = {
    NUMBER("heat_W", heats.heat_W, "heat to the tank that suffices"),
    NUMBER("input_W", heats.input_W, "fuel or current for it; null for a steam coil"),
    NUMBER("own_heat_W", heats.own_W, "heat to the tank of the scenario's own heater at full dial"),
    WORKED_OUT("heat_per_bath_W_m3", heat_per_bath, "the heat per volume of still bath"),
    NUMBER("hold_W", heats.hold_W, "heat with which the bath surely boils on, fed, or under its lid; null: none was found"),
    NUMBER("heat_up_s", heats.heat_up_s, "from the room's temperature to the boil; null: not within two weeks"),
    OBJECT("calm", heats.calm, calm, "the bath as it stands there boiling, nothing going in"),
    OBJECT("likely", heats.likely, end, "the window between recovery and rim, likely laws"),
    OBJECT("possible", heats.possible, end, "the same, by all laws and in all that is done"),
    OBJECT("freeboard_likely", heats.leaves_likely, end, "the window between recovery and the freeboard asked for, likely laws"),
    OBJECT("freeboard_possible", heats.leaves_possible, end, "the same, by all laws and in all that is done"),
    NUMBER("strength_W", heats.strength_W, "most heat with which the scenario's own water control keeps the strength; null: any that leaves the freeboard"),
    OBJECT("at", heats.at, holding, "with that heat, all laws"),
    GIVEN(FIELD_BOOL, "never_stops_the_boil", NULL, never_stops, "with this heat no load stops the boil at all"),
    NUMBER("freeboard_min_m", heats.at.freeboard_min_m, "least freeboard with this heat"),
    NUMBER("steam_peak_kg_s", heats.proof.summary.steam_peak_kg_s.value, "most steam with this heat"),
    GIVEN(FIELD_LIST, "loads", load_fields, loads, "the loads with this heat"), FIELDS_END};

#define CASE_FIELDS \
    VERSION_FIELD, \
    GIVEN(FIELD_TEXT, "scenario", NULL, scenario_path, "the file, as it was named"), \
    WORKED_OUT("limit_s", limit, "longest time a load may stop the boil")

static const field answer[] = {
    CASE_FIELDS, GIVEN(FIELD_BOOL, "one_load", NULL, one_load, "one load into the steady boil, not the schedule's"),
    WORD("found", heats.found, founds, "whether a heat brings every boil back in time"),
    GIVEN(FIELD_BOOL, "window_shut", NULL, window_shut, "no heat brings the boil back in time and leaves the freeboard"),
    PART_IF(heat, is_found),
    NUMBER("opening_load_share", heats.opening_load,
           "where the window is shut: share of the load that opens it; null: none tried"),
    NUMBER("opening_area_times", heats.opening_area, "likewise, area of the tank over its own"), FIELDS_END};
#undef RECORD

#define RECORD size_heaviest
static const field heaviest[] = {
    CASE_FIELDS, NUMBER("times", times, "all loads may be so many times as heavy; 0: not even the lightest"),
    WORKED_OUT("heaviest_kg", heaviest_load, "the heaviest of them then"), OBJECT("at", at, holding, "with such loads, or the lightest, all laws"),
    OBJECT("beyond", beyond, holding, "with 1 % heavier ones"), FIELDS_END};
#undef RECORD

#define RECORD size_interval
static const field interval[] = {
    CASE_FIELDS, NUMBER("interval_s", interval_s, "shortest time between equal loads; null: however long, none does"),
    WORKED_OUT("load_kg", equal_load, "one of them"), WORKED_OUT("positions", places, "places for loads"),
    GIVEN(FIELD_BOOL, "positions_worked_out", NULL, counted, "from the tank's longer side, since nothing says"),
    SAME(soonest_s, "shortest time between loads for which there is room"),
    OBJECT("at", at, holding, "with loads at that interval, or as far apart as are tried, all laws"), OBJECT("beyond", beyond, holding, "1 % sooner"),
    FIELDS_END};
#undef RECORD

#define RECORD size_cell
static const field cell[] = {
    SAME(load_kg, "mass of one load"), SAME(plate_m, "thickness of its plate"),
    SAME(heat_W, "heat to the tank that brings the boil back in time; null or empty: none does"),
    BOOL("holds", holds, "whether it holds in all else with that"),
    NUMBER("freeboard_min_m", at.freeboard_min_m, "least freeboard with that"),
    NUMBER("end_K", at.end_K, "boiling point at the end"), NUMBER("end_level_m", at.end_level_m, "still level at the end"), FIELDS_END};
#undef RECORD

#define RECORD size_cells
static const field table[] = {
    VERSION_FIELD, SAME(limit_s, "longest time a load may stop the boil"),
    ARRAY("table", cells, count, cell, "a load and plate each"), FIELDS_END};

const document size_documents[] = {
    {"--json", "the heat that suffices; what stands behind window_shut only when it was found", answer, false},
    {"--json, with --heaviest", "the heaviest loads", heaviest, false},
    {"--json, with --interval", "the shortest interval", interval, false},
    {"--json, with --table", "the heat for loads and plates", table, false},
    {"--json, with --sheet", "the designer's sheet", sheet_fields, false},
    {"--json, with --down and --across", "the heat over two numbers", size_grid_fields, false},
    {"--csv, with --table", "the same, a load and plate a line", cell, true},
    {"--csv, with --down and --across", "the same, a pair of values a line", size_grid_cell_fields, true},
    {0}};
/* clang-format on */

void size_table_csv(const void *cells, FILE *to)
{
    const size_cells *t = cells;
    csv_document(to, cell, t->cells, t->count, sizeof t->cells[0]);
}
