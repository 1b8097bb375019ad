#include "cli/command_scenario.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/patience.h"
#include "base/program.h"
#include "files/shipped.h"

bool command_scenario_told(bool good, messages *m)
{
    if (m->lost)
        memory_refused();
    else
        messages_print(m, stderr, PROGRAM_NAME);
    messages_free(m);
    return good;
}

/* The scenario or lesson of that name, with or without its ending, that comes with the program; NULL: none does. */
static char *shipped(const char *name)
{
    static const char *const folders[] = {"", "lessons/"}, *const endings[] = {"", ".bath"};
    for (size_t i = 0; i < 4; i++) {
        char *place = memory_needed(text_printed("scenarios/%s%s%s", folders[i / 2], name, endings[i % 2]));
        char *found = place != NULL ? shipped_place(place) : NULL;
        const char *ending = found != NULL ? strrchr(found, '.') : NULL;
        free(place);
        if (ending != NULL && strcmp(ending, ".bath") == 0)
            return found;
        free(found);
    }
    return NULL;
}

/* Said of a bare name that is nothing here. */
static void point_to_shipped(const char *name)
{
    bool bare = name[0] != '\0' && strchr(name, '/') == NULL && strcmp(name, "-") != 0;
    char *found = bare && access(name, F_OK) != 0 ? shipped(name) : NULL;
    if (found != NULL)
        program_complain("one of that name comes with the program: '%s'", text_plain(found).text);
    free(found);
}

bool command_scenario_text(const output *o, const char *path, scenario_text *t, scenario *s)
{
    messages m;
    messages_init(&m);
    *s = (scenario){0};
    bool good = scenario_text_read(path, t, &m);
    t->sheet_anywhere = o->sheet_anywhere;
    good = command_scenario_told(good && scenario_of_text(t, NULL, 0, s, &m) == BOIL_OK, &m);
    if (!good)
        point_to_shipped(path);
    return good && (t->sheet.name == NULL || output_spares(o, t->sheet.name, "the run sheet it reads")) &&
           (t->jobs.name == NULL || output_spares(o, t->jobs.name, "the list of jobs it reads"));
}

void command_scenario_jobs(const scenario *s)
{
    if (s->jobs.count > 0)
        program_complain("%s: its jobs are in no run before they are planned; 'plan FILE --write OUT' writes what has them",
                         s->path);
}

bool command_scenario_read(const output *o, const char *path, scenario *s)
{
    scenario_text t;
    bool good = command_scenario_text(o, path, &t, s);
    scenario_text_free(&t);
    if (good)
        command_scenario_jobs(s);
    return good;
}

int command_scenario_answer(const given *g, void *record, output *o, int (*answer)(void *record, const scenario *s))
{
    scenario s;
    if (!options_take(g, record) || !output_agrees(o, g))
        return STATUS_USAGE;
    int status = STATUS_USAGE;
    if (command_scenario_read(o, g->argument, &s)) {
        patience_begin();
        status = answer(record, &s);
        patience_end();
    }
    scenario_free(&s);
    return status;
}

static const char *reason_of(int result)
{
    switch (result) {
    case BOIL_OUT_OF_RANGE:
    case BOIL_NO_ROOT:
        return "no such bath: its strength or boiling point is beyond what is known of these salts";
    case BOIL_BAD_INPUT:
        return "the case makes no sense as a whole";
    default:
        return "the integration failed: a rate came out infinite or not a number";
    }
}

/* The person's mistake, or ours. */
int command_scenario_refuse(const scenario *s, int result)
{
    if (result == BOIL_NO_MEMORY) {
        memory_refused();
        return STATUS_STOPPED;
    }
    program_complain("%s: %s", s->path, reason_of(result));
    return result == BOIL_NOT_FINITE ? STATUS_STOPPED : STATUS_USAGE;
}

bool command_scenario_two(const given *g, const char *needs, const char *both)
{
    if (g->arguments_count != 2)
        return program_complain("%s", needs);
    return strcmp(g->arguments[0], "-") != 0 || strcmp(g->arguments[1], "-") != 0 || program_complain("%s", both);
}
