/* bath/potential.h -- what the water afloat on a quiet bath could do if it let go now.

   The layer's mass times the yield of its best mixture with the bath (transfer/flash.h) is the steam it can give; what that
   leaves of the freeboard, and the surge it can make, are judged by transfer/overflow.h. It does not say when: a nucleus, a
   dropped part, a ripple decide that. */
#ifndef BOIL_BATH_POTENTIAL_H
#define BOIL_BATH_POTENTIAL_H

#include "bath/rates.h"
#include "transfer/flash.h"

typedef struct {
    double steam_kg;      /* that the layer can give */
    double left_m;        /* freeboard once it has; negative: over the rim */
    double without_m;     /* freeboard that is left, or comes back with the boil, without any of it */
    double surge_kg_s;    /* at C 0.3, the grave one */
    double critical_kg_s; /* steam that lifts the bath to the rim, by the run's own drift; infinite: none does */
    double gain;    /* of transfer/overturn.h (4), were all its steam to escape: above 1 it may let go before the bath boils */
    bool overflows; /* no freeboard left, and the surge is above the critical rate */
} boil_potential;

/* The last yield worked out, and for what: it costs as much as a hundred evaluations of the rates, and changes slowly. */
typedef struct {
    double layer_K, bath_K, boiling_point_K; /* zero: none yet */
    boil_flash_top top;
} boil_potential_known;

/* Of a state in which the bath is quiet and water floats on it. What leaves more than `clear_m` of freeboard by an upper bound of
   the yield is not worked out further: it is then given by that bound. A known yield serves within half a kelvin of the layer
   and half that of the bath, a little more than it was. */
boil_potential boil_potential_of(const boil_bath *b, const boil_rates_view *v, double clear_m, boil_potential_known *known);

/* By the upper bound alone, had the water come to its boil and the bath to its own. */
boil_potential boil_potential_hot(const boil_bath *b, const boil_rates_view *v);

/* So much water trapped in hollows of steel that displaces so much, m3, were it afloat at water's own boil on the bath at its own, quiet
   as before the boil comes back: about when hollows let go. */
boil_potential boil_potential_of_hollows(const boil_bath *b, const boil_rates_view *v, double water_kg, double displaced_m3);

/* The steam, kg, of what floats on a quiet bath where it may let go before the bath boils and would leave less than the freeboard
   asked for; else 0. */
double boil_potential_erupts(const boil_bath *b, const boil_rates_view *v);

#endif
