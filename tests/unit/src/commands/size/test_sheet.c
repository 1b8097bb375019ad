/* Rows of the designer's sheet from facts that are made up here: no run. What is behind the rows is tested in model/design. */
#include "support/close.h"
#include "support/printed.h"

#include <stdlib.h>
#include <string.h>

#include "commands/size/sheet.h"
#include "design/published_units.h"
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
    m->answer = (size_answer){.size = &m->of,
                              .heats = {.found = BOIL_WINDOW_FOUND, .own_W = 58e3, .hold_W = 36e3, .strength_W = (double)NAN}};
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
                                   .steel_kg_s = 0.02,
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
    sheet_row bare = {.unit = SHEET_NUMBER, .values = {12.341}, .count = 1}; /* three digits, as most */
    assert_string_equal(sheet_shown(&bare, UNITS_US).text, "12.4");
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

/* At 58.05 kW, the design heat, it is no larger than what it keeps. */
static void a_water_control_too_small_is_warned_of(void **state)
{
    static const double keeps_W[] = {(double)NAN, 58.05e3, 58.0e3};
    (void)state;
    for (int i = 0; i < 3; i++) {
        made_up *m = make_up();
        m->answer.heats.strength_W = keeps_W[i];
        sheet_heat(&m->sheet);
        assert_int_equal(says(&m->sheet, SHEET_WARNING, "does not hold the strength"), i == 2);
        unmake(m);
    }
}

/* sqrt(9.6^2 + 7.2^2 + 5.2^2 + 0.8^2) = 13.1 %: what a margin is to cover. */
static void a_margin_that_covers_too_little_is_told(void **state)
{
    static const double margin[] = {0.130, 0.131, 0.14};
    (void)state;
    for (int i = 0; i < 3; i++) {
        made_up *m = make_up();
        m->scene.design.margin = margin[i];
        sheet_heat(&m->sheet);
        assert_int_equal(says(&m->sheet, SHEET_NOTICE, "the model's own doubt"), i == 0);
        unmake(m);
    }
}

/* Of rows that there is no room for the last stays, and nothing is written beyond. */
static void a_full_sheet_takes_no_more(void **state)
{
    (void)state;
    made_up *m = make_up();
    for (int i = 0; i < SHEET_ROWS + 3; i++)
        sheet_say(&m->sheet, SHEET_REMARK, "%d", i + 1);
    assert_int_equal(m->sheet.rows_count, SHEET_ROWS);
    assert_string_equal(m->sheet.rows[0].words, "1");
    assert_string_equal(m->sheet.rows[SHEET_ROWS - 1].words, "131");
    unmake(m);
}

/* The tube's table, from 300 to 2000 kBtu/h. */
static void a_tube_beyond_its_table_is_told(void **state)
{
    static const double kBtu_h[] = {299.9, 300, 2000, 2000.1};
    (void)state;
    for (int i = 0; i < 4; i++) {
        made_up *m = make_up();
        m->sheet.facts.design_W = kBtu_h[i] * BOIL_KBTU_H;
        sheet_heaters(&m->sheet);
        assert_int_equal(says(&m->sheet, SHEET_NOTICE, "this extrapolates"), i == 0 || i == 3);
        unmake(m);
    }
}

/* A name as long as there is room for is not cut, be its value wide or not. */
static void a_long_name_is_printed_whole(void **state)
{
    static const char name[] = "a name of thirty-seven characters, all";
    (void)state;
    for (int wide = 0; wide < 2; wide++) {
        made_up *m = make_up();
        const output o = {.system = UNITS_US};
        printed p;
        m->sheet.group = "GROUP";
        sheet_row *r = sheet_add(&m->sheet, SHEET_HEAT, SHEET_RUN, "%.37s", name);
        for (int i = 0; i <= 2 * wide; i++)
            sheet_put(r, 1234.5e3);
        printed_begin(&p);
        sheet_report(&m->sheet, &o, p.to);
        assert_true(printed_says(&p, wide ? "characters, al 4213 / 4213 / 4213 kBtu/h r" : "characters, al 4213 kBtu/h"));
        unmake(m);
    }
}

