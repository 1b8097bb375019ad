#include "commands/run/output.h"

#include <math.h>
#include <string.h>

#include "base/program.h"
#include "commands/run/parts.h"
#include "describe/headline.h"
#include "describe/report.h"
#include "describe/trace.h"

typedef struct {
    const carried_out *o;
    const boil_summary *summary;
    const output *how;
    unit_system system;
    FILE *to;
} report_to;

#define CHART_BOILS 7 /* lines */
#define CHART_LEVEL 6

static void heading(FILE *to, const char *text)
{
    fprintf(to, "\n%s\n", text);
}

static void bath_line(const report_to *r, const char *what, unit_dimension d, double start, double end)
{
    fprintf(r->to, " %-16s %14s %14s\n", what, format_quantity(r->system, d, start).text,
            format_quantity(r->system, d, end).text);
}

static void bath(const report_to *r)
{
    const boil_summary *s = r->summary;
    report_bath_row rows[REPORT_BATH_ROWS];
    report_words first_boil = report_first_boil_words(r->o);
    fprintf(r->to, " %-16s %14s %14s%s\n", "bath", "at the start", "at the end",
            isnan(s->overflow_s) ? "" : "  (overflowed: no prediction)");
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
    report_title(r->to, s->title);
    fprintf(r->to, " %s from %s", format_duration(r->o->central.end_s).text, format_clock(s->start_s, 0).text);
    if (carried_out_stopped(r->o))
        fprintf(r->to, " (STOPPED; %s were asked for)", format_duration(s->schedule.duration_s).text);
    fputs("\n\n", r->to);
}

static formatted_text band_end(const report_to *r, unit_dimension d, double value, bool more_than)
{
    formatted_text plain = isinf(value) ? (formatted_text){"not back"} : format_quantity(r->system, d, value), marked;
    snprintf(marked.text, sizeof marked.text, "> %.20s", plain.text);
    return more_than ? marked : plain;
}

/* What is more than it says, in the likely run and at the most. */
static void band_line(const report_to *r, const char *what, unit_dimension d, const boil_band *b, bool likely, bool most)
{
    bool weakened = d == DIM_TIME && b->low == 0 && b->high > 0;
    fprintf(r->to, " %-18s %14s %14s %14s\n", what, band_end(r, d, b->likely, likely).text,
            weakened ? "weakened only" : band_end(r, d, b->low, false).text, band_end(r, d, b->high, most).text);
}

static void bands(const report_to *r)
{
    const boil_bands *b = &r->o->bands;
    fprintf(r->to, "\n %-18s %14s %14s %14s\n", "band of the runs", "likely", "least", "most");
    if (!isnan(b->recovery_s.high))
        band_line(r, "slowest boil back", DIM_TIME, &b->recovery_s, false, false);
    band_line(r, "most steam", DIM_MASS_FLOW, &b->steam_peak_kg_s, r->summary->steam_more_than, b->steam_more_than);
    band_line(r, "highest level", DIM_LENGTH, &b->level_max_m, false, false);
}

static void findings(const report_to *r)
{
    const boil_finding *f = NULL;
    heading(r->to, "Findings");
    while ((f = headline_next(r->o, f)) != NULL)
        screen_finding(r->o, f, r->how, FINDING_WHOLE, r->to);
    if (r->o->found.count + r->o->possible.count == 0)
        fputs(" none\n", r->to);
    if (r->o->possible.count > 0)
        fputs(" Possible: only within what is not known of mixing and heat paths.\n", r->to);
}

static void balances(const report_to *r)
{
    if (!(r->o->central.end_s > 0))
        return;
    heading(r->to, "Account");
    account_print(r->o, r->system, r->to);
}

static void limits(const report_to *r)
{
    heading(r->to, "What the model is, and what it is not");
    report_paragraph(r->to, "%s", report_purpose);
    for (size_t i = 0; report_limits[i] != NULL; i++)
        text_wrapped(r->to, report_limits[i], fprintf(r->to, " -"), 3, REPORT_WIDTH);
}

static void one_run(FILE *to, const char *name, const boil_history *h)
{
    fprintf(to, " %-11s %6zu steps, %7zu evaluations, %4zu changes of mode\n", name, h->steps, h->evaluations, h->mode_changes);
}

static void statistics(const report_to *r)
{
    const boil_history *c = &r->o->central;
    heading(r->to, "Runs");
    one_run(r->to, boil_closures_name(BOIL_CLOSURES_LIKELY), c);
    for (size_t i = 0; i < r->o->set.count; i++)
        one_run(r->to, boil_closures_name(r->o->set.other[i].closures), &r->o->set.other[i].history);
    fprintf(r->to, " closure: water %.1e, salts %.1e, energy %.1e\n", c->balance.water.closure, c->balance.salts.closure,
            c->balance.energy.closure);
}

static void footer(const report_to *r)
{
    report_caution(r->to);
    fputc('\n', r->to);
    report_paragraph(r->to, PROGRAM_NAME " " BOIL_VERSION_TEXT ", %s, tolerance %g",
                     r->o->scenario->path != NULL ? text_plain(r->o->scenario->path).text : "", r->o->tolerance);
}

/* Everything, what decides first. */
static void whole(const report_to *r, const boil_history *trace)
{
    screen_gist(r->o, r->how, r->to);
    findings(r);
    heading(r->to, "Loads and additions");
    sheet_print(r->o, r->system, r->to);
    heading(r->to, "Over the clock");
    screen_chart(r->o, trace, r->how, CHART_BOILS, CHART_LEVEL, r->to);
    title(r);
    bath(r);
    bands(r);
    balances(r);
    if (r->how->verbose)
        statistics(r);
    limits(r);
    footer(r);
}

/* Rows that miss no surge of seconds; else those of the run itself. */
void run_report(const void *answer, const output *how, FILE *to)
{
    const carried_out *o = answer;
    report_to r = {o, &o->central.summary, how, how->system, to};
    boil_history fine;
    if (how->brief) {
        screen_head(o, how, to);
        return;
    }
    const boil_history *trace = trace_or_rows(o, &fine);
    if (how->full || how->verbose)
        whole(&r, trace);
    else
        screen_print(o, trace, how, to);
    boil_history_free(&fine);
}
