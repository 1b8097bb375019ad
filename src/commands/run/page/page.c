#include "commands/run/output.h"

#include <ctype.h>
#include <string.h>

#include "base/program.h"
#include "commands/run/page/sections.h"
#include "describe/report.h"
#include "describe/trace.h"

/* A text of a person's as a string of CSS: whatever could end it is written by its number. */
static void css_string(FILE *to, const char *text)
{
    text_cell plain = text_plain(text);
    fputc('"', to);
    for (const char *at = plain.text; *at != '\0'; at++)
        if (isalnum((unsigned char)*at) || strchr(" .,:-", *at) != NULL)
            fputc(*at, to);
        else if ((unsigned char)*at < 0x80)
            fprintf(to, "\\%06x", (unsigned)(unsigned char)*at);
        else
            fputc(*at, to);
    fputc('"', to);
}

/* In the foot of each sheet of paper: which shift, from when to when, which sheet. */
static void paper(html *h, const carried_out *o)
{
    html_open(h, "style", NULL);
    fputs("\n@page{margin:11mm 11mm 13mm;font:8pt sans-serif;@bottom-left{content:", h->to);
    css_string(h->to, o->scenario->title != NULL ? o->scenario->title : "");
    fprintf(h->to, "}@bottom-center{content:\"%s to ", carried_out_clock(o, 0).text);
    fprintf(h->to, "%s\"}@bottom-right{content:\"sheet \" counter(page)}}\n", carried_out_clock(o, o->central.end_s).text);
    html_close(h);
}

static void head(html *h, const carried_out *o)
{
    html_page(h, false);
    html_empty(h, "meta", "name=\"color-scheme\" content=\"light dark\"");
    fputc('\n', h->to);
    html_open(h, "title", NULL);
    html_text(h, o->scenario->title);
    html_text(h, " - " PROGRAM_NAME);
    html_close(h);
    html_open(h, "style", NULL);
    fputs(page_style, h->to);
    fputs(page_style_paper, h->to);
    html_close(h);
    paper(h, o);
    html_close(h);
}

/* The first sheet: what decides, the tank, the shift. */
static void decide(html *h, const carried_out *o, unit_system s)
{
    const scenario *c = o->scenario;
    html_open(h, "header", NULL);
    html_open(h, "h1", NULL);
    html_text(h, c->title);
    html_close(h);
    html_open(h, "p", NULL);
    html_element(h, "span", NULL, "%s from %s%s. File: ", format_duration(o->central.end_s).text, carried_out_clock(o, 0).text,
                 carried_out_stopped(o) ? ", where the run STOPPED early" : "");
    html_text(h, c->path);
    html_close(h);
    page_gist(h, o, s);
    html_close(h);
}

static void pictures(html *h, const carried_out *o, const boil_history *trace, unit_system s)
{
    html_open(h, "section", "aria-labelledby=\"shift\"");
    html_element(h, "h2", "id=\"shift\"", "The tank and the shift");
    page_tank(h, o, trace, s);
    page_strip(h, o, trace, s);
    html_element(h, "p", "class=\"caution-box\"", "%s", report_caution_words);
    html_close(h);
}

/* What only a screen shows. */
static void more(html *h, const carried_out *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem)
{
    html_open(h, "details", NULL);
    html_element(h, "summary", NULL, "Curves of everything, and all inputs with their defaults");
    page_picture(h, o, s, drawn, problem);
    page_inputs(h, o->scenario);
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

static void body(html *h, const carried_out *o, const boil_history *trace, unit_system s, const picture_drawn *drawn,
                 const picture_problem *problem)
{
    html_open(h, "body", NULL);
    decide(h, o, s);
    html_open(h, "main", NULL);
    pictures(h, o, trace, s);
    page_sheet(h, o, s);
    page_findings(h, o, s);
    page_loads(h, o, s);
    page_summary(h, o, s);
    page_given(h, o->scenario, s);
    page_limits(h);
    more(h, o, s, drawn, problem);
    html_close(h);
    foot(h, o);
    html_close(h);
}

void run_page(const void *answer, const output *how, const picture_drawn *drawn, const picture_problem *problem, FILE *to)
{
    const carried_out *o = answer;
    html h = html_to(to);
    boil_history fine;
    const boil_history *trace = trace_or_rows(o, &fine);
    head(&h, o);
    body(&h, o, trace, how->system, drawn, problem);
    html_close(&h);
    boil_history_free(&fine);
}
