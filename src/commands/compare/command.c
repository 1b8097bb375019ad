#include "base/patience.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/compare/answer.h"

typedef struct {
    output output;
} request;

static const option options[] = {
    OUTPUT_JSON(request, "both side by side as JSON, in SI units"),
    OUTPUT_CSV(request, "also write what comes of both as CSV, in SI units; '-' writes it instead of the report"),
    OUTPUT_PLOT(request, "draw one over the other with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal"),
    OUTPUT_UNITS(request, "report"),
    {"full", NULL, "also what is the same in both, and what is only a NOTICE", OPTION_FLAG, INTO(output.full)},
    INPUT_SHEET(request),
};

static const output_writers writers = {
    .text = compare_report, .json = compare_documents, .csv = compare_csv, .draw = compare_picture};

static int hand_out(const output *to, const compare_answer *c)
{
    bool stopped = carried_out_stopped(c->a) || carried_out_stopped(c->b);
    return output_write(&writers, to, c, stopped ? STATUS_STOPPED : STATUS_DONE);
}

static int answer(const output *to, const scenario *s, const scenario *t)
{
    carried_out a, b;
    boil_run_options o = boil_run_options_default();
    patience_begin();
    int result = carried_out_of(s, &o, &a);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    result = carried_out_of(t, &o, &b);
    int status = result == BOIL_OK ? hand_out(to, &(compare_answer){&a, &b}) : command_scenario_refuse(t, result);
    carried_out_free(&a);
    carried_out_free(&b);
    return status;
}

static int run(const given *g)
{
    request r = {0};
    scenario s, t;
    if (!command_scenario_two(g, "'compare' needs two scenarios", "standard input can hold one scenario only") ||
        !options_take(g, &r) || !output_agrees(&r.output, g))
        return STATUS_USAGE;
    bool good = command_scenario_read(&r.output, g->arguments[0], &s);
    good = command_scenario_read(&r.output, g->arguments[1], &t) && good;
    int status = good ? answer(&r.output, &s, &t) : STATUS_USAGE;
    scenario_free(&s);
    scenario_free(&t);
    return status;
}

const command command_compare = {
    .name = "compare",
    .argument = "FILE",
    .several = "FILE FILE",
    .summary = "two scenarios side by side",
    .description =
        "Carries out two scenarios, A and B, and says what comes of each, in which it is worse, and what they differ "
        "in. Acts are matched by the time from the start; a picture shows both on the clock of the first. "
        "A prediction is never a permission.",
    .example = PROGRAM_NAME " compare water-while-quiet.bath water-while-boiling.bath",
    COMMAND_PARTS(compare_documents),
};
