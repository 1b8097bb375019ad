/* properties/hydrostatic.h -- heat that a boiling bath may keep below its surface, where the weight of the liquid holds the boil down.

   At the floor the pressure is rho g H higher, and the boiling point by Clausius and Clapeyron
       dT_f = R T^2/(M h_e) ln(1 + rho g H/p),   h_e = hv - H_w                                                           (1)
   (M molar mass of water, H_w its partial enthalpy in the bath). A bath everywhere at its own boiling point is dT_f/2 hotter in the
   mean than its surface, and stores
       E = share C dT_f/2,   as steam E/(hv - K),   K = H_w + C' dTb/dm_w                                                 (2)
   (C of bath and steel, C' of the bath). Share: 0, all circulates at the surface's boiling point, to 1, evaporator practice (the
   boiling point at half depth; textbooks, from memory). A strongly circulating pool is nearer 0 to 0.5 (judgement). It is a range:
   0 for the moment a boil is lost, 1 for what a stir may set free. */
#ifndef BOIL_PROPERTIES_HYDROSTATIC_H
#define BOIL_PROPERTIES_HYDROSTATIC_H

#include "boilback.h"
#include "properties/solution.h"

typedef struct {
    double floor_K;  /* dT_f */
    double mean_K;   /* dT_f/2 */
    double store_J;  /* E at share 1; at share 0 none */
    double steam_kg; /* E as steam */
} boil_hydrostatic;

/* The whole bath (kg) at its boil under the air, its level 0 to 3 m, steel_J_K the heat capacity of what is as hot as it. BOIL_OK, or
   BOIL_NO_ROOT when it has no boiling point. */
boil_outcome boil_hydrostatic_store(const boil_conditions *air, const boil_mixture *bath, double level_m, double steel_J_K,
                                    boil_hydrostatic *out);

#endif
