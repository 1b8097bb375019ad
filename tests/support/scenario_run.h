/* support/scenario_run.h -- a scenario read and run, for tests of what is made of it. */
#ifndef SUPPORT_SCENARIO_RUN_H
#define SUPPORT_SCENARIO_RUN_H

#include "support/close.h"

#include "describe/carried_out.h"
#include "reading/source.h"

typedef struct {
    scenario s;
    carried_out o;
} scenario_run;

static inline void carry_out(scenario_run *c, const char *path, double row_interval_s)
{
    messages m;
    boil_run_options options = boil_run_options_default();
    options.row_interval_s = row_interval_s;
    messages_init(&m);
    assert_int_equal(scenario_read(path, &c->s, &m), 0);
    messages_free(&m);
    assert_int_equal(carried_out_of(&c->s, &options, &c->o), 0);
}

static inline void forget(scenario_run *c)
{
    carried_out_free(&c->o);
    scenario_free(&c->s);
}

#endif
