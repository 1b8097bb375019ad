/* transfer/convection.h -- heat from the bath to a surface in it, W/m2K: natural convection on a vertical surface [Churchill &
   Chu 1975] and a gas-stirred liquid [Deckwer 1980], blended as (h_n^4 + h_b^4)^(1/4) [Churchill & Usagi 1972; the power is
   judgement]. Cold parts do not boil the liquid: no boiling on them. In shallow pools the tall-column correlation tends
   to be low.

   Deckwer's law is that of turbulence dissipating eps = g j everywhere:  h = 0.1 rho cp (eps nu)^(1/4) Pr^(-1/2).  What gives off
   the power, rising gas or a mixer, does not enter, so a mixer counts as the gas of the same power per mass. Over a mixer's bath
   as a whole: parts in its jet get more, parts far from it less. A coil in a paddled vessel gets as
   much [Chilton, Drew & Jebens, Ind. Eng. Chem. 36 (1944) 510, from memory]. */
#ifndef BOIL_TRANSFER_CONVECTION_H
#define BOIL_TRANSFER_CONVECTION_H

typedef struct {
    double density_kg_m3, heat_capacity_J_kgK;               /* of the solution, as computed */
    double viscosity_Pa_s, conductivity_W_mK, expansion_1_K; /* see boil_transport */
} boil_convection_liquid;

/* Any difference, of either sign; at none what is left is conduction, Nu = 0.68. Rayleigh number to 1e12. */
double boil_convection_natural(const boil_convection_liquid *f, double height_m, double difference_K);

/* Superficial gas velocity to about 0.1 m/s; zero without gas. Rises from there with an infinite slope: integrate the
   blend. */
double boil_convection_stirred(const boil_convection_liquid *f, double gas_velocity_m_s);

/* j, m/s, of the gas that gives as much power as a mixer, W/kg. */
double boil_convection_as_gas(double stirring_W_kg);

/* What the blend has in common for all bodies in one liquid, stirred by gas of such a velocity. */
typedef struct {
    double conductivity_W_mK;
    double rayleigh_1_m3K; /* of one metre and one kelvin */
    double slip;           /* [1 + (0.492/Pr)^(9/16)]^(-8/27) */
    double stirred_fourth; /* h_b^4 */
} boil_convection_bath;

boil_convection_bath boil_convection_bath_of(const boil_convection_liquid *f, double gas_velocity_m_s);

/* The blend, smooth in the gas velocity from zero on: h_b^4 is proportional to it. */
double boil_convection_bath_side(const boil_convection_bath *f, double height_m, double difference_K);

#endif
