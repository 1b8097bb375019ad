#include "properties/hydrostatic.h"

#include <math.h>

#include "base/constants.h"
#include "properties/water.h"

#define WATER_MOLAR_MASS 0.01801528 /* kg/mol */

boil_outcome boil_hydrostatic_store(const boil_conditions *air, const boil_mixture *bath, double level_m, double steel_J_K,
                                    boil_hydrostatic *out)
{
    double T;
    boil_slope slope;
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(air, bath, &guess, &T, &slope) != BOIL_OK)
        return BOIL_NO_ROOT;
    boil_heat h = boil_solution_heat(bath, T);
    double head = boil_solution_density(bath, T) * BOIL_GRAVITY * level_m;
    double frees_J_kg = boil_steam_enthalpy(T, air->pressure_Pa) - h.water;
    out->floor_K = BOIL_GAS_CONSTANT * T * T / (WATER_MOLAR_MASS * frees_J_kg) * log1p(head / air->pressure_Pa);
    out->mean_K = out->floor_K / 2;
    out->store_J = (h.heat_capacity_J_K + steel_J_K) * out->mean_K;
    out->steam_kg = out->store_J / (frees_J_kg - h.heat_capacity_J_K * slope.water);
    return BOIL_OK;
}
