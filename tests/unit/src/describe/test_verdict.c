/* unit/src/describe/test_verdict.c -- a run in one line, from histories made by hand: no run is made. */
#include <string.h>

#include "describe/verdict.h"
#include "support/close.h"

#define NEVER ((double)NAN)

typedef struct {
    scenario scene;
    boil_finding one;
    carried_out done;
} made;

/* An hour at the boil from 6:00, of which nothing is found. */
static void make(made *m)
{
    *m = (made){.one = {.id = "never-boils", .title = "the bath never boils", .time_s = NEVER, .worst_s = NEVER}};
    m->scene.start_s = 6 * 3600;
    m->scene.plant = boil_plant_default();
    m->scene.plant.limits.recovery_s = 120;
    m->done.scenario = &m->scene;
    m->done.central =
        (boil_history){.end = BOIL_RUN_DONE, .end_s = 3600, .summary = {.boiling_share = 1, .freeboard_min_m = {0.2, 600}}};
}

static bool told(const made *m, const char *words)
{
    const verdict v = verdict_of(&m->done, UNITS_SI);
    return strstr(v.text, words) != NULL;
}

static void why_a_run_stopped_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    boil_history *h = &m.done.central;
    assert_string_equal(verdict_stop_reason(&m.done, UNITS_SI).text, "");
    h->end = BOIL_RUN_OUT_OF_RANGE;
    h->stop_quantity = "bath temperature";
    h->stop_unit = "K";
    h->stop_value = h->stop_limit = 468.15;
    assert_string_equal(verdict_stop_reason(&m.done, UNITS_SI).text,
                        "bath temperature reached 195.0 degC, where the known range ends");
    h->stop_value = 469.15;
    assert_string_equal(verdict_stop_reason(&m.done, UNITS_SI).text,
                        "bath temperature reached 196.0 degC, and the known range ends at 195.0 degC");
    h->stop_quantity = NULL;
    h->stop_unit = "m";
    h->stop_value = h->stop_limit = 0.5;
    assert_string_equal(verdict_stop_reason(&m.done, UNITS_SI).text, "a quantity reached 500 mm, where the known range ends");
    h->stop_unit = "kg";
    assert_true(told(&m, "STOPPED at 7:00: a quantity reached 0.5 kg"));
    h->stop_unit = NULL;
    assert_true(told(&m, "a quantity reached 0.5, where the known range ends"));
    h->end = BOIL_RUN_FULL;
    assert_true(told(&m, "the tank is full"));
    h->end = BOIL_RUN_FAILED;
    assert_true(told(&m, "the integration failed"));
    h->end = BOIL_RUN_INTERRUPTED;
    assert_true(told(&m, "interrupted"));
}

/* What never boils is told once, with the heat that it needs where one is known. */
static void what_never_boils_is_told_once(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.done.central.summary.boiling_share = 0;
    assert_true(told(&m, "the bath never boils"));
    m.one.severity = BOIL_SEVERITY_WARNING;
    m.one.needed_W = NEVER;
    m.done.found = (boil_findings){.list = &m.one, .count = 1};
    assert_true(told(&m, "WARNING: the bath never boils; least freeboard"));
    m.one.needed_W = 20e3;
    assert_true(told(&m, "WARNING: the bath never boils: it needs 20.0 kW to the tank"));
    m.one.id = "overflow";
    m.one.title = "it goes over the rim";
    m.one.time_s = 600;
    assert_true(told(&m, "WARNING at 6:10: it goes over the rim; the bath never boils"));
    m.done.central.end_s = 0;
    assert_false(told(&m, "never boils"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(why_a_run_stopped_is_told),
        cmocka_unit_test(what_never_boils_is_told_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
