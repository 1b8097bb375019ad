/* unit/analysis/test_findings.c -- each finding appears where it should, with its quantity, and a good shift raises none.
   Limits such as 1 lb per 2 gal and six inches of freeboard: common practice, no source. Signal words: ANSI Z535. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "case/grading.h"
#include "case/schedule.h"
#include "findings/findings.h"
#include "findings/run_set.h"
#include "analysis/heater_size.h"
#include "support/cases.h"

typedef struct {
    boil_run_set set;
    boil_history central; /* the likely run of the set */
    boil_findings likely, possible;
} judged;

static judged judge(const boil_plant *p, double duration_s, const boil_action *actions, size_t count)
{
    judged j;
    boil_schedule s = schedule_with(duration_s, actions, count);
    boil_run_options o = boil_run_options_default();
    assert_null(boil_plant_problem(p));
    assert_int_equal(boil_run_set_of(p, &s, &o, &j.set), BOIL_OK);
    j.central = j.set.likely;
    boil_remedies needed;
    assert_int_equal(boil_remedies_of(p, &s, &o, &j.central, &needed), BOIL_OK);
    assert_int_equal(boil_findings_of(p, &s, &needed, &j.central, j.set.other, j.set.count, &j.likely, &j.possible), BOIL_OK);
    boil_schedule_free(&s);
    return j;
}

static void judged_free(judged *j)
{
    boil_run_set_free(&j->set);
    boil_findings_free(&j->likely);
    boil_findings_free(&j->possible);
}

static const boil_finding *found(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return &f->list[i];
    return NULL;
}

static const boil_finding *must_find(const boil_findings *f, const char *id, boil_severity severity)
{
    const boil_finding *it = found(f, id);
    if (!it)
        fail_msg("no finding '%s'", id);
    assert_int_equal(it->severity, severity);
    assert_true(strlen(it->advice) > 10);
    return it;
}

static boil_severity grade_of(const boil_plant *p, const boil_schedule *s, const boil_history *h, const char *id)
{
    boil_findings f;
    assert_int_equal(boil_findings_of(p, s, NULL, h, NULL, 0, &f, NULL), BOIL_OK);
    const boil_finding *it = found(&f, id);
    boil_severity severity = it != NULL ? it->severity : BOIL_SEVERITIES;
    boil_findings_free(&f);
    return severity;
}

/* A plant that is well: enough heat, shallow, band around its boiling point. */
static boil_plant good_plant(void)
{
    boil_plant p = open_plant(34e3);
    p.tank.depth_m = 0.8;
    return p;
}

static boil_action hung(double time_s, double kg)
{
    boil_action a = hung_plate_action(time_s, kg);
    a.is.load.rinse_kg_m2 = 0.05;
    return a;
}

static void a_good_shift_raises_nothing(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[3] = {hung(300, 20), two_gallons_action(700, 500), hung(1800, 20)};
    judged j = judge(&p, 3000, actions, 3);
    for (size_t i = 0; i < j.likely.count; i++) /* for an hour it may give a little less water than the steam takes */
        assert_true(j.likely.list[i].severity == BOIL_SEVERITY_NOTICE && j.likely.list[i].kind == BOIL_FOUND_WATER_SHORT);
    assert_int_equal(j.possible.count, 0);
    judged_free(&j);
}

static void heavy_loads_are_named_with_their_weight(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[1] = {hung(300, 90)};
    judged j = judge(&p, 3000, actions, 1);
    const boil_finding *f = must_find(&j.likely, "load-heavy", BOIL_SEVERITY_CAUTION);
    assert_close(f->value, 90 / 0.45, 1e-9, 0);
    assert_close(f->limit, 0.45359237 / (2 * 3.785411784e-3), 1e-4, 0);
    f = must_find(&j.likely, "boil-lost-long", BOIL_SEVERITY_NOTICE);
    assert_true(f->value > 120 && f->value < 360);
    judged_free(&j);
}

static void water_on_a_quiet_bath_is_a_warning_and_its_eruption_graver(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.depth_m = 0.86;
    boil_action actions[2] = {hung(300, 40), two_gallons_action(330, 60)};
    judged j = judge(&p, 3000, actions, 2);
    const boil_finding *f = must_find(&j.likely, "water-on-quiet-bath", BOIL_SEVERITY_WARNING);
    assert_close(f->value, actions[1].is.water.mass_kg, 0.02, 0);
    f = must_find(&j.likely, "water-layer", BOIL_SEVERITY_DANGER);
    assert_true(f->value < 0 && f->certainty == BOIL_CERTAIN); /* nothing of the freeboard would be left */
    assert_true(f->before_boil);
    f = must_find(&j.likely, "steam-surge", BOIL_SEVERITY_WARNING);
    assert_true(f->more_than == j.central.summary.steam_more_than);
    must_find(&j.likely, "overflow", BOIL_SEVERITY_DANGER);
    judged_free(&j);
}

