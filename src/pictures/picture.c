/* realpath is in XSI, beyond base POSIX */
#define _XOPEN_SOURCE 700
#include "pictures/picture.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/signals.h"
#include "files/shipped.h"
#include "files/whole_file.h"
#include "pictures/child.h"

/* What a script is told on its command line, the file it writes, and how that file begins and ends. */
typedef struct {
    const char *word, *file, *head, *tail;
} format_entry;

static const format_entry formats[] = {
    [PICTURE_SVG] = {"svg", "picture.svg", "<?xml", "</svg>"},
    [PICTURE_PNG] = {"png", "picture.png", "\x89PNG\r\n\x1a\n", "IEND"},
    [PICTURE_PDF] = {"pdf", "picture.pdf", "%PDF-", "%%EOF"},
    [PICTURE_TERMINAL] = {"dumb", "picture.txt", "", ""},
};

/* What gnuplot says while it works. */
static const char *const said_file = "said";

/* Exit statuses of a shell that cannot start a command [POSIX, 2.8.2]; gnuplot's own are 0 and 1. */
enum { CANNOT_START = 126, NOT_FOUND = 127 };

/* The slowest of our pictures takes a second or two. */
static const double gnuplot_limit_s = 60;

__attribute__((format(printf, 2, 3))) static bool fail(picture_problem *problem, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    vsnprintf(problem->text, sizeof problem->text, format, values);
    va_end(values);
    return false;
}

bool picture_format_of(const char *path, picture_format *format)
{
    const char *dot = strrchr(path, '.'), *slash = strrchr(path, '/');
    *format = PICTURE_TERMINAL;
    if (strcmp(path, "-") == 0)
        return true;
    if (dot == NULL || (slash != NULL && dot < slash))
        return false;
    for (*format = PICTURE_SVG; *format < PICTURE_TERMINAL; (*format)++)
        if (strcasecmp(dot + 1, formats[*format].word) == 0)
            return true;
    return false;
}

static bool not_installed(picture_problem *problem)
{
    return fail(problem, "gnuplot is not installed; on Debian, as root: apt-get install gnuplot-nox");
}

bool picture_can_be(picture_problem *problem)
{
    const char *at = getenv("PATH");
    for (size_t n; at != NULL; at = at[n] == ':' ? at + n + 1 : NULL) {
        n = strcspn(at, ":");
        char *path = text_printed("%.*s/gnuplot", n > 0 ? (int)n : 1, n > 0 ? at : ".");
        bool there = path == NULL || access(path, X_OK) == 0; /* without memory nothing is known */
        free(path);
        if (there)
            return true;
    }
    return not_installed(problem);
}

/* One of its own, to be freed; NULL, with the problem, when there is none. */
static char *folder_made(picture_problem *problem)
{
    const char *parent = getenv("TMPDIR");
    char *folder = text_printed("%s/%s", parent != NULL && parent[0] == '/' ? parent : "/tmp", "boilback-XXXXXX");
    if (memory_needed(folder) != NULL && mkdtemp(folder) != NULL)
        return folder;
    fail(problem, "no temporary folder: %s", strerror(errno));
    free(folder);
    return NULL;
}

static void file_removed(const char *folder, const char *name)
{
    char path[PATH_MAX];
    if (snprintf(path, sizeof path, "%s/%s", folder, name) < (int)sizeof path)
        unlink(path);
}

/* All names in it are ours. Asks for no memory: there may be none. */
static void folder_removed(char *folder, const picture_input inputs[])
{
    for (; inputs->name != NULL; inputs++)
        file_removed(folder, inputs->name);
    for (size_t i = 0; i < sizeof formats / sizeof formats[0]; i++)
        file_removed(folder, formats[i].file);
    file_removed(folder, said_file);
    rmdir(folder);
    free(folder);
}

static bool input_written(const char *folder, const picture_input *in)
{
    char *path = text_printed("%s/%s", folder, in->name);
    FILE *to = path != NULL ? fopen(path, "w") : NULL;
    if (to == NULL && errno == ENOMEM)
        memory_refused();
    free(path);
    if (to == NULL)
        return false;
    in->write(in->what, to);
    bool good = !ferror(to) && !memory_was_refused();
    return fclose(to) == 0 && good;
}

