/* Dry salt in the bath: against hand calculations, and that it goes where it should. */
#include "support/close.h"
#include "transfer/dissolution.h"

/* A pool of 1 m2, 0.4 m deep: 1450 kg/m3, 2 mPa s at 140 degC, under brine of 1650 kg/m3 that holds 300 kg/m3 more. */
static boil_dissolution_place place(double grain_m, double stirring_W_kg)
{
    return (boil_dissolution_place){grain_m, 413.15, 1450, 2e-3, 1650, 2e-3, 300, stirring_W_kg, 1, 0.4};
}

/* Against limiting diffusivities in water: tests/validate/pool.c. */
static void salt_diffuses_as_the_skin_says(void **state)
{
    (void)state;
    assert_close(boil_dissolution_diffusivity(413.15, 1.63e-3), 4e-9, 1e-12, 0);
}

/* Hand calculation: nu = 1.3793e-6 m2/s, D = 4e-9 (1.63/2)^(2/3) = 3.490e-9, Sc = 395.2, Sc^(2/3) = 53.85;
   (0.1 nu)^(1/4) = 0.019271: k = 4.652e-5 m/s. */
static void stirred_by_hand(void **state)
{
    (void)state;
    const boil_dissolution_place stirred = place(1e-3, 0.1), quiet = place(1e-3, 0);
    assert_close(boil_dissolution_stirred(&stirred), 4.652e-5, 1e-3, 0);
    assert_true(boil_dissolution_stirred(&quiet) == 0);
}

/* Hand calculation: 1 mm falls at 0.05608 m/s, Re = 40.66, Sc^(1/3) = 7.338: Sh = 2 + 0.6 x 6.376 x 7.338 = 30.07, k =
   1.0496e-4 m/s. The smallest grain keeps the Sherwood number of diffusion, 2. */
static void falling_by_hand(void **state)
{
    (void)state;
    const boil_dissolution_place p = place(1e-3, 0), dust = place(1e-7, 0);
    assert_close(boil_dissolution_falling(&p), 1.0496e-4, 1e-3, 0);
    assert_close(boil_dissolution_falling(&dust), 2 * 3.490e-9 / 1e-7, 1e-3, 0);
}

/* Hand calculation, L = 0.25 m: Ra = 9.80665 x 200 x 0.015625/(2e-3 x 3.490e-9) = 4.390e12, Ra^(1/4) = 1447.5, k = 0.27 x 1447.5
   x 3.490e-9/0.25 = 5.456e-6 m/s. Brine no heavier than the bath does not creep. */
static void lying_by_hand(void **state)
{
    (void)state;
    boil_dissolution_place p = place(1e-3, 0);
    assert_close(boil_dissolution_lying(&p), 5.456e-6, 1e-3, 0);
    p.brine_kg_m3 = 1450;
    assert_true(boil_dissolution_lying(&p) == 0);
}

/* Grains of 1, 3, 10 mm that shrink at a constant speed k dC/rho are gone after d rho/(2 k dC) s, three times the time
   constant: 1 mm in still liquid by the k above 34.1 s. Saturated liquid dissolves nothing. */
static void grains_are_gone_after_three_time_constants(void **state)
{
    (void)state;
    static const double mm[] = {1, 3, 10};
    for (int i = 0; i < 3; i++) {
        const boil_dissolution_place p = place(1e-3 * mm[i], 0);
        assert_close(3 * boil_dissolution_time(&p), 2150 * 1e-3 * mm[i] / (2 * boil_dissolution_falling(&p) * 300), 1e-12, 0);
    }
    boil_dissolution_place p = place(1e-3, 0);
    const boil_dissolution_place dust = place(1e-6, 1);
    assert_close(3 * boil_dissolution_time(&p), 34.1, 0.01, 0);
    assert_close(boil_dissolution_time(&dust), 1, 0, 0); /* never faster than a second */
    p.strength_difference_kg_m3 = 0;
    const boil_dissolution_flow none = boil_dissolution_exchange(&p, 2, 3);
    assert_true(none.from_suspension_kg_s == 0 && none.from_bed_kg_s == 0 && none.settling_kg_s > 0);
}

/* Hand calculation, R g = 4.7342 m/s2: 1 mm 4.7342e-6/(2.4827e-5 + 5.9587e-5) = 0.05608 m/s; 20 um is Stokes' to 1 %:
   4.7342 (2e-5)^2/(18 nu) = 7.627e-5. Large grains go as the root of their size. */
static void fall_by_hand(void **state)
{
    (void)state;
    boil_dissolution_place p = place(1e-3, 0);
    assert_close(boil_dissolution_fall(&p), 0.05608, 1e-3, 0);
    p.grain_m = 20e-6;
    assert_close(boil_dissolution_fall(&p), 7.627e-5, 0.01, 0);
    const boil_dissolution_place large = place(0.02, 0), larger = place(0.08, 0);
    assert_close(boil_dissolution_fall(&larger) / boil_dissolution_fall(&large), 2, 0.01, 0);
    p.liquid_kg_m3 = 2200;
    assert_true(boil_dissolution_fall(&p) == 0);
}

