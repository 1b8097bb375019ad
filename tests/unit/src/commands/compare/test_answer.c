/* Two runs held against each other: what differs is found, what is the same is not. */
#include "support/scenario_run.h"
#include "support/close.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "commands/compare/answer.h"
#include "support/shipped.h"

typedef struct {
    scenario_run of[2];
    compare_answer c;
} pair;

static void carry_out_both(pair *p, const char *a, const char *b)
{
    carry_out(&p->of[0], a, 0);
    carry_out(&p->of[1], b, 0);
    p->c = (compare_answer){&p->of[0].o, &p->of[1].o};
}

static void forget_both(pair *p)
{
    forget(&p->of[0]);
    forget(&p->of[1]);
}

static size_t settings_that_differ(const pair *p)
{
    size_t n = 0;
    for (size_t i = 0; i < key_count(); i++)
        n += compare_setting_differs(&p->c, i);
    return n;
}

static void one_water_action_tells_the_pair_apart(void **state)
{
    (void)state;
    pair p;
    size_t n;
    carry_out_both(&p, "scenarios/water-while-quiet.bath", "scenarios/water-while-boiling.bath");
    assert_int_equal(settings_that_differ(&p), 0);
    compare_action *actions = compare_actions(&p.c, &n);
    assert_int_equal(n, 2);
    assert_true(actions[0].in_a && !actions[1].in_a);
    assert_close(actions[0].of->schedule.actions[actions[0].action].time_s, 320, 0, 1e-6);
    assert_close(actions[1].of->schedule.actions[actions[1].action].time_s, 600, 0, 1e-6);
    free(actions);
    compare_finding *found = compare_findings(&p.c, &n);
    assert_in_range(n, 4, 6);
    for (size_t i = 0; i < n; i++)
        assert_true(found[i].in[0] != NULL && found[i].in[1] == NULL);
    for (size_t i = 1; i < n; i++)
        assert_true(found[i].in[0]->severity <= found[i - 1].in[0]->severity);
    free(found);
    forget_both(&p);
}

static void nothing_differs_from_itself(void **state)
{
    (void)state;
    pair p;
    size_t n;
    carry_out_both(&p, "scenarios/normal-shift.bath", "scenarios/normal-shift.bath");
    assert_int_equal(settings_that_differ(&p), 0);
    compare_action *actions = compare_actions(&p.c, &n);
    assert_int_equal(n, 0);
    free(actions);
    for (size_t i = 0; compare_measured(i) != NULL; i++)
        assert_true(compare_measure_of(compare_measured(i), &p.of[0].o) == compare_measure_of(compare_measured(i), &p.of[1].o));
    forget_both(&p);
}

static void the_other_tank_differs_in_its_shape(void **state)
{
    (void)state;
    pair p;
    carry_out_both(&p, "scenarios/normal-shift.bath", "scenarios/tall-narrow.bath");
    assert_true(compare_setting_differs(&p.c, key_index(key_find("tank", "shape", 5))));
    assert_true(compare_setting_differs(&p.c, key_index(key_find("tank", "length", 6))));
    assert_true(compare_setting_differs(&p.c, key_index(key_find("tank", "diameter", 8))));
    assert_false(compare_setting_differs(&p.c, key_index(key_find("bath", "salts", 5))));
    assert_false(compare_setting_differs(&p.c, key_index(key_find("", "title", 5))));
    assert_false(compare_setting_differs(&p.c, key_index(key_find("limits", "freeboard", 9)))); /* 6 in is the default */
    forget_both(&p);
}

/* A change that the words of a load leave out, of a hundred-thousandth, tells the two apart in each of its numbers. */
static void a_load_differs_in_each_number(void **state)
{
    (void)state;
    static const size_t numbers[] = {
        offsetof(boil_load, mass_kg),           offsetof(boil_load, size_m),        offsetof(boil_load, tube_wall_m),
        offsetof(boil_load, packed_depth_m),    offsetof(boil_load, temperature_K), offsetof(boil_load, immersed_s),
        offsetof(boil_load, latest_s),          offsetof(boil_load, basket_kg),     offsetof(boil_load, lowering_s),
        offsetof(boil_load, coefficient_W_m2K), offsetof(boil_load, area_m2),       offsetof(boil_load, rinse_kg_m2),
        offsetof(boil_load, drag_out_kg_m2),
    };
    scenario s[2];
    for (int i = 0; i < 2; i++)
        read_shipped("normal-shift.bath", &s[i]);
    const carried_out a = {.scenario = &s[0]}, b = {.scenario = &s[1]};
    const compare_answer c = {&a, &b};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        double *one[2], kept, set;
        for (int k = 0; k < 2; k++)
            one[k] = (double *)(void *)((char *)&s[k].schedule.actions[0].is.load + numbers[i]);
        kept = *one[0];
        set = isfinite(kept) && kept != 0 ? kept : 1;
        for (int differs = 0; differs < 2; differs++) {
            size_t n;
            *one[0] = set;
            *one[1] = set * (1 + 1e-5 * differs);
            free(compare_actions(&c, &n));
            assert_int_equal(n, 2 * differs);
        }
        *one[0] = *one[1] = kept;
    }
    scenario_free(&s[0]);
    scenario_free(&s[1]);
}

/* So many actions that only one of both has, the second's first action so much later and heavier. */
static size_t only_one_has(const compare_answer *c, scenario *b, double later_s, double heavier)
{
    size_t n;
    boil_action *first = &b->schedule.actions[0];
    const boil_action kept = *first;
    first->time_s += later_s;
    first->is.load.mass_kg *= heavier;
    free(compare_actions(c, &n));
    *first = kept;
    return n;
}

/* At one time, to a microsecond, two that differ stay two and two that do not are one; further apart none answers for the other. */
static void actions_answer_for_each_other_at_one_time(void **state)
{
    (void)state;
    scenario s[2];
    for (int i = 0; i < 2; i++) {
        read_shipped("normal-shift.bath", &s[i]);
        s[i].schedule.actions[0].time_s = 0; /* so that a microsecond is one */
    }
    const carried_out a = {.scenario = &s[0]}, b = {.scenario = &s[1]};
    const compare_answer c = {&a, &b};
    static const double later_s[] = {0, 0.5e-6, 1e-6};
    for (size_t i = 0; i < sizeof later_s / sizeof later_s[0]; i++) {
        assert_int_equal(only_one_has(&c, &s[1], later_s[i], 1), 0);
        assert_int_equal(only_one_has(&c, &s[1], later_s[i], 2), 2);
    }
    assert_int_equal(only_one_has(&c, &s[1], 1.1e-6, 1), 2);
    scenario_free(&s[0]);
    scenario_free(&s[1]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_water_action_tells_the_pair_apart),
        cmocka_unit_test(nothing_differs_from_itself),
        cmocka_unit_test(a_load_differs_in_each_number),
        cmocka_unit_test(the_other_tank_differs_in_its_shape),
        cmocka_unit_test(actions_answer_for_each_other_at_one_time),
    };
    return cmocka_run_group_tests_name("contrast", tests, NULL, NULL);
}
