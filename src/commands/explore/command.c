#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/explore/answer.h"

enum { REPLICATES = 8, SAMPLES_DEFAULT = 256, SAMPLES_MOST = 1 << 20 };

typedef struct {
    unsigned long samples, seed, threads;
    uncertain_grid grid; /* steps 0: none */
    explore_work work;
    bool merge;
    output output;
} request;

/* "3/10" */
static bool shard_read(cursor *c, void *into)
{
    explore_work *w = into;
    char *end;
    unsigned long i = strtoul(c->at, &end, 10), n = 0;
    bool good = end != c->at && *end == '/' && c->at[0] != '-';
    if (good) {
        const char *second = end + 1;
        n = strtoul(second, &end, 10);
        good = end != second && *end == '\0' && second[0] != '-' && i >= 1 && i <= n && n <= 100000;
    }
    if (good)
        *w = (explore_work){.shard = i - 1, .shards = n};
    else
        cursor_error(c, c->at, "write which one of how many, such as 3/10");
    return good;
}

/* clang-format off */
static const option options[] = {
    {"grid", "STEPS", "steps over one number, such as 'heat input = 200 kBtu/h to 500 kBtu/h : 7', what is uncertain being "
     "drawn anew in each", OPTION_READ, INTO(grid), .read = uncertain_grid_read},
    {"samples", "NUMBER", "draws of what is uncertain, rounded up to 16 times a power of two; default 256; with n uncertain "
     "numbers, each draw takes 1 + n/2 runs", OPTION_COUNT,
     INTO(samples), .within = {NULL, 1, SAMPLES_MOST}},
    {"seed", "NUMBER", "of the random shifts; default 1", OPTION_COUNT, INTO(seed), .within = {NULL, 1, 4294967295.0}},
    {"threads", "NUMBER", "runs at a time; default as many as there are processors", OPTION_COUNT,
     INTO(threads), .within = {NULL, 1, 1024}},
    {"shard", "I/N", "only the rows of share I of N, as CSV, to be merged with those of the others", OPTION_READ,
     INTO(work), .read = shard_read},
    {"merge", NULL, "the FILEs are rows of the shards of one study: report on all of them", OPTION_FLAG, INTO(merge)},
    OUTPUT_CSV(request, "also write the rows as CSV, in SI units; '-' writes them instead of the report"),
    OUTPUT_PLOT_INSTEAD(request, "draw chances and causes"),
    OUTPUT_UNITS(request, "report"),
    OUTPUT_JSON(request, "the outcome as JSON, in SI units"),
    INPUT_SHEET(request),
};
/* clang-format on */

/* Not a sentence about two things at once: the first that does not go together. */
static bool given_together(const given *g)
{
    static const char *const of_study[] = {"shard", "grid", "samples", "seed"};
    bool merge = options_given(g, "merge"), study = false;
    for (size_t i = 0; i < sizeof of_study / sizeof of_study[0]; i++)
        study = study || options_given(g, of_study[i]);
    if (options_given(g, "shard") && (options_given(g, "json") || options_given(g, "plot")))
        return program_complain("with --shard there are rows only: draw and report when all are merged");
    if (merge && study)
        return program_complain("with --merge the rows say what the study is");
    if (!merge && g->arguments_count > 1)
        return program_complain("'explore' takes one FILE, except with --merge");
    return true;
}

static explore_input input_of(const uncertain *u)
{
    explore_input i = {.dimension = u->thing.dimension, .spread = u->spread};
    memcpy(i.words, u->thing.words, sizeof i.words);
    memcpy(i.as_written, u->as_written, sizeof i.as_written);
    return i;
}

static size_t points_for(unsigned long samples)
{
    size_t points = 1;
    while (2 * REPLICATES * points < samples)
        points *= 2;
    return points;
}

static void add_loads(explore_answer *s, const scenario *c)
{
    for (size_t i = 0; i < c->schedule.count && s->load_count < EXPLORE_LOADS_MAX; i++) {
        if (action_load_of(&c->schedule.actions[i]) == NULL)
            continue;
        explore_load *l = &s->loads[s->load_count++];
        l->time_s = c->schedule.actions[i].time_s;
        snprintf(l->words, sizeof l->words, "%.127s", text_plain(action_name_of(c, i).text).text);
    }
}

