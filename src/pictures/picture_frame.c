#include "pictures/picture_frame.h"

#include <math.h>
#include <string.h>

#include "base/program.h"
#include "describe/finding_words.h"
#include "describe/verdict.h"
#include "findings/run_set.h"

/* A verdict begins where the panels do. */
#define BEFORE_VERDICT 12

size_t picture_columns(picture_format format)
{
    return format == PICTURE_TERMINAL ? PICTURE_TERMINAL_COLUMNS : PICTURE_COLUMNS;
}

static size_t columns_of(const char *at, size_t length)
{
    return length > 2 || strchr("MWmw@%", *at) != NULL ? 2 : 1;
}

text_cell picture_fitted(const char *text, size_t columns)
{
    text_cell c = text_plain(text);
    size_t used = 0, length;
    char *cut = c.text;
    for (char *at = c.text; (length = text_character(at)) > 0; at += length) {
        used += columns_of(at, length);
        if (used + 3 <= columns)
            cut = at + length;
    }
    if (used > columns)
        memcpy(cut, "...", 4);
    return c;
}

void picture_row(FILE *to, const char *name, double a, double b, const char *text)
{
    fprintf(to, "%s\t%.9g\t%.9g\t", name, a, b);
    picture_text(to, text);
    fputc('\n', to);
}

void picture_unit_row(FILE *to, const char *name, unit_system s, unit_dimension d)
{
    const char *spelling = format_unit(s, d);
    double offset = unit_from_si(d, spelling, 0);
    picture_row(to, name, unit_from_si(d, spelling, 1) - offset, offset, spelling);
}

void picture_names(FILE *to, picture_format format, const char *title)
{
    picture_row(to, "title", 0, 0, picture_fitted(title, picture_columns(format) * 4 / 7).text);
    picture_row(to, "program", 0, 0, PROGRAM_NAME " " BOIL_VERSION_TEXT);
}

static void limits(FILE *to, const carried_out *o)
{
    const boil_plant *p = &o->scenario->plant;
    picture_row(to, "rim", p->tank.depth_m, 0, "");
    picture_row(to, "highest", p->tank.depth_m - p->limits.freeboard_m, 0, "");
    double overflow = o->central.summary.overflow_s;
    if (!isnan(overflow))
        picture_row(to, "overflow", overflow, 0, carried_out_clock(o, overflow).text);
    else if (!isnan(boil_run_set_least_freeboard(&o->set)->summary.overflow_s))
        picture_row(to, "may overflow", boil_run_set_least_freeboard(&o->set)->summary.overflow_s, 0, "");
}

/* Bytes of a text's first line: up to its last part, ended by a semicolon, that fits, else to a blank; all of it when it fits.
   */
static size_t first_line(const char *text, size_t columns)
{
    size_t part = 0, word = 0, used = 0;
    for (size_t i = 0; text[i] != '\0'; i++) {
        used += columns_of(&text[i], 1);
        if (used > columns)
            return part > 0 ? part : word > 0 ? word : strlen(text);
        part = text[i] == ';' ? i + 1 : part;
        word = text[i] == ' ' ? i : word;
    }
    return strlen(text);
}

/* A row a line. */
static void verdict_rows(FILE *to, const carried_out *o, unit_system s, size_t columns)
{
    verdict v = verdict_of(o, s);
    for (const char *at = v.text; *at != '\0'; at += strspn(at, " ")) {
        verdict line;
        size_t length = first_line(at, columns);
        snprintf(line.text, sizeof line.text, "%.*s", (int)length, at);
        picture_row(to, "verdict", 0, 0, picture_fitted(line.text, columns).text);
        at += length;
    }
}

void picture_frame(const void *run, FILE *to)
{
    const picture_run *r = run;
    const carried_out *o = r->of;
    unit_system s = r->system;
    picture_row(to, "time", o->scenario->start_s, o->central.end_s, "");
    picture_unit_row(to, "temperature", s, DIM_TEMPERATURE);
    picture_unit_row(to, "length", s, DIM_LENGTH);
    picture_unit_row(to, "flow", s, DIM_MASS_FLOW);
    limits(to, o);
    picture_names(to, r->format, o->scenario->title);
    verdict_rows(to, o, s, picture_columns(r->format) - BEFORE_VERDICT);
}

/* A mark is as wide as three characters of some eighty. */
static const double mark_share = 3.0 / 80;

/* What stands before the words in the list takes about this many characters. */
#define BEFORE_WORDS 23

typedef struct {
    const carried_out *o;
    unit_system system;
    size_t columns, written;
    double at_s[MARKS_MAX];
    int lane[MARKS_MAX];
    FILE *to;
} marks;

static bool is_free(const marks *m, int lane, double t)
{
    double width = mark_share * m->o->central.end_s;
    for (size_t i = 0; i < m->written; i++)
        if (m->lane[i] == lane && fabs(m->at_s[i] - t) < width)
            return false;
    return true;
}

/* The first lane where no other mark is near. */
static int lane_for(const marks *m, double t)
{
    int lane = 0;
    while (!is_free(m, lane, t))
        lane++;
    return lane;
}

/* What does not fit in a line goes on in rows of its own, which have no number. */
static void write_words(marks *m, const char *words)
{
    size_t lines = 0;
    for (const char *at = words; *at != '\0'; at += strspn(at, " ")) {
        finding_words line;
        size_t length = ++lines < MARK_LINES_MAX ? first_line(at, m->columns) : strlen(at);
        snprintf(line.text, sizeof line.text, "%.*s", (int)length, at);
        if (at > words)
            fputs("0\tnan\t0\t0\t1\tx\t", m->to);
        picture_text(m->to, picture_fitted(line.text, m->columns).text);
        fputc('\n', m->to);
        at += length;
    }
}

static void write(marks *m, const boil_finding *f, bool likely)
{
    finding_words words = finding_words_of(m->o, f, m->system);
    int lane = lane_for(m, f->time_s);
    m->at_s[m->written] = f->time_s;
    m->lane[m->written++] = lane;
    fprintf(m->to, "%zu\t%.9g\t%d\t%d\t%d\tx%s\t", m->written, f->time_s, lane, (int)f->severity, likely,
            finding_clock(m->o, f).text);
    write_words(m, words.text);
}

static size_t write_list(marks *m, const boil_findings *list, bool likely)
{
    size_t i = 0;
    for (; i < list->count && m->written < MARKS_MAX; i++)
        write(m, &list->list[i], likely);
    return list->count - i;
}

void picture_marks(const void *run, FILE *to)
{
    const picture_run *r = run;
    marks m = {.o = r->of, .system = r->system, .columns = picture_columns(r->format) - BEFORE_WORDS, .to = to};
    size_t more = write_list(&m, &r->of->found, true) + write_list(&m, &r->of->possible, false);
    if (more > 0)
        fprintf(to, "0\tnan\t0\t0\t1\tx\tx... and %zu more, see the report\n", more);
}
