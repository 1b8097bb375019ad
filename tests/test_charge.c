/* Filling a tank: amounts, batches that stay below their boil, and a bath, charged and boiled by simulation, that is the one
   which the scenario states. */
#include "close.h"

#include <gsl/gsl_errno.h>

#include "brine.h"
#include "cases.h"
#include "charge.h"
#include "pace.h"
#include "water.h"

static const double strength_kg_m3 = 740;

static boil_plant plant_of(const double blend[BOIL_SALTS])
{
    boil_plant p = open_plant(40e3);
    p.tank.depth_m = 0.8;
    p.charge.basis = BOIL_BY_STRENGTH;
    p.charge.value = strength_kg_m3;
    for (int i = 0; i < BOIL_SALTS; i++)
        p.charge.blend[i] = blend[i];
    return p;
}

static boil_charge_plan plan_of(const boil_plant *p, boil_charge_case c)
{
    boil_charge_plan a;
    boil_run_options o = boil_run_options_default();
    c.added_K = CELSIUS(25);
    assert_null(boil_plant_problem(p));
    assert_int_equal(boil_charge_plan_of(p, &c, &o, &a), BOIL_OK);
    return a;
}

static double poured(const boil_charge_plan *a, boil_act_kind kind)
{
    double sum = 0;
    for (size_t i = 0; i < a->steps_count; i++)
        sum += a->steps[i].kind == kind ? a->steps[i].mass_kg : 0;
    return sum;
}

static void batches_stay_below_the_boil(void **unused)
{
    (void)unused;
    for (int k = 0; k < BRINE_BLENDS; k++) {
        boil_plant p = plant_of(brine_blends[k]);
        boil_charge_state wanted;
        assert_int_equal(boil_plant_charge(&p, &wanted), BOIL_OK);
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_int_equal(a.end, BOIL_CHARGE_DONE);
        assert_close(poured(&a, BOIL_ACT_WATER), wanted.mixture.water, 1e-9, 0);
        assert_close(poured(&a, BOIL_ACT_WATER) + poured(&a, BOIL_ACT_SALTS), boil_mixture_mass(&wanted.mixture), 1e-9, 0);
        for (size_t i = 1; i < a.steps_count; i++) {
            const boil_charge_step *s = &a.steps[i];
            assert_true(s->hottest_K <= s->boils_K - BOIL_CHARGE_MARGIN_K + BOIL_CHARGE_RISE_K);
            assert_true(s->temperature_K <= s->hottest_K + 1e-9 && s->hottest_K < s->adiabatic_K + 0.2);
            assert_true(s->over_s >= s->mass_kg / BOIL_PACE_SALTS_KG_S - 1e-9 && s->wait_s >= 0);
        }
        assert_close(a.strength_kg_m3, strength_kg_m3, 1e-6, 0);
        assert_close(a.hot_level_m, p.tank.level_m, 1e-12, 0);
        assert_true(a.cold_level_m < a.hot_level_m && a.hot_level_m < a.swelled_level_m && a.heat_up_s > 600);
        assert_close(a.water_to_add_kg, a.evaporated_kg, 0, 1e-6);
    }
}

/* Isothermal heat and adiabatic end of the whole make-up from water at 25 degC, on the model's own scale of enthalpy, whose
   heats of solution test_heat.c holds to published ones: about 669 kJ/kg and 119 degC, 385 and 97.5. */
static void first_make_up_is_hot(void **unused)
{
    (void)unused;
    const double blends[2][BOIL_SALTS] = {{1, 0, 0}, {0.65, 0.35, 0}}, fractions[2] = {0.466, 0.557};
    const double heats[2] = {669e3, 385e3}, ends_C[2] = {119.4, 97.5};
    for (int k = 0; k < 2; k++) {
        boil_plant p = plant_of(blends[k]);
        p.charge.basis = BOIL_BY_SALT_FRACTION;
        p.charge.value = fractions[k];
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_close(a.heat_J_kg, heats[k], 0.01, 0);
        assert_close(a.adiabatic_K, CELSIUS(ends_C[k]), 0, 0.5);
        assert_true(a.filled_K < a.adiabatic_K);
    }
}

static int add(boil_schedule *s, boil_act_kind kind, double time_s, double mass_kg, const double blend[BOIL_SALTS],
               double fraction)
{
    boil_act a = {.kind = kind, .time_s = time_s};
    if (kind == BOIL_ACT_WATER)
        a.is.water.temperature_K = CELSIUS(25);
    else if (kind == BOIL_ACT_SALTS)
        a.is.salts = (boil_salts_act){.temperature_K = CELSIUS(25), .blend = {blend[0], blend[1], blend[2]}};
    else
        a.is.liquid = (boil_liquid_act){
            .temperature_K = CELSIUS(25), .blend = {blend[0], blend[1], blend[2]}, .salt_fraction = fraction};
    boil_act_pour(&a, mass_kg, mass_kg / 600);
    return mass_kg > 0 ? boil_schedule_add(s, &a) : BOIL_OK;
}

