/* transfer/swell_pool.h -- drift of steam in a pool: the correlation for wide pools, beside the churn constant of transfer/swell.h.

   Kataoka & Ishii, Int. J. Heat Mass Transfer 30 (1987) 1927, as K of V = K [sigma g drho/rho_l^2]^(1/4):
       K = (rho_v/rho_l)^(-0.157) x 0.030 N^(-0.562)   for N <= 2.25e-3,   x 0.92   above,                                (1)
       N = mu/[rho_l sigma (sigma/(g drho))^(1/2)]^(1/2)                                                                   (2)
   in vessels wider than D* = 30 lengths (sigma/(g drho))^(1/2); in narrower ones 0.0019 D*^0.809 stands for 0.030 (constants as
   read in a public code that carries the correlation; 0.92 from memory; narrow and viscous at once by the same ratio, judgement).
   +-30 %. Steam stands in a pool two to three times less by it than by K 1.53, so K 1.53 stays the law that warnings are graded by:
   neither is an upper bound, and foam exceeds all. */
#ifndef BOIL_TRANSFER_SWELL_POOL_H
#define BOIL_TRANSFER_SWELL_POOL_H

#define BOIL_SWELL_POOL_MOST 5.0 /* K is not trusted above this: judgement */

typedef struct {
    double liquid_kg_m3, vapour_kg_m3;
    double viscosity_Pa_s, surface_tension_N_m;
} boil_swell_pool_fluid;

double boil_swell_pool_viscosity_number(const boil_swell_pool_fluid *f); /* N of (2) */

/* K of (1) as published, for a vessel of a width (hydraulic diameter), m; and at most BOIL_SWELL_POOL_MOST. */
double boil_swell_pool_published(const boil_swell_pool_fluid *f, double width_m);
double boil_swell_pool_drift(const boil_swell_pool_fluid *f, double width_m);

#endif
