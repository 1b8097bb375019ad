/* A correction is carried out and must end where it says: set point and level. What is said not to fit must do harm when it
   is run, and a litre less than what is said to fit must not. A pace must keep the freeboard, and a fifth more break what
   it was limited by. */
#include "support/close.h"

#include <gsl/gsl_errno.h>
#include <string.h>

#include "analysis/correct_parts.h"
#include "findings/findings.h"
#include "scenario/scenario.h"
#include "support/cases.h"
#include "support/published.h"
#include "support/sampled.h"

enum { READINGS = 5, LEVELS = 5, HEATS = 2, BLENDS = 2, ALTITUDES = 2 };
static const double readings_C[READINGS] = {138, 139.5, 140.5, 142, 144};
static const double levels_m[LEVELS] = {0.42, 0.46, 0.50, 0.54, 0.58};
static const double heats_W[HEATS] = {30e3, 60e3};
static const double blends[BLENDS][BOIL_SALTS] = {{1, 0, 0}, {0.65, 0.30, 0.05}};
static const double pressures_Pa[ALTITUDES] = {101325, 84e3};

typedef struct {
    int reading, level, heat, blend, altitude;
} state;

static boil_plant plant_of(const state *s)
{
    boil_plant p = open_plant(heats_W[s->heat]);
    p.tank.depth_m = 0.80;
    for (int i = 0; i < BOIL_SALTS; i++)
        p.charge.blend[i] = blends[s->blend][i];
    p.ambient.pressure_Pa = pressures_Pa[s->altitude];
    return p;
}

static const boil_run_options *quick(void)
{
    static boil_run_options o;
    o = boil_run_options_default();
    o.tolerance = 1e-6;
    return &o;
}

static boil_correction correction_of(const boil_plant *p, double reads_C, double level_m, double liquid)
{
    boil_correction a;
    boil_schedule nothing;
    boil_schedule_init(&nothing, 0);
    boil_correct_case c = {.reads_K = CELSIUS(reads_C),
                           .uncertain_K = 0.5,
                           .level_m = level_m,
                           .liquid_fraction = liquid,
                           .added_K = CELSIUS(20),
                           .liquid_K = CELSIUS(40),
                           .next_load = boil_correct_next_load(p, &nothing)};
    assert_int_equal(boil_correct(p, &c, quick(), &a), BOIL_OK);
    return a;
}

static boil_history run_of(const boil_plant *p, boil_schedule *s, boil_closures closures)
{
    boil_history h;
    boil_run_options o = *quick();
    o.closures = closures;
    assert_int_equal(boil_run(p, s, &o, &h), BOIL_OK);
    return h;
}

static bool has_finding(const boil_plant *p, boil_schedule *s, boil_closures closures, const char *id)
{
    boil_findings f;
    bool has = false;
    boil_history h = run_of(p, s, closures);
    assert_int_equal(boil_findings_of(p, s, NULL, &h, NULL, 0, &f, NULL), BOIL_OK);
    for (size_t i = 0; i < f.count; i++)
        has = has || strcmp(f.list[i].id, id) == 0;
    boil_findings_free(&f);
    boil_history_free(&h);
    return has;
}

typedef struct {
    double off_K, off_m;
    int added, boiled_down, bailed, limited, by_hand;
} tally;

static bool ends_well(const boil_correction *a)
{
    boil_schedule s;
    assert_int_equal(boil_correct_schedule(a, &s), BOIL_OK);
    bool well = !has_finding(&a->start, &s, BOIL_CLOSURES_GRAVE, "freeboard-low") &&
                !has_finding(&a->start, &s, BOIL_CLOSURES_GRAVE, "overflow");
    boil_schedule_free(&s);
    return well;
}

