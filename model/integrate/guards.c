#include "integrate/guards.h"

#include <math.h>
#include <string.h>

void boil_guards_begin(boil_guards *g, const double now[])
{
    memset(g->armed, 0, sizeof g->armed);
    boil_guards_note(g, now, 0);
}

void boil_guards_note(boil_guards *g, const double now[], double step_s)
{
    g->earlier_s = step_s;
    for (size_t i = 0; i < g->count; i++) {
        g->earlier[i] = g->before[i];
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
    for (size_t i = 0; i < g->count; i++) {
        bool falls = g->earlier_s > 0 && g->before[i] < g->earlier[i] && now[i] < g->before[i];
        if (!falls && g->before[i] < 0 && now[i] < 0 && now[i] > -close * fabs(now[i] - g->before[i]))
            return true;
    }
    return false;
}

/* From the last one, by time. */
static double top(double before, double earlier, double earlier_s, double now, double step_s)
{
    double rose = (before - earlier) / earlier_s, rises = (now - before) / step_s;
    double bend = (rises - rose) / (earlier_s + step_s), slope = rises - bend * step_s, at_s = -slope / (2 * bend);
    return bend < 0 && at_s > 0 && at_s < step_s ? before + slope * at_s / 2 : -HUGE_VAL;
}

bool boil_guards_top(const boil_guards *g, const double now[], double step_s)
{
    for (size_t i = 0; i < g->count && g->earlier_s > 0; i++)
        if (g->before[i] < 0 && now[i] < 0 && top(g->before[i], g->earlier[i], g->earlier_s, now[i], step_s) >= 0)
            return true;
    return false;
}
