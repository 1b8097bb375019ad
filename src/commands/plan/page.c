#include <math.h>
#include <stdlib.h>

#include "base/html.h"
#include "base/program.h"
#include "commands/plan/answer.h"
#include "describe/report.h"

/* Contrast of 4.5 and more [WCAG 2.2, 1.4.3]; on paper nothing depends on a background. */
static const char style[] =
    "\n:root{color-scheme:light dark;--ink:#1b1b1b;--paper:#fff;--line:#8a8a8a;--soft:#f1f1ee}"
    "\n@media (prefers-color-scheme:dark){:root{--ink:#e8e6e3;--paper:#181a1b;--line:#777;--soft:#26292b}}"
    "\nbody{margin:0 auto;padding:1rem;max-width:64rem;font:1rem/1.45 "
    "system-ui,sans-serif;color:var(--ink);background:var(--paper)}"
    "\n.verdict{font-size:1.15rem;font-weight:600}.rule{border:2px solid var(--ink);padding:.5rem .75rem;font-weight:700}"
    "\n.wide{overflow-x:auto;margin:.75rem 0}table{border-collapse:collapse;width:100%}"
    "\nth,td{border:1px solid var(--line);padding:.35rem .5rem;text-align:left;vertical-align:top}thead "
    "th{background:var(--soft)}"
    "\ntr{break-inside:avoid}.tick{display:inline-block;width:1.1rem;height:1.1rem;border:2px solid var(--ink)}"
    "\n.doing{font-weight:700}.clock{white-space:nowrap}"
    "\nsvg{display:block;width:100%;min-width:46rem;height:auto;background:#fff;font:13px sans-serif;fill:#000}\n";

enum { WIDTH = 1000, LEFT = 90, ROW = 30, TOP = 24 };

typedef TEXT_OF(160) attributes;

/* Time runs from the start to what comes last. */
static double x_of(const plan_answer *a, double s)
{
    return LEFT + (WIDTH - LEFT - 10) * fmin(1, s / a->best->carried.schedule.duration_s);
}

static void bar(html *h, const plan_answer *a, double from_s, double to_s, double y, const char *fill)
{
    attributes t;
    double x = x_of(a, from_s);
    snprintf(t.text, sizeof t.text, "x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%d\" fill=\"%s\" stroke=\"#000\"", x, y,
             fmax(0.5, x_of(a, to_s) - x), ROW - 8, fill);
    html_empty(h, "rect", t.text);
}

static void words(html *h, double x, double y, const char *text)
{
    attributes t;
    snprintf(t.text, sizeof t.text, "x=\"%.1f\" y=\"%.1f\"", x, y);
    html_element(h, "text", t.text, "%s", text);
}

/* The position that a dip hangs in, from 1. */
static int position_of(const plan_answer *a, size_t dip)
{
    const boil_plan_carried *c = &a->best->carried;
    for (size_t i = 0; i < c->schedule.count; i++)
        if (!c->acts[i].is_pour && !c->acts[i].is_salts && c->acts[i].dip == dip)
            return c->schedule.actions[i].position;
    return 1;
}

/* Quiet at the head of each bar, by the gravest run. */
static void dip_bars(html *h, const plan_answer *a)
{
    const boil_plan_proof *p = a->best;
    for (size_t k = 0; k < p->table.dips_count; k++) {
        const boil_plan_dip *d = &p->table.dips[k];
        double y = TOP + ROW * (position_of(a, k) - 1), back_s = fmin(d->leaves_s, d->enters_s + p->seen[k].gravest_s);
        bar(h, a, d->enters_s, d->leaves_s, y, "#cfe3f5");
        bar(h, a, d->enters_s, back_s, y, "#f2b6a0");
        words(h, x_of(a, d->enters_s) + 4, y + 16, plan_dip_names(a, &p->table, k).text);
    }
}

/* What hung there already, place by place as carried out. */
static void hanging_bars(html *h, const plan_answer *a)
{
    for (size_t i = 0; i < a->problem.hanging_count; i++) {
        double y = TOP + ROW * (double)i;
        bar(h, a, 0, a->lifts[i].leaves_s, y, "#dddddd");
        words(h, x_of(a, 0) + 4, y + 16, plan_hanging_name(a, i).text);
    }
}

static void hours(html *h, const plan_answer *a, double bottom)
{
    const double hour_s = 3600, end_s = a->best->carried.schedule.duration_s;
    double first_s = ceil(a->scenario->start_s / hour_s) * hour_s - a->scenario->start_s;
    double step_s = hour_s * fmax(1, ceil(end_s / (12 * hour_s)));
    for (double s = first_s; s <= end_s; s += step_s) {
        attributes t;
        snprintf(t.text, sizeof t.text, "x1=\"%.1f\" y1=\"%d\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#999\"", x_of(a, s), TOP - 6,
                 x_of(a, s), bottom);
        html_empty(h, "line", t.text);
        words(h, x_of(a, s) - 14, TOP - 10, format_clock(a->scenario->start_s, s).text);
    }
}

