/* Filling a tank: amounts, batches that stay below their boil, and a bath, charged and boiled by simulation, that is the
   one which the scenario states. */
#include "support/close.h"

#include <gsl/gsl_errno.h>

#include "analysis/charge.h"
#include "analysis/charge_batches.h"
#include "analysis/pour_rate.h"
#include "analysis/steady_state.h"
#include "analysis/trace.h"
#include "properties/water.h"
#include "support/brine.h"
#include "support/cases.h"
#include "support/pins.h"

static const double strength_kg_m3 = 740;

static boil_plant plant_of(const double blend[BOIL_SALTS])
{
    boil_plant p = open_plant(40e3);
    p.tank.depth_m = 0.8;
    p.charge.basis = BOIL_INITIAL_BY_STRENGTH;
    p.charge.value = strength_kg_m3;
    for (int i = 0; i < BOIL_SALTS; i++)
        p.charge.blend[i] = blend[i];
    return p;
}

static boil_charge_plan plan_of(const boil_plant *p, boil_charge_case c)
{
    boil_charge_plan a;
    boil_run_options o = boil_run_options_default();
    c.added_K = c.liquid_K = CELSIUS(25);
    assert_null(boil_plant_problem(p));
    assert_int_equal(boil_charge_plan_of(p, &c, &o, &a), BOIL_OK);
    return a;
}

static double poured(const boil_charge_plan *a, boil_action_kind kind)
{
    double sum = 0;
    for (size_t i = 0; i < a->steps_count; i++)
        sum += a->steps[i].kind == kind ? a->steps[i].mass_kg : 0;
    return sum;
}

/* What a batch does to a bath well mixed and without losses is more than what its run does. */
static void batches_are_small(const boil_charge_plan *a)
{
    for (size_t i = 1; i < a->steps_count; i++) {
        const boil_charge_step *s = &a->steps[i], *before = &a->steps[i - 1];
        assert_true(s->hottest_K <= before->temperature_K + BOIL_CHARGE_RISE_K + 1e-6);
        assert_true(s->hottest_K <= s->boils_K - BOIL_CHARGE_MARGIN_K + 1e-6);
        assert_true(s->temperature_K <= s->next_below_K + 1e-9 && s->temperature_K <= s->hottest_K + 1e-9);
        assert_true(s->hottest_K < s->adiabatic_K + 0.2);
        assert_true(s->mass_kg <= a->salts_kg / 8 * (1 + 1e-9));
        assert_true(s->over_s >= s->mass_kg / BOIL_POUR_RATE_SALTS_KG_S - 1e-9 && s->wait_s >= 0);
    }
}

/* Each begins when the one before it is in and has been waited out, on a minute, since a sheet's clock shows no more. */
static void one_after_the_other(const boil_charge_plan *a)
{
    for (size_t i = 0; i < a->steps_count; i++) {
        const boil_charge_step *s = &a->steps[i];
        double next_s = i + 1 < a->steps_count ? a->steps[i + 1].start_s : a->filled_s;
        assert_close(fmod(s->start_s, 60), 0, 0, 0);
        assert_close(s->start_s + s->over_s + s->wait_s, next_s, 0, 1e-6);
        assert_true(s->wait_s >= (i > 0 ? 60 : 0)); /* a look at thermometer and floor */
    }
}

/* Equation (1) of analysis/charge.h again, from what the steps say: how much water is left follows from the boiling point. */
static int pace_is_of_the_zone(const boil_plant *p, const boil_charge_plan *a)
{
    int slowed = 0;
    boil_mixture there = {.water = a->water_kg};
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    for (size_t i = 1; i < a->steps_count; i++) {
        const boil_charge_step *s = &a->steps[i];
        double T = a->steps[i - 1].temperature_K, boils_K = a->steps[i - 1].boils_K, solid_J = 0, fraction;
        boil_mixture batch = boil_mixture_of(p->charge.blend, 1);
        batch = boil_mixture_scaled(&batch, s->mass_kg);
        boil_mixture then = boil_mixture_sum(&there, &batch);
        for (int k = 0; k < BOIL_SALTS; k++)
            solid_J += batch.salt[k] * boil_salt_solid_enthalpy(k, CELSIUS(25));
        boil_heat now = boil_solution_heat(&there, T);
        double each = (now.enthalpy_J + solid_J - boil_solution_heat(&then, T).enthalpy_J) / s->mass_kg,
               mass = boil_mixture_mass(&there);
        double depth = mass / (boil_solution_density(&there, T) * boil_tank_area(&p->tank));
        double mixing =
            boil_swell_mixing_time(p->layer.turnover_factor, a->mixer_W / mass, boil_tank_equivalent_radius(&p->tank), depth);
        double rate = 0.1 * now.heat_capacity_J_K * (boils_K - T) / (each * mixing), took = s->mass_kg / s->over_s;
        assert_close(took, each > 0 ? fmin(rate, BOIL_POUR_RATE_SALTS_KG_S) : BOIL_POUR_RATE_SALTS_KG_S, 1e-3, 0);
        slowed += took < 0.99 * BOIL_POUR_RATE_SALTS_KG_S;
        assert_int_equal(boil_solution_fraction_boiling_at(&air, p->charge.blend, s->boils_K, &fraction), BOIL_OK);
        there = then;
        there.water = boil_mixture_salts(&then) * (1 / fraction - 1);
    }
    return slowed;
}

