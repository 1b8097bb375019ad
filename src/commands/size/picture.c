#include "commands/size/answer.h"

#include <math.h>

#include "pictures/picture_frame.h"

typedef struct {
    const size_answer *a;
    const size_curve *curve;
    unit_system system;
    picture_format format;
    FILE *to;
} writing;

static void say(const writing *w)
{
    const size_answer *a = w->a;
    char text[160];
    formatted_text limit = format_duration(a->size->limit_s);
    if (a->found != SIZE_FOUND)
        snprintf(text, sizeof text, "No heat brings the boil back within %s after every load", limit.text);
    else if (size_answer_shut(a))
        snprintf(text, sizeof text, "No heat does both: back within %s, and below the rim", limit.text);
    else if (size_end_surges(&a->likely, a->heat_W))
        snprintf(text, sizeof text, "%s to the tank bring every boil back within %s and stay below the rim",
                 size_shown_up(w->system, DIM_POWER, a->likely.from_W).text, limit.text);
    else
        snprintf(text, sizeof text, "%s to the tank bring every boil back within %s",
                 size_shown_up(w->system, DIM_POWER, a->heat_W).text, limit.text);
    picture_row(w->to, "said", 0, 0, text);
}

/* From where to where it stays below the rim, as far as there is such a place; where no end is, words only. */
static void end_rows(const writing *w, const char *name, const size_end *e, const char *run)
{
    char text[160];
    bool at = e->rim == SIZE_RIM_AT && !size_end_shut(e);
    const char *words = at                         ? "boils over above"
                        : size_end_shut(e)         ? "boils over with that heat and with more"
                        : e->rim == SIZE_RIM_NEVER ? "never boils over"
                                                   : "boils too strong to be known before it boils over";
    snprintf(text, sizeof text, "%s: %s%s%s", run, words, at ? " " : "", at ? SHOWN(w->system, POWER, e->heat_W) : "");
    picture_row(w->to, name, e->from_W, at ? e->heat_W : (double)NAN, text);
    if (!size_end_surges(e, w->a->heat_W))
        return;
    snprintf(text, sizeof text, "%s: boils over below %s, from water afloat", run,
             size_shown_up(w->system, DIM_POWER, e->from_W).text);
    picture_row(w->to, "surge", e->from_W, 0, text);
}

static void lines(const writing *w)
{
    const size_answer *a = w->a;
    char text[160];
    snprintf(text, sizeof text, "the limit, %s", format_duration(a->size->limit_s).text);
    picture_row(w->to, "limit", a->size->limit_s, 0, text);
    if (a->own_W > 0) {
        snprintf(text, sizeof text, "heat of the scenario: %s", SHOWN(w->system, POWER, a->own_W));
        picture_row(w->to, "own", a->own_W, 0, text);
    }
    if (a->found != SIZE_FOUND)
        return;
    snprintf(text, sizeof text, "smallest heat that brings every boil back in time: %s",
             size_shown_up(w->system, DIM_POWER, a->heat_W).text);
    picture_row(w->to, "need", a->heat_W, 0, text);
    end_rows(w, "likely", &a->likely, "likely");
    end_rows(w, "possible", &a->possible, "possible");
}

static void frame(const writing *w)
{
    const boil_heater *h = &w->a->size->scenario->plant.heater;
    picture_names(w->to, w->format, w->a->size->scenario->title);
    picture_unit_row(w->to, "power", w->system, DIM_POWER);
    picture_row(w->to, "range", w->curve->from_W, w->curve->to_W, "");
    if (h->source != BOIL_HEAT_STEAM)
        picture_row(w->to, "input", h->efficiency, 0, h->source == BOIL_HEAT_GAS ? "Fuel" : "Electricity");
    say(w);
    lines(w);
}

static void points(const writing *w)
{
    for (const size_point *p = w->curve->points; p < w->curve->points + w->curve->count; p++)
        fprintf(w->to, "%.9g\t%.9g\t%d\n", p->heat_W, p->slowest_s, (int)p->kind);
}

static void write_as(picture *p, writing *w, const char *name, void (*rows)(const writing *))
{
    w->to = picture_input(p, name);
    if (w->to != NULL)
        rows(w);
    picture_input_end(p, w->to);
}

bool size_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    picture p;
    size_curve c;
    writing w = {answer, &c, o->system, format, NULL};
    if (size_curve_of(answer, &c) != BOIL_OK || !picture_begin(&p, problem))
        return false;
    write_as(&p, &w, "frame.tsv", frame);
    write_as(&p, &w, "points.tsv", points);
    bool good = picture_draw(&p, "size.gp", format, drawn, problem);
    picture_end(&p);
    return good;
}
