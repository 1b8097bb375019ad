/* transfer/overflow.h -- how much steam, and how fast, lifts the bath over the rim.

   By the drift-flux law of transfer/swell.h, steam entering at the floor, the surface of a pool of still level h stands at
   h/(1 - alpha). It reaches the rim, at D above the floor, when
       alpha* = 1 - h/D,   j* = alpha* V/(1 - C0 alpha*),   w* = j* A rho_v;   C0 alpha* >= 1: never.                     (1)
   That is a steady boil. A surge shorter than the bubbles take to rise fills the pool first, so the volume counts as well: the
   steam that fills the freeboard is
       P* = (D - h) A rho_v.                                                                                              (2)
   A layer that has potential P (its mass times the yield of transfer/flash.h) gives it off at most at about
       w_P = P/[0.45 s C (h/0.406 m)^(2/3)],   C as in transfer/overturn.h                                               (3)
   [judgement: the peaks of 12 simulated overturns, C 0.3 to 3, h 0.41 m, lay between 1/(0.45 C) and 1/(0.8 C) per second;
   scaled as turbulent mixing over the depth]. Both conditions must hold for an overflow; where w* is infinite the volume alone
   decides. Above about twice w* none of it is a prediction: the pool is thrown out. */
#ifndef BOIL_TRANSFER_OVERFLOW_H
#define BOIL_TRANSFER_OVERFLOW_H

#include <stdbool.h>

#include "transfer/swell.h"

typedef struct {
    double area_m2;
    double depth_m;       /* D, floor to rim */
    double still_level_m; /* h, without steam in it; 0 to D */
    double vapour_kg_m3;  /* rho_v at the room's pressure and the boiling point */
} boil_overflow_pool;

/* alpha*: the void at which the surface stands at the rim; 0 when it does without steam. */
double boil_overflow_rim_void(const boil_overflow_pool *p);

/* w* of (1), kg/s, for the drift velocity V of a law; infinite where C0 alpha* >= 1; 0 from a level at the rim up. */
double boil_overflow_critical_steam_rate(const boil_overflow_pool *p, const boil_swell *law, double drift_velocity_m_s);

double boil_overflow_potential_to_rim(const boil_overflow_pool *p); /* P* of (2), kg */

/* w_P of (3), kg/s. turnover_factor: C, 0.3 for every grade, 1 for the likely value. Infinite for an empty pool. */
double boil_overflow_surge_rate(double potential_kg, double still_level_m, double turnover_factor);

/* Freeboard left once a layer has spent its potential, m, negative: over the rim,
       min[D - level of the calm full boil,  D - level now, swelled - 1.1 P/(A rho_v)]                                    (4)
   1.1 judgement: the boil that comes back with the surge swells the pool as well. */
double boil_overflow_freeboard_left(const boil_overflow_pool *p, double potential_kg, double swelled_level_m,
                                    double calm_boil_level_m);

/* Both conditions: no freeboard left, and C 0.3 makes a surge above the critical rate. Yes where a number is none (NaN): unknown is
   not safe. No without potential. */
bool boil_overflow_possible(const boil_overflow_pool *p, double potential_kg, double freeboard_left_m,
                            double critical_steam_rate_kg_s);

#endif
