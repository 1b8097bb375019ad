/* support/carried_out.h -- a scenario read and run, for tests of what is made of it. */
#ifndef SUPPORT_CARRIED_OUT_H
#define SUPPORT_CARRIED_OUT_H

#include "support/close.h"

#include "describe/outcome.h"
#include "reading/messages.h"

typedef struct {
    scenario s;
    outcome o;
} carried_out;

static inline void carry_out(carried_out *c, const char *path, double row_interval_s)
{
    messages m;
    boil_run_options options = boil_run_options_default();
    options.row_interval_s = row_interval_s;
    messages_init(&m);
    assert_int_equal(scenario_read(path, &c->s, &m), 0);
    messages_free(&m);
    assert_int_equal(outcome_of(&c->s, &options, &c->o), 0);
}

static inline void forget(carried_out *c)
{
    outcome_free(&c->o);
    scenario_free(&c->s);
}

#endif
