#include <math.h>

#include "simulate/simulation.h"

/* simulate/simulation_stays.c -- loads whose time in the bath counts only while it boils: what of it is left, and when they come out if
   the bath stays as it is. Each change of mode is a moment of its own, so that between two of these moments it changes once at most,
   and then at since_s. */

/* Of the time since it was last asked, the part in which the body was in and the bath boiled. */
static double boiled_s(const boil_simulation *r, const boil_bath_body *o)
{
    double from_s = fmax(o->as_of_s, o->in_end_s);
    return r->bath.boiling ? fmax(0, r->t - fmax(from_s, r->since_s)) : fmax(0, r->since_s - from_s);
}

static void turn(boil_simulation *r, boil_bath_body *o)
{
    const double never = (double)INFINITY;
    o->boil_left_s = fmax(0, o->boil_left_s - boiled_s(r, o));
    o->as_of_s = r->t;
    if (o->out_start_s <= r->t) { /* as was foretold: what rounding leaves is no time */
        o->boil_left_s = o->latest_s <= r->t ? o->boil_left_s : 0;
        o->at_boil = false;
    } else {
        double lifting_s = o->in_end_s - o->in_start_s;
        double had_it_s = r->bath.boiling ? fmax(r->t, o->in_end_s) + o->boil_left_s : never;
        o->out_start_s = fmin(o->latest_s, had_it_s);
        o->out_end_s = o->out_start_s + lifting_s;
    }
    r->history.loads[o->load].boil_short_s = o->boil_left_s;
}

void boil_simulation_turn_stays(boil_simulation *r)
{
    for (size_t i = 0; i < r->bath.bodies_count; i++)
        if (r->bath.bodies[i].at_boil)
            turn(r, &r->bath.bodies[i]);
}
