/* What water does to the time of a dip, and what hangs with it to its stay, by sums done by hand: 20 g/s boil off, 10 g/s dry off a quiet bath, and a pour, where there is one,
   brings 50 g/s. It stops 30 s before a load, and is at least a minute long. */
#include "plan/decoder.h"
#include "support/close.h"

/* Each takes 4 MJ: 100 s of 40 kW. The first goes in after one move, at 60 s: 1.2 kg are missing, and 2.2 kg as its boil is back. */
typedef struct {
    boil_plan_job jobs[2];
    boil_plan_part parts[2];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
} dips;

static void set_up(dips *l, size_t count)
{
    *l = (dips){.problem = {.jobs = l->jobs, .jobs_count = count, .positions = 2, .hoist_s = 60, .end_s = HUGE_VAL}};
    for (size_t i = 0; i < 2; i++) {
        l->jobs[i] = (boil_plan_job){.load = {.mass_kg = 20}, .least_s = 300, .most_s = 400, .due_s = HUGE_VAL};
        l->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = {.mass_kg = 20}, .heat_J = 4e6, .lag_s = 1, .hot_s = 600};
    }
    l->jobs[1].earliest_s = 200;
    l->bath = (boil_plan_bath){.limit_s = 1000,
                               .quiet_W = 40e3,
                               .most_kg = 60,
                               .guard_s = 30,
                               .flow_kg_s = 0.05,
                               .boils_off_kg_s = 0.02,
                               .dries_kg_s = 0.01,
                               .strongest_kg = 3.5,
                               .fire_W = 1e5,
                               .efficiency = 1};
    l->of = (boil_plan_case){&l->problem, &l->bath, l->parts, count, NULL};
}

static boil_plan_dip last_of(const dips *l)
{
    boil_plan_order o;
    boil_plan_decoder d;
    assert_int_equal(boil_plan_order_begin(&o, l->of.parts_count), BOIL_OK);
    assert_int_equal(boil_plan_decoder_begin(&d, &l->of), BOIL_OK);
    boil_plan_dip dip = boil_plan_decode(&d, &o)->dips[l->of.parts_count - 1];
    assert_false(dip.unplaced);
    boil_plan_decoder_free(&d);
    boil_plan_order_free(&o);
    return dip;
}

/* At 200 s 3 kg are missing and would be 4 as the boil is back, of 3.5: a pour of a minute fits from 250 s on, and makes room. */
static void a_dip_waits_for_water_that_makes_room(void **state)
{
    (void)state;
    dips l;
    set_up(&l, 1);
    boil_plan_dip dip = last_of(&l);
    assert_true(dip.enters_s == 60 && dip.reason == BOIL_PLAN_FIRST && !dip.too_strong);
    assert_close(dip.missing_kg, 2.2, 1e-12, 0);
    set_up(&l, 2);
    dip = last_of(&l);
    assert_true(dip.enters_s >= 250 && dip.enters_s <= 300 && dip.reason == BOIL_PLAN_WATER && !dip.too_strong);
    l.bath.strongest_kg = 4;
    dip = last_of(&l);
    assert_true(dip.enters_s == 200 && dip.reason == BOIL_PLAN_EARLIEST && !dip.too_strong);
    assert_close(dip.missing_kg, 4, 1e-12, 0);
}

/* Where a pour gains nothing no wait helps; and a valve is not waited for. */
static void what_no_water_mends_is_marked(void **state)
{
    (void)state;
    dips l;
    set_up(&l, 2);
    l.bath.flow_kg_s = 0.02;
    boil_plan_dip dip = last_of(&l);
    assert_true(dip.enters_s == 200 && dip.reason == BOIL_PLAN_EARLIEST && dip.too_strong);
    l.bath.flow_kg_s = 0.0201;
    assert_false(last_of(&l).too_strong);
    l.bath.valve = true;
    dip = last_of(&l);
    assert_true(dip.enters_s == 200 && !dip.too_strong);
}

