#include <string.h>

#include "base/boil.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/compare/output.h"
#include "describe/trace.h"

enum { JSON, CSV, PLOT, UNITS, OPTIONS };

static const option options[OPTIONS] = {
    [JSON] = {"json", NULL, "both side by side as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write what comes of both as CSV, in SI units; '-' writes it instead of the report"},
    [PLOT] = {"plot", "FILE", "draw one over the other with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal"},
    [UNITS] = {"units", "us|si", "units of the report; default us"},
};

typedef struct {
    unit_system system;
    outputs out;
} request;

static bool request_read(const given *g, request *r)
{
    *r = (request){.out = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]}};
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], &r->system);
    if (g->arguments_count != 2) {
        program_complain("'compare' needs two scenarios");
        return false;
    }
    if (strcmp(g->arguments[0], "-") == 0 && strcmp(g->arguments[1], "-") == 0) {
        program_complain("standard input can hold one scenario only");
        return false;
    }
    return plot_read(g->values[PLOT], &r->out.plot) && outputs_agree(&r->out);
}

static bool draw(const request *r, const compare_answer *c)
{
    boil_history a, b;
    boil_run_options o = boil_run_options_default();
    picture_drawn drawn;
    picture_problem problem = {"out of memory"};
    if (trace_of(c->a->scenario, &o, &a) != BOIL_OK)
        return plot_failed(&r->out.plot, &problem);
    if (trace_of(c->b->scenario, &o, &b) != BOIL_OK) {
        boil_history_free(&a);
        return plot_failed(&r->out.plot, &problem);
    }
    bool good = compare_picture(c, &a, &b, r->system, r->out.plot.format, &drawn, &problem);
    boil_history_free(&a);
    boil_history_free(&b);
    return good ? plot_save(&r->out.plot, &drawn) : plot_failed(&r->out.plot, &problem);
}

static int answer(const request *r, const compare_answer *c)
{
    bool drawn = r->out.plot.path == NULL || draw(r, c);
    bool written = outputs_csv(&r->out, compare_csv, c);
    if (r->out.json)
        compare_json(c, stdout);
    else if (outputs_leave_report(&r->out))
        compare_report(c, r->system, stdout);
    return drawn && written && !outcome_stopped(c->a) && !outcome_stopped(c->b) ? STATUS_DONE : STATUS_STOPPED;
}

static int carry_out(const request *r, const scenario *s, const scenario *t)
{
    outcome a, b;
    boil_run_options o = boil_run_options_default();
    int result = outcome_of(s, &o, &a);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    result = outcome_of(t, &o, &b);
    int status = result == BOIL_OK ? answer(r, &(compare_answer){&a, &b}) : command_scenario_refuse(t, result);
    outcome_free(&a);
    outcome_free(&b);
    return status;
}

static int run(const given *g)
{
    request r;
    scenario s, t;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    bool good = command_scenario_read(g->arguments[0], &s);
    good = command_scenario_read(g->arguments[1], &t) && good;
    int status = good ? carry_out(&r, &s, &t) : STATUS_USAGE;
    scenario_free(&s);
    scenario_free(&t);
    return status;
}

const command command_compare = {
    .name = "compare",
    .argument = "FILE",
    .several = "FILE FILE",
    .summary = "two scenarios side by side",
    .description = "Carries out two scenarios, A and B, and says what differs in the settings and in what is done, and "
                   "what comes of it. Acts are matched by the time from the start; a picture shows both on the clock of "
                   "the first. A prediction is never a permission.",
    .example = PROGRAM_NAME " compare water-while-quiet.bath water-while-boiling.bath --plot pair.svg",
    .options = options,
    .options_count = OPTIONS,
    .documents = compare_documents,
    .run = run,
};
