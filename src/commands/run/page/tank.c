#include "commands/run/page/sections.h"

#include <math.h>
#include <stdlib.h>

#include "describe/headline.h"
#include "findings/run_set.h"

/* The tank from the side, one scale both ways, at the moment that matters. Nothing depends on a colour. */

#define SIDE_MOST 380 /* units: the longer side fits */
#define HEIGHT_MOST 260
#define LEFT 64   /* the ruler */
#define RIGHT 250 /* labels */
#define TOP 34    /* room for what is over the rim */
#define BOTTOM 18
#define APART 19 /* between two labels */
#define LABELS_MOST 8
#define BLOCKS_MOST 8
#define LENS_BELOW 36 /* units: about a quarter inch on paper; a thinner band is shown ten times as thick beside it */

typedef struct {
    double level_m; /* above the floor: where the label belongs */
    TEXT_OF(90) text;
} label;

typedef struct {
    html *h;
    const carried_out *o;
    unit_system system;
    double moment_s, still_m, swelled_m, layer_m;
    double side_m, depth_m, scale; /* units per metre */
    label labels[LABELS_MOST];
    size_t labels_count;
} tank;

static double x_at(const tank *t, double m)
{
    return LEFT + m * t->scale;
}

/* What is far over the rim is drawn a little over it. */
static double y_at(const tank *t, double level_m)
{
    return TOP + fmax((t->depth_m - level_m) * t->scale, -0.6 * TOP);
}

static void label_add(tank *t, double level_m, const char *what)
{
    label *l = &t->labels[t->labels_count++];
    *l = (label){.level_m = level_m};
    TEXT_ADD(l->text.text, "%s %s", format_quantity(t->system, DIM_LENGTH, level_m).text, what);
}

/* Of a likely finding its worst moment; else the fullest. */
static double moment_of(const carried_out *o)
{
    const boil_finding *f = headline_of(o);
    bool known = f != NULL && !headline_is_possible(o, f) && f->worst_s >= 0 && f->worst_s <= o->central.end_s;
    return known ? f->worst_s : o->central.summary.level_max_m.time_s;
}

static const boil_row *row_at(const boil_history *trace, double t)
{
    const boil_row *best = NULL;
    for (size_t i = 0; i < trace->rows_count; i++)
        if (best == NULL || fabs(trace->rows[i].time_s - t) < fabs(best->time_s - t))
            best = &trace->rows[i];
    return best;
}

static bool state_at(tank *t, const boil_history *trace)
{
    const boil_extreme *most = &t->o->central.summary.level_max_m;
    const boil_row *r = row_at(trace, t->moment_s);
    if (r == NULL)
        return false;
    t->still_m = r->still_level_m;
    t->layer_m = r->layer_m;
    t->swelled_m = fabs(most->time_s - t->moment_s) < 1 ? most->value : r->level_m;
    return true;
}

static void line(const tank *t, double x1, double level_m, double x2, const char *style)
{
    fprintf(t->h->to, "\n<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\" %s/>", x1, y_at(t, level_m), x2,
            y_at(t, level_m), style);
}

static void rectangle(const tank *t, const char *class, double x_m, double wide_m, double low_m, double high_m,
                      const char *style)
{
    fprintf(t->h->to, "\n<rect class=\"%s\" x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\" %s/>", class, x_at(t, x_m),
            y_at(t, high_m), wide_m * t->scale, y_at(t, low_m) - y_at(t, high_m), style);
}

static void writing(const tank *t, double x, double y, const char *style, const char *text)
{
    fprintf(t->h->to, "\n<text x=\"%.1f\" y=\"%.1f\" %s>", x, y, style);
    html_text(t->h, text);
    fputs("</text>", t->h->to);
}