/* Pipe of 1-1/2 in has 0.497 ft2 outside a foot (pipe tables, from memory). */
static void a_coil_is_so_much_pipe(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet_heaters(&m->sheet);
    assert_close(row_of(&m->sheet, "steam of 100")->values[0] / row_of(&m->sheet, " as pipe")->values[0], 0.497 * 0.3048, 1e-3,
                 0);
    unmake(m);
}

/* 72 x 36 in: a slot along the long side draws over half its length, each of two over a quarter; a jet has no such share. */
static void how_far_a_slot_draws_is_told(void **state)
{
    static const struct {
        boil_hood hood;
        double share;
    } of[] = {{BOIL_HOOD_ONE_SIDE, 0.5}, {BOIL_HOOD_TWO_SIDES, 0.25}, {BOIL_HOOD_PUSH_PULL, 0}};
    (void)state;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        made_up *m = make_up();
        m->scene.exhaust.hood = of[i].hood;
        sheet_exhaust(&m->sheet);
        const sheet_row *r = row_of(&m->sheet, "W/L");
        assert_true(of[i].share > 0 ? fabs(r->values[0] - of[i].share) < 1e-9 : r == NULL);
        unmake(m);
    }
}

/* What the hold takes less under a lid, as fuel at 60 %; at 1e-8 a joule that is 2.02 an hour. */
static void what_a_lid_saves_is_told(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->scene.prices.gas = 1e-8;
    sheet_standby(&m->sheet);
    assert_close(row_of(&m->sheet, "a lid saves")->values[0], (36e3 - 2.3e3) / 0.6, 1e-9, 0);
    assert_close(row_of(&m->sheet, " an hour")->values[0], 2.022, 1e-9, 0);
    m->sheet.rows_count = 0;
    m->sheet.facts.hold_W[1] = (double)NAN;
    sheet_standby(&m->sheet);
    assert_null(row_of(&m->sheet, "a lid saves"));
    unmake(m);
}

/* Half of 36 in and the plenum of 8.1 in, 4050 cfm at 1000 ft/min along 6 ft; without a hood on that side half the width. */
static void an_arm_reaches_so_far(void **state)
{
    static const struct {
        boil_hood hood;
        double width_in, reach_in;
    } of[] = {{BOIL_HOOD_ONE_SIDE, 36, 26.1},
              {BOIL_HOOD_TWO_SIDES, 36, 18},
              {BOIL_HOOD_NONE, 47.9, 23.95},
              {BOIL_HOOD_NONE, 48.1, 24.05}};
    (void)state;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        made_up *m = make_up();
        m->scene.exhaust.hood = of[i].hood;
        m->sheet.facts.plant.tank.width_m = of[i].width_in * 0.0254;
        sheet_tank(&m->sheet);
        assert_close(row_of(&m->sheet, "reach")->values[0], of[i].reach_in * 0.0254, 1e-9, 0);
        assert_int_equal(says(&m->sheet, SHEET_NOTICE, "no arm reaches"), of[i].reach_in > 24);
        unmake(m);
    }
}

/* 2000 h of 0.02 kg/s are 144 t; the sum is shared out over them, and over shifts as long as the schedule. */
static void a_year_is_shared_out(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->scene.design.hours_a_year = 2000;
    m->scene.prices.gas = 1e-8;
    m->of.schedule.duration_s = 4 * 3600;
    sheet_year(&m->sheet);
    const double sum = row_of(&m->sheet, "all that has a price")->values[0];
    assert_close(sum, 58.05e3 / 0.6 * 2000 * 3600 * 1e-8, 1e-9, 0);
    assert_close(row_of(&m->sheet, " for a shift")->values[0], sum / 500, 1e-9, 0);
    assert_close(row_of(&m->sheet, " steel, as")->values[0], 144e3, 1e-9, 0);
    assert_close(row_of(&m->sheet, " for 100 lb")->values[0], sum * 45.359237 / 144e3, 1e-9, 0);
    m->sheet.rows_count = 0;
    m->sheet.facts.steel_kg_s = (double)NAN;
    sheet_year(&m->sheet);
    assert_null(row_of(&m->sheet, " steel, as"));
    unmake(m);
}

