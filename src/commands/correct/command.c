#include "base/boil.h"
#include "base/program.h"
#include "cli/argument.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/correct/output.h"

enum { READS, LEVEL, BOILING_LEVEL, LIQUID_STRENGTH, UNITS, JSON, CSV, OPTIONS };

static const option options[OPTIONS] = {
    [READS] = {"reads", "TEMPERATURE", "where it boils, as read, such as '288 degF' or '288 degF +- 2 degF'; needed"},
    [LEVEL] = {"level", "LENGTH", "its still surface above the floor"},
    [BOILING_LEVEL] = {"boiling-level", "LENGTH", "its boiling surface, instead: the swell is taken out"},
    [LIQUID_STRENGTH] = {"liquid-strength", "PERCENT",
                         "make up with ready-mixed liquid of so many salts by mass, not with dry salts"},
    [UNITS] = {"units", "us|si", "units of the list; default us"},
    [JSON] = {"json", NULL, "the plan as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write the steps as CSV, in SI units; '-' writes them instead of the list"},
};

typedef struct {
    double temperature_K, uncertain_K;
} reading;

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

static bool request_read(const given *g, boil_correct_case *c, unit_system *system)
{
    static const bounds level = {"m", 0.02, 5}, share = {"%", 1, 89};
    reading r;
    *c = (boil_correct_case){.level_boiling = g->values[BOILING_LEVEL] != NULL};
    *system = UNITS_US;
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], system);
    if (g->values[READS] == NULL || (g->values[LEVEL] == NULL) == (g->values[BOILING_LEVEL] == NULL)) {
        program_complain(
            "'correct' needs --reads, such as --reads '288 degF +- 1 degF', and one of --level and --boiling-level");
        return false;
    }
    if (!argument_read("reads", g->values[READS], reading_read, &r) ||
        !argument_quantity("level", g->values[LEVEL], DIM_LENGTH, &level, &c->level_m) ||
        !argument_quantity("boiling-level", g->values[BOILING_LEVEL], DIM_LENGTH, &level, &c->level_m) ||
        !argument_quantity("liquid-strength", g->values[LIQUID_STRENGTH], DIM_FRACTION, &share, &c->liquid_fraction))
        return false;
    c->reads_K = r.temperature_K;
    c->uncertain_K = r.uncertain_K;
    return true;
}

static int answer(boil_correct_case *c, unit_system system, const outputs *o, const scenario *s)
{
    correct_answer a = {.scenario = s};
    boil_run_options options_of_run = boil_run_options_default();
    double room_K = s->plant.ambient.temperature_K;
    c->added_K = room_K > BOIL_ZERO_CELSIUS ? room_K : BOIL_ZERO_CELSIUS;
    c->liquid_K = boil_pour_rate_liquid_temperature(s->plant.charge.blend, c->liquid_fraction, c->added_K);
    c->next_load = boil_correct_next_load(&s->plant, &s->schedule);
    if (!(c->level_m < s->plant.tank.depth_m)) {
        program_complain("--%s: it must be below the rim of %s, at %s", options[c->level_boiling ? BOILING_LEVEL : LEVEL].name,
                         s->path, format_quantity(system, DIM_LENGTH, s->plant.tank.depth_m).text);
        return STATUS_USAGE;
    }
    int result = boil_correct(&s->plant, c, &options_of_run, &a.plan);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    if (a.plan.end != BOIL_CORRECT_DONE) {
        correct_refuse(&a, system);
        return STATUS_USAGE;
    }
    bool written = outputs_csv(o, correct_csv, &a);
    if (o->json)
        correct_json(&a, stdout);
    else if (outputs_leave_report(o))
        correct_report(&a, system, stdout);
    return written ? STATUS_DONE : STATUS_STOPPED;
}

static int run(const given *g)
{
    boil_correct_case c;
    unit_system system;
    scenario s;
    outputs o = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]};
    if (!request_read(g, &c, &system) || !outputs_agree(&o))
        return STATUS_USAGE;
    int status = command_scenario_read(g->argument, &s) ? answer(&c, system, &o, &s) : STATUS_USAGE;
    scenario_free(&s);
    return status;
}

const command command_correct = {
    .name = "correct",
    .argument = "FILE",
    .summary = "back to set point and level from a reading of both",
    .description = "From the temperature at which the bath boils and the level in the tank: how strong it is, and what "
                   "water, dry salts "
                   "or ready-mixed liquid bring it back to set point and level, or how long it boils down; how fast each "
                   "may go in, found "
                   "by running it; whether it fits with the next load in, and how much to bail out first. Set point and "
                   "level are those of "
                   "the scenario's bath. FILE '-' is standard input.",
    .example = PROGRAM_NAME " correct night.bath --reads '288 degF +- 1 degF' --level '19 in'",
    .options = options,
    .options_count = OPTIONS,
    .documents = correct_documents,
    .run = run,
};
