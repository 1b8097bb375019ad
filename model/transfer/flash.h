/* transfer/flash.h -- steam that water afloat gives off when it mixes with the hot bath below it, without heat from outside.

   phi kg of bath and 1 - phi kg of the layer's water, mixed at once at the room's pressure, come to their boil by giving off f kg
   of steam:
       H(mix less f water, Tb) + f hv(Tb) = phi h_bath + (1 - phi) hw(T_L),   Tb boiling point of what is left            (1)
   [adiabatic flash on dilution: enthalpy balance as in Himmelblau & Riggs, Basic Principles, example 28.3]. f is negative where
   the mixture is below its boil: the steam that would bring it there. Part of the layer can mix with any part of the bath, so
   the yield of the layer, kg of steam per kg of its water, is the largest
       y* = max(0, max over phi of f/(1 - phi)),   0.3 < phi < 0.9999                                                     (2)
   the signed curve having one maximum (seen in 1600 curves, not proved). In a bath at its boil it lies at phi -> 1, the limit
       y_inf = (hw - K)/(hv - K),   K = H_w + C dTb/dm_w.                                                                 (3)
   Single stage and in full equilibrium: no delay, no steam condensing in a cold layer; errs on the side of more steam.

   The heat of dilution is known to a tenth only: the partial enthalpy of water less that of pure water, L1, is taken times the
   dilution factor in (1) and (3). In hot working baths: 1.055 grave, 1 the enthalpy correlation, 0.89 mild (L1 = -410 +-35
   kJ/kg against -422; judgement from the spread of two correlations).

   Water that meets dry salt does not float: it soaks in, and wets of a bed whose pores it fills (void 0.4, grains of 2150 kg/m3)
   r = 3.2 kg per kg, of which it dissolves what it can at the salt's temperature T_s. On the way it passes through all mixtures
   with x kg of salt, whose heat of solution stays in that small mass, and gives off what the one that flashes most does:
       H(1 kg water + x salt, less f water, Tb) + f hv(Tb) = hw + x h_s(T_s) + q,   y_s = max(0, max over x of f),
       q = (r - x) max(0, h_s(T_s) - h_s(Tb)),                                                                             (4)
   x up to r, and up to saturation at T_s or at water's boil, whichever is hotter; in q Tb before it flashes. What is wetted and
   does not dissolve gives heat where it is hotter than the brine, and is taken to take none where it is colder: on the side of
   steam. Grains lie side by side: as much of the water as there is hydroxide among the salts may meet hydroxide alone; where
   that gives more than the blend does, it counts. By (4) cold water on cold salt comes close to its boil (116 degC in 43 %
   NaOH) and does not reach it. */
#ifndef BOIL_TRANSFER_FLASH_H
#define BOIL_TRANSFER_FLASH_H

#include "boilback.h"
#include "properties/solution.h"

#define BOIL_FLASH_DILUTION_GRAVE 1.055
#define BOIL_FLASH_DILUTION_MILD 0.89

typedef struct {
    boil_conditions air;
    boil_mixture mixture;   /* any amount: only proportions matter */
    double temperature_K;   /* above its boiling point it counts as at its boil */
    double dilution_factor; /* on L1: 1; 0.8 to 1.2 */
} boil_flash_bath;

/* kg of steam that a mixture holding enthalpy_J (scale of boil_solution_heat) gives off in coming to its boil, f of (1); negative:
   what it lacks. NaN: no boiling point within the correlation. */
double boil_flash_steam(const boil_conditions *air, const boil_mixture *m, double enthalpy_J);

/* How far a mixture of bath and layer water is above its boiling point before it flashes, K; negative below. bath_share: phi,
   0.3 to 0.9999. NaN as above. */
double boil_flash_superheat(const boil_flash_bath *b, double layer_K, double bath_share);

/* f/(1 - phi) of (1), signed, kg/kg, and y* of (2) with the phi where it lies (may be NULL). Layer 0 to 100 degC. NaN as
   above. */
double boil_flash_yield_at(const boil_flash_bath *b, double layer_K, double bath_share);
double boil_flash_yield(const boil_flash_bath *b, double layer_K, double *bath_share);

/* The maximum of (2) itself, below 0 too, within 1e-5, where it lies, and how it rises with both temperatures, 1/K; that of a bath at
   its boil is steeper than any line, and counts as level. */
typedef struct {
    double yield, bath_share, by_bath_K, by_layer_K;
} boil_flash_top;
boil_flash_top boil_flash_top_near(const boil_flash_bath *b, double layer_K,
                                   double bath_share); /* it lies near there; 0: unknown */

/* y_inf of (3), of a bath taken at its boil, kg/kg; negative where the water quenches. NaN as above. */
double boil_flash_yield_limit(const boil_flash_bath *b, double layer_K);

/* y* of one bath, for any temperature of layer and bath, by straight lines between nodes worked out when they are first needed:
   within 0.005 kg/kg of (2), and not below. What it gives does not depend on what was asked before. */
#define BOIL_FLASH_LAYERS 11
#define BOIL_FLASH_BATHS 15
typedef struct {
    boil_flash_bath bath; /* at its boil */
    double yield[BOIL_FLASH_LAYERS][BOIL_FLASH_BATHS];
} boil_flash_table;

boil_flash_table boil_flash_table_of(const boil_flash_bath *b);

/* kg/kg; layer 0 to 100 degC, bath below its boil by 0 to 49 K: beyond, that of the end. */
double boil_flash_table_yield(boil_flash_table *t, double layer_K, double below_K);

/* A kilogram of water on dry salt: `solid` in kg of each, its proportions. y_s of (4), kg/kg; 0 where nothing flashes, for salts
   that cool as they dissolve, and for no salt. And kg of salt that it dissolves in the end. Salt 0 to 200 degC, water 0 to 100. */
typedef struct {
    double steam, dissolved;
} boil_flash_wetted;
boil_flash_wetted boil_flash_on_salt(const boil_conditions *air, const double solid[BOIL_SALTS], double salt_K, double water_K);

/* Boiling point, K, of the bath of a dry blend (fractions by mass) in which water of a temperature, put in at the boil, just gives
   no steam, y_inf = 0 (and y* with it): in a weaker one it quenches, in a stronger one it flashes. BOIL_OK, or BOIL_NO_ROOT when
   one or the other holds for all strengths from 5 % salts to the end of the correlation. +-4.5 K with L1 (judgement). */
boil_outcome boil_flash_turning_point(const boil_conditions *air, const double blend[BOIL_SALTS], double dilution_factor,
                                      double water_K, double *boiling_point_K);

#endif
