#include "commands/run/page/sections.h"

#include <math.h>
#include <stdlib.h>

#include "describe/headline.h"

/* The shift on one clock: boiling point in its band, swelled level up to the rim, and what was done as bars. Of each column of
   the picture the extremes are drawn, nothing is smoothed. */

typedef struct {
    const char *class;
    double width, left, letter, panel; /* units */
    int clocks;
} form;

static const form forms[] = {{"broad", 900, 62, 13, 105, 5}, {"narrow", 340, 44, 12, 80, 3}};

#define RIGHT 10
#define BAR 13

typedef struct {
    html *h;
    const carried_out *o;
    const boil_history *trace;
    unit_system system;
    const form *f;
    double y; /* down to here something is drawn */
} strip;

typedef struct {
    double top, bottom; /* values */
    double y;           /* of the top */
    double height;
} panel;

static double x_at(const strip *s, double t)
{
    return s->f->left + t / s->o->central.end_s * (s->f->width - s->f->left - RIGHT);
}

static double y_at(const panel *p, double value)
{
    return p->y + (p->top - value) / (p->top - p->bottom) * p->height;
}

static void writing(const strip *s, double x, double y, const char *anchor, const char *text)
{
    fprintf(s->h->to, "\n<text x=\"%.1f\" y=\"%.1f\" font-size=\"%g\" text-anchor=\"%s\">", x, y, s->f->letter, anchor);
    html_text(s->h, text);
    fputs("</text>", s->h->to);
}

static double boils(const boil_row *r)
{
    return r->boiling_point_K;
}

static double level(const boil_row *r)
{
    return r->level_m;
}

/* Two points a column, where they say something new. */
static void curve(const strip *s, const panel *p, double (*of)(const boil_row *r), const boil_extreme *most)
{
    double columns = (s->f->width - s->f->left - RIGHT) / 1.5, low_before = (double)NAN, high_before = (double)NAN;
    bool begun = false;
    fputs("\n<path fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\" d=\"", s->h->to);
    for (size_t i = 0; i < s->trace->rows_count;) {
        double column = floor(s->trace->rows[i].time_s / s->o->central.end_s * columns), low = (double)NAN, high = low;
        double x = x_at(s, s->trace->rows[i].time_s);
        for (; i < s->trace->rows_count && floor(s->trace->rows[i].time_s / s->o->central.end_s * columns) <= column; i++) {
            low = fmin(low, of(&s->trace->rows[i]));
            high = fmax(high, of(&s->trace->rows[i]));
        }
        if (most != NULL && floor(most->time_s / s->o->central.end_s * columns) == column) /* it may lie between two rows */
            high = fmax(high, most->value);
        bool last = i == s->trace->rows_count;
        if (begun && !last && fabs(y_at(p, low) - low_before) < 0.3 && fabs(y_at(p, high) - high_before) < 0.3)
            continue;
        low_before = y_at(p, low);
        high_before = y_at(p, high);
        fprintf(s->h->to, "%c%.1f %.1f", begun ? 'L' : 'M', x, low_before);
        if (fabs(high_before - low_before) >= 0.3)
            fprintf(s->h->to, "L%.1f %.1f", x, high_before);
        begun = true;
    }
    fputs("\"/>", s->h->to);
}

static void edge(const strip *s, const panel *p, unit_dimension d, double value)
{
    fprintf(s->h->to, "\n<path d=\"M%.1f %.1fH%.1f\" stroke=\"#000\" stroke-dasharray=\"5 4\"/>", s->f->left, y_at(p, value),
            s->f->width - RIGHT);
    writing(s, s->f->left - 4, y_at(p, value) + 4, "end", format_bare(s->system, d, value).text);
}

static panel panel_begin(strip *s, const char *title, unit_dimension d, double top, double bottom)
{
    char text[80];
    snprintf(text, sizeof text, "%s, %s", title, format_unit(s->system, d));
    writing(s, s->f->left, s->y + s->f->letter, "start", text);
    panel p = {top, bottom, s->y + 1.5 * s->f->letter, s->f->panel};
    s->y = p.y + p.height + 8;
    return p;
}

static void boils_panel(strip *s)
{
    const boil_limits *l = &s->o->scenario->plant.limits;
    double top = l->boiling_point_high_K, bottom = l->boiling_point_low_K;
    for (size_t i = 0; i < s->trace->rows_count; i++) {
        top = fmax(top, boils(&s->trace->rows[i]));
        bottom = fmin(bottom, boils(&s->trace->rows[i]));
    }
    panel p = panel_begin(s, "boils at (dashed: band)", DIM_TEMPERATURE, top, bottom);
    edge(s, &p, DIM_TEMPERATURE, l->boiling_point_high_K);
    edge(s, &p, DIM_TEMPERATURE, l->boiling_point_low_K);
    curve(s, &p, boils, NULL);
}

