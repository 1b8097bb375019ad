/* A timetable that holds, and what is found broken once one thing in it is made wrong: against the runs themselves. */
#include "support/close.h"

#include <string.h>

#include "plan/decoder.h"
#include "planning/proof.h"
#include "support/cases.h"

enum { DIPS = 2 };

typedef struct {
    boil_plant plant;
    boil_plan_job jobs[DIPS];
    boil_plan_problem problem;
    boil_planning planning;
    boil_plan_case of;
    boil_plan_order order;
    boil_plan_decoder decoder;
    boil_plan_dip kept[DIPS];
} planned;

/* A plate a dip, in the list's order. */
static void begin(planned *p)
{
    boil_run_options o = boil_run_options_default();
    *p = (planned){.plant = planned_trough(97e3, 2)};
    for (size_t i = 0; i < DIPS; i++) {
        p->jobs[i] = (boil_plan_job){.load = boil_load_default(), .least_s = 600, .most_s = 900, .due_s = HUGE_VAL};
        p->jobs[i].load.mass_kg = 30;
        p->jobs[i].load.size_m = 0.00635;
    }
    p->problem = (boil_plan_problem){
        .jobs = p->jobs, .jobs_count = DIPS, .positions = 2, .hoist_s = 60, .settle_s = 60, .end_s = HUGE_VAL};
    assert_int_equal(boil_planning_begin(&p->plant, &p->problem, &o, &p->planning), BOIL_OK);
    p->of = boil_planning_case(&p->planning);
    assert_int_equal(boil_plan_order_begin(&p->order, DIPS), BOIL_OK);
    assert_int_equal(boil_plan_decoder_begin(&p->decoder, &p->of), BOIL_OK);
    memcpy(p->kept, boil_plan_decode(&p->decoder, &p->order)->dips, sizeof p->kept);
}

static void end(planned *p)
{
    boil_plan_decoder_free(&p->decoder);
    boil_plan_order_free(&p->order);
    boil_planning_free(&p->planning);
}

static boil_plan_proof prove(planned *p)
{
    boil_plan_proof proof;
    assert_int_equal(boil_plan_prove(&p->planning, &p->decoder.table, &proof), BOIL_OK);
    return proof;
}

static const boil_plan_break *broken(const boil_plan_proof *proof, boil_plan_breaks what, size_t dip)
{
    for (size_t i = 0; i < proof->broken_count && i < BOIL_PLAN_BREAKS_KEPT; i++)
        if (proof->broken[i].what == what && proof->broken[i].dip == dip)
            return &proof->broken[i];
    return NULL;
}

/* H1: the gravest run's own absence of the boil is no longer than it may be, or a dip breaks the limit. */
static void a_boil_away_for_too_long_is_found(void **state)
{
    (void)state;
    planned p;
    begin(&p);
    boil_plan_proof proof = prove(&p);
    assert_true(boil_plan_proof_holds(&proof));
    const double gravest_s[DIPS] = {proof.seen[0].gravest_s, proof.seen[1].gravest_s};
    boil_plan_proof_free(&proof);
    for (size_t k = 0; k < DIPS; k++) {
        const double other_s = gravest_s[1 - k];
        assert_true(gravest_s[k] > 15 && gravest_s[k] <= p.plant.limits.recovery_s);
        p.planning.bath.limit_s = gravest_s[k]; /* just as long it may be */
        proof = prove(&p);
        assert_null(broken(&proof, BOIL_PLAN_BREAKS_RECOVERY, k));
        assert_int_equal(broken(&proof, BOIL_PLAN_BREAKS_RECOVERY, 1 - k) != NULL, other_s > gravest_s[k]);
        boil_plan_proof_free(&proof);
        p.planning.bath.limit_s = 0.99 * gravest_s[k];
        proof = prove(&p);
        const boil_plan_break *b = broken(&proof, BOIL_PLAN_BREAKS_RECOVERY, k);
        assert_true(b != NULL && b->value == gravest_s[k] && b->limit == p.planning.bath.limit_s);
        assert_false(boil_plan_proof_holds(&proof));
        boil_plan_proof_free(&proof);
    }
    end(&p);
}

/* A dip that is to go in before the boil is back has to wait for it. */
static void a_dip_that_waits_is_late(void **state)
{
    (void)state;
    planned p;
    begin(&p);
    boil_plan_dip *second = &p.decoder.table.dips[1];
    second->enters_s = p.kept[0].enters_s + 25;
    second->leaves_s = second->enters_s + second->stay_least_s;
    boil_plan_proof proof = prove(&p);
    const boil_plan_break *b = broken(&proof, BOIL_PLAN_BREAKS_LATE, 1);
    assert_non_null(b);
    assert_true(b->value >= proof.seen[0].gravest_s - 25 && b->value == proof.seen[1].late_s);
    assert_null(broken(&proof, BOIL_PLAN_BREAKS_LATE, 0));
    boil_plan_proof_free(&proof);
    end(&p);
}