static void ends_as_wanted(const boil_correction *a, tally *t)
{
    boil_schedule s;
    assert_int_equal(boil_correct_schedule(a, &s), BOIL_OK);
    boil_history h = run_of(&a->start, &s, BOIL_CLOSURES_LIKELY);
    assert_int_equal(h.end, BOIL_RUN_DONE);
    t->off_K = fmax(t->off_K, fabs(h.summary.boiling_point_end_K - a->set_point_K));
    t->off_m = fmax(t->off_m, fabs(h.summary.still_level_end_m - a->amounts.level_m));
    assert_close(h.summary.boiling_point_end_K, a->set_point_K, 0, 0.2);
    assert_close(h.summary.still_level_end_m, a->amounts.level_m, 0, 2e-3);
    assert_close(h.summary.vented_total_kg, a->boiled_off_kg, 1e-9, 0);
    boil_history_free(&h);
    boil_schedule_free(&s);
}

/* Without bailing, the plan's level is the scenario's, lies above it because there is too much salt for it, or was lowered. */
static void level_is_as_promised(const boil_correction *a)
{
    assert_true(a->amounts.level_m <= a->most_level_m + 1e-9);
    if (a->lowered_from_m > 0) {
        assert_int_equal(a->bail, BOIL_BAIL_NOTHING);
        assert_true(a->amounts.level_m < a->lowered_from_m);
    } else if (a->bail == BOIL_BAIL_NOTHING && a->salts.mass_kg + a->liquid.mass_kg > 0)
        assert_close(a->amounts.level_m, a->wanted_level_m, 1e-9, 0);
}

static void loaded_to(const boil_correction *a, double still_level_m, bool harms)
{
    boil_plant p;
    boil_schedule s;
    assert_int_equal(boil_correct_loaded(a, still_level_m, &p, &s), BOIL_OK);
    bool low =
        has_finding(&p, &s, BOIL_CLOSURES_GRAVE, "freeboard-low") || has_finding(&p, &s, BOIL_CLOSURES_GRAVE, "overflow");
    assert_int_equal(low, harms);
    boil_schedule_free(&s);
}

/* The largest bath that fits less a litre fits, with a litre more it does not; nor does what has to be bailed out of. */
static void room_is_true(const boil_correction *a)
{
    double litre_m = 1e-3 / boil_tank_area(&a->start.tank);
    loaded_to(a, a->most_level_m - litre_m, false);
    loaded_to(a, a->most_level_m + litre_m, true);
    if (a->bail == BOIL_BAIL_FOR_LOAD)
        loaded_to(a, a->unbailed_level_m, true);
}

/* A fifth faster raises the finding that the pace was limited by. Steps are judged alone, each in the bath that it meets.
 */
static void pace_is_tight(const boil_correction *a, const boil_correct_step *step, size_t action, tally *t)
{
    if (!(step->mass_kg > 0))
        return;
    t->by_hand += step->pace.limited_by == NULL;
    if (step->pace.limited_id == NULL)
        return;
    boil_schedule s;
    assert_int_equal(boil_correct_schedule(a, &s), BOIL_OK);
    boil_action_pour(&s.actions[action], step->mass_kg, 1.2 * step->pace.rate_kg_s);
    const char *id = NULL, *title;
    boil_history h = run_of(&a->start, &s, BOIL_CLOSURES_GRAVE);
    assert_int_equal(boil_pour_rate_forbids(&a->start, &s, &h, &id, &title), BOIL_OK);
    if (id == NULL)
        print_error("20 %% faster does no harm: %s\n", step->pace.limited_id);
    assert_non_null(id);
    boil_history_free(&h);
    boil_schedule_free(&s);
    t->limited++;
}

/* Salts never onto water that still floats, two minutes after it (judgement: some mixing times), on a minute, since a sheet's clock
   shows no more; and never before it has boiled down. */
static void one_after_the_other(const boil_correction *a)
{
    const boil_correct_step *then = a->salts.mass_kg > 0 ? &a->salts : &a->liquid;
    double in_s = a->water.over_s + 120;
    assert_true(a->water.start_s == 0 && !(a->water.mass_kg > 0 && a->boil_down_s > 0));
    if (!(then->mass_kg > 0))
        return;
    if (a->water.mass_kg > 0) {
        assert_true(then->start_s >= in_s - 1e-6 && then->start_s < in_s + 60);
        assert_close(fmod(then->start_s, 60), 0, 0, 0);
    } else
        assert_close(then->start_s, a->boil_down_s, 0, 1e-6);
    assert_true(a->done_s >= then->start_s + then->over_s);
}

