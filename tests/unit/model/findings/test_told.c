/* unit/model/findings/test_told.c -- what is told beside findings: causes, advice that gives way, how far the runs of a set lie apart,
   and the loads that are held back; in lists and histories written down by hand. The rules are those of the headers of
   model/findings. */
#include "support/hand_made.h"

#include "case/schedule.h"
#include "findings/finding_parts.h"
#include "findings/held_back.h"

#define MOST 4

typedef struct {
    boil_finding list[MOST];
    boil_findings all;
} told;

/* The last of the kinds stands behind the list. */
static told of_kinds(size_t count, const boil_found_kind kinds[])
{
    told t = {.all = {.count = count - 1}};
    assert_true(count <= MOST);
    for (size_t i = 0; i < count; i++)
        t.list[i] = (boil_finding){.kind = kinds[i],
                                   .id = boil_finding_row_at(kinds[i])->id,
                                   .advice = boil_finding_row_at(kinds[i])->advice,
                                   .limit = 5,
                                   .needed_W = UNKNOWN,
                                   .needed_kg = 7};
    return t;
}

#define OF_KINDS(...)                                                                                                          \
    of_kinds(sizeof((boil_found_kind[]){__VA_ARGS__}) / sizeof(boil_found_kind), (boil_found_kind[]){__VA_ARGS__})

static void a_cause_is_named_where_it_is_found(void **state)
{
    (void)state;
    told found = OF_KINDS(BOIL_FOUND_OVERFLOW, BOIL_FOUND_TALL, BOIL_FOUND_TOO_HOT, BOIL_FOUND_SALT_SLUG),
         possible = OF_KINDS(BOIL_FOUND_SURGE, BOIL_FOUND_LAYER, BOIL_FOUND_SURGE);
    found.all.list = found.list;
    possible.all.list = possible.list;
    boil_finding_causes(&found.all, NULL);
    assert_string_equal(found.list[0].because, "tank-tall");
    assert_true(found.list[1].because == NULL && found.list[2].because == NULL);
    found.list[0].because = NULL;
    boil_finding_causes(&found.all, &possible.all); /* the first that the table names, likely or not */
    assert_string_equal(found.list[0].because, "water-layer");
    assert_string_equal(possible.list[0].because, "water-layer");
    assert_true(possible.list[1].because == NULL && possible.list[2].because == NULL);
    found.list[0].because = NULL;
    found.list[0].own_cause = true;
    boil_finding_causes(&found.all, &possible.all);
    assert_null(found.list[0].because);
    possible.all.count = 0;
    found.list[0].own_cause = false;
    boil_finding_causes(&found.all, &possible.all);
    assert_string_equal(found.list[0].because, "tank-tall");
}

static const struct {
    boil_found_kind kind, graver;
    const char *says; /* NULL: its own advice stands */
} forbidden[] = {{BOIL_FOUND_TOO_HOT, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_WATER_SHORT, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_VALVE_SHORT, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_HEATER_BARE, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_FLOOR_BARE, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_PARTS_BARE, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_SALT_MUCH, BOIL_FOUND_NEARLY_DRY, "No water on it"},
                 {BOIL_FOUND_TOO_COOL, BOIL_FOUND_NEARLY_DRY, NULL},
                 {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_FLOOR_HOT, "No more heat"},
                 {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_SALT_BED, "No more heat"},
                 {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_RESTART, "No more heat"},
                 {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_CRUST, "No more heat"},
                 {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_FLOOR_HOT, "No more heat"},
                 {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_SALT_BED, "No more heat"},
                 {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_RESTART, "No more heat"},
                 {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_CRUST, "No more heat"},
                 {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_FLOOR_HOT, "No more heat"},
                 {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_SALT_BED, "No more heat"},
                 {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_RESTART, "No more heat"},
                 {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_CRUST, "No more heat"},
                 {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_NEARLY_DRY, NULL},
                 {BOIL_FOUND_LAYER, BOIL_FOUND_OVERFLOW, "stand back"}};

