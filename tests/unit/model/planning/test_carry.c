/* A timetable as acts of a schedule: each of its numbers is found again where it belongs. */
#include "planning/carry.h"
#include "support/close.h"

/* Three dips, the second of two baskets, which finds the place of what hung there at the start; pours before and behind. More of each lies
   behind what counts. */
typedef struct {
    boil_plan_job jobs[4];
    boil_plan_part parts[4];
    boil_break breaks[1];
    boil_plan_hanging_dip hanging[2];
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_plan_case of;
    boil_plan_dip dips[4];
    size_t in[4];
    boil_plan_pour pours[4];
    boil_plan_timetable table;
    boil_plan_carried out;
} carried;

static void begin(carried *c)
{
    *c = (carried){.breaks = {{5000, 5600}}, .hanging = {{900, 1}, {90000, 2}}, .in = {2, 0, 3, 1}};
    for (size_t i = 0; i < 4; i++) {
        c->jobs[i] = (boil_plan_job){.load = boil_load_default()};
        c->jobs[i].load.mass_kg = 10 + (double)i;
        c->parts[i] = (boil_plan_part){.job = i, .of = 1, .load = c->jobs[i].load};
    }
    c->problem = (boil_plan_problem){.jobs = c->jobs,
                                     .jobs_count = 4,
                                     .positions = 2,
                                     .hoist_s = 60,
                                     .breaks = c->breaks,
                                     .breaks_count = 1,
                                     .hanging = c->hanging,
                                     .hanging_count = 1};
    c->of = (boil_plan_case){&c->problem, &c->bath, c->parts, 4, NULL};
    c->dips[0] = (boil_plan_dip){.first = 0, .count = 1, .enters_s = 300, .leaves_s = 1300, .back_s = 390};
    c->dips[1] = (boil_plan_dip){.first = 1, .count = 2, .enters_s = 960, .leaves_s = 2000, .back_s = 1050};
    c->dips[2] = (boil_plan_dip){.first = 3, .count = 1, .enters_s = 1360, .leaves_s = 2400, .back_s = 1450};
    c->dips[3] = (boil_plan_dip){.first = 0, .count = 1, .enters_s = 70000, .leaves_s = 80000, .back_s = 90000};
    c->pours[0] = (boil_plan_pour){100, 120, 6};
    c->pours[1] = (boil_plan_pour){500, 300, 12};
    c->pours[2] = (boil_plan_pour){2100, 400, 8};
    c->pours[3] = (boil_plan_pour){90000, 400, 8};
    c->table = (boil_plan_timetable){.dips = c->dips, .dips_count = 3, .parts = c->in, .pours = c->pours, .pours_count = 3};
}

static void carry(carried *c)
{
    boil_plant p = boil_plant_default();
    p.ambient.temperature_K = 290;
    assert_int_equal(boil_plan_carry(&c->of, &c->table, &p, &c->out), BOIL_OK);
}

/* A basket goes in as the boil is steady and hangs until its dip leaves; it is in the first place that is empty, moves and all. */
static void dips_are_loads_in_their_places(void **state)
{
    (void)state;
    static const struct {
        size_t action, dip, part;
        double enters_s, hangs_s;
        int position;
    } of[] = {{1, 0, 2, 300, 1000, 2}, {3, 1, 0, 960, 1040, 1}, {4, 1, 3, 960, 1040, 1}, {5, 2, 1, 1360, 1040, 2}};
    carried c;
    begin(&c);
    carry(&c);
    assert_int_equal(c.out.schedule.count, 7);
    for (size_t i = 0; i < 4; i++) {
        const boil_action *a = &c.out.schedule.actions[of[i].action];
        const boil_plan_act *act = &c.out.acts[of[i].action];
        assert_true(!act->is_pour && act->dip == of[i].dip && act->part == of[i].part);
        assert_true(a->kind == BOIL_ACTION_LOAD && a->time_s == of[i].enters_s && a->wait.state == BOIL_WAIT_BOILING);
        assert_true(a->position == of[i].position && a->is.load.immersed_s == of[i].hangs_s);
        assert_true(a->is.load.mass_kg == 10 + (double)of[i].part);
    }
    for (size_t i = 0; i < 7; i++)
        assert_int_equal(c.out.schedule.actions[i].line, i + 1);
    boil_plan_carried_free(&c.out);
}

/* A place is empty once the basket has been carried off, a move after its lift; where none is, none is said. */
static void a_place_is_empty_after_the_move(void **state)
{
    (void)state;
    carried c;
    begin(&c);
    c.problem.positions = 3;
    c.dips[1].enters_s = 959;
    c.dips[2].enters_s = 1359;
    carry(&c);
    assert_true(c.out.schedule.actions[1].position == 2 && c.out.schedule.actions[3].position == 3);
    assert_int_equal(c.out.schedule.actions[5].position, 1);
    boil_plan_carried_free(&c.out);
    c.hanging[0].leaves_s = 1500;
    carry(&c);
    assert_int_equal(c.out.schedule.actions[5].position, 0);
    boil_plan_carried_free(&c.out);
}

