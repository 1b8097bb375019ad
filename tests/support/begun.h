/* support/begun.h -- a bath as a run begins with it: its state, and all rates at the start. */
#ifndef SUPPORT_BEGUN_H
#define SUPPORT_BEGUN_H

#include "support/close.h"

#include "bath/modes.h"
#include "bath/rates.h"

typedef struct {
    boil_bath b;
    boil_rates_tables tables;
    boil_rates_guess guess;
    boil_rates_view v;
    double y[BOIL_STATE_FIXED];
} begun;

static inline void begun_of(begun *n, const boil_plant *p)
{
    assert_int_equal(boil_modes_start(&n->b, p, n->y, &n->tables, &n->guess), BOIL_OK);
    assert_int_equal(boil_rates_at(&n->b, 0, n->y, &n->guess, &n->v, NULL), BOIL_OK);
}

#endif
