/* solution.h -- the bath liquid: NaOH + NaNO3 + NaNO2 in water. */
#ifndef BOIL_SOLUTION_H
#define BOIL_SOLUTION_H

enum { BOIL_NAOH, BOIL_NANO3, BOIL_NANO2, BOIL_SALTS };

/* kg of each (any amount; only ratios matter to intensive properties). */
typedef struct {
    double water;
    double salt[BOIL_SALTS];
} boil_mixture;

#endif
