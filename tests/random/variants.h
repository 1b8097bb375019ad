/* random/variants.h -- the same shift with something changed. A schedule made here is the caller's to free. */
#ifndef RANDOM_VARIANTS_H
#define RANDOM_VARIANTS_H

#include "boilback.h"

/* The first load of a shift alone, put in after a minute with the fire at the dial and nobody doing anything else: what is
   compared is one recovery. `heat` is on what the heater gives, `mass` on the parts. NaN: there is no load; infinity: its boil is
   never back. */
double variant_recovery_s(const boil_plant *p, const boil_schedule *s, double heat, double mass);

/* The longest pour that hangs on nothing as two halves, one behind the other. False: there is none. */
bool variant_two_pours(const boil_schedule *s, boil_schedule *out);

#define VARIANT_GRAM_KG 1e-3
#define VARIANT_LAST_PLACE 40 /* of the tanks that have places */

/* A gram of steel goes in, where the bath boils with nothing afloat and nobody does anything within a minute, and comes out where it
   last does so. False: it never does. */
bool variant_gram(const boil_schedule *s, const boil_history *h, boil_schedule *out);

#endif