/* Lifted a minute before the job has had its least, or after its most. */
static void a_stay_too_short_or_too_long_is_found(void **state)
{
    (void)state;
    planned p;
    begin(&p);
    for (int late = 0; late < 2; late++) {
        boil_plan_dip *first = &p.decoder.table.dips[0];
        first->leaves_s = p.kept[0].leaves_s + (late ? 300 + 60 : -60);
        boil_plan_proof proof = prove(&p);
        const boil_plan_break *b = broken(&proof, late ? BOIL_PLAN_BREAKS_LONG : BOIL_PLAN_BREAKS_SHORT, 0);
        assert_non_null(b);
        assert_close(b->value, late ? 960 : 540, 0, 30); /* hot through as the likely run has it */
        assert_close(b->limit, late ? 900 : 600, 1e-12, 0);
        boil_plan_proof_free(&proof);
    }
    end(&p);
}

/* Of two parts in one dip the second must be out by its due time, and not a second later. */
static void a_part_out_after_its_due_time_is_found(void **state)
{
    (void)state;
    planned p;
    begin(&p);
    boil_plan_order_join(&p.order, 1, 0, 0);
    const boil_plan_dip *both = boil_plan_decode(&p.decoder, &p.order)->dips;
    assert_int_equal(p.decoder.table.dips_count, 1);
    assert_int_equal(both->count, 2);
    const size_t second = p.decoder.table.parts[both->first + 1]; /* a job a part */
    p.jobs[second].priority = BOIL_PLAN_MUST;
    for (int late = 0; late < 2; late++) {
        p.jobs[second].due_s = both->leaves_s - late;
        boil_plan_proof proof = prove(&p);
        const boil_plan_break *b = broken(&proof, BOIL_PLAN_BREAKS_DUE, 0);
        assert_int_equal(b != NULL, late);
        if (late) {
            assert_int_equal(b->part, second);
            assert_close(b->value - b->limit, 1, 1e-9, 0);
        }
        boil_plan_proof_free(&proof);
    }
    end(&p);
}

/* What the decoder marked is broken, with its numbers; and a shift that ends a second before the last is out. */
static void what_was_marked_is_found(void **state)
{
    (void)state;
    planned p;
    begin(&p);
    boil_plan_dip *dips = p.decoder.table.dips;
    const double last_s = p.decoder.table.value.of[BOIL_PLAN_LAST_OUT_S];
    p.problem.end_s = last_s;
    boil_plan_proof proof = prove(&p);
    assert_true(boil_plan_proof_holds(&proof));
    boil_plan_proof_free(&proof);
    p.problem.end_s = last_s - 1;
    dips[0].unplaced = dips[1].too_cold = dips[1].too_strong = true;
    dips[0].mass_kg = 31;
    p.planning.bath.most_kg = dips[1].mass_kg = 30.5;
    proof = prove(&p);
    assert_true(broken(&proof, BOIL_PLAN_BREAKS_PLACING, 0) != NULL && broken(&proof, BOIL_PLAN_BREAKS_PLACING, 1) == NULL);
    assert_true(broken(&proof, BOIL_PLAN_BREAKS_HEAT, 1) != NULL && broken(&proof, BOIL_PLAN_BREAKS_HEAT, 0) == NULL);
    assert_true(broken(&proof, BOIL_PLAN_BREAKS_WATER, 1) != NULL && broken(&proof, BOIL_PLAN_BREAKS_WATER, 0) == NULL);
    const boil_plan_break *heavy = broken(&proof, BOIL_PLAN_BREAKS_MASS, 0), *late = broken(&proof, BOIL_PLAN_BREAKS_END, 0);
    assert_true(heavy != NULL && heavy->value == 31 && heavy->limit == 30.5);
    assert_null(broken(&proof, BOIL_PLAN_BREAKS_MASS, 1));
    assert_true(late != NULL && late->value == last_s && late->limit == last_s - 1);
    boil_plan_proof_free(&proof);
    end(&p);
}

