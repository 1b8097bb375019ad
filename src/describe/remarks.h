/* describe/remarks.h -- what is no mistake in a scenario, but will not do what it seems to ask for. */
#ifndef DESCRIBE_REMARKS_H
#define DESCRIBE_REMARKS_H

#include "base/text.h"
#include "scenario/scenario.h"

#define REMARKS_MAX 8

typedef TEXT_OF(300) remark;

typedef struct {
    remark list[REMARKS_MAX]; /* a sentence each, without a full stop */
    size_t count;
} remarks;

remarks remarks_of(const scenario *s);

#endif
