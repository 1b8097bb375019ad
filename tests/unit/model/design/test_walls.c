/* Plates of the tank. */
#include "support/close.h"

#include "design/published_units.h"
#include "design/walls.h"

/* A published worksheet after Megyesy: sides 177.2 in, depth 35.4 in, G 1.78, 16 694 psi: 8.1 mm; at 0.39 in and E 27.5e6 psi it bulges 0.37 in. */
static void a_wall_is_the_published_one(void **state)
{
    (void)state;
    const double density = 1.78 * 0.036 * 27679.9;
    const boil_plate_strain s = boil_wall_strain(4.5, 0.9, density, 8.1e-3);
    assert_close(s.stress_Pa, 115.1e6, 0.015, 0);
    assert_close(boil_wall_strain(4.5, 0.9, density, 0.39 * BOIL_INCH).bulge_m / BOIL_INCH * 28 / 27.5, 0.37, 0.02, 0);
}

/* Another: panel 1.44 times as long as wide, 22.27 kPa, 406 mm, 115.1 MPa: 3.86 mm; and the table's own 0.7500, 0.1421 for endless ones (Roark,
   table 11.4, case 1a). */
static void a_panel_of_the_floor_is_the_published_one(void **state)
{
    (void)state;
    assert_close(boil_floor_strain(1.44 * 0.406, 0.406, 22.27e3, 3.86e-3).stress_Pa, 115.1e6, 0.01, 0);
    assert_close(boil_floor_strain(50, 1, 1e3, 0.01).stress_Pa, 0.75e7, 1e-9, 0);
    assert_close(boil_floor_strain(2, 1, 1e3, 0.01).bulge_m, 0.1110 * 1e3 / (BOIL_STEEL_MODULUS * 1e-6), 1e-9, 0);
}

/* By a plate solution for 72 in, 30 in deep, G 1.444, E 28e6 psi, all edges held: 1/4 in bulges 0.178 in at 7740 psi; 3/16 0.423; 5/16 0.091; 3/8
   0.053. The coefficients are within 5 % of it. */
static void a_wall_bulges_as_a_plate_solution_says(void **state)
{
    static const double inches[] = {0.1875, 0.25, 0.3125, 0.375}, bulge[] = {0.423, 0.178, 0.091, 0.053};
    (void)state;
    for (int i = 0; i < 4; i++)
        assert_close(boil_wall_strain(72 * BOIL_INCH, 30 * BOIL_INCH, 1444, inches[i] * BOIL_INCH).bulge_m / BOIL_INCH,
                     bulge[i], 0.05, 0);
    assert_close(boil_wall_strain(72 * BOIL_INCH, 30 * BOIL_INCH, 1444, BOIL_INCH / 4).stress_Pa / BOIL_PSI, 7740, 0.01, 0);
}

/* Worn by 1/16 in a 5/16 in wall bulges 0.18 in of 0.144 allowed, a 3/8 in one 0.094. */
static void what_is_ordered_still_holds_when_worn(void **state)
{
    (void)state;
    const double side = 72 * BOIL_INCH, depth = 30 * BOIL_INCH, stress = BOIL_STEEL_STRESS;
    assert_close(boil_wall_order(side, depth, 1444, stress, BOIL_CORROSION) / BOIL_INCH, 0.375, 1e-9, 0);
    assert_close(boil_wall_order(side, depth, 1444, stress, 0) / BOIL_INCH, 0.3125, 1e-9, 0);
    for (double worn = 0; worn < 5e-3; worn += 5e-4)
        assert_true(boil_wall_order(side, depth, 1444, stress, worn + 5e-4) >=
                    boil_wall_order(side, depth, 1444, stress, worn));
    assert_true(isnan(boil_wall_order(1, 3, 1444, stress, 0)));
    assert_true(isnan(boil_wall_order(20, 5, 1444, stress, 0)));
    assert_close(BOIL_STEEL_STRESS, 13700 * BOIL_PSI, 1e-4, 0);
    assert_close(BOIL_STEEL_MODULUS, 28e6 * BOIL_PSI, 1e-4, 0);
}

/* 36 x 18 in, brimful 1.56 psi: 4950 psi and 0.042 in new, 8790 psi and 0.099 in worn to 3/16. */
static void a_floor_on_bars_is_as_worked_out(void **state)
{
    (void)state;
    const double p = 1.564 * BOIL_PSI;
    const boil_plate_strain new = boil_floor_strain(36 * BOIL_INCH, 18 * BOIL_INCH, p, BOIL_INCH / 4);
    const boil_plate_strain worn = boil_floor_strain(36 * BOIL_INCH, 18 * BOIL_INCH, p, BOIL_INCH * 3 / 16);
    assert_close(new.stress_Pa / BOIL_PSI, 4950, 0.002, 0);
    assert_close(new.bulge_m / BOIL_INCH, 0.042, 0.01, 0);
    assert_close(worn.stress_Pa / BOIL_PSI, 8790, 0.002, 0);
    assert_close(worn.bulge_m / BOIL_INCH, 0.099, 0.01, 0);
    assert_true(boil_floor_order(0.9, 0.45, p, BOIL_STEEL_STRESS, BOIL_CORROSION) >= BOIL_INCH / 16);
}