/* A quote would end the field, and a backslash starts an octal number. gnuplot's SVG leaves "&#" as it is, to be read as
   a character by its number, and "]]>", which no text of XML may hold [XML 1.0, 2.4]: a blank keeps them from being that. */
void picture_text(FILE *to, const char *text)
{
    text_cell plain = text_plain(text);
    for (size_t n = strlen(plain.text); n > 0 && plain.text[n - 1] == ' '; n--)
        plain.text[n - 1] = '\0';
    fputc('x', to);
    for (const char *at = plain.text; *at != '\0'; at++) {
        if (*at == '"' || *at == '\\')
            fprintf(to, "\\%03o", (unsigned)*at);
        else
            fputc(*at, to);
        if (strncmp(at, "&#", 2) == 0 || strncmp(at, "]>", 2) == 0)
            fputc(' ', to);
    }
}

/* In the child: everything said goes to a file, nothing can be asked, and no setting of the person's own changes the
   picture (-d: no start-up files). Words on the command line are our own. It leads a group, so that it can be ended with all that
   it starts. */
static void become_gnuplot(const char *folder, const char *script, const format_entry *f)
{
    setpgid(0, 0);
    int nothing = open("/dev/null", O_RDONLY);
    int said = chdir(folder) == 0 ? open(said_file, O_WRONLY | O_CREAT | O_TRUNC, 0600) : -1;
    if (nothing < 0 || said < 0 || dup2(nothing, 0) < 0 || dup2(said, 1) < 0 || dup2(said, 2) < 0)
        _exit(CANNOT_START);
    unsetenv("GNUTERM");
    unsetenv("GNUPLOT_LIB");
    execlp("gnuplot", "gnuplot", "-d", "-c", script, f->word, f->file, (char *)NULL);
    _exit(errno == ENOENT ? NOT_FOUND : CANNOT_START);
}

/* `before`: the signals that were held back before, and are for gnuplot. */
static child_end carry_out(const char *folder, const char *script, const format_entry *f, const sigset_t *before, int *status)
{
    pid_t child = fork();
    if (child == 0) {
        signals_release(before);
        become_gnuplot(folder, script, f);
    }
    if (child < 0)
        return CHILD_KILLED;
    setpgid(child, child); /* whoever is first: it leads one when it is waited for */
    return child_wait(child, gnuplot_limit_s, status);
}

/* All of a file in the folder; nothing when it is not there or empty. A zero byte stands behind it. */
static picture_drawn contents(const char *folder, const char *name)
{
    picture_drawn d = {0};
    char *path = text_printed("%s/%s", folder, name), part[4096];
    FILE *from = path != NULL ? fopen(path, "rb") : NULL;
    if (from == NULL && errno == ENOMEM)
        memory_refused();
    FILE *to = from != NULL ? memory_stream(&d.bytes, &d.length) : NULL;
    size_t n;
    while (to != NULL && (n = fread(part, 1, sizeof part, from)) > 0)
        fwrite(part, 1, n, to);
    bool good = from != NULL && !ferror(from);
    if (to != NULL && (!memory_stream_close(to, &d.bytes) || !good || d.length == 0))
        picture_forget(&d);
    if (from != NULL)
        fclose(from);
    free(path);
    return d;
}

/* gnuplot ends well even when the disk is full. */
static bool is_whole(const picture_drawn *d, const format_entry *f)
{
    size_t head = strlen(f->head), tail = strlen(f->tail), capacity = tail + 8;
    if (d->bytes == NULL || d->length < head + capacity || memcmp(d->bytes, f->head, head) != 0)
        return false;
    for (const char *at = d->bytes + d->length - capacity; at + tail <= d->bytes + d->length; at++)
        if (memcmp(at, f->tail, tail) == 0)
            return true;
    return false;
}