static void walls(const tank *t)
{
    const boil_tank *k = &t->o->scenario->plant.tank;
    double left = x_at(t, 0), right = x_at(t, t->side_m), floor_y = y_at(t, 0);
    fprintf(t->h->to, "\n<path d=\"M%.2f %dV%.2fH%.2fV%d\" fill=\"none\" stroke=\"#000\" stroke-width=\"3\"/>", left, TOP,
            floor_y, right, TOP);
    if (k->heated == BOIL_TANK_HEATED_FROM_BELOW)
        fprintf(t->h->to, "\n<path d=\"M%.2f %.2fH%.2f\" stroke=\"#000\" stroke-width=\"4\" stroke-dasharray=\"3 3\"/>", left,
                floor_y + 6, right);
    else if (k->heater_top_m > 0)
        rectangle(t, "heater", 0.1 * t->side_m, 0.8 * t->side_m, 0.7 * k->heater_top_m, k->heater_top_m,
                  "fill=\"none\" stroke=\"#000\" stroke-dasharray=\"3 3\"");
}

/* Side by side, hanging to where the drawing of the plant says; without one, to a little below the surface. */
static void loads(const tank *t)
{
    const boil_history *c = &t->o->central;
    size_t in = 0, drawn = 0;
    for (size_t i = 0; i < c->loads_count; i++)
        in += c->loads[i].time_s <= t->moment_s && !(c->loads[i].lifted_s <= t->moment_s);
    double stated_m = t->o->scenario->plant.tank.parts_top_m, top_m = stated_m > 0 ? stated_m : 0.8 * t->still_m;
    size_t shown = in < BLOCKS_MOST ? in : BLOCKS_MOST;
    for (; drawn < shown; drawn++)
        rectangle(t, "load", t->side_m * ((double)drawn + 0.25) / (double)shown, 0.5 * t->side_m / (double)shown, 0.25 * top_m,
                  top_m, "fill=\"#fff\" stroke=\"#000\" stroke-width=\"2\"");
}

static void lens(const tank *t)
{
    double thick = t->layer_m * t->scale, high = fmin(10 * thick, HEIGHT_MOST / 2.0), x = x_at(t, t->side_m) + 150;
    fprintf(t->h->to,
            "\n<rect class=\"lens\" x=\"%.1f\" y=\"%.2f\" width=\"60\" height=\"%.2f\" fill=\"url(#afloat)\" "
            "stroke=\"#000\"/>",
            x, (double)(TOP + HEIGHT_MOST / 2) - high / 2, high);
    writing(t, x + 66, TOP + HEIGHT_MOST / 2 + 4, "", "x10");
}

/* The band of water lies on top of the bath. */
static void contents(tank *t)
{
    rectangle(t, "bath", 0, t->side_m, 0, t->still_m, "fill=\"#e9e9e9\"");
    if (t->layer_m > 1e-4) {
        rectangle(t, "afloat", 0, t->side_m, t->still_m - t->layer_m, t->still_m, "fill=\"url(#afloat)\" stroke=\"#000\"");
        if (t->layer_m * t->scale < LENS_BELOW && 10 * t->layer_m * t->scale > 2)
            lens(t);
    }
    loads(t);
    line(t, x_at(t, 0), t->still_m, x_at(t, t->side_m), "class=\"still\" stroke=\"#000\" stroke-width=\"1.5\"");
    line(t, x_at(t, 0), t->swelled_m, x_at(t, t->side_m),
         "class=\"swelled\" stroke=\"#000\" stroke-width=\"2.5\" stroke-dasharray=\"7 4\"");
    label_add(t, t->still_m, "still surface");
    label_add(t, t->swelled_m, "swelled surface");
}

static void over_the_rim(const tank *t)
{
    double left = x_at(t, 0), right = x_at(t, t->side_m);
    if (t->swelled_m < t->depth_m)
        return;
    fprintf(t->h->to,
            "\n<path d=\"M%.1f %dq-10 4 -12 60M%.1f %dq10 4 12 60\" fill=\"none\" stroke=\"#000\" stroke-width=\"3\"/>", left,
            TOP, right, TOP);
    writing(t, (left + right) / 2, TOP - 22, "text-anchor=\"middle\" font-weight=\"700\"", "OVER THE RIM");
}

static void limits(tank *t)
{
    double limit_m = t->o->scenario->plant.limits.freeboard_m;
    double left = x_at(t, 0), right = x_at(t, t->side_m);
    line(t, left - 6, t->depth_m, right + 6, "class=\"rim\" stroke=\"#000\" stroke-width=\"1\"");
    label_add(t, t->depth_m, "rim");
    if (limit_m > 0 && limit_m < t->depth_m) {
        line(t, left, t->depth_m - limit_m, right, "class=\"limit\" stroke=\"#000\" stroke-dasharray=\"1 4\"");
        label_add(t, t->depth_m - limit_m, "freeboard limit");
    }
}

