#include <stdlib.h>

#include "base/memory.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/lesson/answer.h"

typedef struct {
    output output;
} request;

static const option options[] = {
    OUTPUT_HTML(request,
                "a page that replays it: one file for any browser, to show, to step through and to print; '-' writes it "
                "instead of the report"),
    OUTPUT_JSON(request, "what happens as JSON, in SI units"),
    OUTPUT_UNITS(request, "report and of the page"),
    INPUT_SHEET(request),
};

static const output_writers writers = {.text = lesson_report, .json = lesson_documents, .html = lesson_page};

/* Bounds of what the page leaves out: wider where it would be too large to be sent about, bytes. */
static const double slacks[] = {1, 2, 4, 8};
static const size_t page_most = 200 * 1024;

static bool replays(lesson_answer *a, unit_system s, double slack)
{
    bool good = true;
    for (size_t i = 0; i < a->count && good; i++) {
        replay_free(&a->runs[i].replay);
        good = replay_of(&a->runs[i].done, s, slack, &a->runs[i].replay);
    }
    return good;
}

static size_t page_size(const lesson_answer *a, const output *o)
{
    char *text;
    size_t size = 0;
    FILE *to = memory_stream(&text, &size);
    if (to == NULL)
        return 0;
    lesson_page(a, o, NULL, NULL, to);
    memory_stream_close(to, &text);
    free(text);
    return size;
}

static bool fits(lesson_answer *a, const output *o)
{
    size_t size = 0;
    for (size_t i = 0; i < sizeof slacks / sizeof slacks[0]; i++) {
        if (!replays(a, o->system, slacks[i]))
            return false;
        size = o->html != NULL ? page_size(a, o) : 0;
        if (size <= page_most)
            return true;
    }
    return program_complain("the page would have %zu kB, over the %zu that a page may have: give it a shorter shift",
                            size / 1024, page_most / 1024);
}

static int hand_out(const output *to, lesson_answer *a)
{
    bool stopped = false;
    for (size_t i = 0; i < a->count; i++)
        stopped = stopped || carried_out_stopped(&a->runs[i].done);
    int status = fits(a, to) ? output_write(&writers, to, a, stopped ? STATUS_STOPPED : STATUS_DONE) : STATUS_STOPPED;
    for (size_t i = 0; i < a->count; i++)
        replay_free(&a->runs[i].replay);
    return status;
}

static int answer(const output *to, const scenario scenarios[], size_t count)
{
    static const char *const names[LESSON_RUNS] = {"A", "B"};
    lesson_answer a = {.count = 0};
    int status = STATUS_DONE;
    while (a.count < count && status == STATUS_DONE) {
        const scenario *s = &scenarios[a.count];
        boil_run_options o = replay_options(&s->schedule);
        lesson_run *r = &a.runs[a.count];
        r->name = names[a.count];
        int result = carried_out_of(s, &o, &r->done);
        if (result == BOIL_OK)
            a.count++;
        else
            status = command_scenario_refuse(s, result);
    }
    if (status == STATUS_DONE)
        status = hand_out(to, &a);
    for (size_t i = 0; i < a.count; i++)
        carried_out_free(&a.runs[i].done);
    return status;
}

static bool names_files(const given *g)
{
    if (g->arguments_count < 1 || g->arguments_count > LESSON_RUNS)
        return program_complain("'lesson' needs one scenario, or two to be seen beside each other");
    return g->arguments_count == 1 || command_scenario_two(g, "", "standard input can hold one scenario only");
}

static int run(const given *g)
{
    request r = {0};
    scenario s[LESSON_RUNS] = {0};
    bool good = true;
    if (!names_files(g) || !options_take(g, &r) || !output_agrees(&r.output, g))
        return STATUS_USAGE;
    for (size_t i = 0; i < g->arguments_count; i++)
        good = command_scenario_read(&r.output, g->arguments[i], &s[i]) && good;
    int status = good ? answer(&r.output, s, g->arguments_count) : STATUS_USAGE;
    for (size_t i = 0; i < g->arguments_count; i++)
        scenario_free(&s[i]);
    return status;
}

const command command_lesson = {
    .name = "lesson",
    .argument = "FILE",
    .several = "FILE [FILE]",
    .summary = "one scenario, or two beside each other, replayed",
    .description =
        "Carries out a scenario, or two, and tells what is done and what comes of it, an event a line; with --html as a "
        "page on which the tanks boil, rise and come over the rim before one's eyes, A beside B on one clock. The page "
        "is one file, fetches nothing, slows down by itself where it matters, and prints as a handout of two pages. "
        "A prediction is never a permission: nothing learned there allows anything at a real tank.",
    .example = PROGRAM_NAME " lesson quiet.bath boiling.bath --html water.html",
    COMMAND_PARTS(lesson_documents),
};
