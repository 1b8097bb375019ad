/* Rows of the designer's sheet from facts that are made up here: no run. What is behind the rows is tested in model/design. */
#include "support/close.h"

#include <stdlib.h>
#include <string.h>

#include "commands/size/sheet.h"
#include "reading/source.h"

typedef struct {
    scenario scene;
    size_case of;
    size_answer answer;
    sheet sheet;
} made_up;

/* A shipped trough, with what its runs might say. */
static made_up *make_up(void)
{
    made_up *m = calloc(1, sizeof *m);
    messages complaints;
    assert_non_null(m);
    messages_init(&complaints);
    assert_int_equal(scenario_read("scenarios/normal-shift.bath", &m->scene, &complaints), BOIL_OK);
    messages_free(&complaints);
    m->of = (size_case){.scenario = &m->scene, .limit_s = 120};
    m->answer = (size_answer){.size = &m->of, .heats = {.found = BOIL_WINDOW_FOUND, .own_W = 58e3, .hold_W = 36e3}};
    m->answer.heats.likely = m->answer.heats.possible = (boil_window_end){BOIL_RIM_NEVER, 50.5e3, (double)NAN};
    m->sheet.facts = (sheet_facts){.size = &m->answer,
                                   .scenario = &m->scene,
                                   .plant = m->scene.plant,
                                   .need_W = 50.5e3,
                                   .hood_need_W = (double)NAN,
                                   .design_W = 58.05e3,
                                   .control_m_s = (double)NAN,
                                   .heat_up_s = 11160,
                                   .calm_W = {32.6e3, 2.1e3},
                                   .hold_W = {36e3, 2.3e3},
                                   .water_K = 297,
                                   .makeup_kg_s = {0.012, 0.018, 0.021},
                                   .vapour_kg_s = 0.02,
                                   .rim_m = 0.72,
                                   .bed_K = (double)NAN,
                                   .drag_out_kg_s = 2e-5,
                                   .drag_out_salts_kg_s = 1e-5,
                                   .steel_W = 1.3e3,
                                   .idle = {{340, 6000}, {385, 2000}},
                                   .density_kg_m3 = 1444,
                                   .latent_J_kg = 2.6e6,
                                   .vapour_kg_m3 = 0.514,
                                   .boiling_K = 413.7};
    return m;
}

static void unmake(made_up *m)
{
    scenario_free(&m->scene);
    free(m);
}

static const sheet_row *row_of(const sheet *s, const char *begins)
{
    for (size_t i = 0; i < s->rows_count; i++)
        if (strncmp(s->rows[i].name, begins, strlen(begins)) == 0)
            return &s->rows[i];
    return NULL;
}

static bool says(const sheet *s, sheet_kind kind, const char *words)
{
    for (size_t i = 0; i < s->rows_count; i++)
        if (s->rows[i].kind == kind && strstr(s->rows[i].words, words) != NULL)
            return true;
    return false;
}

/* Whatever the digits: what is ordered by the number printed is enough. */
static void numbers_are_rounded_up(void **state)
{
    (void)state;
    for (double W = 1; W < 1e7; W *= 1.0123) {
        sheet_row r = {.unit = SHEET_HEAT, .values = {W}, .count = 1};
        assert_true(strtod(sheet_shown(&r, UNITS_SI).text, NULL) * 1000 >= W * (1 - 1e-9));
        assert_true(strtod(sheet_shown(&r, UNITS_SI).text, NULL) * 1000 <= W * 1.0011);
    }
    sheet_row none = {.unit = SHEET_AIR, .values = {(double)NAN}, .count = 1};
    assert_string_equal(sheet_shown(&none, UNITS_US).text, "- cfm");
    sheet_row colder = {.unit = SHEET_DIFFERENCE, .values = {-22.32}, .count = 1};
    assert_string_equal(sheet_shown(&colder, UNITS_SI).text, "-22.3 K");
}

static void what_is_missing_is_said(void **state)
{
    made_up *m = make_up();
    (void)state;
    sheet_heat(&m->sheet);
    sheet_exhaust(&m->sheet);
    sheet_tank(&m->sheet);
    sheet_year(&m->sheet);
    assert_true(says(&m->sheet, SHEET_MISSING, "not asked: give [exhaust] hood"));
    assert_true(says(&m->sheet, SHEET_MISSING, "not asked: give [design] basket width"));
    assert_true(says(&m->sheet, SHEET_MISSING, "not asked: give [design] hours a year"));
    assert_int_equal(row_of(&m->sheet, "air")->kind, SHEET_MISSING);
    unmake(m);
}

