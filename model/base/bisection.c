#include "base/bisection.h"

#include <math.h>

#include "base/boil.h"

static bool beyond(const boil_bisection *s, double x)
{
    return s->ratio > 1 ? x > s->most : x < s->most;
}

static int scan(const boil_bisection *s, double *no, double *yes)
{
    bool found = false;
    *no = *yes = (double)NAN;
    for (double x = s->from; !beyond(s, x); x *= s->ratio) {
        int outcome = s->ask(s->context, x, &found);
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

int boil_bisect(const boil_bisection *s, double *no, double *yes)
{
    int outcome = scan(s, no, yes);
    while (outcome == BOIL_OK && fabs(*yes - *no) > s->precision * fmax(*yes, *no)) {
        double middle = (*no + *yes) / 2;
        bool found = false;
        outcome = s->ask(s->context, middle, &found);
        *(found ? yes : no) = middle;
    }
    return outcome;
}
