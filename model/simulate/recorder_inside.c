#include <math.h>

#include "bath/rates.h"
#include "simulate/recorder.h"

/* simulate/recorder_inside.c -- the highest level between the ends of a step, on the cubic between them, as the rows of a trace are. A
   parabola through moments that lie as far apart as the pool takes to answer puts a crest half a millimetre too low or too high. */

typedef struct {
    boil_recorder *record;
    const boil_bath *bath;
    boil_rates_guess guess;
} search;

/* Of the cubic; minus infinity where the properties end. */
static double level(search *s, double t)
{
    double *y = s->record->unknowns, level_m;
    boil_hermite_at(&s->record->step.cubic, boil_bath_unknowns(s->bath), t, y);
    return boil_rates_upper_level(s->bath, t, y, &s->guess, &level_m) == BOIL_OK ? level_m : -(double)INFINITY;
}

/* Between low and high there is one crest: by the golden section to a thousandth of the step, where it is flat. */
static boil_extreme crest(search *s, double low, double high)
{
    enum { TIMES = 14 };
    const double golden = 0.6180339887498949;
    double left = high - golden * (high - low), right = low + golden * (high - low);
    double at_left = level(s, left), at_right = level(s, right);
    for (int i = 0; i < TIMES; i++) {
        if (at_left < at_right) {
            low = left;
            left = right;
            at_left = at_right;
            right = low + golden * (high - low);
            at_right = level(s, right);
        } else {
            high = right;
            right = left;
            at_right = at_left;
            left = high - golden * (high - low);
            at_left = level(s, left);
        }
    }
    return at_left > at_right ? (boil_extreme){at_left, left} : (boil_extreme){at_right, right};
}

void boil_recorder_look_inside(boil_recorder *r, const boil_bath *b, const boil_rates_view *before,
                               const boil_rates_view *after)
{
    const double beside = 1e-4; /* of the step */
    const boil_hermite *c = &r->step.cubic;
    double start_m = before->levels.upper_m, end_m = after->levels.upper_m, by_s = beside * (c->t1 - c->t0);
    search s = {r, b, *r->step.near};
    /* where the higher end is no crest itself, there is one between */
    if (by_s > 0 && level(&s, end_m >= start_m ? c->t1 - by_s : c->t0 + by_s) > fmax(start_m, end_m))
        r->inside = crest(&s, c->t0, c->t1);
}