/* A first kilogram falls as its grains do; twenty on 1 m2, 6.51 kg heavier than the liquid they displace, sink besides at
   (9.80665 x 6.512/1450)^(1/2) = 0.2099 m/s. */
static void a_cloud_sinks_as_one(void **state)
{
    (void)state;
    const boil_dissolution_place p = place(1e-3, 0);
    assert_close(boil_dissolution_exchange(&p, 20, 0).settling_kg_s, 20 * (0.05608 + 0.2099) / 0.4, 1e-3, 0);
    assert_close(boil_dissolution_exchange(&p, 1e-9, 0).settling_kg_s, 1e-9 * 0.05608 / 0.4, 2e-3, 0);
}

static void stirring_keeps_grains_up(void **state)
{
    (void)state;
    double before = -1;
    for (double eps = 0; eps < 3; eps += 0.01) {
        const boil_dissolution_place p = place(1e-3, eps);
        const double up = boil_dissolution_kept_up(&p);
        assert_true(up > before && up <= 1);
        before = up;
    }
    const boil_dissolution_place still = place(1e-3, 0), half = place(1e-3, 0.1), full = place(1e-3, 1);
    assert_true(boil_dissolution_kept_up(&still) == 0);
    assert_close(boil_dissolution_kept_up(&half), 0.5, 1e-12, 0);
    assert_true(boil_dissolution_kept_up(&full) > 0.98);
}

/* A tonne and 290 kg on 1 m2 lie a metre deep: 2150 kg/m3, two fifths void. A thick bed dissolves at k dC per area,
   whatever its mass; a thin one covers only part of the floor, in proportion to its mass when it is next to nothing. */
static void bed_lies_on_the_floor(void **state)
{
    (void)state;
    const boil_dissolution_place p = place(1e-3, 0);
    const double all = boil_dissolution_lying(&p) * 300;
    assert_close(boil_dissolution_exchange(&p, 0, 1290).bed_m, 1, 1e-12, 0);
    assert_close(boil_dissolution_exchange(&p, 0, 100).from_bed_kg_s, all, 1e-12, 0);
    assert_close(boil_dissolution_exchange(&p, 0, 1.29).from_bed_kg_s, all * (1 - exp(-1)), 1e-12, 0);
    const double trace = boil_dissolution_exchange(&p, 0, 1e-9).from_bed_kg_s;
    assert_close(boil_dissolution_exchange(&p, 0, 2e-9).from_bed_kg_s, 2 * trace, 1e-8, 0);
    const boil_dissolution_flow nothing = boil_dissolution_exchange(&p, 0, 0);
    assert_true(nothing.from_bed_kg_s == 0 && nothing.from_suspension_kg_s == 0 && nothing.settling_kg_s == 0 &&
                nothing.stirred_up_kg_s == 0);
}

/* By hand: 1.29 kg on 1 m2 are 1 mm thick, with 1290 kg/m3: 129 kg are 0.1 m and weigh 1265.06 Pa; as a plate 1 m wide of 2 MPa
   they bear 3.25 x 2e6 x 0.01 = 65000 Pa. Hanging: Ra = 9.80665 x 200 L3/(2e-3 x 3.490e-9), k = 0.14 x 3.490e-9 (2.8099e14)^(1/3)
   = 3.200e-5 m/s, and 300 kg/m3 of it 9.60e-3 kg/m2s. */
static void a_crust_hangs_and_holds(void **state)
{
    (void)state;
    const boil_dissolution_place still = place(1e-3, 0), mixed = place(1e-3, 1);
    boil_dissolution_crust c = boil_dissolution_crust_of(&still, 129, 0, 129);
    assert_close(c.thickness_m, 0.1, 1e-12, 0);
    assert_close(c.holds_Pa, 1265.06 + 65000, 1e-6, 0);
    assert_close(c.dissolving_kg_s, 9.60e-3, 2e-3, 0);
    assert_true(c.growing_kg_s == 0 && c.broken_kg_s == 0);
    c = boil_dissolution_crust_of(&mixed, 129, 0, 129);
    assert_close(c.broken_kg_s, 12.9, 0.02, 0);
    c = boil_dissolution_crust_of(&still, 0, 60, 0);
    assert_close(c.growing_kg_s, 30.0 / 600, 1e-12, 0);
    assert_true(c.cover == 0 && c.holds_Pa == 0 && c.dissolving_kg_s == 0);
    c = boil_dissolution_crust_of(&still, 30, 30, 30); /* half of what there was: no more */
    assert_true(c.growing_kg_s == 0 && c.dissolving_kg_s > 0);
}