/* Own heat below the need, between the need and the design heat, and enough. */
static void a_heater_too_small_is_warned_of(void **state)
{
    static const double own[] = {50e3, 55e3, 59e3};
    (void)state;
    for (int i = 0; i < 3; i++) {
        made_up *m = make_up();
        m->answer.heats.own_W = own[i];
        sheet_heat(&m->sheet);
        assert_int_equal(says(&m->sheet, SHEET_WARNING, "less than is needed"), i == 0);
        assert_int_equal(says(&m->sheet, SHEET_NOTICE, "less than the design heat"), i == 1);
        unmake(m);
    }
}

/* The exhaust tables hold below 50 ft/min, 0.254 m/s (from memory). */
static void a_draught_marks_every_row_of_the_exhaust(void **state)
{
    static const double draught[] = {0.25, 0.26};
    (void)state;
    for (int i = 0; i < 2; i++) {
        made_up *m = make_up();
        m->scene.exhaust.hood = BOIL_HOOD_ONE_SIDE;
        m->scene.plant.ambient.draught_m_s = draught[i];
        m->sheet.facts.control_m_s = 0.508;
        sheet_exhaust(&m->sheet);
        assert_close(row_of(&m->sheet, "air")->values[0], 4050 * 0.028316846592 / 60, 1e-9, 0);
        assert_int_equal(row_of(&m->sheet, "air")->doubted, i == 1);
        assert_int_equal(row_of(&m->sheet, "slot")->doubted, i == 1);
        assert_int_equal(says(&m->sheet, SHEET_WARNING, "over the table's 50"), i == 1);
        unmake(m);
    }
}

/* Flue gas that is hotter than the efficiency says makes the larger order; colder gas does not make a smaller one. */
static void the_burner_is_ordered_by_the_worse_efficiency(void **state)
{
    (void)state;
    made_up *m = make_up();
    const double stated = sheet_fuel_share(&m->sheet);
    m->scene.design.flue_K = 1000;
    assert_true(sheet_fuel_share(&m->sheet) < stated);
    m->scene.design.flue_K = 400;
    assert_true(sheet_fuel_share(&m->sheet) == stated);
    sheet_burner(&m->sheet);
    assert_close(row_of(&m->sheet, "order at sea-level")->values[0], m->sheet.facts.design_W / stated, 1e-12, 0);
    unmake(m);
}

static void weak_steam_cannot(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet_heaters(&m->sheet);
    assert_true(row_of(&m->sheet, "steam of 15 psig")->values[0] < 0);
    assert_true(says(&m->sheet, SHEET_WARNING, "cannot"));
    assert_true(row_of(&m->sheet, "steam of 100 psig")->values[0] > 0);
    unmake(m);
}

/* With all that may be asked, on every tank: no row is lost, no name is cut, no number is none. */
static void every_row_has_room(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet *s = &m->sheet;
    m->scene.exhaust =
        (scenario_exhaust){.hood = BOIL_HOOD_TWO_SIDES, .open_area_m2 = 1, .winter_K = 260, .degree_days_F = 5000};
    m->scene.design.hours_a_year = 2000;
    m->scene.design.basket_m = 0.3;
    m->scene.design.insulation_price = 1700;
    m->scene.prices.gas = 1e-8;
    s->facts.control_m_s = 0.508;
    s->facts.hood_need_W = 53e3;
    sheet_heat(s), sheet_burner(s), sheet_floor(s), sheet_heaters(s), sheet_exhaust(s);
    sheet_water(s), sheet_standby(s), sheet_tank(s), sheet_year(s);
    assert_true(s->rows_count < SHEET_ROWS);
    for (size_t i = 0; i < s->rows_count; i++) {
        assert_true(strlen(s->rows[i].name) <= 37);
        assert_true(s->rows[i].kind != SHEET_VALUE || s->rows[i].count > 0);
        for (size_t k = 0; k < s->rows[i].count; k++)
            assert_true(isfinite(s->rows[i].values[k]));
    }
    unmake(m);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_rounded_up),
        cmocka_unit_test(what_is_missing_is_said),
        cmocka_unit_test(a_heater_too_small_is_warned_of),
        cmocka_unit_test(a_draught_marks_every_row_of_the_exhaust),
        cmocka_unit_test(the_burner_is_ordered_by_the_worse_efficiency),
        cmocka_unit_test(weak_steam_cannot),
        cmocka_unit_test(every_row_has_room),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
