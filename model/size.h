/* size.h -- how much heat: answers found by running the case itself. */
#ifndef BOIL_SIZE_H
#define BOIL_SIZE_H

#include "run.h"

/* Smallest heat to the tank at full dial, W, with which the run ends boiling, bracketed to half a per cent and given from the
   upper side: at *heat_W it does. BOIL_NO_ROOT when not even a hundred times the surface's losses would, BOIL_RANGE when the
   run leaves the properties' range first. */
int boil_size_heat_to_boil(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *heat_W);

/* Largest mass, kg, of the addition of ready-mixed liquid that is act `index`, poured over the same time, after which the boil
   is not lost for longer than limit_s: bracketed to one per cent, given from the lower side. BOIL_NO_ROOT when even a
   thousandth of it is too much. */
int boil_size_largest_liquid(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, size_t index,
                             double limit_s, double *mass_kg);

#endif
