/* properties/solution.h -- the bath liquid: NaOH + NaNO3 + NaNO2 in water.

   Water activity: Zdanovskii-Stokes-Robinson, sum_i m_i/m0_i(a) = 1, m in mol/kg water, m0_i(a) the binary molality of
   equal water activity a. [Stokes & Robinson, J. Phys. Chem. 70 (1966) 2126.] NaOH: Olsson, see properties/naoh.h. NaNO3: the
   fully dissociated mole-fraction law 1/a - 1 = 2 Mw m (within 0.35 K of a handbook boiling table to 69 wt%; right at the boil
   only: at 25 degC a is 0.02 low, at 100 degC and more within 0.01 [Archer 2000, by a public set of parameters]). NaNO2: the same
   with 1.10 m, an estimate. The state is held as the equivalent molality M: of the NaOH solution of equal activity,

       M = m_OH + c M/s,   s = 1/a(M,T) - 1,   c = 2 Mw (m_NO3 + 1.10 m_NO2).                              (1)

   Boiling point at pressure p:  a(M,T) psat(T) = psat(T - E),  E = (T - Tsat(p))/f,                        (2)
   f the elevation factor: real baths are reported to boil 3 to 8 % less above water than Olsson's correlation says.
   Below the boil p(T) = psat(T - f [T - Tsat(a psat(T))]), one relation for both.

   Enthalpy, J, from liquid water at 0 degC (salts: any constant, it never crosses alone):
       H = m_w h_w(T) + m_OH phi(M', T) + sum m_i b_i (T - 298.15 K) + sum n_i d_i [1 - exp(-n/n0)],                    (3)
       M' = m_OH + 0.33 m_NO3 + 0.36 m_NO2,  n all salts' mol per kg of water
   phi: Olsson's apparent enthalpy; 0.33 and 0.36 stand for the mixing rule's split at a 0.25 to 0.45 (hot working baths); b_i
   apparent heat capacities of nitrate and nitrite (judgement from Laliberte, J. Chem. Eng. Data 54 (2009) 1725). The last sum:
   in strong solution nitrate dissolves with half the heat it takes in water [differential enthalpies of solution of NaNO3, 25
   degC, to 10.4 mol/kg, J. Solution Chem., doi 10.1007/BF00647029: within 0.1 kJ/mol], nitrite with less too (estimate);
   carried to the boil unchanged, and from nitrate alone to any mixture: +-4 kJ/mol in hot brine. (By Archer it fades with
   temperature and at 140 degC has the other sign, while the heat in water falls too: the two nearly cancel. In a bath rich in
   NaOH it moves the heat of dilution by less than 1 kJ/kg.) Nothing changes without them. Heat capacity and partial enthalpies
   are exact derivatives of (3).

   Density: additive volumes: NaOH's apparent volume at equal ionic strength, NaNO3's from Laliberte 2009 (held at 100 degC
   and 49 wt% beyond its range), NaNO2's 0.47 cm3/g (estimate).

   Uncertainty, by judgement: boiling point at a given strength -4/+2 K (NaOH alone), -5/+3 K (with up to a quarter of nitrate
   and nitrite), -6/+4 K (more). Measured mixtures exist and could not be compared, their numbers were not at hand: E.
   Jaenecke, Z. anorg. allg. Chem. 188 (1930), doi 10.1002/zaac.19301880109 (saturated NaOH-NaNO3-H2O); G.S. Barney, report
   ARH-ST-133 M (1976, with nitrite); J.G. Reynolds, R. Carter & A.R. Felmy, Ind. Eng. Chem. Res. (2015), 0 to 100 degC. H_w
   less water's own enthalpy is -410 +-35 kJ/kg at 51.2 % (80/15/5) and the boil; (3) has -422, the slope of the vapour
   pressures -370. */
#ifndef BOIL_PROPERTIES_SOLUTION_H
#define BOIL_PROPERTIES_SOLUTION_H

#include "boilback.h"
#include "properties/activity.h"

boil_mixture boil_mixture_sum(const boil_mixture *a, const boil_mixture *b);
boil_mixture boil_mixture_scaled(const boil_mixture *m, double times);

/* The last answer, from which the next search starts. Zero it for a cold start. */
typedef struct {
    double equivalent_molality; /* M of (1), mol/kg water */
    double boiling_point_K;
} boil_solution_guess;

/* Boiling point, K. slope may be NULL. guess is read and updated; a good one costs one or two Newton steps. BOIL_NO_ROOT
   when there is none below 250 degC; BOIL_OK says nothing about the correlation's range: see boil_solution_range_at. */
boil_outcome boil_solution_boiling_point_near(const boil_conditions *c, const boil_mixture *m, boil_solution_guess *guess,
                                              double *boiling_point_K, boil_slope *slope);

/* Water activity at T, and optionally the equivalent molality through guess. NaN when (1) has no root. */
double boil_solution_activity_near(const boil_mixture *m, double temperature_K, boil_solution_guess *guess);

/* ln of the vapour pressure at T, Pa, with its slopes: by T at constant composition, 1/K, and by ln of all molalities. The
   equivalent molality is read and updated: 0 for a cold start. It is found to a share `within` of itself, and what that leaves is
   of second order: 1e-6 makes the answer good to 1e-9, 1e-3, which a fair start mostly is, to 1e-6. NaN as above. */
double boil_solution_log_vapour_pressure(const boil_conditions *c, const boil_mixture *m, double temperature_K, double within,
                                         double *equivalent_molality, double *by_T, double *by_strength);

/* Temperature, K, at which the solution holds enthalpy_J, by Newton from guess_K. NaN when there is none from -50 to
   300 degC. */
double boil_solution_temperature(const boil_mixture *m, double enthalpy_J, double guess_K);

/* Enthalpy of the solid salt, J/kg, on the scale of (3). NaOH: Shomate heat capacity (NIST), datum from its heat of solution
   at infinite dilution, -44.5 kJ/mol at 25 degC. Nitrate, nitrite: linear, datum from the heat of solution. */
double boil_salt_solid_enthalpy(int salt, double temperature_K);
double boil_salt_solid_heat_capacity(int salt, double temperature_K); /* J/kgK, exact derivative of the above */
double boil_salt_solid_density(int salt);                             /* kg/m3; handbook values, from memory */
double boil_salt_molar_mass(int salt);                                /* kg/mol */

double boil_solution_strongest_molality(double temperature_K); /* M at the correlation's end, mol/kg water */

boil_range boil_solution_range_at(double temperature_K, double equivalent_molality);

#endif
