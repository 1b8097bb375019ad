/* unit/src/lesson/test_care_taken.c -- what care is taken of an act for each finding that belongs to it, again and again until there is
   no more to take; findings are made up here, and no run is made. What care is, is common practice, no source. */
#include <string.h>

#include "findings/finding_parts.h"
#include "lesson/care.h"
#include "support/hand_made.h"

typedef struct {
    hand_made of;
    debrief_care care[OF_EACH];
} made;

/* The first act alone is done, at once. */
static void make(made *m, boil_action first)
{
    memset(m, 0, sizeof *m);
    hand_made_begin(&m->of);
    m->of.actions[0] = first;
    m->of.schedule.count = m->of.history.acts_count = 1;
    m->of.acts[0] = (boil_act_result){0, BOIL_ACT_DONE};
    if (first.kind == BOIL_ACTION_LOAD)
        m->of.history.loads_count = 1;
    else if (first.kind != BOIL_ACTION_HEAT)
        m->of.history.additions_count = 1;
    m->of.additions[0].kind = first.kind;
}

static bool taken_as(made *m, boil_found_kind kind, boil_severity severity, bool likely)
{
    boil_finding one = {.id = "made-up", .kind = (size_t)kind, .severity = severity, .time_s = 60, .worst_s = 60};
    const boil_findings some = {.list = &one, .count = 1};
    const care_case c = {&m->of.plant, &m->of.schedule, &m->of.history, NULL, 1};
    boil_outcome outcome = BOIL_OK;
    const bool changed = care_take(&c, likely ? &some : NULL, likely ? NULL : &some, m->care, &outcome);
    assert_int_equal(outcome, BOIL_OK);
    return changed;
}

static bool taken(made *m, boil_found_kind kind)
{
    return taken_as(m, kind, BOIL_SEVERITY_WARNING, true);
}

/* How often more care can be taken. */
static int times(made *m, boil_found_kind kind)
{
    int n = 0;
    while (n < 100 && taken(m, kind))
        n++;
    return n;
}

static boil_action heat(boil_heat_order order, double dial)
{
    return (boil_action){.kind = BOIL_ACTION_HEAT, .is.heat = {order, dial, 0}};
}

static boil_action salts(void)
{
    return (boil_action){.kind = BOIL_ACTION_SALTS, .is.salts = {10, 60, 293, {1, 0, 0}}};
}

static void a_load_is_split_down_to_its_pieces(void **state)
{
    made m;
    (void)state;
    make(&m, plate_action(0, 100));
    m.of.actions[0].is.load.pieces = 3;
    assert_int_equal(times(&m, BOIL_FOUND_LOAD_HEAVY), 1);
    assert_int_equal(m.care[0].parts, 3);
    assert_string_equal(m.care[0].because, "made-up");
    make(&m, plate_action(0, 100));
    m.of.actions[0].is.load.pieces = 1;
    assert_int_equal(times(&m, BOIL_FOUND_LOAD_HEAVY), 0);
    assert_int_equal(debrief_change_of(&m.care[0]), DEBRIEF_SAME);
}

static void hollows_are_emptied_once(void **state)
{
    made m;
    (void)state;
    make(&m, plate_action(0, 1));
    m.of.loads[0].pockets_kg = 1;
    assert_false(taken(&m, BOIL_FOUND_HOLLOWS)); /* none that can be emptied */
    m.of.actions[0].is.load.trapped_kg = 1;
    assert_int_equal(times(&m, BOIL_FOUND_HOLLOWS), 1);
    assert_int_equal(debrief_change_of(&m.care[0]), DEBRIEF_DRAINED);
    m.of.loads[0].was_quiet = true;
    assert_int_equal(times(&m, BOIL_FOUND_LOAD_QUIET), 1);
    assert_true(m.care[0].waits);
}

/* Salts are sifted before they are poured slower; what is not salts is only poured slower. */
static void salts_are_sifted_and_then_slower(void **state)
{
    made m, w;
    (void)state;
    make(&m, salts());
    assert_true(taken(&m, BOIL_FOUND_SALT_SLUG));
    assert_int_equal(debrief_change_of(&m.care[0]), DEBRIEF_SIFTED);
    assert_int_equal(m.care[0].slower, 0);
    make(&w, water_action(0, 4, 60));
    assert_int_equal(times(&m, BOIL_FOUND_SALT_SLUG), times(&w, BOIL_FOUND_WATER_FAST));
    assert_int_equal(m.care[0].slower, w.care[0].slower);
    make(&m, salts());
    assert_true(taken(&m, BOIL_FOUND_SURGE));
    assert_true(m.care[0].sifted && m.care[0].slower == 0);
}

