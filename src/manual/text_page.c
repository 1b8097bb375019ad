/* text_page.c -- a page from its text beside it, of which a person reads the guide as it is, and tests/readme.sh holds what
   that shows to what the program prints. Of marks are understood: "## heading", "### smaller", "- item", ": FORM" with what
   explains it on the next line, "% page (1)", "@part" for what the program's tables say there, lines behind four blanks or
   between lines of three backticks for what stands as it is, `typed`, and **strong**; everything else is text, a paragraph up
   to an empty line. */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "manual/pages.h"

typedef enum { TEXT_RUNNING, TEXT_AS_IS, TEXT_FENCED } text_state;

typedef struct {
    FILE *to;
    const text_page *page;
    const void *about;
    text_state state;
    bool gap; /* an empty line stands before: a new paragraph begins */
} writing;

static void piece(FILE *to, const char *at, size_t n, bool bold)
{
    char *copy = strndup(at, n);
    if (copy == NULL || n == 0) {
        free(copy);
        return;
    }
    roff_between(to, bold ? "\\fB" : "", copy, bold ? "\\fR" : "");
    free(copy);
}

/* A line of running text: what stands between marks is bold. */
static void running(FILE *to, const char *line)
{
    bool bold = false;
    while (*line != '\0') {
        size_t n = 0;
        while (line[n] != '\0' && line[n] != '`' && strncmp(line + n, "**", 2) != 0)
            n++;
        piece(to, line, n, bold);
        line += n;
        if (*line != '\0') {
            bold = !bold;
            line += *line == '`' ? 1 : 2;
        }
    }
    fputc('\n', to);
}

static void verbatim(writing *w, text_state wanted, const char *line)
{
    if (w->state == TEXT_RUNNING)
        fputs(".RS 4\n.EX\n", w->to);
    w->state = wanted;
    if (line != NULL) {
        roff_text(w->to, line);
        fputc('\n', w->to);
    }
}

static void part_written(FILE *to, const text_part *part, const char *name, const void *about)
{
    for (; part->name != NULL; part++)
        if (strcmp(part->name, name) == 0)
            part->write(to, about);
}

static bool is_heading(const char *line)
{
    return strncmp(line, "## ", 3) == 0 || strncmp(line, "### ", 4) == 0;
}

static void heading(FILE *to, char *line)
{
    if (line[2] == '#') {
        roff_subsection(to, line + 4);
        return;
    }
    for (char *c = line; *c != '\0'; c++)
        *c = (char)toupper((unsigned char)*c);
    roff_section(to, line + 3);
}

static void text(writing *w, char *line)
{
    static const struct {
        const char *mark, *before;
        void (*write)(FILE *to, const char *text);
    } marks[] = {{"- ", ".IP \\(bu 2\n", running}, {": ", "", roff_term}, {"% ", ".BR ", running}};
    if (w->state != TEXT_RUNNING)
        fputs(".EE\n.RE\n", w->to);
    w->state = TEXT_RUNNING;
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++)
        if (strncmp(line, marks[i].mark, 2) == 0) {
            fputs(marks[i].before, w->to);
            marks[i].write(w->to, line + 2);
            return;
        }
    if (is_heading(line))
        heading(w->to, line);
    else if (*line == '@')
        part_written(w->to, w->page->parts, line + 1, w->about);
    else {
        fputs(w->gap ? ".PP\n" : "", w->to);
        running(w->to, line + strspn(line, " "));
    }
}

static void line_written(writing *w, char *line)
{
    if (strncmp(line, "```", 3) == 0) {
        verbatim(w, w->state == TEXT_FENCED ? TEXT_AS_IS : TEXT_FENCED, NULL);
    } else if (w->state == TEXT_FENCED) {
        verbatim(w, TEXT_FENCED, line);
    } else if (strncmp(line, "    ", 4) == 0) {
        if (w->gap && w->state == TEXT_AS_IS)
            fputc('\n', w->to);
        verbatim(w, TEXT_AS_IS, line + 4);
    } else {
        text(w, line);
    }
}

/* The next line, without its end; false at the end of the text. */
static bool next_line(FILE *from, char **line, size_t *size)
{
    ssize_t n = getline(line, size, from);
    if (n > 0)
        (*line)[n - ((*line)[n - 1] == '\n')] = '\0';
    return n > 0;
}

static FILE *opened(const char *name)
{
    char path[80];
    snprintf(path, sizeof path, "src/manual/%s", name);
    FILE *from = fopen(path, "r");
    if (from == NULL)
        program_complain("cannot read %s; run this in the folder of the sources", path);
    return from;
}

static void lines_written(writing *w, FILE *from)
{
    char *line = NULL;
    size_t size = 0;
    bool after_heading = false;
    while (next_line(from, &line, &size)) {
        bool empty = *line == '\0' && w->state != TEXT_FENCED;
        after_heading = empty ? after_heading : is_heading(line);
        if (!empty)
            line_written(w, line);
        w->gap = empty && !after_heading;
    }
    fputs(w->state == TEXT_RUNNING ? "" : ".EE\n.RE\n", w->to);
    free(line);
}

void page_of_text(FILE *to, const text_page *page, const void *about)
{
    writing w = {.to = to, .page = page, .about = about};
    char file[40], name[60];
    snprintf(file, sizeof file, "%s.md", page->name);
    snprintf(name, sizeof name, PROGRAM_NAME "-%s", page->name);
    FILE *from = opened(file);
    if (from == NULL)
        return;
    roff_heading(to, name, page->section, page->summary);
    lines_written(&w, from);
    fclose(from);
}

void text_with_parts(FILE *to, const char *file, const text_part *parts)
{
    char *line = NULL;
    size_t size = 0;
    FILE *from = opened(file);
    while (from != NULL && next_line(from, &line, &size))
        if (*line == '@')
            part_written(to, parts, line + 1, NULL);
        else
            fprintf(to, "%s\n", line);
    if (from != NULL)
        fclose(from);
    free(line);
}

/* A page of section 7 that nothing of the program's tables goes into. */
static void page_of_words(FILE *to, const char *name, const char *summary, const char *see_also)
{
    static const text_part none[] = {{0}};
    const text_page page = {name, 7, summary, none};
    page_of_text(to, &page, NULL);
    roff_section(to, "SEE ALSO");
    fputs(see_also, to);
}

void page_guide(FILE *to)
{
    page_of_words(to, "guide", "from a first run to a fitted model, by examples",
                  ".BR " PROGRAM_NAME " (1),\n.BR " PROGRAM_NAME "\\-scenario (5),\n.BR " PROGRAM_NAME "\\-limits (7)\n");
}

void page_of_limits(FILE *to)
{
    page_of_words(to, "limits", "what the model is and cannot know, and how it was compared",
                  ".BR " PROGRAM_NAME " (1),\n.BR " PROGRAM_NAME "\\-guide (7)\n");
}
