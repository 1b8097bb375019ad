/* case/drag_out.h -- bath liquid carried out with parts.

   A part drawn out at speed U takes a film [Landau & Levich 1942] h = 0.944 Ca^(1/6) sqrt(mu U/(rho g)), Ca = mu U/sigma, which
   then drains [Jeffreys 1930] to a mean h = (2/3) sqrt(mu z/(rho g t)): the thinner of both stays. Hot films thicken as they
   cool in air. Packed baskets and cups hold far more than films do: handbook figures, from memory. */
#ifndef BOIL_CASE_DRAG_OUT_H
#define BOIL_CASE_DRAG_OUT_H

#include "case/load.h"

#define BOIL_DRAG_PACKED_M 150e-6 /* 150 mL/m2, 100 to 400: tumbled or packed parts; order of magnitude, from memory */
#define BOIL_DRAG_HOT 2.0         /* a hot film cools and thickens as it drains; judgement, 1 to 3 */
#define BOIL_DRAG_DRIP_S 10.0     /* time over the bath after it is out; common practice, no source */

/* Film left on a flat part of height z after withdrawal at U and draining for t, m. */
double boil_drag_film(double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m, double speed_m_s,
                      double height_m, double drained_s);

/* Bath liquid that a load carries out, kg: what the load states per wetted area, or the film times the hot factor, or the
   packed figure. */
double boil_drag_out(const boil_load *l, double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m);

#endif
