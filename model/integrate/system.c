#include "integrate/system.h"

static bool are_finite(const double x[], size_t first, size_t end)
{
    double sum = 0; /* stays so unless one is not finite */
    for (size_t i = first; i < end; i++)
        sum += 0 * x[i];
    return sum == 0;
}

/* By ranges: three short sums run beside one another where a long one waits for itself. */
bool boil_system_rates(const boil_system *s, double t, const double y[], double dydt[])
{
    if (s->rates(t, y, dydt, s->context) != BOIL_OK)
        return false;
    return are_finite(dydt, 0, s->sums_first) && are_finite(dydt, s->sums_first, s->sums_end) &&
           are_finite(dydt, s->sums_end, s->unknowns);
}

size_t boil_system_block(const boil_system *s, size_t number)
{
    return s->block != NULL ? s->block(number, s->context) : 0;
}
