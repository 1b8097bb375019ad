#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/boil.h"
#include "base/program.h"
#include "base/text.h"
#include "base/whole_file.h"
#include "cli/argument.h"
#include "cli/commands.h"
#include "cli/plot.h"
#include "commands/explore/output.h"
#include "commands/explore/run.h"
#include "scenario/action_words.h"

enum { GRID, SAMPLES, SEED, THREADS, SHARD, MERGE, CSV, PLOT, UNITS, JSON, OPTIONS };

static const option options[OPTIONS] = {
    [GRID] = {"grid", "STEPS",
              "steps over one number, such as 'heat input = 200 kBtu/h to 500 kBtu/h : 7', what is uncertain being drawn "
              "anew in each"},
    [SAMPLES] = {"samples", "NUMBER",
                 "draws of what is uncertain, rounded up to 16 times a power of two; default 256; with n uncertain numbers, "
                 "each draw takes 1 + n/2 runs"},
    [SEED] = {"seed", "NUMBER", "of the random shifts; default 1"},
    [THREADS] = {"threads", "NUMBER", "runs at a time; default as many as there are processors"},
    [SHARD] = {"shard", "I/N", "only the rows of share I of N, as CSV, to be merged with those of the others"},
    [MERGE] = {"merge", NULL, "the FILEs are rows of the shards of one study: report on all of them"},
    [CSV] = {"csv", "FILE", "also write the rows as CSV, in SI units; '-' writes them instead of the report"},
    [PLOT] = {"plot", "FILE",
              "draw chances and causes with gnuplot: a .svg, .png or .pdf; '-' draws in the terminal instead of the report"},
    [UNITS] = {"units", "us|si", "units of the report; default us"},
    [JSON] = {"json", NULL, "the outcome as JSON, in SI units"},
};

enum { REPLICATES = 8, SAMPLES_DEFAULT = 256, SAMPLES_MOST = 1 << 20 };

typedef struct {
    const given *given;
    unsigned long samples, seed;
    uncertain_grid grid; /* steps 0: none */
    explore_work work;
    unit_system system;
    plot plot;
} request;

/* "3/10" */
static bool shard_read(const char *text, explore_work *w)
{
    char *end;
    unsigned long i = strtoul(text, &end, 10), n = 0;
    bool good = end != text && *end == '/' && text[0] != '-';
    if (good) {
        const char *second = end + 1;
        n = strtoul(second, &end, 10);
        good = end != second && *end == '\0' && second[0] != '-' && i >= 1 && i <= n && n <= 100000;
    }
    if (!good)
        program_complain("--shard: write which one of how many, such as 3/10");
    *w = good ? (explore_work){.shard = i - 1, .shards = n} : *w;
    return good;
}

/* A shard's rows go to standard output, and are not reported on. */
static bool outputs_agree(const request *r)
{
    const char *const *v = r->given->values;
    int to_stdout =
        (v[JSON] != NULL) + plot_is_terminal(&r->plot) + (whole_file_is_stdout(v[CSV]) || (v[SHARD] != NULL && v[CSV] == NULL));
    if (to_stdout > 1)
        program_complain("only one of --json, --plot - and the rows can go to standard output");
    else if (v[SHARD] != NULL && (v[JSON] != NULL || v[PLOT] != NULL))
        program_complain("with --shard there are rows only: draw and report when all are merged");
    else
        return true;
    return false;
}

static bool request_read(const given *g, request *r)
{
    static const bounds samples = {NULL, 1, SAMPLES_MOST}, seed = {NULL, 1, 4294967295.0}, threads = {NULL, 1, 1024};
    unsigned long count = 0;
    const char *const *v = g->values;
    *r = (request){.given = g, .samples = SAMPLES_DEFAULT, .seed = 1, .work.shards = 1};
    if (v[UNITS] != NULL)
        unit_system_named(v[UNITS], &r->system);
    if ((v[SHARD] != NULL && !shard_read(v[SHARD], &r->work)) ||
        (v[SAMPLES] != NULL && !argument_count("samples", v[SAMPLES], &samples, &r->samples)) ||
        (v[SEED] != NULL && !argument_count("seed", v[SEED], &seed, &r->seed)) ||
        (v[THREADS] != NULL && !argument_count("threads", v[THREADS], &threads, &count)) ||
        (v[GRID] != NULL && !argument_read("grid", v[GRID], uncertain_grid_read, &r->grid)))
        return false;
    r->work.threads = (int)count;
    r->work.progress = isatty(STDERR_FILENO) == 1;
    return plot_read(v[PLOT], &r->plot) && outputs_agree(r);
}

