/* transfer/interface_heat.h -- heat from the bath into water that floats on it.

   Two still bodies that touch share at once the temperature
       T_c = (e1 T1 + e2 T2)/(e1 + e2),   e = sqrt(k rho c)                                                               (1)
   and exchange (T2 - T1)/[sqrt(pi t)(1/e1 + 1/e2)] [two half-spaces; Carslaw & Jaeger, Conduction of Heat in Solids, from
   memory]. Later both sides stir, and what is left between them is a core that conducts: the heat passes as through a path of
   still water. Salt makes the interface so stable (ratio of the density differences by salt and by heat 8 to 17) that published
   laws of convection across such interfaces, extrapolated, give 6 to 9 mm; solid-plane convection on both sides gives 1.6 mm. Path:
   1.3, 3 and 8 mm in all, centre judgement. So
       U = max{k/path, 1/[sqrt(pi t)(1/e1 + 1/e2)]}                                                                       (2)
   per area of interface, resistance of the bath's side included. A fast path is the grave one in a short quiet spell, and not in a
   long one, where the layer boils itself away by it. */
#ifndef BOIL_TRANSFER_INTERFACE_HEAT_H
#define BOIL_TRANSFER_INTERFACE_HEAT_H

#define BOIL_INTERFACE_PATH_FAST 1.3e-3 /* m */
#define BOIL_INTERFACE_PATH_LIKELY 3e-3
#define BOIL_INTERFACE_PATH_SLOW 8e-3

typedef struct {
    double conductivity_W_mK, density_kg_m3, heat_capacity_J_kgK;
} boil_interface_liquid;

double boil_interface_effusivity(const boil_interface_liquid *l); /* e, W s^0.5/m2K */

/* T_c of (1), in the unit of the two. */
double boil_interface_contact_temperature(const boil_interface_liquid *water, double water_K, const boil_interface_liquid *bath,
                                          double bath_K);

/* U of (2), W/m2K, a layer's age after it began; within the first 0.1 s that of 0.1 s: water does not spread at once. */
double boil_interface_conductance(const boil_interface_liquid *water, const boil_interface_liquid *bath, double path_m,
                                  double age_s);

#endif
