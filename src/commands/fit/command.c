#include "base/memory.h"
#include "base/patience.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/fit/answer.h"

typedef struct {
    fit_weights weights;
    output output;
} request;

/* clang-format off */
static const option options[] = {
    {"thermometer", "DIFFERENCE", "standard deviation of a temperature read; default 0.5 K", OPTION_QUANTITY,
     INTO(weights.temperature_K), DIM_DIFFERENCE, .within = {"K", 0.001, 20}},
    {"dipstick", "LENGTH", "standard deviation of a level read; default 5 mm", OPTION_QUANTITY,
     INTO(weights.level_m), DIM_LENGTH, .within = {"mm", 0.1, 500}},
    OUTPUT_UNITS(request, "report"),
    OUTPUT_JSON(request, "the outcome as JSON, in SI units"),
    OUTPUT_CSV(request, "also write readings and runs as CSV, in SI units; '-' writes them instead of the report"),
    OUTPUT_PLOT_INSTEAD(request, "draw readings and runs"),
    INPUT_SHEET(request),
};
/* clang-format on */

static const output_writers writers = {.text = fit_report, .json = fit_documents, .csv = fit_csv, .draw = fit_picture};

/* Why there is no answer. */
static int refuse(const fit_answer *f, fit_end end, const scenario *s)
{
    if (memory_was_refused())
        return STATUS_STOPPED;
    switch (end) {
    case FITTING_FEW:
        program_complain("%s: too few to fit %s: %s within the scenario's time, %s outside it", text_plain(f->log_path).text,
                         format_count(f->problem.parameters, "number", "numbers").text,
                         format_count(f->temperatures + f->levels, "reading", "readings").text,
                         format_count(f->left_out, "row", "rows").text);
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

static int answer(const request *r, scenario_text *written, const scenario *s, const fit_log *l, const char *log_path)
{
    fit_answer f;
    patience_begin();
    fit_end end = fit_run(written, s, l, &r->weights, &f);
    f.log_path = log_path;
    int status = end == FITTING_DONE ? output_write(&writers, &r->output, &f, f.fit.converged ? STATUS_DONE : STATUS_STOPPED)
                                     : refuse(&f, end, s);
    fit_free(&f);
    return status;
}

static bool log_read(const char *path, const scenario *s, fit_log *l)
{
    messages m;
    messages_init(&m);
    return command_scenario_told(fit_log_read(path, s->start_s, l, &m), &m);
}

static int run(const given *g)
{
    request r = {.weights = {0.5, 5e-3}};
    scenario_text written;
    scenario s;
    fit_log l = {0};
    int status = STATUS_USAGE;
    if (!command_scenario_two(g, "'fit' needs a scenario and the log of a real tank",
                              "standard input can hold one of the two only") ||
        !options_take(g, &r) || !output_agrees(&r.output, g))
        return STATUS_USAGE;
    if (command_scenario_text(&r.output, g->arguments[0], &written, &s) && log_read(g->arguments[1], &s, &l)) {
        command_scenario_jobs(&s);
        status = answer(&r, &written, &s, &l, g->arguments[1]);
    }
    fit_log_free(&l);
    scenario_free(&s);
    scenario_text_free(&written);
    return status;
}

const command command_fit = {
    .name = "fit",
    .argument = "FILE",
    .several = "FILE LOG",
    .summary = "the model's uncertain numbers from the log of a real tank",
    .description = "Narrows the numbers of the scenario's section [uncertain] down to those with which its run agrees best "
                   "with what was measured. Their spreads are what was known before, and count as one reading each; lists stay "
                   "as they are. LOG is a CSV file with a header such as 'time,temperature degF,still level in'; time by the "
                   "clock. The schedule of FILE must say what was done that day.",
    .example = PROGRAM_NAME " fit night.bath night-log.csv --thermometer '1 degF'",
    COMMAND_PARTS(fit_documents),
};