/* 274.32 m are 900 ft. */
static void the_head_says_how_high_it_stands(void **state)
{
    static const char *const words[] = {"boils at 140.6 degC, at 274 m ", "boils at 285.0 degF, at 900 ft "};
    (void)state;
    made_up *m = make_up();
    m->sheet.group = "GROUP";
    sheet_put(sheet_add(&m->sheet, SHEET_HEAT, SHEET_RUN, "a"), 1);
    for (int us = 0; us < 2; us++) {
        const output o = {.system = us ? UNITS_US : UNITS_SI};
        printed p;
        printed_begin(&p);
        sheet_report(&m->sheet, &o, p.to);
        assert_true(printed_says(&p, words[us]));
    }
    unmake(m);
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

static const double square_foot_m2 = 0.3048 * 0.3048, cfm_m3_s = 0.028316846592 / 60;

/* Push-pull draws 0.4 T + 15 cfm a square foot, T in degF (industrial ventilation's rule, from memory); an enclosing hood the
   velocity through what it leaves open. */
static void each_hood_draws_its_own(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet *s = &m->sheet;
    m->scene.exhaust.hood = BOIL_HOOD_PUSH_PULL;
    sheet_exhaust(s);
    assert_close(row_of(s, "air")->values[0], (0.4 * (413.7 * 1.8 - 459.67) + 15) * 18 * cfm_m3_s, 1e-9, 0);
    assert_non_null(row_of(s, " its push"));
    s->rows_count = 0;
    m->scene.exhaust.hood = BOIL_HOOD_ENCLOSING;
    m->scene.exhaust.open_area_m2 = (double)NAN;
    sheet_exhaust(s);
    assert_true(says(s, SHEET_MISSING, "give [exhaust] open area"));
    s->rows_count = 0;
    m->scene.exhaust.open_area_m2 = 4 * square_foot_m2;
    sheet_exhaust(s);
    assert_close(row_of(s, "air")->values[0], 75 * 4 * cfm_m3_s, 1e-9, 0);
    assert_true(isnan(row_of(s, "slot / plenum")->values[0]) && row_of(s, "slot / plenum")->values[2] > 0);
    unmake(m);
}

/* What no table gives is not ordered, and why is said. */
static void a_hood_that_no_table_knows_is_not_ordered(void **state)
{
    static const struct {
        boil_hood hood;
        unsigned hazard;
        double length_m, width_m;
        slot_along along;
        const char *why;
    } of[] = {{BOIL_HOOD_ONE_SIDE, 0, 2, 1, SLOT_ALONG_LENGTH, "too wide for such slots"},
              {BOIL_HOOD_TWO_SIDES, 1, 1.8, 0.9, SLOT_ALONG_LENGTH, "is to be read in the book"},
              {BOIL_HOOD_TWO_SIDES, 16, 1.8, 0.9, SLOT_ALONG_LENGTH, "general ventilation by this class"},
              {BOIL_HOOD_ONE_SIDE, 0, 0.9, 0.3, SLOT_ALONG_WIDTH, "draws over twice its length"}};
    (void)state;
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        made_up *m = make_up();
        m->scene.exhaust = (scenario_exhaust){.hood = of[i].hood, .hazard = of[i].hazard, .along = of[i].along};
        m->sheet.facts.plant.tank.length_m = of[i].length_m;
        m->sheet.facts.plant.tank.width_m = of[i].width_m;
        m->sheet.facts.control_m_s = i == 1 ? (double)NAN : 0.5;
        sheet_exhaust(&m->sheet);
        assert_int_equal(row_of(&m->sheet, "air")->kind, SHEET_MISSING);
        assert_true(says(&m->sheet, SHEET_MISSING, of[i].why));
        unmake(m);
    }
}

