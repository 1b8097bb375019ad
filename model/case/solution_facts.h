/* case/solution_facts.h -- what is known of the solution that a plant is charged with: one kilogram of it. */
#ifndef BOIL_CASE_SOLUTION_FACTS_H
#define BOIL_CASE_SOLUTION_FACTS_H

#include "boilback.h"

typedef struct {
    double salt_fraction, strength_kg_m3, boiling_point_K;
    double temperature_K; /* the charge's, or its boil where that says none */
    double density_kg_m3;
    double hot_kg_m3, cold_kg_m3;   /* density at the boil; at 20 degC, crystallised or not */
    double gravity_60F;             /* its density over water's, both at 60 degF, 15.56 degC */
    double water_activity, slope_K; /* of the boiling point with the salt fraction */
    double dilution_J_kg;           /* heat set free by a kg of water of the temperature put into much of it */
    double crystals_from_K;         /* it crystallises below; NaN: not above 0 degC */
    boil_heat heat;
    boil_range range; /* how far that is from the end of what is known; margin below 0: beyond it */
} boil_solution_facts;

/* BOIL_OK, or as boil_plant_initial says why there is no such bath. */
boil_outcome boil_solution_facts_of(const boil_plant *p, boil_solution_facts *out);

#endif
