/* A shift planned on: what a reading says of the water, against a run that lost it, and when what hangs is lifted. */
#include "support/close.h"

#include "plan/decoder.h"
#include "plan/parts.h"
#include "planning/probe.h"
#include "planning/resume.h"
#include "simulate/run.h"
#include "support/cases.h"

static boil_plant at_285(void)
{
    boil_plant p = planned_trough(97e3, 2);
    p.limits.boiling_point_high_K = 419;
    return p;
}

static boil_load plate(void)
{
    boil_load l = boil_load_default();
    l.mass_kg = 30;
    l.size_m = 0.00635;
    l.temperature_K = 297;
    return l;
}

/* A planning of one job, after what `p` was read as. */
static void begin(const boil_plant *p, boil_plan_job *job, boil_plan_problem *of, boil_planning *g)
{
    boil_run_options o = boil_run_options_default();
    *job = (boil_plan_job){.load = plate(), .least_s = 900, .most_s = 1500, .due_s = HUGE_VAL};
    of->jobs = job;
    of->jobs_count = 1;
    of->positions = 2;
    of->hoist_s = of->settle_s = 60;
    of->end_s = HUGE_VAL;
    of->water_kg_s = 0.05;
    assert_int_equal(boil_planning_begin(p, of, &o, g), BOIL_OK);
}

/* By the run's own balance of water: what went off in an hour of boil is what the reading at its end says is missing, the level having
   fallen by as much; and the band's room is smaller by it. */
static void a_reading_says_how_much_water_is_missing(void **state)
{
    (void)state;
    boil_plant p = at_285(), later = p;
    boil_run_options o = boil_run_options_default();
    boil_schedule s;
    boil_history h;
    boil_plan_job job;
    boil_plan_problem of = {.jobs_count = 0};
    boil_planning fresh, read;
    double warm_s;
    boil_schedule_init(&s, 3600);
    assert_int_equal(boil_run(&p, &s, &o, &h), BOIL_OK);
    later.charge.value = h.summary.boiling_point_end_K;
    later.tank.level_m = h.summary.still_level_end_m;
    assert_true(later.charge.value > p.charge.value + 4);
    begin(&p, &job, &of, &fresh);
    begin(&later, &job, &of, &read);
    assert_int_equal(boil_plan_resume(&read, &(boil_plan_under_way){.set_K = p.charge.value}, NULL, &warm_s), BOIL_OK);
    assert_close(read.bath.missing_kg, h.summary.vented_total_kg, 0.01, 0);
    assert_close(read.bath.strongest_kg, fresh.bath.strongest_kg, 0.01, 0); /* counted from where none is missing */
    assert_true(warm_s == 0 && read.bath.owed_kg == 0);
    boil_initial_state full, now;
    assert_int_equal(boil_plant_initial(&p, &full), BOIL_OK);
    later.tank.level_m -= 0.01; /* a centimetre of bath liquid went out with parts */
    assert_int_equal(boil_plant_initial(&later, &now), BOIL_OK);
    const boil_plan_under_way w = {.set_K = p.charge.value, .salts_kg = boil_mixture_salts(&full.mixture)};
    assert_int_equal(boil_plan_resume(&read, &w, NULL, &warm_s), BOIL_OK);
    assert_close(read.bath.owed_kg, 0.01 / later.tank.level_m * boil_mixture_salts(&now.mixture), 0.05, 0);
    boil_planning_free(&fresh);
    boil_planning_free(&read);
    boil_history_free(&h);
    boil_schedule_free(&s);
}

/* One hoist: two lifts that are wanted at once are a move apart, the earlier first, and none is in a break; a load of ours waits for a
   place and for what hangs to be warm. By H3 and H4 of plan/plan.h. */
static void what_hangs_keeps_its_place_until_its_lift(void **state)
{
    (void)state;
    static const boil_break breaks[] = {{300, 500}};
    boil_plant p = at_285();
    boil_plan_job job;
    boil_plan_problem of = {.breaks = breaks, .breaks_count = 1};
    boil_planning g;
    boil_plan_resumed out[2];
    boil_plan_hanging_dip lifts[2];
    boil_plan_decoder d;
    boil_plan_order order;
    double warm_s;
    const boil_plan_hung hung[] = {{plate(), 900, 1500, -600, (double)NAN, 0}, {plate(), 900, 1500, -30, 290, 1}};
    begin(&p, &job, &of, &g);
    const boil_plan_under_way w = {.hung = hung, .count = 2, .dips = 2, .set_K = p.charge.value};
    assert_int_equal(boil_plan_resume(&g, &w, out, &warm_s), BOIL_OK);
    assert_close(out[1].dip.leaves_s, 500, 0, 1e-6);          /* its lift would last into the break */
    assert_close(out[0].dip.leaves_s, 560, 0, 1e-6);          /* which the other would as well */
    assert_true(out[0].most_s > 900 && out[0].most_s < 1200); /* 25 min since it was hot, which took some minutes */
    assert_true(warm_s > 0 && warm_s < 300);
    for (int i = 0; i < 2; i++)
        lifts[i] = out[i].dip;
    of.hanging = lifts;
    of.hanging_count = 2;
    boil_plan_case c = boil_planning_case(&g);
    assert_int_equal(boil_plan_order_begin(&order, 1), BOIL_OK);
    assert_int_equal(boil_plan_decoder_begin(&d, &c), BOIL_OK);
    const boil_plan_timetable *t = boil_plan_decode(&d, &order);
    double first_s = fmin(lifts[0].leaves_s, lifts[1].leaves_s);
    assert_true(t->dips[0].enters_s >= first_s + 60 && t->dips[0].reason != BOIL_PLAN_FIRST);
    assert_true(t->value.of[BOIL_PLAN_LAST_OUT_S] >= fmax(lifts[0].leaves_s, lifts[1].leaves_s));
    boil_plan_decoder_free(&d);
    boil_plan_order_free(&order);
    boil_planning_free(&g);
}