/* No water on what is nearly dry, no heat under salt, no fire under what would go over the rim: likely or possible. */
static void advice_gives_way_to_what_forbids_it(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof forbidden / sizeof forbidden[0]; i++)
        for (int way = 0; way < 3; way++) { /* both found; the graver one possible; both possible */
            told one = OF_KINDS(BOIL_FOUND_TUBES, forbidden[i].kind, BOIL_FOUND_FLOOR_HOT),
                 other = OF_KINDS(forbidden[i].graver, BOIL_FOUND_FLOOR_HOT);
            told both = OF_KINDS(BOIL_FOUND_TUBES, forbidden[i].kind, forbidden[i].graver, BOIL_FOUND_FLOOR_HOT),
                 none = OF_KINDS(BOIL_FOUND_TALL, BOIL_FOUND_FLOOR_HOT);
            told *found = way == 0 ? &both : way == 1 ? &one : &none, *possible = way == 0 ? NULL : way == 1 ? &other : &both;
            found->all.list = found->list;
            if (possible != NULL)
                possible->all.list = possible->list;
            boil_finding_advice(&found->all, possible != NULL ? &possible->all : NULL);
            const boil_finding *f = way == 1 ? &one.list[1] : &both.list[1];
            const char *own = boil_finding_row_at(forbidden[i].kind)->advice;
            assert_non_null(strstr(f->advice, forbidden[i].says != NULL ? forbidden[i].says : own));
            assert_int_equal(isnan(f->needed_kg), forbidden[i].says != NULL);
            assert_true(f->limit == 5);
        }
}

/* A limit that is the heat that would do goes with it; water on a cold bath comes off before the heat, whatever else. */
static void what_gives_way_names_no_amount(void **state)
{
    (void)state;
    told found = OF_KINDS(BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_SALT_BED, BOIL_FOUND_BOIL_LOST);
    found.all.list = found.list;
    found.list[0].limit = found.list[0].needed_W = 30e3;
    boil_finding_advice(&found.all, NULL);
    assert_true(isnan(found.list[0].limit) && isnan(found.list[0].needed_W) && found.list[1].needed_kg == 7);
    assert_true(found.list[2].needed_kg == 7); /* behind the list */
    found = OF_KINDS(BOIL_FOUND_LAYER, BOIL_FOUND_OVERFLOW, BOIL_FOUND_LAYER);
    found.all.list = found.list;
    found.list[0].own_cause = true;
    boil_finding_advice(&found.all, NULL);
    assert_null(strstr(found.list[0].advice, "stand back"));
    found =
        OF_KINDS(BOIL_FOUND_TOO_HOT, BOIL_FOUND_NEARLY_DRY, BOIL_FOUND_TALL); /* of anything else its own cause is no matter */
    found.all.list = found.list;
    found.list[0].own_cause = true;
    boil_finding_advice(&found.all, NULL);
    assert_non_null(strstr(found.list[0].advice, "No water on it"));
}

static boil_history history_of(boil_load_result *loads, size_t count, double recovery_s, double stored_s, double steam,
                               double level_m)
{
    for (size_t i = 0; i < count; i++) {
        loads[i].recovery_s = i == 0 ? recovery_s : 10;
        loads[i].recovery_stored_s = i == 0 ? stored_s : 5;
    }
    boil_history h = {.loads = loads, .loads_count = count};
    h.summary.steam_peak_kg_s.value = steam;
    h.summary.level_max_m.value = level_m;
    return h;
}

static void runs_lie_apart_from_the_least_to_the_most(void **state)
{
    (void)state;
    boil_load_result of_likely[2] = {{0}}, of_other[4][2] = {{{0}}};
    boil_history likely = history_of(of_likely, 2, 100, 60, 0.1, 0.6);
    boil_run_of_set others[4] = {{.history = history_of(of_other[0], 2, 150, 90, 0.3, 0.55)},
                                 {.history = history_of(of_other[1], 2, 90, 20, 0.05, 0.7)},
                                 {.history = history_of(of_other[2], 2, 900, 1, 0.2, 0.65), .held_back = true},
                                 {.history = history_of(of_other[3], 2, 9000, 0, 9, 9), .refused = true}};
    others[0].history.summary.steam_more_than = true;
    boil_bands b;
    assert_int_equal(boil_bands_of(&likely, others, 4, &b), BOIL_OK);
    assert_true(b.recovery_s.likely == 100 && b.recovery_s.low == 20 && b.recovery_s.high == 150);
    assert_true(b.steam_peak_kg_s.likely == 0.1 && b.steam_peak_kg_s.low == 0.05 && b.steam_peak_kg_s.high == 0.3);
    assert_true(b.level_max_m.likely == 0.6 && b.level_max_m.low == 0.55 && b.level_max_m.high == 0.7 && b.steam_more_than);
    others[2].history.summary.steam_peak_kg_s.value = 0.4; /* held back: its steam counts, its recovery does not */
    others[0].history.summary.steam_more_than = false;
    assert_int_equal(boil_bands_of(&likely, others, 4, &b), BOIL_OK);
    assert_true(b.steam_peak_kg_s.high == 0.4 && b.recovery_s.high == 150 && !b.steam_more_than);
    assert_int_equal(boil_bands_of(&likely, NULL, 0, &b), BOIL_OK);
    assert_true(b.recovery_s.low == 60 && b.recovery_s.high == 100);
}

