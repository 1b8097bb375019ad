/* acts/tap.h -- a tap in a hand: a pour that begins, pauses and ends with the boil, at what a gauge shows, or at a moment. It flows at
   one pace or not at all; between two of its moments nothing about it changes. */
#ifndef BOIL_ACTS_TAP_H
#define BOIL_ACTS_TAP_H

#include "acts/wait.h"

typedef struct {
    double rate_kg_s; /* while it is open */
    double left_kg, poured_kg;
    double as_of_s; /* of both */
    bool open;
    double seen_s; /* when the gauge showed what it is to show; infinite: not yet */
    boil_pour_end end;
} boil_tap;

boil_tap boil_tap_shut(double mass_kg, double over_s, double now_s);

/* What has flowed since it was last asked. Rounding does not leave a drop. */
void boil_tap_pass(boil_tap *t, double now_s);

/* Opened, shut or over, as it must be now. */
void boil_tap_turn(boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b, double now_s);

/* When it will be turned next if the bath stays as it is; infinite: never. */
double boil_tap_next(const boil_tap *t, const boil_pour *p, const boil_by_hand *hand, const boil_wait_bath *b);

/* Whether the pour needs one: it hangs on something. */
bool boil_tap_is_needed(const boil_pour *p);

bool boil_tap_is_sound(const boil_pour *p);

#endif
