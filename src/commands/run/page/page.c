#include "commands/run/output.h"

#include "base/program.h"
#include "commands/run/page/sections.h"
#include "describe/report.h"
#include "describe/verdict.h"

static void head(html *h, const carried_out *o)
{
    html_open(h, "head", NULL);
    html_empty(h, "meta", "charset=\"utf-8\"");
    html_empty(h, "meta", "http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"");
    html_empty(h, "meta", "name=\"viewport\" content=\"width=device-width, initial-scale=1\"");
    html_empty(h, "meta", "name=\"color-scheme\" content=\"light dark\"");
    fputc('\n', h->to);
    html_open(h, "title", NULL);
    html_text(h, o->scenario->title);
    html_text(h, " - " PROGRAM_NAME);
    html_close(h);
    html_open(h, "style", NULL);
    fputs(page_style, h->to);
    html_close(h);
    html_close(h);
}

static void top(html *h, const carried_out *o, unit_system s)
{
    const scenario *c = o->scenario;
    html_open(h, "header", NULL);
    html_open(h, "h1", NULL);
    html_text(h, c->title);
    html_close(h);
    html_element(h, "p", "class=\"verdict\"", "%s", verdict_of(o, s).text);
    html_element(h, "p", NULL, "%s from %s%s", format_duration(o->central.end_s).text, format_clock(c->start_s, 0).text,
                 carried_out_stopped(o) ? ", where the run STOPPED early" : "");
    html_element(h, "p", "class=\"caution-box\"", "%s", report_caution_words);
    html_close(h);
}

static void foot(html *h, const carried_out *o)
{
    html_open(h, "footer", NULL);
    html_open(h, "p", NULL);
    html_text(h, PROGRAM_NAME " " BOIL_VERSION_TEXT ", ");
    html_text(h, o->scenario->path);
    html_close(h);
    html_element(h, "p", NULL,
                 "Run at tolerance %g, with the likely laws and with those that err either way: likely and possible.",
                 o->tolerance);
    html_close(h);
}

void run_page(const void *answer, const output *how, const picture_drawn *drawn, const picture_problem *problem, FILE *to)
{
    const carried_out *o = answer;
    unit_system s = how->system;
    html h = html_to(to);
    fputs("<!DOCTYPE html>", to);
    html_open(&h, "html", "xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"");
    head(&h, o);
    html_open(&h, "body", NULL);
    top(&h, o, s);
    html_open(&h, "main", NULL);
    page_findings(&h, o, s);
    page_summary(&h, o, s);
    page_sheet(&h, o, s);
    page_picture(&h, o, s, drawn, problem);
    page_inputs(&h, o->scenario);
    page_limits(&h);
    html_close(&h);
    foot(&h, o);
    html_close(&h);
    html_close(&h);
}
