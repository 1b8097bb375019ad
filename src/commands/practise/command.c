#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/memory.h"
#include "files/place.h"
#include "base/program.h"
#include "files/whole_file.h"
#include "base/words.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "commands/practise/lessons.h"
#include "practise/back_page.h"
#include "practise/screen/screen.h"
#include "terminal/terminal.h"

#define SPEED_USUAL 20.0
#define SPEED_MOST 3600.0

typedef struct {
    const char *file, *orders, *save;
    bool lines, lessons;
    double speed;
    output output;
} request;

/* "20x", or "20". */
static bool read_speed(cursor *c, void *into)
{
    double times;
    cursor number = *c;
    if (number.end > number.at && number.end[-1] == 'x')
        number.end--;
    if (!quantity_number(&number, "speed", &times))
        return false;
    if (!(times >= 1 && times <= SPEED_MOST))
        return cursor_error(c, c->at, "must be 1x to %gx", SPEED_MOST);
    memcpy(into, &times, sizeof times);
    c->at = c->end;
    return true;
}

/* clang-format off */
static const option options[] = {
    {"script", "FILE", "orders from a file, a line each, in place of keys; '-' reads them from standard input", OPTION_FILE, INTO(orders)},
    {"lines", NULL, "no screen: orders in, what happens out, a line each", OPTION_FLAG, INTO(lines)},
    {"speed", "TIMES", "of the clock on the screen, times as fast as a real one: 20x; that is the default", OPTION_READ, INTO(speed), .read = read_speed},
    {"lessons", NULL, "list the lessons that come with the program, and where they are", OPTION_FLAG, INTO(lessons)},
    OUTPUT_HTML(request, "at the end write the shift as a page that replays it, beside the same shift done with care"),
    {"save", "FILE", "at the end write the shift as it was worked: a scenario like any other", OPTION_FILE, INTO(save)},
    OUTPUT_UNITS(request, "screen"),
    INPUT_SHEET(request),
};
/* clang-format on */

static const document none[] = {{0}};

/* What is saved is written over nothing that is read. */
static bool spares(const char *with, const char *path, const char *read, const char *what)
{
    const char *named = strcmp(read, "-") == 0 ? path : read;
    return !place_is_read(path, read) || program_complain("--%s would write over the %s it reads, '%s': name another file",
                                                          with, what, words_quoted(named, strlen(named)).text);
}

/* Nor over what the scenario names. */
static bool spares_parts(const char *save, const scenario_text *t)
{
    return (t->sheet.name == NULL || spares("save", save, t->sheet.name, "run sheet")) &&
           (t->jobs.name == NULL || spares("save", save, t->jobs.name, "list of jobs"));
}

/* Said before the shift, not after it. */
static bool has_room(const char *save)
{
    char *folder = memory_needed(place_folder(save));
    bool good = folder != NULL && access(folder, W_OK) == 0;
    int why = errno;
    free(folder);
    return good || program_complain("could not write beside '%s': %s", words_quoted(save, strlen(save)).text, strerror(why));
}

static bool agrees(const request *r)
{
    bool file_is_standard = strcmp(r->file, "-") == 0;
    if (whole_file_is_stdout(r->save) || whole_file_is_stdout(r->output.html))
        return program_complain("--%s needs the name of a file", whole_file_is_stdout(r->save) ? "save" : "html");
    if (file_is_standard && (r->orders == NULL || strcmp(r->orders, "-") == 0))
        return program_complain(
            "the scenario and the orders cannot both come from standard input: name a file for one of them");
    const char *orders = r->orders != NULL ? r->orders : "-", *page = r->output.html;
    if (page != NULL && !(has_room(page) && spares("html", page, orders, "orders")))
        return false;
    if (r->save == NULL)
        return true;
    if (page != NULL && place_same(page, r->save))
        return program_complain("--save and --html would write the same file: name two");
    if (place_is_open(r->save, STDOUT_FILENO))
        return program_complain("--save would write over the file that standard output goes to: name another file");
    return has_room(r->save) && spares("save", r->save, r->file, "FILE") && spares("save", r->save, orders, "orders");
}

/* The shift as it was worked. */
static bool save(const shift *s, const char *path)
{
    whole_file to;
    size_t length;
    char *text = journal_text(&s->journal, JOURNAL_DONE, &length);
    bool good = text != NULL && whole_file_open(&to, path);
    if (good) {
        fwrite(text, 1, length, to.to);
        good = whole_file_close(&to);
    }
    free(text);
    return good;
}

/* Beside the same shift done with care; true also where none was asked for. */
static bool write_page(const request *r, const shift *s)
{
    bool written = true;
    boil_outcome outcome = r->output.html != NULL ? back_page_write(s, r->output.system, r->output.html, &written) : BOIL_OK;
    if (outcome != BOIL_OK)
        command_scenario_refuse(s->scenario, outcome);
    return outcome == BOIL_OK && written;
}