/* From a weak warm bath half as high, stirred, nothing lost, by `liquid_fraction` or by dry salts: the amounts that the plan names. */
static void charged_to(const double blend[BOIL_SALTS], double liquid_fraction)
{
    boil_plant p = plant_of(blend);
    boil_charge_state wanted;
    p.tank.wall_thickness_m = 0;
    p.losses.evaporation_factor = p.losses.convection_factor = p.losses.radiation_factor = 0;
    p.losses.wall_coefficient_W_m2K = 0;
    assert_int_equal(boil_plant_charge(&p, &wanted), BOIL_OK);
    boil_charge_case c = {.liquid_fraction = liquid_fraction, .from_level_m = 0.25, .from_fraction = 0.3, .from_K = CELSIUS(40)};
    boil_charge_plan a = plan_of(&p, c);
    assert_int_equal(a.end, BOIL_CHARGE_DONE);

    boil_plant from = p;
    from.charge = (boil_charge){{blend[0], blend[1], blend[2]}, BOIL_BY_SALT_FRACTION, 0.3, CELSIUS(40)};
    from.tank.level_m = 0.25;
    from.heater.dial = 0;
    from.fittings.mixer_on = true;
    boil_schedule s;
    boil_schedule_init(&s, 6 * 3600);
    assert_int_equal(add(&s, BOIL_ACT_WATER, 0, a.water_kg, blend, 0), BOIL_OK);
    assert_int_equal(add(&s, BOIL_ACT_SALTS, 1200, a.salts_kg, blend, 0), BOIL_OK);
    assert_int_equal(add(&s, BOIL_ACT_LIQUID, 1200, a.liquid_kg, blend, liquid_fraction), BOIL_OK);
    boil_run_options o = boil_run_options_default();
    o.tolerance = 1e-10;
    boil_history h;
    assert_int_equal(boil_run(&from, &s, &o, &h), BOIL_OK);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    assert_close(h.summary.vented_total_kg, 0, 0, 1e-9);
    double water_over = h.summary.bath_mass_end_kg - boil_mixture_mass(&wanted.mixture);
    double boils_off = a.evaporated_kg - a.water_to_add_kg; /* what the plan has too much of, before it heats up */
    assert_close(water_over, boils_off, 0, 1e-9 * boil_mixture_mass(&wanted.mixture));
    if (boils_off < 1e-6) {
        assert_close(h.summary.boiling_point_end_K, wanted.boiling_point_K, 0, 0.01);
        assert_close(h.summary.strength_end_kg_m3, strength_kg_m3, 1e-6, 0);
    }
    boil_history_free(&h);
    boil_schedule_free(&s);
}

static void simulation_makes_the_same_bath(void **unused)
{
    (void)unused;
    for (int k = 0; k < BRINE_BLENDS; k++) {
        charged_to(brine_blends[k], 0);
        charged_to(brine_blends[k], 0.6);
    }
}

/* Weak liquid: too much water, boiled down by the run of the heater. */
static void boils_down_to_it(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_caustic);
    boil_charge_state wanted;
    assert_int_equal(boil_plant_charge(&p, &wanted), BOIL_OK);
    boil_charge_plan a = plan_of(&p, (boil_charge_case){.liquid_fraction = 0.45});
    assert_int_equal(a.end, BOIL_CHARGE_DONE);
    assert_true(a.water_to_add_kg < -10 && a.boil_down_s > 600);
    boil_plant from = p;
    from.charge = (boil_charge){{1, 0, 0}, BOIL_BY_SALT_FRACTION, a.liquid_kg * 0.45 / (wanted.mixture.salt[0] + wanted.mixture.water - a.water_to_add_kg), 0};
    boil_charge_state weak;
    assert_int_equal(boil_plant_charge(&from, &weak), BOIL_OK);
    from.tank.level_m *= (boil_mixture_mass(&wanted.mixture) - a.water_to_add_kg) / boil_mixture_mass(&weak.mixture);
    boil_schedule s;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    boil_schedule_init(&s, a.boil_down_s);
    assert_int_equal(boil_run(&from, &s, &o, &h), BOIL_OK);
    print_message("boiled down in %.0f s as reckoned: %.2f K off\n", a.boil_down_s,
                  h.summary.boiling_point_end_K - wanted.boiling_point_K);
    assert_close(h.summary.boiling_point_end_K, wanted.boiling_point_K, 0, 0.3);
    boil_history_free(&h);
    boil_schedule_free(&s);
}

static void refusals(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_blends[1]);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.6, .from_fraction = 0.52, .from_K = CELSIUS(60)}).end,
                     BOIL_CHARGE_TOO_MUCH);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.3, .from_fraction = 0.5, .from_K = CELSIUS(110)}).end,
                     BOIL_CHARGE_TOO_HOT);
    assert_int_equal(plan_of(&p, (boil_charge_case){.liquid_fraction = 0.30}).end, BOIL_CHARGE_NO_ROOM);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.3, .from_fraction = 0.65, .from_K = CELSIUS(10)}).end,
                     BOIL_CHARGE_NO_BATH);
}

/* Whatever the blend, water poured onto salts makes a solution hotter than water's own boil, or nearly. */
static void salts_first_flashes(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_caustic);
    boil_charge_paste paste = boil_charge_salts_first(&p, CELSIUS(20));
    assert_close(paste.water_boils_K, boil_water_saturation_temperature(p.room.pressure_Pa), 1e-12, 0);
    assert_true(paste.hottest_K > paste.water_boils_K + 10 && paste.hottest_K < CELSIUS(130));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(batches_stay_below_the_boil),    cmocka_unit_test(first_make_up_is_hot),
        cmocka_unit_test(simulation_makes_the_same_bath), cmocka_unit_test(boils_down_to_it),
        cmocka_unit_test(refusals),                       cmocka_unit_test(salts_first_flashes),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("charge", tests, NULL, NULL);
}
