/* What a load is made into: areas by hand, bodies, water carried in; and every complaint. */
#include "case/load.h"

#include "base/constants.h"
#include "support/close.h"

#include <string.h>

static boil_load load_of(boil_shape shape, double mass_kg, double size_m)
{
    boil_load l = boil_load_default();
    l.mass_kg = mass_kg;
    l.shape = shape;
    l.size_m = size_m;
    return l;
}

/* 50 lb of 6 mm plate: 22.68 kg / 7850 kg/m3 = 2.889 L; over 3 mm half-thickness 0.963 m2. */
static void areas_by_hand(void **state)
{
    (void)state;
    const boil_load plate = load_of(BOIL_SHAPE_PLATE, 22.68, 0.006);
    assert_close(boil_load_area(&plate), 0.963, 0, 0.0005);
    /* One metre of 20 mm bar, one 50 mm ball, each with the mass of its volume. */
    const boil_load bar = load_of(BOIL_SHAPE_BAR, 7850 * BOIL_PI * 0.01 * 0.01, 0.02);
    assert_close(boil_load_area(&bar), BOIL_PI * 0.02, 1e-14, 0);
    const boil_load ball = load_of(BOIL_SHAPE_BALL, 7850 * BOIL_PI / 6 * 0.05 * 0.05 * 0.05, 0.05);
    assert_close(boil_load_area(&ball), BOIL_PI * 0.05 * 0.05, 1e-14, 0);
    /* One metre of tube 50 x 5 mm: outside pi 0.05, inside pi 0.04. */
    boil_load tube = load_of(BOIL_SHAPE_TUBE, 7850 * BOIL_PI / 4 * (0.05 * 0.05 - 0.04 * 0.04), 0.05);
    tube.tube_wall_m = 0.005;
    assert_close(boil_load_area(&tube), BOIL_PI * 0.09, 1e-14, 0);
}

/* 40 kg of small parts, half void, 0.2 m deep: 10.19 L of pack, 0.0510 m2 on each face. */
static void pack_is_a_slab_of_its_depth(void **state)
{
    (void)state;
    boil_load l = load_of(BOIL_SHAPE_BALL, 40, 0.01);
    l.packed_depth_m = 0.2;
    assert_null(boil_load_problem(&l));
    assert_close(boil_load_area(&l), 2 * 40 / (7850 * 0.5) / 0.2, 1e-14, 0);
    const boil_conduction_body b = boil_load_parts(&l);
    assert_int_equal(b.dimension, 1);
    assert_close(b.radius_m, 0.1, 1e-15, 0);
    assert_close(b.density_kg_m3, 3925, 1e-15, 0);
    assert_close(b.conductivity_W_mK, 7, 0, 0);
    assert_close(b.mass_kg, 40, 0, 0);
    /* Rinse water hangs on the balls: 6 m/(rho D) = 3.057 m2. */
    assert_close(boil_load_rinse(&l), 0.05 * 6 * 40 / (7850 * 0.01), 1e-14, 0);
}

static void given_area_replaces_only_the_area(void **state)
{
    (void)state;
    boil_load l = load_of(BOIL_SHAPE_PLATE, 22.68, 0.006);
    l.area_m2 = 1.5;
    const boil_conduction_body b = boil_load_parts(&l);
    assert_close(boil_load_area(&l), 1.5, 0, 0);
    assert_close(b.area_m2, 1.5, 0, 0);
    assert_close(b.radius_m, 0.003, 1e-15, 0);
    assert_close(b.mass_kg, 22.68, 0, 0);
    assert_close(boil_load_rinse(&l), 0.05 * 1.5, 1e-15, 0);
    /* The heat flow into a thin part goes with the area. */
    const double y[] = {293.15};
    double dydt[1];
    boil_conduction_body own = b;
    own.area_m2 = 2 * 22.68 / (7850 * 0.006);
    const double ratio = boil_conduction_rates(&b, y, 414, 100, 1, dydt) / boil_conduction_rates(&own, y, 414, 100, 1, dydt);
    assert_close(ratio, 1.5 / own.area_m2, 0.002, 0);
}

static void basket_is_thin_steel(void **state)
{
    (void)state;
    boil_load l = load_of(BOIL_SHAPE_PLATE, 20, 0.006);
    assert_close(boil_load_basket(&l).mass_kg, 0, 0, 0);
    assert_close(boil_load_displaced(&l), 20 / 7850.0, 1e-15, 0);
    l.basket_kg = 11;
    const boil_conduction_body b = boil_load_basket(&l);
    assert_int_equal(b.unknowns, 1);
    assert_close(b.mass_kg, 11, 0, 0);
    assert_close(b.area_m2, 2 * 11 / (7850 * 0.003), 1e-14, 0);
    assert_close(boil_load_displaced(&l), 31 / 7850.0, 1e-15, 0);
    assert_close(boil_load_rinse(&l), 0.05 * boil_load_area(&l), 1e-15, 0);
}

static void thick_parts_get_more_unknowns(void **state)
{
    (void)state;
    static const double mm[] = {6, 25, 40, 60, 100};
    static const int expected[3][5] = {{1, 1, 2, 2, 3}, {1, 1, 2, 2, 3}, {1, 1, 1, 2, 3}};
    for (int s = BOIL_SHAPE_PLATE; s <= BOIL_SHAPE_BALL; s++) {
        for (int i = 0; i < 5; i++) {
            const boil_load l = load_of((boil_shape)s, 10, mm[i] / 1000);
            assert_int_equal(boil_load_parts(&l).unknowns, expected[s][i]);
        }
    }
}

