#include "integrate/system.h"

bool boil_system_rates(const boil_system *s, double t, const double y[], double dydt[])
{
    if (s->rates(t, y, dydt, s->context) != BOIL_OK)
        return false;
    double sum = 0; /* stays so unless one is not finite */
    for (size_t i = 0; i < s->unknowns; i++)
        sum += 0 * dydt[i];
    return sum == 0;
}

size_t boil_system_block(const boil_system *s, size_t number)
{
    return s->block != NULL ? s->block(number, s->context) : 0;
}