/* What no mild run was made for is likely, not certain; and what could not be carried out is not left out. */
static void certainty_needs_mild_runs_and_no_run_is_left_out(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action load = hung(300, 90);
    boil_schedule s;
    boil_findings found_, possible;
    p.limits.recovery_s = 3000; /* how long a boil is lost depends on the set */
    judged j = judge(&p, 3000, &load, 1);
    for (size_t i = 0; i < j.set.count; i++)
        assert_true(j.set.other[i].closures != BOIL_CLOSURES_MILD);
    assert_int_equal(must_find(&j.likely, "load-heavy", BOIL_SEVERITY_CAUTION)->certainty, BOIL_LIKELY);
    assert_null(found(&j.possible, "not-resolved"));
    boil_schedule_init(&s, 3000);
    assert_int_equal(boil_schedule_add(&s, &load), BOIL_OK);
    boil_run_of_set stuck = j.set.other[1], refused = {.closures = BOIL_CLOSURES_MILD, .refused = true};
    stuck.history.end = refused.history.end = BOIL_RUN_FAILED;
    for (int i = 0; i < 2; i++) {
        assert_int_equal(boil_findings_of(&p, &s, NULL, &j.central, i == 0 ? &stuck : &refused, 1, &found_, &possible),
                         BOIL_OK);
        must_find(&possible, "not-resolved", BOIL_SEVERITY_WARNING);
        assert_int_equal(must_find(&found_, "load-heavy", BOIL_SEVERITY_CAUTION)->certainty, BOIL_LIKELY);
        boil_findings_free(&found_);
        boil_findings_free(&possible);
    }
    boil_schedule_free(&s);
    judged_free(&j);
}

static boil_severity gravest_layer(const judged *j)
{
    const boil_finding *likely = found(&j->likely, "water-layer"), *possible = found(&j->possible, "water-layer");
    int of_likely = likely != NULL ? (int)likely->severity : -1, of_possible = possible != NULL ? (int)possible->severity : -1;
    return (boil_severity)(1 + (of_likely > of_possible ? of_likely : of_possible)); /* 0: none */
}

/* Poured onto a quiet bath: a cup is nothing, and never does more water grade milder. */
static void more_water_afloat_is_never_milder(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.depth_m = 0.9;
    int before = 0, steps = 0;
    for (double mass = 0.05; mass < 8; mass *= 1.5) {
        boil_action actions[2] = {hung(300, 60), two_gallons_action(315, 10)};
        actions[1].is.water.mass_kg = mass;
        judged j = judge(&p, 3000, actions, 2);
        int now = (int)gravest_layer(&j);
        assert_true(mass > 0.1 || now == 0);
        assert_true(now >= before);
        steps += now > before;
        before = now;
        judged_free(&j);
    }
    assert_int_equal(before, 1 + (int)BOIL_SEVERITY_DANGER);
    assert_true(steps >= 2);
}

/* Cut before the boil is back, the same layer grades as grave as when the run goes on to the eruption. */
static void a_run_cut_short_grades_as_the_whole(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.depth_m = 0.86;
    boil_action actions[2] = {hung(300, 40), two_gallons_action(330, 60)};
    for (double cut_s = 340; cut_s < 420; cut_s += 10) {
        judged j = judge(&p, cut_s, actions, 2);
        assert_int_equal(gravest_layer(&j), 1 + (int)BOIL_SEVERITY_DANGER);
        judged_free(&j);
    }
}

static void too_little_heat_never_boils_and_the_right_heat_does(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.heater.input_W = 12e3;
    judged j = judge(&p, 1800, NULL, 0);
    const boil_finding *f = must_find(&j.likely, "never-boils", BOIL_SEVERITY_CAUTION);
    print_message("12 kW never boils; %.2f kW does\n", f->needed_W / 1e3);
    p.heater.input_W = f->needed_W;
    judged enough = judge(&p, 1800, NULL, 0);
    assert_null(found(&enough.likely, "never-boils"));
    judged_free(&enough);
    p.heater.input_W = 0.99 * f->needed_W;
    judged less = judge(&p, 1800, NULL, 0); /* it may start, and die as the bath strengthens */
    assert_true(found(&less.likely, "never-boils") || found(&less.likely, "boil-never-returns"));
    judged_free(&less);
    judged_free(&j);
}

static void a_boil_that_does_not_return_names_the_heat_that_would_bring_it(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.heater.input_W = 17e3;
    boil_action actions[1] = {hung(300, 60)};
    judged j = judge(&p, 1200, actions, 1);
    const boil_finding *f = must_find(&j.likely, "boil-never-returns", BOIL_SEVERITY_CAUTION);
    print_message("60 kg on 17 kW: not back in time; %.2f kW would be\n", f->needed_W / 1e3);
    p.heater.input_W = f->needed_W;
    judged enough = judge(&p, 1200, actions, 1);
    assert_null(found(&enough.likely, "boil-never-returns"));
    judged_free(&enough);
    p.heater.input_W = 0.99 * f->needed_W;
    judged less = judge(&p, 1200, actions, 1);
    must_find(&less.likely, "boil-never-returns", BOIL_SEVERITY_CAUTION);
    judged_free(&less);
    judged_free(&j);
}

static void a_heater_turned_down_is_nobodys_fault(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action off = {.time_s = 600, .kind = BOIL_ACTION_HEAT};
    judged j = judge(&p, 3000, &off, 1);
    assert_null(found(&j.likely, "boil-never-returns"));
    judged_free(&j);
}

/* Turned down to less than holds the boil it is the fire that stops it, whatever the dial stood at in the morning; and left to itself in
   a break it is found. */
