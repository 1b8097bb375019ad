#include <string.h>

#include "base/boil.h"
#include "base/program.h"
#include "base/text.h"
#include "base/whole_file.h"
#include "cli/argument.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/run/output.h"
#include "describe/outcome.h"
#include "describe/trace.h"
#include "describe/verdict.h"

enum { JSON, CSV, PLOT, HTML, STEP, UNITS, STRICT, VERBOSE, TOLERANCE, OPTIONS };

/* clang-format off */
static const option options[OPTIONS] = {
    [JSON] = {"json", NULL, "the outcome as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write the trace as CSV, in SI units; '-' writes it instead of the report"},
    [PLOT] = {"plot", "FILE", "draw it with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the report"},
    [HTML] = {"html", "FILE", "one page to read and to print: findings, run sheet by the clock, picture (if gnuplot is "
                              "there), all inputs; '-' writes it instead of the report"},
    [STEP] = {"step", "TIME", "time between rows of the trace; default 10 s"},
    [UNITS] = {"units", "us|si", "units of the report; default us"},
    [STRICT] = {"strict", NULL, "exit with 3 when a WARNING or DANGER was found"},
    [VERBOSE] = {"verbose", NULL, "with the statistics of the run"},
    [TOLERANCE] = {"tolerance", "NUMBER", "advanced: error per step relative to each unknown's size"},
};
/* clang-format on */

typedef struct {
    boil_run_options run;
    report_style style;
    bool strict;
    outputs out;
} request;

static const double step_default_s = 10;

#define TERMINAL_WIDTH 80 /* of the picture there */

/* False, with a complaint, when an option makes no sense. */
static bool request_read(const given *g, request *r)
{
    static const bounds step = {"s", 0.1, 3600}, tolerance = {NULL, 1e-11, 1e-4};
    *r = (request){.run = boil_run_options_default(),
                   .strict = g->values[STRICT] != NULL,
                   .out = {.json = g->values[JSON] != NULL, .csv = g->values[CSV], .html = g->values[HTML]},
                   .style.verbose = g->values[VERBOSE] != NULL};
    r->run.row_interval_s = step_default_s;
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], &r->style.system);
    r->style.colour = program_colour(stdout);
    if (!argument_quantity("step", g->values[STEP], DIM_TIME, &step, &r->run.row_interval_s))
        return false;
    if (g->values[TOLERANCE] != NULL && !argument_number("tolerance", g->values[TOLERANCE], &tolerance, &r->run.tolerance))
        return false;
    if (!plot_read(g->values[PLOT], &r->out.plot))
        return false;
    return outputs_agree(&r->out);
}

static bool draw(const request *r, const outcome *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    boil_history trace;
    *drawn = (picture_drawn){0};
    *problem = (picture_problem){"out of memory"};
    if (trace_of(o->scenario, &r->run, &trace) != BOIL_OK)
        return false;
    bool good = run_picture(o, &trace, r->style.system, format, drawn, problem);
    boil_history_free(&trace);
    return good;
}

static bool plot_write(const request *r, const outcome *o)
{
    picture_drawn drawn;
    picture_problem problem;
    if (!draw(r, o, r->out.plot.format, &drawn, &problem))
        return plot_failed(&r->out.plot, &problem);
    if (plot_is_terminal(&r->out.plot))
        text_wrapped(stdout, verdict_of(o, r->style.system).text, 0, 0, TERMINAL_WIDTH);
    return plot_save(&r->out.plot, &drawn);
}

/* The page is whole without its picture: it says why there is none. */
static bool html_write(const request *r, const outcome *o)
{
    picture_drawn drawn;
    picture_problem problem;
    whole_file f;
    if (!draw(r, o, PICTURE_SVG, &drawn, &problem))
        program_complain("no picture in '%s': %s", r->out.html, problem.text);
    bool good = whole_file_open(&f, r->out.html);
    if (good)
        page(o, r->style.system, &drawn, &problem, f.to);
    picture_forget(&drawn);
    return good && whole_file_close(&f);
}

/* Everything that was asked for; what can be written is, even when something else cannot. */
static int answer(const request *r, const outcome *o)
{
    bool written = outputs_csv(&r->out, trace_csv, &o->central);
    written = (r->out.plot.path == NULL || plot_write(r, o)) && written;
    written = (r->out.html == NULL || html_write(r, o)) && written;
    if (r->out.json)
        run_json(o, stdout);
    else if (outputs_leave_report(&r->out))
        report(o, &r->style, stdout);
    if (outcome_stopped(o))
        program_complain("%s: the run stopped early", o->scenario->path);
    if (!written || outcome_stopped(o))
        return STATUS_STOPPED;
    return r->strict && outcome_gravest(o) >= BOIL_WARNING ? STATUS_FOUND : STATUS_DONE;
}

static int carry_out(const request *r, const scenario *s)
{
    outcome o;
    int result = outcome_of(s, &r->run, &o);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    int status = answer(r, &o);
    outcome_free(&o);
    return status;
}

static int run(const given *g)
{
    request r;
    scenario s;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    int status = command_scenario_read(g->argument, &s) ? carry_out(&r, &s) : STATUS_USAGE;
    scenario_free(&s);
    return status;
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
    .options_count = OPTIONS,
    .documents = run_documents,
    .run = run,
};
