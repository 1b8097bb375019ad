#include "acts/tap.h"

#include <math.h>

static const double NEVER = (double)INFINITY;

boil_tap boil_tap_shut(double mass_kg, double over_s, double now_s)
{
    return (boil_tap){.rate_kg_s = mass_kg / over_s, .left_kg = mass_kg, .as_of_s = now_s, .seen_s = NEVER};
}

void boil_tap_pass(boil_tap *t, double now_s)
{
    const double drop = 1e-12;
    double flowed = t->open ? fmin(t->left_kg, t->rate_kg_s * (now_s - t->as_of_s)) : 0;
    t->poured_kg += flowed;
    t->left_kg -= flowed;
    if (t->left_kg <= drop * t->poured_kg)
        t->left_kg = 0;
    t->as_of_s = now_s;
}

/* A boiling point is read on a boiling bath alone. */
static bool needs_boil(const boil_pour *p)
{
    return p->while_boiling || p->once || p->goal == BOIL_GOAL_BOILING_POINT;
}

static double ends_s(const boil_pour *p)
{
    return p->no_later_s > 0 ? p->no_later_s : NEVER;
}

static double opens_s(const boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b)
{
    if (!needs_boil(p))
        return t->as_of_s;
    return b->boiling ? b->since_s + hand->steady_s : NEVER;
}

static double boil_lost_s(const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b)
{
    return needs_boil(p) && !b->boiling ? b->since_s + hand->reaction_s : NEVER;
}

static void shut(boil_tap *t, boil_pour_end end)
{
    t->open = false;
    t->end = end;
}

static void turn_open(boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b, double now_s)
{
    if (!(t->left_kg > 0))
        shut(t, BOIL_POUR_ALL_IN);
    else if (now_s >= t->seen_s + hand->reaction_s)
        shut(t, BOIL_POUR_GOAL);
    else if (now_s >= ends_s(p))
        shut(t, BOIL_POUR_TIME);
    else if (now_s >= boil_lost_s(p, hand, b))
        shut(t, isfinite(t->seen_s) ? BOIL_POUR_GOAL : p->once ? BOIL_POUR_BOIL_LOST : BOIL_POUR_GOES_ON);
}

void boil_tap_turn(boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b, double now_s)
{
    if (t->end != BOIL_POUR_GOES_ON)
        return;
    if (t->open)
        turn_open(t, p, hand, b, now_s);
    else if (now_s >= ends_s(p))
        shut(t, BOIL_POUR_TIME);
    else
        t->open = now_s >= opens_s(t, p, hand, b);
}

double boil_tap_next(const boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b)
{
    if (t->end != BOIL_POUR_GOES_ON)
        return NEVER;
    if (!t->open)
        return fmin(ends_s(p), opens_s(t, p, hand, b));
    double shut_s = fmin(t->seen_s + hand->reaction_s, boil_lost_s(p, hand, b));
    return fmin(fmin(t->as_of_s + t->left_kg / t->rate_kg_s, ends_s(p)), shut_s);
}

bool boil_tap_is_needed(const boil_pour *p)
{
    return needs_boil(p) || p->goal != BOIL_GOAL_NONE || p->no_later_s > 0;
}

bool boil_tap_is_sound(const boil_pour *p)
{
    bool has_goal = p->goal != BOIL_GOAL_NONE;
    return (unsigned)p->goal <= BOIL_GOAL_BOILING_POINT && p->no_later_s >= 0 && isfinite(p->no_later_s) &&
           (!has_goal || (p->goal_value > 0 && isfinite(p->goal_value)));
}