/* A pour runs while it boils, from its time to its end, and no later. */
static void pours_are_water_while_it_boils(void **state)
{
    (void)state;
    static const size_t at[] = {0, 2, 6};
    carried c;
    begin(&c);
    carry(&c);
    for (size_t i = 0; i < 3; i++) {
        const boil_action *a = &c.out.schedule.actions[at[i]];
        const boil_plan_pour *w = &c.pours[i];
        assert_true(c.out.acts[at[i]].is_pour && c.out.acts[at[i]].pour == i);
        assert_true(a->kind == BOIL_ACTION_WATER && a->time_s == w->start_s && a->wait.state == BOIL_WAIT_BOILING);
        assert_true(a->pour.while_boiling && a->pour.no_later_s == w->start_s + w->over_s);
        assert_close(a->is.water.mass_kg, w->mass_kg, 1e-12, 0);
        assert_close(a->is.water.over_s, w->over_s, 1e-9, 0);
        assert_close(a->is.water.temperature_K, 290, 1e-12, 0);
    }
    boil_plan_carried_free(&c.out);
}

/* Salts likewise, of the bath's own blend, as warm as the room, after the water of the same gap and before the next dip; and the run goes on
   behind them. */
static void siftings_are_salts_while_it_boils(void **state)
{
    (void)state;
    boil_plan_pour salts[2] = {{850, 80, 3}, {2600, 200, 7}};
    carried c;
    begin(&c);
    c.table.salts = salts;
    c.table.salts_count = 2;
    carry(&c);
    static const size_t at[] = {3, 8};
    assert_int_equal(c.out.schedule.count, 9);
    for (size_t i = 0; i < 2; i++) {
        const boil_action *a = &c.out.schedule.actions[at[i]];
        const boil_plan_act *act = &c.out.acts[at[i]];
        assert_true(act->is_salts && !act->is_pour && act->pour == i);
        assert_true(a->kind == BOIL_ACTION_SALTS && a->time_s == salts[i].start_s && a->wait.state == BOIL_WAIT_BOILING);
        assert_true(a->pour.while_boiling && a->pour.no_later_s == salts[i].start_s + salts[i].over_s);
        assert_close(a->is.salts.mass_kg, salts[i].mass_kg, 1e-12, 0);
        assert_close(a->is.salts.over_s, salts[i].over_s, 1e-9, 0);
        assert_close(a->is.salts.temperature_K, 290, 1e-12, 0);
    }
    assert_close(c.out.schedule.duration_s, 2800 + 300, 1e-12, 0);
    boil_plan_carried_free(&c.out);
}

/* Until five minutes after whatever ends last: a dip, a boil, what hung there, a pour. */
static void the_run_ends_behind_the_last(void **state)
{
    (void)state;
    carried c;
    begin(&c);
    carry(&c);
    assert_close(c.out.schedule.duration_s, 2500 + 300, 1e-12, 0);
    assert_true(c.out.schedule.breaks_count == 1 && c.out.schedule.breaks[0].from_s == 5000 &&
                c.out.schedule.breaks[0].to_s == 5600);
    boil_plan_carried_free(&c.out);
    c.hanging[0].leaves_s = 7000;
    c.problem.positions = 3;
    carry(&c);
    assert_close(c.out.schedule.duration_s, 7300, 1e-12, 0);
    boil_plan_carried_free(&c.out);
    c.dips[1].back_s = 8000;
    carry(&c);
    assert_close(c.out.schedule.duration_s, 8300, 1e-12, 0);
    boil_plan_carried_free(&c.out);
    c.dips[1].leaves_s = 9000;
    carry(&c);
    assert_close(c.out.schedule.duration_s, 9300, 1e-12, 0);
    boil_plan_carried_free(&c.out);
    c.dips[0].leaves_s = 10000;
    carry(&c);
    assert_close(c.out.schedule.duration_s, 10300, 1e-12, 0);
    boil_plan_carried_free(&c.out);
    c.pours[0].over_s = 11000;
    carry(&c);
    assert_close(c.out.schedule.duration_s, 11400, 1e-12, 0);
    boil_plan_carried_free(&c.out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(dips_are_loads_in_their_places), cmocka_unit_test(a_place_is_empty_after_the_move),
        cmocka_unit_test(pours_are_water_while_it_boils), cmocka_unit_test(siftings_are_salts_while_it_boils),
        cmocka_unit_test(the_run_ends_behind_the_last)};
    return cmocka_run_group_tests_name("carry", tests, NULL, NULL);
}