/* A slot further from the other side than it is long, and a round tank's, which is as far as it is long. */
static void a_slot_that_draws_too_far_is_warned_of(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->scene.exhaust = (scenario_exhaust){.hood = BOIL_HOOD_ONE_SIDE, .along = SLOT_ALONG_WIDTH};
    m->sheet.facts.plant.tank.length_m = 0.6;
    m->sheet.facts.plant.tank.width_m = 0.4;
    sheet_exhaust(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "draws further than it is long"));
    m->sheet.rows_count = 0;
    m->sheet.facts.plant.tank.shape = BOIL_TANK_UPRIGHT_CYLINDER;
    m->sheet.facts.plant.tank.diameter_m = 0.5;
    sheet_exhaust(&m->sheet);
    assert_false(says(&m->sheet, SHEET_WARNING, "draws further than it is long"));
    assert_int_equal(row_of(&m->sheet, "air")->kind, SHEET_VALUE);
    unmake(m);
}

static void what_the_heat_does_to_the_rim_is_said(void **state)
{
    (void)state;
    made_up *m = make_up();
    boil_heater_window *w = &m->answer.heats;
    m->scene.design.margin = 0.1;
    w->leaves_likely = w->likely;
    w->possible = (boil_window_end){BOIL_RIM_AT, 50.5e3, 57e3};
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_NOTICE, "the model's own doubt alone is 13 %"));
    assert_true(says(&m->sheet, SHEET_NOTICE, "it may boil over"));
    m->sheet.rows_count = 0;
    w->leaves_likely = (boil_window_end){BOIL_RIM_AT, 50.5e3, 57e3};
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "too little freeboard is left"));
    m->sheet.rows_count = 0;
    w->likely = w->possible;
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "with the design heat it boils over"));
    m->sheet.rows_count = 0;
    w->likely.from_W = (double)NAN;
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "with the heat that is needed it boils over"));
    unmake(m);
}

static void no_heat_is_ordered_against_a_draught_that_none_stands(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->sheet.facts.hood_beyond = true;
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "no order can be made"));
    assert_null(row_of(&m->sheet, "design"));
    m->sheet.rows_count = 0;
    m->sheet.facts.hood_beyond = false;
    m->scene.exhaust.hood = BOIL_HOOD_ENCLOSING;
    sheet_heat(&m->sheet);
    assert_true(says(&m->sheet, SHEET_MISSING, "no velocity is known for such a hood"));
    unmake(m);
}

/* The heating value of methane, 802.3 kJ/mol at 273.15 K and 101325 Pa in 22.4 L (from memory), within 10 % of what gas is ordered by. */
static void a_burner_is_warned_of_what_its_gas_takes_away(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->scene.design.flue_K = 1400;
    m->scene.design.flue_oxygen = 0.14;
    m->scene.altitude_m = (double)NAN;
    m->scene.exhaust.hood = BOIL_HOOD_TWO_SIDES;
    sheet_burner(&m->sheet);
    assert_true(says(&m->sheet, SHEET_WARNING, "leaves next to nothing in the tank"));
    assert_true(says(&m->sheet, SHEET_MISSING, "give [room] altitude"));
    assert_true(says(&m->sheet, SHEET_WARNING, "pull flue gas into the room"));
    assert_close(row_of(&m->sheet, "gas /")->values[0], 58.05e3 / 0.6 / (802.3e3 / 22.4e-3), 0.1, 0);
    m->sheet.rows_count = 0;
    m->scene.design.draft = DRAFT_FAN;
    sheet_burner(&m->sheet);
    assert_true(says(&m->sheet, SHEET_REMARK, "is its maker's"));
    assert_false(says(&m->sheet, SHEET_WARNING, "pull flue gas into the room"));
    unmake(m);
}

