#include <string.h>

#include "base/boil.h"
#include "base/program.h"
#include "base/text.h"
#include "cli/argument.h"
#include "cli/commands.h"
#include "cli/outputs.h"
#include "commands/fit/output.h"

enum { THERMOMETER, DIPSTICK, UNITS, JSON, CSV, PLOT, OPTIONS };

static const option options[OPTIONS] = {
    [THERMOMETER] = {"thermometer", "DIFFERENCE", "standard deviation of a temperature read; default 0.5 K"},
    [DIPSTICK] = {"dipstick", "LENGTH", "standard deviation of a level read; default 5 mm"},
    [UNITS] = {"units", "us|si", "units of the report; default us"},
    [JSON] = {"json", NULL, "the outcome as JSON, in SI units"},
    [CSV] = {"csv", "FILE", "also write readings and runs as CSV, in SI units; '-' writes them instead of the report"},
    [PLOT] = {"plot", "FILE",
              "draw readings and runs with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the report"},
};

typedef struct {
    fit_weights weights;
    unit_system system;
    outputs out;
} request;

static bool request_read(const given *g, request *r)
{
    static const bounds thermometer = {"K", 0.001, 20}, dipstick = {"mm", 0.1, 500};
    *r = (request){.weights = {0.5, 5e-3}, .out = {.json = g->values[JSON] != NULL, .csv = g->values[CSV]}};
    if (g->values[UNITS] != NULL)
        unit_system_named(g->values[UNITS], &r->system);
    if (g->arguments_count != 2) {
        program_complain("'fit' needs a scenario and the log of a real tank");
        return false;
    }
    if (strcmp(g->arguments[0], "-") == 0 && strcmp(g->arguments[1], "-") == 0) {
        program_complain("standard input can hold one of the two only");
        return false;
    }
    return plot_read(g->values[PLOT], &r->out.plot) && outputs_agree(&r->out) &&
           argument_quantity("thermometer", g->values[THERMOMETER], DIM_DIFFERENCE, &thermometer, &r->weights.temperature_K) &&
           argument_quantity("dipstick", g->values[DIPSTICK], DIM_LENGTH, &dipstick, &r->weights.level_m);
}

static bool draw(const request *r, const fit_answer *f)
{
    picture_drawn drawn;
    picture_problem problem;
    if (!fit_picture(f, r->system, r->out.plot.format, &drawn, &problem))
        return plot_failed(&r->out.plot, &problem);
    return plot_save(&r->out.plot, &drawn);
}

static int answer(const request *r, const fit_answer *f)
{
    bool written = outputs_csv(&r->out, fit_csv, f);
    written = (r->out.plot.path == NULL || draw(r, f)) && written;
    if (r->out.json)
        fit_json(f, stdout);
    else if (outputs_leave_report(&r->out))
        fit_report(f, r->system, stdout);
    return f->fit.converged && written ? STATUS_DONE : STATUS_STOPPED;
}

/* Why there is no answer. */
static int refuse(const fit_answer *f, fit_end end, const scenario *s)
{
    switch (end) {
    case FITTING_FEW:
        program_complain("%s: %zu readings within the scenario's time are too few to fit %zu numbers; %zu rows lie outside",
                         text_plain(f->log_path).text, f->temperatures + f->levels, f->problem.parameters, f->left_out);
        return STATUS_USAGE;
    case FITTING_NO_CASE:
        program_complain("%s: with the guess, the middle of each range, the run cannot be made or stops early", s->path);
        return STATUS_USAGE;
    case FITTING_NOTHING:
        return STATUS_USAGE;
    case FITTING_DONE:
    case FITTING_FAILED:
        break;
    }
    program_complain("%s: the search failed", s->path);
    return STATUS_STOPPED;
}

static int carry_out(const request *r, scenario_text *text, const scenario *s, const fit_log *l, const char *log_path)
{
    fit_answer f;
    fit_end end = fit_run(text, s, l, &r->weights, &f);
    f.log_path = log_path;
    int status = end == FITTING_DONE ? answer(r, &f) : refuse(&f, end, s);
    fit_free(&f);
    return status;
}

static int run(const given *g)
{
    request r;
    scenario_text text;
    scenario s = {0};
    fit_log l = {0};
    messages m;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    messages_init(&m);
    int status = STATUS_USAGE;
    if (scenario_text_read(g->arguments[0], &text, &m) && scenario_of_text(&text, NULL, 0, &s, &m) == BOIL_OK &&
        fit_log_read(g->arguments[1], s.start_s, &l, &m))
        status = carry_out(&r, &text, &s, &l, g->arguments[1]);
    messages_print(&m, stderr, PROGRAM_NAME);
    messages_free(&m);
    fit_log_free(&l);
    scenario_free(&s);
    scenario_text_free(&text);
    return status;
}

const command command_fit = {
    .name = "fit",
    .argument = "FILE",
    .several = "FILE LOG",
    .summary = "the model's uncertain numbers from the log of a real tank",
    .description =
        "Narrows the numbers of the scenario's section [uncertain] down to those with which its run agrees best with what was "
        "measured. Their spreads are what was known before, and count as one reading each; lists stay as they are. LOG is a "
        "CSV file with a header such as 'time,temperature "
        "degF,still level in'; time by the clock. The schedule of FILE must say what was done that day.",
    .example = PROGRAM_NAME " fit night.bath night-log.csv --thermometer '1 degF'",
    .options = options,
    .options_count = OPTIONS,
    .documents = fit_documents,
    .run = run,
};
