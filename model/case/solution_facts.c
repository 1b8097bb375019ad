#include "case/solution_facts.h"

#include <math.h>

#include "base/constants.h"
#include "properties/solution.h"

#define SIXTY_DEGF_K (BOIL_ZERO_CELSIUS + 28 / 1.8)

/* Along the salt fraction, at 1 kg and a fixed blend: salts in for water. */
static double slope_with_fraction(const boil_slope *s, const double blend[BOIL_SALTS])
{
    double slope = -s->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        slope += s->salt[i] * blend[i];
    return slope;
}

boil_outcome boil_solution_facts_of(const boil_plant *p, boil_solution_facts *out)
{
    boil_initial_state c;
    boil_slope slope;
    boil_solution_guess guess = {0, 0};
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    boil_outcome outcome = boil_plant_initial(p, &c);
    if (outcome != BOIL_OK)
        return outcome;
    boil_mixture kilogram = boil_mixture_of(p->charge.blend, c.salt_fraction);
    *out = (boil_solution_facts){.salt_fraction = c.salt_fraction, .strength_kg_m3 = boil_solution_strength(&air, &kilogram)};
    outcome = boil_solution_boiling_point_near(&air, &kilogram, &guess, &out->boiling_point_K, &slope);
    if (outcome != BOIL_OK)
        return outcome;
    out->temperature_K = p->charge.temperature_K > 0 ? p->charge.temperature_K : out->boiling_point_K;
    out->density_kg_m3 = boil_solution_density(&kilogram, out->temperature_K);
    out->hot_kg_m3 = boil_solution_density(&kilogram, out->boiling_point_K);
    out->cold_kg_m3 = boil_solution_density(&kilogram, BOIL_ZERO_CELSIUS + 20);
    /* No salt makes it lighter: water by itself is 1, whatever is rounded. */
    out->gravity_60F = fmax(1, boil_solution_density(&kilogram, SIXTY_DEGF_K) / boil_water_density(SIXTY_DEGF_K));
    out->water_activity = boil_solution_activity_near(&kilogram, out->temperature_K, &guess);
    out->heat = boil_solution_heat(&kilogram, out->temperature_K);
    out->dilution_J_kg = boil_water_enthalpy(out->temperature_K) - out->heat.water;
    out->crystals_from_K = boil_solubility_crystals_from(&kilogram);
    out->slope_K = slope_with_fraction(&slope, p->charge.blend);
    out->range = boil_solution_range_at(out->temperature_K, guess.equivalent_molality);
    return BOIL_OK;
}