/* 4 kW less for each kg that is missing, but a tenth is left. */
static void water_missing_weakens_the_bath(void **state)
{
    (void)state;
    dips l;
    set_up(&l, 1);
    l.bath.flow_kg_s = 0;
    l.bath.strongest_kg = 50;
    l.bath.weakens_W_kg = 4e3;
    boil_plan_dip dip = last_of(&l);
    assert_close(dip.recovery_s, 4e6 / (40e3 - 4e3 * 1.2), 1e-12, 0);
    l.bath.weakens_W_kg = 40e3;
    dip = last_of(&l);
    assert_close(dip.recovery_s, 4e6 / 4e3, 1e-12, 0);
    assert_true(dip.too_cold && dip.enters_s == 60); /* 1000 s are more than 97 % of 1000 */
    l.bath.limit_s = 1100;
    assert_false(last_of(&l).too_cold);
}

/* Within 106.7 s, which 37.49 kW do: of the 1.2 kg at 60 s no more than 0.63 may be missing. Poured up to 30 s before it, 0.6 are. */
static void a_dip_waits_for_water_that_warms(void **state)
{
    (void)state;
    dips l;
    set_up(&l, 1);
    l.bath.weakens_W_kg = 4e3;
    l.bath.limit_s = 110;
    boil_plan_dip dip = last_of(&l);
    assert_true(dip.enters_s >= 90 && dip.enters_s <= 130 && dip.reason == BOIL_PLAN_WATER && !dip.too_cold);
    assert_close(dip.recovery_s, 4e6 / (40e3 - 4e3 * 0.02 * 30), 1e-9, 0);
    l.bath.limit_s = 109; /* 37.83 kW: none that was watered in time has that */
    dip = last_of(&l);
    assert_true(dip.enters_s == 60 && dip.too_cold);
    l.bath.limit_s = 110;
    l.bath.flow_kg_s = 0.02;
    assert_true(last_of(&l).too_cold);
    l.bath.valve = true; /* then none is ever missing */
    dip = last_of(&l);
    assert_true(dip.enters_s == 60 && !dip.too_cold);
    assert_close(dip.recovery_s, 100, 1e-12, 0);
}

/* The other's 4 MJ bring the boil back 100 s later: half of that, but at most a minute. What was learned of both together is added. */
static void in_a_shared_dip_parts_are_hot_later(void **state)
{
    (void)state;
    static const size_t both[] = {0, 1};
    boil_plan_lessons known = {.list = NULL};
    boil_plan_lesson l_more = {boil_plan_lesson_key(both, 2), 5, 7, 11, true};
    boil_plan_order o;
    boil_plan_decoder d;
    dips l;
    set_up(&l, 2);
    assert_int_equal(boil_plan_order_begin(&o, 2), BOIL_OK);
    boil_plan_order_join(&o, 1, 0, 0);
    for (int i = 0; i < 3; i++) {
        l.parts[1].heat_J = i == 1 ? 5e6 : 4e6;
        l.of.lessons = i == 2 ? &known : NULL;
        assert_int_equal(boil_plan_lesson_learn(&known, &l_more), BOIL_OK);
        assert_int_equal(boil_plan_decoder_begin(&d, &l.of), BOIL_OK);
        const boil_plan_dip *dip = boil_plan_decode(&d, &o)->dips;
        double later_s = i == 1 ? 60 : 50, least_later_s = i == 1 ? 50 : later_s;
        assert_close(dip->stay_least_s, 600 + later_s + 300 + (i == 2 ? 7 : 0), 1e-12, 0);
        assert_close(dip->stay_most_s, 600 + least_later_s + 400 + (i == 2 ? 11 : 0), 1e-12, 0);
        assert_close(dip->mass_kg, 40, 1e-12, 0);
        assert_close(dip->recovery_s, (i == 1 ? 9e6 : 8e6) / 40e3 + (i == 2 ? 5 : 0), 1e-12, 0);
        boil_plan_decoder_free(&d);
    }
    boil_plan_lessons_free(&known);
    boil_plan_order_free(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_dip_waits_for_water_that_makes_room), cmocka_unit_test(what_no_water_mends_is_marked),
        cmocka_unit_test(water_missing_weakens_the_bath),        cmocka_unit_test(a_dip_waits_for_water_that_warms),
        cmocka_unit_test(in_a_shared_dip_parts_are_hot_later),
    };
    return cmocka_run_group_tests_name("decoder_sums", tests, NULL, NULL);
}
