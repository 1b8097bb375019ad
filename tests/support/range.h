/* support/range.h -- a record refuses what is out of range: the problem it tells must name the quantity and the range. */
#ifndef SUPPORT_RANGE_H
#define SUPPORT_RANGE_H

#include "support/close.h"

#include <string.h>

/* The problem must speak of the quantity and of its range's end. */
static inline void assert_says(const char *problem, const char *quantity, const char *range)
{
    assert_non_null(problem);
    if (!strstr(problem, quantity) || !strstr(problem, range))
        fail_msg("\"%s\" lacks \"%s\" or \"%s\"", problem, quantity, range);
}

/* Sets a field out of range, to NaN and just inside, and asks each time. Leaves it just inside. */
#define ASSERT_RANGE(object, problem_of, field, below, lowest, highest, above, quantity, range)                                \
    do {                                                                                                                       \
        (object).field = (below);                                                                                              \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (above);                                                                                              \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (double)NAN;                                                                                          \
        assert_says(problem_of(&(object)), quantity, range);                                                                   \
        (object).field = (highest);                                                                                            \
        assert_null(problem_of(&(object)));                                                                                    \
        (object).field = (lowest);                                                                                             \
        assert_null(problem_of(&(object)));                                                                                    \
    } while (0)

#endif
