#include <math.h>

#include "base/constants.h"
#include "base/memory.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/charge/output.h"

typedef struct {
    boil_charge_case asked;
    bool liquid, salts_first;
    output output;
} request;

/* clang-format off */
static const option options[] = {
    {"liquid", NULL, "fill with ready-mixed liquid instead of dry salts", OPTION_FLAG, INTO(liquid)},
    {"liquid-strength", "PERCENT", "salts by mass of that liquid; default 50 %", OPTION_QUANTITY,
     INTO(asked.liquid_fraction), DIM_FRACTION, .within = {"%", 1, 89}},
    {"from", "LENGTH", "still level of a bath of the same salts that is in the tank; default empty", OPTION_QUANTITY,
     INTO(asked.from_level_m), DIM_LENGTH, .within = {"m", 0.02, 5}},
    {"from-strength", "PERCENT", "salts by mass of that bath; default as the scenario's", OPTION_QUANTITY,
     INTO(asked.from_fraction), DIM_FRACTION, .within = {"%", 1, 89}},
    {"from-temperature", "TEMPERATURE", "of that bath; default the room's", OPTION_QUANTITY,
     INTO(asked.from_K), DIM_TEMPERATURE, .within = {"degC", 0, 200}},
    {"salts-first", NULL, "dry salts first and water onto them: refused, with the reason", OPTION_FLAG, INTO(salts_first)},
    OUTPUT_UNITS(request, "list"),
    OUTPUT_JSON(request, "the plan as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the steps as CSV, in SI units; '-' writes them instead of the list"),
    OUTPUT_PLOT_INSTEAD(request, "draw temperature and level"),
    INPUT_SHEET(request),
};
/* clang-format on */

/* What was left to the scenario and to the room. */
static bool fill_in(request *r, const scenario *s)
{
    boil_charge_case *c = &r->asked;
    boil_initial_state bath;
    double room_K = s->plant.ambient.temperature_K;
    c->weighed_kg = r->output.system == UNITS_US ? unit_to_si(DIM_MASS, "lb", 1) : 0.5;
    c->added_K = room_K > BOIL_ZERO_CELSIUS ? room_K : BOIL_ZERO_CELSIUS;
    c->liquid_K = boil_pour_rate_liquid_temperature(s->plant.charge.blend, c->liquid_fraction, c->added_K);
    if (isnan(c->from_K))
        c->from_K = c->added_K;
    if (!memory_good(boil_plant_initial(&s->plant, &bath)))
        return false; /* a scenario that was read has a charge */
    if (isnan(c->from_fraction))
        c->from_fraction = bath.salt_fraction;
    if (c->from_level_m < s->plant.tank.depth_m)
        return true;
    return program_complain("--from: the level must be below the rim");
}

static const output_writers writers = {
    .text = charge_report, .json = charge_documents, .csv = charge_csv, .draw = charge_picture};

static int answer(void *record, const scenario *s)
{
    request *r = record;
    charge_answer a = {.scenario = s};
    boil_run_options o = boil_run_options_default();
    if (!scenario_names_salts(s) && (r->salts_first || r->asked.liquid_fraction > 0 || r->asked.from_fraction > 0)) {
        charge_refuse_unnamed(s);
        return STATUS_USAGE;
    }
    if (!fill_in(r, s))
        return STATUS_USAGE;
    if (r->salts_first) {
        charge_refuse_salts_first(s, boil_charge_salts_first(&s->plant, r->asked.added_K), r->output.system);
        return STATUS_USAGE;
    }
    int result = boil_charge_plan_of(&s->plant, &r->asked, &o, &a.plan);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    if (a.plan.end == BOIL_CHARGE_DONE)
        return output_write(&writers, &r->output, &a, STATUS_DONE);
    charge_refuse(&a, r->output.system);
    return STATUS_USAGE;
}

static int run(const given *g)
{
    request r = {.asked = {.from_fraction = (double)NAN, .from_K = (double)NAN}};
    if (!options_given(g, "from") && (options_given(g, "from-strength") || options_given(g, "from-temperature"))) {
        program_complain("--from-strength and --from-temperature go with --from");
        return STATUS_USAGE;
    }
    r.asked.liquid_fraction = options_given(g, "liquid") ? 0.5 : 0;
    return command_scenario_answer(g, &r, &r.output, answer);
}

const command command_charge = {
    .name = "charge",
    .argument = "FILE",
    .summary = "filling the tank: what goes in, in which order, how fast",
    .description = "From an empty tank, or one partly full, to the level and strength of the scenario: water first, then dry "
                   "salts in batches that dissolve and cool before the next, or ready-mixed liquid; then heating up, and water "
                   "to add or to boil down. A list of steps to print, the caution beside each. FILE '-' is standard input.",
    .example = PROGRAM_NAME " charge night.bath --from '10 in' --from-strength '45 %'",
    COMMAND_PARTS(charge_documents),
};