static void what_turned_the_boil_off_is_no_matter_of_the_first_dial(void **state)
{
    (void)state;
    static const double dials[] = {0.1, 0.29, 0.31, 1};
    double first_s = 0;
    for (size_t i = 0; i < sizeof dials / sizeof dials[0]; i++) {
        boil_plant p = good_plant();
        p.heater.dial = dials[i];
        p.charge.temperature_K = CELSIUS(136);
        boil_action actions[3] = {
            {.time_s = 0, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = 1}},
            {.time_s = 3600, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = 0.15}},
            {.time_s = 5400, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = 1}}};
        boil_schedule s = schedule_with(9000, actions, 3);
        judged j = judge(&p, 9000, actions, 3);
        assert_int_equal(j.central.quiet_count, 2);
        assert_int_equal(j.central.quiet[1].cause, BOIL_QUIET_HEAT);
        assert_int_equal(grade_of(&p, &s, &j.central, "boil-lost-long"), BOIL_SEVERITIES);
        assert_int_equal(grade_of(&p, &s, &j.central, "quiet-in-break"), BOIL_SEVERITIES);
        first_s = i == 0 ? j.central.quiet[1].start_s : first_s;
        assert_close(j.central.quiet[1].start_s, first_s, 1e-6, 0);
        assert_int_equal(boil_schedule_add_break(&s, 3600, j.central.quiet[1].start_s + 119), BOIL_OK);
        assert_int_equal(grade_of(&p, &s, &j.central, "quiet-in-break"), BOIL_SEVERITY_NOTICE);
        assert_int_equal(boil_schedule_add_break(&s, j.central.quiet[1].start_s + 200, 5500), BOIL_OK);
        assert_int_equal(grade_of(&p, &s, &j.central, "quiet-in-break"), BOIL_SEVERITY_CAUTION);
        boil_schedule_free(&s);
        judged_free(&j);
    }
}

/* A fire that would hold the boil by itself did not stop it, though it was higher before: the load did. */
static void a_load_on_a_lower_fire_is_not_the_fires_doing(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[2] = {{.time_s = 300, .kind = BOIL_ACTION_HEAT, .is.heat = {.order = BOIL_HEAT_TURN, .dial = 0.5}},
                              hung(1800, 40)};
    judged j = judge(&p, 5400, actions, 2);
    assert_true(j.central.quiet_count > 0);
    assert_int_equal(j.central.quiet[0].cause, BOIL_QUIET_LOAD);
    assert_non_null(found(&j.likely, "boil-lost-long"));
    judged_free(&j);
}

static void the_tank_itself_is_judged(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.length_m = p.tank.width_m = 0.55;
    p.tank.level_m = 1.5;
    p.tank.depth_m = 1.75;
    p.heater.input_W = 60e3;
    judged j = judge(&p, 300, NULL, 0);
    must_find(&j.likely, "tank-tall", BOIL_SEVERITY_CAUTION);
    const boil_finding *f = must_find(&j.likely, "superheat-stored", BOIL_SEVERITY_WARNING);
    print_message("1.5 m of bath: a tenth of the steam stored fills %.2f m\n", f->value);
    f = must_find(&j.likely, "overflow", BOIL_SEVERITY_DANGER);
    assert_close(f->limit, 1.75, 1e-12, 0);
    judged_free(&j);
}

/* Against the room below the rim: as much is a caution, three times as much a warning. */
static void stored_steam_is_judged_by_the_room_above(void **state)
{
    (void)state;
    const struct {
        double share;
        int severity;
    } rooms[] = {{1.01, -1}, {0.99, BOIL_SEVERITY_CAUTION}, {0.34, BOIL_SEVERITY_CAUTION}, {0.33, BOIL_SEVERITY_WARNING}};
    boil_plant p = good_plant();
    judged first = judge(&p, 60, NULL, 0);
    double rise_m = first.central.summary.stored_rise_m;
    judged_free(&first);
    for (size_t i = 0; i < sizeof rooms / sizeof rooms[0]; i++) {
        p.tank.depth_m = p.tank.level_m + rooms[i].share * rise_m;
        judged j = judge(&p, 60, NULL, 0);
        const boil_finding *f = found(&j.likely, "superheat-stored");
        assert_int_equal(f == NULL ? -1 : (int)f->severity, rooms[i].severity);
        judged_free(&j);
    }
}

static void freeboard_level_and_band_have_limits(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.depth_m = 0.68;
    p.tank.heated = BOIL_TANK_HEATED_INSIDE;
    p.tank.heater_top_m = 0.49;
    p.limits.boiling_point_low_K = CELSIUS(130);
    p.limits.boiling_point_high_K = CELSIUS(141);
    judged j = judge(&p, 7200, NULL, 0);
    must_find(&j.possible, "freeboard-low", BOIL_SEVERITY_NOTICE); /* not with the wide pool's drift */
    must_find(&j.likely, "heater-uncovered", BOIL_SEVERITY_DANGER);
    const boil_finding *f = must_find(&j.likely, "bath-too-hot", BOIL_SEVERITY_CAUTION);
    assert_close(f->value, j.central.summary.boiling_point_end_K, 1e-12, 0);
    judged_free(&j);
    p.limits.boiling_point_low_K = CELSIUS(141);
    p.limits.boiling_point_high_K = CELSIUS(160);
    j = judge(&p, 300, NULL, 0);
    must_find(&j.likely, "bath-too-cool", BOIL_SEVERITY_NOTICE);
    judged_free(&j);
    p = good_plant();
    p.tank.parts_top_m = 0.499;
    j = judge(&p, 1800, NULL, 0);
    must_find(&j.likely, "parts-uncovered", BOIL_SEVERITY_NOTICE);
    judged_free(&j);
}

static void too_much_water_overflows_even_when_still(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action a = two_gallons_action(300, 60);
    a.is.water.mass_kg = 300;
    p.heater.input_W = 0;
    judged j = judge(&p, 1200, &a, 1);
    must_find(&j.likely, "overflow-still", BOIL_SEVERITY_DANGER);
    judged_free(&j);
}