/* The last line that is not empty says what went wrong. */
static bool fail_as_said(const char *folder, picture_problem *problem)
{
    picture_drawn said = contents(folder, said_file);
    char *line = said.bytes;
    while (said.length > 0 && strchr(" \r\n", said.bytes[said.length - 1]) != NULL)
        said.bytes[--said.length] = '\0';
    if (line != NULL && strrchr(line, '\n') != NULL)
        line = strrchr(line, '\n') + 1;
    bool silent = line == NULL || line[0] == '\0';
    fail(problem, "gnuplot failed%s%.300s", silent ? "" : ": ", silent ? "" : text_plain(line).text);
    picture_forget(&said);
    return false;
}

/* gnuplot fills every line with blanks, and ends its page with a form feed. */
static void tidy(picture_drawn *d)
{
    size_t n = 0;
    for (size_t i = 0; i < d->length; i++) {
        if (d->bytes[i] == '\f')
            continue;
        if (d->bytes[i] == '\n')
            while (n > 0 && d->bytes[n - 1] == ' ')
                n--;
        if (n > 0 || d->bytes[i] != '\n') /* no empty line at the top */
            d->bytes[n++] = d->bytes[i];
    }
    while (n > 1 && d->bytes[n - 2] == '\n')
        n--;
    d->bytes[n] = '\0';
    d->length = n;
}

static bool fail_at_end(child_end end, const char *folder, picture_problem *problem)
{
    if (end == CHILD_TOO_LONG)
        return fail(problem, "gnuplot was not done after %.0f s, and was ended", gnuplot_limit_s);
    return end == CHILD_INTERRUPTED ? fail(problem, "it was interrupted") : fail_as_said(folder, problem);
}

/* In a folder that holds the inputs. */
static bool draw(const char *folder, const char *script, const format_entry *f, const sigset_t *before, picture_drawn *drawn,
                 picture_problem *problem)
{
    int status = 0;
    char *wanted = memory_needed(text_printed("plots/%s", script));
    char *place = wanted != NULL ? shipped_place(wanted) : NULL;
    free(wanted);
    if (place == NULL)
        return fail(problem,
                    "plots/%s is not where the program looks for it; set BOILBACK_DATA to the folder that "
                    "holds plots",
                    script);
    child_end end = carry_out(folder, place, f, before, &status);
    free(place);
    if (end == CHILD_EXITED && status == NOT_FOUND)
        return not_installed(problem);
    *drawn = contents(folder, f->file);
    if (end == CHILD_EXITED && status == 0 && is_whole(drawn, f))
        return true;
    picture_forget(drawn);
    return fail_at_end(end, folder, problem);
}

/* In a folder of its own. */
static bool draw_within(const char *script, picture_format format, const picture_input inputs[], const sigset_t *before,
                        picture_drawn *drawn, picture_problem *problem)
{
    char *folder = folder_made(problem);
    if (folder == NULL)
        return false;
    bool good = true;
    for (const picture_input *in = inputs; in->name != NULL && good; in++)
        good = input_written(folder, in);
    good = good ? draw(folder, script, &formats[format], before, drawn, problem)
                : fail(problem, "the temporary folder is full or was taken away");
    if (good && format == PICTURE_TERMINAL)
        tidy(drawn);
    folder_removed(folder, inputs);
    return good;
}

bool picture_draw(const char *script, picture_format format, const picture_input inputs[], picture_drawn *drawn,
                  picture_problem *problem)
{
    sigset_t before;
    *drawn = (picture_drawn){0};
    signals_hold(&before);
    bool good = draw_within(script, format, inputs, &before, drawn, problem);
    signals_release(&before);
    return good;
}

void picture_forget(picture_drawn *drawn)
{
    free(drawn->bytes);
    *drawn = (picture_drawn){0};
}

bool picture_save(const picture_drawn *drawn, const char *path)
{
    whole_file f;
    if (!whole_file_open(&f, path))
        return false;
    fwrite(drawn->bytes, 1, drawn->length, f.to);
    return whole_file_close(&f);
}
