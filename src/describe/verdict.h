/* describe/verdict.h -- the run in one line. */
#ifndef DESCRIBE_VERDICT_H
#define DESCRIBE_VERDICT_H

#include "base/format.h"
#include "describe/carried_out.h"

typedef TEXT_OF(400) verdict;

/* "8 of 8 loads back within 2 min; least freeboard 7.1 in at 7:22; nothing above NOTICE", or what is worse first. */
verdict verdict_of(const carried_out *o, unit_system s);

/* Why the run stopped: "bath temperature reached 383.0 degF, where the known range ends", "the tank is full". */
verdict verdict_stop_reason(const carried_out *o, unit_system s);

#endif
