/* output_files.c -- no file is written over that is read, and none is written twice. */
#include <string.h>
#include <unistd.h>

#include "base/program.h"
#include "base/words.h"
#include "cli/output.h"
#include "files/place.h"
#include "files/whole_file.h"

typedef struct {
    const char *option, *path; /* path NULL: no file, or not asked for */
} output_file;

enum { FILES = 4 };

typedef struct {
    output_file list[FILES];
} output_files;

static const char *a_file(const char *path)
{
    return whole_file_is_stdout(path) ? NULL : path;
}

static output_files files_of(const output *o)
{
    return (output_files){{{"--csv", a_file(o->csv)},
                           {"--plot", a_file(o->plot.path)},
                           {"--html", a_file(o->html)},
                           {"--write", a_file(o->write)}}};
}

bool output_spares(const output *o, const char *read, const char *what)
{
    const output_files all = files_of(o);
    for (size_t i = 0; i < FILES; i++) {
        const char *path = all.list[i].path, *named = strcmp(read, "-") == 0 ? path : read;
        if (path != NULL && place_is_read(path, read))
            return program_complain("%s would write over %s, '%s': name another file", all.list[i].option, what,
                                    words_quoted(named, strlen(named)).text);
    }
    return true;
}

static bool all_differ(const output *o)
{
    const output_files all = files_of(o);
    for (size_t i = 0; i < FILES; i++) {
        const char *path = all.list[i].path;
        for (size_t k = 0; k < i && path != NULL; k++)
            if (all.list[k].path != NULL && place_same(path, all.list[k].path))
                return program_complain("%s and %s would write the same file, '%s': name two", all.list[k].option,
                                        all.list[i].option, words_quoted(path, strlen(path)).text);
        if (path != NULL && place_is_open(path, STDOUT_FILENO))
            return program_complain("%s would write over the file that standard output goes to: %s - writes it there",
                                    all.list[i].option, all.list[i].option);
    }
    return true;
}

/* "the LOG", in the order in which help names them; the last word stands for all that follow. */
static bool spares_argument(const output *o, const given *g, size_t index)
{
    const char *words = options_arguments(g->command);
    for (size_t i = 0; i < index && strchr(words, ' ') != NULL; i++)
        words = strchr(words, ' ') + 1;
    char what[40];
    snprintf(what, sizeof what, "the %.*s it reads", (int)strcspn(words, " ."), words);
    return output_spares(o, g->arguments[index], what);
}

bool output_files_agree(const output *o, const given *g)
{
    for (size_t i = 0; i < g->arguments_count; i++)
        if (!spares_argument(o, g, i))
            return false;
    return all_differ(o);
}
