#include <math.h>

#include "base/golden.h"
#include "bath/rates.h"
#include "simulate/recorder.h"

/* simulate/recorder_inside.c -- the highest level between the ends of a step, on the cubic between them, as the rows of a trace
   are. A parabola through moments that lie as far apart as the pool takes to answer puts a crest half a millimetre too low or
   too high. */

typedef struct {
    boil_recorder *record;
    const boil_bath *bath;
    boil_rates_guess guess;
} search;

/* Of the cubic; minus infinity where the properties end. */
static double level(double t, void *context)
{
    search *s = context;
    double *y = s->record->unknowns, level_m;
    boil_hermite_at(&s->record->step.cubic, boil_bath_unknowns(s->bath), t, y);
    return boil_rates_upper_level(s->bath, t, y, &s->guess, &level_m) == BOIL_OK ? level_m : -(double)INFINITY;
}

void boil_recorder_look_inside(boil_recorder *r, const boil_bath *b, const boil_rates_view *before,
                               const boil_rates_view *after)
{
    enum { TIMES = 14 };        /* to a thousandth of the step: a crest is flat */
    const double beside = 1e-4; /* of the step */
    const boil_hermite *c = &r->step.cubic;
    double start_m = before->levels.upper_m, end_m = after->levels.upper_m, by_s = beside * (c->t1 - c->t0);
    search s = {r, b, *r->step.near};
    /* where the higher end is no crest itself, there is one between */
    if (by_s > 0 && level(end_m >= start_m ? c->t1 - by_s : c->t0 + by_s, &s) > fmax(start_m, end_m)) {
        boil_golden crest = boil_golden_top(level, &s, c->t0, c->t1, TIMES);
        r->inside = (boil_extreme){crest.value, crest.x};
    }
}
