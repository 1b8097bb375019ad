#include "base/bisection.h"

#include <math.h>

static bool beyond(const boil_bisection *s, double x)
{
    return s->ratio > 1 ? x > s->most : x < s->most;
}

static boil_outcome scan(const boil_bisection *s, double *no, double *yes)
{
    bool found = false;
    *no = *yes = (double)NAN;
    for (double x = s->from; !beyond(s, x); x *= s->ratio) {
        boil_outcome outcome = s->ask(s->context, x, &found);
        if (outcome != BOIL_OK)
            return outcome;
        if (found) {
            *yes = x;
            return BOIL_OK;
        }
        *no = x;
    }
    return BOIL_NO_ROOT;
}

boil_outcome boil_bisect(const boil_bisection *s, double *no, double *yes)
{
    if (!(s->from > 0 && isfinite(s->from) && isfinite(s->most) && s->ratio > 0 && s->ratio != 1 && s->precision > 0))
        return BOIL_BAD_INPUT;
    boil_outcome outcome = scan(s, no, yes);
    while (outcome == BOIL_OK && fabs(*yes - *no) > s->precision * fmax(*yes, *no)) {
        double middle = (*no + *yes) / 2;
        bool found = false;
        outcome = s->ask(s->context, middle, &found);
        *(found ? yes : no) = middle;
    }
    return outcome;
}
