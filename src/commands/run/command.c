#include "base/program.h"
#include "base/text.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/output.h"
#include "commands/run/output.h"
#include "describe/carried_out.h"
#include "describe/trace.h"
#include "describe/verdict.h"

typedef struct {
    boil_run_options run;
    bool strict, verbose;
    output output;
} request;

/* clang-format off */
static const option options[] = {
    OUTPUT_JSON(request, "the outcome as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the trace as CSV, in SI units; '-' writes it instead of the report"),
    OUTPUT_PLOT(request, "draw it with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the report"),
    OUTPUT_HTML(request, "one page to read and to print: findings, run sheet by the clock, picture (if gnuplot is "
                         "there), all inputs; '-' writes it instead of the report"),
    {"step", "TIME", "time between rows of the trace; default 10 s", OPTION_QUANTITY,
     .where = offsetof(request, run.row_interval_s), DIM_TIME, .within = {"s", 0.1, 3600}},
    OUTPUT_UNITS(request, "report"),
    {"strict", NULL, "exit with 3 when a WARNING or DANGER was found", OPTION_FLAG, .where = offsetof(request, strict)},
    {"verbose", NULL, "with the statistics of the run", OPTION_FLAG, .where = offsetof(request, verbose)},
    {"tolerance", "NUMBER", "advanced: error per step relative to each unknown's size", OPTION_NUMBER,
     .where = offsetof(request, run.tolerance), .within = {NULL, 1e-11, 1e-4}},
};
/* clang-format on */

static const double step_default_s = 10;

#define TERMINAL_WIDTH 80 /* of the picture there */

/* What the writers are given. */
typedef struct {
    const request *request;
    carried_out outcome;
} run_answer;

static void text(const void *answer, const output *o, FILE *to)
{
    const run_answer *a = answer;
    report(&a->outcome, &(report_style){o->system, o->colour, a->request->verbose}, to);
}

static void as_json(const void *answer, FILE *to)
{
    const run_answer *a = answer;
    run_json(&a->outcome, to);
}

static void csv(const void *answer, FILE *to)
{
    const run_answer *a = answer;
    trace_csv(&a->outcome.central, to);
}

static bool draw(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    const run_answer *a = answer;
    boil_history trace;
    if (trace_of(a->outcome.scenario, &a->request->run, &trace) != BOIL_OK)
        return false;
    bool good = run_picture(&a->outcome, &trace, o->system, format, drawn, problem);
    boil_history_free(&trace);
    return good;
}

static void above(const void *answer, const output *o, FILE *to)
{
    const run_answer *a = answer;
    text_wrapped(to, verdict_of(&a->outcome, o->system).text, 0, 0, TERMINAL_WIDTH);
}

static void html(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to)
{
    const run_answer *a = answer;
    page(&a->outcome, o->system, drawn, problem, to);
}

static const output_writers writers = {text, as_json, csv, draw, above, html};

static int status_of(const request *r, const carried_out *o)
{
    if (carried_out_stopped(o)) {
        program_complain("%s: the run stopped early", o->scenario->path);
        return STATUS_STOPPED;
    }
    return r->strict && carried_out_gravest(o) >= BOIL_SEVERITY_WARNING ? STATUS_FOUND : STATUS_DONE;
}

static int answer(void *record, const scenario *s)
{
    const request *r = record;
    run_answer a = {.request = r};
    int result = carried_out_of(s, &r->run, &a.outcome);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    int status = output_write(&writers, &r->output, &a, status_of(r, &a.outcome));
    carried_out_free(&a.outcome);
    return status;
}

static int run(const given *g)
{
    request r = {.run = boil_run_options_default()};
    r.run.row_interval_s = step_default_s;
    if (!options_take(g, &r) || !output_agrees(&r.output))
        return STATUS_USAGE;
    return command_scenario_answer(g->argument, answer, &r);
}

const command command_run = {
    .name = "run",
    .argument = "FILE",
    .summary = "what happens to the bath, load by load",
    .description = "Carries out a scenario and reports: a verdict in one line, when the boil was lost and back for each load "
                   "and addition, strength, level, steam, and what deserves a word. FILE is a scenario; '-' reads it from "
                   "standard input. A prediction is never a permission.",
    .example = PROGRAM_NAME " run night.bath --units si --csv night.csv --step '5 s'",
    .options = options,
    .options_count = sizeof options / sizeof options[0],
    .documents = run_documents,
    .run = run,
};
