/* random/moisture.h -- where a bath may take up water from the air instead of giving it off, and how much of it. */
#ifndef RANDOM_MOISTURE_H
#define RANDOM_MOISTURE_H

#include "boilback.h"

/* Whether less vapour stands over the bath, or over the water afloat, than the room's air holds. Of a run whose boiling curve is known:
   elevation_factor; else the largest that any run of a set has. */
bool moisture_may_come(const boil_plant *p, const boil_row *r, double elevation_factor);

/* kg over all rows of which that is so, and to the next of any: by Carrier's open-tank formula [ASHRAE HVAC Applications] from air to a
   surface over which there is no vapour at all. */
double moisture_most_kg(const boil_plant *p, const boil_history *h, double elevation_factor);

#endif
