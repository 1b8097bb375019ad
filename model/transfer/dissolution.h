/* transfer/dissolution.h -- dry salt in the bath: falling, lying on the floor, dissolving.

   Mass transfer from a grain in stirred liquid [Calderbank & Moo-Young, Chem. Eng. Sci. 16 (1961) 39]:
       k = 0.13 (eps nu)^(1/4) Sc^(-2/3),  Sc = nu/D,  eps stirring power, W/kg, at least that of natural convection.   (1)
   Grains of size d in suspension have the area 6 m/(rho d) and dissolve at k dC times it: first order in m, so that nothing is
   singular when the last grain goes, and never faster than in a second. (Shrinking grains finish in about three such times.)
   They fall at [Ferguson & Church, J. Sediment. Res. 74 (2004) 933]
       w = R g d^2/(18 nu + sqrt(0.75 R g d^3)),  R = (rho_s - rho)/rho,                                                (2)
   unless stirring keeps them up: the share eps^2/(eps^2 + eps_0^2), which also stirs a bed up again.
   A bed dissolves from its top only, k dC per area it covers, and insulates a heated floor: dT = q thickness/k_bed, at most
   300 K.                                                                                                            (3) */
#ifndef BOIL_TRANSFER_DISSOLUTION_H
#define BOIL_TRANSFER_DISSOLUTION_H

#include "transfer/swell.h"

/* What the flows depend on. */
typedef struct {
    double grain_m; /* 1 mm; 0.2 to 10 mm */
    double liquid_kg_m3, viscosity_Pa_s;
    double stirring_W_kg;    /* eps */
    double area_m2, depth_m; /* of the pool */
} boil_dissolution_place;

typedef struct {
    double from_suspension_kg_s, from_bed_kg_s; /* dissolving */
    double settling_kg_s, stirred_up_kg_s;
    double bed_m; /* thickness */
} boil_dissolution_flow;

double boil_dissolution_transfer(const boil_dissolution_place *p); /* k of (1), m/s */
double boil_dissolution_fall(const boil_dissolution_place *p);     /* w of (2), m/s; 0 when the liquid is as heavy */
double boil_dissolution_kept_up(const boil_dissolution_place *p);  /* share that stirring keeps up, 0 to 1 */
double boil_dissolution_time(const boil_dissolution_place *p);     /* s, time constant of grains in suspension */
boil_dissolution_flow boil_dissolution_exchange(const boil_dissolution_place *p, double suspended_kg, double bed_kg);

/* (3), K, for the heat through the floor under the bed, W/m2. */
double boil_dissolution_bed_superheat(double bed_m, double flux_W_m2);

#endif
