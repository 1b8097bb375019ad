/* unit/scenario/test_scenarios.c -- every shipped scenario, run both ways: it closes its balances, and it ends as its comment
   promises. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "boilback.h"
#include "support/shipped.h"

typedef struct {
    const char *name;
    boil_severity likely, possible; /* gravest of each list */
} promise;

static const promise promises[] = {
    {"normal-shift.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
    {"too-heavy.bath", BOIL_SEVERITY_CAUTION, BOIL_SEVERITY_NOTICE},
    {"water-while-quiet.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_NOTICE},
    {"water-while-boiling.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
    {"afloat-heat-low.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_DANGER}, /* at low heat it steams off, but it may let go */
    {"afloat-heat-full.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_WARNING},
    {"afloat-left-alone.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_DANGER},
    {"water-dumped.bath", BOIL_SEVERITY_WARNING, BOIL_SEVERITY_DANGER},
    {"tall-narrow.bath", BOIL_SEVERITY_WARNING, BOIL_SEVERITY_DANGER},
    {"weak-bath.bath", BOIL_SEVERITY_WARNING, BOIL_SEVERITY_NOTICE},
    {"bench-tank.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
    {"full-day-automatic-water.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
    {"salt-slug.bath", BOIL_SEVERITY_WARNING, BOIL_SEVERITY_DANGER},
    {"salt-sifted.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
    {"liquid-makeup.bath", BOIL_SEVERITY_CAUTION, BOIL_SEVERITY_NOTICE},
    {"weekend.bath", BOIL_SEVERITY_WARNING, BOIL_SEVERITY_WARNING}, /* what drips from the lid, let go */
    {"dried-out.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_WARNING},
    {"hollow-parts.bath", BOIL_SEVERITY_DANGER, BOIL_SEVERITY_DANGER},
    {"uncertain-shift.bath", BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE},
};

static const promise *promise_of(const char *name)
{
    for (size_t i = 0; i < sizeof promises / sizeof promises[0]; i++)
        if (strcmp(promises[i].name, name) == 0)
            return &promises[i];
    fail_msg("scenarios/%s: nothing is promised of it in unit/scenario/test_scenarios.c", name);
    return NULL;
}

static void assert_closed(const char *name, const boil_history *h)
{
    print_message("%s: balances of water %.1e, salts %.1e, energy %.1e; %zu steps\n", name, h->balance.water.closure,
                  h->balance.salts.closure, h->balance.energy.closure, h->steps);
    assert_true(fabs(h->balance.water.closure) < 1e-9);
    assert_true(fabs(h->balance.salts.closure) < 1e-9);
    assert_true(fabs(h->balance.energy.closure) < 1e-9);
    assert_int_equal(h->end, BOIL_RUN_DONE);
}

static void run_one(const char *name, const scenario *s)
{
    boil_run_options o = boil_run_options_default();
    boil_run_set set;
    boil_findings likely, possible;
    assert_int_equal(boil_run_set_of(&s->plant, &s->schedule, &o, &set), BOIL_OK);
    assert_closed(name, &set.likely);
    for (size_t i = 0; i < set.count; i++)
        assert_closed(name, &set.other[i].history);
    boil_remedies needed;
    assert_int_equal(boil_remedies_of(&s->plant, &s->schedule, &o, &set.likely, &needed), BOIL_OK);
    assert_int_equal(boil_findings_of(&s->plant, &s->schedule, &needed, &set.likely, set.other, set.count, &likely, &possible),
                     BOIL_OK);
    const promise *p = promise_of(name);
    assert_int_equal(boil_findings_gravest(&likely), p->likely);
    assert_int_equal(boil_findings_gravest(&possible), p->possible);
    boil_findings_free(&likely);
    boil_findings_free(&possible);
    boil_run_set_free(&set);
}

static void each_shipped_scenario_keeps_its_promise(void **state)
{
    (void)state;
    size_t count = each_shipped(run_one, 1);
    assert_int_equal(count, sizeof promises / sizeof promises[0]);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {cmocka_unit_test(each_shipped_scenario_keeps_its_promise)};
    return cmocka_run_group_tests_name("scenarios", tests, NULL, NULL);
}
