/* base/boil.h -- what every folder of the model shares: outcome codes and constants of nature.
   SI units everywhere in model/: kg, m, s, K, Pa, W, J. */
#ifndef BOIL_BASE_BOIL_H
#define BOIL_BASE_BOIL_H

/* Positive is news, zero is done, negative is failure. */
typedef enum {
    BOIL_OK = 0,
    BOIL_RANGE = -1,     /* beyond a correlation's range */
    BOIL_NO_ROOT = -2,   /* a solver found no answer */
    BOIL_NO_MEMORY = -3, /* allocation refused */
    BOIL_BAD_INPUT = -4, /* the case itself makes no sense */
    BOIL_NOT_FINITE = -5 /* a rate came out infinite or not a number */
} boil_outcome;

#define BOIL_GRAVITY 9.80665                 /* m/s2, standard gravity, exact */
#define BOIL_STEFAN_BOLTZMANN 5.670374419e-8 /* W/m2K4, CODATA 2018 */
#define BOIL_GAS_CONSTANT 8.314462618        /* J/mol/K, CODATA 2018 */
#define BOIL_ZERO_CELSIUS 273.15             /* K, exact */
#define BOIL_STANDARD_ATMOSPHERE 101325.0    /* Pa, exact */
#define BOIL_PI 3.14159265358979323846

#endif
