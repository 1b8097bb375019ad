/* unit/model/case/test_plant.c -- what a plant begins with: the bath by each way to say its strength, water afloat and salt that is out
   already; and whom an action may follow. Ranges are those of model/boilback.h. */
#include "support/close.h"

#include "case/checks.h"
#include "case/plant.h"
#include "case/schedule.h"
#include "properties/water.h"
#include "support/cases.h"

static boil_plant of_fraction(double fraction)
{
    boil_plant p = open_plant(34e3);
    p.charge = (boil_initial_charge){{0.80, 0.15, 0.05}, BOIL_INITIAL_BY_SALT_FRACTION, fraction, 0};
    return p;
}

/* The mass is the volume times the density, and the salts are its share in their proportions. */
static void a_charge_fills_its_tank(void **state)
{
    (void)state;
    boil_plant p = of_fraction(0.5);
    boil_initial_state b;
    assert_int_equal(boil_plant_initial(&p, &b), BOIL_OK);
    const double *salt = b.mixture.salt, salts = salt[0] + salt[1] + salt[2], mass = b.mixture.water + salts;
    assert_close(b.volume_m3, 1.5 * 0.6 * 0.5, 1e-12, 0);
    assert_close(mass, b.density_kg_m3 * b.volume_m3, 1e-12, 0);
    assert_close(salts / mass, 0.5, 1e-12, 0);
    assert_close(salt[BOIL_NANO3] / salts, 0.15, 1e-12, 0);
    assert_close(salt[BOIL_NANO2] / salts, 0.05, 1e-12, 0);
    assert_true(b.temperature_K == b.boiling_point_K && b.salt_fraction == 0.5);
    p.charge.temperature_K = CELSIUS(60);
    assert_int_equal(boil_plant_initial(&p, &b), BOIL_OK);
    assert_true(b.temperature_K == CELSIUS(60));
    p.charge.temperature_K = CELSIUS(190); /* no hotter than it boils */
    assert_int_equal(boil_plant_initial(&p, &b), BOIL_OK);
    assert_true(b.temperature_K == b.boiling_point_K);
    boil_plant again = open_plant(34e3); /* by its boiling point the same bath */
    again.charge.value = b.boiling_point_K;
    boil_initial_state c;
    assert_int_equal(boil_plant_initial(&again, &c), BOIL_OK);
    assert_close(c.salt_fraction, 0.5, 1e-6, 0);
}

static void a_fraction_lies_between_nothing_and_what_is_known(void **state)
{
    (void)state;
    const double fractions[] = {1e-6, 0.6, -0.1, 0.9, 0.95, (double)NAN};
    boil_initial_state b;
    for (int i = 0; i < 6; i++) {
        boil_plant p = of_fraction(fractions[i]);
        assert_int_equal(boil_plant_initial(&p, &b), i < 2 ? BOIL_OK : BOIL_OUT_OF_RANGE);
    }
    boil_plant water = of_fraction(0);
    assert_int_equal(boil_plant_initial(&water, &b), BOIL_OK);
    assert_true(b.salt_fraction == 0 && b.mixture.salt[0] == 0);
    assert_close(b.boiling_point_K, boil_water_saturation_temperature(water.ambient.pressure_Pa), 1e-6, 0);
    assert_int_equal(boil_plant_initial(NULL, &b), BOIL_BAD_INPUT);
    assert_int_equal(boil_plant_initial(&water, NULL), BOIL_BAD_INPUT);
    boil_plant none = open_plant(34e3);
    none.charge.value = CELSIUS(90); /* no bath boils that low at this pressure */
    assert_int_not_equal(boil_plant_initial(&none, &b), BOIL_OK);
}

static void a_mixer_of_no_stated_power_has_a_usual_one(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    assert_close(boil_plant_mixer_power(&p), 200 * 1.5 * 0.6 * 0.5, 1e-12, 0); /* judgement: model/case/plant.c */
    p.fittings.mixer_W = 55;
    assert_true(boil_plant_mixer_power(&p) == 55);
}

/* A pound to two gallons: common practice, no source. */
static void the_heaviest_usual_load_goes_with_the_bath(void **state)
{
    (void)state;
    const double gallon_m3 = 3.785411784e-3, pound_kg = 0.45359237;
    boil_plant p = open_plant(34e3);
    assert_close(boil_plant_usual_load(&p), 1.5 * 0.6 * 0.5 / gallon_m3 / 2 * pound_kg, 1e-5, 0);
}