typedef struct {
    size_t offset;
    double value;
    const char *problem;
} complaint;

#define COEFFICIENT "coefficient on the bath side must be 10 to 1e5 W/m2K, or 0 to follow the stirring"
/* clang-format off */
#define BAD(field, value, problem) {offsetof(boil_load, field), value, problem}
/* clang-format on */

/* A wrong value of each field, the sentence for it, and that NaN gets the same sentence. */
static void every_problem_is_named(void **state)
{
    (void)state;
    static const complaint all[] = {
        BAD(mass_kg, 0, "mass of the parts must be 0.001 to 1e5 kg"),
        BAD(mass_kg, 1.01e5, "mass of the parts must be 0.001 to 1e5 kg"),
        BAD(metal.density_kg_m3, 999, "density of the metal must be 1000 to 25000 kg/m3"),
        BAD(size_m, 0.9e-4, "thickness or diameter of the parts must be 1e-4 to 1 m"),
        BAD(size_m, 1.01, "thickness or diameter of the parts must be 1e-4 to 1 m"),
        BAD(tube_wall_m, 0, "wall of the tube must be 1e-4 m to less than half its diameter"),
        BAD(tube_wall_m, 0.025, "wall of the tube must be 1e-4 m to less than half its diameter"),
        BAD(area_m2, -1, "area of the parts must be above 0 to 1e5 m2, or 0 to follow from their shape"),
        BAD(area_m2, 1.01e5, "area of the parts must be above 0 to 1e5 m2, or 0 to follow from their shape"),
        BAD(part_height_m, 0.01, "height of a part must be 0.02 to 1 m"),
        BAD(part_height_m, 1.1, "height of a part must be 0.02 to 1 m"),
        BAD(packed_depth_m, 0.005, "depth of the packed basket must be 0.01 to 2 m, or 0 for parts that hang apart"),
        BAD(packed_depth_m, 2.1, "depth of the packed basket must be 0.01 to 2 m, or 0 for parts that hang apart"),
        BAD(packed_conductivity_W_mK, 2.9, "conductivity of the packed basket must be 3 to 15 W/mK"),
        BAD(packed_conductivity_W_mK, 15.1, "conductivity of the packed basket must be 3 to 15 W/mK"),
        BAD(packed_void, 0.29, "void of the packed basket must be 0.3 to 0.7"),
        BAD(packed_void, 0.71, "void of the packed basket must be 0.3 to 0.7"),
        BAD(basket_kg, -1, "mass of the basket must be 0 to 1e5 kg"),
        BAD(basket_kg, 1.01e5, "mass of the basket must be 0 to 1e5 kg"),
        BAD(temperature_K, 233, "temperature of the parts must be 233.15 to 473.15 K"),
        BAD(temperature_K, 474, "temperature of the parts must be 233.15 to 473.15 K"),
        BAD(immersed_s, 0, "time in the bath must be above 0 s"),
        BAD(latest_s, 60, "latest moment of lifting must be 0 to 366 days, and 0 where no time counts at the boil"),
        BAD(lowering_s, 0.9, "time of lowering must be 1 to 600 s"),
        BAD(lowering_s, 601, "time of lowering must be 1 to 600 s"),
        BAD(coefficient_W_m2K, 9, COEFFICIENT),
        BAD(coefficient_W_m2K, 1.01e5, COEFFICIENT),
        BAD(rinse_kg_m2, -0.1, "water carried in must be 0 to 1 kg/m2"),
        BAD(rinse_kg_m2, 1.1, "water carried in must be 0 to 1 kg/m2"),
    };
    boil_load good = load_of(BOIL_SHAPE_TUBE, 10, 0.05);
    good.tube_wall_m = 0.005;
    assert_null(boil_load_problem(&good));
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        const double values[] = {all[i].value, (double)NAN};
        for (int j = 0; j < 2; j++) {
            boil_load l = good;
            memcpy((char *)&l + all[i].offset, &values[j], sizeof(double));
            const char *problem = boil_load_problem(&l);
            assert_non_null(problem);
            assert_string_equal(problem, all[i].problem);
        }
    }
}

static void an_unknown_shape_is_named(void **state)
{
    (void)state;
    boil_load l = load_of(BOIL_SHAPE_BAR, 10, 0.05);
    l.shape = (boil_shape)9;
    assert_string_equal(boil_load_problem(&l), "shape must be plate, bar, ball or tube");
}

/* The default lacks only mass and size, and a plate needs no tube wall. */
static void default_lacks_mass_and_size(void **state)
{
    (void)state;
    boil_load l = boil_load_default();
    assert_non_null(boil_load_problem(&l));
    l.mass_kg = 1;
    assert_non_null(boil_load_problem(&l));
    l.size_m = 0.006;
    assert_null(boil_load_problem(&l));
    assert_true(isinf(l.immersed_s));
    assert_close(l.temperature_K, 293.15, 1e-15, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(areas_by_hand),
        cmocka_unit_test(pack_is_a_slab_of_its_depth),
        cmocka_unit_test(given_area_replaces_only_the_area),
        cmocka_unit_test(basket_is_thin_steel),
        cmocka_unit_test(thick_parts_get_more_unknowns),
        cmocka_unit_test(every_problem_is_named),
        cmocka_unit_test(an_unknown_shape_is_named),
        cmocka_unit_test(default_lacks_mass_and_size),
    };
    return cmocka_run_group_tests_name("load", tests, NULL, NULL);
}
