#include <unistd.h>

#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/plan/answer.h"

typedef struct {
    unsigned long seed, threads;
    double odds; /* 0: not asked */
    bool now;
    output output;
} request;

/* "95 %" */
static bool odds_read(cursor *c, void *into)
{
    static const bounds within = {"%", 50, 99};
    quantity q;
    if (!quantity_share(c, "odds", &q) || !quantity_within(c, "odds", &q, &within))
        return false;
    *(double *)into = q.si;
    return true;
}

/* clang-format off */
static const option options[] = {
    {"write", "FILE", "write the scenario that carries the plan out, for 'run'; '-' writes it instead of the report", OPTION_FILE,
     INTO(output.write)},
    {"odds", "SHARE",
     "a plan that holds in this share, such as '95 %', of 128 draws of what is uncertain in [uncertain], and what it costs; default "
     "as [plan] says",
     OPTION_READ, INTO(odds), .read = odds_read},
    {"now", NULL, "plan the rest of the shift anew, from where [now] says that it stands", OPTION_FLAG, INTO(now)},
    {"seed", "NUMBER", "of the search, and of the draws; default 1", OPTION_COUNT, INTO(seed), .within = {NULL, 1, 4294967295.0}},
    {"threads", "NUMBER", "chains of the search at a time; default as many as there are processors", OPTION_COUNT, INTO(threads),
     .within = {NULL, 1, 1024}},
    OUTPUT_JSON(request, "the plan and the list's own order as JSON, in SI units"),
    OUTPUT_CSV(request, "also write the run sheet as CSV, in SI units; '-' writes it instead of the report"),
    OUTPUT_HTML(request, "also write a page to print: run sheet with boxes to tick, positions by the clock; '-' writes it instead of the report"),
    OUTPUT_UNITS(request, "report"),
    {"full", NULL, "also what the list's own order breaks", OPTION_FLAG, INTO(output.full)},
    INPUT_SHEET(request),
};
/* clang-format on */

static const output_writers writers = {.text = plan_report, .json = plan_documents, .csv = plan_csv, .html = plan_page};

static int hand_out(const request *r, const scenario_text *text, const plan_answer *a)
{
    if (a->stopped)
        program_complain("%s: stopped: this is what was found by then", a->scenario->path);
    const char *to = r->output.write;
    bool written = to == NULL || plan_write(a, text, to);
    return output_write(&writers, &r->output, a, plan_works(a) && written && !a->stopped ? STATUS_DONE : STATUS_STOPPED);
}

static int answer(const request *r, scenario_text *text, const scenario *s, const plan_rest *rest)
{
    plan_answer a;
    boil_outcome outcome;
    plan_work w = {r->seed, r->threads, isatty(STDERR_FILENO) == 1, r->odds};
    int status = STATUS_USAGE;
    bool good =
        plan_begin(&a, s, rest, r->output.system, &outcome) && plan_jobs_fit(&a) && (!(w.odds > 0) || plan_odds_possible(&a));
    if (good)
        outcome = plan_seek(&a, &w);
    if (good && outcome == BOIL_OK && w.odds > 0)
        outcome = plan_seek_odds(&a, text, &w);
    if (good && outcome == BOIL_OK)
        outcome = plan_explain(&a);
    if (outcome != BOIL_OK)
        status = command_scenario_refuse(s, outcome);
    else if (good)
        status = hand_out(r, text, &a);
    plan_free(&a);
    return status;
}

static int answer_rest(const request *r, scenario_text *text, const scenario *s)
{
    plan_rest rest;
    boil_outcome outcome;
    int status = STATUS_USAGE;
    if (plan_rest_of(s, &rest, &outcome))
        status = answer(r, text, &rest.scenario, &rest);
    else if (outcome != BOIL_OK)
        status = command_scenario_refuse(s, outcome);
    plan_rest_free(&rest);
    return status;
}

static int run(const given *g)
{
    request r = {.seed = 1};
    scenario_text text;
    scenario s;
    if (!options_take(g, &r) || !output_agrees(&r.output, g))
        return STATUS_USAGE;
    int status = STATUS_USAGE;
    bool read = command_scenario_text(&r.output, g->argument, &text, &s);
    if (read && !r.now && s.now.line > 0)
        program_complain("%s:%zu: this plans the whole shift: '--now' plans the rest of it from [now]", s.path, s.now.line);
    if (read && !(r.odds > 0))
        r.odds = s.plan.odds;
    if (read)
        status = r.now ? answer_rest(&r, &text, &s) : answer(&r, &text, &s, NULL);
    scenario_free(&s);
    scenario_text_free(&text);
    return status;
}

const command command_plan = {
    .name = "plan",
    .argument = "FILE",
    .summary = "from a list of jobs to a run sheet that holds",
    .description =
        "Finds for the jobs of a scenario, in [jobs] or in the file that [plan] names, which hang together in a dip, when each "
        "dip goes in and comes out, and when water is poured and salts are put back that parts carry out, so that the last is "
        "out as soon as may be: within positions, hoist, breaks, due times and the limits of the bath. What is found is "
        "carried out by all the runs that judge a case, "
        "and stands beside the list's own order. That none was found does not mean that there is none. A prediction is never "
        "a permission.",
    .example = PROGRAM_NAME " plan short-morning.bath --write morning.bath",
    COMMAND_PARTS(plan_documents),
};