static void a_deep_layer_on_a_hot_quiet_bath_boils_first(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.heater.input_W = 4e3;
    p.losses.evaporation_factor = 0.2; /* under a canopy: in open air it evaporates before it boils */
    boil_action a = two_gallons_action(600, 60);
    judged j = judge(&p, 7200, &a, 1);
    must_find(&j.likely, "surface-boils", BOIL_SEVERITY_WARNING);
    judged_free(&j);
}

static void loads_have_their_own_words(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[2] = {hung(300, 20), hung(330, 5)};
    actions[1].is.load.shape = BOIL_SHAPE_TUBE;
    actions[1].is.load.tube_wall_m = 0.002;
    actions[0].is.load.size_m = 0.1;
    actions[0].is.load.immersed_s = 60;
    judged j = judge(&p, 3000, actions, 2);
    must_find(&j.likely, "tubes", BOIL_SEVERITY_CAUTION);
    must_find(&j.likely, "load-not-hot", BOIL_SEVERITY_NOTICE);
    judged_free(&j);
}

static boil_action salts_in(double time_s, double kg, double over_s)
{
    boil_action a = {.time_s = time_s, .kind = BOIL_ACTION_SALTS};
    a.is.salts = (boil_action_salts){kg, over_s, CELSIUS(25), {0.80, 0.15, 0.05}};
    return a;
}

static void dry_salt_is_judged_by_what_it_does(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[2] = {hung(300, 60), salts_in(330, 60, 20)};
    judged j = judge(&p, 2400, actions, 2);
    const boil_finding *f = must_find(&j.likely, "salt-on-quiet-bath", BOIL_SEVERITY_WARNING);
    assert_close(f->value, 60, 0.02, 0);
    f = must_find(&j.likely, "salt-bed", BOIL_SEVERITY_WARNING);
    assert_close(f->value, j.central.summary.bed_superheat_max_K.value, 1e-12, 0);
    judged_free(&j);
    boil_action sifted = salts_in(300, 3, 600);
    j = judge(&p, 1800, &sifted, 1);
    assert_int_equal(j.likely.count, 0);
    judged_free(&j);
}

/* A little water on hot dry salt is a warning, a bucket of it a danger; sifted into enough liquid the same salt is neither. */
static void water_on_dry_salt_is_never_passed_over(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.tank.level_m = 0.02;
    p.heater.input_W = 20e3;
    for (double kg = 0.1; kg < 50; kg *= 200) {
        boil_action actions[2] = {salts_in(60, 84, 60), two_gallons_action(1800, 5)};
        actions[1].is.water.mass_kg = kg;
        judged j = judge(&p, 2000, actions, 2);
        const boil_severity severity = kg > 10 ? BOIL_SEVERITY_DANGER : BOIL_SEVERITY_WARNING;
        const boil_finding *f = must_find(&j.likely, "water-on-dry-salt", severity);
        assert_close(f->time_s, 1800, 0, 1e-9);
        assert_true((f->value > f->limit) == (kg > 10));
        judged_free(&j);
    }
    p = good_plant();
    boil_action careful[3] = {
        {.time_s = 0, .kind = BOIL_ACTION_MIXER, .is.on = true}, salts_in(60, 60, 1500), two_gallons_action(1800, 300)};
    judged j = judge(&p, 2400, careful, 3);
    assert_null(found(&j.likely, "water-on-dry-salt"));
    assert_null(found(&j.possible, "water-on-dry-salt"));
    judged_free(&j);
}

static void too_much_salt_names_the_water_that_will_not_fit(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.limits.boiling_point_high_K = CELSIUS(165);
    boil_action actions[1] = {salts_in(300, 115, 3000)};
    judged j = judge(&p, 5400, actions, 1);
    const boil_finding *f = found(&j.likely, "salt-too-much");
    assert_true(f != NULL);
    assert_true(f->needed_kg > 50 && f->value > f->limit);
    assert_true(f->needed_words != NULL);
    judged_free(&j);
}

/* The largest addition that would not stop the boil for longer: run, it does not; two per cent more does. */
static void liquid_that_stops_the_boil_names_the_most_that_would_not(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action a = {.time_s = 300, .kind = BOIL_ACTION_LIQUID};
    a.is.liquid = (boil_action_liquid){60, 120, CELSIUS(20), {0.80, 0.15, 0.05}, 0.52};
    judged j = judge(&p, 3600, &a, 1);
    const boil_finding *f = must_find(&j.likely, "liquid-stops-boil", BOIL_SEVERITY_CAUTION);
    double most = f->needed_kg;
    print_message("60 kg of liquid stops the boil for %.0f s; %.1f kg would do\n", f->value, most);
    judged_free(&j);
    a.is.liquid.mass_kg = most;
    j = judge(&p, 3600, &a, 1);
    assert_null(found(&j.likely, "liquid-stops-boil"));
    judged_free(&j);
    a.is.liquid.mass_kg = 1.02 * most;
    j = judge(&p, 3600, &a, 1);
    must_find(&j.likely, "liquid-stops-boil", BOIL_SEVERITY_NOTICE);
    judged_free(&j);
}

