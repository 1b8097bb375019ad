/* Hoods, ducts and the room's air. The tables are from memory; what is checked is that they are used as they say. */
#include "support/close.h"

#include "design/exhaust.h"
#include "design/published_units.h"
#include "design/room_air.h"

#define SQUARE_FOOT (BOIL_FOOT * BOIL_FOOT)
#define CFM (SQUARE_FOOT * BOIL_FOOT_A_MINUTE)

static const boil_exhaust_class boiling = {BOIL_HAZARD_C, 1};

static double rate(double across, bool baffled)
{
    return boil_exhaust_lateral_rate(100 * BOIL_FOOT_A_MINUTE, across, baffled) / BOIL_FOOT_A_MINUTE;
}

/* Class C-1 over 200 degF or within 20 degF of the boil; the other numbers from memory of the regulation. */
static void a_boiling_caustic_bath_is_class_c_1(void **state)
{
    (void)state;
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(285), 0).letter, BOIL_HAZARD_C);
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(285), 0).number, 1);
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(180), 105 / 1.8).number, 2);
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(120), 150 / 1.8).number, 3);
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(80), 150 / 1.8).number, 4);
    assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(80), 10 / 1.8).number, 1);
    assert_close(boil_exhaust_control_velocity(boiling, BOIL_HOOD_ONE_SIDE) / BOIL_FOOT_A_MINUTE, 100, 1e-9, 0);
    assert_close(boil_exhaust_control_velocity(boiling, BOIL_HOOD_ENCLOSING) / BOIL_FOOT_A_MINUTE, 75, 1e-9, 0);
}

/* The limits of the numbers, degF and degF below the boil, from memory: the worse of the two counts. */
static void a_class_begins_where_it_says(void **state)
{
    static const double over_F[] = {200, 150, 94}, within_F[] = {20, 50, 100};
    (void)state;
    for (int i = 0; i < 3; i++) {
        assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(over_F[i] + 0.1), 500).number, i + 1);
        assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(over_F[i] - 0.1), 500).number, i + 2);
        assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(0), (within_F[i] - 0.1) / 1.8).number, i + 1);
        assert_int_equal(boil_exhaust_class_of(BOIL_FAHRENHEIT(0), (within_F[i] + 0.1) / 1.8).number, i + 2);
    }
}

/* ft/min, by class and hood, from memory of the regulation; 0: none is given here. */
static void each_class_has_its_velocity(void **state)
{
    static const struct {
        int number;
        boil_hazard letter;
        double lateral, enclosing;
    } table[] = {
        {1, BOIL_HAZARD_A, 0, 100},  {2, BOIL_HAZARD_A, 0, 100},  {3, BOIL_HAZARD_A, 100, 75}, {4, BOIL_HAZARD_A, 50, 50},
        {1, BOIL_HAZARD_B, 100, 75}, {2, BOIL_HAZARD_B, 100, 75}, {3, BOIL_HAZARD_B, 75, 65},  {4, BOIL_HAZARD_B, 0, 0},
        {1, BOIL_HAZARD_C, 100, 75}, {2, BOIL_HAZARD_C, 75, 65},  {3, BOIL_HAZARD_C, 50, 50},  {4, BOIL_HAZARD_C, 0, 0},
        {1, BOIL_HAZARD_D, 75, 65},  {2, BOIL_HAZARD_D, 50, 50},  {3, BOIL_HAZARD_D, 0, 0},    {4, BOIL_HAZARD_D, 0, 0}};
    (void)state;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        const boil_exhaust_class c = {table[i].letter, table[i].number};
        const double slot = boil_exhaust_control_velocity(c, BOIL_HOOD_TWO_SIDES) / BOIL_FOOT_A_MINUTE,
                     closed = boil_exhaust_control_velocity(c, BOIL_HOOD_ENCLOSING) / BOIL_FOOT_A_MINUTE;
        assert_true(table[i].lateral > 0 ? fabs(slot - table[i].lateral) < 1e-9 : isnan(slot));
        assert_true(table[i].enclosing > 0 ? fabs(closed - table[i].enclosing) < 1e-9 : isnan(closed));
        assert_int_equal(boil_exhaust_general_only(c), table[i].enclosing == 0);
    }
}

