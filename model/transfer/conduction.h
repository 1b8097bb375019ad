/* transfer/conduction.h -- heat conduction in a slab, cylinder or sphere that is heated at its surface.

   A body has dimension d = 1 (slab), 2 (cylinder) or 3 (sphere) and half-thickness or radius r. Conduction is a
   Galerkin expansion in even polynomials of xi = x/r, orthogonal with weight xi^(d-1):
       T(x, t) = y0(t) + sum y_k(t) P_k(xi),   P_k of zero mean, so that y0 is the mean temperature and
       rho c (r/d) dy0/dt = q,   q = h (T_fluid - T(r))                                              (1)
   conserves heat exactly for any h(t). One more polynomial than there are unknowns is carried quasi-steady (its heat
   storage dropped); with a single unknown that is the well-known resistance r/((d+2)k) in series with 1/h. c and k are
   taken at the mean temperature. The functions check nothing: see boil_load_problem. */
#ifndef BOIL_TRANSFER_CONDUCTION_H
#define BOIL_TRANSFER_CONDUCTION_H

#include "properties/metal.h"

#define BOIL_CONDUCTION_UNKNOWNS_MAX 3

typedef struct {
    int dimension;   /* 1 slab, 2 cylinder, 3 sphere */
    int unknowns;    /* 1 to BOIL_CONDUCTION_UNKNOWNS_MAX; see boil_conduction_unknowns */
    double radius_m; /* half-thickness or radius */
    double area_m2;  /* fully immersed; where it is not the body's own surface d mass/(density radius), the
                                 coefficient is scaled by the ratio of the two */
    double mass_kg;
    double density_kg_m3;     /* steel per volume of body: 7850, or less in a pack */
    double conductivity_W_mK; /* 0: the metal's own k(T); infinity: no resistance inside */
    double fastest_s;         /* no unknown answers faster than this, about 1 s; 0: no limit. See below */
    double height_m;          /* for natural convection */
    boil_metal metal;
} boil_conduction_body;

/* Explicit integrators are held to steps of a few times the fastest answer, and the mean of a 1 mm sheet would follow
   the bath in 0.6 s. So the expansion stops before its first term faster than fastest_s, and the conductance into thin
   parts is limited. The price, with 0.9 s: 1 mm sheet is behind by up to 14 % of its rise for a second at 3000 W/m2K,
   31 % at 5000. Sheet from 1.6 mm, bars from 3.2 mm and balls from 4.7 mm pay nothing at 3000; at 5000 from 2.6, 5.3
   and 7.9 mm. */

/* How many unknowns this body may have at a temperature: the most whose answers are all slower than fastest_s at
   coefficients to 5000 W/m2K; at an infinite one they may be 2.8 times faster. */
int boil_conduction_unknowns(const boil_conduction_body *b, double temperature_K);

void boil_conduction_init(const boil_conduction_body *b, double temperature_K,
                          double y[]); /* uniform temperature; writes y[unknowns] */

/* Rates of the unknowns for a fluid temperature and coefficient; `immersed` (0 to 1) is the share of the area in the
   bath. Returns the heat flow into the body, W, = mass c(y0) dy0/dt exactly; a body of no mass takes none. */
double boil_conduction_rates(const boil_conduction_body *b, const double y[], double fluid_K, double coefficient_W_m2K,
                             double immersed, double dydt[]);

double boil_conduction_surface_temperature(const boil_conduction_body *b, const double y[], double fluid_K,
                                           double coefficient_W_m2K); /* K, where it meets the fluid */

#endif
