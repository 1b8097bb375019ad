/* transfer/water_layer.h -- water that floats on the bath. One rule for all water: it enters the layer, and leaves it by
   mixing, by evaporating, or by boiling away.

   Mixing, kg/s:   m/(tau_t + tau_e) + rho_w A cover x w_e + m/s falling                                                  (1)
   tau_t, tau_e, w_e: transfer/overturn.h; x the erosion factor. What a load takes with it as it is lowered
   (transfer/entrainment.h) comes on top. Heat from the bath: A cover U (T - T_L), U of transfer/interface_heat.h over the
   layer's path. A layer of mean thickness d covers 1 - exp(-d/d0) of the surface.

   Every mixing law acts twice: while the bath is quiet it removes the layer, which is mild, and at the return of the boil it
   makes the surge, which is grave. So no one number errs on the safe side, and a set of runs is judged
   (case/closures.h). */
#ifndef BOIL_TRANSFER_WATER_LAYER_H
#define BOIL_TRANSFER_WATER_LAYER_H

#include "boilback.h"
#include "transfer/overturn.h"

boil_water_layer_law boil_water_layer_law_default(void);
const char *boil_water_layer_law_problem(const boil_water_layer_law *l);

double boil_water_layer_cover(const boil_water_layer_law *l, double thickness_m); /* 0 to 1 */

/* (1). turnover_factor: C of the moment. speed_m_s: of what moves below the interface. A layer that is heavier than the bath
   falls in within a second; over a thousandth of the density the one passes into the other. *by_log_stirring: derivative with
   respect to ln eps, kg/s; may be NULL. */
double boil_water_layer_mixing(const boil_water_layer_law *l, double turnover_factor, const boil_overturn_pool *pool,
                               double speed_m_s, double mass_kg, double cover, double *by_log_stirring);

#endif
