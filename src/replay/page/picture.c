/* picture.c -- the tank from the side, to scale. The script finds its parts by their names and moves them. */
#include <math.h>

#include "replay/page/parts.h"
#include "equipment/tank.h"

#define BUBBLES 60
#define BOXES 8
#define FLAMES 6
#define BARS 5

static const double lies_kg = 0.5; /* less is not drawn */

typedef struct {
    FILE *to;
    const replay *of;
    lesson_view view;
    double wide, deep; /* mm */
    boil_row s;
    replay_band band;
    double time_s, y; /* of the surface as drawn */
} picture;

double lesson_wide_m(const boil_tank *t)
{
    return t->shape == BOIL_TANK_BOX ? t->length_m : t->diameter_m;
}

lesson_view lesson_view_of(const lesson_answer *a)
{
    double wide = 0, deep = 0;
    for (size_t i = 0; i < a->count; i++) {
        const boil_tank *t = &a->runs[i].done.scenario->plant.tank;
        wide = fmax(wide, 1000 * lesson_wide_m(t));
        deep = fmax(deep, 1000 * t->depth_m);
    }
    double up = fmin(0.5 * deep, 0.5 * wide), down = 0.16 * deep, mm = (deep + up + down) / 1033;
    return (lesson_view){-deep - up, down, -190 * mm, wide + 290 * mm, mm};
}

static void pattern(FILE *to, const char *name, double size, double scale, int turned, const char *what)
{
    fprintf(to,
            "\n<pattern id=\"%s\" width=\"%.0f\" height=\"%.0f\" patternUnits=\"userSpaceOnUse\" "
            "patternTransform=\"rotate(%d) scale(%.3f)\">%s</pattern>",
            name, size, size, turned, scale, what);
}

void lesson_patterns(const lesson_answer *a, FILE *to)
{
    double mm = lesson_view_of(a).unit;
    fputs("\n<svg id=\"patterns\" aria-hidden=\"true\"><defs>", to);
    pattern(to, "water", 14, mm, 45,
            "<rect width=\"14\" height=\"14\" fill=\"var(--paper)\"/><rect width=\"7\" height=\"14\" fill=\"var(--water)\"/>");
    pattern(to, "maybe", 16, mm, -45, "<rect width=\"3\" height=\"16\" fill=\"var(--warn)\"/>");
    pattern(to, "band", 7, 1, -45, "<rect width=\"1.5\" height=\"7\" fill=\"var(--warn)\"/>");
    pattern(to, "past", 60, mm, 45, "<path d=\"M0 0H60M0 0V60\" stroke=\"var(--line)\" stroke-width=\"3\"/>");
    pattern(to, "grains", 24, mm, 0,
            "<rect width=\"24\" height=\"24\" fill=\"var(--paper)\"/><circle cx=\"6\" cy=\"6\" r=\"4\" fill=\"var(--ink)\"/>"
            "<circle cx=\"18\" cy=\"17\" r=\"4\" fill=\"var(--ink)\"/>");
    fputs("</defs></svg>", to);
}

double lesson_heap_m_kg(const replay *r)
{
    const double grains_kg_m3 = 1200; /* of a bed, pores and all: judgement */
    return 1 / (boil_tank_area(&r->of->scenario->plant.tank) * grains_kg_m3);
}

static const char *shown(bool is)
{
    return is ? "" : " visibility=\"hidden\"";
}

static void write_text(const picture *p, const char *part, double x, double y, double size, const char *text)
{
    fprintf(p->to, "<text%s%s%s x=\"%.0f\" y=\"%.0f\" font-size=\"%.0f\">%s</text>", *part != '\0' ? " data-part=\"" : "", part,
            *part != '\0' ? "\"" : "", x, y, size * p->view.unit, text);
}

static double drawn_y(const picture *p, double level_m)
{
    return fmax(-1000 * level_m, p->view.top);
}

static void band(const picture *p, const char *part, double y, double height, const char *fill, bool is)
{
    fprintf(p->to, "<rect data-part=\"%s\" x=\"0\" width=\"%.0f\" y=\"%.1f\" height=\"%.1f\" fill=\"%s\"%s/>", part, p->wide, y,
            fmax(0, height), fill, shown(is));
}

/* Where the law of swell ends a broken edge stands for the surface. */
static void edge(const picture *p, bool is)
{
    fprintf(p->to, "<path data-part=\"edge\" fill=\"var(--paper)\" stroke=\"var(--ink)\" stroke-width=\"4\"%s d=\"M0 %.1f",
            shown(is), p->y - 2);
    for (int i = 0; i < 12; i++)
        fprintf(p->to, "l%.1f %.0fl%.1f %.0f", p->wide / 24, 40 * p->view.unit, p->wide / 24, -40 * p->view.unit);
    fputs("z\"/>", p->to);
}

