#include "commands/solution/answer.h"

#include <math.h>
#include <stdlib.h>

#include "base/constants.h"
#include "base/program.h"

#define SIXTY_DEGF_K (BOIL_ZERO_CELSIUS + 28 / 1.8)

double solution_baume(double specific_gravity)
{
    return 145 - 145 / specific_gravity;
}

double solution_twaddell(double specific_gravity)
{
    return 200 * (specific_gravity - 1);
}

/* Along the salt fraction, at 1 kg and a fixed blend: salts in for water. */
static double slope_with_fraction(const boil_slope *s, const double blend[BOIL_SALTS])
{
    double slope = -s->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        slope += s->salt[i] * blend[i];
    return slope;
}

/* The end of a range is still in it; a rounding error beyond it too. */
static bool in_range(double temperature_K, double equivalent_molality)
{
    boil_range r = boil_solution_range_at(temperature_K, equivalent_molality);
    bool within = r.margin > -1e-9;
    if (!within)
        program_complain("%s comes to %.4g %s, and what is known of it ends at %.4g %s", r.quantity, r.value, r.unit, r.limit,
                         r.unit);
    return within;
}

static void densities(const boil_mixture *kilogram, solution_answer *a)
{
    double gravity = boil_solution_density(kilogram, SIXTY_DEGF_K) / boil_water_density(SIXTY_DEGF_K);
    a->density_kg_m3 = boil_solution_density(kilogram, a->temperature_K);
    a->hot_kg_m3 = boil_solution_density(kilogram, a->boiling_point_K);
    a->cold_kg_m3 = boil_solution_density(kilogram, BOIL_ZERO_CELSIUS + 20);
    a->baume = solution_baume(gravity);
    a->twaddell = solution_twaddell(gravity);
}

bool look_up(const boil_plant *p, solution_answer *a)
{
    boil_initial_state c;
    boil_slope slope;
    boil_solution_guess guess = {0, 0};
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    if (boil_plant_initial(p, &c) != BOIL_OK)
        return program_complain("there is no boiling bath of these salts and this strength that the correlations cover");
    boil_mixture kilogram = boil_mixture_of(p->charge.blend, c.salt_fraction);
    if (boil_solution_boiling_point_near(&air, &kilogram, &guess, &a->boiling_point_K, &slope) != BOIL_OK)
        return program_complain("no boiling point was found");
    a->temperature_K = p->charge.temperature_K > 0 ? p->charge.temperature_K : a->boiling_point_K;
    a->salt_fraction = c.salt_fraction;
    a->strength_kg_m3 = boil_solution_strength(&air, &kilogram);
    densities(&kilogram, a);
    a->water_activity = boil_solution_activity_near(&kilogram, a->temperature_K, &guess);
    a->heat = boil_solution_heat(&kilogram, a->temperature_K);
    a->dilution_J_kg = boil_water_enthalpy(a->temperature_K) - a->heat.water;
    a->crystals_from_K = boil_solubility_crystals_from(&kilogram);
    a->slope_K = slope_with_fraction(&slope, p->charge.blend);
    return in_range(a->temperature_K, guess.equivalent_molality);
}

solution_answer *solution_rows(const boil_plant *p, const solution_table *t, size_t *count)
{
    boil_plant row = *p;
    *count = (size_t)(floor((t->to - t->from) / t->step + 1e-9) + 1);
    solution_answer *rows = calloc(*count, sizeof *rows);
    if (rows == NULL) {
        program_complain("out of memory");
        return NULL;
    }
    row.charge.basis = t->over == DIM_FRACTION        ? BOIL_INITIAL_BY_SALT_FRACTION
                       : t->over == DIM_CONCENTRATION ? BOIL_INITIAL_BY_STRENGTH
                                                      : BOIL_INITIAL_BY_BOILING_POINT;
    for (size_t i = 0; i < *count; i++) {
        row.charge.value = t->from + (double)i * t->step;
        if (!look_up(&row, &rows[i])) {
            program_complain("--table: so at its row of %s (%s); let it begin or end before that",
                             format_exact(UNITS_US, t->over, row.charge.value).text,
                             format_exact(UNITS_SI, t->over, row.charge.value).text);
            free(rows);
            return NULL;
        }
    }
    return rows;
}