/* Against a run of the same schedule by the likely law; the boil-off by definition: what went off beyond the quiet times, over the rest. */
static void a_proof_sums_up_the_likely_run(void **state)
{
    (void)state;
    planned p;
    boil_history h;
    begin(&p);
    p.planning.bath.limit_s = p.plant.limits.recovery_s;
    boil_plan_proof proof = prove(&p);
    assert_int_equal(boil_run(&p.plant, &proof.carried.schedule, &p.planning.options, &h), BOIL_OK);
    const boil_plan_dip *dips = proof.table.dips;
    double quiet_s = dips[0].recovery_s + dips[1].recovery_s;
    double gone_kg = h.summary.vented_total_kg - h.summary.rinse_added_kg - p.planning.bath.dries_kg_s * quiet_s;
    assert_close(proof.boils_off_kg_s, gone_kg / (h.end_s - quiet_s), 1e-6, 0);
    assert_close(proof.fuel_J, h.summary.input_total_J, 1e-6, 0);
    assert_close(proof.boils_end_K, h.summary.boiling_point_end_K, 1e-6, 0);
    assert_close(proof.drag_out_kg, h.summary.drag_out_kg, 1e-6, 0);
    assert_close(proof.drag_out_salts_kg, h.summary.drag_out_salts_kg, 1e-6, 0);
    double area_m2 = p.plant.tank.length_m * p.plant.tank.width_m;
    assert_close(proof.drag_out_m, proof.drag_out_kg / (p.planning.bath.density_kg_m3 * area_m2), 1e-9, 0);
    assert_true(proof.freeboard_m <= h.summary.freeboard_min_m.value && proof.freeboard_m > 0.1);
    for (size_t k = 0; k < DIPS; k++) {
        const boil_load_result *r = &h.loads[k];
        assert_close(proof.seen[k].likely_s, r->recovery_s, 1e-6, 0);
        assert_close(proof.seen[k].stay_least_s, r->hot_s + 600, 1e-6, 0);
        assert_close(proof.seen[k].stay_most_s, r->hot_s + 900, 1e-6, 0);
        assert_true(proof.seen[k].gravest_s >= proof.seen[k].likely_s && proof.seen[k].late_s < 1);
    }
    boil_history_free(&h);
    boil_plan_proof_free(&proof);
    end(&p);
}

/* Fewer breaks first, then the better timetable; one that was never made is worse than any. */
static void proofs_are_held_against_each_other(void **state)
{
    (void)state;
    boil_plan_dip dip = {.count = 1};
    boil_plan_proof none = {.broken_count = 0}, x = {.broken_count = 1, .table = {.dips = &dip}}, y = x;
    assert_true(boil_plan_proof_better(&x, &none) && !boil_plan_proof_better(&none, &x));
    assert_false(boil_plan_proof_better(&x, &y));
    y.table.value.of[BOIL_PLAN_LAST_OUT_S] = 1;
    assert_true(boil_plan_proof_better(&x, &y) && !boil_plan_proof_better(&y, &x));
    y.broken_count = 0;
    assert_true(boil_plan_proof_better(&y, &x) && !boil_plan_proof_better(&x, &y));
    assert_true(boil_plan_proof_holds(&y) && !boil_plan_proof_holds(&x) && !boil_plan_proof_holds(&none));
}

/* From the least to the most minutes, and half a second for rounding. */
static void minutes_hold_within_half_a_second(void **state)
{
    (void)state;
    const boil_plan_job j = {.least_s = 600, .most_s = 900};
    assert_true(boil_plan_minutes_hold(&j, 599.6) && boil_plan_minutes_hold(&j, 900.4));
    assert_false(boil_plan_minutes_hold(&j, 599.4) || boil_plan_minutes_hold(&j, 900.6));
    assert_false(boil_plan_minutes_hold(&j, (double)NAN));
    assert_close(boil_plan_hot_for_s(&(boil_load_result){.time_s = 100, .hot_s = 200, .lifted_s = 1000}), 700, 1e-12, 0);
    assert_true(boil_plan_hot_for_s(&(boil_load_result){.time_s = 100, .hot_s = (double)NAN, .lifted_s = 1000}) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_boil_away_for_too_long_is_found),
        cmocka_unit_test(a_dip_that_waits_is_late),
        cmocka_unit_test(a_stay_too_short_or_too_long_is_found),
        cmocka_unit_test(a_part_out_after_its_due_time_is_found),
        cmocka_unit_test(what_was_marked_is_found),
        cmocka_unit_test(a_proof_sums_up_the_likely_run),
        cmocka_unit_test(proofs_are_held_against_each_other),
        cmocka_unit_test(minutes_hold_within_half_a_second),
    };
    return cmocka_run_group_tests_name("proof", tests, NULL, NULL);
}
