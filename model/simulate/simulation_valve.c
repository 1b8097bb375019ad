#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "equipment/water_control.h"
#include "simulate/simulation.h"

/* simulate/simulation_valve.c -- the automatic water: what its control wants, and what the valve does a dead time later. */

static void tell_valve(boil_simulation *r, double time, bool open)
{
    r->moves[r->moves_count++] = (boil_valve_move){time, open};
}

/* On/off: the sensor has crossed a threshold. */
void boil_simulation_decide_valve(boil_simulation *r)
{
    r->bath.valve_wanted = !r->bath.valve_wanted;
    tell_valve(r, r->t + r->plant.control.dead_time_s, r->bath.valve_wanted);
}

/* Time-proportioned: at the start of a period, how long the valve stays open in it. */
static void begin_period(boil_simulation *r)
{
    const boil_water_control *c = &r->plant.control;
    double share = boil_water_control_share(c, r->view.control.sensor_K), start = r->t + c->dead_time_s;
    r->next_period_s = r->t + c->period_s;
    if (share > 0)
        tell_valve(r, start, true);
    if (share < 1)
        tell_valve(r, start + share * c->period_s, false);
}

/* When its interlock lets the valve open; infinity: it does, or the bath is quiet. */
static double freed_s(const boil_simulation *r)
{
    bool waits = r->bath.boiling && !r->bath.valve_free && r->plant.control.mode != BOIL_WATER_CONTROL_NONE;
    return waits ? r->since_s + BOIL_WATER_CONTROL_STEADY_S : (double)INFINITY;
}

void boil_simulation_move_valve(boil_simulation *r)
{
    r->bath.valve_free = r->bath.valve_free || r->t >= freed_s(r);
    if (r->plant.control.mode == BOIL_WATER_CONTROL_PROPORTIONED && r->t >= r->next_period_s)
        begin_period(r);
    size_t done = 0;
    for (; done < r->moves_count && r->moves[done].time_s <= r->t; done++)
        r->bath.valve_set = r->moves[done].open;
    if (done > 0) {
        memmove(r->moves, r->moves + done, (r->moves_count - done) * sizeof *r->moves);
        r->moves_count -= done;
    }
}

double boil_simulation_next_valve(const boil_simulation *r)
{
    double move = fmin(freed_s(r), r->moves_count > 0 ? r->moves[0].time_s : (double)INFINITY);
    return r->plant.control.mode == BOIL_WATER_CONTROL_PROPORTIONED && r->next_period_s > r->t ? fmin(move, r->next_period_s)
                                                                                               : move;
}
