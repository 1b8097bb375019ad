/* design/combustion.h -- what of a gas flame's heat is left to use once its flue gas has gone at a temperature. SI units.

   Methane with dry air, burnt to its end, per mol: CO2 1, H2O 2, O2 2x, N2 7.52 (1 + x), x the excess air:

       available = [LHV + H_air(T_a) - H_flue(T_f, x)]/HHV,    LHV 802.6, HHV 890.6 kJ/mol at 25 degC,               (1)
       O2 in dry flue gas = 2x/[1 + 2x + 7.52 (1 + x)].                                                             (2)

   H by NASA's polynomials of seven coefficients [in the form and with the numbers of the GRI mechanism, from memory]. No
   dissociation: good to 1600 K. Natural gas is taken for methane: within a point. All shares are of the gross heat. What leaves
   through the casing comes off besides. */
#ifndef BOIL_DESIGN_COMBUSTION_H
#define BOIL_DESIGN_COMBUSTION_H

#define BOIL_COMBUSTION_EXCESS_AIR 0.5   /* of an atmospheric burner under a tank, judgement; 0 to 2 */
#define BOIL_COMBUSTION_CASING_LOSS 0.05 /* of the input, judgement; 0 to 0.2 */

/* Share of the gross heat, (1): flue 300 to 1600 K, air 250 to 330 K, excess air 0 to 2. */
double boil_combustion_available(double flue_K, double air_K, double excess_air);

/* Flue gas temperature, K, at which (1) is a share; NaN where that is none between the air's and 1600 K. */
double boil_combustion_flue_temperature(double available, double air_K, double excess_air);

double boil_combustion_excess_of(double dry_oxygen); /* x of (2), by volume; 0 to below 0.21 */

/* Air that a burner takes, m3/s at 60 degF and 1 atm: 10 ft3 for each 1000 Btu and the excess; a rule of combustion handbooks,
   from memory, 6 % above methane's own need. */
double boil_combustion_air(double input_W, double excess_air);

#define BOIL_METHANE_J_M3                                                                                                      \
    37.7e6 /* gross, at 60 degF and 1 atm: 1012 Btu/ft3, from memory; gas pipes carry 750 to 1050 Btu/ft3 */

#endif
