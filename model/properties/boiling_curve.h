/* properties/boiling_curve.h -- the boiling point of a run, whose conditions stay. Equation (2) of properties/solution.h fixes the
   temperature T_b at which a solution of equivalent molality M boils, and with it R = M/s, whatever the blend. So (1) is left with one
   unknown,
       M = m_OH + c R(M),   dT_b/dm_OH = T_b'/(1 - c R'),   dT_b/dc = R dT_b/dm_OH.                                        (1)
   T_b(M) and R(M) are tabulated where a run comes by: cubics between knots 0.05 mol/kg apart, through values and slopes that are
   solved for from the knot alone. What a run finds depends on no other, nor on the order in which it asks. Against properties/solution.h:
   2e-9 K, slopes 1e-7 of themselves. */
#ifndef BOIL_PROPERTIES_BOILING_CURVE_H
#define BOIL_PROPERTIES_BOILING_CURVE_H

#include "boilback.h"
#include "properties/solution.h"

enum { BOIL_CURVE_CELLS = 64 };

/* Zero it for an empty one. It belongs to one set of conditions, and one thread at a time. */
typedef struct {
    int knot[BOIL_CURVE_CELLS];        /* the one that a cell begins with; 0: empty */
    double T_K[BOIL_CURVE_CELLS][4];   /* coefficients of the share of the cell, lowest first */
    double ratio[BOIL_CURVE_CELLS][4]; /* of R, mol/kg */
} boil_boiling_curve;

/* As boil_solution_boiling_point_near, and by that, from a cold start, below 3 mol/kg or where the curve ends. The guess is written. */
boil_outcome boil_boiling_curve_at(boil_boiling_curve *b, const boil_conditions *c, const boil_mixture *m,
                                   boil_solution_guess *guess, double *boiling_point_K, boil_slope *slope);

#endif