/* 22 and 25 W/in2 are the most for a steel sheath and for any in caustic (heaters' handbooks, from memory). */
static void an_element_that_burns_the_bath_is_refused(void **state)
{
    static const double density[] = {20, 24, 26};
    (void)state;
    for (int i = 0; i < 3; i++) {
        made_up *m = make_up();
        m->sheet.facts.plant.heater.source = BOIL_HEAT_ELECTRIC;
        m->scene.design.element_W_m2 = density[i] / (0.0254 * 0.0254);
        sheet_burner(&m->sheet);
        sheet_heaters(&m->sheet);
        assert_int_equal(says(&m->sheet, SHEET_WARNING, "over 22 W/in2"), i == 1);
        assert_int_equal(says(&m->sheet, SHEET_MISSING, "refused, over 25 W/in2"), i == 2);
        assert_null(row_of(&m->sheet, "gas"));
        unmake(m);
    }
}

static void steam_of_its_own_is_sized_beside_the_usual(void **state)
{
    (void)state;
    made_up *m = make_up();
    m->sheet.facts.plant.heater.source = BOIL_HEAT_STEAM;
    m->sheet.facts.plant.heater.steam_K = 450;
    m->sheet.facts.design_W = 150e3; /* 512 kBtu/h, which the tube's table holds */
    sheet_burner(&m->sheet);
    assert_int_equal(m->sheet.rows_count, 0);
    sheet_heaters(&m->sheet);
    assert_true(row_of(&m->sheet, "steam of the scenario")->values[0] > 0);
    assert_false(says(&m->sheet, SHEET_NOTICE, "this extrapolates"));
    assert_close(sheet_fuel_share(&m->sheet), 1, 0, 0);
    unmake(m);
}

/* The caustic chart's lines are at 120 and 180 degF for 50 % (from memory): 49 and 82 degC. */
static void the_floor_is_warned_of_by_its_metal(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet *s = &m->sheet;
    s->facts.design_W = 110e3;
    s->facts.bed_K = 40;
    m->scene.design.scale_m = 10e-3;
    sheet_floor(s);
    assert_true(says(s, SHEET_WARNING, "peak flux over 12 kBtu/h ft2"));
    assert_true(says(s, SHEET_WARNING, "metal over 650 degF"));
    assert_true(says(s, SHEET_WARNING, "in the run salt lies on the floor"));
    assert_true(says(s, SHEET_WARNING, "past the chart's second line"));
    assert_string_equal(row_of(s, "metal at peak")->name, "metal at peak, in / outside");
    m->scene.design.scale_m = 0;
    s->rows_count = 0;
    s->facts.plant.heater.source = BOIL_HEAT_ELECTRIC;
    sheet_floor(s);
    assert_string_equal(row_of(s, "metal at peak")->name, "metal at peak, in / outside, clean");
    assert_close(row_of(s, "flux")->values[1], row_of(s, "flux")->values[0], 1e-12, 0);
    s->rows_count = 0;
    s->facts.plant.tank.heated = BOIL_TANK_HEATED_INSIDE;
    s->facts.boiling_K = 273.15 + 65;
    sheet_floor(s);
    assert_int_equal(row_of(s, "flux and metal")->kind, SHEET_MISSING);
    assert_true(says(s, SHEET_WARNING, "past the chart's first line"));
    s->rows_count = 0;
    s->facts.boiling_K = 273.15 + 40;
    sheet_floor(s);
    assert_false(says(s, SHEET_WARNING, "past the chart's"));
    s->rows_count = 0;
    s->facts.plant.charge.blend[BOIL_NAOH] = 0;
    sheet_floor(s);
    assert_null(row_of(s, "caustic chart"));
    unmake(m);
}

