#include <stdlib.h>

#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/run/output.h"
#include "describe/report.h"
#include "describe/trace.h"
#include "describe/verdict.h"

typedef struct {
    boil_run_options run;
    bool strict;
    unsigned script;  /* SCRIPTS: none asked for */
    boil_closures of; /* BOIL_CLOSURES: not asked */
    output output;
} request;

/* In the order of the option's words: scripts, then choices. */
enum { SCRIPTS = LESSON_SCRIPTS + LESSON_CHOICES_MAX };

/* clang-format off */
static const option options[] = {
    OUTPUT_JSON(request, "the outcome as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the trace as CSV, in SI units; '-' writes it instead of the report"),
    OUTPUT_PLOT_INSTEAD(request, "draw it"),
    OUTPUT_HTML(request, "one page to read and to print: findings, run sheet by the clock, picture (if gnuplot is "
                         "there), all inputs; '-' writes it instead of the report"),
    {"of", "likely|likely-wide|grave|sudden|sudden-3|sudden-8|mild|mild-8|trigger",
     "trace another run of the set that a case is judged by, which the guide tells one by one; rows then every 1 s, and every 0.05 s "
     "while the level moves fast",
     OPTION_CHOICE, INTO(of)},
    {"script", "careful|reckless|idle|choice-1|choice-2|choice-3|choice-4",
     "of a lesson: the acts of this script, or of this answer to its question, beside those of [schedule]", OPTION_CHOICE,
     INTO(script)},
    {"step", "TIME", "time between rows of the trace; default 10 s", OPTION_QUANTITY,
     INTO(run.row_interval_s), DIM_TIME, .within = {"s", 0.1, 3600}},
    OUTPUT_UNITS(request, "report"),
    {"strict", NULL, "exit with 3 when a WARNING or DANGER was found", OPTION_FLAG, INTO(strict)},
    {"full", NULL, "all there is to tell: every finding, load and addition, account, balances", OPTION_FLAG, INTO(output.full)},
    {"brief", NULL, "the first line alone", OPTION_FLAG, INTO(output.brief)},
    {"verbose", NULL, "all, with the statistics of the run", OPTION_FLAG, INTO(output.verbose)},
    {"tolerance", "NUMBER", "advanced: error per step relative to each unknown's size", OPTION_NUMBER,
     INTO(run.tolerance), .within = {NULL, 1e-11, 1e-4}},
    INPUT_SHEET(request),
};
/* clang-format on */

static const double step_default_s = 10, step_of_s = 1, step_fast_s = 0.05;

static void csv(const void *answer, FILE *to)
{
    trace_csv(((const carried_out *)answer)->traced, to);
}

static void above(const void *answer, const output *o, FILE *to)
{
    text_wrapped(to, verdict_of(answer, o->system).text, 0, 0, REPORT_WIDTH);
}

static const output_writers writers = {run_report, run_documents, csv, run_picture, above, run_page};

/* What was found before it stopped counts for who asks by --strict. */
static int status_of(const request *r, const carried_out *o)
{
    bool stopped = carried_out_stopped(o);
    if (stopped)
        program_complain("%s: the run stopped early", o->scenario->path);
    if (r->strict && carried_out_gravest(o) >= BOIL_SEVERITY_WARNING)
        return STATUS_FOUND;
    return stopped ? STATUS_STOPPED : STATUS_DONE;
}

/* Of another run as closely as its surges want it. */
static void set_trace(request *r)
{
    bool of = r->of != BOIL_CLOSURES;
    r->run.traced = of ? r->of : BOIL_CLOSURES_LIKELY;
    r->run.row_fast_s = of ? step_fast_s : 0;
    if (!(r->run.row_interval_s > 0))
        r->run.row_interval_s = of ? step_of_s : step_default_s;
}

static int not_made(const scenario *s, boil_closures of, carried_out *done)
{
    program_complain("%s: no run '%s' is made of it: nothing afloat could make it graver; leave '--of' away", s->path,
                     boil_closures_name(of));
    carried_out_free(done);
    return STATUS_STOPPED;
}

static const scenario_script *script_of(const scenario *s, unsigned which)
{
    if (!s->lesson.scripted)
        return NULL;
    if (which < LESSON_SCRIPTS)
        return &s->scripts[which];
    return which - LESSON_SCRIPTS < s->lesson.choices_count ? &s->choices[which - LESSON_SCRIPTS] : NULL;
}

/* "Two gallons: careful", "Two gallons: answer 2"; NULL when memory is refused. */
static char *script_title(const scenario *s, unsigned which)
{
    return which < LESSON_SCRIPTS ? text_printed("%s: %s", s->title, lesson_script_words[which])
                                  : text_printed("%s: answer %u", s->title, which - LESSON_SCRIPTS + 1);
}

static int no_script(const scenario *s, unsigned which)
{
    if (!s->lesson.scripted)
        program_complain("%s: it has no scripts, as a lesson has: leave '--script' away", s->path);
    else
        program_complain("%s: [choices] has no answer %u: it has %zu", s->path, which - LESSON_SCRIPTS + 1,
                         s->lesson.choices_count);
    return STATUS_USAGE;
}

static int carry_out(request *r, const scenario *s)
{
    carried_out done;
    set_trace(r);
    int result = carried_out_of(s, &r->run, &done);
    if (result != BOIL_OK)
        return command_scenario_refuse(s, result);
    if (done.traced == NULL)
        return not_made(s, r->of, &done);
    int status = output_write(&writers, &r->output, &done, status_of(r, &done));
    carried_out_free(&done);
    return status;
}

static int answer(void *record, const scenario *s)
{
    request *r = record;
    if (r->script == SCRIPTS && s->lesson.scripted)
        program_complain("%s: a lesson, of which [schedule] alone is carried out; '--script careful' adds that script's acts",
                         s->path);
    if (r->script == SCRIPTS)
        return carry_out(r, s);
    const scenario_script *script = script_of(s, r->script);
    if (script == NULL)
        return no_script(s, r->script);
    scenario with = scenario_with(s, script);
    char *title = script_title(s, r->script);
    with.title = title != NULL ? title : s->title;
    int status = carry_out(r, &with);
    free(title);
    return status;
}

static int run(const given *g)
{
    request r = {.run = boil_run_options_default(), .script = SCRIPTS};
    r.of = BOIL_CLOSURES;
    return command_scenario_answer(g, &r, &r.output, answer);
}

const command command_run = {
    .name = "run",
    .argument = "FILE",
    .summary = "what happens to the bath, load by load",
    .description = "Carries out a scenario and says what decides: what is worst and when, whether each load's boil was back in "
                   "time, water, boiling point, level and freeboard, the gravest findings, and a chart over the clock; with "
                   "--full all there is to tell. FILE is a scenario; '-' reads it from standard input. A prediction is never "
                   "a permission: local codes, the supplier's data sheet and licensed practice come first. Face shield, apron, "
                   "gloves and boots; an eyewash within reach. Water only while the bath boils, slowly, and never onto dry "
                   "salt. No aluminium, zinc, tin, brass or any other non-ferrous metal.",
    .example = PROGRAM_NAME " run night.bath --units si --csv night.csv --step '5 s'",
    COMMAND_PARTS(run_documents),
};