static void one_state(const state *s, tally *t, bool whole)
{
    boil_plant p = plant_of(s);
    boil_correction a = correction_of(&p, readings_C[s->reading], levels_m[s->level], 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    ends_as_wanted(&a, t);
    level_is_as_promised(&a);
    one_after_the_other(&a);
    bool adds = a.water.mass_kg + a.salts.mass_kg > 0;
    t->added += adds;
    t->boiled_down += a.boil_down_s > 0;
    assert_false(a.boil_down_s > 0 && a.water.mass_kg > 0); /* nobody pours what has to boil off */
    t->bailed += a.bail != BOIL_BAIL_NOTHING;
    if (!whole)
        return;
    room_is_true(&a);
    if (adds && !(a.boil_down_s > 0))
        assert_true(ends_well(&a));
    pace_is_tight(&a, &a.water, 0, t);
    pace_is_tight(&a, &a.salts, a.water.mass_kg > 0 ? 1 : 0, t);
}

/* Every third of 200 states, and every thirteenth under the sanitizers, so that each factor takes each of its values; rooms and paces
   of every second of these: the rest would only take longer. */
static void states_of_every_kind(void **unused)
{
    (void)unused;
    tally t = {0};
    int n = 0, tried = 0, every = sampled(3, 13);
    state s;
    for (s.blend = 0; s.blend < BLENDS; s.blend++)
        for (s.altitude = 0; s.altitude < ALTITUDES; s.altitude++)
            for (s.heat = 0; s.heat < HEATS; s.heat++)
                for (s.reading = 0; s.reading < READINGS; s.reading++)
                    for (s.level = 0; s.level < LEVELS; s.level++)
                        if (n++ % every == 0)
                            one_state(&s, &t, tried++ % 2 == 0);
    assert_int_equal(n, 200);
    assert_true(t.added > tried / 4 && t.boiled_down > tried / 10 && t.bailed > tried / 20);
    assert_true(t.limited > tried / 10 && t.by_hand > tried / 40);
    print_message("%d states: within %.3f K and %.2f mm; %d add, %d boil down, %d bail; of the paces tried %d limited, %d by "
                  "hand\n",
                  tried, t.off_K, 1e3 * t.off_m, t.added, t.boiled_down, t.bailed, t.limited, t.by_hand);
}

/* Where no pace leaves room: the slowest that gains on the boil-off does not. */
static void no_pace_is_true(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 0, 1});
    boil_correction a = correction_of(&p, 142, 0.58, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_int_equal(a.bail, BOIL_BAIL_FOR_POUR);
    assert_true(a.bail_kg > 1 && a.bail_kg < 0.1 * a.mass_kg);
    boil_plant full = a.start;
    full.tank.level_m = a.still_level_m;
    double rate = BOIL_POUR_RATE_GAINS * a.boiled_off_kg / a.done_s, share = a.still_level_m / a.start.tank.level_m;
    boil_action action = {.kind = BOIL_ACTION_WATER, .is.water.temperature_K = CELSIUS(20)};
    boil_action_pour(&action, 2 * share * a.amounts.water_kg, rate);
    boil_schedule s;
    boil_schedule_init(&s, action.is.water.over_s + 60);
    assert_int_equal(boil_schedule_add(&s, &action), BOIL_OK);
    assert_true(has_finding(&full, &s, BOIL_CLOSURES_SUDDEN, "freeboard-low"));
    boil_schedule_free(&s);
}

/* Steps that go in well one by one, and as a whole do not: more is bailed out than the next load needs. Bailed out only for
   that load, the whole does harm. */