/* By the run of each part alone: a dip is lifted as the last of its baskets has its least, and has had its most as the first has it; the next
   load may go in once what is left of their heat takes the boil a second to come back from. */
static void baskets_of_a_dip_wait_for_each_other(void **state)
{
    (void)state;
    const boil_run_options o = boil_run_options_default();
    boil_plant p = at_285();
    boil_plan_job job;
    boil_plan_problem of = {.jobs_count = 0};
    boil_planning g;
    boil_plan_resumed out[1];
    boil_plan_hanging_dip lifts[1];
    const boil_plan_hung hung[] = {{plate(), 900, 1500, -30, (double)NAN, 0}, {plate(), 600, 1000, -200, (double)NAN, 0}};
    const boil_plan_under_way w = {.hung = hung, .count = 2, .dips = 1, .set_K = p.charge.value};
    begin(&p, &job, &of, &g);
    boil_plan_part part = {.of = 1, .load = plate()};
    boil_plan_part_estimate(&part, g.bath_K);
    assert_int_equal(boil_plan_probe_part(&p, &g.bath, &o, &part), BOIL_OK);
    job.earliest_s = 10;
    assert_int_equal(boil_plan_take_up(&g, &w, &of, &job, out, lifts), BOIL_OK);
    assert_close(lifts[0].leaves_s, ceil(part.hot_s - 30 + 900), 0, 1e-9);
    assert_close(out[0].most_s, part.hot_s - 200 + 1000, 1e-9, 0);
    assert_true(lifts[0].number == 1 && of.hanging == lifts && of.hanging_count == 1);
    double warm_s = part.lag_s * log(part.heat_J / g.bath.quiet_W) - 30;
    assert_true(warm_s > 20);
    assert_close(job.earliest_s, ceil(warm_s), 0, 1e-9);
    job.earliest_s = 5000;
    assert_int_equal(boil_plan_take_up(&g, &w, &of, &job, out, lifts), BOIL_OK);
    assert_true(job.earliest_s == 5000 && g.bath.ready_s == 0);
    boil_planning_free(&g);
}

/* A bath that does not boil: minutes count from its boil, and what hangs there cold makes that come later. */
static void a_quiet_bath_is_heated_first(void **state)
{
    (void)state;
    boil_plant p = at_285();
    boil_plan_job job;
    boil_plan_problem of = {.jobs_count = 0};
    boil_planning g;
    boil_plan_resumed out[1];
    double warm_s;
    const boil_plan_hung hung = {plate(), 900, 1500, -10, (double)NAN, 0};
    p.charge.temperature_K = 405;
    begin(&p, &job, &of, &g);
    double empty_s = g.bath.ready_s;
    assert_true(empty_s > 300);
    const boil_plan_under_way w = {.hung = &hung, .count = 1, .dips = 1, .set_K = p.charge.value};
    assert_int_equal(boil_plan_resume(&g, &w, out, &warm_s), BOIL_OK);
    boil_run_options o = boil_run_options_default();
    boil_plan_part part = {.of = 1, .load = plate()};
    boil_plan_part_estimate(&part, g.bath_K);
    assert_int_equal(boil_plan_probe_part(&p, &g.bath, &o, &part), BOIL_OK);
    assert_close(g.bath.ready_s, empty_s + part.heat_J * exp(-10 / part.lag_s) / g.bath.quiet_W, 1e-9, 0);
    assert_true(g.bath.ready_s > empty_s + 20);
    assert_close(out[0].dip.leaves_s, ceil(empty_s + 900), 0, 1e-9); /* it is hot by then */
    assert_close(out[0].most_s, empty_s + 1500, 1e-9, 0);
    boil_planning_free(&g);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_reading_says_how_much_water_is_missing),
        cmocka_unit_test(what_hangs_keeps_its_place_until_its_lift),
        cmocka_unit_test(baskets_of_a_dip_wait_for_each_other),
        cmocka_unit_test(a_quiet_bath_is_heated_first),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
