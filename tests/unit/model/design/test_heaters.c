/* Immersion tube, elements, steam coil. */
#include "support/close.h"

#include "design/heaters.h"
#include "design/published_units.h"

/* A burner maker's sizing table for water at 180 degF, effective feet at a net heat, kBtu/h, and 60, 65, 70, 75, 80 %: read in part. */
static void a_tube_is_as_long_as_the_table_says(void **state)
{
    static const double shares[] = {0.60, 0.65, 0.70, 0.75, 0.80}, heats[] = {350, 500, 700};
    static const double feet[3][5] = {{14, 18, 22, 29, 37}, {17, 21, 27, 35, 45}, {20, 25, 32, 41, 53}};
    (void)state;
    for (int h = 0; h < 3; h++)
        for (int s = 0; s < 5; s++)
            assert_close(boil_tube_length(heats[h] * BOIL_KBTU_H, shares[s]) / BOIL_FOOT, feet[h][s], 0.04, 0);
    assert_close(boil_tube_length(2000 * BOIL_KBTU_H, 0.60) / BOIL_FOOT, 33, 0.04, 0);
    assert_close(boil_tube_length(2000 * BOIL_KBTU_H, 0.80) / BOIL_FOOT, 89, 0.04, 0);
    assert_true(isnan(boil_tube_length(1e5, 0.59)) && isnan(boil_tube_length(1e5, 0.81)) &&
                isnan(boil_tube_length(1e5, (double)NAN)));
    assert_close(boil_tube_efficiency_at(0.70, BOIL_FAHRENHEIT(285)), 0.68, 1e-9, 0);
    assert_close(boil_tube_efficiency_at(0.70, BOIL_FAHRENHEIT(180)), 0.70, 1e-9, 0);
}

/* 58.0 kW at 15 W/in2: 3869 in2, 26.9 ft2. */
static void elements_need_their_area(void **state)
{
    (void)state;
    assert_close(boil_element_area(58.03e3, 15 * BOIL_WATT_A_SQUARE_INCH) / (BOIL_FOOT * BOIL_FOOT), 26.9, 0.002, 0);
    assert_close(BOIL_ELEMENT_FLUX, 15 * BOIL_WATT_A_SQUARE_INCH, 0.001, 0);
    assert_close(BOIL_ELEMENT_STEEL_MOST, 22 * BOIL_WATT_A_SQUARE_INCH, 0.001, 0);
    assert_close(BOIL_ELEMENT_MOST, 25 * BOIL_WATT_A_SQUARE_INCH, 0.001, 0);
}

/* R. Leopold, "Sizing heating and cooling coils", Products Finishing, October 1999: 179 040 Btu/h, U 150, steam of 239 degF, bath 140 degF:
   12.06 ft2. */
static void a_coil_is_the_published_one(void **state)
{
    (void)state;
    const boil_coil c = {179.040 * BOIL_KBTU_H, BOIL_FAHRENHEIT(140), BOIL_FAHRENHEIT(239), 150 * 5.678263341};
    const boil_coil_size s = boil_coil_size_of(&c);
    assert_int_equal(s.verdict, BOIL_COIL_SIZED);
    assert_close(s.area_m2 / (BOIL_FOOT * BOIL_FOOT), 12.06, 0.001, 0);
    /* 952.1 Btu/lb at 240.07 degF (Keenan and Keyes, as a trap maker abstracts them) */
    assert_close(s.steam_kg_s * 952.6 * 1000 * BOIL_BTU / 1000 / 0.45359237, c.heat_W, 0.002, 0);
}

static void a_coil_no_hotter_than_the_bath_cannot(void **state)
{
    (void)state;
    boil_coil c = {58e3, BOIL_FAHRENHEIT(289), BOIL_FAHRENHEIT(250), BOIL_COIL_COEFFICIENT};
    assert_int_equal(boil_coil_size_of(&c).verdict, BOIL_COIL_CANNOT);
    assert_true(isnan(boil_coil_size_of(&c).area_m2) && isnan(boil_coil_size_of(&c).steam_kg_s));
    c.steam_K = c.bath_K;
    assert_int_equal(boil_coil_size_of(&c).verdict, BOIL_COIL_CANNOT);
    c.steam_K = BOIL_FAHRENHEIT(298);
    assert_int_equal(boil_coil_size_of(&c).verdict, BOIL_COIL_TOO_NEAR);
    c.steam_K = BOIL_FAHRENHEIT(300);
    assert_int_equal(boil_coil_size_of(&c).verdict, BOIL_COIL_SIZED);
    const double area = boil_coil_size_of(&c).area_m2;
    c.coefficient_W_m2K *= 2;
    assert_close(boil_coil_size_of(&c).area_m2, area / 2, 1e-12, 0);
    assert_close(BOIL_COIL_COEFFICIENT, 80 * 5.678263341, 0.001, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_tube_is_as_long_as_the_table_says),
        cmocka_unit_test(elements_need_their_area),
        cmocka_unit_test(a_coil_is_the_published_one),
        cmocka_unit_test(a_coil_no_hotter_than_the_bath_cannot),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
