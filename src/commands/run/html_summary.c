#include "commands/run/html_sections.h"

#include <math.h>

#include "commands/run/account.h"
#include "describe/report.h"

static void bath(html *h, const boil_summary *m, unit_system s)
{
    static const char *const heads[] = {"Bath", "At the start", "At the end", NULL};
    report_bath_row rows[REPORT_BATH_ROWS];
    report_bath_rows(m, rows);
    page_table(h, isnan(m->overflow_s) ? "The bath" : "The bath; at the end after overflow: not a prediction",
               "class=\"numbers\"", heads);
    for (int i = 0; i < REPORT_BATH_ROWS; i++) {
        html_open(h, "tr", NULL);
        page_row_head(h, rows[i].what);
        html_element(h, "td", NULL, "%s", format_quantity(s, rows[i].dimension, rows[i].start).text);
        html_element(h, "td", NULL, "%s", format_quantity(s, rows[i].dimension, rows[i].end).text);
        html_close(h);
    }
    page_table_end(h);
}

static void accounts(html *h, const outcome *o, unit_system s)
{
    account a = account_of(o, s);
    const char *const heads[] = {"Heat and matter", "In all", a.has_loads ? "Per load" : NULL, a.hundred, NULL};
    page_table(h, "What it took and gave", "class=\"numbers\"", heads);
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
    page_table_end(h);
    for (size_t i = 0; i < a.told_count; i++)
        html_element(h, "p", NULL, "%s", a.told[i]);
}

void page_summary(html *h, const outcome *o, unit_system s)
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
