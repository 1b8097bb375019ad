/* properties/activity.h -- the parts of equations (1) and (2) of properties/solution.h, for what solves them: properties/solution.c by
   Newton on both, properties/boiling_curve.c along the curve that both leave. */
#ifndef BOIL_PROPERTIES_ACTIVITY_H
#define BOIL_PROPERTIES_ACTIVITY_H

#include "boilback.h"
#include "properties/naoh.h"

/* kg/mol */
#define BOIL_NANO3_MOLAR_MASS 0.0849947
#define BOIL_NANO2_MOLAR_MASS 0.0689953

/* Derivatives of the boiling point with respect to each mass, K/kg. */
typedef struct {
    double water;
    double salt[BOIL_SALTS];
    double molality; /* of ln M at the boiling point by ln of all molalities */
} boil_slope;

/* mol per kg of water. */
typedef struct {
    double hydroxide, nitrate, nitrite;
    double others; /* c of (1) */
} boil_molalities;

boil_molalities boil_molalities_of(const boil_mixture *m);

/* Where a search for the equivalent molality begins: a mole of the others counts some 0.4 of one of hydroxide at the boil. */
double boil_molalities_about(const boil_molalities *n);

/* ln a of a NaOH solution of molality M with derivatives by M and T, 1/K. */
double boil_activity_log(double M, double T, double *by_M, double *by_T);

/* M/s with its derivative by ln a at constant M; in water itself s ~ M vanishes, and the limit is taken from the slope. */
double boil_activity_ratio(double M, double ln_a, double by_M, double *s, double *by_ln_a);

/* ln of the activity that boils at T under the conditions, (2), and its derivative, 1/K. */
double boil_activity_boiling(const boil_conditions *c, double T, double *by_T);

/* From dT_b/dM along (2), K kg/mol, how M rises with the hydroxide's molality, and M/s: only (1) depends on the masses, through
   hydroxide (1) and others (M/s). */
boil_slope boil_activity_slope(const boil_mixture *m, const boil_molalities *n, double T_M, double M_hydroxide, double ratio);

#endif
