#include "commands/practise/lessons.h"

#include <dirent.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "base/program.h"
#include "files/shipped.h"
#include "scenario/scenario.h"

static int is_bath(const struct dirent *entry)
{
    const char *ending = strrchr(entry->d_name, '.');
    return ending != NULL && strcmp(ending, ".bath") == 0;
}

/* What is no lesson, or is wrong, is left out: whoever opens it is told. */
static void one(const char *folder, const char *name, FILE *to)
{
    scenario s = {.path = NULL};
    messages m;
    char *path = memory_needed(text_printed("%s/%s", folder, name));
    messages_init(&m);
    if (path != NULL && scenario_read(path, &s, &m) == BOIL_OK && s.lesson.given)
        fprintf(to, "%s\n    %s\n", text_plain(name).text, text_plain(s.lesson.goal).text);
    if (m.lost)
        memory_refused();
    messages_free(&m);
    scenario_free(&s);
    free(path);
}

/* As it may be typed, for whoever has ten minutes before a class. */
static void how(const char *folder, const char *first, FILE *to)
{
    const text_cell in = text_plain(folder), file = text_plain(first);
    fprintf(to, "\nTo work one:  " PROGRAM_NAME " practise '%s/%s'\n", in.text, file.text);
    fprintf(to, "To show it:   " PROGRAM_NAME " lesson '%s/%s' --html page.html\n", in.text, file.text);
    fprintf(to, "To teach all: " PROGRAM_NAME " lesson '%s'/*.bath --all deck\n", in.text);
}

int practise_lessons(FILE *to)
{
    struct dirent **names;
    char *folder = shipped_place("scenarios/lessons");
    int count = folder != NULL ? scandir(folder, &names, is_bath, alphasort) : -1;
    if (count < 0) {
        program_complain("the lessons are not where the program looks for them; set BOILBACK_DATA to the folder that holds "
                         "'scenarios/lessons'");
        free(folder);
        return STATUS_STOPPED;
    }
    fprintf(to, "in %s\n", text_plain(folder).text);
    for (int i = 0; i < count; i++)
        one(folder, names[i]->d_name, to);
    if (count > 0)
        how(folder, names[0]->d_name, to);
    for (int i = 0; i < count; i++)
        free(names[i]);
    free(names);
    free(folder);
    return STATUS_DONE;
}
