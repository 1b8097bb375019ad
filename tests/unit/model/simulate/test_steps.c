/* The steps a run goes by, long and linearly implicit, against short explicit ones of fifth order and nine digits, which rest on
   nothing that is known of the bath. On the shipped scenarios. */
#include <gsl/gsl_errno.h>
#include <string.h>

#include "support/close.h"

#include "findings/findings.h"
#include "boilback.h"
#include "support/shipped.h"

/* What a run may be off, far below what people can see of it. */
typedef struct {
    double recovery_s, spell_s, level_m, temperature_K, steam;
} allowance;

static boil_history run_as(const scenario *s, const boil_run_options *o, boil_findings *f)
{
    boil_history h;
    assert_int_equal(boil_run(&s->plant, &s->schedule, o, &h), BOIL_OK);
    assert_int_equal(boil_findings_of(&s->plant, &s->schedule, NULL, &h, NULL, 0, f, NULL), BOIL_OK);
    return h;
}

static double apart(double a, double b)
{
    assert_int_equal(isnan(a), isnan(b));
    return isnan(a) ? 0 : fabs(a - b);
}

static void compare_spells(const boil_history *a, const boil_history *b, const allowance *most)
{
    double recovery = 0, spell = 0;
    assert_int_equal(a->loads_count, b->loads_count);
    assert_int_equal(a->quiet_count, b->quiet_count);
    assert_int_equal(a->mode_changes, b->mode_changes);
    for (size_t i = 0; i < a->loads_count; i++)
        recovery = fmax(recovery, apart(a->loads[i].recovery_s, b->loads[i].recovery_s));
    for (size_t i = 0; i < a->quiet_count; i++)
        spell = fmax(spell, fmax(apart(a->quiet[i].start_s, b->quiet[i].start_s), apart(a->quiet[i].end_s, b->quiet[i].end_s)));
    print_message("  recoveries within %.1e s, quiet spells within %.1e s\n", recovery, spell);
    assert_true(recovery < most->recovery_s && spell < most->spell_s);
}

/* Rows at the same times. */
static void compare_rows(const boil_history *a, const boil_history *b, const allowance *most)
{
    double temperature = 0, level = 0;
    assert_int_equal(a->rows_count, b->rows_count);
    for (size_t i = 0; i < a->rows_count; i++) {
        assert_true(a->rows[i].time_s == b->rows[i].time_s);
        temperature = fmax(temperature, fabs(a->rows[i].temperature_K - b->rows[i].temperature_K));
        level = fmax(level, fabs(a->rows[i].level_m - b->rows[i].level_m));
    }
    print_message("  %zu rows: within %.1e K, %.1e m; %zu for %zu looks at the rates\n", a->rows_count, temperature, level,
                  a->evaluations, b->evaluations);
    assert_true(temperature < most->temperature_K && level < most->level_m);
}

static void compare(const scenario *s, const boil_run_options *of, const boil_run_options *with, const allowance *most)
{
    boil_findings found, wanted;
    boil_history h = run_as(s, of, &found), exact = run_as(s, with, &wanted);
    compare_spells(&h, &exact, most);
    compare_rows(&h, &exact, most);
    assert_close(h.summary.freeboard_min_m.value, exact.summary.freeboard_min_m.value, 0, most->level_m);
    assert_close(h.summary.steam_peak_kg_s.value, exact.summary.steam_peak_kg_s.value, most->steam, 0);
    assert_int_equal(found.count, wanted.count);
    for (size_t i = 0; i < found.count; i++) {
        assert_string_equal(found.list[i].id, wanted.list[i].id);
        assert_int_equal(found.list[i].severity, wanted.list[i].severity);
    }
    assert_true(fabs(h.balance.water.closure) < 1e-12 && fabs(h.balance.energy.closure) < 1e-11);
    boil_findings_free(&found);
    boil_findings_free(&wanted);
    boil_history_free(&h);
    boil_history_free(&exact);
}

static void default_against_plain(const char *name, const scenario *s)
{
    const allowance most = {0.05, 0.05, 1e-3, 2e-3, 5e-3};
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 61;
    boil_run_options plain = o;
    plain.plain_steps = true;
    plain.tolerance = 1e-9;
    print_message("%s\n", name);
    compare(s, &o, &plain, &most);
}

static void a_run_is_what_short_plain_steps_make_it(void **state)
{
    (void)state;
    assert_true(each_shipped(default_against_plain, 1) > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_run_is_what_short_plain_steps_make_it),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("steps", tests, NULL, NULL);
}