static void batches_stay_below_the_boil(void **unused)
{
    (void)unused;
    for (int k = 0; k < BRINE_BLENDS; k++) {
        boil_plant p = plant_of(brine_blends[k]);
        boil_initial_state wanted;
        assert_int_equal(boil_plant_initial(&p, &wanted), BOIL_OK);
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_int_equal(a.end, BOIL_CHARGE_DONE);
        assert_close(poured(&a, BOIL_ACTION_WATER), wanted.mixture.water, 1e-9, 0);
        assert_close(poured(&a, BOIL_ACTION_WATER) + poured(&a, BOIL_ACTION_SALTS), boil_mixture_mass(&wanted.mixture), 1e-9,
                     0);
        batches_are_small(&a);
        one_after_the_other(&a);
        pace_is_of_the_zone(&p, &a);
        assert_close(a.strength_kg_m3, strength_kg_m3, 1e-6, 0);
        assert_close(a.hot_level_m, p.tank.level_m, 1e-12, 0);
        assert_true(a.cold_level_m < a.hot_level_m && a.hot_level_m < a.swelled_level_m && a.heat_up_s > 600);
        assert_close(a.water_to_add_kg, a.evaporated_kg, 0, 1e-6);
    }
}

static double first_salts(const boil_charge_plan *a)
{
    size_t i = 0;
    while (i + 1 < a->steps_count && a->steps[i].kind != BOIL_ACTION_SALTS)
        i++;
    return a->steps[i].mass_kg;
}

/* By half kilograms, the last batch the rest, and no more than without. */
static void batches_can_be_weighed(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_blends[0]);
    boil_charge_plan any = plan_of(&p, (boil_charge_case){0}), a = plan_of(&p, (boil_charge_case){.weighed_kg = 0.5});
    assert_int_equal(a.end, BOIL_CHARGE_DONE);
    assert_close(poured(&a, BOIL_ACTION_SALTS), poured(&any, BOIL_ACTION_SALTS), 1e-9, 0);
    assert_true(a.steps_count <= any.steps_count + 1);
    for (size_t i = 0; i + 1 < a.steps_count; i++) {
        double halves = 2 * a.steps[i].mass_kg;
        assert_true(a.steps[i].kind != BOIL_ACTION_SALTS || a.steps[i + 1].kind != BOIL_ACTION_SALTS ||
                    fabs(halves - round(halves)) < 1e-6);
    }
    pace_is_of_the_zone(&p, &a);
    double alike_kg = first_salts(&any), first_kg = first_salts(&a); /* rounded up, since so much goes in as well */
    assert_true(first_kg > alike_kg && first_kg < alike_kg + 0.5);
}

/* Isothermal heat and adiabatic end of the whole make-up from water at 25 degC, on the model's own scale of enthalpy, whose
   heats of solution unit/model/properties/test_heat.c holds to published ones: about 669 kJ/kg and 119 degC, 385 and 97.5. */
static void first_make_up_is_hot(void **unused)
{
    (void)unused;
    const double blends[2][BOIL_SALTS] = {{1, 0, 0}, {0.65, 0.35, 0}}, fractions[2] = {0.466, 0.557};
    const double heats[2] = {669e3, 385e3}, ends_C[2] = {119.4, 97.5};
    for (int k = 0; k < 2; k++) {
        boil_plant p = plant_of(blends[k]);
        p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
        p.charge.value = fractions[k];
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_close(a.heat_J_kg, heats[k], 0.01, 0);
        assert_close(a.adiabatic_K, CELSIUS(ends_C[k]), 0, 0.5);
        assert_true(a.filled_K < a.adiabatic_K);
    }
}

