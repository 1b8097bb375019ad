/* findings/belongs.h -- which acts of a schedule a finding comes of: by what a run recorded of each, never by its words. */
#ifndef BOIL_FINDINGS_BELONGS_H
#define BOIL_FINDINGS_BELONGS_H

#include "boilback.h"

/* Sets acts[i], of s->count in all, true for each act that the finding belongs to, and leaves the others as they are; how many it
   set. The history is a run of that schedule, the likely one; a finding that only other runs of the set show is given to what
   could have caused it in this one: the last act of that kind begun before it. Of a bath that was cold, tall or deep from the
   start, or of what nobody did, it is 0. */
size_t boil_finding_belongs(const boil_plant *p, const boil_schedule *s, const boil_history *h, const boil_finding *f,
                            bool acts[]);

#endif
