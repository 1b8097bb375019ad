#include "report.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

#include "account.h"
#include "finding_words.h"
#include "program.h"
#include "severity.h"
#include "sheet.h"
#include "strip.h"
#include "text.h"
#include "verdict.h"

typedef struct {
    const outcome *o;
    const boil_summary *summary;
    show_system system;
    bool colour;
    FILE *to;
} report_to;

void report_paragraph(FILE *to, const char *format, ...)
{
    char text[1200];
    va_list values;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    text_wrapped(to, text, 0, 1, REPORT_WIDTH);
}

static void heading(FILE *to, const char *text)
{
    fprintf(to, "\n%s\n", text);
}

/* The bath -------------------------------------------------------------------------------------------------------- */

static void bath_line(const report_to *r, const char *what, unit_dimension d, double start, double end)
{
    fprintf(r->to, " %-16s %14s %14s\n", what, show(r->system, d, start).text, show(r->system, d, end).text);
}

static bool is_plain_naoh(const boil_charge *c)
{
    return c->blend[BOIL_NAOH] > 0.9995;
}

/* See solution.h: what is uncertain is how strong a bath of a given boiling point is, or the reverse. */
report_words report_uncertainty_words(const boil_charge *c, show_system s)
{
    report_words w;
    const char *degree = show_unit(s, DIM_DIFFERENCE);
    double below = unit_from_si(DIM_DIFFERENCE, degree, is_plain_naoh(c) ? 4 : 6);
    double above = unit_from_si(DIM_DIFFERENCE, degree, 2);
    if (c->basis == BOIL_BY_BOILING_POINT)
        snprintf(w.text, sizeof w.text, "The boiling point was given, so the strength is what is uncertain: by about "
                                        "+-2 to 3 %% salts by mass.");
    else
        snprintf(w.text, sizeof w.text,
                 "At a given strength the real boiling point may lie up to %.0f %s lower or %.0f %s higher.", below,
                 degree, above, degree);
    return w;
}

void report_uncertainty(const boil_charge *c, show_system s, FILE *to)
{
    report_paragraph(to, "%s", report_uncertainty_words(c, s).text);
}

void report_bath_rows(const boil_summary *s, report_bath_row rows[REPORT_BATH_ROWS])
{
    const report_bath_row all[REPORT_BATH_ROWS] = {
        {"boils at", DIM_TEMPERATURE, s->boiling_point_start_K, s->boiling_point_end_K},
        {"temperature", DIM_TEMPERATURE, s->temperature_start_K, s->temperature_end_K},
        {"salts by mass", DIM_FRACTION, s->salt_fraction_start, s->salt_fraction_end},
        {"strength", DIM_CONCENTRATION, s->strength_start_kg_m3, s->strength_end_kg_m3},
        {"still level", DIM_LENGTH, s->still_level_start_m, s->still_level_end_m},
    };
    memcpy(rows, all, sizeof all);
}

report_words report_first_boil_words(const outcome *o)
{
    report_words w = {""};
    double t = o->central.summary.time_to_boil_s;
    if (!isnan(t))
        snprintf(w.text, sizeof w.text, "From a quiet start it boils after %s, at %s.", show_span(t).text,
                 show_clock(o->scenario->start_s, t).text);
    return w;
}

static void bath(const report_to *r)
{
    const boil_summary *s = r->summary;
    report_bath_row rows[REPORT_BATH_ROWS];
    report_words first_boil = report_first_boil_words(r->o);
    fprintf(r->to, " %-16s %14s %14s%s\n", "bath", "at the start", "at the end",
            isnan(s->overflow_s) ? "" : "  (after overflow: not a prediction)");
    report_bath_rows(s, rows);
    for (int i = 0; i < REPORT_BATH_ROWS; i++)
        bath_line(r, rows[i].what, rows[i].dimension, rows[i].start, rows[i].end);
    if (first_boil.text[0] != '\0')
        report_paragraph(r->to, "%s", first_boil.text);
    report_uncertainty(&r->o->scenario->plant.charge, r->system, r->to);
}

