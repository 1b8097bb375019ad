/* transfer/surface.h -- heat and vapour leaving through walls and the free surface.

   One air film serves evaporation, steam and convection. A mass flow e evaporates from area A while steam w
   leaves the pool through the same area:

       e/A + w/A = g ln[(p - pa)/(p - pw(Ts))],   e >= 0 while the right side is positive        (1)
       g = f_e (a + b v) p / L(Ts),  a = 0.089 kW/m2/kPa, b = 0.0782 kW/m2/kPa per m/s           (2)
   Where the film carries less than w, e = 0: the steam needs no film, and pushes the air away.

   [Carrier's open-tank formula, as in ASHRAE Applications, with the high-flux (Stefan) correction of film theory].
   L is pure water's latent heat: the published formula gives heat, and was made from a mass flow with it.
   The surface is cooler than the bath:  h_liq (T - Ts) = (e/A)(hv(Ts) - hw(Ts)) + radiation + convection.  (3)
   Convection follows from the same film by the Chilton-Colburn analogy:
       h_c = f_c (g/f_e) (M_air/M_water) cp_air Le^(2/3).                                          (4)
   A cold strong bath may take moisture from the air: then e < 0 and w does not matter. */
#ifndef BOIL_TRANSFER_SURFACE_H
#define BOIL_TRANSFER_SURFACE_H

#include "boilback.h"
#include "equipment/ambient.h"
#include "equipment/tank.h"

boil_losses boil_losses_default(void);

/* Vapour pressure of the liquid at its surface, Pa, and its slope, Pa/K: both positive. The solver may ask anywhere
   within 25 K beyond bath and room; from a fair guess it asks between that and the answer only. */
typedef struct {
    double (*pressure)(const void *liquid, double temperature_K, double *slope_Pa_K);
    const void *liquid;
} boil_vapour_pressure;

typedef struct {
    double evaporation_kg_s; /* e over the whole area; negative: taken up from the air */
    double radiation_W, convection_W;
    double skin_K; /* Ts */
} boil_surface_flow;

/* Solve (1)-(3) for the skin temperature by safeguarded Newton, started from skin_guess_K (any value works; a good
   one is quick: two or three vapour pressures). Flows are continuous in bath temperature and steam; a bath at or
   above its boiling point is no exception. area 0 gives zero flow and the bath's temperature. Writes *out; returns
   BOIL_OK or BOIL_NO_ROOT (only for values out of range or not finite). */
boil_outcome boil_surface_exchange(const boil_losses *l, const boil_ambient *ambient, const boil_vapour_pressure *vapour,
                                   double area_m2, double liquid_K, double steam_leaving_kg_s, double skin_guess_K,
                                   boil_surface_flow *out);

/* Heat through the walls, W: cooled area times U (T - T_room). U is the scenario's, or 1/(1/h_o + insulation/k) with
   h_o natural convection and radiation at the outside (whatever the draught). No steel wall: no loss unless a
   coefficient is given. */
double boil_wall_coefficient(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K); /* U */
double boil_wall_loss(const boil_losses *l, const boil_tank *t, const boil_ambient *ambient, double liquid_K);        /* W */

#endif