static void whole_is_judged(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 0, 0});
    p.charge.blend[BOIL_NAOH] = 1;
    p.charge.blend[BOIL_NANO3] = p.charge.blend[BOIL_NANO2] = 0;
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION;
    p.charge.value = 0.27;
    p.tank = (boil_tank){.length_m = 1.524, .width_m = 0.61, .depth_m = 0.762, .level_m = 0.432, .wall_thickness_m = 0.005};
    p.heater.input_W = 38.7e3;
    boil_correction a = correction_of(&p, 120.8, 0.46, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_true(a.bail != BOIL_BAIL_NOTHING && a.amounts.level_m < 0.99 * a.most_level_m);
    assert_true(ends_well(&a));
    boil_plant full = a.start;
    double more = fmin(a.most_level_m, a.unbailed_level_m) / a.amounts.level_m;
    full.tank.level_m *= more;
    boil_schedule s;
    assert_int_equal(boil_correct_schedule(&a, &s), BOIL_OK);
    boil_action_pour(&s.actions[0], a.water.mass_kg * more, a.water.pace.rate_kg_s);
    s.duration_s = s.actions[0].is.water.over_s + 240;
    assert_true(has_finding(&full, &s, BOIL_CLOSURES_SUDDEN, "freeboard-low"));
    boil_schedule_free(&s);
}

/* One that is only fuller than it should be does so by itself: nothing is bailed. */
static void too_full_boils_down(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(30e3);
    p.tank.depth_m = 0.8;
    boil_correction a = correction_of(&p, 137, 0.62, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_true(a.freeboard_now_m > 0 && a.freeboard_now_m < p.limits.freeboard_m);
    assert_true(a.boil_down_s > 0 && a.water.mass_kg == 0);
    assert_int_equal(a.bail, BOIL_BAIL_NOTHING);
}

/* What boils off in a minute or two, of a bath that lacks no salt, is left to do so: nothing is poured into it. */
static void a_little_too_much_boils_off(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 1, 1, 0});
    p.tank.level_m = 0.45;
    for (int minutes = 1; minutes <= 2; minutes++) {
        boil_correction a = correction_of(&p, minutes == 1 ? 140.34 : 140.20, 0.48, 0);
        assert_int_equal(a.end, BOIL_CORRECT_DONE);
        assert_true(a.water.mass_kg == 0 && a.salts.mass_kg == 0);
        assert_close(a.done_s, 60 * minutes, 0, 0);
        assert_close(a.boil_down_s, -a.amounts.water_kg * a.done_s / a.boiled_off_kg, 0.01, 0);
    }
}

/* What is bailed out of this one is 6 % less than fits, which does not do yet, 12 %, which does, and then half-way, which does as well:
   no more than it takes. Another 2 % of its mass has boiled off when it is cold. */
static void no_more_is_bailed_than_it_takes(void **unused)
{
    (void)unused;
    boil_plant p = open_plant(70e3);
    p.tank.length_m = 0.6;
    p.tank.width_m = 0.45;
    p.tank.depth_m = 0.8;
    p.limits.freeboard_m = 0.1;
    boil_correction a = correction_of(&p, 137.5, 0.57, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_int_equal(a.bail, BOIL_BAIL_FOR_LOAD);
    assert_true(ends_well(&a));
    double left = 1 - a.bail_kg / a.mass_kg, of_what_fits = left * a.unbailed_level_m / a.most_level_m;
    assert_in_range(lround(1000 * of_what_fits), 1000 - 90, 1000 - 60);
}

/* A bath that would boil over before it has boiled down is bailed out for that. */
static void boiling_over_is_bailed(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 1, 1, 0});
    p.limits.freeboard_m = 0.005;
    boil_correction a = correction_of(&p, 134, 0.79, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_true(a.freeboard_now_m < 0 && a.boil_down_s > 0);
    assert_true(a.bail != BOIL_BAIL_NOTHING && a.freeboard_min_m > 0);
    boil_plant full = a.start;
    full.tank.level_m *= a.most_level_m / a.amounts.level_m;
    boil_schedule s;
    boil_schedule_init(&s, 60);
    assert_true(has_finding(&full, &s, BOIL_CLOSURES_GRAVE, "overflow"));
    boil_schedule_free(&s);
}