/* One that is never back is infinite; of no loads nothing is known. */
static void a_load_that_is_not_back_has_no_end(void **state)
{
    (void)state;
    boil_load_result loads[3] = {{0}};
    boil_bands b;
    boil_history h = history_of(loads, 3, (double)NAN, (double)NAN, 0.1, 0.6);
    assert_int_equal(boil_bands_of(&h, NULL, 0, &b), BOIL_OK);
    assert_true(isinf(b.recovery_s.likely) && isinf(b.recovery_s.low) && isinf(b.recovery_s.high));
    h.loads_count = 0;
    assert_int_equal(boil_bands_of(&h, NULL, 0, &b), BOIL_OK);
    assert_true(isnan(b.recovery_s.likely) && isnan(b.recovery_s.low));
    boil_run_of_set one = {.history = h};
    assert_int_equal(boil_bands_of(NULL, NULL, 0, &b), BOIL_BAD_INPUT);
    assert_int_equal(boil_bands_of(&h, NULL, 1, &b), BOIL_BAD_INPUT);
    assert_int_equal(boil_bands_of(&h, &one, 1, NULL), BOIL_BAD_INPUT);
    assert_int_equal(boil_bands_of(&h, &one, 0, &b), BOIL_OK);
}

/* Those that in any run go in through water that would leave less than is asked for weigh next to nothing. */
static void loads_through_water_are_held_back(void **state)
{
    (void)state;
    boil_action actions[3] = {plate_action(10, 1), plate_action(20, 1), plate_action(30, 1)};
    for (int i = 0; i < 3; i++) {
        actions[i].is.load.basket_kg = 3;
        actions[i].is.load.rinse_kg_m2 = 0.1;
    }
    boil_schedule s = {.actions = actions, .count = 3, .duration_s = 100}, lighter;
    boil_load_result likely[2] = {{.action = 0, .left_m = 0.15}, {.action = 1, .left_m = UNKNOWN}};
    boil_load_result other[3] = {{.action = 0, .left_m = 0.2}, {.action = 2, .left_m = 0.1499}, {.action = 3, .left_m = -1}};
    boil_run_set set = {.count = 1};
    bool any;
    set.likely.loads = likely;
    set.likely.loads_count = 2;
    set.other[0].history.loads = other;
    set.other[0].history.loads_count = 1;
    boil_load_result behind = {.action = 1, .left_m = 0.01};
    set.other[1].history.loads = &behind;
    set.other[1].history.loads_count = 1;
    assert_int_equal(boil_held_back(&set, &s, 0.15, &lighter, &any), BOIL_OK);
    assert_true(!any && lighter.actions == NULL);
    set.other[0].history.loads_count = 3; /* the last of no action */
    assert_int_equal(boil_held_back(&set, &s, 0.15, &lighter, &any), BOIL_OK);
    assert_true(any && lighter.count == 3);
    assert_true(lighter.actions[0].is.load.mass_kg == actions[0].is.load.mass_kg && lighter.actions[1].is.load.basket_kg == 3);
    const boil_load *l = &lighter.actions[2].is.load;
    assert_true(l->mass_kg == 1e-3 && l->basket_kg == 0 && l->rinse_kg_m2 == 0 && l->size_m == actions[2].is.load.size_m);
    assert_null(boil_load_problem(l));
    boil_schedule_free(&lighter);
    likely[0].left_m = 0.14;
    assert_int_equal(boil_held_back(&set, &s, 0.15, &lighter, &any), BOIL_OK);
    assert_true(any && lighter.actions[0].is.load.mass_kg == 1e-3);
    boil_schedule_free(&lighter);
}

static void every_row_stands_at_its_place(void **state)
{
    (void)state;
    assert_string_equal(boil_finding_row_at(BOIL_FOUND_NEVER_BOILS)->id, "never-boils");
    assert_string_equal(boil_finding_row_at(BOIL_FOUND_KINDS - 1)->id, "salt-not-stated");
    assert_null(boil_finding_row_at(BOIL_FOUND_KINDS));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_cause_is_named_where_it_is_found), cmocka_unit_test(advice_gives_way_to_what_forbids_it),
        cmocka_unit_test(what_gives_way_names_no_amount),     cmocka_unit_test(runs_lie_apart_from_the_least_to_the_most),
        cmocka_unit_test(a_load_that_is_not_back_has_no_end), cmocka_unit_test(loads_through_water_are_held_back),
        cmocka_unit_test(every_row_stands_at_its_place),
    };
    return cmocka_run_group_tests_name("told beside findings", tests, NULL, NULL);
}
