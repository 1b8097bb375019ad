#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/place.h"
#include "base/program.h"
#include "base/whole_file.h"
#include "base/words.h"
#include "cli/command_scenario.h"
#include "cli/commands.h"
#include "practise/lines.h"

typedef struct {
    const char *orders, *save;
    bool lines;
    output output;
} request;

/* clang-format off */
static const option options[] = {
    {"script", "FILE", "orders from a file, a line each, in place of keys; '-' reads them from standard input", OPTION_FILE, INTO(orders)},
    {"lines", NULL, "no screen: orders in, what happens out, a line each", OPTION_FLAG, INTO(lines)},
    {"save", "FILE", "at the end write the shift as it was worked: a scenario like any other", OPTION_FILE, INTO(save)},
    OUTPUT_UNITS(request, "screen"),
    INPUT_SHEET(request),
};
/* clang-format on */

static const document none[] = {{0}};

static const char *quoted(words_quote *q, const char *path)
{
    *q = words_quoted(path, strlen(path));
    return q->text;
}

/* What is saved is written over nothing that is read. */
static bool spares(const char *save, const char *read, const char *what)
{
    words_quote q;
    bool standard = strcmp(read, "-") == 0;
    if (standard ? !place_is_open(save, STDIN_FILENO) : !place_same(save, read))
        return true;
    return program_complain("--save would write over the %s it reads, '%s': name another file", what,
                            quoted(&q, standard ? save : read));
}

/* Said before the shift, not after it. */
static bool has_room(const char *save)
{
    char *folder = memory_needed(place_folder(save));
    bool good = folder != NULL && access(folder, W_OK) == 0;
    int why = errno;
    words_quote q;
    free(folder);
    return good || program_complain("--save: nothing can be written beside '%s': %s", quoted(&q, save), strerror(why));
}

static bool agrees(const request *r, const char *file)
{
    bool file_is_standard = strcmp(file, "-") == 0;
    if (r->save != NULL && whole_file_is_stdout(r->save))
        return program_complain("--save needs the name of a file");
    if (file_is_standard && (r->orders == NULL || strcmp(r->orders, "-") == 0))
        return program_complain(
            "the scenario and the orders cannot both come from standard input: name a file for one of them");
    if (r->save == NULL)
        return true;
    if (place_is_open(r->save, STDOUT_FILENO))
        return program_complain("--save would write over the file that standard output goes to: name another file");
    return has_room(r->save) && spares(r->save, file, "FILE") && spares(r->save, r->orders != NULL ? r->orders : "-", "orders");
}

/* The shift as it was worked. */
static bool save(const shift *s, const char *path)
{
    whole_file to;
    size_t length;
    char *text = journal_text(&s->journal, &length);
    bool good = text != NULL && whole_file_open(&to, path);
    if (good) {
        fwrite(text, 1, length, to.to);
        good = whole_file_close(&to);
    }
    free(text);
    return good;
}

static int status_of(const lines_outcome *o, bool saved)
{
    if (o->refused)
        memory_refused();
    if (o->unread || o->mistaken)
        return STATUS_USAGE;
    return o->never || o->stopped || o->refused || !saved ? STATUS_STOPPED : STATUS_DONE;
}

static int practise(const request *r, const scenario_text *text, const scenario *read)
{
    shift s;
    boil_outcome outcome = shift_begin(&s, &text->text, read);
    if (outcome != BOIL_OK) {
        shift_free(&s);
        return command_scenario_refuse(read, outcome);
    }
    const lines_options o = {r->orders != NULL ? r->orders : "-", r->orders == NULL && isatty(STDIN_FILENO) == 1,
                             r->output.system, stdout};
    lines_outcome end = lines_practise(&s, &o);
    bool saved = r->save == NULL || end.unread || end.refused || save(&s, r->save);
    shift_free(&s);
    return status_of(&end, saved);
}

static int run(const given *g)
{
    request r = {.lines = false};
    scenario_text text;
    scenario read;
    if (!options_take(g, &r) || !output_agrees(&r.output, g) || !agrees(&r, g->argument))
        return STATUS_USAGE;
    bool good = command_scenario_text(&r.output, g->argument, &text, &read);
    if (good && r.save != NULL && text.sheet.name != NULL)
        good = spares(r.save, text.sheet.name, "run sheet");
    int status = good ? practise(&r, &text, &read) : STATUS_USAGE;
    scenario_free(&read);
    scenario_text_free(&text);
    return status;
}

const command command_practise = {
    .name = "practise",
    .argument = "FILE",
    .summary = "work a shift yourself, act by act, and see what comes of it",
    .description =
        "Keeps the clock of a bath, and does what it is told: water, loads, salts, heat. Acts are written as a schedule "
        "writes them and done when they are given; the file's own schedule is left to you. Told is what the bath does, "
        "what is found of it as it comes, and at the end what came of each act. A prediction on a screen: nothing "
        "learned here allows anything at a real tank.",
    .example = PROGRAM_NAME " practise water-while-quiet.bath --script acts.txt --save worked.bath",
    COMMAND_PARTS(none),
};
