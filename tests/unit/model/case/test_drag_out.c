/* Bath liquid carried out: films against hand calculations, and what a load takes with it. */
#include "case/load.h"
#include "support/close.h"

static const double rho = 1450, mu = 2e-3, sigma = 0.085;

/* Hand calculation, (2/3) sqrt(mu z/(rho g t)) at z = 0.3 m: 2 mPa s 43 and 25 mL/m2 after 10 and 30 s; 1 mPa s 31 and
   a cooled 20 mPa s 137 after 10 s. Drawn out fast, so that the drained film is the thinner. */
static void drained_films_by_hand(void **state)
{
    (void)state;
    static const double rows[][3] = {{2e-3, 10, 43.3}, {2e-3, 30, 25.0}, {1e-3, 10, 30.6}, {20e-3, 10, 136.9}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_close(1e6 * boil_drag_film(rows[i][0], rho, sigma, 1, 0.3, rows[i][1]), rows[i][2], 2e-3, 0);
}

/* Hand calculation at 0.1 m/s: Ca = 2.353e-3, Ca^(1/6) = 0.3647, sqrt(mu U/(rho g)) = 1.1860e-4 m: 40.8 um. It goes as
   (mu U)^(2/3) while the film has no time to drain. */
static void drawn_films_by_hand(void **state)
{
    (void)state;
    const double h = boil_drag_film(mu, rho, sigma, 0.1, 0.3, 1);
    assert_close(h, 40.83e-6, 1e-3, 0);
    assert_close(boil_drag_film(mu, rho, sigma, 0.0125, 0.3, 1), h / 4, 1e-12, 0);
    assert_close(boil_drag_film(mu / 8, rho, sigma, 0.1, 0.3, 0.1), h / 4, 1e-12, 0);
}

/* The film never grows while it drains, and is never thicker than it was drawn. */
static void the_thinner_film_stays(void **state)
{
    (void)state;
    double before = HUGE_VAL;
    for (double t = 0.1; t < 100; t *= 1.1) {
        const double h = boil_drag_film(mu, rho, sigma, 0.1, 0.3, t);
        assert_true(h > 0 && h <= before && h <= 40.9e-6);
        before = h;
    }
}

static boil_load hung(double lowering_s)
{
    boil_load l = boil_load_default();
    l.mass_kg = 22.68;
    l.size_m = 6e-3;
    l.lowering_s = lowering_s;
    return l;
}

/* Handbook drag-out, from memory: vertical parts well drained 16 mL/m2, poorly 80. Parts of 0.1 m lifted in 10 s: drawn
   8.8 um by hand, twice that as it cools. */
static void hung_parts_carry_a_film(void **state)
{
    (void)state;
    const boil_load slow = hung(10), fast = hung(1);
    const double wetted = boil_load_wetted(&slow);
    const double slow_mL = 1e6 * boil_drag_out(&slow, mu, rho, sigma) / rho / wetted;
    const double fast_mL = 1e6 * boil_drag_out(&fast, mu, rho, sigma) / rho / wetted;
    assert_close(slow_mL, 17.6, 0.01, 0);
    assert_true(slow_mL > 10 && fast_mL > slow_mL && fast_mL < 80);
    print_message("hung parts carry out %.1f mL/m2 lifted in 10 s, %.1f in 1 s\n", slow_mL, fast_mL);
}

static void a_stated_drag_out_is_taken_at_its_word(void **state)
{
    (void)state;
    boil_load l = hung(10);
    l.drag_out_kg_m2 = 0;
    assert_true(boil_drag_out(&l, mu, rho, sigma) == 0);
    l.drag_out_kg_m2 = 0.07;
    assert_close(boil_drag_out(&l, mu, rho, sigma), 0.07 * boil_load_wetted(&l), 1e-14, 0);
}

/* Packed: 150 mL per m2 of the parts' own surface, whatever the speed. */
static void packed_parts_carry_much(void **state)
{
    (void)state;
    boil_load l = hung(10);
    const double wetted = boil_load_wetted(&l);
    l.packed_depth_m = 0.2;
    assert_close(boil_load_wetted(&l), wetted, 1e-14, 0);
    assert_close(boil_drag_out(&l, mu, rho, sigma), 0.15e-3 * rho * wetted, 1e-12, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(drained_films_by_hand),
        cmocka_unit_test(drawn_films_by_hand),
        cmocka_unit_test(the_thinner_film_stays),
        cmocka_unit_test(hung_parts_carry_a_film),
        cmocka_unit_test(a_stated_drag_out_is_taken_at_its_word),
        cmocka_unit_test(packed_parts_carry_much),
    };
    return cmocka_run_group_tests_name("drag", tests, NULL, NULL);
}
