#include <math.h>

#include "bath/rates.h"
#include "simulate/recorder.h"

/* simulate/recorder_inside.c -- when between the ends of a step the level is highest and most floats, and the range of
   temperatures there, on the cubic between them, as the rows of a trace are. A parabola through moments that lie as far apart as the pool takes to answer puts a
   crest half a millimetre too low or too high, and a turning temperature off by five thousandths of a kelvin. */

typedef struct {
    boil_recorder *record;
    const boil_bath *bath;
    const boil_rates_view *before, *after;
} ends;

static double level(const ends *e, double share)
{
    const boil_hermite *c = &e->record->step.cubic;
    double t = c->t0 + share * (c->t1 - c->t0);
    boil_hermite_at(c, BOIL_STATE_STEAM_HELD + 1, t, e->record->unknowns);
    return boil_rates_level_between(e->bath, e->before, e->after, share, t, e->record->unknowns);
}

/* Amounts go by cubics between the ends, and what they take up is all but their sum: so does the level. */
static double crest(const ends *e)
{
    const double beside = 1e-4;
    double start_m = e->before->levels.upper_m, end_m = e->after->levels.upper_m;
    double by0 = (level(e, beside) - start_m) / beside, by1 = (end_m - level(e, 1 - beside)) / beside;
    return boil_hermite_top(start_m, by0, end_m, by1, 1);
}

void boil_recorder_tops(boil_recorder *r, const boil_bath *b, const boil_rates_view *before, const boil_rates_view *after,
                        double time_s[BOIL_RECORDER_TOPS])
{
    enum { LAYER = BOIL_STATE_LAYER_MASS };
    const ends e = {r, b, before, after};
    const boil_hermite *c = &r->step.cubic;
    double h = c->t1 - c->t0, level_s = crest(&e) * h;
    double afloat_s = boil_hermite_top(c->y0[LAYER], c->slope0[LAYER], c->y1[LAYER], c->slope1[LAYER], h);
    time_s[0] = c->t0 + fmin(level_s, afloat_s);
    time_s[1] = c->t0 + fmax(level_s, afloat_s);
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
    const boil_hermite *c = &r->step.cubic;
    boil_hermite_range(before->solution.temperature_K, warming(b, before, c->slope0), after->solution.temperature_K,
                       warming(b, after, c->slope1), c->t1 - c->t0, &r->coolest_K, &r->hottest_K);
}
