#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/check/output.h"

typedef struct {
    output output;
} request;

static const option options[] = {
    OUTPUT_JSON(request, "all of it as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the settings as CSV, in SI units; '-' writes them instead of the report"),
    INPUT_SHEET(request),
};

static int answer(void *record, const scenario *s)
{
    static const output_writers writers = {.text = check_report, .json = check_documents, .csv = check_csv};
    const request *r = record;
    checked c = {.scenario = *s};
    boil_outcome outcome = s->lesson.given ? proof_of(s, &c.proof) : BOIL_OK;
    if (outcome != BOIL_OK)
        return command_scenario_refuse(s, outcome);
    bool good = !s->lesson.given || c.proof.holds;
    if (!good)
        proof_complain(s, &c.proof);
    return output_write(&writers, &r->output, &c, good ? STATUS_DONE : STATUS_USAGE);
}

static int run(const given *g)
{
    request r = {0};
    return command_scenario_answer(g, &r, &r.output, answer);
}

const command command_check = {
    .name = "check",
    .argument = "FILE",
    .summary = "is the scenario right, and what does it mean",
    .description = "Reads a scenario and says everything that is wrong with it, or what it comes to: every setting in US and "
                   "SI units, defaults marked, the charge worked out, the acts one by one. A lesson is proved as well: its "
                   "scripts are carried out, and careful must pass where reckless and idle do not. FILE '-' is standard input.",
    .example = PROGRAM_NAME " check night.bath",
    COMMAND_PARTS(check_documents),
};