static void title(const report_to *r)
{
    const scenario *s = r->o->scenario;
    if (s->title != NULL)
        fprintf(r->to, "\n%s\n", text_plain(s->title).text);
    fprintf(r->to, " %s from %s", show_span(r->o->central.end_s).text, show_clock(s->start_s, 0).text);
    if (outcome_stopped(r->o))
        fprintf(r->to, " (STOPPED; %s were asked for)", show_span(s->schedule.duration_s).text);
    fputs("\n\n", r->to);
}

/* Findings -------------------------------------------------------------------------------------------------------- */

static void finding(const report_to *r, const boil_finding *f)
{
    fputc(' ', r->to);
    severity_print(r->to, f->severity, r->colour);
    int used = 1 + (int)strlen(boil_severity_word(f->severity));
    used += fprintf(r->to, "%*s%8s", 9 - used, "", finding_clock(r->o, f).text);
    text_wrapped(r->to, finding_words_of(r->o, f, r->system).text, used, 19, REPORT_WIDTH);
    text_wrapped(r->to, f->advice, 0, 19, REPORT_WIDTH);
}

static void findings(const report_to *r)
{
    const boil_findings *found = &r->o->found, *possible = &r->o->possible;
    heading(r->to, "Findings");
    for (size_t i = 0; i < found->count; i++)
        finding(r, &found->list[i]);
    if (found->count == 0)
        fputs(" none\n", r->to);
    if (possible->count == 0)
        return;
    fputs(" if the water mixes in three times faster (possible):\n", r->to);
    for (size_t i = 0; i < possible->count; i++)
        finding(r, &possible->list[i]);
}

static void balances(const report_to *r)
{
    if (!(r->o->central.end_s > 0))
        return;
    heading(r->to, "Account");
    account_print(r->o, r->system, r->to);
}

static void statistics(const report_to *r)
{
    const boil_history *c = &r->o->central, *f = &r->o->fast;
    heading(r->to, "Run");
    fprintf(r->to, " central mixing: %zu steps, %zu evaluations, %zu changes between boiling and quiet\n", c->steps,
            c->evaluations, c->mode_changes);
    fprintf(r->to, " fast mixing:    %zu steps, %zu evaluations, %zu changes between boiling and quiet\n", f->steps,
            f->evaluations, f->mode_changes);
    fprintf(r->to, " closure: water %.1e, salts %.1e, energy %.1e\n", c->balance.water, c->balance.salts,
            c->balance.energy);
}

const char report_caution_words[] =
    "A prediction is never a permission: local codes, the supplier's data sheet and licensed practice come first. "
    "Face shield, apron, gloves and boots; an eyewash within reach. Water only while the bath boils, slowly, and "
    "never onto dry salt. No aluminium, zinc, tin, brass or any other non-ferrous metal.";

void report_caution(FILE *to)
{
    fputc('\n', to);
    report_paragraph(to, "%s", report_caution_words);
}

static void footer(const report_to *r)
{
    fprintf(r->to, "\n" PROGRAM_NAME " " PROGRAM_VERSION ", %s, tolerance %g\n",
            r->o->scenario->path != NULL ? text_plain(r->o->scenario->path).text : "", r->o->tolerance);
}

void report(const outcome *o, const report_style *style, FILE *to)
{
    report_to r = {o, &o->central.summary, style->system, style->colour, to};
    fprintf(to, "%s\n", verdict_of(o, style->system).text);
    title(&r);
    bath(&r);
    heading(to, "Loads and additions");
    sheet_print(o, style->system, to);
    findings(&r);
    heading(to, "Temperature and level");
    strip_print(o, style->system, to);
    balances(&r);
    if (style->verbose)
        statistics(&r);
    report_caution(to);
    footer(&r);
}