/* Marks at a whole number of inches or centimetres, eight at most. */
static void ruler(const tank *t)
{
    static const double inches[] = {1, 2, 6, 12, 24}, centimetres[] = {5, 10, 20, 50, 100};
    bool us = t->system == UNITS_US;
    double unit_m = us ? 0.0254 : 0.01, step = 0;
    for (size_t i = 0; i < 5 && !(step > 0 && t->depth_m / unit_m / step <= 8); i++)
        step = us ? inches[i] : centimetres[i];
    for (double at = 0; at * unit_m <= t->depth_m * 1.0001; at += step) {
        formatted_text text;
        line(t, LEFT - 14, at * unit_m, LEFT - 6, "stroke=\"#000\"");
        snprintf(text.text, sizeof text.text, "%.0f", at);
        writing(t, LEFT - 18, y_at(t, at * unit_m) + 4, "text-anchor=\"end\"", text.text);
    }
    writing(t, 4, TOP - 16, "", us ? "in" : "cm");
}

static int from_the_top(const void *a, const void *b)
{
    const label *x = a, *y = b;
    return (x->level_m < y->level_m) - (x->level_m > y->level_m);
}

static void labels(tank *t)
{
    double last = -APART;
    qsort(t->labels, t->labels_count, sizeof t->labels[0], from_the_top);
    for (size_t i = 0; i < t->labels_count; i++) {
        double y = y_at(t, t->labels[i].level_m), at = fmax(y + 4, last + APART), x = x_at(t, t->side_m);
        fprintf(t->h->to, "\n<path d=\"M%.1f %.1fL%.1f %.1f\" stroke=\"#777\" fill=\"none\"/>", x + 3, y, x + 18, at - 4);
        writing(t, x + 22, at, "", t->labels[i].text.text);
        last = at;
    }
}

static void describe(const tank *t, char *text, size_t size)
{
    text[0] = '\0';
    text_add(text, size, "Side view of the tank, to scale, at %s: still surface %s, swelled surface %s%s, rim %s",
             carried_out_clock(t->o, t->moment_s).text, SHOWN(t->system, LENGTH, t->still_m),
             SHOWN(t->system, LENGTH, t->swelled_m), t->swelled_m >= t->depth_m ? ", over the rim" : "",
             SHOWN(t->system, LENGTH, t->depth_m));
    if (t->layer_m > 1e-4)
        text_add(text, size, ", water afloat %s thick", SHOWN(t->system, LENGTH, t->layer_m));
}

static void draw(tank *t)
{
    char text[400];
    describe(t, text, sizeof text);
    html_open(t->h, "figure", "class=\"tank\"");
    fprintf(t->h->to,
            "\n<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\" "
            "data-scale=\"%.4f\">"
            "<defs><pattern id=\"afloat\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\">"
            "<rect width=\"6\" height=\"6\" fill=\"#fff\"/><path d=\"M0 6L6 0\" stroke=\"#000\"/></pattern></defs>",
            LEFT + t->side_m * t->scale + RIGHT, TOP + t->depth_m * t->scale + BOTTOM, text, t->scale);
    contents(t);
    limits(t);
    walls(t);
    over_the_rim(t);
    ruler(t);
    labels(t);
    fputs("</svg>", t->h->to);
    html_element(t->h, "figcaption", NULL, "The tank to scale, at %s%s.", carried_out_clock(t->o, t->moment_s).text,
                 t->moment_s > t->o->central.summary.overflow_s ? " (after overflow: not a prediction)" : "");
    html_close(t->h);
}

void page_tank(html *h, const carried_out *o, const boil_history *trace, unit_system s)
{
    const boil_tank *k = &o->scenario->plant.tank;
    tank t = {.h = h, .o = o, .system = s, .moment_s = moment_of(o), .depth_m = k->depth_m};
    t.side_m = k->shape == BOIL_TANK_BOX ? k->length_m : k->diameter_m;
    t.scale = fmin(SIDE_MOST / t.side_m, HEIGHT_MOST / t.depth_m);
    if (state_at(&t, trace))
        draw(&t);
}
