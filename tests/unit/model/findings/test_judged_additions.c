/* unit/model/findings/test_judged_additions.c -- water, salts and liquid in histories written down by hand: at each side of every
   limit that decides a word. The limits are common practice or judgement, no source (model/case/grading.h); that the words follow
   them is what is asserted. */
#include "support/hand_made.h"

/* Into a spell from 600 s to 1200 s. */
static boil_addition_result poured(double time_s, double over_s, double kg)
{
    return (boil_addition_result){.kind = BOIL_ACTION_WATER,
                                  .time_s = time_s,
                                  .over_s = over_s,
                                  .mass_kg = kg,
                                  .quiet_poured_kg = kg,
                                  .missed_by_m = UNKNOWN,
                                  .missed_by_K = UNKNOWN,
                                  .freeboard_min_m = 0.3};
}

static void what_is_poured_in_one_spell_is_one_amount(void **state)
{
    (void)state;
    const struct {
        double time_s, over_s, kg, first_s;
    } pours[] = {{700, 10, 2 + 3, 700}, {590, 10, 2 + 3, 600}, {589, 10, 3, 800},   {1200, 10, 2 + 3, 800},
                 {1201, 10, 3, 800},    {0, 9000, 2 + 3, 600}, {600, 0, 2 + 3, 600}};
    for (size_t i = 0; i < sizeof pours / sizeof pours[0]; i++) {
        hand_made m;
        hand_made_begin(&m);
        hand_made_spell(&m, 600, 1200, BOIL_QUIET_LOAD);
        m.additions[0] = poured(pours[i].time_s, pours[i].over_s, 2);
        m.additions[1] = poured(800, 10, 3);
        m.additions[2] = poured(610, 10, 0); /* none of it onto the quiet bath */
        m.history.additions_count = 3;
        boil_finding f = hand_made_find(&m, "water-on-quiet-bath");
        assert_close(f.value, pours[i].kg, 1e-12, 0);
        assert_close(f.limit, 0.0227, 1e-12, 0); /* a film: BOIL_FOUND_WATER_QUIET of case/grading.c */
        assert_close(f.time_s, pours[i].first_s, 1e-12, 0);
    }
}