static void level_panel(strip *s)
{
    const boil_summary *b = &s->o->central.summary;
    double rim_m = s->o->scenario->plant.tank.depth_m;
    panel p = panel_begin(s, "swelled level (dashed: rim; still at the start)", DIM_LENGTH, fmax(rim_m, b->level_max_m.value),
                          fmin(b->still_level_min_m.value, rim_m - 0.05));
    edge(s, &p, DIM_LENGTH, rim_m);
    edge(s, &p, DIM_LENGTH, b->still_level_start_m);
    curve(s, &p, level, &b->level_max_m);
}

static void bar(const strip *s, double from_s, double to_s, const char *fill)
{
    double end_s = s->o->central.end_s, until_s = isnan(to_s) || to_s > end_s ? end_s : to_s;
    if (from_s < end_s)
        fprintf(s->h->to, "\n<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%d\" fill=\"%s\" stroke=\"#000\"/>",
                x_at(s, from_s), s->y + 1, fmax(x_at(s, until_s) - x_at(s, from_s), 1), BAR - 2, fill);
}

static void lane(strip *s, const char *name)
{
    writing(s, s->f->left - 4, s->y + BAR - 3, "end", name);
}

/* Out of the tank: told by its letter. */
static void taken(const strip *s, double from_s, double to_s)
{
    bar(s, from_s, to_s, "#fff");
    writing(s, x_at(s, to_s) + 2, s->y + BAR - 3, "start", "b");
}

static void bars(strip *s)
{
    const boil_history *c = &s->o->central;
    lane(s, "quiet");
    for (size_t i = 0; i < c->quiet_count; i++)
        bar(s, c->quiet[i].start_s, c->quiet[i].end_s, "#000");
    s->y += BAR + 4;
    lane(s, "pours");
    for (size_t i = 0; i < c->additions_count; i++)
        bar(s, c->additions[i].time_s, c->additions[i].time_s + c->additions[i].over_s, "#bbb");
    for (size_t i = 0; i < c->valve_count; i += 2)
        bar(s, c->valve_s[i], i + 1 < c->valve_count ? c->valve_s[i + 1] : (double)NAN, "#ddd");
    for (size_t i = 0; i < c->takes_count; i++)
        taken(s, c->takes[i].time_s, c->takes[i].time_s + c->takes[i].over_s);
    s->y += BAR + 4;
    lane(s, "loads");
    for (size_t i = 0; i < c->loads_count; i++)
        bar(s, c->loads[i].time_s, c->loads[i].lifted_s, "#fff");
    s->y += BAR + 4;
}

static void clocks(strip *s)
{
    double end_s = s->o->central.end_s;
    fprintf(s->h->to, "\n<path d=\"M%.1f %.1fH%.1f\" stroke=\"#000\"/>", s->f->left, s->y, s->f->width - RIGHT);
    for (int i = 0; i < s->f->clocks; i++) {
        double t = end_s * i / (s->f->clocks - 1);
        fprintf(s->h->to, "<path d=\"M%.1f %.1fv5\" stroke=\"#000\"/>", x_at(s, t), s->y);
        writing(s, x_at(s, t), s->y + 6 + s->f->letter,
                i == 0                  ? "start"
                : i == s->f->clocks - 1 ? "end"
                                        : "middle",
                carried_out_clock(s->o, t).text);
    }
    s->y += 10 + s->f->letter;
}

/* The worst moment of the headline, where it is one of this run. */
static void worst(const strip *s, double down_to)
{
    const boil_finding *f = headline_of(s->o);
    if (f == NULL || !(f->worst_s >= 0 && f->worst_s <= s->o->central.end_s))
        return;
    double x = x_at(s, f->worst_s);
    fprintf(s->h->to, "\n<path d=\"M%.1f 2V%.1f\" stroke=\"#000\" stroke-dasharray=\"2 3\"/>", x, down_to);
    writing(s, x > s->f->width / 2 ? x - 4 : x + 4, 2.7 * s->f->letter, x > s->f->width / 2 ? "end" : "start", "worst");
}

static void draw(html *h, const carried_out *o, const boil_history *trace, unit_system system, const form *f)
{
    strip s = {h, o, trace, system, f, 0};
    double high = 2 * (1.5 * f->letter + f->panel + 8) + 3 * (BAR + 4) + 10 + f->letter;
    fprintf(h->to,
            "\n<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"strip %s\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" "
            "aria-label=\"Boiling point, swelled level, and what was done, over the clock\">",
            f->class, f->width, high);
    boils_panel(&s);
    level_panel(&s);
    bars(&s);
    worst(&s, s.y);
    clocks(&s);
    fputs("</svg>", h->to);
}

void page_strip(html *h, const carried_out *o, const boil_history *trace, unit_system s)
{
    if (!(o->central.end_s > 0) || trace->rows_count == 0)
        return;
    html_open(h, "figure", NULL);
    for (size_t i = 0; i < sizeof forms / sizeof forms[0]; i++)
        draw(h, o, trace, s, &forms[i]);
    html_element(h, "figcaption", NULL, "Black: the bath is quiet.%s%s",
                 o->central.takes_count > 0 ? " b: bailed or drained." : "",
                 isnan(o->central.summary.overflow_s) ? "" : " After the first overflow it is no prediction.");
    html_close(h);
}
