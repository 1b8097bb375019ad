#include <math.h>

#include "simulate/simulation.h"

/* simulate/simulation_drums.c -- what was bailed and drained: how much of it each that takes has taken, and what is kept of it. */

boil_mixture *boil_simulation_kept(boil_simulation *r, int name)
{
    for (size_t i = 0; i < r->drums_count; i++)
        if (r->drums[i].name == name)
            return &r->drums[i].held;
    r->drums[r->drums_count] = (boil_simulation_drum){.name = name};
    return &r->drums[r->drums_count++].held;
}

static bool takes(const boil_simulation *r, const boil_simulation_tap *t)
{
    return t->tap.open && boil_action_takes(r->schedule->actions[t->action].kind);
}

static void give(boil_simulation *r, const boil_simulation_tap *t, const boil_mixture *what, double share)
{
    int name = r->schedule->actions[t->action].name;
    r->history.takes[t->addition - 1].mass_kg += share * boil_mixture_mass(what);
    if (name == 0)
        return;
    boil_mixture *held = boil_simulation_kept(r, name); /* begun as the tap was opened */
    held->water += share * what->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        held->salt[i] += share * what->salt[i];
}

/* Two that take at once share what has left by their paces: only together do they differ from what each took. */
void boil_simulation_share_taken(boil_simulation *r)
{
    boil_mixture now = {.water = r->y[BOIL_STATE_TOTAL_TAKEN_WATER]}, more = now;
    double pace_m3_s = 0;
    more.water -= r->taken.water;
    for (int i = 0; i < BOIL_SALTS; i++) {
        now.salt[i] = r->y[BOIL_STATE_TOTAL_TAKEN_NAOH + i];
        more.salt[i] = now.salt[i] - r->taken.salt[i];
    }
    r->taken = now;
    for (size_t i = 0; i < r->taps_count; i++)
        pace_m3_s += takes(r, &r->taps[i]) ? r->taps[i].tap.rate_kg_s : 0;
    for (size_t i = 0; i < r->taps_count; i++)
        if (takes(r, &r->taps[i]))
            give(r, &r->taps[i], &more, r->taps[i].tap.rate_kg_s / pace_m3_s);
}