static void the_valve_is_judged(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.control.mode = BOIL_WATER_CONTROL_ON_OFF;
    p.control.set_point_K = CELSIUS(140.5);
    p.control.rate_kg_s = 0.3;
    p.control.differential_K = 0.1;
    p.control.dead_time_s = p.control.sensor_lag_s = 0;
    judged j = judge(&p, 7200, NULL, 0);
    print_message("a valve ten times too large opens %zu times in two hours\n", j.central.summary.valve_openings);
    const boil_finding *f = must_find(&j.likely, "control-hunts", BOIL_SEVERITY_NOTICE);
    assert_close(f->value, (double)j.central.summary.valve_openings / 2, 1e-12, 0);
    judged_free(&j);
    p.control.rate_kg_s = 0.001;
    j = judge(&p, 3 * 3600, NULL, 0);
    must_find(&j.likely, "control-cannot-keep-up", BOIL_SEVERITY_CAUTION);
    judged_free(&j);
    p.control.rate_kg_s = 0.03;
    p.control.set_point_K = CELSIUS(139);
    p.control.only_while_boiling = false;
    boil_action load = hung(60, 40);
    j = judge(&p, 1200, &load, 1);
    must_find(&j.likely, "control-on-quiet-bath", BOIL_SEVERITY_WARNING);
    judged_free(&j);
}

/* A bath one kelvin above where its salts fall out, and one below; and what is stated, be it none, is looked at no more. */
static void salt_that_nobody_looked_for_is_found(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_initial_state c;
    p.charge.blend[0] = 0.65;
    p.charge.blend[1] = 0.35;
    p.charge.blend[2] = 0;
    p.heater.dial = 0;
    assert_int_equal(boil_plant_initial(&p, &c), BOIL_OK);
    double falls_out_K = boil_solubility_crystals_from(&c.mixture);
    p.charge.temperature_K = falls_out_K + 1;
    judged above = judge(&p, 60, NULL, 0);
    assert_null(found(&above.likely, "salt-not-stated"));
    p.charge.temperature_K = falls_out_K - 1;
    judged below = judge(&p, 60, NULL, 0);
    const boil_finding *f = must_find(&below.likely, "salt-not-stated", BOIL_SEVERITY_CAUTION);
    assert_close(f->limit, falls_out_K, 1e-9, 0);
    p.salt_stated = true;
    judged stated = judge(&p, 60, NULL, 0);
    assert_null(found(&stated.likely, "salt-not-stated"));
    judged_free(&above);
    judged_free(&below);
    judged_free(&stated);
}

/* Boiled down for hours: what says "add water" elsewhere says no water here, at whatever grade the dryness is. */
static void no_water_is_advised_on_a_bath_that_is_nearly_dry(void **state)
{
    (void)state;
    static const char *const others[] = {"bath-too-hot", "water-short"};
    boil_plant p = open_plant(60e3);
    p.tank.depth_m = 0.9;
    judged j = judge(&p, 4 * 3600, NULL, 0);
    const boil_finding *dry = found(&j.likely, "bath-nearly-dry");
    assert_non_null(dry);
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        const boil_finding *f = found(&j.likely, others[i]);
        assert_non_null(f);
        assert_string_equal(f->advice, dry->advice);
        assert_true(isnan(f->needed_kg));
    }
    judged_free(&j);
}

/* Salt on a heated floor, and a bath that does not come up: no more heat, and no figure that would do. */
static void no_heat_is_advised_over_salt_on_the_floor(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.charge.temperature_K = CELSIUS(100);
    p.heater.dial = 0.3;
    judged bare = judge(&p, 3600, NULL, 0);
    p.bed_kg = 20;
    judged bed = judge(&p, 3600, NULL, 0);
    assert_non_null(strstr(found(&bare.likely, "never-boils")->advice, "more heat, a lid"));
    assert_non_null(found(&bed.likely, "salt-bed"));
    const boil_finding *f = found(&bed.likely, "never-boils");
    assert_non_null(strstr(f->advice, "No more heat"));
    assert_true(isnan(f->needed_W) && isnan(f->limit));
    judged_free(&bare);
    judged_free(&bed);
}

/* Before the fire is lit what floats comes off; on a hot bath it cannot. */
static void water_afloat_comes_off_a_cold_bath_before_the_heat(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.charge.temperature_K = CELSIUS(30);
    p.afloat = (boil_water_afloat){10, CELSIUS(20)};
    judged cold = judge(&p, 4 * 3600, NULL, 0);
    p.charge.temperature_K = CELSIUS(120);
    judged hot = judge(&p, 3600, NULL, 0);
    const boil_finding *f = found(&cold.likely, "water-layer"), *other = found(&hot.likely, "water-layer");
    assert_non_null(f != NULL ? f : found(&cold.possible, "water-layer"));
    assert_non_null(strstr((f != NULL ? f : found(&cold.possible, "water-layer"))->advice, "from the surface"));
    assert_null(strstr((other != NULL ? other : found(&hot.possible, "water-layer"))->advice, "from the surface"));
    judged_free(&cold);
    judged_free(&hot);
}

/* What never got hot is not black: most of the loads short by more than a minute, or one of three. */
static void most_loads_not_hot_are_a_caution(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[3] = {hung(300, 10), hung(1800, 10), hung(3300, 10)};
    boil_schedule s = schedule_with(5400, actions, 3);
    judged j = judge(&p, 5400, actions, 3);
    boil_history h = j.central;
    boil_load_result loads[3];
    for (int i = 0; i < 3; i++) {
        loads[i] = j.central.loads[i];
        loads[i].short_s = 0;
    }
    h.loads = loads;
    assert_int_equal(grade_of(&p, &s, &h, "load-not-hot"), BOIL_SEVERITIES);
    loads[0].short_s = 63;
    assert_int_equal(grade_of(&p, &s, &h, "load-not-hot"), BOIL_SEVERITY_NOTICE);
    loads[2].short_s = 57;
    assert_int_equal(grade_of(&p, &s, &h, "load-not-hot"), BOIL_SEVERITY_NOTICE);
    loads[2].short_s = 63;
    assert_int_equal(grade_of(&p, &s, &h, "load-not-hot"), BOIL_SEVERITY_CAUTION);
    boil_schedule_free(&s);
    judged_free(&j);
}