static void bubbles(const picture *p)
{
    int n = p->s.boiling ? (int)lround(fmin(1, p->s.void_fraction / 0.6) * BUBBLES) : 0;
    fputs("<g data-part=\"bubbles\" fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"3\">", p->to);
    for (int i = 0; i < n; i++)
        fprintf(p->to, "<circle r=\"%.0f\" cx=\"%.0f\" cy=\"%.0f\"/>", p->view.unit * (5 + i * 7 % 9),
                30 + fmod(i * 0.7548776662, 1) * (p->wide - 60), -20 - fmod(i * 0.569840291 + 0.37, 1) * fmax(0, -p->y - 40));
    fputs("</g>", p->to);
}

static bool is_past(const picture *p)
{
    return p->time_s >= p->of->of->central.summary.overflow_s && 1000 * p->s.level_m <= p->deep;
}

/* Nothing is drawn higher than the law of swell knows: where it knows all, NaN, the level is the lesser. */
static void contents(picture *p)
{
    double top_m = fmin(p->s.level_m, p->of->law_m), most = drawn_y(p, p->band.high_m);
    bool floats = p->s.layer_kg >= REPLAY_AFLOAT_KG;
    double heap = fmax(6 * p->view.unit, 1000 * lesson_heap_m_kg(p->of) * (p->s.undissolved_kg + p->s.crystals_kg));
    p->y = drawn_y(p, top_m);
    band(p, "possible", most, p->y - most, "url(#maybe)", true);
    fprintf(p->to,
            "<rect data-part=\"body\" x=\"0\" width=\"%.0f\" y=\"%.1f\" height=\"%.1f\" fill=\"var(--liquid)\" "
            "stroke=\"var(--ink)\" stroke-width=\"4\"/>",
            p->wide, p->y, -p->y);
    band(p, "past", p->y, -p->y, "url(#past)", is_past(p));
    edge(p, p->s.level_m > top_m);
    bubbles(p);
    band(p, "salt", -heap, heap, "url(#grains)", p->s.undissolved_kg + p->s.crystals_kg > lies_kg);
    band(p, "layer", p->y, fmax(6 * p->view.unit, 1000 * p->s.layer_m), "url(#water)", floats);
    fprintf(p->to,
            "<line data-part=\"still\" x1=\"0\" x2=\"%.0f\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"var(--ink)\" stroke-width=\"4\" "
            "stroke-dasharray=\"4 14\"/>",
            p->wide, -1000 * p->s.still_level_m, -1000 * p->s.still_level_m);
}

/* The last of those that hang in it, and how many do; NULL: none. */
static const boil_load_result *last_load(const picture *p, size_t *count)
{
    const boil_history *h = &p->of->of->central;
    const boil_load_result *in = NULL;
    *count = 0;
    for (size_t i = 0; i < h->loads_count; i++)
        if (h->loads[i].time_s <= p->time_s && !(h->loads[i].lifted_s <= p->time_s)) {
            in = &h->loads[i];
            ++*count;
        }
    return in;
}

/* A mark, not to scale: bars filled as far as the coldest part has come from its start to boiling. */
static void load(const picture *p)
{
    size_t count;
    const boil_load_result *in = last_load(p, &count);
    const boil_action *all = p->of->of->scenario->schedule.actions;
    double from_K = in != NULL ? all[in->action].is.load.temperature_K : 0;
    double hot = in != NULL ? (p->s.coldest_load_K - from_K) / fmax(1, p->s.boiling_point_K - from_K) : 0;
    fprintf(p->to,
            "<g data-part=\"load\"%s><path d=\"M%.0f %.0fV%.0fM%.0f %.0fV%.0f\" stroke=\"var(--steel)\" stroke-width=\"6\"/>",
            shown(in != NULL), 0.42 * p->wide, p->view.top, -0.5 * p->deep, 0.58 * p->wide, p->view.top, -0.5 * p->deep);
    fputs("<g data-part=\"bars\" stroke=\"var(--steel)\" stroke-width=\"5\">", p->to);
    for (int i = 0; i < BARS; i++)
        fprintf(p->to, "<rect x=\"%.0f\" y=\"%.0f\" width=\"%.0f\" height=\"%.0f\" fill=\"var(--%s)\"/>",
                p->wide * (0.4 + 0.045 * i), -0.5 * p->deep, p->wide * 0.02, 0.33 * p->deep,
                hot > (i + 0.5) / BARS ? "steel" : "paper");
    fputs("</g>", p->to);
    write_text(p, "pounds", 0.6 * p->wide, p->view.top + 60 * p->view.unit, 46,
               count > 1    ? format_count(count, "load", "loads").text
               : in != NULL ? SHOWN(p->of->system, MASS, in->mass_kg)
                            : "");
    fputs("</g>", p->to);
}