/* The study ------------------------------------------------------------------------------------------------------- */

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
    if (t->key != NULL && c->settings[key_index(t->key)].state == SETTING_ABSENT) {
        program_complain("--grid: '%s' has no value in this scenario", t->words);
        return false;
    }
    for (size_t i = 0; i < c->uncertain_count; i++)
        if (c->uncertain[i].thing.where == t->where) {
            program_complain("--grid: '%s' is uncertain in this scenario already", t->words);
            return false;
        }
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
    if (c->uncertain_count == 0 && r->grid.steps == 0) {
        program_complain("%s: nothing varies: it has no section [uncertain], and there is no --grid", c->path);
        return false;
    }
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
    if (explore_begin(s) == BOIL_OK)
        return true;
    program_complain("the study is too large for memory: fewer samples do");
    return false;
}

/* Answers --------------------------------------------------------------------------------------------------------- */

static bool rows_write(const explore_answer *s, const char *path)
{
    whole_file f;
    if (!whole_file_open(&f, path))
        return false;
    explore_csv_write(s, f.to);
    return whole_file_close(&f);
}

static bool draw(const request *r, const explore_answer *s)
{
    picture_drawn drawn;
    picture_problem problem;
    if (!explore_picture(s, r->system, r->plot.format, &drawn, &problem))
        return plot_failed(&r->plot, &problem);
    return plot_save(&r->plot, &drawn);
}

/* Everything that was asked for; without its picture the report stands all the same. */
static int answer(const request *r, const explore_answer *s)
{
    const char *const *v = r->given->values;
    const char *rows = v[CSV] != NULL ? v[CSV] : v[SHARD] != NULL ? "-" : NULL;
    bool written = rows == NULL || rows_write(s, rows), drawn = r->plot.path == NULL || draw(r, s);
    if (v[JSON] != NULL)
        explore_json(s, stdout);
    else if (v[SHARD] == NULL && !whole_file_is_stdout(rows) && !(plot_is_terminal(&r->plot) && drawn))
        explore_report(s, r->system, program_colour(stdout), stdout);
    return written && drawn ? STATUS_DONE : STATUS_STOPPED;
}

static int merge(const request *r)
{
    explore_answer s;
    int status = STATUS_USAGE;
    if (r->given->values[SHARD] != NULL || r->given->values[GRID] != NULL || r->given->values[SAMPLES] != NULL ||
        r->given->values[SEED] != NULL) {
        program_complain("with --merge the rows say what the study is");
        return STATUS_USAGE;
    }
    if (explore_csv_read(&s, r->given->arguments, r->given->arguments_count))
        status = answer(r, &s);
    explore_free(&s);
    return status;
}

static int make(request *r, scenario_text *text, const scenario *c)
{
    explore_answer s;
    int status = STATUS_USAGE;
    if (explore_set_up(&s, r, c)) {
        bool whole = explore_run(&s, text, &r->work);
        if (!whole)
            program_complain("%s: stopped after %zu of %zu runs", c->path, explore_count(&s, true), explore_count(&s, false));
        status = answer(r, &s);
        status = whole ? status : STATUS_STOPPED;
    }
    explore_free(&s);
    return status;
}

static int run(const given *g)
{
    request r;
    scenario_text text;
    scenario c = {0};
    messages m;
    if (!request_read(g, &r))
        return STATUS_USAGE;
    if (g->values[MERGE] != NULL)
        return merge(&r);
    if (g->arguments_count > 1) {
        program_complain("'explore' takes one FILE, except with --merge");
        return STATUS_USAGE;
    }
    messages_init(&m);
    int status = STATUS_USAGE;
    if (scenario_text_read(g->argument, &text, &m) && scenario_of_text(&text, NULL, 0, &c, &m) == BOIL_OK)
        status = make(&r, &text, &c);
    messages_print(&m, stderr, PROGRAM_NAME);
    messages_free(&m);
    scenario_free(&c);
    scenario_text_free(&text);
    return status;
}

const command command_explore = {
    .name = "explore",
    .argument = "FILE",
    .several = "FILE...",
    .summary = "the odds of each finding, and which number to measure",
    .description =
        "Runs a scenario many times with the numbers of its section [uncertain] drawn from their spreads, or in steps over "
        "one number, and tells the chance of each finding, the spread of recovery, level and temperature, and which of the "
        "numbers makes it. A large study is spread over any number of jobs with --shard, and put together with --merge: the "
        "answer is the same to the last digit.",
    .example = PROGRAM_NAME " explore uncertain-shift.bath --samples 512 --plot odds.svg",
    .options = options,
    .options_count = OPTIONS,
    .documents = explore_documents,
    .run = run,
};
