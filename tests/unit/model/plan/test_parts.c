/* Jobs as the baskets they hang in: volumes over areas by geometry, and how many baskets by hand. */
#include "plan/case.h"
#include "plan/parts.h"
#include "support/close.h"

/* Dry plates of 5 mm at 20 degC. */
static boil_load plates(double mass_kg)
{
    boil_load l = boil_load_default();
    l.mass_kg = mass_kg;
    l.size_m = 0.005;
    l.temperature_K = 293.15;
    l.rinse_kg_m2 = 0;
    return l;
}

static double lag_of(boil_load l)
{
    boil_plan_part p = {.of = 1, .load = l};
    boil_plan_part_estimate(&p, 414);
    assert_close(p.hot_s, 3 * p.lag_s, 1e-12, 0);
    return p.lag_s;
}

/* A plate of 10 mm is heated from both sides, a bar and a ball of 10 mm all round, a tube along the outside of both its walls, each end
   left out; a pack of two decimetres from above and below. 4000 s a metre of volume over area. */
static void the_lag_is_that_of_volume_over_area(void **state)
{
    (void)state;
    const double r = 0.005, pi = 3.14159265358979;
    boil_load l = boil_load_default();
    l.size_m = 2 * r;
    l.packed_depth_m = 0;
    l.shape = BOIL_SHAPE_PLATE;
    assert_close(lag_of(l), 4000 * (2 * r) / 2, 1e-12, 0);
    l.size_m = 0.0002; /* none is sooner than in a second */
    assert_close(lag_of(l), 1, 1e-12, 0);
    l.size_m = 2 * r;
    l.shape = BOIL_SHAPE_BAR;
    assert_close(lag_of(l), 4000 * (pi * r * r) / (2 * pi * r), 1e-12, 0);
    l.shape = BOIL_SHAPE_BALL;
    assert_close(lag_of(l), 4000 * (4 * pi / 3 * r * r * r) / (4 * pi * r * r), 1e-12, 0);
    l.shape = BOIL_SHAPE_TUBE;
    l.tube_wall_m = 0.004;
    assert_close(lag_of(l), 4000 * 0.004 / 2, 1e-12, 0);
    l.packed_depth_m = 0.2;
    assert_close(lag_of(l), 4000 * 0.2 / 2, 1e-12, 0);
}

/* From 20 to 140 degC steel takes 490 J/kgK in the mean [EN 1993-1-2: 440 at 20, 486 at 100, 507 at 140]; the basket is steel, what it
   carries in its hollows water, 4.22 kJ/kgK [from memory]. */
static void the_heat_is_that_of_steel_and_water(void **state)
{
    (void)state;
    boil_plan_part p = {.of = 1, .load = plates(20)};
    p.load.basket_kg = 5;
    boil_plan_part_estimate(&p, 413.15);
    const double dry_J = p.heat_J;
    assert_close(dry_J, 25 * 490.0 * 120, 0.03, 0);
    p.load.trapped_kg = 2;
    boil_plan_part_estimate(&p, 413.15);
    assert_close(p.heat_J - dry_J, 2 * 4220.0 * 120, 0.01, 0);
}

/* Counted pieces stay whole, the first baskets have one more; what was weighed only is shared out evenly. The basket is each one's. */
static void a_job_is_shared_out(void **state)
{
    (void)state;
    boil_plan_job j = {.load = {.mass_kg = 70, .area_m2 = 14, .trapped_kg = 7, .pieces = 7, .basket_kg = 5}};
    double pieces = 0, kg = 0;
    for (size_t i = 0; i < 3; i++) {
        boil_load l = boil_plan_part_load(&j, i, 3);
        assert_close(l.pieces, i == 0 ? 3 : 2, 1e-12, 0);
        assert_close(l.mass_kg, 10 * l.pieces, 1e-12, 0);
        assert_close(l.area_m2, 2 * l.pieces, 1e-12, 0);
        assert_close(l.trapped_kg, l.pieces, 1e-12, 0);
        assert_close(l.basket_kg, 5, 1e-12, 0);
        pieces += l.pieces;
        kg += l.mass_kg;
    }
    assert_true(pieces == 7 && kg == 70);
    j.load.pieces = (double)NAN;
    assert_close(boil_plan_part_load(&j, 2, 4).mass_kg, 17.5, 1e-12, 0);
}

