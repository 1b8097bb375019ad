#include "pictures/picture_curves.h"

#include <math.h>

#include "pictures/picture_frame.h"

static double in_unit(unit_system s, unit_dimension d, double si)
{
    return d < DIM_COUNT ? unit_from_si(d, format_unit(s, d), si) : si;
}

/* A time on the clock stays in seconds. */
static double x_of(const curves *c, size_t i)
{
    double si = c->x(c->rows, i);
    return c->clock ? si : in_unit(c->system, c->dimension, si);
}

static void named_row(FILE *to, const char *name, double a, double b, const char *words, unit_system s, unit_dimension d)
{
    char text[160];
    snprintf(text, sizeof text, "%s%s%s", words, d < DIM_COUNT ? ", " : "", d < DIM_COUNT ? format_unit(s, d) : "");
    picture_row(to, name, a, b, text);
}

typedef struct {
    const curves *curves;
    picture_format format;
} framed;

static void frame(const void *what, FILE *to)
{
    const framed *f = what;
    const curves *c = f->curves;
    double from = (double)INFINITY, end = -(double)INFINITY;
    for (size_t i = 0; i < c->rows_count; i++) {
        from = fmin(from, x_of(c, i));
        end = fmax(end, x_of(c, i));
    }
    end = end > from ? end : from + 1;
    picture_names(to, f->format, c->title);
    picture_row(to, "said", 0, 0, picture_fitted(c->said, picture_columns(f->format)).text);
    if (c->clock)
        picture_row(to, "clock", c->start_s, 0, "");
    named_row(to, "axis", from, end, c->axis, c->system, c->clock ? DIM_COUNT : c->dimension);
    for (size_t p = 0; p < c->panels_count; p++) {
        const panel *of = &c->panels[p];
        named_row(to, "panel", 0, 0, of->words, c->system, of->curves[0].dimension);
        for (size_t k = 0; k < of->count; k++)
            picture_row(to, "curve", (double)of->curves[k].kind, 0, of->curves[k].words);
    }
}

/* Blocks with two empty lines between, as gnuplot counts them. */
static void points(const void *what, FILE *to)
{
    const curves *c = what;
    for (size_t p = 0; p < c->panels_count; p++)
        for (size_t k = 0; k < c->panels[p].count; k++) {
            const curve *of = &c->panels[p].curves[k];
            for (size_t i = 0; i < c->rows_count; i++)
                fprintf(to, "%.9g\t%.9g\n", x_of(c, i), in_unit(c->system, of->dimension, of->y(c->rows, i)));
            fputs("\n\n", to);
        }
}

bool picture_curves(const curves *c, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    const picture_input inputs[] = {{"frame.tsv", frame, &(framed){c, format}}, {"curves.tsv", points, c}, {0}};
    return picture_draw("curves.gp", format, inputs, drawn, problem);
}
