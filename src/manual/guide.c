/* guide.c -- boilback-guide(7), from guide.md beside it: a person reads that as it is, and tests/readme.sh holds what it shows to
   what the program prints. Of its marks are understood: "## heading", "- item", lines behind four blanks or between lines of
   three backticks for what stands as it is, `typed`, and **strong**; everything else is text, a paragraph up to an empty line. */
#include <ctype.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "manual/pages.h"

#define GUIDE_SOURCE "src/manual/guide.md"

typedef enum { GUIDE_TEXT, GUIDE_AS_IS, GUIDE_FENCED } guide_state;

static void piece(FILE *to, const char *at, size_t n, bool bold)
{
    char *copy = strndup(at, n);
    if (copy == NULL || n == 0) {
        free(copy);
        return;
    }
    fputs(bold ? "\\fB" : "", to);
    roff_text(to, copy);
    fputs(bold ? "\\fR" : "", to);
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

static void verbatim(FILE *to, guide_state *state, guide_state wanted, const char *line)
{
    if (*state == GUIDE_TEXT)
        fputs(".RS 4\n.EX\n", to);
    *state = wanted;
    if (line != NULL) {
        roff_text(to, line);
        fputc('\n', to);
    }
}

/* After an empty line a new paragraph begins. */
static void text(FILE *to, guide_state *state, bool gap, char *line)
{
    if (*state != GUIDE_TEXT)
        fputs(".EE\n.RE\n", to);
    *state = GUIDE_TEXT;
    if (strncmp(line, "## ", 3) == 0) {
        for (char *c = line + 3; *c != '\0'; c++)
            *c = (char)toupper((unsigned char)*c);
        roff_section(to, line + 3);
    } else if (strncmp(line, "- ", 2) == 0) {
        fputs(".IP \\(bu 2\n", to);
        running(to, line + 2);
    } else {
        fputs(gap ? ".PP\n" : "", to);
        running(to, line + strspn(line, " "));
    }
}

static void line_written(FILE *to, guide_state *state, bool gap, char *line)
{
    if (strncmp(line, "```", 3) == 0) {
        verbatim(to, state, *state == GUIDE_FENCED ? GUIDE_AS_IS : GUIDE_FENCED, NULL);
    } else if (*state == GUIDE_FENCED) {
        verbatim(to, state, GUIDE_FENCED, line);
    } else if (strncmp(line, "    ", 4) == 0) {
        if (gap && *state == GUIDE_AS_IS)
            fputc('\n', to);
        verbatim(to, state, GUIDE_AS_IS, line + 4);
    } else {
        text(to, state, gap, line);
    }
}

static void lines_written(FILE *to, FILE *from)
{
    char *line = NULL;
    size_t size = 0;
    bool gap = false, heading = false;
    guide_state state = GUIDE_TEXT;
    for (ssize_t n; (n = getline(&line, &size, from)) > 0;) {
        line[n - (line[n - 1] == '\n')] = '\0';
        bool empty = *line == '\0' && state != GUIDE_FENCED;
        if (!empty)
            line_written(to, &state, gap, line);
        heading = empty ? heading : strncmp(line, "## ", 3) == 0;
        gap = empty && !heading;
    }
    fputs(state == GUIDE_TEXT ? "" : ".EE\n.RE\n", to);
    free(line);
}

void page_guide(FILE *to)
{
    FILE *from = fopen(GUIDE_SOURCE, "r");
    if (from == NULL) {
        program_complain("cannot read " GUIDE_SOURCE "; run this in the folder of the sources");
        return;
    }
    roff_title(to, PROGRAM_NAME "-guide", 7);
    roff_section(to, "NAME");
    fputs(PROGRAM_NAME "\\-guide \\- from a first run to a fitted model, by examples\n", to);
    lines_written(to, from);
    fclose(from);
    roff_section(to, "SEE ALSO");
    fputs(".BR " PROGRAM_NAME " (1),\n.BR " PROGRAM_NAME "\\-scenario (5)\n", to);
}
