#include "describe/report.h"

#include <math.h>
#include <stdarg.h>
#include <string.h>

__attribute__((format(printf, 3, 0))) static void write_wrapped(FILE *to, int indent, const char *format, va_list values)
{
    char text[1200];
    vsnprintf(text, sizeof text, format, values);
    text_wrapped(to, text, 0, indent, REPORT_WIDTH);
}

void report_paragraph(FILE *to, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    write_wrapped(to, 1, format, values);
    va_end(values);
}

void report_verdict(FILE *to, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    write_wrapped(to, 0, format, values);
    va_end(values);
}

void report_title(FILE *to, const char *title)
{
    fputc('\n', to);
    text_wrapped(to, text_plain(title != NULL ? title : "").text, 0, 0, REPORT_WIDTH);
}

/* See properties/solution.h: what is uncertain is how strong a bath of a given boiling point is, or the reverse. */
report_words report_uncertainty_words(const boil_initial_charge *c, unit_system s)
{
    report_words w;
    const char *degree = format_unit(s, DIM_DIFFERENCE);
    double mixed_K = c->blend[BOIL_NAOH] > 0.9995 ? 0 : c->blend[BOIL_NAOH] < 0.75 ? 2 : 1;
    double below = unit_from_si(DIM_DIFFERENCE, degree, 4 + mixed_K), above = unit_from_si(DIM_DIFFERENCE, degree, 2 + mixed_K);
    if (c->basis != BOIL_INITIAL_BY_BOILING_POINT && c->value == 0)
        snprintf(w.text, sizeof w.text,
                 "Plain water boils where the pressure of the air says, whatever the correlations of salts.");
    else if (c->basis == BOIL_INITIAL_BY_BOILING_POINT)
        snprintf(w.text, sizeof w.text,
                 "The boiling point was given, so the strength is what is uncertain: by about "
                 "+-2 to 3 %% salts by mass.");
    else
        snprintf(w.text, sizeof w.text,
                 "At a given strength the real boiling point may lie up to %.0f %s lower or %.0f %s higher.", below, degree,
                 above, degree);
    return w;
}

void report_uncertainty(const boil_initial_charge *c, unit_system s, FILE *to)
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

report_words report_first_boil_words(const carried_out *o)
{
    report_words w = {""};
    double t = o->central.summary.time_to_boil_s;
    if (!isnan(t))
        snprintf(w.text, sizeof w.text, "From a quiet start it boils after %s, at %s.", format_duration(t).text,
                 carried_out_clock(o, t).text);
    return w;
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

const char *const document_version[1] = {BOIL_VERSION_TEXT};
const char *const document_severities[4] = {"NOTICE", "CAUTION", "WARNING", "DANGER"};

void document_scenario(json *j, const char *name, const void *record)
{
    const scenario *const *s = record;
    json_text(j, name, (*s)->path);
}

void document_title(json *j, const char *name, const void *record)
{
    const scenario *const *s = record;
    json_text(j, name, (*s)->title);
}
