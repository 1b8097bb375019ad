#include "commands/size/answer.h"

#include <math.h>

#include "pictures/picture_frame.h"

typedef struct {
    const size_answer *a;
    const boil_heater_curve *curve;
    unit_system system;
    picture_format format;
} writing;

static void say(const writing *w, FILE *to)
{
    const size_answer *a = w->a;
    char text[160];
    formatted_text limit = format_duration(a->size->limit_s);
    if (a->heats.found == BOIL_WINDOW_BEYOND)
        snprintf(text, sizeof text, "It needs water, not heat: before the boil is back within %s it boils too strong",
                 limit.text);
    else if (a->heats.found != BOIL_WINDOW_FOUND)
        snprintf(text, sizeof text, "No heat brings the boil back within %s after every load", limit.text);
    else if (boil_heater_window_shut(&a->heats))
        snprintf(text, sizeof text, "No heat does both: back within %s, and the freeboard left", limit.text);
    else
        snprintf(text, sizeof text, "%s to the tank bring every boil back within %s",
                 size_shown_up(w->system, DIM_POWER, a->heats.heat_W).text, limit.text);
    picture_row(to, "said", 0, 0, text);
}

/* From where to where it stays below the rim, as far as there is such a place; where no end is, words only. */
static void end_rows(const writing *w, FILE *to, const char *name, const boil_window_end *e, const char *run)
{
    char text[160];
    bool at = e->rim == BOIL_RIM_AT && !boil_window_end_shut(e);
    const char *words = at                         ? "boils over above"
                        : boil_window_end_shut(e)  ? "boils over with that heat and with more"
                        : e->rim == BOIL_RIM_NEVER ? "never boils over"
                                                   : "boils too strong to be known before it boils over";
    snprintf(text, sizeof text, "%s: %s%s%s", run, words, at ? " " : "", at ? SHOWN(w->system, POWER, e->heat_W) : "");
    picture_row(to, name, e->from_W, at ? e->heat_W : (double)NAN, text);
}

/* The one to count on. */
static void freeboard_row(const writing *w, FILE *to)
{
    char text[160];
    const boil_window_end *e = &w->a->heats.leaves_possible;
    bool shut = boil_window_end_shut(e);
    if (e->rim != BOIL_RIM_AT)
        return;
    snprintf(text, sizeof text, "too little freeboard may be left %s%s", shut ? "with that heat and with more" : "above ",
             shut ? "" : size_shown_down(w->system, DIM_POWER, e->heat_W).text);
    picture_row(to, "leaves", shut ? w->a->heats.heat_W : e->heat_W, 0, text);
}

static void lines(const writing *w, FILE *to)
{
    const size_answer *a = w->a;
    char text[160];
    snprintf(text, sizeof text, "the limit, %s", format_duration(a->size->limit_s).text);
    picture_row(to, "limit", a->size->limit_s, 0, text);
    if (a->heats.own_W > 0) {
        snprintf(text, sizeof text, "heat of the scenario: %s", SHOWN(w->system, POWER, a->heats.own_W));
        picture_row(to, "own", a->heats.own_W, 0, text);
    }
    if (a->heats.found != BOIL_WINDOW_FOUND)
        return;
    snprintf(text, sizeof text, "smallest heat that brings every boil back in time: %s",
             size_shown_up(w->system, DIM_POWER, a->heats.heat_W).text);
    picture_row(to, "need", a->heats.heat_W, 0, text);
    freeboard_row(w, to);
    end_rows(w, to, "likely", &a->heats.likely, "likely");
    end_rows(w, to, "possible", &a->heats.possible, "possible");
}

static void frame(const void *what, FILE *to)
{
    const writing *w = what;
    const boil_heater *h = &w->a->size->scenario->plant.heater;
    picture_names(to, w->format, w->a->size->scenario->title);
    picture_unit_row(to, "power", w->system, DIM_POWER);
    picture_row(to, "range", w->curve->from_W, w->curve->to_W, "");
    if (h->source != BOIL_HEAT_STEAM)
        picture_row(to, "input", h->efficiency, 0, h->source == BOIL_HEAT_GAS ? "Fuel" : "Electricity");
    say(w, to);
    lines(w, to);
}

static void points(const void *what, FILE *to)
{
    const writing *w = what;
    for (const boil_curve_point *p = w->curve->points; p < w->curve->points + w->curve->count; p++)
        fprintf(to, "%.9g\t%.9g\t%d\n", p->heat_W, p->slowest_s, (int)p->kind);
}

bool size_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    boil_heater_curve c;
    const writing w = {answer, &c, o->system, format};
    const picture_input inputs[] = {{"frame.tsv", frame, &w}, {"points.tsv", points, &w}, {0}};
    const size_case *size = w.a->size;
    return boil_heater_curve_of(&size->scenario->plant, &size->schedule, &size->run, size->limit_s, &w.a->heats, &c) ==
               BOIL_OK &&
           picture_draw("size.gp", format, inputs, drawn, problem);
}