/* Too much salt for the level wanted: the level is said, and what to bail out in all for it. */
static void too_much_salt(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    p.tank.level_m = 0.45;
    boil_correction a = correction_of(&p, 141.5, 0.50, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_true(a.end_still_m > 0.47 && a.bail_to_wanted_m3 > 0);
    boil_correction b = correction_of(&p, 141.5, 0.50 - a.bail_to_wanted_m3 / boil_tank_area(&p.tank), 0);
    assert_int_equal(b.end, BOIL_CORRECT_DONE);
    assert_close(b.end_still_m, 0.45, 0, 2e-3);
    assert_close(b.bail_to_wanted_m3, 0, 0, 0);
}

/* At the set point and the level, but for what no one can read off: nothing is added. */
static void noise_is_left_alone(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    boil_correction a = correction_of(&p, 140.5 + 0.02, 0.4999, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_close(a.done_s + a.water.mass_kg + a.salts.mass_kg, 0, 0, 0);
}

static void liquid_does_it_too(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 1});
    const double fractions[] = {0.45, 0.60};
    for (int i = 0; i < 2; i++) {
        tally t = {0};
        boil_correction a = correction_of(&p, 139.5, 0.45, fractions[i]);
        assert_int_equal(a.end, BOIL_CORRECT_DONE);
        assert_true(a.liquid.mass_kg > 0);
        assert_close(a.salts.mass_kg, 0, 0, 0);
        ends_as_wanted(&a, &t);
        level_is_as_promised(&a);
        one_after_the_other(&a);
        pace_is_tight(&a, &a.liquid, a.water.mass_kg > 0 ? 1 : 0, &t);
    }
}

/* A bench tank of twenty litres wants less than a kilogram of salts: they too have a pace, and end as wanted. */
static void a_little_has_a_pace_as_well(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    p.tank.length_m = 0.30;
    p.tank.width_m = 0.20;
    p.tank.depth_m = 0.50;
    p.tank.level_m = 0.30;
    p.heater.input_W = 3e3;
    tally t = {0};
    boil_correction a = correction_of(&p, 139.5, 0.29, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    print_message("%.3f kg of salts at %.3g kg/s\n", a.salts.mass_kg, a.salts.pace.rate_kg_s);
    assert_true(a.salts.mass_kg > 0.1 && a.salts.mass_kg < 1);
    assert_true(a.salts.pace.rate_kg_s > 0);
    ends_as_wanted(&a, &t);
}

/* From the boiling surface as from the still one. */
static void swell_is_taken_out(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 1, 1, 0});
    boil_correction still = correction_of(&p, 140.5, 0.5, 0);
    boil_schedule nothing;
    boil_schedule_init(&nothing, 0);
    boil_correct_case c = still.asked;
    c.level_m = still.end_boiling_m;
    c.level_boiling = true;
    boil_correction boiling;
    assert_int_equal(boil_correct(&p, &c, quick(), &boiling), BOIL_OK);
    assert_true(still.end_boiling_m > 0.51);
    assert_close(boiling.still_level_m, 0.5, 0, 1e-4);
    assert_close(boiling.swell_m, still.end_boiling_m - 0.5, 0, 1e-4);
}

/* A kelvin higher read is more water, and none of it depends on what was not measured. */
static void uncertainty_is_carried(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    boil_correction a = correction_of(&p, 143, 0.5, 0);
    boil_correction high = correction_of(&p, 143.5, 0.5, 0), low = correction_of(&p, 142.5, 0.5, 0);
    assert_true(a.amounts_low.water_kg < a.amounts.water_kg - 2 && a.amounts.water_kg + 2 < a.amounts_high.water_kg);
    assert_close(a.salt_fraction_low, low.salt_fraction, 1e-9, 0);
    assert_close(a.salt_fraction_high, high.salt_fraction, 1e-9, 0);
    assert_close(a.set_point_K, CELSIUS(140.5), 1e-12, 0);
    p.charge.basis = BOIL_INITIAL_BY_SALT_FRACTION; /* however it is stated, and as cold as it starts */
    p.charge.value = 0.52;
    p.charge.temperature_K = CELSIUS(60);
    boil_correction stated = correction_of(&p, 143, 0.4, 0);
    boil_plant boiling = p;
    boil_initial_state wanted;
    boiling.charge.temperature_K = 0;
    assert_int_equal(boil_plant_initial(&boiling, &wanted), BOIL_OK);
    assert_close(stated.set_point_K, wanted.boiling_point_K, 1e-12, 0);
    boil_correction hot = correction_of(&boiling, 143, 0.4, 0);
    assert_close(stated.amounts.water_kg, hot.amounts.water_kg, 1e-12, 0);
}

