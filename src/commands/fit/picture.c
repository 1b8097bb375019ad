#include "commands/fit/answer.h"

#include <math.h>

#include "pictures/picture_curves.h"

/* NaN where the reading is of the other kind. */
#define OF_KIND(name, of, member)                                                                                              \
    static double name(const void *rows, size_t i)                                                                             \
    {                                                                                                                          \
        const fit_reading *r = (const fit_reading *)rows + i;                                                                  \
        return r->kind == of ? r->member : (double)NAN;                                                                        \
    }

/* clang-format off */
OF_KIND(temperature, FIT_TEMPERATURE, measured)
OF_KIND(temperature_guess, FIT_TEMPERATURE, guess)
OF_KIND(temperature_best, FIT_TEMPERATURE, best)
OF_KIND(level, FIT_LEVEL, measured)
OF_KIND(level_guess, FIT_LEVEL, guess)
OF_KIND(level_best, FIT_LEVEL, best)

CURVE_COLUMN(time_of, fit_reading, time_s)

static const panel temperatures = {"Bath",
    {{CURVE_POINTS, "measured", DIM_TEMPERATURE, temperature}, {CURVE_DASHED, "guess", DIM_TEMPERATURE, temperature_guess},
     {CURVE_LINE, "fitted", DIM_TEMPERATURE, temperature_best}}, 3};
static const panel levels = {"Still level",
    {{CURVE_POINTS, "measured", DIM_LENGTH, level}, {CURVE_DASHED, "guess", DIM_LENGTH, level_guess},
     {CURVE_LINE, "fitted", DIM_LENGTH, level_best}}, 3};
/* clang-format on */

bool fit_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    const fit_answer *f = answer;
    panel panels[2];
    size_t count = 0;
    if (f->temperatures > 0)
        panels[count++] = temperatures;
    if (f->levels > 0)
        panels[count++] = levels;
    curves c = {.title = f->scenario->title,
                .said = f->log_path,
                .axis = "",
                .clock = true,
                .start_s = f->scenario->start_s,
                .rows = f->readings,
                .rows_count = f->readings_count,
                .x = time_of,
                .panels = panels,
                .panels_count = count,
                .system = o->system};
    return picture_curves(&c, format, drawn, problem);
}
