#include "commands/charge/output.h"

#include "base/memory.h"
#include "pictures/picture_curves.h"

/* clang-format off */
CURVE_COLUMN(time_of, boil_row, time_s)
CURVE_COLUMN(temperature, boil_row, temperature_K)
CURVE_COLUMN(boiling_point, boil_row, boiling_point_K)
CURVE_COLUMN(still_level, boil_row, still_level_m)
CURVE_COLUMN(level, boil_row, level_m)

static const panel panels[] = {
    {"Bath", {{CURVE_LINE, "bath", DIM_TEMPERATURE, temperature},
              {CURVE_DASHED, "boils at", DIM_TEMPERATURE, boiling_point}}, 2},
    {"Level", {{CURVE_LINE, "still", DIM_LENGTH, still_level},
               {CURVE_DASHED, "boiling, upper estimate", DIM_LENGTH, level}}, 2}};
/* clang-format on */

bool charge_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    const charge_answer *a = answer;
    boil_run_options options = boil_run_options_default();
    boil_history h;
    char said[80];
    curves c = {.title = a->scenario->title,
                .said = said,
                .axis = "",
                .clock = true,
                .x = time_of,
                .panels = panels,
                .panels_count = sizeof panels / sizeof panels[0],
                .system = o->system};
    if (!memory_good(boil_charge_run(&a->scenario->plant, &a->plan, &options, &c.start_s, &h)))
        return false;
    snprintf(said, sizeof said, "heat off until %s, then on full", format_clock(0, a->plan.filled_s).text);
    c.rows = h.rows;
    c.rows_count = h.rows_count;
    bool good = picture_curves(&c, format, drawn, problem);
    boil_history_free(&h);
    return good;
}
