/* What is read off the bath while it is worked: figures by hand, and the words that stand for them. */
#include <gsl/gsl_errno.h>

#include "support/worked.h"

#include <math.h>

#include "practise/panel.h"

static panel boiling(void)
{
    return (panel){.row = {.boiling = true,
                           .temperature_K = 413.706, /* 285.0 degF */
                           .boiling_point_K = 413.706,
                           .salt_fraction = 0.512,
                           .steam_kg_s = 0.01,
                           .calm_kg_s = 0.01,
                           .freeboard_m = 0.18034, /* 7.1 in */
                           .left_m = (double)NAN},
                   .limit_m = 0.1524,
                   .heat = 1};
}

static void steam_is(double steam_kg_s, double calm_kg_s, const char *words)
{
    panel p = boiling();
    p.row.steam_kg_s = steam_kg_s;
    p.row.calm_kg_s = calm_kg_s;
    assert_string_equal(panel_steam(&p).text, words);
}

/* Of a bath that heater and losses would have boil off nothing there is no "usual". */
static void steam_is_told_in_terms_of_the_usual(void **state)
{
    (void)state;
    steam_is(0, 1, "none from boiling");
    steam_is(0, 0, "none from boiling");
    steam_is(0.5, 0, "some");
    steam_is(0.5, -1, "some");
    steam_is(0.0049, 1, "none from boiling");
    steam_is(0.0053, 1, "x0.0 of usual");
    steam_is(0.94, 1, "x0.9 of usual");
    steam_is(9.94, 1, "x9.9 of usual");
    steam_is(9.95, 1, "x10 of usual");
    steam_is(9.97, 1, "x10 of usual");
    steam_is(99.9, 1, "x100 of usual");
    steam_is(100, 1, "x100 of usual");
    steam_is(106, 1, "over x100 of usual");
}

static void what_lets_go_is_told_while_something_floats(void **state)
{
    (void)state;
    panel p = boiling();
    p.row.layer_kg = 0.0449;
    p.row.left_m = 0.1;
    assert_string_equal(panel_lets_go(&p, UNITS_US).text, "");
    p.row.layer_kg = 0.045;
    assert_string_equal(panel_lets_go(&p, UNITS_US).text, "3.9 in");
    p.row.left_m = 0;
    assert_string_equal(panel_lets_go(&p, UNITS_US).text, "OVER");
    p.row.left_m = (double)NAN;
    assert_string_equal(panel_lets_go(&p, UNITS_US).text, "");
}

static void line_is(const panel *p, const char *words)
{
    assert_string_equal(panel_line_of(p, UNITS_US).text, words);
}

static void a_line_says_it_all(void **state)
{
    (void)state;
    panel p = boiling();
    line_is(&p, "boils at 285.0 degF; 7.1 in to the rim (limit 6.0); steam x1.0 of usual; salts 51.2 %; heat 100 %");
    p.row.boiling = false;
    p.row.temperature_K -= 2 / 1.8;
    p.row.steam_kg_s = 0;
    p.heat = 0.5;
    line_is(&p, "QUIET 2.0 degF below boiling at 283.0 degF; 7.1 in to the rim (limit 6.0); steam none from boiling; salts "
                "51.2 %; heat 50 %");
    p.row.layer_kg = 0.045;
    p.row.left_m = -0.1;
    p.bed_kg = 0.045;
    p.loads = 2;
    p.loads_kg = 10;
    p.row.coldest_load_K = 373.15;
    line_is(&p, "QUIET 2.0 degF below boiling at 283.0 degF; 7.1 in to the rim (limit 6.0), if it lets go now OVER; steam none "
                "from boiling; 0.099 lb water floats; salts 51.2 %; heat 50 %; 0.099 lb salt not dissolved; 2 loads in, 22.0 "
                "lb, coldest 212.0 degF");
    p = boiling();
    p.loads = 1;
    p.loads_kg = 10;
    p.row.coldest_load_K = 373.15;
    assert_non_null(strstr(panel_line_of(&p, UNITS_US).text, "; heat 100 %; 1 load in, 22.0 lb, coldest 212.0 degF"));
    p = boiling();
    p.row.freeboard_m = 0;
    p.row.layer_kg = p.bed_kg = 0.0449;
    line_is(&p, "boils at 285.0 degF; OVER THE RIM; steam x1.0 of usual; salts 51.2 %; heat 100 %");
    p.row.boiling = false; /* hotter than it boils, as under a crust: no less than nothing below */
    p.row.temperature_K += 1;
    assert_non_null(strstr(panel_line_of(&p, UNITS_US).text, "QUIET 0.0 degF below boiling at 286.8"));
}

static panel now(const worked *w)
{
    return panel_of(&w->shift, shift_history(&w->shift), w->shift.now_s);
}

static void go_on(worked *w, double until_s)
{
    assert_int_equal(shift_go_on(&w->shift, until_s), BOIL_OK);
}

