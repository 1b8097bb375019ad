#include "base/false_position.h"

double boil_false_position_next(const boil_false_position *f)
{
    double x = f->low + (f->high - f->low) * f->at_low / (f->at_low - f->at_high);
    return x > f->low && x < f->high ? x : (f->low + f->high) / 2;
}

/* An end that stays twice counts half, so that both of them close in. */
void boil_false_position_narrow(boil_false_position *f, double x, double v, bool past)
{
    int to = past ? 1 : -1;
    *(past ? &f->high : &f->low) = x;
    *(past ? &f->at_high : &f->at_low) = v;
    if (to == f->side)
        *(past ? &f->at_low : &f->at_high) /= 2;
    f->side = to;
}
