#include "describe/trace.h"

#include <math.h>

#include "analysis/trace.h"
#include "base/memory.h"

static const double finest_s = 1, rows_most = 86400;

/* As many as a picture has columns, twice. */
#define DRAWN ((size_t)2000)

boil_outcome trace_of(const scenario *s, const boil_run_options *options, boil_history *out)
{
    boil_run_options fine = *options;
    fine.row_interval_s = fmax(finest_s, s->schedule.duration_s / rows_most);
    boil_outcome result = boil_run(&s->plant, &s->schedule, &fine, out);
    if (result == 0)
        out->rows_count = boil_trace_thinned(out->rows, out->rows_count, DRAWN);
    return result;
}

const boil_history *trace_or_rows(const carried_out *o, boil_history *fine)
{
    boil_run_options options = boil_run_options_default();
    options.tolerance = o->tolerance;
    *fine = (boil_history){0};
    return memory_good(trace_of(o->scenario, &options, fine)) ? fine : &o->central;
}

/* clang-format off */
#define RECORD boil_row
const field trace_fields[] = {
    SAME(time_s, "from the start"),
    BOOL("boiling", boiling, "the bath boils"),
    SAME(temperature_K, "of the bath"),
    SAME(boiling_point_K, "of what it contains"),
    SAME(salt_fraction, "dissolved salts by mass of solution"),
    SAME(water_kg, "water in the bath"),
    SAME(naoh_kg, "sodium hydroxide in it"),
    SAME(nano3_kg, "sodium nitrate in it"),
    SAME(nano2_kg, "sodium nitrite in it"),
    SAME(steam_kg_s, "steam formed in the bath"),
    SAME(vented_kg_s, "into the room: formed, evaporated and boiled off floating water"),
    SAME(evaporated_kg_s, "of it evaporated from the surface"),
    SAME(heater_W, "heat to the tank"),
    SAME(wall_W, "heat lost through walls and floor"),
    SAME(surface_W, "heat lost from the surface by convection and radiation"),
    SAME(loads_W, "heat into the loads"),
    SAME(layer_kg, "water afloat"),
    SAME(layer_m, "how thick it is"),
    SAME(layer_K, "its temperature"),
    BOOL("layer_boiling", layer_boiling, "it boils"),
    SAME(still_level_m, "level without steam in the bath"),
    SAME(level_m, "level swelled: upper estimate, with surge"),
    SAME(level_lower_m, "level swelled: lower estimate"),
    SAME(freeboard_m, "rim less level_m; negative: over the rim"),
    SAME(void_fraction, "share of steam in the bath"),
    SAME(left_m, "freeboard that what floats would leave if it let go now; empty: nothing floats"),
    SAME(calm_kg_s, "steam that heater and losses alone would boil off"),
    SAME(crystals_kg, "out of solution, by what its solubility holds"),
    SAME(bed_superheat_K, "floor under a bed of salt above the bath"),
    SAME(coldest_load_K, "mean temperature of the coldest load in the bath; empty: none in"),
    SAME(undissolved_kg, "dry salts not yet dissolved"),
    BOOL("valve_open", valve_open, "the automatic water valve is open"),
    SAME(sensor_K, "what its sensor shows"),
    FIELDS_END};
#undef RECORD
/* clang-format on */

void trace_csv(const void *history, FILE *to)
{
    const boil_history *h = history;
    csv_document(to, trace_fields, h->rows, h->rows_count, sizeof *h->rows);
}