static bool grid_fits(const scenario *c, const uncertain_thing *t)
{
    if (!scenario_has(c, t))
        return program_complain("--grid: '%s' has no value in this scenario", t->words);
    if (t->key != NULL && t->key->need == NEED_STRENGTH && !scenario_names_salts(c))
        return program_complain("--grid: where '%s' varies there may be salts: name them in [bath] of %s", t->words, c->path);
    for (size_t i = 0; i < c->uncertain_count; i++)
        if (c->uncertain[i].thing.where == t->where)
            return program_complain("--grid: '%s' is uncertain in this scenario already", t->words);
    return true;
}

/* Points into the scenario and the request. False, with a complaint, when nothing varies. */
static bool explore_set_up(explore_answer *s, request *r, const scenario *c)
{
    *s = (explore_answer){.start_s = c->start_s,
                          .limit_s = c->plant.limits.recovery_s,
                          .freeboard_limit_m = c->plant.limits.freeboard_m,
                          .input_count = c->uncertain_count,
                          .plan = {c->uncertain_count, points_for(r->samples), REPLICATES, (uint32_t)r->seed}};
    snprintf(s->title, sizeof s->title, "%.199s", text_plain(c->title).text);
    snprintf(s->path, sizeof s->path, "%.299s", text_plain(c->path).text);
    if (c->uncertain_count == 0 && r->grid.steps == 0)
        return program_complain("%s: nothing varies: it has no section [uncertain], and there is no --grid", c->path);
    if (r->grid.steps > 0) {
        if (!grid_fits(c, &r->grid.over.thing))
            return false;
        s->grid = (explore_grid){input_of(&r->grid.over), r->grid.steps};
        r->work.things[r->work.thing_count++] = &r->grid.over.thing;
    }
    for (size_t i = 0; i < c->uncertain_count; i++) {
        s->inputs[i] = input_of(&c->uncertain[i]);
        r->work.things[r->work.thing_count++] = &c->uncertain[i].thing;
    }
    add_loads(s, c);
    return explore_begun(s);
}

static const output_writers writers = {
    .text = explore_report, .json = explore_documents, .csv = explore_csv_write, .draw = explore_picture};
static const output_writers rows_only = {.csv = explore_csv_write};

static int merge(const request *r, const given *g)
{
    explore_answer s;
    bool good = explore_csv_read(&s, g->arguments, g->arguments_count);
    int status = good ? output_write(&writers, &r->output, &s, STATUS_DONE) : STATUS_USAGE;
    explore_free(&s);
    return status;
}

static int make(request *r, bool shard, scenario_text *written, const scenario *c)
{
    explore_answer s;
    int status = STATUS_USAGE;
    command_scenario_jobs(c);
    if (explore_set_up(&s, r, c)) {
        explore_end end = explore_run(&s, written, &r->work);
        bool whole = end == EXPLORE_WHOLE;
        if (!whole)
            program_complain("%s: %sstopped after %zu of %zu runs", c->path, end == EXPLORE_NO_MEMORY ? "out of memory: " : "",
                             explore_count(&s, true), explore_count(&s, false));
        status = output_write(shard ? &rows_only : &writers, &r->output, &s, whole ? STATUS_DONE : STATUS_STOPPED);
    }
    explore_free(&s);
    return status;
}

static int run(const given *g)
{
    request r = {.samples = SAMPLES_DEFAULT, .seed = 1, .work.shards = 1};
    scenario_text written;
    scenario c;
    if (!given_together(g) || !options_take(g, &r))
        return STATUS_USAGE;
    bool shard = options_given(g, "shard");
    if (shard && r.output.csv == NULL)
        r.output.csv = "-"; /* a shard's rows are not reported on */
    if (!output_agrees(&r.output, g))
        return STATUS_USAGE;
    if (r.merge)
        return merge(&r, g);
    r.work.threads = (int)r.threads;
    r.work.progress = isatty(STDERR_FILENO) == 1;
    int status = command_scenario_text(&r.output, g->argument, &written, &c) ? make(&r, shard, &written, &c) : STATUS_USAGE;
    scenario_free(&c);
    scenario_text_free(&written);
    return status;
}

const command command_explore = {
    .name = "explore",
    .argument = "FILE",
    .several = "FILE...",
    .summary = "the odds of each finding, and which number to measure",
    .description = "Runs a scenario many times with the numbers of its section [uncertain] drawn from their spreads, or in "
                   "steps over one number, and tells the chance of each finding, the spread of recovery, level and "
                   "temperature, and which of the numbers makes it. A large study is spread over any number of jobs with "
                   "--shard, and put together with --merge: the answer is the same to the last digit.",
    .example = PROGRAM_NAME " explore uncertain-shift.bath --samples 512 --plot odds.svg",
    COMMAND_PARTS(explore_documents),
};