/* In a bath that has not come up it is no matter of the load before; and its cause is that. */
static void a_load_before_the_first_boil_has_its_own_advice(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.charge.temperature_K = CELSIUS(60);
    p.heater.dial = 0.2;
    boil_action load = hung(1800, 10);
    judged j = judge(&p, 3600, &load, 1);
    const boil_finding *f = found(&j.likely, "load-on-quiet-bath");
    assert_non_null(f);
    assert_non_null(strstr(f->advice, "not up yet"));
    judged_free(&j);
}

static void crystals_and_heat_under_them_are_found(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.charge.blend[0] = 0.65;
    p.charge.blend[1] = 0.35;
    p.charge.blend[2] = 0;
    p.limits.boiling_point_low_K = CELSIUS(120);
    boil_action actions[2] = {{.time_s = 60, .kind = BOIL_ACTION_HEAT}, {.time_s = 16 * 3600, .kind = BOIL_ACTION_HEAT}};
    actions[1].is.heat.dial = 1;
    judged j = judge(&p, 20 * 3600, actions, 2);
    const boil_finding *f = must_find(&j.likely, "crystals", BOIL_SEVERITY_CAUTION);
    assert_close(f->value, f->needed_kg / j.central.summary.bath_mass_start_kg, 1e-12, 0);
    assert_true(f->needed_kg > 1);
    must_find(&j.likely, "restart-over-crystals", BOIL_SEVERITY_DANGER);
    judged_free(&j);
}

/* The crust of a cold bath half of whose salt is nitrate, heated at full fire, lets go at once; broken up before and
   stirred, it leaves the boil calm. */
static void a_careless_restart_is_graver_than_a_careful_one(void **state)
{
    (void)state;
    boil_plant p = open_plant(60e3);
    p.charge = (boil_initial_charge){{0.5, 0.5, 0}, BOIL_INITIAL_BY_BOILING_POINT, CELSIUS(140.5), CELSIUS(60)};
    p.tank.depth_m = 0.9;
    p.heater.dial = 0;
    boil_action actions[3] = {{.time_s = 3500, .kind = BOIL_ACTION_CRUST},
                              {.time_s = 3500, .kind = BOIL_ACTION_MIXER, .is.on = true},
                              {.time_s = 3600, .kind = BOIL_ACTION_HEAT, .is.heat.dial = 1}};
    judged careless = judge(&p, 3 * 3600, actions + 2, 1), careful = judge(&p, 3 * 3600, actions, 3);
    must_find(&careless.likely, "restart-over-crystals", BOIL_SEVERITY_DANGER);
    must_find(&careless.likely, "steam-surge", BOIL_SEVERITY_WARNING);
    must_find(&careless.likely, "overflow", BOIL_SEVERITY_DANGER);
    assert_null(found(&careful.likely, "steam-surge"));
    assert_null(found(&careful.likely, "overflow"));
    assert_true(careful.likely.list[0].rank < careless.likely.list[0].rank); /* its floor stays hot under so much salt */
    judged_free(&careless);
    judged_free(&careful);
}

/* Each by a name of its own, with what a report needs of it. */
static void all_that_can_be_found_is_listed_once(void **state)
{
    (void)state;
    const char *id, *title, *other;
    size_t count = 0;
    for (; (id = boil_finding_listed(count, &title)) != NULL; count++) {
        assert_true(strlen(title) > 0);
        assert_int_equal(strspn(id, "abcdefghijklmnopqrstuvwxyz-"), strlen(id));
        for (size_t k = 0; k < count; k++)
            assert_string_not_equal(id, boil_finding_listed(k, &other));
    }
    assert_true(count >= 30);
}

/* Judging alone runs nothing: the finding stands, and what would be enough is not known. */
static void without_runs_what_would_be_enough_is_unknown(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.heater.input_W = 12e3;
    judged j = judge(&p, 1800, NULL, 0);
    boil_schedule s;
    boil_findings f;
    boil_schedule_init(&s, 1800);
    assert_int_equal(boil_findings_of(&p, &s, NULL, &j.central, NULL, 0, &f, NULL), BOIL_OK);
    assert_true(must_find(&j.likely, "never-boils", BOIL_SEVERITY_CAUTION)->needed_W > 12e3);
    assert_true(isnan(must_find(&f, "never-boils", BOIL_SEVERITY_CAUTION)->needed_W));
    boil_findings_free(&f);
    boil_schedule_free(&s);
    judged_free(&j);
}

/* On a run whose results are then changed by hand: water in hollows by the freeboard it would leave, a bail by the bath's heat, a goal
   by the gauge's steps, a break by what falls in it. */
