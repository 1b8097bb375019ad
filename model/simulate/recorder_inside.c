#include <math.h>
#include <stdbool.h>

#include "base/golden.h"
#include "bath/rates.h"
#include "simulate/recorder.h"

/* simulate/recorder_inside.c -- the highest level and the range of temperatures between the ends of a step, on the cubic between them,
   as the rows of a trace are. A parabola through moments that lie as far apart as the pool takes to answer puts a crest half a
   millimetre too low or too high, and a turning temperature off by five thousandths of a kelvin. */

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

/* Whether the cubic rises over the higher end of a step, `into_s` long from there. Where that end is no crest itself, it does just
   inside. Where the level is more than three times as fast at the other end as in the mean, five times where it comes in as fast as
   that, the cubic waves over the higher one [Fritsch & Carlson, as in integrate/hermite.h]: most some four tenths of the step inside, or,
   where it is nearly as high there, further on; where it comes in steeper than three times the mean it dips first, and most is seven
   tenths inside. Without bubbles no level is so fast. */
static bool rises(search *s, double high_s, double into_s, double high_m, double low_m, bool bubbles)
{
    const double beside = 1e-4, inside = 0.4, further = 0.6, late = 0.7, steep = 3; /* of the mean slope */
    const double all_m = high_m - low_m, nearly_m = high_m - 0.2 * all_m;
    double falls_m = high_m - level(high_s + beside * into_s, s);
    if (falls_m < 0 || !bubbles)
        return falls_m < 0;
    if (!(falls_m < steep * beside * all_m))
        return level(high_s + late * into_s, s) > high_m;
    double there_m = level(high_s + inside * into_s, s);
    return there_m > high_m || (there_m > nearly_m && level(high_s + further * into_s, s) > high_m);
}

/* K/s, where the bath's unknowns move so fast: along its boiling point, or by the heat that is not its components' own. */
static double warming(const boil_bath *b, const boil_rates_view *v, const double by_s[])
{
    const boil_rates_solution *s = &v->solution;
    if (!b->boiling)
        return boil_rates_spare_heat(s, by_s) / s->heat.capacity_J_K;
    double boils_K_s = s->slope.water * by_s[BOIL_STATE_BATH_WATER];
    for (int i = 0; i < BOIL_SALTS; i++)
        boils_K_s += s->slope.salt[i] * by_s[BOIL_STATE_BATH_NAOH + i];
    return boils_K_s;
}

void boil_recorder_look_inside(boil_recorder *r, const boil_bath *b, const boil_rates_view *before,
                               const boil_rates_view *after)
{
    enum { TIMES = 14 };      /* to a thousandth of the step: a crest is flat */
    const double none = 1e-6; /* of the bath's volume */
    const boil_hermite *c = &r->step.cubic;
    double start_m = before->levels.upper_m, end_m = after->levels.upper_m, h = c->t1 - c->t0;
    search s = {r, b, *r->step.near};
    bool bubbles = fmax(before->pool.void_upper, after->pool.void_upper) > none;
    if (h > 0 && (end_m >= start_m ? rises(&s, c->t1, -h, end_m, start_m, bubbles) : rises(&s, c->t0, h, start_m, end_m, bubbles))) {
        boil_golden crest = boil_golden_top(level, &s, c->t0, c->t1, TIMES);
        r->inside = (boil_extreme){crest.value, crest.x};
    }
    boil_hermite_range(before->solution.temperature_K, warming(b, before, c->slope0), after->solution.temperature_K,
                       warming(b, after, c->slope1), h, &r->coolest_K, &r->hottest_K);
}