static void a_spell_that_goes_on_has_all_that_follows(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 600, UNKNOWN, BOIL_QUIET_LOAD);
    m.additions[0] = poured(3000, 10, 2);
    m.history.additions_count = 1;
    assert_grade(&m, "water-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.additions[0] = poured(3000, 10, 0.0228);
    assert_grade(&m, "water-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.additions[0] = poured(3000, 10, 0.0226);
    assert_no_find(&m, "water-on-quiet-bath");
}

/* A third of the freeboard limit, and salts two grains deep, make it a warning. */
static void what_floats_or_lies_makes_a_pour_graver(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 600, 1200, BOIL_QUIET_LOAD);
    m.additions[0] = poured(700, 10, 2);
    m.history.additions_count = 1;
    m.quiet[0].left_m = 0.15 * 2 / 3;
    assert_grade(&m, "water-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.quiet[0].left_m -= 1e-6;
    assert_grade(&m, "water-on-quiet-bath", BOIL_SEVERITY_WARNING);
    m.additions[0].kind = BOIL_ACTION_SALTS;
    assert_no_find(&m, "water-on-quiet-bath");
    m.history.summary.bed_max_m = 1.9e-3;
    assert_grade(&m, "salt-on-quiet-bath", BOIL_SEVERITY_CAUTION);
    m.history.summary.bed_max_m = 2e-3;
    assert_grade(&m, "salt-on-quiet-bath", BOIL_SEVERITY_WARNING);
    boil_finding f = hand_made_find(&m, "salt-on-quiet-bath");
    assert_true(f.value == 2 && f.count == 1);
    m.additions[0].kind = BOIL_ACTION_LIQUID; /* cools and stirs it as salts do */
    assert_grade(&m, "salt-on-quiet-bath", BOIL_SEVERITY_WARNING);
}

/* The two of one spell are told by the graver of them, and counted. */
static void pours_in_two_spells_are_two_of_which_the_worse_is_told(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    hand_made_spell(&m, 600, 1200, BOIL_QUIET_LOAD);
    hand_made_spell(&m, 1800, 2400, BOIL_QUIET_LOAD);
    m.additions[0] = poured(700, 10, 2);
    m.additions[1] = poured(1900, 10, 5);
    m.history.additions_count = 2;
    boil_finding f = hand_made_find(&m, "water-on-quiet-bath");
    assert_int_equal(f.count, 2);
    assert_close(f.value, 5, 1e-12, 0);
    assert_close(f.time_s, 700, 1e-12, 0);
    assert_close(f.worst_s, 1900, 1e-12, 0);
    m.quiet[0].left_m = 0.01;
    f = hand_made_find(&m, "water-on-quiet-bath");
    assert_int_equal(f.severity, BOIL_SEVERITY_WARNING);
    assert_close(f.value, 2, 1e-12, 0);
}

/* Of a slug: it lifts the bath by more than a quarter of what room there was. */
static void a_slug_of_salt_is_told_by_the_freeboard_it_leaves(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.additions_count = 1;
    m.additions[0].kind = BOIL_ACTION_SALTS;
    m.additions[0].time_s = 500;
    m.additions[0].freeboard_min_m = 0.14;
    m.additions[0].level_rise_m = 0.25 * (0.9 - 0.5);
    assert_no_find(&m, "salt-slug");
    m.additions[0].level_rise_m += 1e-6;
    boil_finding f = hand_made_find(&m, "salt-slug");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_true(f.value == 0.14 && f.limit == 0.15 && f.time_s == 500);
    assert_close(f.grades[BOIL_SEVERITY_WARNING].limit, 0.1, 1e-9, 0);
    m.additions[0].freeboard_min_m = 0.09;
    assert_grade(&m, "salt-slug", BOIL_SEVERITY_WARNING);
    m.additions[0].freeboard_min_m = 1e-6;
    assert_grade(&m, "salt-slug", BOIL_SEVERITY_WARNING);
    m.additions[0].freeboard_min_m = 0;
    assert_grade(&m, "salt-slug", BOIL_SEVERITY_DANGER);
    m.additions[0].kind = BOIL_ACTION_LIQUID;
    assert_no_find(&m, "salt-slug");
}

/* Steam of dry salt against what lifts the bath to the rim; and what soaks in without giving any is a warning still. */
static void water_on_dry_salt_is_told_by_its_steam(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_summary *of = &m.history.summary;
    of->dry_steam_kg_s = (boil_extreme){0.4, 120};
    of->dry_steam_lifts_kg_s = 0.5;
    assert_no_find(&m, "water-on-dry-salt");
    of->dry_wetted_s = 100;
    boil_finding f = hand_made_find(&m, "water-on-dry-salt");
    assert_int_equal(f.severity, BOIL_SEVERITY_WARNING);
    assert_true(f.value == 0.4 && f.limit == 0.5 && f.time_s == 100 && f.worst_s == 120);
    assert_close(f.grades[BOIL_SEVERITY_DANGER].limit, 0.5, 1e-12, 0);
    of->dry_steam_kg_s.value = 0.51;
    assert_grade(&m, "water-on-dry-salt", BOIL_SEVERITY_DANGER);
    of->dry_steam_kg_s.value = 0;
    assert_grade(&m, "water-on-dry-salt", BOIL_SEVERITY_WARNING);
}

static void a_bed_is_more_than_grains(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.history.summary.watched[BOIL_WATCH_SALT_BED].worst = (boil_extreme){20, 300};
    m.history.summary.bed_max_m = 1.9e-3;
    assert_no_find(&m, "salt-bed");
    m.history.summary.bed_max_m = 2e-3;
    boil_finding f = hand_made_find(&m, "salt-bed");
    assert_int_equal(f.severity, BOIL_SEVERITY_CAUTION);
    assert_true(f.value == 20 && f.worst_s == 300);
}

/* Watered back to where its boiling point was, the bath stands higher than the limit lets it: by a third, by all of it. */
static void salt_that_wants_more_water_than_there_is_room_for(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    boil_summary *of = &m.history.summary;
    of->restoring_water_kg = 80;
    of->salts_added_kg = 100;
    of->restored_level_m = 0.75;
    assert_no_find(&m, "salt-too-much");
    of->restored_level_m = 0.76;
    boil_finding f = hand_made_find(&m, "salt-too-much");
    assert_int_equal(f.severity, BOIL_SEVERITY_NOTICE);
    assert_true(f.value == 0.76 && f.needed_kg == 80 && f.time_s == 3600);
    assert_close(f.limit, 0.75, 1e-12, 0);
    assert_close(f.grades[BOIL_SEVERITY_CAUTION].limit, 0.8, 1e-12, 0);
    of->restored_level_m = 0.81;
    assert_grade(&m, "salt-too-much", BOIL_SEVERITY_CAUTION);
    of->restored_level_m = 0.91;
    assert_grade(&m, "salt-too-much", BOIL_SEVERITY_WARNING);
    of->salts_added_kg = 0;
    assert_no_find(&m, "salt-too-much");
}

static boil_addition_result of_liquid(double lost_s, double recovery_s)
{
    boil_addition_result a = poured(lost_s - 10, 20, 30);
    a.kind = BOIL_ACTION_LIQUID;
    a.boil_lost_s = lost_s;
    a.recovery_s = recovery_s;
    return a;
}

/* Liquid says what it stopped, and the boil's own finding leaves that to it; of what never came back, until the end. */
static void liquid_that_stops_the_boil_is_told_once(void **state)
{
    (void)state;
    hand_made m;
    hand_made_begin(&m);
    m.needed.liquid_kg = 12;
    hand_made_spell(&m, 500, 700, BOIL_QUIET_LOAD);
    m.quiet[0].cause = BOIL_QUIET_LIQUID;
    m.history.additions_count = 1;
    m.additions[0] = of_liquid(500, 200);
    boil_finding f = hand_made_find(&m, "liquid-stops-boil");
    assert_int_equal(f.severity, BOIL_SEVERITY_NOTICE);
    assert_true(f.value == 200 && f.limit == 120 && f.time_s == 500 && f.worst_s == 700 && f.outside_s == 80);
    assert_true(f.needed_kg == 12);
    assert_close(f.grades[BOIL_SEVERITY_CAUTION].limit, 360, 1e-12, 0);
    assert_no_find(&m, "boil-lost-long");
    m.additions[0].recovery_s = UNKNOWN;
    assert_close(hand_made_find(&m, "liquid-stops-boil").value, 3100, 1e-12, 0);
    assert_no_find(&m, "boil-lost-long");
    m.additions[0].was_quiet_before = true; /* then it stopped nothing */
    assert_no_find(&m, "liquid-stops-boil");
    assert_grade(&m, "boil-lost-long", BOIL_SEVERITY_NOTICE);
    m.additions[0] = of_liquid(500, 0);
    assert_no_find(&m, "liquid-stops-boil");
    assert_grade(&m, "boil-lost-long", BOIL_SEVERITY_NOTICE);
    m.additions[0] = of_liquid(499, 200); /* another spell's */
    assert_grade(&m, "boil-lost-long", BOIL_SEVERITY_NOTICE);
    m.additions[0] = of_liquid(500, 200);
    m.additions[0].kind = BOIL_ACTION_WATER;
    assert_no_find(&m, "liquid-stops-boil");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_poured_in_one_spell_is_one_amount),
        cmocka_unit_test(a_spell_that_goes_on_has_all_that_follows),
        cmocka_unit_test(what_floats_or_lies_makes_a_pour_graver),
        cmocka_unit_test(pours_in_two_spells_are_two_of_which_the_worse_is_told),
        cmocka_unit_test(a_slug_of_salt_is_told_by_the_freeboard_it_leaves),
        cmocka_unit_test(water_on_dry_salt_is_told_by_its_steam),
        cmocka_unit_test(a_bed_is_more_than_grains),
        cmocka_unit_test(salt_that_wants_more_water_than_there_is_room_for),
        cmocka_unit_test(liquid_that_stops_the_boil_is_told_once),
    };
    return cmocka_run_group_tests_name("judged additions", tests, NULL, NULL);
}