static void what_hands_do_has_its_own_words(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[2] = {hung(300, 20), two_gallons_action(700, 500)};
    boil_schedule s = schedule_with(3000, actions, 2);
    judged j = judge(&p, 3000, actions, 2);
    boil_history h = j.central;
    boil_load_result load = h.loads[0];
    boil_addition_result water = h.additions[0];
    boil_take_result bail = {.time_s = 100, .over_s = 10, .mass_kg = 5, .missed_by_m = (double)NAN, .temperature_K = 338};
    h.loads = &load;
    h.additions = &water;
    h.takes = &bail;
    h.takes_count = 1;
    const double limit = p.limits.freeboard_m;
    const struct {
        double left;
        int severity;
    } hollows[] = {{1.05, BOIL_SEVERITIES},
                   {0.95, BOIL_SEVERITY_NOTICE},
                   {0.6, BOIL_SEVERITY_CAUTION},
                   {0.3, BOIL_SEVERITY_WARNING},
                   {-0.1, BOIL_SEVERITY_WARNING}};
    load.pockets_kg = 1;
    for (size_t i = 0; i < sizeof hollows / sizeof hollows[0]; i++) {
        load.pockets_left_m = hollows[i].left * limit;
        assert_int_equal(grade_of(&p, &s, &h, "pockets"), hollows[i].severity);
    }
    load.pockets_overflow = true;
    assert_int_equal(grade_of(&p, &s, &h, "pockets"), BOIL_SEVERITY_DANGER);
    assert_int_equal(grade_of(&p, &s, &h, "bailing-hot"), BOIL_SEVERITIES);
    bail.temperature_K = 340;
    assert_int_equal(grade_of(&p, &s, &h, "bailing-hot"), BOIL_SEVERITY_CAUTION);
    bail.was_boiling = true;
    assert_int_equal(grade_of(&p, &s, &h, "bailing-hot"), BOIL_SEVERITY_WARNING);
    assert_int_equal(grade_of(&p, &s, &h, "goal-missed"), BOIL_SEVERITIES);
    bail.missed_by_m = 1.1 * p.by_hand.mark_step_m;
    assert_int_equal(grade_of(&p, &s, &h, "goal-missed"), BOIL_SEVERITY_NOTICE);
    load.boil_short_s = 57;
    assert_int_equal(grade_of(&p, &s, &h, "time-at-boil-short"), BOIL_SEVERITIES);
    load.boil_short_s = 63;
    assert_int_equal(grade_of(&p, &s, &h, "time-at-boil-short"), BOIL_SEVERITY_NOTICE);
    load.boil_short_s = 0;
    assert_int_equal(grade_of(&p, &s, &h, "unattended"), BOIL_SEVERITIES);
    load.lifted_s = 2000;
    assert_int_equal(boil_schedule_add_break(&s, 1900, 2100), BOIL_OK);
    assert_int_equal(grade_of(&p, &s, &h, "unattended"), BOIL_SEVERITY_NOTICE);
    assert_int_equal(boil_schedule_add_break(&s, 1200, 1300), BOIL_OK); /* as the pour ends */
    assert_int_equal(grade_of(&p, &s, &h, "unattended"), BOIL_SEVERITY_NOTICE);
    assert_int_equal(boil_schedule_add_break(&s, 600, 800), BOIL_OK);
    assert_int_equal(grade_of(&p, &s, &h, "unattended"), BOIL_SEVERITY_CAUTION);
    boil_schedule_free(&s);
    judged_free(&j);
}

/* Two loads in two places are no find, in one place they are, and by then the first may be out. */
static void a_place_is_taken_until_its_load_is_out(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    boil_action actions[2] = {hung(300, 20), hung(900, 20)};
    actions[0].is.load.immersed_s = 800;
    boil_schedule s = schedule_with(3000, actions, 2);
    judged j = judge(&p, 3000, actions, 2);
    const struct {
        double positions;
        int at[2];
        double second_s;
        int severity;
    } all[] = {{0, {0, 0}, 900, BOIL_SEVERITIES},
               {2, {0, 0}, 900, BOIL_SEVERITIES},
               {1, {0, 0}, 900, BOIL_SEVERITY_CAUTION},
               {2, {2, 2}, 900, BOIL_SEVERITY_CAUTION},
               {2, {0, 1}, 900, BOIL_SEVERITY_CAUTION},
               {2, {1, 2}, 900, BOIL_SEVERITIES},
               {1, {0, 0}, 1100 + 10 - 0.5, BOIL_SEVERITY_CAUTION}, /* ten seconds to come out */
               {1, {0, 0}, 1100 + 10, BOIL_SEVERITIES}};
    boil_load_result loads[2] = {j.central.loads[0], j.central.loads[1]};
    boil_history h = j.central;
    h.loads = loads;
    assert_close(loads[0].lifted_s, 1100, 0, 1e-9);
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        p.tank.positions = all[i].positions;
        s.actions[0].position = all[i].at[0];
        s.actions[1].position = all[i].at[1];
        loads[1].time_s = all[i].second_s;
        assert_int_equal(grade_of(&p, &s, &h, "place-taken"), all[i].severity);
    }
    boil_schedule_free(&s);
    judged_free(&j);
}

/* Into a bath of little water: what is bailed out of it is not put in. */
static void what_is_taken_out_is_not_fed(void **state)
{
    (void)state;
    boil_plant p = good_plant();
    p.charge.value = CELSIUS(165);
    p.limits.boiling_point_high_K = CELSIUS(170);
    boil_action bail = {.time_s = 60, .kind = BOIL_ACTION_BAIL, .is.take = {.volume_m3 = 0.01, .over_s = 60}};
    boil_action water = two_gallons_action(60, 60);
    judged taken = judge(&p, 300, &bail, 1), poured = judge(&p, 300, &water, 1);
    assert_true(taken.central.takes_count == 1 && taken.central.summary.watched[BOIL_WATCH_NEARLY_DRY].worst.value > -0.36);
    assert_int_equal(taken.central.summary.watched[BOIL_WATCH_NEARLY_DRY].fed, 0);
    assert_true(poured.central.summary.watched[BOIL_WATCH_NEARLY_DRY].fed > 0);
    judged_free(&taken);
    judged_free(&poured);
}