static void tank(const picture *p)
{
    double rim = -p->deep, u = p->view.unit, limit = rim + 1000 * p->of->of->scenario->plant.limits.freeboard_m;
    fprintf(p->to, "<path d=\"M0 %.0fV0H%.0fV%.0f\" fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"12\"/>", rim, p->wide,
            rim);
    fprintf(p->to,
            "<path data-part=\"spill\" d=\"M%.0f %.0fc%.0f 0 %.0f %.0f %.0f %.0fM%.0f %.0fc%.0f 0 %.0f %.0f %.0f %.0f\" "
            "fill=\"none\" "
            "stroke=\"var(--warn)\" stroke-width=\"20\" stroke-dasharray=\"26 12\"%s/>",
            -8 * u, rim, -40 * u, -44 * u, 60 * u, -44 * u, 0.8 * p->deep, p->wide + 8 * u, rim, 40 * u, 44 * u, 60 * u, 44 * u,
            0.8 * p->deep, shown(p->s.level_m > p->deep / 1000));
    fprintf(p->to, "<path d=\"M-60 %.0fH%.0f\" stroke=\"var(--ink)\" stroke-width=\"5\"/>", rim, p->wide + 60 * u);
    fprintf(p->to, "<path d=\"M%.0f %.0fh%.0f\" stroke=\"var(--ink)\" stroke-width=\"4\" stroke-dasharray=\"14 8\"/>", p->wide,
            limit, 60 * u);
    write_text(p, "", p->wide + 66 * u, rim + 16 * u, 46, "rim");
    write_text(p, "", p->wide + 66 * u, fmax(limit, rim + 50 * u) + 16 * u, 46,
               SHOWN(p->of->system, LENGTH, p->of->of->scenario->plant.limits.freeboard_m));
}

/* A triangle at the wall. */
static void sign(const picture *p, const char *part, const char *fill, double level_m)
{
    double u = p->view.unit;
    fprintf(p->to, "<path data-part=\"%s\" fill=\"%s\" d=\"M-12 0l%.0f %.0fv%.0fz\" transform=\"translate(0 %.0f)\"/>", part,
            fill, -40 * u, -20 * u, 40 * u, fmax(p->view.top + 20, -1000 * level_m));
}

/* The highest so far: filled likely, hollow possible. */
static void tide(const picture *p)
{
    double likely_m = 0, possible_m = 0;
    for (size_t i = 0; i < p->of->tide_count && p->of->tide[i].time_s <= p->time_s; i++) {
        likely_m = p->of->tide[i].likely_m;
        possible_m = p->of->tide[i].possible_m;
    }
    sign(p, "utmost", "none\" stroke=\"var(--warn)\" stroke-width=\"6", possible_m);
    sign(p, "highest", "var(--ink)", fmin(likely_m, p->of->law_m));
}

/* All of them where nothing is usual: what boils for the first time may be an eruption. */
static int boxes(const picture *p)
{
    double times = p->of->calm_kg_s > 0 ? p->s.steam_kg_s / p->of->calm_kg_s : (double)INFINITY;
    return p->s.boiling && p->s.steam_kg_s > 1e-6 ? (int)fmax(1, fmin(BOXES, floor(1 + log2(fmax(1, times))))) : 0;
}

static void ladder(const picture *p)
{
    double u = p->view.unit, deep = (p->view.bottom - p->view.top) / 1.66;
    fputs("<g data-part=\"ladder\" stroke=\"var(--ink)\" stroke-width=\"4\">", p->to);
    for (int i = 0; i < BOXES; i++)
        fprintf(p->to, "<rect x=\"%.0f\" width=\"%.0f\" y=\"%.0f\" height=\"%.0f\" fill=\"var(--%s)\"/>", -160 * u, 56 * u,
                -deep * (0.1 + 0.1 * i), deep * 0.075, i < boxes(p) ? "ink" : "paper");
    fputs("</g>", p->to);
    write_text(p, "", -178 * u, 52 * u, 40, "steam");
}

static void steam(const picture *p)
{
    double u = p->view.unit, at = fmax(p->y, p->view.top + 130 * u) - 20;
    int n = boxes(p);
    fputs("<g data-part=\"steam\" fill=\"none\" stroke=\"var(--line)\" stroke-width=\"11\" stroke-linecap=\"round\">", p->to);
    for (int i = 0; i < BOXES; i++)
        fprintf(p->to, "<path d=\"M%.0f %.0fq%.0f %.0f 0 %.0ft0 %.0f\"%s/>", p->wide * (0.5 + (i - (n - 1) / 2.0) * 0.085), at,
                30 * u, -30 * u, -60 * u, -60 * u, shown(i < n));
    fputs("</g>", p->to);
}

