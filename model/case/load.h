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

typedef enum { BOIL_SHAPE_PLATE, BOIL_SHAPE_BAR, BOIL_SHAPE_BALL, BOIL_SHAPE_TUBE } boil_shape;

typedef struct {
    double mass_kg; /* of the parts, 0.001 to 1e5 */
    boil_metal metal;
    boil_shape shape;
    double size_m;                   /* plate thickness, bar or ball diameter, tube outer diameter; 1e-4 to 1 m */
    double tube_wall_m;              /* tube only: 1e-4 m to less than half its diameter */
    double packed_depth_m;           /* 0: parts hang apart; else a dense basket of this depth, 0.01 to 2 m */
    double packed_conductivity_W_mK; /* 7, 3 to 15, judgement: wet bed of small steel parts */
    double packed_void;              /* 0.5, 0.3 to 0.7 */
    double temperature_K;            /* on entry; 233.15 to 473.15 K: much hotter parts would boil the bath on their faces */
    double immersed_s;               /* from entry to lifting, above 0; infinity: until lifted */
    double basket_kg;                /* steel of the basket, 0 to 1e5; as 3 mm wire or sheet */
    double lowering_s;               /* time to go in, and to come out; 1 to 600 s */
    double coefficient_W_m2K;        /* bath side, 10 to 1e5; 0: from the bath's own stirring */
    double area_m2;                  /* that meets the bath, to 1e5; 0: from mass, shape and size. Mass and size stay */
    double rinse_kg_m2;              /* water carried in per wetted area; 0 to 1; see above */
    double drag_out_kg_m2; /* bath liquid carried out per wetted area of the parts; negative: from the film, see above */
    double part_height_m;  /* for natural convection; 0.1, 0.02 to 1; hardly matters */
} boil_load;

/* Carbon steel plate of no mass, 20 degC, until lifted, lowered over 10 s. */
boil_load boil_load_default(void);

const char *boil_load_problem(const boil_load *l); /* NULL, or what is wrong, naming the range */

double boil_load_area(const boil_load *l);      /* m2 that meets the bath: parts (or pack faces) without basket */
double boil_load_wetted(const boil_load *l);    /* m2 of the parts' own surface, packed or not */
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