static void what_needs_no_hood_or_is_not_read_has_no_velocity(void **state)
{
    (void)state;
    assert_true(boil_exhaust_general_only((boil_exhaust_class){BOIL_HAZARD_D, 4}));
    assert_true(isnan(boil_exhaust_control_velocity((boil_exhaust_class){BOIL_HAZARD_D, 4}, BOIL_HOOD_ONE_SIDE)));
    assert_true(isnan(boil_exhaust_control_velocity((boil_exhaust_class){BOIL_HAZARD_A, 1}, BOIL_HOOD_ONE_SIDE)));
    assert_true(isnan(boil_exhaust_lateral_rate(150 * BOIL_FOOT_A_MINUTE, 0.5, false)));
    assert_true(isnan(rate(2.01, false)));
}

/* 6 x 3 ft: one slot along 6 ft draws 225 x 18 = 4050 cfm, baffled 3150; two 3600; along the short sides 250 x 18 = 4500. */
static void lateral_rates_are_those_of_the_table(void **state)
{
    (void)state;
    assert_close(rate(0.5, false) * 18, 4050, 1e-9, 0);
    assert_close(rate(0.5, true) * 18, 3150, 1e-9, 0);
    assert_close(rate(0.25, false) * 18, 3600, 1e-9, 0);
    assert_close(rate(2.0, false) * 18, 4500, 1e-9, 0);
    assert_close(rate(0.2499, false), 175, 1e-9, 0);
    for (double across = 0; across <= 2; across += 0.01) {
        assert_true(rate(across, true) < rate(across, false));
        assert_true(rate(across / 2, false) <= rate(across, false));
    }
}

/* 29 CFR 1926.57(i), its table of lateral exhaust, from memory. */
static void each_rate_is_that_of_the_table(void **state)
{
    (void)state;
    static const double across[] = {0.05, 0.1, 0.25, 0.5, 1}, control[] = {50, 75, 100};
    static const double table[3][2][5] = {{{75, 90, 100, 110, 125}, {50, 60, 75, 90, 100}},
                                          {{110, 130, 150, 170, 190}, {75, 90, 110, 130, 150}},
                                          {{150, 175, 200, 225, 250}, {100, 125, 150, 175, 200}}};
    for (int row = 0; row < 3; row++)
        for (int baffled = 0; baffled < 2; baffled++)
            for (int column = 0; column < 5; column++) {
                double found = boil_exhaust_lateral_rate(control[row] * BOIL_FOOT_A_MINUTE, across[column], baffled == 1);
                assert_close(found / BOIL_FOOT_A_MINUTE, table[row][baffled][column], 1e-12, 0);
            }
}

/* (0.4 T + 15) cfm a square foot: 129 at 285 degF, 2322 cfm over 18 ft2; 182 cfm of push from 6 ft of a slot of 3/16 in. */
static void push_pull_goes_with_the_temperature(void **state)
{
    (void)state;
    assert_close(boil_exhaust_pull_rate(BOIL_FAHRENHEIT(285)) / BOIL_FOOT_A_MINUTE, 129, 1e-9, 0);
    assert_close(boil_exhaust_pull_rate(BOIL_FAHRENHEIT(150)) / BOIL_FOOT_A_MINUTE, 75, 1e-9, 0);
    assert_close(boil_exhaust_pull_rate(BOIL_FAHRENHEIT(150.5)) / BOIL_FOOT_A_MINUTE, 75.2, 1e-9, 0);
    assert_close(boil_exhaust_pull_rate(BOIL_FAHRENHEIT(80)) / BOIL_FOOT_A_MINUTE, 75, 1e-9, 0);
    assert_close(boil_exhaust_push(3.0 / 16 * BOIL_INCH) * 6 * BOIL_FOOT / CFM, 182, 0.003, 0);
}

/* One side to 20 in, two better to 36, two to 48 (from memory). */
static void a_slot_draws_only_so_far(void **state)
{
    (void)state;
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_ONE_SIDE, 20 * BOIL_INCH), BOIL_WIDTH_GOOD);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_ONE_SIDE, 20.1 * BOIL_INCH), BOIL_WIDTH_TWO_BETTER);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_ONE_SIDE, 36 * BOIL_INCH), BOIL_WIDTH_TWO_BETTER);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_ONE_SIDE, 36.1 * BOIL_INCH), BOIL_WIDTH_REFUSED);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_TWO_SIDES, 48 * BOIL_INCH), BOIL_WIDTH_GOOD);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_TWO_SIDES, 48.1 * BOIL_INCH), BOIL_WIDTH_REFUSED);
    assert_int_equal(boil_exhaust_width(BOIL_HOOD_PUSH_PULL, 60 * BOIL_INCH), BOIL_WIDTH_GOOD);
}

