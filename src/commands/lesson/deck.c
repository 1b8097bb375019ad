#include "commands/lesson/deck.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "base/memory.h"
#include "base/program.h"
#include "cli/command_scenario.h"
#include "files/place.h"
#include "files/whole_file.h"

static const char index_name[] = "index.html";

/* "01-water.html" of "scenarios/lessons/01-water.bath". */
static char *page_name(const char *path)
{
    const char *name = strrchr(path, '/') != NULL ? strrchr(path, '/') + 1 : path, *ending = strrchr(name, '.');
    size_t length = ending != NULL && ending > name ? (size_t)(ending - name) : strlen(name);
    return memory_needed(text_printed("%.*s.html", (int)length, name));
}

static bool put(lesson_answer *a, const output *o, const char *folder, const char *name, html *index)
{
    output to = *o;
    char *path = memory_needed(text_printed("%s/%s", folder, name));
    to.html = path;
    bool good = path != NULL && lesson_page_fits(a, &to) && lesson_page_write(a, &to, path);
    if (good)
        lesson_index_add(index, a, name);
    free(path);
    return good;
}

static int add(const scenario *s, const output *o, const char *folder, html *index)
{
    lesson_answer *a = memory_needed(calloc(1, sizeof *a));
    char *name = page_name(s->path);
    const scenario *failed;
    int status = STATUS_STOPPED;
    if (a != NULL && name != NULL) {
        boil_outcome outcome = lesson_answer_of(s, 1, a, &failed);
        if (outcome != BOIL_OK)
            status = command_scenario_refuse(failed, outcome);
        else if (put(a, o, folder, name, index))
            status = STATUS_DONE;
        lesson_answer_free(a);
    }
    free(name);
    free(a);
    return status;
}

static bool is_page(const char *name, const char *path)
{
    char *page = page_name(path);
    bool is = name != NULL && page != NULL && strcmp(page, name) == 0;
    free(page);
    return is;
}

/* A lesson may have the name of a page, or be what lies where one goes. */
static bool spares(const given *g, const char *folder, const char *page)
{
    char *to = page != NULL ? memory_needed(text_printed("%s/%s", folder, page)) : NULL;
    bool good = to != NULL;
    for (size_t i = 0; i < g->arguments_count && good; i++)
        if (place_is_read(to, g->arguments[i]))
            good = program_complain("--all would write over a lesson it reads, '%s': name another folder", g->arguments[i]);
    free(to);
    return good;
}

/* Standard input has no name, the page that leads to them one of its own, and two files of one name would write one page. */
static bool names_differ(const given *g, const char *folder)
{
    bool good = spares(g, folder, index_name);
    for (size_t i = 0; i < g->arguments_count && good; i++) {
        const char *path = g->arguments[i];
        char *page = page_name(path);
        if (strcmp(path, "-") == 0)
            good = program_complain("--all names its pages as their files: standard input has no name");
        else if (is_page(index_name, path))
            good =
                program_complain("%s would be written where the page that leads to the lessons goes: name it otherwise", path);
        else
            good = spares(g, folder, page);
        for (size_t k = 0; k < i && good; k++)
            if (is_page(page, g->arguments[k]))
                good =
                    program_complain("%s and %s would write the same page: name one of them otherwise", g->arguments[k], path);
        free(page);
    }
    return good;
}

/* Looked at before the first is carried out: either all become pages, or none. */
static bool all_are_lessons(const given *g, const output *o)
{
    bool good = true;
    for (size_t i = 0; i < g->arguments_count; i++) {
        scenario s;
        bool readable = command_scenario_read(o, g->arguments[i], &s);
        good = readable && good;
        if (readable && !s.lesson.given)
            good =
                program_complain("%s: no lesson: it has no section [lesson]; leave it out, or replay it without --all", s.path);
        scenario_free(&s);
    }
    return good;
}

static int each(const given *g, const output *o, const char *folder, html *index)
{
    int status = STATUS_DONE;
    for (size_t i = 0; i < g->arguments_count && status == STATUS_DONE; i++) {
        scenario s;
        status = command_scenario_read(o, g->arguments[i], &s) ? add(&s, o, folder, index) : STATUS_USAGE;
        scenario_free(&s);
    }
    return status;
}

static bool folder_is_there(const char *folder)
{
    return mkdir(folder, 0777) == 0 || errno == EEXIST ||
           program_complain("could not make the folder '%s': %s", folder, strerror(errno));
}

/* The index is written once all its pages are. */
static bool index_write(const char *folder, const char *text)
{
    whole_file f;
    char *path = memory_needed(text_printed("%s/%s", folder, index_name));
    bool good = path != NULL && whole_file_open(&f, path);
    if (good) {
        fputs(text, f.to);
        good = whole_file_close(&f) && printf("%s\n", path) > 0;
    }
    free(path);
    return good;
}

int lesson_deck(const given *g, const output *o, const char *folder)
{
    char *text;
    size_t size;
    if (!names_differ(g, folder) || !all_are_lessons(g, o))
        return STATUS_USAGE;
    FILE *to = folder_is_there(folder) ? memory_stream(&text, &size) : NULL;
    if (to == NULL)
        return STATUS_STOPPED;
    html index = html_to(to);
    lesson_index_begin(&index);
    int status = each(g, o, folder, &index);
    lesson_index_end(&index);
    if (!memory_stream_close(to, &text) || (status == STATUS_DONE && !index_write(folder, text)))
        status = STATUS_STOPPED;
    free(text);
    return status;
}
