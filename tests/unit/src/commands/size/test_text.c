/* What is said of heats, loads and intervals that are made up here: no run. What runs find is tested in model/analysis. */
#include "support/close.h"
#include "support/printed.h"
#include "support/shipped.h"

#include "commands/size/answer.h"

#define NONE ((double)NAN)

typedef struct {
    scenario scene;
    size_case of;
    size_answer answer;
    boil_load_result back, less;
} made;

/* A shipped shift, and a heat that does. */
static void make(made *m)
{
    *m = (made){0};
    read_shipped("normal-shift.bath", &m->scene);
    assert_int_equal(size_case_of(&m->scene, 120, NULL, &m->of), BOIL_OK);
    m->back = (boil_load_result){.boil_lost_s = 310, .recovery_s = 100};
    m->less = (boil_load_result){.boil_lost_s = 310, .recovery_s = 125};
    m->answer.size = &m->of;
    boil_heater_window *h = &m->answer.heats;
    *h = (boil_heater_window){
        .found = BOIL_WINDOW_FOUND, .heat_W = 50e3, .input_W = 80e3, .own_W = 60e3, .hold_W = NONE, .heat_up_s = NONE};
    h->calm.volume_m3 = 0.85;
    h->proof = (boil_history){.loads = &m->back, .loads_count = 1};
    h->less = (boil_history){.loads = &m->less, .loads_count = 1};
    h->at = (boil_holding){.freeboard_min_m = 0.2, .end_K = 413.7, .end_level_m = 0.5};
    h->likely = h->possible = h->leaves_likely = h->leaves_possible = (boil_window_end){BOIL_RIM_NEVER, 50e3, NONE};
    h->opening_load = h->opening_area = h->strength_W = NONE;
}

static void unmake(made *m)
{
    size_case_free(&m->of);
    scenario_free(&m->scene);
}

static bool printed_by(void (*print)(const void *, const output *, FILE *), const void *answer, const char *words)
{
    const output o = {.system = UNITS_SI};
    printed p;
    printed_begin(&p);
    print(answer, &o, p.to);
    return printed_says(&p, words);
}

static bool told(const made *m, const char *words)
{
    return printed_by(size_report, &m->answer, words);
}

static void what_is_not_known_is_left_out(void **state)
{
    made m;
    (void)state;
    make(&m);
    assert_true(told(&m, "bring every boil back within 2 min "));
    assert_true(told(&m, "likely any any never too much"));
    assert_false(told(&m, "to hold the boil") || told(&m, "heating up") || told(&m, "What would open the window"));
    m.answer.heats.leaves_possible = (boil_window_end){BOIL_RIM_BEYOND, 50e3, NONE};
    assert_true(told(&m, "possible any any until it has boiled too strong to be known"));
    m.answer.heats.own_W = 40e3;
    assert_true(told(&m, "too little"));
    m.answer.heats.own_W = 60e3;
    m.answer.heats.leaves_possible = (boil_window_end){BOIL_RIM_AT, 50e3, 55e3};
    assert_true(told(&m, "enough, but may leave too little freeboard"));
    unmake(&m);
}

/* A water control of its own that is too small sets the end before the freeboard does. */
static void a_control_too_small_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.answer.heats.leaves_possible = (boil_window_end){BOIL_RIM_AT, 50e3, 65e3};
    assert_true(told(&m, "; above 65.0 kW too little freeboard may be left") && told(&m, "65.0 kW count on this one"));
    assert_true(told(&m, "60.0 kW enough ") && !told(&m, "its water"));
    m.answer.heats.strength_W = 61.06e3;
    assert_true(told(&m, "; above 61.0 kW its water does not hold the strength") && !told(&m, "65.0 kW count on this one"));
    assert_true(told(&m, "61.0 kW count on this one: with more it leaves its band") && told(&m, "60.0 kW enough "));
    m.answer.heats.strength_W = 59e3;
    assert_true(told(&m, "60.0 kW its water does not hold the strength"));
    unmake(&m);
}

static void what_no_heat_does_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    m.answer.heats.found = BOIL_WINDOW_BEYOND;
    assert_true(told(&m, "It needs water, not heat") && told(&m, "so neither is to blame"));
    m.answer.heats.found = BOIL_WINDOW_NONE;
    m.answer.heats.opening_load = 0.5;
    m.answer.heats.opening_area = 2;
    assert_true(told(&m, "No heat brings the boil back within 2 min after every load"));
    assert_true(told(&m, "50 % of the load") && told(&m, "in place of"));
    unmake(&m);
}

