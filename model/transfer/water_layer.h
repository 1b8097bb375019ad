/* transfer/water_layer.h -- water that floats on the bath. One rule for all water: it enters the layer, and leaves it by
   mixing, by evaporating, or by boiling away.

   Mixing, kg/s:   m/(tau + m/limit) + rho_w A cover w_e,   limit = 2 eta rho A eps/(g drho/rho_w)                        (1)
   tau, eps: see transfer/swell.h. limit: the stirring power that lifts potential energy, eta of it (flux Richardson number),
   spread over half the depth. w_e: slow erosion of the interface by convection or a load being lowered, velocity u: see
   transfer/overturn.h.

   Heat from the bath, W:  A cover (T - T_L)/(1/h + thickness_c/k),  thickness_c the smaller of half the layer and
   sqrt(pi alpha t), t its age, never below a floor.                                                                      (2)
   A layer of mean thickness d covers 1 - exp(-d/d0) of the surface. */
#ifndef BOIL_TRANSFER_WATER_LAYER_H
#define BOIL_TRANSFER_WATER_LAYER_H

#include "boilback.h"

boil_water_layer_law boil_water_layer_law_default(void);
const char *boil_water_layer_law_problem(const boil_water_layer_law *l);

double boil_water_layer_cover(const boil_water_layer_law *l, double thickness_m); /* 0 to 1 */

/* What the mixing depends on. */
typedef struct {
    double area_m2, depth_m; /* of the pool */
    double bath_kg_m3, water_kg_m3;
    double stirring_W_kg; /* eps */
    double mixing_time_s; /* tau; infinite when nothing stirs */
    double interface_m_s; /* u, see transfer/overturn.h */
} boil_water_layer_stirring;

/* (1). A layer that is heavier than the bath falls in within a second; over a thousandth of the density the one passes into the
   other. *by_log_stirring: derivative with respect to
   ln eps, tau going as eps^(-1/3), kg/s; may be NULL. */
double boil_water_layer_mixing(const boil_water_layer_law *l, const boil_water_layer_stirring *s, double mass_kg, double cover,
                               double *by_log_stirring);

/* (2) per kelvin, W/K. */
double boil_water_layer_conductance(const boil_water_layer_law *l, double area_m2, double cover, double thickness_m,
                                    double age_s, double bath_side_W_m2K);

#endif