static void refusals(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 0, 0});
    assert_int_equal(correction_of(&p, 240, 0.5, 0).end, BOIL_CORRECT_NO_BATH);
    assert_int_equal(correction_of(&p, 90, 0.5, 0).end, BOIL_CORRECT_NO_FULL_BOIL);
    boil_correction weak = correction_of(&p, 143, 0.40, 0.25);
    assert_int_equal(weak.end, BOIL_CORRECT_TOO_WEAK);
    boil_correction low = correction_of(&p, 140.5, 0.06, 0);
    assert_int_equal(low.end, BOIL_CORRECT_NO_POUR_RATE);
    assert_non_null(low.salts.pace.limited_id);
    boil_plant huge = p;
    huge.tank = (boil_tank){.length_m = 5, .width_m = 3, .depth_m = 2, .level_m = 1.3, .wall_thickness_m = 0.01};
    huge.heater.input_W = 500e3;
    boil_correction shift = correction_of(&huge, 140.5, 0.6, 0); /* 8 t of salts by the scoop */
    assert_int_equal(shift.end, BOIL_CORRECT_NO_POUR_RATE);
    assert_string_equal(shift.salts.pace.limited_by, "it would take longer than a shift");
    p.heater.input_W = 1e3;
    assert_int_equal(correction_of(&p, 142, 0.5, 0).end, BOIL_CORRECT_NO_BOIL);
    p.heater.input_W = 30e3;
    p.limits.freeboard_m = 0.795;
    assert_int_equal(correction_of(&p, 142, 0.5, 0).end, BOIL_CORRECT_NO_FREEBOARD);
}

/* Refused as nearly dry is found to be so by a run. Less than one water to each hydroxide, NaOH.H2O, 69 % by mass, is a melt (the
   monohydrate is a compound of the published diagrams of soda and water): that is always refused, and half as much again is not. */
static void dry_as_a_run_finds_it(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    const double monohydrate = 39.997 / 58.012;
    int dry = 0, tried = 0;
    for (double reads_C = 146.2; reads_C < 185; reads_C += 9.4, tried++) {
        boil_correction a = correction_of(&p, reads_C, 0.45, 0);
        boil_plant then = p;
        then.charge.value = CELSIUS(reads_C) + 0.5;
        boil_schedule nothing;
        boil_schedule_init(&nothing, 1);
        if (a.salt_fraction > monohydrate)
            assert_int_equal(a.end, BOIL_CORRECT_NEARLY_DRY);
        if (a.salt_fraction < 39.997 / (39.997 + 1.5 * 18.015))
            assert_int_not_equal(a.end, BOIL_CORRECT_NEARLY_DRY);
        if (a.end == BOIL_CORRECT_NEARLY_DRY)
            assert_true(has_finding(&then, &nothing, BOIL_CLOSURES_GRAVE, "bath-nearly-dry"));
        dry += a.end == BOIL_CORRECT_NEARLY_DRY;
    }
    assert_true(dry > 1 && dry < tried);
}

/* A quiet bath is cooler, not weaker: no amounts on a reading 25 degF below the band (judgement), unless its own set point is
   as low. */
static void far_below_the_band(void **unused)
{
    (void)unused;
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    double full_C = p.limits.boiling_point_low_K - 273.15 - 13.9;
    boil_correction a = correction_of(&p, full_C - 0.6, 0.45, 0);
    assert_int_equal(a.end, BOIL_CORRECT_NO_FULL_BOIL);
    assert_close(a.salts.mass_kg + a.water.mass_kg + a.amounts.salts_kg, 0, 0, 0);
    assert_int_equal(correction_of(&p, full_C - 0.4, 0.45, 0).end, BOIL_CORRECT_DONE);
    p.charge.value = CELSIUS(125);
    assert_int_equal(correction_of(&p, full_C - 0.6, 0.45, 0).end, BOIL_CORRECT_DONE);
}

