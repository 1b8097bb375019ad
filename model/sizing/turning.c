#include "sizing/turning.h"

#include <math.h>

static double within(const boil_turning *t, double x)
{
    return fmin(t->most, fmax(t->least, x));
}

/* From x on, towards where the other answer must be. */
static boil_outcome step_out(const boil_turning *t, double *no, double *yes)
{
    bool is_yes = false, first;
    double x = within(t, t->near), step = 1 + 2 * t->precision;
    boil_outcome outcome = t->ask(t->context, x, &first);
    *(first ? yes : no) = x;
    while (outcome == BOIL_OK) {
        double next = within(t, first == t->rising ? x / step : x * step);
        if (next == x)
            return BOIL_OK;
        outcome = t->ask(t->context, next, &is_yes);
        if (outcome != BOIL_OK)
            return outcome;
        *(is_yes ? yes : no) = next;
        if (is_yes != first)
            return BOIL_OK;
        x = next;
        step *= step;
    }
    return outcome;
}

boil_outcome boil_turning_find(const boil_turning *t, double *yes)
{
    double no = (double)NAN;
    *yes = (double)NAN;
    boil_outcome outcome = step_out(t, &no, yes);
    if (outcome != BOIL_OK)
        return outcome;
    if (isnan(*yes))
        return BOIL_NO_ROOT;
    while (!isnan(no) && fabs(*yes / no - 1) > t->precision && outcome == BOIL_OK) {
        bool is_yes = false;
        double middle = sqrt(*yes * no);
        outcome = t->ask(t->context, middle, &is_yes);
        *(is_yes ? yes : &no) = middle;
    }
    return outcome;
}
