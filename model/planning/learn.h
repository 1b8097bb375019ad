/* planning/learn.h -- from a proof to what the next decoding has to know. */
#ifndef BOIL_PLANNING_LEARN_H
#define BOIL_PLANNING_LEARN_H

#include "planning/proof.h"

enum { BOIL_PLAN_ROUNDS = 8 }; /* of proof and learning, of one order */

/* Where a finding is one that water or salts make, longer guards, slower pours and siftings; else nothing. */
void boil_plan_heed(boil_plan_bath *b, const char *id);

/* Takes over what one proof showed: of each dip its factor and stay, of the bath its boil-off; and where something is found that water
   makes, longer guards and slower pours. BOIL_OK or BOIL_NO_MEMORY. */
boil_outcome boil_plan_learn(boil_planning *g, const boil_plan_proof *p);

/* Proves an order, learns, decodes it again, at most BOIL_PLAN_ROUNDS times or until it holds, or there is nothing more to
   learn: what is found in the bath before anything goes in, or without what helps against it, comes again. The best proof goes
   to *best, which held one before or is empty, if it is better than that. *rounds counts. */
boil_outcome boil_plan_settle(boil_planning *g, const boil_plan_order *o, boil_plan_proof *best, size_t *rounds);

#endif
