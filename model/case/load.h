/* case/load.h -- cold steel in the bath: parts of one kind and, perhaps, a basket. Each warms as a body
   (transfer/conduction.h), heated through the bath-side coefficient (transfer/convection.h).

   Simplifications: parts of a load are alike and share the bath's temperature; ends and edges are neglected, so a bar
   is long and a plate wide; a tube is a slab of its wall's thickness, wetted inside and out as soon as it is in. A
   dense basket is one slab of the pack's depth, heated at both faces; the liquid in its voids is in place at once and
   counts as bath liquid: neither its heat nor its flow through the pack is modelled, which is why the pack's
   conductivity has a wide range.

   Bath liquid is carried out with the parts. A part drawn out at speed U takes a film [Landau & Levich 1942]
   h = 0.944 Ca^(1/6) sqrt(mu U/(rho g)), Ca = mu U/sigma, which then drains [Jeffreys 1930] to a mean
   h = (2/3) sqrt(mu z/(rho g t)): the thinner of both stays. Hot films thicken as they cool in air. Packed baskets and cups hold
   far more than films do: handbook figures, from memory. */
#ifndef BOIL_CASE_LOAD_H
#define BOIL_CASE_LOAD_H

#include "boilback.h"
#include "properties/metal.h"
#include "transfer/conduction.h"
#include "transfer/convection.h"

/* Water carried in per wetted area, kg/m2: handbook drag-out figures (from memory) are 0.016 well drained, 0.08 poorly,
   0.3 to 1 cupped; for small parts in a basket 0.1 to 0.4 is judgement. */
#define BOIL_RINSE_FLAT_KG_M2 0.05
#define BOIL_RINSE_PACKED_KG_M2 0.15

#define BOIL_DRAG_PACKED_M 150e-6 /* 150 mL/m2, 100 to 400: tumbled or packed parts; order of magnitude, from memory */
#define BOIL_DRAG_HOT 2.0         /* a hot film cools and thickens as it drains; judgement, 1 to 3 */
#define BOIL_DRAG_DRIP_S 10.0     /* time over the bath after it is out; common practice, no source */

double boil_load_area(const boil_load *l);      /* m2 that meets the bath: parts (or pack faces) without basket */
double boil_load_displaced(const boil_load *l); /* m3 of solid metal, parts and basket */
double boil_load_rinse(const boil_load *l);     /* kg of water carried in, on the parts' own area even when packed */

boil_conduction_body boil_load_parts(const boil_load *l);
boil_conduction_body boil_load_basket(const boil_load *l); /* mass 0 when there is none */

/* Film left on a flat part of height z after withdrawal at U and draining for t, m. */
double boil_drag_film(double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m, double speed_m_s,
                      double height_m, double drained_s);

/* Bath liquid that a load carries out, kg: what the load states per wetted area, or the film times the hot factor, or the
   packed figure. */
double boil_drag_out(const boil_load *l, double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m);

#endif
