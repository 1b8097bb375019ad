/* When salts are put back, by sums done by hand: 50 g/s are sifted in once more than 4 kg are gone, and take as much water along. */
#include <math.h>

#include "plan/pours.h"
#include "support/close.h"

enum { DIPS = 2 };

typedef struct {
    boil_plan_problem problem;
    boil_plan_bath bath;
    boil_break breaks[1];
    boil_plan_case of;
    boil_plan_dip dips[DIPS];
    boil_plan_calm calm;
} made;

/* The first dip's boil is back at 100 s; it is out at 150 s, and 5 kg with it. The second is out at 3000 s, and 6 kg. */
static void set_up(made *m)
{
    *m = (made){.problem = {.positions = 2, .hoist_s = 60, .end_s = HUGE_VAL}};
    m->bath = (boil_plan_bath){.steady_s = 30,
                               .guard_s = 100,
                               .strongest_kg = 50,
                               .weakest_kg = 20,
                               .salt_fraction = 0.5,
                               .owes_kg = 4,
                               .sift_kg_s = 0.05};
    m->of = (boil_plan_case){&m->problem, &m->bath, NULL, 0, NULL};
    m->dips[0] = (boil_plan_dip){.enters_s = 60, .back_s = 100, .leaves_s = 150, .drag_kg = 5};
    m->dips[1] = (boil_plan_dip){.enters_s = 2000, .back_s = 2100, .leaves_s = 3000, .drag_kg = 6};
    m->calm = (boil_plan_calm){100, 0, m->dips, 1};
}

static void expect(const boil_plan_pour *s, double start_s, double over_s, double kg)
{
    assert_close(s->mass_kg, kg, 1e-12, 1e-12);
    if (!(kg > 0))
        return;
    assert_close(s->start_s, start_s, 0, 1e-9);
    assert_close(s->over_s, over_s, 0, 1e-9);
}

static void expect_before(const made *m, double until_s, double start_s, double over_s, double kg)
{
    boil_plan_pour s = boil_plan_sifting(&m->of, &m->calm, until_s);
    expect(&s, start_s, over_s, kg);
}

/* To the end of the window, 100 s before the load; as many as it has time for, from 30 s after the boil on, and no less than 2 kg. */
static void a_window_takes_what_it_has_time_for(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    expect_before(&m, 2000, 1800, 100, 5);
    expect_before(&m, 330, 130, 100, 5);
    expect_before(&m, 300, 130, 70, 3.5);
    expect_before(&m, 289, 0, 0, 0); /* nobody begins for less than a minute */
    m.bath.sift_kg_s = 0.02;
    expect_before(&m, 330, 130, 100, 2);
    expect_before(&m, 329, 0, 0, 0); /* no dipstick tells 1.98 kg */
    m.bath.sift_kg_s = 0;
    expect_before(&m, 2000, 0, 0, 0);
}

/* None before the first has carried its own out, nor where no more than the quarter inch is gone, or it was put back before. */
static void what_is_gone_is_put_back_once(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    m.dips[0].leaves_s = 1901;
    expect_before(&m, 2000, 0, 0, 0);
    m.dips[0].leaves_s = 1900; /* lifted while they are sifted in */
    expect_before(&m, 2000, 1800, 100, 5);
    m.bath.owes_kg = 5;
    expect_before(&m, 2000, 0, 0, 0);
    m.bath.owed_kg = 1; /* from before the start */
    expect_before(&m, 2000, 1780, 120, 6);
    m.dips[0].salts.mass_kg = 1;
    expect_before(&m, 2000, 0, 0, 0);
}

/* Of the room for 50 kg of missing water the boil takes 47 until the load: 3 kg of salts take the rest. A valve brings their water. */
static void the_band_bears_them(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    m.bath.boils_off_kg_s = 0.01;
    m.calm.missing_kg = 28;
    expect_before(&m, 2000, 1840, 60, 3);
    m.calm.missing_kg = 29.5;
    expect_before(&m, 2000, 0, 0, 0);
    m.bath.valve = true;
    expect_before(&m, 2000, 1800, 100, 5);
}

/* Behind the last, one move after it is out, all 11 kg; not across a break, and by the end of the shift or not at all. Water may come ahead
   for as many as the band's lower end allows. */
static void the_rest_follows_behind_the_last(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    const boil_plan_timetable t = {.dips = m.dips, .dips_count = DIPS};
    boil_plan_pour s = boil_plan_last_sifting(&m.of, &t, 2200);
    expect(&s, 3060, 220, 11);
    s = boil_plan_last_sifting(&m.of, &t, 4000.5);
    expect(&s, 4001, 220, 11);
    m.bath.weakest_kg = 7;
    s = boil_plan_last_sifting(&m.of, &t, 2200);
    expect(&s, 3060, 140, 7);
    m.breaks[0] = (boil_break){3199, 3500};
    m.problem.breaks = m.breaks;
    m.problem.breaks_count = 1;
    s = boil_plan_last_sifting(&m.of, &t, 2200);
    expect(&s, 3500, 140, 7);
    m.problem.end_s = 3640;
    s = boil_plan_last_sifting(&m.of, &t, 2200);
    expect(&s, 3500, 140, 7);
    m.problem.end_s = 3639;
    s = boil_plan_last_sifting(&m.of, &t, 2200);
    expect(&s, 0, 0, 0);
}

/* Half and half: as much water as salts, be they a pound or less; what is put in too much takes none. */
static void water_belongs_to_salts(void **state)
{
    (void)state;
    made m;
    set_up(&m);
    assert_close(boil_plan_water_with(&m.bath, 0.25), 0.25, 1e-12, 0);
    assert_close(boil_plan_water_with(&m.bath, 7), 7, 1e-12, 0);
    m.bath.salt_fraction = 0.75;
    assert_close(boil_plan_water_with(&m.bath, 6), 2, 1e-12, 0);
    assert_true(boil_plan_water_with(&m.bath, -3) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(water_belongs_to_salts),           cmocka_unit_test(a_window_takes_what_it_has_time_for),
        cmocka_unit_test(what_is_gone_is_put_back_once),    cmocka_unit_test(the_band_bears_them),
        cmocka_unit_test(the_rest_follows_behind_the_last),
    };
    return cmocka_run_group_tests_name("salts", tests, NULL, NULL);
}
