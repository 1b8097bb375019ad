/* sheet_text.c -- the designer's sheet in words. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "commands/size/sheet.h"
#include "design/published_units.h"
#include "describe/report.h"

#define NAME 39
#define VALUE 18

/* A value that has no room in its column stands on a line of its own below. */
static void value_line(const sheet_row *r, unit_system first, FILE *to)
{
    static const char *const letters[] = {
        [SHEET_RUN] = "r",         [SHEET_TABLE] = "t",    [SHEET_UNREAD] = "t?", [SHEET_FORMULA] = "f",
        [SHEET_REMEMBERED] = "f?", [SHEET_PRACTICE] = "p", [SHEET_YOURS] = "y"};
    formatted_text one = sheet_shown(r, first), two = sheet_shown(r, first == UNITS_US ? UNITS_SI : UNITS_US);
    bool same = strcmp(one.text, two.text) == 0, wide = strlen(one.text) >= VALUE || strlen(two.text) >= VALUE;
    char line[200], from[8];
    snprintf(from, sizeof from, "%s%s%s", letters[r->from], r->assumed ? "*" : "", r->doubted ? "!" : "");
    if (wide) {
        snprintf(line, sizeof line, " %-*.*s%-*s%s", NAME - 1, NAME - 2, r->name, 2 * VALUE, one.text, from);
        text_line(to, line);
        snprintf(line, sizeof line, "%*s%s", NAME, "", same ? "" : two.text);
    } else {
        snprintf(line, sizeof line, " %-*.*s%-*s%-*s%s", NAME - 1, NAME - 2, r->name, VALUE, one.text, VALUE,
                 same ? "" : two.text, from);
    }
    if (!wide || !same)
        text_line(to, line);
}

static void row_line(const sheet_row *r, unit_system first, FILE *to)
{
    char line[500];
    if (r->kind == SHEET_VALUE) {
        value_line(r, first, to);
        return;
    }
    if (r->kind == SHEET_MISSING) {
        text_wrapped(to, r->words, fprintf(to, " %-*.*s", NAME - 2, NAME - 2, r->name), NAME, REPORT_WIDTH);
        return;
    }
    snprintf(line, sizeof line, "%s%s",
             r->kind == SHEET_WARNING  ? "WARNING: "
             : r->kind == SHEET_NOTICE ? "NOTICE: "
                                       : "",
             r->words);
    text_wrapped(to, line, 0, 2, REPORT_WIDTH);
}

static void rows(const sheet *s, unit_system first, FILE *to)
{
    const char *group = "";
    for (size_t i = 0; i < s->rows_count; i++) {
        const sheet_row *r = &s->rows[i];
        if (r->group != group)
            fprintf(to, "\n%s\n", r->group);
        group = r->group;
        row_line(r, first, to);
    }
}

/* "" where only the pressure is known. */
static formatted_text altitude(const scenario *s, unit_system u)
{
    formatted_text t = {""};
    if (!isnan(s->altitude_m))
        snprintf(t.text, sizeof t.text, ", at %.0f %s", u == UNITS_US ? s->altitude_m / BOIL_FOOT : s->altitude_m,
                 u == UNITS_US ? "ft" : "m");
    return t;
}

static void head(const sheet *s, unit_system u, FILE *to)
{
    const sheet_facts *f = &s->facts;
    const boil_tank *t = &f->plant.tank;
    formatted_text high = altitude(f->scenario, u);
    char bath[120];
    snprintf(bath, sizeof bath, "level %.24s, %.24s, boils at %.24s%.24s", SHOWN(u, LENGTH, t->level_m),
             SHOWN(u, VOLUME, boil_tank_area(t) * t->level_m), SHOWN(u, TEMPERATURE, f->boiling_K), high.text);
    if (t->shape == BOIL_TANK_BOX)
        report_paragraph(to, "box %s x %s x %s, %s", SHOWN(u, LENGTH, t->length_m), SHOWN(u, LENGTH, t->width_m),
                         SHOWN(u, LENGTH, t->depth_m), bath);
    else
        report_paragraph(to, "cylinder of %s, %s deep, %s", SHOWN(u, LENGTH, t->diameter_m), SHOWN(u, LENGTH, t->depth_m),
                         bath);
}

static void ending(FILE *to)
{
    fputc('\n', to);
    report_paragraph(
        to, "r run, t published table, f published formula, t? and f? from memory, not read, p practice, y yours; "
            "* rests on a default or on judgement, ! doubted above. Rounded up. Heat by +-15 %%, areas by U x/1.7, lid "
            "x/1.6, drag-out x/2. Hood, burner, coil and plates are minimums.");
    report_paragraph(to, "Local codes, the makers of heater and hood, and licensed practice come first.");
    report_caution(to);
}

void sheet_report(const void *answer, const output *o, FILE *to)
{
    const sheet *s = answer;
    const size_case *c = s->facts.size->size;
    report_verdict(to, "Designer's sheet: what to ask makers for, not a permission to build");
    size_report_case(c, o->system, to);
    if (s->rows_count == 0)
        report_paragraph(to,
                         s->facts.size->heats.found == BOIL_WINDOW_BEYOND
                             ? "Before any heat has the boil back within %s it boils too strong: no order can be made."
                             : "No heat brings the boil back within %s after every load: no order can be made.",
                         format_duration(c->limit_s).text);
    else
        head(s, o->system, to);
    rows(s, o->system, to);
    ending(to);
}