/* What a charge of caustic sets free, kJ per mol of it, against the published integral heats of solution; the rows that a
   tank can be filled to. Basis: as in unit/model/properties/test_heat.c. */
static void heat_is_the_published_one(void **unused)
{
    (void)unused;
    const double basis_kJ_mol = -44.51 - -42.89, water_kg_mol = 0.01801528;
    double worst = 0;
    int rows = 0;
    published *t = published_open("tests/published/heat_of_solution.csv");
    while (published_next(t)) {
        double r = published_number(t, "r"), molar = boil_salt_molar_mass(BOIL_NAOH);
        if (r > 10)
            continue;
        boil_plant p = plant_of(brine_caustic);
        p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
        p.charge.value = molar / (molar + r * water_kg_mol);
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_int_equal(a.end, BOIL_CHARGE_DONE);
        double off = -a.heat_J_kg * molar / 1e3 - published_number(t, "value") - basis_kJ_mol;
        pins_hold_row("heat_of_solution", t, off);
        worst = fmax(worst, fabs(off));
        rows++;
    }
    published_close(t);
    assert_int_equal(rows, 4);
    print_message("heat of a charge of caustic: %d published rows, within %.2f kJ/mol\n", rows, worst);
}

static int add(boil_schedule *s, boil_action_kind kind, double time_s, double mass_kg, const double blend[BOIL_SALTS],
               double fraction)
{
    boil_action a = {.kind = kind, .time_s = time_s};
    if (kind == BOIL_ACTION_WATER)
        a.is.water.temperature_K = CELSIUS(25);
    else if (kind == BOIL_ACTION_SALTS)
        a.is.salts = (boil_action_salts){.temperature_K = CELSIUS(25), .blend = {blend[0], blend[1], blend[2]}};
    else
        a.is.liquid = (boil_action_liquid){
            .temperature_K = CELSIUS(25), .blend = {blend[0], blend[1], blend[2]}, .salt_fraction = fraction};
    boil_action_pour(&a, mass_kg, mass_kg / 600);
    return mass_kg > 0 ? boil_schedule_add(s, &a) : BOIL_OK;
}

/* From a weak warm bath half as high, stirred, nothing lost, by `liquid_fraction` or by dry salts: the amounts that the
 * plan names. */
static void charged_to(const double blend[BOIL_SALTS], double liquid_fraction)
{
    boil_plant p = plant_of(blend);
    boil_initial_state wanted;
    p.tank.wall_thickness_m = 0;
    p.losses.evaporation_factor = p.losses.convection_factor = p.losses.radiation_factor = 0;
    p.losses.wall_coefficient_W_m2K = 0;
    assert_int_equal(boil_plant_initial(&p, &wanted), BOIL_OK);
    boil_charge_case c = {
        .liquid_fraction = liquid_fraction, .from_level_m = 0.25, .from_fraction = 0.3, .from_K = CELSIUS(40)};
    boil_charge_plan a = plan_of(&p, c);
    assert_int_equal(a.end, BOIL_CHARGE_DONE);

    boil_plant from = p;
    from.charge = (boil_initial_charge){{blend[0], blend[1], blend[2]}, BOIL_INITIAL_BY_SALT_FRACTION, 0.3, CELSIUS(40)};
    from.tank.level_m = 0.25;
    from.heater.dial = 0;
    from.fittings.mixer_on = true;
    boil_schedule s;
    boil_schedule_init(&s, 6 * 3600);
    assert_int_equal(add(&s, BOIL_ACTION_WATER, 0, a.water_kg, blend, 0), BOIL_OK);
    assert_int_equal(add(&s, BOIL_ACTION_SALTS, 1200, a.salts_kg, blend, 0), BOIL_OK);
    assert_int_equal(add(&s, BOIL_ACTION_LIQUID, 1200, a.liquid_kg, blend, liquid_fraction), BOIL_OK);
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

/* So long after the heat comes on; the bath's mass. */
static double heated_for(const boil_plant *filled, double duration_s, double *boils_K)
{
    boil_schedule nothing;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    o.tolerance = 1e-9;
    boil_schedule_init(&nothing, duration_s);
    assert_int_equal(boil_run(filled, &nothing, &o, &h), BOIL_OK);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    double mass = h.summary.bath_mass_end_kg;
    *boils_K = h.summary.boiling_point_end_K;
    boil_history_free(&h);
    return mass;
}

/* Weak liquid, too much water: heated up and boiled down by the run to the mass of the bath that is stated, every loss on,
   it is that bath. When, the plan reckons from the steady boil. */
static void boils_down_to_it(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_caustic), filled = p;
    boil_initial_state wanted;
    assert_int_equal(boil_plant_initial(&p, &wanted), BOIL_OK);
    boil_charge_plan a = plan_of(&p, (boil_charge_case){.liquid_fraction = 0.45});
    assert_int_equal(a.end, BOIL_CHARGE_DONE);
    assert_true(a.water_to_add_kg < -10 && a.boil_down_s > 600);
    filled.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0.45, a.filled_K};
    filled.tank.level_m = a.filled_level_m;
    double reckoned_s = a.heat_up_s + a.boil_down_s, t = reckoned_s, before_t = t - 120, boils_K;
    double off = 1, mass = boil_mixture_mass(&wanted.mixture), before = heated_for(&filled, before_t, &boils_K) / mass - 1;
    for (int i = 0; i < 8 && fabs(off) > 1e-9; i++) {
        off = heated_for(&filled, t, &boils_K) / mass - 1;
        double next = t - off * (t - before_t) / (off - before);
        before = off;
        before_t = t;
        t = next;
    }
    assert_close(off, 0, 0, 1e-9);
    assert_close(boils_K, wanted.boiling_point_K, 0, 0.01);
    assert_close(before_t, reckoned_s, 0.05, 0);
    print_message("boiled down to the mass in %.0f s, %.0f reckoned: %.4f K off\n", before_t, reckoned_s,
                  boils_K - wanted.boiling_point_K);
}

