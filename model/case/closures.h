/* case/closures.h -- which of the uncertain laws of water afloat and of swell a run is made with.

   No one number errs on the safe side: mixing that is fast removes a layer before the boil is back and makes the surge when it
   is. So a case is judged by the gravest of a set of runs, and worded by what agrees. C turnover, eta efficiency, x erosion,
   m share of a mixer that stirs the layer, C_d what a load takes along, path of the heat into the layer, K drift, L1 heat of
   dilution, k_L salt from the surface (transfer/skin.h; where the skin is as strong as the bath, "none", more evaporates and the boil
   stays away longer, the grave side):

                    C                       eta    x     m     C_d     path, mm   K              L1       k_L          f
       likely       the plant's             0.05   1     1     0.2     3          the plant's    1        the plant's  the plant's
       likely, wide                    as likely                                  pool law       1        the plant's  the plant's
       grave        0.3                     0.20   0.3   0     none    1.3        to 1.53        1.055    none         graver
       sudden       10 until a boil is      0.20   0.3   0     none    1.3, 3     to 1.53        1.055    none         graver
                    back, 0.3 for a minute                     or 8
       mild         3                       0.02   3     1     all     3 or 8     5              0.89     the plant's  the plant's
       trigger      0.3                     0.20   10    1     all     1.3        to 1.53        1.055    none         the sudden run's

   f, elevation factor: at a given strength a working bath boils up to 5 K lower or 3 K higher than the correlations have it, an eighth
   and a fourteenth of how far it boils above water (properties/solution.h). Where the boiling point is given the graver is 0.88: the bath is the
   stronger, and water finds more heat in it; where the strength is, 1.07: it is the hotter. Where there is no such bath, the plant's.

   Trigger is how a sudden run goes on from a moment at which what floats may let go although the bath does not boil: steam of partial
   mixtures then escapes and stirs (transfer/overturn.h (4)), where in all others it is taken to condense in the layer. As a law
   from the start it would be the mildest of all: little by little it would take the layer away.

   A mixer that runs on after the pour stirs the layer in, if it reaches it: nobody may count on that.
   The grave ones take nothing of the plant's own numbers but a drift below 1.53: whoever changes a number to please himself
   changes no grade. All of it is judgement but the pool law and L1 (transfer/swell_pool.h, transfer/flash.h). */
#ifndef BOIL_CASE_CLOSURES_H
#define BOIL_CASE_CLOSURES_H

#include "boilback.h"

/* Of no weight for a grade: they decide on certainty alone. */
bool boil_closures_is_mild(boil_closures c);

/* A plant with the laws of a set; its own where the set says so. The pool law is taken for the plant's charge at its boil. */
boil_plant boil_closures_put(boil_closures c, const boil_plant *p);

#endif