/* A load is in from when it begins to be lowered until it is all out again, which takes as long. */
static void loads_are_counted_while_any_of_them_is_in(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 60);
    assert_int_equal(now(&w).loads, 0);
    assert_true(isnan(now(&w).row.coldest_load_K));
    assert_int_equal(worked_act(&w, "load 20 lb, plate 1/4 in, at 70 degF, for 5 min, lowered over 20 s"), BOIL_OK);
    assert_int_equal(now(&w).loads, 1);
    go_on(&w, 120);
    assert_int_equal(worked_act(&w, "load 10 lb, plate 1/4 in, at 70 degF, for 10 min, lowered over 10 s"), BOIL_OK);
    assert_int_equal(now(&w).loads, 2);
    assert_close(now(&w).loads_kg, 30 * 0.45359237, 1e-9, 0);
    go_on(&w, 379.5);
    assert_int_equal(now(&w).loads, 2);
    go_on(&w, 380);
    assert_int_equal(now(&w).loads, 1);
    assert_close(now(&w).loads_kg, 10 * 0.45359237, 1e-9, 0);
    go_on(&w, 800);
    assert_int_equal(now(&w).loads, 0);
    worked_end(&w);
}

/* Between two rows straight between them, but what is yes or no, which holds from the row before. */
static void between_two_rows_it_reads_straight(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 60);
    assert_int_equal(worked_act(&w, "load 42 lb, plate 1/4 in, at 70 degF, for 5 min"), BOIL_OK);
    go_on(&w, 90);
    const boil_history *h = shift_history(&w.shift);
    size_t found = 0;
    for (size_t i = 0; i + 1 < h->rows_count && h->rows[i + 1].time_s < 90; i++) {
        const boil_row *a = &h->rows[i], *b = &h->rows[i + 1];
        if (!(b->time_s > a->time_s))
            continue;
        assert_true(panel_of(&w.shift, h, a->time_s).row.boiling == a->boiling);
        panel p = panel_of(&w.shift, h, a->time_s + (b->time_s - a->time_s) / 4);
        assert_close(p.row.temperature_K, (3 * a->temperature_K + b->temperature_K) / 4, 1e-12, 0);
        assert_close(p.row.level_m, (3 * a->level_m + b->level_m) / 4, 1e-12, 0);
        if (a->time_s > 62)
            assert_close(p.row.coldest_load_K, (3 * a->coldest_load_K + b->coldest_load_K) / 4, 1e-12, 0);
        assert_true(p.row.boiling == a->boiling);
        assert_true(p.row.time_s > a->time_s);
        found++;
    }
    assert_true(found > 80);
    worked_end(&w);
}

/* Gas with a lag of a minute: from full to half, five minutes on, what is left of the change is its e^-5 [first-order lag]; a step may
   be off by 1e-5 of the full heat. */
static void heat_is_a_share_of_what_the_full_dial_gives(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 60);
    assert_close(now(&w).heat, 1, 1e-9, 0);
    assert_int_equal(worked_act(&w, "heat 50 %"), BOIL_OK);
    go_on(&w, 360);
    assert_close(now(&w).heat, 0.5 * (1 + exp(-5)), 0, 3e-5);
    worked_end(&w);
}

/* Salt on the floor is what was not dissolved and what crystals there are. */
static void salt_on_the_floor_is_all_of_it(void **state)
{
    (void)state;
    worked w = {.read = {0}};
    worked_begin(&w, WORKED_TOP WORKED_PLANT);
    go_on(&w, 60);
    assert_int_equal(worked_act(&w, "salts 40 lb over 10 s"), BOIL_OK);
    go_on(&w, 80);
    panel p = now(&w);
    assert_true(p.row.undissolved_kg > 1);
    assert_close(p.bed_kg, p.row.undissolved_kg + p.row.crystals_kg, 1e-12, 0);
    worked_end(&w);
    worked_begin(&w, "duration = 30 min\n[tank]\nlength = 5 ft\nwidth = 2 ft\ndepth = 24.5 in\nlevel = 16 in\n"
                     "[bath]\nsalts = 60 % NaOH, 30 % NaNO3, 10 % NaNO2\nboiling point = 290 degF\ntemperature = 120 degF\n"
                     "[heat]\nsource = gas\ninput = 190 kBtu/h\n");
    p = now(&w);
    assert_true(p.row.crystals_kg > 1);
    assert_close(p.bed_kg, p.row.undissolved_kg + p.row.crystals_kg, 1e-12, 0);
    worked_end(&w);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(steam_is_told_in_terms_of_the_usual),
        cmocka_unit_test(what_lets_go_is_told_while_something_floats),
        cmocka_unit_test(a_line_says_it_all),
        cmocka_unit_test(loads_are_counted_while_any_of_them_is_in),
        cmocka_unit_test(between_two_rows_it_reads_straight),
        cmocka_unit_test(heat_is_a_share_of_what_the_full_dial_gives),
        cmocka_unit_test(salt_on_the_floor_is_all_of_it),
    };
    return cmocka_run_group_tests_name("what is read off the bath", tests, scratch_begin, scratch_end);
}