/* Badly stirred, salts go in more slowly. */
static void stirring_sets_the_pace(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_caustic);
    p.tank.length_m = 0.45;
    p.tank.width_m = 0.3;
    p.tank.level_m = 0.2;
    p.fittings.mixer_W = 0.5;
    boil_charge_plan slow = plan_of(&p, (boil_charge_case){0});
    assert_int_equal(slow.end, BOIL_CHARGE_DONE);
    assert_true(slow.mixer_stated);
    assert_true(pace_is_of_the_zone(&p, &slow) >= 2);
    p.fittings.mixer_W = 0;
    assert_false(plan_of(&p, (boil_charge_case){0}).mixer_stated);
}

/* The water that evaporated, at its pace, does no harm; a fifth faster does what the pace was limited by. */
static void water_goes_in_at_its_pace(void **unused)
{
    (void)unused;
    int limited = 0;
    for (int k = 0; k < 2; k++) {
        boil_plant p = plant_of(brine_blends[1]);
        p.tank.depth_m = k == 0 ? 0.8 : 0.72; /* little freeboard */
        boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
        assert_int_equal(a.end, BOIL_CHARGE_DONE);
        assert_true(a.water_to_add_kg > 5 && a.water_pace.rate_kg_s > 0);
        boil_plant q = p;
        q.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
        q.charge.value = a.bath_salts_kg / (a.mass_kg - a.water_to_add_kg);
        boil_initial_state bath;
        assert_int_equal(boil_plant_initial(&q, &bath), BOIL_OK);
        q.tank.level_m *= (a.mass_kg - a.water_to_add_kg) / boil_mixture_mass(&bath.mixture);
        boil_row calm;
        boil_run_options o = boil_run_options_default();
        assert_int_equal(boil_steady_state_first_row(&q, &o, &calm), BOIL_OK);
        o.closures = BOIL_CLOSURES_GRAVE;
        for (int faster = 0; faster < 2; faster++) {
            boil_schedule s;
            boil_history h;
            const char *id, *title;
            double rate = a.water_pace.rate_kg_s * (faster ? 1.2 : 1);
            double mass = a.water_to_add_kg * rate / (rate - calm.vented_kg_s);
            boil_action action = boil_pour_rate_action(BOIL_ACTION_WATER, mass, p.charge.blend, 0, CELSIUS(25));
            boil_action_pour(&action, mass, rate);
            boil_schedule_init(&s, action.is.water.over_s + 30);
            assert_int_equal(boil_schedule_add(&s, &action), BOIL_OK);
            assert_int_equal(boil_run(&q, &s, &o, &h), BOIL_OK);
            assert_int_equal(boil_pour_rate_forbids(&q, &s, &h, &id, &title), BOIL_OK);
            if (!faster)
                assert_null(id);
            else if (a.water_pace.limited_id != NULL)
                assert_non_null(id);
            boil_history_free(&h);
            boil_schedule_free(&s);
        }
        limited += a.water_pace.limited_id != NULL;
    }
    assert_int_equal(limited, 1);
}

