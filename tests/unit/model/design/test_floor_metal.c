/* The metal that heats the bath, and where it stands on the caustic chart. */
#include "support/close.h"

#include "design/caustic.h"
#include "design/floor_metal.h"
#include "design/published_units.h"

static boil_floor floor_at(double flux_W_m2)
{
    return (boil_floor){
        .flux_W_m2 = flux_W_m2, .bath_K = 413.7, .head_K = 2.2, .pressure_Pa = 98e3, .scale_m = 0, .steel_m = 6.35e-3};
}

/* Incropera and DeWitt, example 10.1 (from memory): water at 1 atm boils off a copper pan up to 1.26 MW/m2 with C 0.149. */
static void critical_flux_is_the_published_one(void **state)
{
    (void)state;
    const boil_floor_liquid water = {373.15, 101325, 957.9, 0.5956, 2257e3, 58.9e-3};
    assert_close(boil_floor_critical_flux(&water) * 0.149 / 0.131, 1.26e6, 0.01, 0);
}

/* Worked by hand for 285 degF, 900 ft: head of 20 in adds 2.2 K; at 34.7 kW/m2 half of Cooper is 2330 W/m2K and 14.9 K, the face at 157.7 and
   162.6 degC; a critical flux of 1.44 MW/m2. */
static void a_clean_floor_is_as_worked_out(void **state)
{
    (void)state;
    const boil_floor_liquid bath = {413.7, 98e3, 1444, 0.514, 2597e3, 0.085};
    assert_close(boil_floor_head_rise(&bath, 0.508), 2.2, 0, 0.05);
    assert_true(boil_floor_head_rise(&bath, 0) == 0);
    assert_close(boil_floor_coefficient(98e3, 34.7e3), 2330, 0.005, 0);
    const boil_floor at = floor_at(34.7e3);
    const boil_floor_faces faces = boil_floor_faces_of(&at);
    assert_close(faces.inner_K - 273.15, 157.7, 0, 0.15);
    assert_close(faces.outer_K - 273.15, 162.6, 0, 0.15);
    assert_close(boil_floor_critical_flux(&bath), 1.44e6, 0.01, 0);
    assert_close(boil_floor_per_metre_of_scale(34.7e3) / 1000, 43.4, 0, 0.05);
}

static void no_heat_leaves_the_bath_s_temperature(void **state)
{
    (void)state;
    const boil_floor at = floor_at(0);
    const boil_floor_faces faces = boil_floor_faces_of(&at);
    assert_close(faces.inner_K, 415.9, 1e-12, 0);
    assert_close(faces.outer_K, 415.9, 1e-12, 0);
}

static void scale_adds_in_proportion(void **state)
{
    (void)state;
    boil_floor one = floor_at(30e3), two = one;
    const double clean = boil_floor_faces_of(&one).inner_K;
    one.scale_m = 1e-3;
    two.scale_m = 2e-3;
    assert_close(boil_floor_faces_of(&one).inner_K - clean, 30e3 / 0.8 * 1e-3, 1e-9, 0); /* its resistance over 0.8 W/mK */
    assert_close(boil_floor_faces_of(&two).inner_K - clean, 2 * (boil_floor_faces_of(&one).inner_K - clean), 1e-9, 0);
}

/* The chart's line at 50 %: 120 degF in one bulletin. */
static void the_chart_is_read_at_the_metal(void **state)
{
    (void)state;
    assert_close(boil_caustic_over(BOIL_FAHRENHEIT(316)) * 1.8, 196, 0, 0.2);
    assert_int_equal(boil_caustic_zone_of(BOIL_FAHRENHEIT(110)), BOIL_CAUSTIC_BELOW);
    assert_int_equal(boil_caustic_zone_of(BOIL_FAHRENHEIT(150)), BOIL_CAUSTIC_PAST_FIRST);
    assert_int_equal(boil_caustic_zone_of(BOIL_FAHRENHEIT(181)), BOIL_CAUSTIC_PAST_SECOND);
    assert_int_equal(boil_caustic_zone_of((double)NAN), BOIL_CAUSTIC_PAST_SECOND);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(critical_flux_is_the_published_one),    cmocka_unit_test(a_clean_floor_is_as_worked_out),
        cmocka_unit_test(no_heat_leaves_the_bath_s_temperature), cmocka_unit_test(scale_adds_in_proportion),
        cmocka_unit_test(the_chart_is_read_at_the_metal),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