static int by_lines(const request *r, const scenario *read, shift *s)
{
    const lines_options o = {r->orders != NULL ? r->orders : "-", r->orders == NULL && isatty(STDIN_FILENO) == 1,
                             r->output.system, read, stdout};
    lines_outcome end = lines_practise(s, &o);
    bool done = !end.unread && !end.refused, saved = !done || r->save == NULL || save(s, r->save);
    saved = (!done || write_page(r, s)) && saved;
    if (end.refused)
        memory_refused();
    if (end.refused || !saved)
        return STATUS_STOPPED;
    if (end.unread || end.mistaken)
        return STATUS_USAGE;
    return end.never || end.stopped ? STATUS_STOPPED : STATUS_DONE;
}

/* Where it could not be kept as was asked, another place is asked for: a shift is not lost for a name. */
static bool keep(const shift *s, const request *r, const scenario_text *t, screen_outcome *end)
{
    char *path = end->save.text;
    while (!(spares("save", path, r->file, "FILE") && spares_parts(path, t) && save(s, path))) {
        if (end->signal != 0 || end->refused)
            return false;
        fputs("keep the shift in (empty: nowhere): ", stdout);
        fflush(stdout);
        if (fgets(path, sizeof end->save.text, stdin) == NULL)
            return false;
        path[strcspn(path, "\n")] = '\0';
        if (path[0] == '\0')
            return false;
    }
    return true;
}

/* What ended it ends the program, once the shift is kept and the terminal as it was. */
static int by_screen(const request *r, const scenario_text *text, const scenario *read, shift *s)
{
    const screen_options o = {r->output.system, read, r->speed, r->save, r->output.html};
    screen_outcome end = screen_practise(s, &o);
    if (end.refused)
        memory_refused();
    if (end.unusable)
        return by_lines(r, read, s);
    bool asked = end.save.text[0] != '\0';
    bool saved = !asked || keep(s, r, text, &end);
    if (asked && saved && !end.refused)
        printf("kept in %s\n", text_plain(end.save.text).text);
    saved = (end.refused || write_page(r, s)) && saved;
    fflush(stdout);
    if (end.signal != 0)
        raise(end.signal);
    return end.refused || end.stopped || !saved ? STATUS_STOPPED : STATUS_DONE;
}

static int practise(const request *r, const scenario_text *text, const scenario *read)
{
    shift s;
    boil_outcome outcome = shift_begin(&s, &text->text, read);
    bool shown = r->orders == NULL && !r->lines && terminal_is_there();
    int status = outcome != BOIL_OK ? command_scenario_refuse(read, outcome)
                 : shown            ? by_screen(r, text, read, &s)
                                    : by_lines(r, read, &s);
    shift_free(&s);
    return status;
}

/* Who looks for the lessons by that word, or for one by its number. */
static void point_to_lessons(const char *file)
{
    size_t length = strlen(file);
    bool word = words_same(file, length, "lesson") || words_same(file, length, "lessons");
    if ((word || (length > 0 && strspn(file, "0123456789") == length)) && access(file, F_OK) != 0)
        program_complain("the lessons that come with the program are listed by '" PROGRAM_NAME " practise --lessons'");
}

static int run(const given *g)
{
    request r = {.file = g->argument, .speed = SPEED_USUAL};
    scenario_text text;
    scenario read;
    if (!options_take(g, &r))
        return STATUS_USAGE;
    if (r.lessons)
        return practise_lessons(stdout);
    if (!output_agrees(&r.output, g) || !agrees(&r))
        return STATUS_USAGE;
    bool good = command_scenario_text(&r.output, g->argument, &text, &read);
    point_to_lessons(g->argument);
    good = good && (r.save == NULL || spares_parts(r.save, &text));
    int status = good ? practise(&r, &text, &read) : STATUS_USAGE;
    scenario_free(&read);
    scenario_text_free(&text);
    return status;
}

const command command_practise = {
    .name = "practise",
    .argument = "FILE",
    .without = "lessons",
    .summary = "work a shift yourself, act by act, and see what comes of it",
    .description =
        "Keeps the clock of a bath, and does what it is told: water, loads, salts, heat. Acts are written as a schedule "
        "writes them and done when they are given; the file's own schedule is left to you. Told is what the bath does, "
        "what is found of it as it comes, and at the end what came of each act. A prediction on a screen: nothing "
        "learned here allows anything at a real tank.",
    .example = PROGRAM_NAME " practise water-while-quiet.bath --script acts.txt --save worked.bath",
    COMMAND_PARTS(none),
};