static void topping_up(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_blends[1]);
    boil_charge_plan a = plan_of(&p, (boil_charge_case){.from_level_m = 0.25, .from_fraction = 0.5, .from_K = CELSIUS(60)});
    assert_int_equal(a.end, BOIL_CHARGE_DONE);
    assert_false(a.all_put_in);
    assert_int_equal(a.steps[0].kind, BOIL_ACTION_WATER);
    assert_true(a.steps[0].heat_J > 0 && a.steps_count > 2); /* water is diluted into the strong bath: that heats */
    assert_close(poured(&a, BOIL_ACTION_WATER), a.water_kg, 1e-9, 0);
    boil_charge_plan full = plan_of(
        &p, (boil_charge_case){.from_level_m = 0.9 * p.tank.level_m, .from_fraction = a.salt_fraction, .from_K = CELSIUS(60)});
    assert_int_equal(full.end, BOIL_CHARGE_DONE);
    boil_charge_plan more = plan_of(
        &p, (boil_charge_case){.from_level_m = p.tank.level_m, .from_fraction = a.salt_fraction, .from_K = CELSIUS(60)});
    assert_int_equal(more.end, BOIL_CHARGE_TOO_MUCH); /* cold it is denser */
    double left_m = p.tank.level_m - more.bail_m3 / boil_tank_area(&p.tank);
    boil_charge_plan bailed =
        plan_of(&p, (boil_charge_case){.from_level_m = left_m, .from_fraction = a.salt_fraction, .from_K = CELSIUS(60)});
    assert_int_equal(bailed.end, BOIL_CHARGE_DONE);
    assert_close(bailed.salts_kg + bailed.water_kg, 0, 0, 1e-3);
    assert_int_equal(bailed.steps_count, 0);
    assert_true(bailed.heat_up_s > 600);
}

/* "5 to 6 lb of salts to the gallon boil near 285 degF": common practice, no source. It holds of a gallon of hot bath; of a
   gallon of water put in it boils some 25 degF lower: which is why both are named. */
static void which_gallon_is_meant(void **unused)
{
    (void)unused;
    const double six_lb_gal = 6 * 119.826;
    boil_plant p = plant_of(brine_blends[1]);
    p.charge.value = six_lb_gal;
    boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
    double hot_F = (a.boiling_point_K - BOIL_ZERO_CELSIUS) * 1.8 + 32;
    assert_close(hot_F, 285, 0, 5);
    assert_true(a.all_put_in);
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p.charge.value = six_lb_gal / (six_lb_gal + boil_water_density(CELSIUS(20)));
    boil_charge_plan b = plan_of(&p, (boil_charge_case){0});
    assert_close(b.per_water_kg_m3, six_lb_gal, 1e-6, 0);
    double put_in_F = (b.boiling_point_K - BOIL_ZERO_CELSIUS) * 1.8 + 32;
    print_message("6 lb to the gallon of hot bath: %.1f degF; of water put in: %.1f degF\n", hot_F, put_in_F);
    assert_true(put_in_F < 270);
}

/* Too much heat for the room above the bath is said. */
static void boiling_over_is_said(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_blends[1]);
    p.tank.length_m = p.tank.width_m = 0.5;
    p.tank.depth_m = 1.8;
    p.tank.level_m = 1.6;
    p.heater.input_W = 90e3;
    boil_charge_plan a = plan_of(&p, (boil_charge_case){0});
    assert_int_equal(a.end, BOIL_CHARGE_DONE);
    assert_true(a.freeboard_m < 0 && a.swelled_level_m > p.tank.depth_m);
    assert_true(isnan(a.water_pace.rate_kg_s) && a.water_pace.limited_by != NULL);
}

