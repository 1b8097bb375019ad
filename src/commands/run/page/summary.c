#include "commands/run/page/sections.h"

#include <math.h>

#include "commands/run/parts.h"
#include "describe/finding_words.h"
#include "describe/headline.h"
#include "describe/report.h"

void page_severity(html *h, boil_severity s, bool only_possible)
{
    static const char *const classes[] = {[BOIL_SEVERITY_NOTICE] = "class=\"signal notice\"",
                                          [BOIL_SEVERITY_CAUTION] = "class=\"signal caution\"",
                                          [BOIL_SEVERITY_WARNING] = "class=\"signal warning\"",
                                          [BOIL_SEVERITY_DANGER] = "class=\"signal danger\""};
    html_element(h, "strong", classes[s], "%s", boil_severity_word(s));
    if (only_possible)
        html_element(h, "small", NULL, " possible");
}

static void finding(html *h, const carried_out *o, const boil_finding *f, unit_system s)
{
    finding_words grades = finding_grades_of(o, f);
    const boil_finding *cause = headline_cause(o, f);
    html_open(h, "tr", NULL);
    html_open(h, "th", "scope=\"row\"");
    page_severity(h, f->severity, headline_is_possible(o, f));
    html_close(h);
    html_open(h, "td", NULL);
    html_element(h, "strong", NULL, "%s", f->title);
    html_element(h, "span", NULL, ": %s%s%s%s%s. %s", finding_facts_of(o, f, s).text, grades.text[0] != '\0' ? ". " : "",
                 grades.text, cause != NULL ? ". Cause: " : "", cause != NULL ? cause->title : "", f->advice);
    html_close(h);
    html_close(h);
}

/* By rank, likely and possible together, as in the text. */
void page_findings(html *h, const carried_out *o, unit_system s)
{
    static const char *const heads[] = {"How grave", "What, since when, its limit, and what to do", NULL};
    html_open(h, "section", "aria-labelledby=\"findings\" class=\"new-page\"");
    html_element(h, "h2", "id=\"findings\"", "Findings");
    if (o->found.count + o->possible.count == 0) {
        html_element(h, "p", NULL, "None.");
        html_close(h);
        return;
    }
    html_table(h, "The gravest first", "class=\"findings\"", heads);
    for (const boil_finding *f = NULL; (f = headline_next(o, f)) != NULL;)
        finding(h, o, f, s);
    html_table_end(h);
    if (o->possible.count > 0)
        html_element(h, "p", NULL, "Possible: only within what is not known of mixing and heat paths.");
    html_close(h);
}

static void bath(html *h, const boil_summary *m, unit_system s)
{
    static const char *const heads[] = {"Bath", "At the start", "At the end", NULL};
    report_bath_row rows[REPORT_BATH_ROWS];
    report_bath_rows(m, rows);
    html_table(h, isnan(m->overflow_s) ? "The bath" : "The bath; at the end after overflow: not a prediction",
               "class=\"numbers\"", heads);
    for (int i = 0; i < REPORT_BATH_ROWS; i++) {
        html_open(h, "tr", NULL);
        html_row_head(h, rows[i].what);
        html_element(h, "td", NULL, "%s", format_quantity(s, rows[i].dimension, rows[i].start).text);
        html_element(h, "td", NULL, "%s", format_quantity(s, rows[i].dimension, rows[i].end).text);
        html_close(h);
    }
    html_table_end(h);
}

static void accounts(html *h, const carried_out *o, unit_system s)
{
    account a = account_of(o, s);
    const char *const heads[] = {"Heat and matter", "In all", a.has_loads ? "Per load" : NULL, a.hundred, NULL};
    html_table(h, "What it took and gave", "class=\"numbers\"", heads);
    for (size_t i = 0; i < a.rows_count; i++) {
        const account_row *r = &a.rows[i];
        html_open(h, "tr", NULL);
        html_element(h, "th", r->what[0] == ' ' ? "scope=\"row\" class=\"part\"" : "scope=\"row\"", "%s", r->what);
        html_element(h, "td", NULL, "%s", r->total.text);
        if (a.has_loads) {
            html_element(h, "td", NULL, "%s", r->per_load.text);
            html_element(h, "td", NULL, "%s", r->per_hundred.text);
        }
        html_close(h);
    }
    html_table_end(h);
    for (size_t i = 0; i < a.told_count; i++)
        html_element(h, "p", NULL, "%s", a.told[i]);
}

void page_summary(html *h, const carried_out *o, unit_system s)
{
    const boil_summary *m = &o->central.summary;
    report_words first_boil = report_first_boil_words(o);
    html_open(h, "section", "aria-labelledby=\"summary\"");
    html_element(h, "h2", "id=\"summary\"", "Summary");
    bath(h, m, s);
    if (first_boil.text[0] != '\0')
        html_element(h, "p", NULL, "%s", first_boil.text);
    html_element(h, "p", NULL, "%s", report_uncertainty_words(&o->scenario->plant.charge, s).text);
    if (o->central.end_s > 0)
        accounts(h, o, s);
    html_close(h);
}