/* ACGIH's plating tank (from memory): 3375 cfm along 6 ft: a slot of 3.375 in, a 16 in duct at 2420 ft/min, 0.91 in of water. */
static void the_duct_is_the_published_one(void **state)
{
    (void)state;
    const boil_exhaust_duct d = boil_exhaust_duct_of(3375 * CFM, 6 * BOIL_FOOT);
    assert_close(d.slot_m / BOIL_INCH, 3.375, 1e-6, 0);
    assert_close(d.plenum_m / BOIL_INCH, 6.75, 1e-6, 0);
    assert_close(d.duct_m / BOIL_INCH, 16, 1e-6, 0);
    assert_close(d.duct_m_s / BOIL_FOOT_A_MINUTE, 2420, 0.003, 0);
    assert_close(d.loss_Pa / BOIL_INCH_OF_WATER, 0.91, 0, 0.015);
    const boil_exhaust_duct demo = boil_exhaust_duct_of(4050 * CFM, 6 * BOIL_FOOT);
    assert_close(demo.duct_m / BOIL_INCH, 18, 1e-6, 0);
    assert_close(demo.loss_Pa / BOIL_INCH_OF_WATER, 0.85, 0, 0.01);
    for (double cfm = 100; cfm < 50000; cfm *= 1.1)
        assert_true(boil_exhaust_duct_of(cfm * CFM, 2).duct_m_s >= 2000 * BOIL_FOOT_A_MINUTE * (1 - 1e-6));
    for (int inches = 2; inches <= 40; inches += 2) { /* just as wide as they ask; none is narrower than 2 in */
        const double cfm = 2000 * 3.14159265358979 / 4 * inches * inches / 144;
        assert_close(boil_exhaust_duct_of(cfm * CFM, 2).duct_m / BOIL_INCH, inches, 1e-9, 0);
    }
    assert_close(boil_exhaust_duct_of(CFM, 2).duct_m / BOIL_INCH, 2, 1e-9, 0);
}

/* 1.08 x 0.968 x 4050 cfm x 60 degF = 254 kBtu/h; 5000 degree-days, 40 h a week: 120.7 MBtu. */
static void air_for_the_hood_takes_heat(void **state)
{
    (void)state;
    const double p = 0.968 * 101325;
    assert_close(boil_room_air_heat(4050 * CFM, p, 60 / 1.8) / BOIL_KBTU_H, 254, 0.003, 0);
    assert_close(boil_room_air_year(4050 * CFM, p, 40, 5000 / 1.8) / (1e6 * BOIL_BTU), 121, 0.003, 0);
}

/* Air at 75 degF and 50 % holds 0.0094 lb/lb; 0.0108 more: dew point 77 degF (psychrometrics, by hand). */
static void the_duct_drips_below_its_dew_point(void **state)
{
    (void)state;
    const double vapour_Pa = 1485, room_K = BOIL_FAHRENHEIT(75);
    const double wet = boil_room_air_dew_point(4050 * CFM, 98e3, room_K, vapour_Pa, 187 * 0.45359237 / 3600);
    assert_close(wet * 1.8 - 459.67, 77, 0, 1.0);
    assert_close(boil_room_air_dew_point(4050 * CFM, 98e3, room_K, vapour_Pa, 0) * 1.8 - 459.67, 55.1, 0, 0.5);
    assert_true(isnan(boil_room_air_dew_point(0, 98e3, room_K, vapour_Pa, 0.01)));
    const double hundredth = boil_room_air_dew_point(40.5 * CFM, 98e3, room_K, vapour_Pa, 1.87 * 0.45359237 / 3600);
    assert_close(hundredth, wet, 1e-9, 0); /* the same air, and less of it */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_boiling_caustic_bath_is_class_c_1),
        cmocka_unit_test(a_class_begins_where_it_says),
        cmocka_unit_test(each_class_has_its_velocity),
        cmocka_unit_test(what_needs_no_hood_or_is_not_read_has_no_velocity),
        cmocka_unit_test(lateral_rates_are_those_of_the_table),
        cmocka_unit_test(each_rate_is_that_of_the_table),
        cmocka_unit_test(push_pull_goes_with_the_temperature),
        cmocka_unit_test(a_slot_draws_only_so_far),
        cmocka_unit_test(the_duct_is_the_published_one),
        cmocka_unit_test(air_for_the_hood_takes_heat),
        cmocka_unit_test(the_duct_drips_below_its_dew_point),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