static void bars(html *h, const plan_answer *a)
{
    double water_y = TOP + ROW * (double)a->problem.positions, bottom = water_y + ROW;
    attributes t;
    snprintf(t.text, sizeof t.text, "viewBox=\"0 0 %d %.0f\" role=\"img\" aria-label=\"positions by the clock\"", WIDTH,
             bottom + 4);
    html_open(h, "div", "class=\"wide\"");
    html_open(h, "svg", t.text);
    hours(h, a, bottom);
    for (size_t i = 0; i < a->problem.breaks_count; i++)
        if (a->breaks[i].from_s < a->best->carried.schedule.duration_s)
            bar(h, a, a->breaks[i].from_s, a->breaks[i].to_s, water_y, "#dddddd");
    for (size_t i = 0; i < a->problem.positions; i++) {
        formatted_text name = format_count(i + 1, "", "");
        words(h, 4, TOP + ROW * (double)i + 16, "position");
        words(h, 62, TOP + ROW * (double)i + 16, name.text);
    }
    words(h, 4, water_y + 16, "water, break");
    hanging_bars(h, a);
    dip_bars(h, a);
    for (size_t i = 0; i < a->best->table.pours_count; i++) {
        const boil_plan_pour *w = &a->best->table.pours[i];
        bar(h, a, w->start_s, w->start_s + w->over_s, water_y, "#7fb2e5");
    }
    for (size_t i = 0; i < a->best->table.salts_count; i++) {
        const boil_plan_pour *s = &a->best->table.salts[i];
        bar(h, a, s->start_s, s->start_s + s->over_s, water_y, "#e8d9a0");
        words(h, x_of(a, s->start_s) + 4, water_y + 16, "salts");
    }
    html_close(h);
    html_close(h);
}

static void sheet_row(html *h, const plan_answer *a, const plan_line *l)
{
    const boil_plan_proof *p = a->best;
    plan_sheet_words w = plan_sheet_line(a, p, l);
    html_open(h, "tr", NULL);
    html_open(h, "td", NULL);
    if (l->kind != PLAN_BREAK)
        html_element(h, "span", "class=\"tick\"", "%s", "");
    html_close(h);
    html_element(h, "td", "class=\"clock\"", "%s", plan_clock_at(a, l->time_s).text);
    html_open(h, "th", "scope=\"row\"");
    html_element(h, "span", "class=\"doing\"", "%s ", w.act);
    html_text(h, w.what.text);
    html_close(h);
    html_element(h, "td", "class=\"clock\"", "%s", w.back.text);
    html_element(h, "td", "class=\"clock\"", "%s", w.out.text);
    html_element(h, "td", NULL, "%s", w.why.text);
    html_close(h);
}

static void sheet(html *h, const plan_answer *a)
{
    static const char *const heads[] = {"done", "clock", "do", "boil back by", "out, shut", "why now", NULL};
    size_t n;
    plan_line *lines = plan_lines(a, &a->best->table, &n);
    html_table(h, "run sheet", NULL, heads);
    for (size_t i = 0; i < n; i++)
        sheet_row(h, a, &lines[i]);
    html_table_end(h);
    free(lines);
}

void plan_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to)
{
    const plan_answer *a = answer;
    html h = html_to(to);
    (void)o;
    (void)drawn;
    (void)problem;
    fputs("<!DOCTYPE html>", to);
    html_open(&h, "html", "lang=\"en\" xmlns=\"http://www.w3.org/1999/xhtml\"");
    html_open(&h, "head", NULL);
    html_empty(&h, "meta", "charset=\"utf-8\"");
    html_empty(&h, "meta", "name=\"viewport\" content=\"width=device-width, initial-scale=1\"");
    html_element(&h, "title", NULL, "%s", text_plain(a->scenario->title).text);
    html_open(&h, "style", NULL);
    fputs(style, to);
    html_close(&h);
    html_close(&h);
    html_open(&h, "body", NULL);
    html_element(&h, "h1", NULL, "%s", text_plain(a->scenario->title).text);
    html_element(&h, "p", "class=\"verdict\"", "%s", plan_verdict(a).text);
    for (size_t i = 0; i < plan_broken_told(a->best); i++)
        html_element(&h, "p", NULL, "- %s", plan_broken(a, a->best, i).text);
    for (size_t i = 0; plan_told(a, i).text[0] != '\0'; i++)
        html_element(&h, "p", NULL, "%s", plan_told(a, i).text);
    html_element(&h, "p", "class=\"rule\"", "%s", plan_rule(a).text);
    bars(&h, a);
    sheet(&h, a);
    html_element(&h, "p", NULL, "%s", report_caution_words);
    html_element(&h, "footer", NULL, PROGRAM_NAME " " BOIL_VERSION_TEXT ", seed %lu, %s, %s", a->seed,
                 format_count(a->tried, "timetable", "timetables").text, format_count(a->proofs, "proof", "proofs").text);
    html_close(&h);
    html_close(&h);
}
