/* load.h -- cold steel warming in the bath.

   A load is parts of one kind and, perhaps, a basket. Each is a "body": a slab (d = 1), cylinder (2) or sphere (3) of
   half-thickness or radius r. Conduction is a Galerkin expansion in even polynomials of x/r, orthogonal with weight
   (x/r)^(d-1):  T(x, t) = y0(t) + sum y_k(t) P_k(x/r),  P_k of zero mean, so that y0 is the mean temperature and
       rho c (r/d) dy0/dt = q,   q = h (T_fluid - T(r))                                              (1)
   conserves heat exactly for any h(t). One more polynomial than there are unknowns is carried quasi-steady; with a single
   unknown that is the well-known resistance r/((d+2)k) in series with 1/h. c and k are taken at the mean temperature. */
#ifndef BOIL_LOAD_H
#define BOIL_LOAD_H

#include "steel.h"

#define BOIL_BODY_UNKNOWNS_MAX 3

typedef enum { BOIL_SHAPE_PLATE, BOIL_SHAPE_BAR, BOIL_SHAPE_BALL, BOIL_SHAPE_TUBE } boil_shape;

typedef struct {
    double mass_kg;             /* of the parts, 0.001 to 1e5 */
    boil_metal metal;
    boil_shape shape;
    double size_m;              /* plate thickness, bar or ball diameter, tube outer diameter; 1e-4 to 1 m */
    double tube_wall_m;         /* tube only: less than half its diameter */
    double packed_depth_m;      /* 0: parts hang apart; else a dense basket of this depth, to 2 m */
    double packed_conductivity_W_mK; /* 7, 3 to 15, judgement: wet bed of small steel parts */
    double packed_void;         /* 0.5, 0.3 to 0.7 */
    double temperature_K;       /* on entry */
    double immersed_s;          /* from entry to lifting; infinity: until lifted */
    double basket_kg;           /* steel of the basket, 0 to 1e5; as 3 mm wire or sheet */
    double lowering_s;          /* time to go in, and to come out; 1 to 600 s */
    double coefficient_W_m2K;   /* bath side; 0: from the bath's own stirring */
    double area_m2;             /* 0: from mass, shape and size */
    double rinse_kg_m2;         /* water carried in per wetted area; 0.05 flat, 0.15 packed: handbook drag-out figures */
    double part_height_m;       /* for natural convection; 0.1, 0.02 to 1; hardly matters */
} boil_load;

boil_load boil_load_default(void);                 /* carbon steel plate of no mass, 20 degC, until lifted, lowered over 10 s */
const char *boil_load_problem(const boil_load *l); /* NULL, or what is wrong, naming the range */

double boil_load_area(const boil_load *l);      /* m2 that meets the bath: parts (or pack faces) without basket */
double boil_load_displaced(const boil_load *l); /* m3 of solid metal, parts and basket */
double boil_load_rinse(const boil_load *l);     /* kg of water carried in, on the parts' own wetted area even when packed */

typedef struct {
    int dimension;            /* 1 slab, 2 cylinder, 3 sphere */
    int unknowns;             /* 1 to BOIL_BODY_UNKNOWNS_MAX */
    double radius_m;          /* half-thickness or radius */
    double area_m2;           /* fully immersed */
    double mass_kg;
    double density_kg_m3;     /* steel per volume of body: 7850, or less in a pack */
    double conductivity_W_mK; /* 0: the metal's own k(T) */
    double fastest_s;         /* no unknown answers faster than this: 1 s */
    double height_m;
    boil_metal metal;
} boil_body;

boil_body boil_load_parts(const boil_load *l);
boil_body boil_load_basket(const boil_load *l); /* mass 0 when there is none */

void boil_body_init(const boil_body *b, double temperature_K, double y[]); /* uniform temperature */

/* Rates of the unknowns for a fluid temperature and coefficient; `immersed` (0 to 1) is the share of the area in the bath.
   Returns the heat flow into the body, W, = mass c(y0) dy0/dt exactly. */
double boil_body_rates(const boil_body *b, const double y[], double fluid_K, double coefficient_W_m2K, double immersed,
                       double dydt[]);

double boil_body_surface_temperature(const boil_body *b, const double y[], double fluid_K, double coefficient_W_m2K); /* K */

/* Bath-side coefficient, W/m2K: natural convection on a vertical surface [Churchill & Chu 1975] and a gas-stirred liquid
   [Deckwer 1980], blended as (h_n^4 + h_b^4)^(1/4). */
typedef struct {
    double density_kg_m3, heat_capacity_J_kgK;                     /* of the solution, as computed */
    double viscosity_Pa_s, conductivity_W_mK, expansion_1_K;      /* see boil_transport */
} boil_liquid;

double boil_natural_coefficient(const boil_liquid *f, double height_m, double difference_K);
double boil_stirred_coefficient(const boil_liquid *f, double gas_velocity_m_s);
double boil_bath_side_coefficient(const boil_liquid *f, double height_m, double difference_K, double gas_velocity_m_s);

#endif