/* By mass, the basket too; of pieces no more baskets than these; a job that may not be split is whole or none. */
static void as_few_as_the_bath_bears(void **state)
{
    (void)state;
    boil_plan_bath b = {.limit_s = 1e6, .quiet_W = 1e6, .most_kg = 25};
    boil_plan_job j = {.load = plates(60), .may_split = true};
    j.load.basket_kg = 5;
    j.load.pieces = (double)NAN;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 3); /* of 20 kg and a basket */
    j.load.mass_kg = 60.1;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 4);
    j.load.mass_kg = 60;
    j.load.pieces = 4;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 4); /* three hold two of one: 30 kg */
    j.load.pieces = 2;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 0);
    j.may_split = false;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 0);
    j.load.mass_kg = 20;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 1);
    j.load.mass_kg = 40; /* two would do */
    j.load.pieces = (double)NAN;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 0);
}

/* By heat: half of it fits where the whole misses it by a joule in a megajoule. */
static void and_as_its_heat_allows(void **state)
{
    (void)state;
    boil_plan_bath b = {.limit_s = 100, .most_kg = 1e6};
    boil_plan_job j = {.load = plates(60), .may_split = true};
    j.load.pieces = (double)NAN;
    boil_plan_part whole = {.of = 1, .load = j.load};
    boil_plan_part_estimate(&whole, 414);
    b.quiet_W = whole.heat_J / (BOIL_PLAN_LIMIT_SHARE * 100) * (1 + 1e-6);
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 1);
    b.quiet_W *= 1 - 2e-6;
    assert_int_equal(boil_plan_parts_needed(&j, &b, 414), 2);
}

/* Job by job; what cannot be split as it must be is whole; beyond a thousand parts it is no plan. */
static void all_jobs_become_parts(void **state)
{
    (void)state;
    boil_plan_bath b = {.limit_s = 1e6, .quiet_W = 1e6, .most_kg = 25};
    boil_plan_job jobs[2] = {{.load = plates(60), .may_split = true}, {.load = plates(60)}};
    boil_plan_problem p = {.jobs = jobs, .jobs_count = 2};
    boil_plan_parts parts;
    for (int i = 0; i < 2; i++)
        jobs[i].load.pieces = (double)NAN;
    assert_int_equal(boil_plan_parts_of(&p, &b, 414, &parts), BOIL_OK);
    assert_int_equal(parts.count, 4);
    for (size_t i = 0; i < 4; i++) {
        assert_int_equal(parts.list[i].job, i == 3);
        assert_int_equal(parts.list[i].number, i < 3 ? i : 0);
        assert_int_equal(parts.list[i].of, i < 3 ? 3 : 1);
        assert_close(parts.list[i].load.mass_kg, i < 3 ? 20 : 60, 1e-12, 0);
    }
    boil_plan_parts_free(&parts);
    jobs[0].load.mass_kg = 25 * 999;
    assert_int_equal(boil_plan_parts_of(&p, &b, 414, &parts), BOIL_OK);
    assert_int_equal(parts.count, 1000);
    boil_plan_parts_free(&parts);
    jobs[0].load.mass_kg = 25 * 1000;
    assert_int_equal(boil_plan_parts_of(&p, &b, 414, &parts), BOIL_BAD_INPUT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_lag_is_that_of_volume_over_area),
        cmocka_unit_test(the_heat_is_that_of_steel_and_water),
        cmocka_unit_test(a_job_is_shared_out),
        cmocka_unit_test(as_few_as_the_bath_bears),
        cmocka_unit_test(and_as_its_heat_allows),
        cmocka_unit_test(all_jobs_become_parts),
    };
    return cmocka_run_group_tests_name("parts", tests, NULL, NULL);
}
