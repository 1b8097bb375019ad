/* commands/run/model_limits.h -- what the model is and what it is not, in sentences; README says the same in the same words. */
#ifndef COMMANDS_RUN_MODEL_LIMITS_H
#define COMMANDS_RUN_MODEL_LIMITS_H

#include <stddef.h>

extern const char model_limits_purpose[];      /* what it is */
const char *model_limits_listed(size_t index); /* what it is not, one by one; NULL beyond the last */

#endif
