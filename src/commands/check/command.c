#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/check/output.h"

enum { JSON, CSV, OPTIONS };

static const option options[OPTIONS] = {
    [JSON] = {"json", NULL, "all of it as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write the settings as CSV, in SI units; '-' writes them instead of the report"},
};

static int answer(const outputs *o, const scenario *s)
{
    bool written = outputs_csv(o, check_csv, s);
    if (o->json)
        check_json(s, stdout);
    else if (outputs_leave_report(o))
        check_report(s);
    return written ? STATUS_DONE : STATUS_STOPPED;
}

static int run(const given *g)
{
    scenario s;
    outputs o = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]};
    if (!outputs_agree(&o))
        return STATUS_USAGE;
    int status = command_scenario_read(g->argument, &s) ? answer(&o, &s) : STATUS_USAGE;
    scenario_free(&s);
    return status;
}

const command command_check = {
    .name = "check",
    .argument = "FILE",
    .summary = "is the scenario right, and what does it mean",
    .description =
        "Reads a scenario and says everything that is wrong with it, or what it comes to: every setting in US and SI "
        "units, defaults marked, the charge worked out, the acts one by one. FILE '-' is standard input.",
    .example = PROGRAM_NAME " check night.bath",
    .options = options,
    .options_count = OPTIONS,
    .documents = check_documents,
    .run = run,
};