/* What touches is held under 60 degC: in a room of 61 nothing keeps the wall from burning. */
static void a_tank_that_cannot_be_built_is_not_ordered(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet *s = &m->sheet;
    s->facts.plant.ambient.temperature_K = 273.15 + 61;
    s->facts.rim_m = 0.9;
    s->facts.plant.tank.length_m = 30;
    s->facts.plant.tank.width_m = 30;
    s->facts.plant.tank.depth_m = 5;
    sheet_standby(s);
    s->facts.rim_m = 5.1;
    sheet_tank(s);
    assert_true(says(s, SHEET_WARNING, "no insulation keeps the wall from burning"));
    assert_true(says(s, SHEET_WARNING, "does not keep the freeboard"));
    assert_true(says(s, SHEET_MISSING, "no plate to 2 in without belts"));
    assert_true(says(s, SHEET_MISSING, "none to 2 in: give [design] floor bars"));
    s->rows_count = 0;
    s->facts.plant.tank.shape = BOIL_TANK_UPRIGHT_CYLINDER;
    s->facts.plant.tank.diameter_m = 1;
    sheet_tank(s);
    assert_true(says(s, SHEET_MISSING, "a box's alone are worked out"));
    unmake(m);
}

/* A kWh at 0.10, ten hours of it at the design heat. */
static void a_year_costs_what_it_uses(void **state)
{
    (void)state;
    made_up *m = make_up();
    sheet *s = &m->sheet;
    m->scene.design.hours_a_year = 10;
    s->facts.plant.heater.source = m->scene.plant.heater.source = BOIL_HEAT_ELECTRIC;
    s->facts.plant.heater.efficiency = 1;
    s->facts.drag_out_salts_kg_s = s->facts.steel_W = (double)NAN;
    m->scene.prices.electricity = 0.10 / 3.6e6;
    sheet_year(s);
    assert_non_null(row_of(s, "current, full dial"));
    assert_close(row_of(s, "all that has a price")->values[0], 58.05 * 10 * 0.10, 1e-9, 0);
    assert_true(says(s, SHEET_MISSING, "give loads in [schedule]"));
    s->rows_count = 0;
    s->facts.plant.heater.source = m->scene.plant.heater.source = BOIL_HEAT_STEAM;
    sheet_year(s);
    assert_non_null(row_of(s, "steam's heat"));
    assert_true(says(s, SHEET_MISSING, "give [prices]"));
    assert_null(row_of(s, "all that has a price"));
    unmake(m);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_rounded_up),
        cmocka_unit_test(what_is_missing_is_said),
        cmocka_unit_test(a_heater_too_small_is_warned_of),
        cmocka_unit_test(a_water_control_too_small_is_warned_of),
        cmocka_unit_test(a_coil_is_so_much_pipe),
        cmocka_unit_test(how_far_a_slot_draws_is_told),
        cmocka_unit_test(what_a_lid_saves_is_told),
        cmocka_unit_test(an_arm_reaches_so_far),
        cmocka_unit_test(a_year_is_shared_out),
        cmocka_unit_test(the_head_says_how_high_it_stands),
        cmocka_unit_test(a_tube_beyond_its_table_is_told),
        cmocka_unit_test(a_margin_that_covers_too_little_is_told),
        cmocka_unit_test(a_full_sheet_takes_no_more),
        cmocka_unit_test(a_long_name_is_printed_whole),
        cmocka_unit_test(a_draught_marks_every_row_of_the_exhaust),
        cmocka_unit_test(the_burner_is_ordered_by_the_worse_efficiency),
        cmocka_unit_test(weak_steam_cannot),
        cmocka_unit_test(every_row_has_room),
        cmocka_unit_test(each_hood_draws_its_own),
        cmocka_unit_test(a_hood_that_no_table_knows_is_not_ordered),
        cmocka_unit_test(a_slot_that_draws_too_far_is_warned_of),
        cmocka_unit_test(what_the_heat_does_to_the_rim_is_said),
        cmocka_unit_test(no_heat_is_ordered_against_a_draught_that_none_stands),
        cmocka_unit_test(a_burner_is_warned_of_what_its_gas_takes_away),
        cmocka_unit_test(an_element_that_burns_the_bath_is_refused),
        cmocka_unit_test(steam_of_its_own_is_sized_beside_the_usual),
        cmocka_unit_test(the_floor_is_warned_of_by_its_metal),
        cmocka_unit_test(a_tank_that_cannot_be_built_is_not_ordered),
        cmocka_unit_test(a_year_costs_what_it_uses),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