static void heat(const picture *p)
{
    double full_W = boil_heater_output(&p->of->of->scenario->plant.heater, 1, p->s.temperature_K), u = p->view.unit;
    double half = fmin(22 * u, 0.05 * p->wide);
    long n = full_W > 0 ? lround(FLAMES * p->s.heater_W / full_W) : 0;
    fputs("<g data-part=\"heat\" fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"5\">", p->to);
    for (int i = 0; i < FLAMES; i++)
        fprintf(p->to, "<path d=\"M%.0f %.0fl%.0f %.0fl%.0f %.0fz\"%s/>", p->wide * (0.12 + 0.15 * i), 92 * u, half, -66 * u,
                half, 66 * u, shown(i < n));
    fputs("</g>", p->to);
}

/* Ten times as thick as it is, beside the tank, where there is room for that: else it is thick enough to be seen. */
static void lens(const picture *p)
{
    double u = p->view.unit, x = p->wide + 66 * u, y = -0.58 * p->deep, thick = fmax(4, 10000 * p->s.layer_m);
    bool floats = p->s.layer_kg >= REPLAY_AFLOAT_KG;
    fprintf(p->to, "<g data-part=\"tenfold\"%s>", shown(floats && thick < -y));
    write_text(p, "", x, y - 14 * u, 44, "x10");
    fprintf(p->to,
            "<rect data-part=\"lensed\" x=\"%.0f\" y=\"%.0f\" width=\"%.0f\" height=\"%.0f\" fill=\"url(#water)\" "
            "stroke=\"var(--ink)\" stroke-width=\"4\"/>",
            x, y, 60 * u, thick);
    fprintf(p->to, "</g><g data-part=\"lens\"%s>", shown(floats));
    write_text(p, "inches", x + 66 * u, y + 34 * u, 40, SHOWN(p->of->system, LENGTH, p->s.layer_m));
    fputs("</g>", p->to);
}

const char *lesson_poured(boil_action_kind kind)
{
    return kind == BOIL_ACTION_WATER ? "water" : kind == BOIL_ACTION_SALTS ? "salt" : "liquid";
}

/* Dashes from above while anything is poured. */
static void pour(const picture *p)
{
    const boil_history *h = &p->of->of->central;
    const boil_addition_result *now = NULL;
    double u = p->view.unit;
    for (size_t i = 0; i < h->additions_count; i++)
        if (h->additions[i].time_s <= p->time_s && p->time_s < h->additions[i].time_s + h->additions[i].over_s)
            now = &h->additions[i];
    fprintf(p->to, "<g data-part=\"pour\"%s>", shown(now != NULL));
    fprintf(p->to, "<path d=\"M%.0f %.0fV%.0f\" stroke=\"var(--water)\" stroke-width=\"14\" stroke-dasharray=\"30 14\"/>",
            0.16 * p->wide, p->view.top, -p->deep * 0.98);
    write_text(p, "poured", 0.18 * p->wide, p->view.top + 60 * u, 46, now != NULL ? lesson_poured(now->kind) : "");
    fputs("</g>", p->to);
}

static void parts(picture *p)
{
    contents(p);
    steam(p);
    load(p);
    tank(p);
    tide(p);
    heat(p);
    lens(p);
    ladder(p);
    pour(p);
}

void lesson_picture(html *h, const lesson_answer *a, size_t run, double time_s)
{
    const replay *r = &a->runs[run].replay;
    const boil_tank *t = &r->of->scenario->plant.tank;
    picture p = {.to = h->to,
                 .of = r,
                 .view = lesson_view_of(a),
                 .wide = 1000 * lesson_wide_m(t),
                 .deep = 1000 * t->depth_m,
                 .time_s = time_s};
    p.s = replay_at(r, time_s);
    p.band = replay_band_at(r, time_s);
    fprintf(h->to,
            "\n<svg xmlns=\"http://www.w3.org/2000/svg\" data-run=\"%zu\" viewBox=\"%.0f %.0f %.0f %.0f\" style=\"--w:%.2f\" "
            "role=\"img\" "
            "aria-label=\"%s: %s\">",
            run, p.view.left, p.view.top, p.view.right - p.view.left, p.view.bottom - p.view.top, p.view.unit,
            a->runs[run].name, replay_state(r, time_s).text);
    parts(&p);
    fputs("</svg>", h->to);
}
