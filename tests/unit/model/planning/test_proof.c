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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_boil_away_for_too_long_is_found),
        cmocka_unit_test(a_dip_that_waits_is_late),
        cmocka_unit_test(a_stay_too_short_or_too_long_is_found),
        cmocka_unit_test(a_part_out_after_its_due_time_is_found),
    };
    return cmocka_run_group_tests_name("proof", tests, NULL, NULL);
}
