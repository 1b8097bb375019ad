/* support/published.h -- reads the tables of published values in tests/published. A table is a CSV file:
   '#' lines are comments and may stand anywhere, the first other line names the columns, a field
   may be quoted and a quote inside it is doubled. A field does not run over a line's end.
   A missing file or column, a row of the wrong width and a number that is none fail the test.

       published *table = published_open("tests/published/name.csv");
       while (published_next(table))
           assert_close(f(published_number(table, "t_c")), published_number(table, "value"), 1e-3, 0);
       published_close(table); */
#ifndef SUPPORT_PUBLISHED_H
#define SUPPORT_PUBLISHED_H

#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { PUBLISHED_LINE = 4096, PUBLISHED_FIELDS = 64 };

/* One line, cut in place into its fields. */
typedef struct {
    char text[PUBLISHED_LINE];
    const char *field[PUBLISHED_FIELDS];
    int count;
} published_line;

typedef struct published { /* open one, hand it on, close it */
    FILE *file;
    char path[256];
    int line_number;
    published_line columns, row;
} published;

/* Ends the field that starts at *at, takes its quotes away and moves *at behind it; false after the last field. */
static inline bool published_cut_field(char **at)
{
    char *from = *at, *to = *at;
    bool quoted = false;
    for (; *from && (quoted || *from != ','); from++) {
        if (*from != '"') {
            *to++ = *from;
        } else if (quoted && from[1] == '"') {
            *to++ = *from++;
        } else {
            quoted = !quoted;
        }
    }
    const bool more = *from == ',';
    *to = '\0';
    *at = from + 1;
    return more;
}

static inline void published_cut_line(published *p, published_line *line)
{
    char *at = line->text;
    bool more = true;
    for (line->count = 0; more; line->count++) {
        if (line->count == PUBLISHED_FIELDS)
            fail_msg("%s:%d: more than %d fields", p->path, p->line_number, PUBLISHED_FIELDS);
        line->field[line->count] = at;
        more = published_cut_field(&at);
    }
}

/* Reads the next line that is neither empty nor a comment; false at the end of the file. */
static inline bool published_read_line(published *p, published_line *line)
{
    while (fgets(line->text, PUBLISHED_LINE, p->file)) {
        p->line_number++;
        const size_t length = strcspn(line->text, "\r\n");
        if (length == PUBLISHED_LINE - 1)
            fail_msg("%s:%d: longer than %d characters", p->path, p->line_number, PUBLISHED_LINE - 2);
        line->text[length] = '\0';
        if (length > 0 && line->text[0] != '#') {
            published_cut_line(p, line);
            return true;
        }
    }
    return false;
}

/* path is relative to the repository's root, where the tests run. */
static inline published *published_open(const char *path)
{
    published *p = calloc(1, sizeof *p);
    assert_non_null(p);
    snprintf(p->path, sizeof p->path, "%s", path);
    p->file = fopen(path, "r");
    if (!p->file)
        fail_msg("%s: cannot be opened (tests run from the repository's root)", path);
    if (!published_read_line(p, &p->columns))
        fail_msg("%s: names no columns", path);
    return p;
}

/* Goes to the next row; false after the last. */
static inline bool published_next(published *p)
{
    if (!published_read_line(p, &p->row))
        return false;
    if (p->row.count != p->columns.count)
        fail_msg("%s:%d: %d fields, but %d columns", p->path, p->line_number, p->row.count, p->columns.count);
    return true;
}

/* The present row's field; valid until the next published_next. */
static inline const char *published_text(published *p, const char *column)
{
    for (int i = 0; i < p->columns.count; i++) {
        if (strcmp(p->columns.field[i], column) == 0)
            return p->row.field[i];
    }
    fail_msg("%s: no column %s", p->path, column);
    return "";
}

static inline double published_number(published *p, const char *column)
{
    const char *text = published_text(p, column);
    char *end;
    const double number = strtod(text, &end);
    if (end == text || *end != '\0')
        fail_msg("%s:%d: %s is no number: \"%s\"", p->path, p->line_number, column, text);
    return number;
}

static inline void published_close(published *p)
{
    fclose(p->file);
    free(p);
}

#endif
