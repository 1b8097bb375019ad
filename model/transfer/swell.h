/* transfer/swell.h -- steam held in the boiling pool: it swells, it stirs, and it leaves at the speed of rising bubbles.

   Drift flux [Zuber & Findlay, J. Heat Transfer 87 (1965) 453]: steam of superficial velocity j stands in the pool with void
       alpha = j/(C0 j + V),   V = K [sigma g (rho_l - rho_v)/rho_l^2]^(1/4),   C0 = 1.2, K = 1.53 (churn).          (1)
   The steam held is a state: formed steam fills it, (1) solved for j empties it. With steam entering all at the floor (1)
   holds at every height (upper estimate of the swell); entering evenly over the depth the mean void is
       alpha = (1/C0) [1 - ln(1 + C0 psi)/(C0 psi)],  psi = j/V                              (lower estimate).         (2)
   Wide pools have been correlated to a third of (1) [Kataoka & Ishii 1987]: the estimate errs on the side of the warning.

   Stirring power per mass of liquid is that of the rising gas, g j, plus what a mixer gives. Mixing time
   [Mazumdar & Guthrie, Metall. Trans. B 17 (1986) 725, from memory]: 95 % mixed after 37 eps^(-1/3) R^(5/3)/L s (SI), hence a
   time constant of a third of that, three either way by judgement: another correlation for gas in a liquid is 18 % shorter,
   one for ladles of steel 6 to 11 times longer (E59, E60 of tests/published/whole_bath.csv). */
#ifndef BOIL_TRANSFER_SWELL_H
#define BOIL_TRANSFER_SWELL_H

#include "boilback.h"

boil_transport boil_transport_default(void);

boil_swell boil_swell_default(void);
const char *boil_swell_problem(const boil_swell *p); /* NULL, or what is wrong with it */

/* V of (1), m/s. */
double boil_swell_drift_velocity(const boil_swell *p, double surface_tension_N_m, double liquid_kg_m3, double vapour_kg_m3);

double boil_swell_void_upper(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s); /* (1) */
double boil_swell_void_lower(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s); /* (2) */

/* (1) solved for the superficial velocity, m/s, of steam of volume held_m3 in liquid_m3. */
double boil_swell_steam_velocity(const boil_swell *p, double drift_velocity_m_s, double held_m3, double liquid_m3);
/* Volume of steam, m3, that leaves at a superficial velocity. */
double boil_swell_steam_held(const boil_swell *p, double drift_velocity_m_s, double steam_velocity_m_s, double liquid_m3);

/* Time constant of mixing, s, for a stirring power in W/kg; infinite when nothing stirs. */
double boil_swell_mixing_time(double factor, double stirring_W_kg, double radius_m, double depth_m);

#endif
