#include "base/constants.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/correct/output.h"

typedef struct {
    double temperature_K, uncertain_K;
} reading;

typedef struct {
    boil_correct_case asked;
    reading reads;
    output output;
} request;

/* "288 degF +- 2 degF" */
static bool reading_read(cursor *c, void *into)
{
    static const bounds temperature = {"degC", 80, 250}, uncertainty = {"K", 0, 20};
    reading *r = into;
    quantity q;
    if (!quantity_read(c, "reads", UNIT_OF(DIM_TEMPERATURE), &q) || !quantity_within(c, "reads", &q, &temperature))
        return false;
    *r = (reading){.temperature_K = q.si};
    if (cursor_done(c))
        return true;
    if (!cursor_take(c, "+-") && !cursor_take(c, "\xC2\xB1"))
        return cursor_expect_end(c);
    if (!quantity_read(c, "uncertainty", UNIT_OF(DIM_DIFFERENCE), &q) || !quantity_within(c, "uncertainty", &q, &uncertainty))
        return false;
    r->uncertain_K = q.si;
    return cursor_expect_end(c);
}

/* clang-format off */
static const option options[] = {
    {"reads", "TEMPERATURE", "where it boils, as read, such as '288 degF' or '288 degF +- 2 degF'; needed", OPTION_READ,
     INTO(reads), .read = reading_read},
    {"level", "LENGTH", "its still surface above the floor", OPTION_QUANTITY,
     INTO(asked.level_m), DIM_LENGTH, .within = {"m", 0.02, 5}},
    {"boiling-level", "LENGTH", "its boiling surface, instead: the swell is taken out", OPTION_QUANTITY,
     INTO(asked.level_m), DIM_LENGTH, .within = {"m", 0.02, 5}},
    {"liquid-strength", "PERCENT", "make up with ready-mixed liquid of so many salts by mass, not with dry salts",
     OPTION_QUANTITY, INTO(asked.liquid_fraction), DIM_FRACTION, .within = {"%", 1, 89}},
    OUTPUT_UNITS(request, "list"),
    OUTPUT_JSON(request, "the plan as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the steps as CSV, in SI units; '-' writes them instead of the list"),
    INPUT_SHEET(request),
};
/* clang-format on */

static bool level_below_rim(const boil_correct_case *c, unit_system system, const scenario *s)
{
    if (c->level_m < s->plant.tank.depth_m)
        return true;
    return program_complain("--%slevel: it must be below the rim of %s, at %s", c->level_boiling ? "boiling-" : "", s->path,
                            SHOWN(system, LENGTH, s->plant.tank.depth_m));
}

/* Whatever is put in then may set it off; and under a crust no boiling point is read. */
static bool nothing_on_it(const scenario *s)
{
    if (s->plant.crust_kg > 0)
        return program_complain(
            "%s: a crust of salt hangs over its bath ('crust' under [bath]): break it up while it is cold, heat "
            "slowly, and read it when it has boiled all over for some minutes; then take the line out",
            s->path);
    if (s->plant.bed_kg > 0)
        return program_complain(
            "%s: salt lies on the floor of its bath ('salt on the floor' under [bath]): stir it up, heat slowly, and "
            "read it when all of it is dissolved and it has boiled all over for some minutes; then take the line out",
            s->path);
    if (!(s->plant.afloat.mass_kg > 0))
        return true;
    return program_complain(
        "%s: water floats on its bath ('water afloat' under [bath]): put nothing in, stand back, and read it when "
        "it has boiled all over for some minutes; then take the line out",
        s->path);
}

static const output_writers writers = {.text = correct_report, .json = correct_documents, .csv = correct_csv};

static int answer(void *record, const scenario *s)
{
    const request *r = record;
    boil_correct_case c = r->asked;
    correct_answer a = {.scenario = s};
    boil_run_options o = boil_run_options_default();
    double room_K = s->plant.ambient.temperature_K;
    c.reads_K = r->reads.temperature_K;
    c.uncertain_K = r->reads.uncertain_K;
    c.added_K = room_K > BOIL_ZERO_CELSIUS ? room_K : BOIL_ZERO_CELSIUS;
    c.liquid_K = boil_pour_rate_liquid_temperature(s->plant.charge.blend, c.liquid_fraction, c.added_K);
    c.next_load = boil_correct_next_load(&s->plant, &s->schedule);
    if (!level_below_rim(&c, r->output.system, s) || !nothing_on_it(s))
        return STATUS_USAGE;
    int result = boil_correct(&s->plant, &c, &o, &a.plan);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    if (a.plan.end == BOIL_CORRECT_DONE)
        return output_write(&writers, &r->output, &a, STATUS_DONE);
    correct_refuse(&a, r->output.system);
    return STATUS_USAGE;
}

static int run(const given *g)
{
    request r = {.asked.level_boiling = options_given(g, "boiling-level")};
    if (!options_given(g, "reads") || options_given(g, "level") == options_given(g, "boiling-level")) {
        program_complain(
            "'correct' needs --reads, such as --reads '288 degF +- 1 degF', and one of --level and --boiling-level");
        return STATUS_USAGE;
    }
    return command_scenario_answer(g, &r, &r.output, answer);
}

const command command_correct = {
    .name = "correct",
    .argument = "FILE",
    .summary = "back to set point and level from a reading of both",
    .description = "From the temperature at which the bath boils and the level in the tank: how strong it is, and what water, "
                   "dry salts or ready-mixed liquid bring it back to set point and level, or how long it boils down; how fast "
                   "each may go in, found by running it; whether it fits with the next load in, and how much to bail out "
                   "first. Set point and level are those of the scenario's bath. FILE '-' is standard input.",
    .example = PROGRAM_NAME " correct night.bath --reads '288 degF +- 1 degF' --level '19 in'",
    COMMAND_PARTS(correct_documents),
};