/* Of water that is too much there is less, and no slower: it would still be too much. */
static void water_is_less_waits_and_is_slower(void **state)
{
    made m;
    (void)state;
    make(&m, water_action(0, 4, 60));
    assert_true(times(&m, BOIL_FOUND_TOO_COOL) > 1);
    assert_int_equal(debrief_change_of(&m.care[0]), DEBRIEF_LESS_WATER);
    assert_false(taken(&m, BOIL_FOUND_WATER_FAST));
    make(&m, water_action(0, 4, 60));
    assert_true(taken(&m, BOIL_FOUND_WATER_QUIET));
    assert_int_equal(debrief_change_of(&m.care[0]), DEBRIEF_WHEN_BOILING);
    assert_true(times(&m, BOIL_FOUND_WATER_QUIET) > 1 && m.care[0].slower > 1);
    make(&m, salts());
    assert_false(taken(&m, BOIL_FOUND_TOO_COOL));
}

static void heat_is_gentle_or_less(void **state)
{
    made m;
    (void)state;
    make(&m, heat(BOIL_HEAT_TURN, 1));
    assert_int_equal(times(&m, BOIL_FOUND_RESTART), 1);
    assert_true(m.care[0].gentle && isinf(m.care[0].gone_s));
    assert_true(times(&m, BOIL_FOUND_OVERFLOW) > 1);
    make(&m, heat(BOIL_HEAT_TURN, CARE_GENTLE_DIAL));
    assert_false(taken(&m, BOIL_FOUND_RESTART));
    make(&m, heat(BOIL_HEAT_THERMOSTAT, 0));
    assert_false(taken(&m, BOIL_FOUND_OVERFLOW)); /* its dial is turned by nobody */
    assert_true(taken(&m, BOIL_FOUND_RESTART));
    make(&m, (boil_action){.kind = BOIL_ACTION_MIXER, .is.on = true});
    assert_false(taken(&m, BOIL_FOUND_OVERFLOW));
}

/* What is only possible counts from WARNING, what is likely from CAUTION, and a limit always. */
static void how_grave_it_must_be(void **state)
{
    made m;
    (void)state;
    make(&m, water_action(0, 4, 60));
    assert_false(taken_as(&m, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_CAUTION, false));
    assert_false(taken_as(&m, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_NOTICE, true));
    assert_false(taken_as(&m, BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_NOTICE, false));
    assert_true(taken_as(&m, BOIL_FOUND_TOO_COOL, BOIL_SEVERITY_NOTICE, true));
    make(&m, water_action(0, 4, 60));
    assert_true(taken_as(&m, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_WARNING, false));
    make(&m, water_action(0, 4, 60));
    assert_true(taken_as(&m, BOIL_FOUND_WATER_QUIET, BOIL_SEVERITY_CAUTION, true));
}

static void what_goes_off_is_measured_of_water_that_was_poured(void **state)
{
    made m;
    (void)state;
    make(&m, water_action(0, 4, 60));
    m.of.acts[0].done_s = UNKNOWN;
    care_measure_water(&m.of.schedule, &m.of.history, m.care);
    assert_close(m.care[0].less_kg, 0, 0, 0);
    boil_row rows[] = {{.time_s = 0, .crystals_kg = 1}, {.time_s = 10, .crystals_kg = 1}};
    m.of.history.rows = rows;
    m.of.history.rows_count = 2;
    assert_true(isinf(care_crystals_gone(&m.of.history)));
    rows[1].crystals_kg = 0;
    assert_close(care_crystals_gone(&m.of.history), 10, 0, 0);
    rows[0].crystals_kg = 0;
    assert_close(care_crystals_gone(&m.of.history), 0, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_load_is_split_down_to_its_pieces),
        cmocka_unit_test(hollows_are_emptied_once),
        cmocka_unit_test(salts_are_sifted_and_then_slower),
        cmocka_unit_test(water_is_less_waits_and_is_slower),
        cmocka_unit_test(heat_is_gentle_or_less),
        cmocka_unit_test(how_grave_it_must_be),
        cmocka_unit_test(what_goes_off_is_measured_of_water_that_was_poured),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