static void water_afloat_is_no_hotter_than_its_boil(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    const double boils_K = boil_water_saturation_temperature(p.ambient.pressure_Pa);
    const double at_K[] = {273.15, boils_K, nextafter(273.15, 0), nextafter(boils_K, 1e3), (double)NAN};
    p.afloat.mass_kg = 1;
    for (int i = 0; i < 5; i++) {
        p.afloat.temperature_K = at_K[i];
        assert_int_equal(boil_plant_afloat_problem(&p) == NULL, i < 2);
    }
}

/* Less than there is of what falls out, and on a bath below the boil of the rest. */
static void salt_that_is_out_is_less_than_there_is(void **state)
{
    (void)state;
    boil_initial_state b;
    boil_plant p = open_plant(34e3);
    p.charge.temperature_K = CELSIUS(60);
    assert_int_equal(boil_plant_initial(&p, &b), BOIL_OK);
    const double both_kg = b.mixture.salt[BOIL_NANO3] + b.mixture.salt[BOIL_NANO2];
    const struct {
        double crust_kg, bed_kg;
        bool sound;
    } all[] = {{0, 0, true},
               {1, 0, true},
               {0, 1, true},
               {0.5 * both_kg, 0.499 * both_kg, true},
               {both_kg, 0, false},
               {0.5 * both_kg, 0.5 * both_kg, false},
               {-1, 2, false},
               {2, -1, false},
               {(double)NAN, 0, false},
               {0, (double)NAN, false}};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        p.crust_kg = all[i].crust_kg;
        p.bed_kg = all[i].bed_kg;
        assert_int_equal(boil_plant_crust_problem(&p) == NULL, all[i].sound);
    }
    p.crust_kg = 1;
    p.bed_kg = 0;
    const char *too_hot =
        "bath with crust or salt on the floor must be colder than the boiling point of what is left dissolved";
    p.charge.temperature_K = 0; /* at its boil */
    assert_string_equal(boil_plant_crust_problem(&p), too_hot);
    p.charge.temperature_K = b.boiling_point_K - 1e-3; /* over that of the rest */
    assert_string_equal(boil_plant_crust_problem(&p), too_hot);
    p.charge.temperature_K = b.boiling_point_K - 5;
    assert_null(boil_plant_crust_problem(&p));
    p.crust_kg = 0;
    boil_plant_bare(&p);
    assert_true(p.salt_stated);
}

/* Of so much that no tank holds it the range speaks, not the charge. */
static void crust_and_bed_have_their_ends(void **state)
{
    (void)state;
    boil_plant p = open_plant(34e3);
    p.tank.length_m = p.tank.width_m = 20;
    p.tank.depth_m = 5;
    p.tank.level_m = 4.9;
    p.charge = (boil_initial_charge){{0.5, 0.45, 0.05}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(60)};
    double *fields[] = {&p.crust_kg, &p.bed_kg};
    for (int i = 0; i < 2; i++) {
        *fields[i] = 1e5;
        assert_null(boil_plant_crust_problem(&p));
        *fields[i] = nextafter(1e5, HUGE_VAL);
        assert_string_equal(boil_plant_crust_problem(&p), "crust, and salt on the floor, must be between 0 kg and 1e5 kg");
        *fields[i] = 0;
    }
}

/* One that stands before it; and only a load takes the boil that is to be back. */
static void an_action_follows_one_before_it(void **state)
{
    (void)state;
    boil_action actions[2] = {plate_action(0, 1), two_gallons_action(0, 10)};
    boil_schedule s = {.actions = actions, .count = 2, .duration_s = 3600};
    actions[1].order = 1;
    actions[1].wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = 0};
    assert_int_equal(boil_schedule_followed(&s, 1), 0);
    assert_true(boil_check_schedule(&s));
    actions[0] = two_gallons_action(0, 10);
    assert_false(boil_check_schedule(&s)); /* water takes no boil that is to be back */
    actions[1].wait.state = BOIL_WAIT_BOILING;
    assert_true(boil_check_schedule(&s));
    actions[1].wait.after = 1; /* itself */
    assert_int_equal(boil_schedule_followed(&s, 1), 1);
    assert_false(boil_check_schedule(&s));
    actions[1].wait.after = 7; /* nobody */
    assert_false(boil_check_schedule(&s));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_charge_fills_its_tank),
        cmocka_unit_test(a_fraction_lies_between_nothing_and_what_is_known),
        cmocka_unit_test(a_mixer_of_no_stated_power_has_a_usual_one),
        cmocka_unit_test(the_heaviest_usual_load_goes_with_the_bath),
        cmocka_unit_test(water_afloat_is_no_hotter_than_its_boil),
        cmocka_unit_test(salt_that_is_out_is_less_than_there_is),
        cmocka_unit_test(crust_and_bed_have_their_ends),
        cmocka_unit_test(an_action_follows_one_before_it),
    };
    return cmocka_run_group_tests_name("plant", tests, NULL, NULL);
}