/* 7.8 lb/in, 0.68 in4 on each long side. */
static void the_rim_carries_its_share(void **state)
{
    (void)state;
    const double load = boil_rim_load(30 * BOIL_INCH, 1444);
    assert_close(load / (4.4482216 / BOIL_INCH), 7.8, 0.01, 0);
    assert_close(boil_rim_inertia(72 * BOIL_INCH, load) / pow(BOIL_INCH, 4), 0.68, 0.01, 0);
    assert_true(boil_rim_load(0, 1444) == 0);
}

/* Roark's Formulas, table 11.4, case 1a: sides, stress and sag; halfway between two rows the mean of both. From six times as long on a
   panel counts as endless. */
static void each_panel_is_that_of_the_table(void **state)
{
    static const double ratio[] = {1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 3.0, 4.0, 5.0, 6.0};
    static const double beta[] = {.2874, .3762, .4530, .5172, .5688, .6102, .7134, .7410, .7476, .7500};
    static const double alpha[] = {.0444, .0616, .0770, .0906, .1017, .1110, .1335, .1400, .1417, .1421};
    const double q = 10e3, b = 0.5, t = 0.01, stress = q * b * b / t / t,
                 sag = q * pow(b, 4) / (BOIL_STEEL_MODULUS * pow(t, 3));
    (void)state;
    for (int i = 0; i < 10; i++) {
        assert_close(boil_floor_strain(ratio[i] * b, b, q, t).stress_Pa, beta[i] * stress, 1e-9, 0);
        assert_close(boil_floor_strain(ratio[i] * b, b, q, t).bulge_m, alpha[i] * sag, 1e-9, 0);
        if (i > 0) {
            const boil_plate_strain mean = boil_floor_strain((ratio[i] + ratio[i - 1]) / 2 * b, b, q, t);
            assert_close(mean.stress_Pa, (beta[i] + beta[i - 1]) / 2 * stress, 1e-9, 0);
            assert_close(mean.bulge_m, (alpha[i] + alpha[i - 1]) / 2 * sag, 1e-9, 0);
        }
    }
}

/* Megyesy's beta and alpha by height over length: the first pair read, the others from memory. Lower walls as the first, of higher ones
   nothing is known. */
static void each_wall_is_that_of_the_table(void **state)
{
    static const double tall[] = {0.25, 0.286, 0.333, 0.4, 0.5, 0.667, 1.0, 1.5, 2.0};
    static const double beta[] = {.024, .031, .041, .056, .080, .116, .16, .26, .34};
    static const double alpha[] = {.00027, .00046, .00083, .0016, .0035, .0083, .022, .043, .060};
    const double L = 2, t = 0.01, head = 1000 * 9.80665;
    (void)state;
    for (int i = 0; i < 9; i++) {
        const double H = tall[i] * L, stress = head * H * L * L / t / t,
                     bulge = head * H * pow(L, 4) / (BOIL_STEEL_MODULUS * pow(t, 3));
        assert_close(boil_wall_strain(L, H, 1000, t).stress_Pa, beta[i] * stress, 1e-9, 0);
        assert_close(boil_wall_strain(L, H, 1000, t).bulge_m, alpha[i] * bulge, 1e-9, 0);
        if (i > 0) {
            const double between = (tall[i] + tall[i - 1]) / 2, share = between / tall[i];
            const boil_plate_strain mean = boil_wall_strain(L, between * L, 1000, t);
            assert_close(mean.stress_Pa, (beta[i] + beta[i - 1]) / 2 * stress * share, 1e-9, 0);
            assert_close(mean.bulge_m, (alpha[i] + alpha[i - 1]) / 2 * bulge * share, 1e-9, 0);
        }
    }
    assert_close(boil_wall_strain(L, 0.2, 1000, t).stress_Pa, .024 * head * 0.2 * L * L / t / t, 1e-9, 0);
    assert_true(isnan(boil_wall_strain(L, 4.001, 1000, t).stress_Pa));
}

static void plates_scale_as_plates_do(void **state)
{
    (void)state;
    const boil_plate_strain one = boil_wall_strain(1, 0.5, 1000, 6e-3), heavy = boil_wall_strain(1, 0.5, 2000, 6e-3);
    const boil_plate_strain large = boil_wall_strain(2, 1, 1000, 6e-3);
    assert_close(heavy.stress_Pa, 2 * one.stress_Pa, 1e-12, 0);
    assert_close(large.stress_Pa, 8 * one.stress_Pa, 1e-12, 0);
    assert_true(boil_wall_strain(1, 1e-9, 1000, 6e-3).stress_Pa < 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_wall_is_the_published_one),
        cmocka_unit_test(a_panel_of_the_floor_is_the_published_one),
        cmocka_unit_test(a_wall_bulges_as_a_plate_solution_says),
        cmocka_unit_test(what_is_ordered_still_holds_when_worn),
        cmocka_unit_test(a_floor_on_bars_is_as_worked_out),
        cmocka_unit_test(the_rim_carries_its_share),
        cmocka_unit_test(each_panel_is_that_of_the_table),
        cmocka_unit_test(each_wall_is_that_of_the_table),
        cmocka_unit_test(plates_scale_as_plates_do),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
