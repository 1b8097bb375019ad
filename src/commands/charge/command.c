#include "base/boil.h"
#include "base/program.h"
#include "cli/argument.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/charge/output.h"

enum { LIQUID, LIQUID_STRENGTH, FROM, FROM_STRENGTH, FROM_TEMPERATURE, SALTS_FIRST, UNITS, JSON, CSV, OPTIONS };

static const option options[OPTIONS] = {
    [LIQUID] = {"liquid", NULL, "fill with ready-mixed liquid instead of dry salts"},
    [LIQUID_STRENGTH] = {"liquid-strength", "PERCENT", "salts by mass of that liquid; default 50 %"},
    [FROM] = {"from", "LENGTH", "still level of a bath of the same salts that is in the tank; default empty"},
    [FROM_STRENGTH] = {"from-strength", "PERCENT", "salts by mass of that bath; default as the scenario's"},
    [FROM_TEMPERATURE] = {"from-temperature", "TEMPERATURE", "of that bath; default the room's"},
    [SALTS_FIRST] = {"salts-first", NULL, "dry salts first and water onto them: refused, with the reason"},
    [UNITS] = {"units", "us|si", "units of the list; default us"},
    [JSON] = {"json", NULL, "the plan as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write the steps as CSV, in SI units; '-' writes them instead of the list"},
};

typedef struct {
    boil_charge_case asked;
    bool from_strength_given, from_temperature_given, salts_first;
    outputs out;
    unit_system system;
} request;

static bool request_read(const given *g, request *r)
{
    static const bounds level = {"m", 0.02, 5}, share = {"%", 1, 89}, temperature = {"degC", 0, 200};
    boil_charge_case *c = &r->asked;
    *r = (request){.out = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]},
                   .salts_first = g->values[SALTS_FIRST] != NULL,
                   .from_strength_given = g->values[FROM_STRENGTH] != NULL,
                   .from_temperature_given = g->values[FROM_TEMPERATURE] != NULL};
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], &r->system);
    if (g->values[FROM] == NULL && (r->from_strength_given || r->from_temperature_given)) {
        program_complain("--from-strength and --from-temperature go with --from");
        return false;
    }
    c->liquid_fraction = g->values[LIQUID] != NULL ? 0.5 : 0;
    return outputs_agree(&r->out) &&
           argument_quantity("liquid-strength", g->values[LIQUID_STRENGTH], DIM_FRACTION, &share, &c->liquid_fraction) &&
           argument_quantity("from", g->values[FROM], DIM_LENGTH, &level, &c->from_level_m) &&
           argument_quantity("from-strength", g->values[FROM_STRENGTH], DIM_FRACTION, &share, &c->from_fraction) &&
           argument_quantity("from-temperature", g->values[FROM_TEMPERATURE], DIM_TEMPERATURE, &temperature, &c->from_K);
}

/* What was left to the scenario and to the room. */
static bool fill_in(request *r, const scenario *s)
{
    boil_charge_case *c = &r->asked;
    boil_initial_state bath;
    double room_K = s->plant.ambient.temperature_K;
    c->added_K = room_K > BOIL_ZERO_CELSIUS ? room_K : BOIL_ZERO_CELSIUS;
    c->liquid_K = boil_pour_rate_liquid_temperature(s->plant.charge.blend, c->liquid_fraction, c->added_K);
    if (!r->from_temperature_given)
        c->from_K = c->added_K;
    if (boil_plant_initial(&s->plant, &bath) != BOIL_OK)
        return false; /* a scenario that was read has a charge */
    if (!r->from_strength_given)
        c->from_fraction = bath.salt_fraction;
    if (c->from_level_m < s->plant.tank.depth_m)
        return true;
    program_complain("--from: the level must be below the rim");
    return false;
}

static int answer(request *r, const scenario *s)
{
    charge_answer a = {.scenario = s};
    boil_run_options o = boil_run_options_default();
    if (!fill_in(r, s))
        return STATUS_USAGE;
    if (r->salts_first) {
        charge_refuse_salts_first(s, boil_charge_salts_first(&s->plant, r->asked.added_K), r->system);
        return STATUS_USAGE;
    }
    int result = boil_charge_plan_of(&s->plant, &r->asked, &o, &a.plan);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    if (a.plan.end != BOIL_CHARGE_DONE) {
        charge_refuse(&a, r->system);
        return STATUS_USAGE;
    }
    bool written = outputs_csv(&r->out, charge_csv, &a);
    if (r->out.json)
        charge_json(&a, stdout);
    else if (outputs_leave_report(&r->out))
        charge_report(&a, r->system, stdout);
    return written ? STATUS_DONE : STATUS_STOPPED;
}

static int run(const given *g)
{
    request r;
    scenario s;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    int status = command_scenario_read(g->argument, &s) ? answer(&r, &s) : STATUS_USAGE;
    scenario_free(&s);
    return status;
}

const command command_charge = {
    .name = "charge",
    .argument = "FILE",
    .summary = "filling the tank: what goes in, in which order, how fast",
    .description =
        "From an empty tank, or one partly full, to the level and strength of the scenario: water first, then dry salts in "
        "batches that dissolve and cool before the next, or ready-mixed liquid; then heating up, and water to add or to "
        "boil "
        "down. A list of steps to print, the caution beside each. FILE '-' is standard input.",
    .example = PROGRAM_NAME " charge night.bath --from '10 in' --from-strength '45 %'",
    .options = options,
    .options_count = OPTIONS,
    .documents = charge_documents,
    .run = run,
};
