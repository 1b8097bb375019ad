/* base/constants.h -- constants of nature. SI units everywhere in model/: kg, m, s, K, Pa, W, J. */
#ifndef BOIL_BASE_CONSTANTS_H
#define BOIL_BASE_CONSTANTS_H

#define BOIL_GRAVITY 9.80665                 /* m/s2, standard gravity, exact */
#define BOIL_STEFAN_BOLTZMANN 5.670374419e-8 /* W/m2K4, CODATA 2018 */
#define BOIL_GAS_CONSTANT 8.314462618        /* J/mol/K, CODATA 2018 */
#define BOIL_ZERO_CELSIUS 273.15             /* K, exact */
#define BOIL_STANDARD_ATMOSPHERE 101325.0    /* Pa, exact */
#define BOIL_PI 3.14159265358979323846

#endif