static void refusals(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_blends[1]);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.4, .from_fraction = 0.5, .from_K = CELSIUS(136)}).end,
                     BOIL_CHARGE_TOO_HOT);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.3, .from_fraction = 0.95, .from_K = CELSIUS(90)}).end,
                     BOIL_CHARGE_NO_BATH);
    assert_int_equal(plan_of(&p, (boil_charge_case){.from_level_m = 0.3, .from_fraction = 0.5, .from_K = CELSIUS(110)}).end,
                     BOIL_CHARGE_TOO_HOT);
    assert_int_equal(plan_of(&p, (boil_charge_case){.liquid_fraction = 0.30}).end, BOIL_CHARGE_NO_FREEBOARD);
    boil_charge_plan cold = plan_of(&p, (boil_charge_case){.from_level_m = 0.3, .from_fraction = 0.65, .from_K = CELSIUS(10)});
    assert_int_equal(cold.end, BOIL_CHARGE_CRYSTALS);
    assert_true(cold.from_crystals_K > CELSIUS(30));
    boil_plant strong = plant_of(brine_caustic);
    strong.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    strong.charge.value = 0.70;
    assert_int_equal(plan_of(&strong, (boil_charge_case){0}).end, BOIL_CHARGE_NO_DISSOLVING);
}

/* Whatever the blend, water poured onto salts makes a solution hotter than water's own boil, or nearly. */
static void salts_first_flashes(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(brine_caustic);
    boil_charge_paste paste = boil_charge_salts_first(&p, CELSIUS(20));
    assert_close(paste.water_boils_K, boil_water_saturation_temperature(p.ambient.pressure_Pa), 1e-12, 0);
    assert_true(paste.hottest_K > paste.water_boils_K + 10 && paste.hottest_K < CELSIUS(130));
}

/* Each step's run starts from a bath mixed through; in one go, what the last batch left behind is still there. That much is
   judgement: a hundredth of a batch that heats by 10 K. */
static void in_one_go_it_comes_to_the_same(void **unused)
{
    (void)unused;
    const boil_charge_case cases[] = {
        {0}, {.liquid_fraction = 0.5}, {.from_level_m = 0.25, .from_fraction = 0.45, .from_K = CELSIUS(25)}};
    const size_t temperature = offsetof(boil_row, temperature_K), level = offsetof(boil_row, still_level_m);
    for (size_t k = 0; k < sizeof cases / sizeof cases[0]; k++) {
        boil_plant p = plant_of(brine_blends[0]);
        boil_run_options o = boil_run_options_default();
        boil_charge_plan a = plan_of(&p, cases[k]);
        boil_history h;
        double begin_s;
        assert_int_equal(boil_charge_run(&p, &a, &o, &begin_s, &h), BOIL_OK);
        size_t first = cases[k].from_level_m > 0 ? 0 : 1;
        assert_true(begin_s == (first < a.steps_count ? a.steps[first].start_s : a.filled_s));
        for (size_t i = cases[k].from_level_m > 0 ? 0 : 1; i < a.steps_count; i++) {
            const boil_charge_step *s = &a.steps[i];
            double over_s = s->start_s + s->over_s + s->wait_s - begin_s;
            assert_close(boil_trace_at(&h, temperature, over_s), s->temperature_K, 0, 0.5);
            assert_close(boil_trace_at(&h, level, over_s), s->level_m, 0.01, 0);
        }
        assert_close(h.end_s, a.filled_s + 1.05 * a.heat_up_s - begin_s, 1e-9, 0); /* a little late is not missed: judgement */
        assert_close(h.summary.time_to_boil_s, a.filled_s + a.heat_up_s - begin_s, 0.02, 0);
        assert_true(fabs(h.balance.energy.closure) < 1e-9 && fabs(h.balance.salts.closure) < 1e-9);
        boil_history_free(&h);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(batches_stay_below_the_boil),
        cmocka_unit_test(batches_can_be_weighed),
        cmocka_unit_test(first_make_up_is_hot),
        cmocka_unit_test(heat_is_the_published_one),
        cmocka_unit_test(simulation_makes_the_same_bath),
        cmocka_unit_test(boils_down_to_it),
        cmocka_unit_test(stirring_sets_the_pace),
        cmocka_unit_test(water_goes_in_at_its_pace),
        cmocka_unit_test(topping_up),
        cmocka_unit_test(which_gallon_is_meant),
        cmocka_unit_test(boiling_over_is_said),
        cmocka_unit_test(refusals),
        cmocka_unit_test(salts_first_flashes),
        cmocka_unit_test(in_one_go_it_comes_to_the_same),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("charge", tests, NULL, NULL);
}
