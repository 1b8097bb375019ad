#include <math.h>

#include "equipment/heat_control.h"
#include "simulate/simulation.h"

/* simulate/simulation_fire.c -- the fire as its control wants it: called for, lit, put out. */

/* What the control wants of a reading that may have come to lie beyond a threshold without crossing it: another set point, or a
   bath that was not under control. */
static void decide(boil_bath *b, double sensor_K)
{
    const boil_heat_control *c = &b->plant->heat_control;
    if (b->fire_wanted && sensor_K >= boil_heat_control_out(c, b->heat_set_K) - BOIL_BATH_READING_K)
        b->fire_wanted = false;
    else if (!b->fire_wanted && sensor_K <= boil_heat_control_lights(c, b->heat_set_K) + BOIL_BATH_READING_K)
        b->fire_wanted = true;
}

void boil_simulation_trip(boil_simulation *r)
{
    r->bath.high_limit_out = true;
    if (isnan(r->history.summary.high_limit_s))
        r->history.summary.high_limit_s = r->t;
}

void boil_simulation_settle_fire(boil_simulation *r)
{
    boil_bath *b = &r->bath;
    const boil_heat_control *c = &r->plant.heat_control;
    double sensor_K = r->view.heater.sensor_K;
    if (c->high_limit_K > 0 && !b->high_limit_out && sensor_K >= c->high_limit_K - BOIL_BATH_READING_K)
        boil_simulation_trip(r);
    if (b->heat_controlled)
        decide(b, sensor_K);
    if (!(b->heat_controlled && b->fire_wanted) || b->heat_cut || b->high_limit_out) {
        b->fire_lit = false;
        r->lights_s = (double)INFINITY;
    } else if (!b->fire_lit) {
        if (isinf(r->lights_s))
            r->lights_s = r->t + c->relight_s;
        if (r->lights_s <= r->t) {
            b->fire_lit = true;
            r->history.summary.fires_lit++;
            r->lights_s = (double)INFINITY;
        }
    }
}