/* A per cent less heat that makes minutes of seconds is a cliff; ten minutes and more are told as such. */
static void a_cliff_is_told(void **state)
{
    made m;
    (void)state;
    make(&m);
    assert_true(told(&m, "100.0 s 125.0 s"));
    assert_false(told(&m, "A cliff"));
    m.less.recovery_s = 1200;
    assert_true(told(&m, "A cliff, so stay well away from it") && told(&m, "100.0 s 20 min"));
    m.less.recovery_s = NONE;
    assert_true(told(&m, "100.0 s not back"));
    m.answer.heats.less.loads_count = 0;
    assert_true(told(&m, "100.0 s -"));
    unmake(&m);
}

static void what_the_lightest_load_breaks_is_told(void **state)
{
    static const struct {
        unsigned breaks;
        double slowest_s, freeboard_m;
        const char *words;
    } of[] = {{BOIL_BREAKS_RECOVERY, (double)NAN, 0.1, "With the lightest: a boil is not back."},
              {BOIL_BREAKS_RECOVERY, 200, 0.1, "With the lightest: a boil is back after 200.0 s."},
              {BOIL_BREAKS_FREEBOARD, 100, -0.1, "With the lightest: it boils over."},
              {BOIL_BREAKS_FREEBOARD, 100, 0.1, "100 mm of freeboard is left, not 152 mm."},
              {BOIL_BREAKS_WEAK, 100, 0.2, "it boils below its band."},
              {BOIL_BREAKS_STRONG, 100, 0.2, "it boils above its band."},
              {BOIL_BREAKS_KNOWN, 100, 0.2, "it leaves what is known of such baths."},
              {BOIL_BREAKS_WEAK | BOIL_BREAKS_KNOWN, 100, 0.2, "below its band; it leaves what is known"}};
    made m;
    (void)state;
    make(&m);
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        size_heaviest h = {.size = &m.of};
        h.at.breaks = of[i].breaks;
        h.at.slowest_s = of[i].slowest_s;
        h.at.freeboard_min_m = of[i].freeboard_m;
        assert_true(printed_by(size_heaviest_report, &h, of[i].words));
    }
    unmake(&m);
}

/* The extremes of all that have a heat, and a star where one does not hold. */
static void a_table_says_where_it_ends(void **state)
{
    made m;
    (void)state;
    make(&m);
    size_cells t = {.scenario = &m.scene, .limit_s = 120, .parts_K = 278.15, .count = 3};
    t.cells[0] = (size_cell){30, 0.01, 40e3, true, {0, 100, 0.2, 413.15, 0.51}};
    t.cells[1] = (size_cell){30, 0.01, 50e3, false, {BOIL_BREAKS_FREEBOARD, 100, 0.1, 414.15, 0.50}};
    t.cells[2] = (size_cell){30, 0.01, NONE, false, {0, 100, 0.1, 500, 0.1}};
    for (size_t k = 0; k < SIZE_CELL_PLATES; k++)
        t.cells[k].plate_m = 0.01;
    assert_true(printed_by(size_table_report, &t, "after one load of plate at 5.0 degC"));
    assert_true(
        printed_by(size_table_report, &t, "Ends boiling at 140.0 degC to 141.0 degC with 500 mm to 510 mm in the tank"));
    assert_true(printed_by(size_table_report, &t, "40.00 50.00* -"));
    t.cells[0].heat_W = t.cells[1].heat_W = NONE;
    assert_false(printed_by(size_table_report, &t, "Ends boiling"));
    unmake(&m);
}

/* Four digits and never less, three and never more; a millionth of the last digit is rounding. */
static void numbers_are_rounded_to_the_safe_side(void **state)
{
    static const struct {
        double mm;
        const char *up, *down;
    } of[] = {{1234, "1234", "1230 mm"},           {1234 + 0.9e-6, "1234", "1230 mm"},
              {1234 + 1.05e-6, "1235", "1230 mm"}, {1240 - 0.9e-5, "1240", "1240 mm"},
              {1240 - 1.05e-5, "1240", "1230 mm"}, {12.34, "12.34", "12.3 mm"},
              {12.341, "12.35", "12.3 mm"},        {0, "-", "-"},
              {(double)INFINITY, "-", "-"}};
    (void)state;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        assert_string_equal(size_number_up(UNITS_SI, DIM_LENGTH, 1e-3 * of[i].mm).text, of[i].up);
        assert_string_equal(size_shown_down(UNITS_SI, DIM_LENGTH, 1e-3 * of[i].mm).text, of[i].down);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_rounded_to_the_safe_side),
        cmocka_unit_test(what_is_not_known_is_left_out),
        cmocka_unit_test(a_control_too_small_is_told),
        cmocka_unit_test(a_table_says_where_it_ends),
        cmocka_unit_test(what_no_heat_does_is_told),
        cmocka_unit_test(a_cliff_is_told),
        cmocka_unit_test(what_the_lightest_load_breaks_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
