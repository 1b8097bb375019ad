#include "commands/size/answer.h"

#include <math.h>

#include "pictures/picture_frame.h"

/* The case carried out with many heats: how recovery and rim go with them. */

typedef enum {
    POINT_BELOW, /* stays below the rim */
    POINT_OVER,  /* boils over, with the likely laws */
    POINT_BEYOND /* left what is known of the bath before its end */
} point_kind;

typedef struct {
    double heat_W;
    double slowest_s; /* recovery; NaN: a boil was never back, or the run did not come so far */
    point_kind kind;
} point;

enum { CURVE_POINTS = 33 };

/* From the calm losses to beyond the window, closer together at first; the answer's own heat is one of them. */
typedef struct {
    double from_W, to_W;
    size_t count;
    point points[CURVE_POINTS];
} curve;

/* What is to be seen: both ends of the window with room beyond them, and the heat of the scenario. */
static void set_range(const size_answer *a, double losses_W, curve *c)
{
    double need_W = a->found == SIZE_FOUND ? a->heat_W : 2 * losses_W;
    double seen_W = 2 * need_W;
    if (a->found == SIZE_FOUND && a->likely.rim == SIZE_RIM_AT && !size_end_shut(&a->likely))
        seen_W = 1.15 * a->likely.heat_W;
    if (a->own_W > seen_W && a->own_W < 3 * seen_W)
        seen_W = 1.05 * a->own_W;
    c->from_W = fmin(losses_W, 0.9 * need_W);
    c->to_W = fmax(seen_W, 1.3 * need_W);
}

static boil_outcome add(const size_case *s, double heat_W, curve *c)
{
    boil_plant sized;
    boil_history h;
    boil_outcome result = boil_heater_size_plant(&s->scenario->plant, heat_W, &sized);
    if (result == BOIL_OK)
        result = boil_run(&sized, &s->schedule, &s->run, &h);
    if (result != BOIL_OK)
        return result;
    point *p = &c->points[c->count++];
    bool over = !isnan(h.summary.overflow_s) || !isnan(h.summary.still_overflow_s), whole = h.end == BOIL_RUN_DONE;
    *p = (point){heat_W, whole || over ? boil_history_recoveries(&h, s->limit_s).slowest_s : (double)NAN,
                 over    ? POINT_OVER
                 : whole ? POINT_BELOW
                         : POINT_BEYOND};
    boil_history_free(&h);
    return BOIL_OK;
}

static boil_outcome curve_of(const size_answer *a, curve *out)
{
    boil_steady_state calm;
    boil_outcome result = boil_steady_state_at(&a->size->scenario->plant, 0, &calm);
    *out = (curve){0};
    if (result != BOIL_OK)
        return result;
    set_range(a, calm.losses_W, out);
    const int even = CURVE_POINTS - 1;
    double step = pow(out->to_W / out->from_W, 1.0 / (even - 1)), own_W = a->found == SIZE_FOUND ? a->heat_W : 0;
    for (int i = 0; i < even && result == BOIL_OK; i++) {
        double heat_W = out->from_W * pow(step, i);
        if (own_W > 0 && own_W <= heat_W) {
            result = add(a->size, own_W, out);
            own_W = 0;
        }
        if (result == BOIL_OK)
            result = add(a->size, heat_W, out);
    }
    return result;
}

typedef struct {
    const size_answer *a;
    const curve *curve;
    unit_system system;
    picture_format format;
} writing;

static void say(const writing *w, FILE *to)
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
    picture_row(to, "said", 0, 0, text);
}

/* From where to where it stays below the rim, as far as there is such a place; where no end is, words only. */
static void end_rows(const writing *w, FILE *to, const char *name, const size_end *e, const char *run)
{
    char text[160];
    bool at = e->rim == SIZE_RIM_AT && !size_end_shut(e);
    const char *words = at                         ? "boils over above"
                        : size_end_shut(e)         ? "boils over with that heat and with more"
                        : e->rim == SIZE_RIM_NEVER ? "never boils over"
                                                   : "boils too strong to be known before it boils over";
    snprintf(text, sizeof text, "%s: %s%s%s", run, words, at ? " " : "", at ? SHOWN(w->system, POWER, e->heat_W) : "");
    picture_row(to, name, e->from_W, at ? e->heat_W : (double)NAN, text);
    if (!size_end_surges(e, w->a->heat_W))
        return;
    snprintf(text, sizeof text, "%s: boils over below %s, from water afloat", run,
             size_shown_up(w->system, DIM_POWER, e->from_W).text);
    picture_row(to, "surge", e->from_W, 0, text);
}

static void lines(const writing *w, FILE *to)
{
    const size_answer *a = w->a;
    char text[160];
    snprintf(text, sizeof text, "the limit, %s", format_duration(a->size->limit_s).text);
    picture_row(to, "limit", a->size->limit_s, 0, text);
    if (a->own_W > 0) {
        snprintf(text, sizeof text, "heat of the scenario: %s", SHOWN(w->system, POWER, a->own_W));
        picture_row(to, "own", a->own_W, 0, text);
    }
    if (a->found != SIZE_FOUND)
        return;
    snprintf(text, sizeof text, "smallest heat that brings every boil back in time: %s",
             size_shown_up(w->system, DIM_POWER, a->heat_W).text);
    picture_row(to, "need", a->heat_W, 0, text);
    end_rows(w, to, "likely", &a->likely, "likely");
    end_rows(w, to, "possible", &a->possible, "possible");
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
    for (const point *p = w->curve->points; p < w->curve->points + w->curve->count; p++)
        fprintf(to, "%.9g\t%.9g\t%d\n", p->heat_W, p->slowest_s, (int)p->kind);
}

bool size_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    curve c;
    const writing w = {answer, &c, o->system, format};
    const picture_input inputs[] = {{"frame.tsv", frame, &w}, {"points.tsv", points, &w}, {0}};
    return curve_of(answer, &c) == BOIL_OK && picture_draw("size.gp", format, inputs, drawn, problem);
}