static void a_copied_schedule_has_its_breaks(void **state)
{
    (void)state;
    boil_schedule s, copy;
    boil_action load = hung(300, 20);
    boil_schedule_init(&s, 3000);
    s.idle_after_s = 2000;
    assert_int_equal(boil_schedule_add(&s, &load), BOIL_OK);
    assert_int_equal(boil_schedule_add_break(&s, 600, 800), BOIL_OK);
    assert_int_equal(boil_schedule_copy(&s, &copy), BOIL_OK);
    assert_true(copy.count == 1 && copy.actions != s.actions && copy.idle_after_s == 2000);
    assert_true(copy.breaks_count == 1 && copy.breaks[0].from_s == 600 && copy.breaks[0].to_s == 800);
    boil_schedule_free(&s);
    boil_schedule_free(&copy);
}

/* A mark is the shop's own: without one nothing is over it. */
static void a_level_over_the_mark_is_found(void **state)
{
    (void)state;
    const double over_m[] = {0.012, 0.015, 0.037, 0.041};
    const int severities[] = {BOIL_SEVERITIES, BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_NOTICE, BOIL_SEVERITY_CAUTION};
    boil_plant p = good_plant();
    for (int i = 0; i < 4; i++) {
        p.tank.mark_m = p.tank.level_m - over_m[i];
        judged j = judge(&p, 60, NULL, 0);
        const boil_finding *f = found(&j.likely, "level-high");
        assert_int_equal(f != NULL ? (int)f->severity : BOIL_SEVERITIES, severities[i]);
        judged_free(&j);
    }
}

/* Of the runs by hand the grave one has the least; a mild one never counts, however little it leaves. */
static void test_least_freeboard_leaves_mild_runs_out(void **state)
{
    (void)state;
    const boil_closures closures[] = {BOIL_CLOSURES_MILD, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN, BOIL_CLOSURES_MILD_8};
    const double left_m[] = {0.05, 0.1, 0.1, 0.01}; /* of two alike the first */
    boil_run_set set = {.count = 4};
    set.likely.summary.freeboard_min_m.value = 0.3;
    for (size_t i = 0; i < set.count; i++) {
        set.other[i].closures = closures[i];
        set.other[i].history.summary.freeboard_min_m.value = left_m[i];
    }
    assert_ptr_equal(boil_run_set_least_freeboard(&set), &set.other[1].history);
    set.count = 1;
    assert_ptr_equal(boil_run_set_least_freeboard(&set), &set.likely);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_good_shift_raises_nothing),
        cmocka_unit_test(heavy_loads_are_named_with_their_weight),
        cmocka_unit_test(water_on_a_quiet_bath_is_a_warning_and_its_eruption_graver),
        cmocka_unit_test(certainty_needs_mild_runs_and_no_run_is_left_out),
        cmocka_unit_test(more_water_afloat_is_never_milder),
        cmocka_unit_test(a_run_cut_short_grades_as_the_whole),
        cmocka_unit_test(too_little_heat_never_boils_and_the_right_heat_does),
        cmocka_unit_test(a_boil_that_does_not_return_names_the_heat_that_would_bring_it),
        cmocka_unit_test(a_heater_turned_down_is_nobodys_fault),
        cmocka_unit_test(the_tank_itself_is_judged),
        cmocka_unit_test(what_turned_the_boil_off_is_no_matter_of_the_first_dial),
        cmocka_unit_test(a_load_on_a_lower_fire_is_not_the_fires_doing),
        cmocka_unit_test(salt_that_nobody_looked_for_is_found),
        cmocka_unit_test(no_water_is_advised_on_a_bath_that_is_nearly_dry),
        cmocka_unit_test(no_heat_is_advised_over_salt_on_the_floor),
        cmocka_unit_test(water_afloat_comes_off_a_cold_bath_before_the_heat),
        cmocka_unit_test(most_loads_not_hot_are_a_caution),
        cmocka_unit_test(a_load_before_the_first_boil_has_its_own_advice),
        cmocka_unit_test(stored_steam_is_judged_by_the_room_above),
        cmocka_unit_test(freeboard_level_and_band_have_limits),
        cmocka_unit_test(too_much_water_overflows_even_when_still),
        cmocka_unit_test(a_deep_layer_on_a_hot_quiet_bath_boils_first),
        cmocka_unit_test(loads_have_their_own_words),
        cmocka_unit_test(dry_salt_is_judged_by_what_it_does),
        cmocka_unit_test(water_on_dry_salt_is_never_passed_over),
        cmocka_unit_test(too_much_salt_names_the_water_that_will_not_fit),
        cmocka_unit_test(liquid_that_stops_the_boil_names_the_most_that_would_not),
        cmocka_unit_test(the_valve_is_judged),
        cmocka_unit_test(all_that_can_be_found_is_listed_once),
        cmocka_unit_test(without_runs_what_would_be_enough_is_unknown),
        cmocka_unit_test(crystals_and_heat_under_them_are_found),
        cmocka_unit_test(what_hands_do_has_its_own_words),
        cmocka_unit_test(a_place_is_taken_until_its_load_is_out),
        cmocka_unit_test(a_level_over_the_mark_is_found),
        cmocka_unit_test(what_is_taken_out_is_not_fed),
        cmocka_unit_test(a_copied_schedule_has_its_breaks),
        cmocka_unit_test(test_least_freeboard_leaves_mild_runs_out),
        cmocka_unit_test(a_careless_restart_is_graver_than_a_careful_one),
    };
    return cmocka_run_group_tests_name("findings", tests, NULL, NULL);
}