/* A tank of 48 by 24 by 30 in with 200 kBtu/h, whose wanted level of 22 in leaves no room for what goes in. */
static boil_plant brimful(void)
{
    boil_plant p = plant_of(&(state){0, 0, 0, 1, 0});
    const double blend[BOIL_SALTS] = {0.80, 0.15, 0.05};
    for (int i = 0; i < BOIL_SALTS; i++)
        p.charge.blend[i] = blend[i];
    p.tank.length_m = 1.2192;
    p.tank.width_m = 0.6096;
    p.tank.depth_m = 0.762;
    p.tank.level_m = 0.5588;
    p.heater.input_W = 58.6e3;
    return p;
}

static void add(boil_schedule *s, boil_action action)
{
    assert_int_equal(boil_schedule_add(s, &action), BOIL_OK);
}

/* The whole in one run: cold as it is bailed (150 degF, as the finding of hot bailing has it), boiling again when it says, and at the
   set point in the end. */
static void bailed_cold(void **unused)
{
    (void)unused;
    boil_plant p = brimful();
    boil_correction a = correction_of(&p, 143.3, 0.5588, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_int_equal(a.bail, BOIL_BAIL_FOR_LOAD);
    boil_plant whole = a.start;
    whole.charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    whole.charge.value = a.asked.reads_K;
    whole.tank.level_m = a.still_level_m;
    boil_schedule s;
    boil_schedule_init(&s, a.back_s + a.done_s + 60);
    add(&s, (boil_action){.kind = BOIL_ACTION_HEAT});
    add(&s, (boil_action){.kind = BOIL_ACTION_BAIL,
                          .time_s = a.cool_s,
                          .is.take = {.volume_m3 = a.bail_m3, .over_s = a.relight_s - a.cool_s}});
    add(&s, (boil_action){.kind = BOIL_ACTION_HEAT, .time_s = a.relight_s, .is.heat.dial = p.heater.dial});
    boil_action water = {.kind = BOIL_ACTION_WATER, .time_s = a.back_s + 60, .is.water.temperature_K = CELSIUS(20)};
    boil_action_pour(&water, a.water.mass_kg, a.water.pace.rate_kg_s);
    add(&s, water);
    assert_false(has_finding(&whole, &s, BOIL_CLOSURES_GRAVE, "bailing-hot"));
    assert_false(has_finding(&whole, &s, BOIL_CLOSURES_GRAVE, "water-on-quiet-bath"));
    boil_history h = run_of(&whole, &s, BOIL_CLOSURES_LIKELY);
    assert_int_equal(h.takes_count, 1);
    assert_close(h.takes[0].mass_kg, a.bail_kg, 0.02, 0);
    assert_true(h.additions_count == 1 && h.additions[0].boiling_point_K > a.asked.reads_K);
    assert_close(h.summary.boiling_point_end_K, a.set_point_K, 0, 0.7);
    assert_close(h.summary.still_level_end_m, a.end_still_m, 0, 4e-3);
    boil_history_free(&h);
    boil_schedule_free(&s);
}

/* The plan's steps with so many times as much put in, each so many times as fast, and what boils off meanwhile besides: the finding
   that forbids them, NULL where none does, and the still level that they come to. */
static const char *forbidden(const boil_correction *a, double more, double faster, double *level_m)
{
    boil_correction b = *a;
    boil_schedule s;
    const char *id, *title;
    double later_s = (a->water.over_s + a->salts.over_s) * (more / faster - 1);
    b.water.mass_kg = more * a->water.mass_kg + later_s * a->boiled_off_kg / a->done_s;
    b.water.over_s *= b.water.mass_kg / a->water.mass_kg / faster;
    b.salts.mass_kg *= more;
    b.salts.over_s *= more / faster;
    b.salts.start_s = 60 * ceil((b.water.over_s + 120) / 60);
    b.done_s = b.salts.start_s + b.salts.over_s + 180;
    assert_int_equal(boil_correct_schedule(&b, &s), BOIL_OK);
    boil_history h = run_of(&b.start, &s, BOIL_CLOSURES_GRAVE);
    assert_int_equal(boil_pour_rate_forbids(&b.start, &s, &h, &id, &title), BOIL_OK);
    *level_m = h.summary.still_level_end_m;
    boil_history_free(&h);
    boil_schedule_free(&s);
    return id;
}

/* A trough that is nearly empty: for the level wanted so much goes in that no pace leaves the freeboard, which a lower level does,
   and with nothing bailed out. So full that there is nothing to lower, it is bailed out first, heat off, and cold. */
static void a_lower_level_first_and_bailed_where_that_is_not_enough(void **unused)
{
    (void)unused;
    scenario s;
    messages m;
    tally t = {0};
    messages_init(&m);
    assert_int_equal(scenario_read("tests/cli/baths/trough.bath", &s, &m), BOIL_OK);
    boil_correction a = correction_of(&s.plant, 135, 0.127, 0);
    assert_int_equal(a.end, BOIL_CORRECT_DONE);
    assert_true(a.bail == BOIL_BAIL_NOTHING && a.bail_m3 == 0 && a.back_s == 0);
    assert_true(a.amounts.level_m < a.lowered_from_m && a.lowered_from_m <= a.wanted_level_m + 1e-9);
    ends_as_wanted(&a, &t);
    one_after_the_other(&a);
    double level_m;
    assert_null(forbidden(&a, 1, 1, &level_m));
    double more = (a.lowered_from_m - a.still_level_m) / (a.amounts.level_m - a.still_level_m);
    for (double faster = 1; faster > 0.5; faster *= 0.8)
        assert_non_null(forbidden(&a, more, faster, &level_m));
    boil_correction full = correction_of(&s.plant, 143, 0.55, 0);
    assert_int_equal(full.end, BOIL_CORRECT_DONE);
    assert_true(full.bail != BOIL_BAIL_NOTHING && !(full.lowered_from_m > 0));
    assert_true(full.bail_m3 > 0 && full.cool_s > 0 && full.relight_s > full.cool_s && full.back_s > full.relight_s);
    assert_true(full.cold_K <= CELSIUS((150 - 32) / 1.8) && full.amounts.level_m <= full.most_level_m);
    ends_as_wanted(&full, &t);
    messages_free(&m);
    scenario_free(&s);
}

static void published_balances(void **unused)
{
    (void)unused;
    double worst = 0;
    published *t = published_open("tests/published/concentration.csv");
    while (published_next(t)) {
        double mass = published_number(t, "mass"), fraction = published_number(t, "fraction");
        double liquid = published_number(t, "liquid"), strength = published_number(t, "liquid_fraction");
        boil_correct_amounts m = boil_correct_balance(fraction, mass, published_number(t, "wanted_fraction"),
                                                      fraction * mass + strength * liquid, strength);
        assert_close(m.liquid_kg, liquid, 1e-12, 0);
        assert_close(-m.water_kg, published_number(t, "water_off"), 0, published_number(t, "band"));
        worst = fmax(worst, fabs(m.water_kg + published_number(t, "water_off")) / mass);
    }
    published_close(t);
    print_message("concentration and mixing: within %.1e of the charge\n", worst);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_balances),
        cmocka_unit_test(states_of_every_kind),
        cmocka_unit_test(no_pace_is_true),
        cmocka_unit_test(liquid_does_it_too),
        cmocka_unit_test(a_little_has_a_pace_as_well),
        cmocka_unit_test(swell_is_taken_out),
        cmocka_unit_test(uncertainty_is_carried),
        cmocka_unit_test(whole_is_judged),
        cmocka_unit_test(boiling_over_is_bailed),
        cmocka_unit_test(too_much_salt),
        cmocka_unit_test(noise_is_left_alone),
        cmocka_unit_test(refusals),
        cmocka_unit_test(dry_as_a_run_finds_it),
        cmocka_unit_test(far_below_the_band),
        cmocka_unit_test(bailed_cold),
        cmocka_unit_test(too_full_boils_down),
        cmocka_unit_test(a_little_too_much_boils_off),
        cmocka_unit_test(no_more_is_bailed_than_it_takes),
        cmocka_unit_test(a_lower_level_first_and_bailed_where_that_is_not_enough),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("correct", tests, NULL, NULL);
}
