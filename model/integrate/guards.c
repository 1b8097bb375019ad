#include "integrate/guards.h"

#include <math.h>
#include <string.h>

void boil_guards_begin(boil_guards *g, const double now[])
{
    memset(g->armed, 0, sizeof g->armed);
    boil_guards_note(g, now);
}

void boil_guards_note(boil_guards *g, const double now[])
{
    for (size_t i = 0; i < g->count; i++) {
        g->before[i] = now[i];
        if (now[i] < -g->arm[i])
            g->armed[i] = true;
    }
}

double boil_guards_beyond(const boil_guards *g, size_t i, double value)
{
    return value - (g->armed[i] ? 0 : g->arm[i]);
}

bool boil_guards_rises(const boil_guards *g, size_t i, double value)
{
    return boil_guards_beyond(g, i, g->before[i]) < 0 && boil_guards_beyond(g, i, value) >= 0;
}

bool boil_guards_near(const boil_guards *g, const double now[])
{
    const double close = 3;
    for (size_t i = 0; i < g->count; i++)
        if (g->before[i] < 0 && now[i] < 0 && now[i] > -close * fabs(now[i] - g->before[i]))
            return true;
    return false;
}
