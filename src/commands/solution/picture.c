#include "commands/solution/answer.h"

#include "pictures/picture_curves.h"

/* clang-format off */
CURVE_COLUMN(fraction, solution_answer, salt_fraction)
CURVE_COLUMN(boiling_point, solution_answer, boiling_point_K)
CURVE_COLUMN(crystals, solution_answer, crystals_from_K)
CURVE_COLUMN(strength, solution_answer, strength_kg_m3)
CURVE_COLUMN(hot, solution_answer, hot_kg_m3)
CURVE_COLUMN(cold, solution_answer, cold_kg_m3)

static const panel panels[] = {
    {"Boils at", {{CURVE_LINE, "boils at", DIM_TEMPERATURE, boiling_point},
                  {CURVE_DASHED, "crystallises below", DIM_TEMPERATURE, crystals}}, 2},
    {"Strength: salts per volume at the boil", {{CURVE_LINE, "", DIM_CONCENTRATION, strength}}, 1},
    {"Density", {{CURVE_LINE, "at the boil", DIM_CONCENTRATION, hot},
                 {CURVE_DASHED, "at 20 degC", DIM_CONCENTRATION, cold}}, 2}};
/* clang-format on */

bool solution_picture(const void *answers, const output *o, picture_format format, picture_drawn *drawn,
                      picture_problem *problem)
{
    char title[120];
    const solution_answers *a = answers;
    const double *blend = a->plant->charge.blend;
    snprintf(title, sizeof title, "%.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2", 100 * blend[BOIL_NAOH], 100 * blend[BOIL_NANO3],
             100 * blend[BOIL_NANO2]);
    curves c = {.title = title,
                .said = "",
                .axis = "Salts by mass",
                .dimension = DIM_FRACTION,
                .rows = a->rows,
                .rows_count = a->count,
                .x = fraction,
                .panels = panels,
                .panels_count = sizeof panels / sizeof panels[0],
                .system = o->system};
    return picture_curves(&c, format, drawn, problem);
}