/* By hand: 34 kW/m2 through 5 mm of 0.8 W/mK is 212.5 K (170 to 280 K for 1.0 to 0.6 W/mK). */
static void bed_insulates(void **state)
{
    (void)state;
    assert_close(boil_dissolution_bed_superheat(5e-3, 34e3), 212.5, 1e-12, 0);
}

/* Throw in 50 kg and wait ten minutes, in steps of 0.1 s. */
static boil_dissolution_flow thrown_in(const boil_dissolution_place *p, double *suspended, double *bed, double *dissolved)
{
    const double step = 0.1;
    boil_dissolution_flow f = {0};
    *suspended = 50;
    *bed = *dissolved = 0;
    for (int i = 0; i < 6000; i++) {
        f = boil_dissolution_exchange(p, *suspended, *bed);
        const double down = f.settling_kg_s - f.stirred_up_kg_s;
        *suspended -= step * (f.from_suspension_kg_s + down);
        *bed += step * (down - f.from_bed_kg_s);
        *dissolved += step * (f.from_suspension_kg_s + f.from_bed_kg_s);
        assert_true(*suspended >= 0 && *bed >= 0);
    }
    return f;
}

static void a_quiet_bath_gets_a_bed_and_a_boil_none(void **state)
{
    (void)state;
    const boil_dissolution_place quiet = place(1e-3, 0), boiling = place(1e-3, 0.5);
    double suspended, bed, dissolved;
    thrown_in(&quiet, &suspended, &bed, &dissolved);
    assert_close(suspended + bed + dissolved, 50, 1e-12, 0);
    assert_true(bed > 0.75 * 50);
    print_message("50 kg into a quiet bath of 1 m2: %.1f kg on the floor after ten minutes;", bed);
    thrown_in(&boiling, &suspended, &bed, &dissolved);
    assert_close(suspended + bed + dissolved, 50, 1e-12, 0);
    assert_true(dissolved > 0.99 * 50);
    print_message(" boiling %.3f\n", bed);
}

/* Rates have no jump in stirring, masses or density: a small step changes them little. */
static void flows_are_continuous(void **state)
{
    (void)state;
    boil_dissolution_place p = place(1e-3, 0);
    boil_dissolution_flow before = boil_dissolution_exchange(&p, 2, 3);
    for (double eps = 1e-5; eps < 1; eps += 1e-5) {
        p.stirring_W_kg = eps;
        const boil_dissolution_flow f = boil_dissolution_exchange(&p, 2, 3);
        assert_close(f.from_suspension_kg_s, before.from_suspension_kg_s, 0.03, 0);
        assert_close(f.settling_kg_s, before.settling_kg_s, 0, 1e-4);
        assert_close(f.stirred_up_kg_s, before.stirred_up_kg_s, 0, 1e-4);
        before = f;
    }
    for (double rho = 2140; rho < 2160; rho += 0.1) {
        p.liquid_kg_m3 = rho;
        assert_true(isfinite(boil_dissolution_exchange(&p, 2, 3).settling_kg_s));
    }
}

/* 129 kg take 0.1 m3 as a bed, 0.04 m3 of it pores (void 0.4: 0.35 to 0.5 of loose grains, common practice, no source). */
static void salt_stands_dry_above_little_liquid(void **state)
{
    (void)state;
    assert_true(boil_dissolution_dry(0, 0.04) == 0 && boil_dissolution_dry(129, 0.0481) == 0);
    assert_close(boil_dissolution_dry(129, 0.04), 0.5, 1e-9, 0);
    assert_true(boil_dissolution_dry(129, 0.0319) == 1 && boil_dissolution_dry(129, 0) == 1);
    double before = 1;
    for (double liquid = 0.0325; liquid < 0.048; liquid += 5e-4) {
        const double dry = boil_dissolution_dry(129, liquid);
        assert_true(dry < before && before - dry < 0.06);
        before = dry;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(salt_diffuses_as_the_skin_says),
        cmocka_unit_test(stirred_by_hand),
        cmocka_unit_test(falling_by_hand),
        cmocka_unit_test(lying_by_hand),
        cmocka_unit_test(grains_are_gone_after_three_time_constants),
        cmocka_unit_test(fall_by_hand),
        cmocka_unit_test(a_cloud_sinks_as_one),
        cmocka_unit_test(stirring_keeps_grains_up),
        cmocka_unit_test(bed_lies_on_the_floor),
        cmocka_unit_test(bed_insulates),
        cmocka_unit_test(a_crust_hangs_and_holds),
        cmocka_unit_test(a_quiet_bath_gets_a_bed_and_a_boil_none),
        cmocka_unit_test(flows_are_continuous),
        cmocka_unit_test(salt_stands_dry_above_little_liquid),
    };
    return cmocka_run_group_tests_name("solids", tests, NULL, NULL);
}
