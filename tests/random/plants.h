/* random/plants.h -- the settings of a random scenario, and its acts. Every key and every act of the language comes up, within
   what a shop may have; a scenario that is refused all the same is counted. */
#ifndef RANDOM_PLANTS_H
#define RANDOM_PLANTS_H

#include "random/draft.h"
#include "random/stream.h"

#define CELSIUS(t) (273.15 + (t))
/* Of what may be left out, one in four is said. */
#define MAYBE(r) stream_chance(r, 0.25)

/* What acts need to know of the plant. */
typedef struct {
    double area_m2, depth_m, level_m, bath_kg, boiling_K;
    double duration_s;
    bool rinse, measures, breaks, positions;
} random_plant;

random_plant random_settings(stream *r, draft *d);
void random_acts(stream *r, const random_plant *p, draft *d);

draft random_draft(uint64_t seed);

#endif
