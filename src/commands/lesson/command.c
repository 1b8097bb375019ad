#include <stdlib.h>

#include "base/memory.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/lesson/deck.h"
#include "commands/lesson/output.h"

typedef struct {
    const char *all; /* NULL: not asked for */
    output output;
} request;

static const option options[] = {
    OUTPUT_HTML(request,
                "a page that replays it: one file for any browser, to show, to step through and to print; '-' writes it "
                "instead of the report"),
    {"all", "DIR", "each FILE, a lesson, as a page in this folder, and a page that leads to them with the trainer's key",
     OPTION_FILE, INTO(all)},
    OUTPUT_JSON(request, "what happens as JSON, in SI units"),
    OUTPUT_UNITS(request, "report and of the page"),
    INPUT_SHEET(request),
};

static const output_writers writers = {.text = lesson_report, .json = lesson_documents, .html = lesson_page};

static int answer(const output *to, const scenario scenarios[], size_t count)
{
    const scenario *failed;
    lesson_answer *a = memory_needed(calloc(1, sizeof *a));
    if (a == NULL)
        return STATUS_STOPPED;
    int status = STATUS_STOPPED;
    boil_outcome outcome = lesson_answer_of(scenarios, count, a, &failed);
    if (outcome != BOIL_OK)
        status = command_scenario_refuse(failed, outcome);
    else if (lesson_page_fits(a, to))
        status = output_write(&writers, to, a, lesson_stopped(a) ? STATUS_STOPPED : STATUS_DONE);
    lesson_answer_free(a);
    free(a);
    return status;
}

static bool names_files(const given *g)
{
    if (g->arguments_count > LESSON_SHOWN)
        return program_complain("'lesson' needs one scenario, or two to be seen beside each other");
    return g->arguments_count == 1 || command_scenario_two(g, "", "standard input can hold one scenario only");
}

static int one_or_two(const given *g, const output *o)
{
    scenario s[LESSON_SHOWN] = {0};
    bool good = true;
    if (!names_files(g))
        return STATUS_USAGE;
    for (size_t i = 0; i < g->arguments_count; i++)
        good = command_scenario_read(o, g->arguments[i], &s[i]) && good;
    int status = good ? answer(o, s, g->arguments_count) : STATUS_USAGE;
    for (size_t i = 0; i < g->arguments_count; i++)
        scenario_free(&s[i]);
    return status;
}

static int run(const given *g)
{
    request r = {0};
    if (!options_take(g, &r) || !output_agrees(&r.output, g))
        return STATUS_USAGE;
    if (r.all == NULL)
        return one_or_two(g, &r.output);
    if (r.output.html != NULL || r.output.json) {
        program_complain("--all writes pages of its own: leave %s away", r.output.json ? "--json" : "--html");
        return STATUS_USAGE;
    }
    return lesson_deck(g, &r.output, r.all);
}

const command command_lesson = {
    .name = "lesson",
    .argument = "FILE",
    .several = "FILE...",
    .summary = "a lesson, a scenario, or two beside each other, replayed",
    .description =
        "Carries out a scenario, or two, and tells what is done and what comes of it, an event a line; with --html as a "
        "page on which the tanks boil, rise and come over the rim before one's eyes, A beside B on one clock. The page "
        "is one file, fetches nothing, slows down by itself where it matters, and prints as a handout of two pages. "
        "Of a lesson, a scenario with a section [lesson], A is its reckless script and B the careful one; the page stops, "
        "asks, and goes on with the answer. "
        "A prediction is never a permission: nothing learned there allows anything at a real tank.",
    .example = PROGRAM_NAME " lesson quiet.bath boiling.bath --html water.html",
    COMMAND_PARTS(lesson_documents),
};
