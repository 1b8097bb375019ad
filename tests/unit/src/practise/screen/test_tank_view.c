/* The tank in characters: where on the screen each height lies, and how much is drawn of each thing. Heights by hand: a tank 24.5 in
   deep is twelve rows, its rim above row 4, its floor row 16. */
#include <gsl/gsl_errno.h>

#include "support/worked.h"

#include "practise/screen/tank_view.h"

#define DEPTH_M (24.5 * 0.0254)
#define ROW_M (DEPTH_M / 12)
#define INSIDE 9 /* columns from here to 36 */

typedef struct {
    worked w;
    canvas c;
    panel p;
} view;

static void begin(view *v)
{
    worked_begin(&v->w, WORKED_TOP WORKED_PLANT);
    v->p = (panel){.row = {.level_m = 6.5 * ROW_M, .freeboard_m = 5.5 * ROW_M, .water_kg = 100, .naoh_kg = 100},
                   .limit_m = 2.5 * ROW_M,
                   .heat = 0};
}

static void draw(view *v)
{
    canvas_clear(&v->c);
    tank_view_draw(&v->c, &v->w.shift, &v->p, 0, UNITS_US);
}

static char at(const view *v, int row, int column)
{
    return v->c.cell[row][column].character;
}

static int count(const view *v, int row, char character)
{
    int n = 0;
    for (int i = 0; i < CANVAS_COLUMNS; i++)
        n += at(v, row, i) == character;
    return n;
}

static int all(const view *v, char character)
{
    int n = 0;
    for (int row = 0; row < CANVAS_ROWS; row++)
        n += count(v, row, character);
    return n;
}

static bool row_says(const view *v, int row, int column, const char *words)
{
    for (int i = 0; words[i] != '\0'; i++)
        if (at(v, row, column + i) != words[i])
            return false;
    return true;
}

static void the_vessel_has_walls_rim_floor_and_limit(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    draw(&v);
    for (int row = 4; row < 16; row++)
        assert_true(at(&v, row, 8) == '|' && at(&v, row, 37) == '|');
    assert_int_equal(all(&v, '|'), 24);
    assert_true(row_says(&v, 16, 8, "+----------------------------+"));
    assert_true(row_says(&v, 4, 3, "rim =|") && row_says(&v, 4, 37, "|= rim"));
    assert_true(row_says(&v, 6, 1, "5.1 in-|") && row_says(&v, 6, 37, "|- limit")); /* 9.5 rows over the floor */
    v.p.limit_m = 0;                                                                /* at the rim, where there is one already */
    draw(&v);
    assert_int_equal(count(&v, 4, 'l'), 0);
    v.p.limit_m = 0.5 * ROW_M;
    draw(&v);
    assert_true(row_says(&v, 4, 37, "|= rim"));
    v.p.limit_m = 1.5 * ROW_M;
    draw(&v);
    assert_true(row_says(&v, 5, 37, "|- limit"));
    v.p.limit_m = 11.5 * ROW_M;
    draw(&v);
    assert_true(row_says(&v, 15, 37, "|- limit"));
    v.p.limit_m = 12.5 * ROW_M; /* below the floor */
    draw(&v);
    assert_int_equal(all(&v, 'l'), 0);
    worked_end(&v.w);
}

static void surface_is(view *v, double rows, int row, char sign)
{
    v->p.row.level_m = rows * ROW_M;
    draw(v);
    for (int i = 0; i < 28; i++)
        assert_int_equal(at(v, row, INSIDE + i), sign);
    assert_int_equal(count(v, row, sign) - (sign == '-' && row == 6 ? 2 : 0), 28);
}

static void the_surface_stands_low_middle_or_high_in_its_row(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    surface_is(&v, 0.1, 15, '_');
    surface_is(&v, 8.02, 7, '_');
    surface_is(&v, 8.32, 7, '_');
    surface_is(&v, 8.35, 7, '-');
    surface_is(&v, 8.65, 7, '-');
    surface_is(&v, 8.68, 7, '=');
    surface_is(&v, 8.98, 7, '=');
    surface_is(&v, 9.02, 6, '_');
    surface_is(&v, 12.5, 3, '-');
    surface_is(&v, 13.5, 2, '-');
    surface_is(&v, 20, 2, '_'); /* beyond the picture it stays at the top */
    surface_is(&v, -1, 15, '_');
    v.p.row.layer_kg = 0.046;
    surface_is(&v, 8.35, 7, '~');
    assert_int_equal(v.c.cell[7][INSIDE].look, CANVAS_BOLD);
    v.p.row.layer_kg = 0.0449;
    surface_is(&v, 8.35, 7, '-');
    assert_int_equal(v.c.cell[7][INSIDE].look, CANVAS_PLAIN);
    worked_end(&v.w);
}

/* A flame for a sixth of the dial, begun counts; a twentieth of a flame is none. */
static void the_fire_follows_the_heat(void **state)
{
    (void)state;
    static const struct {
        double heat;
        int flames;
    } of[] = {{0, 0}, {0.008, 0}, {0.01, 1}, {1.0 / 6, 1}, {0.18, 2}, {0.5, 3}, {0.99, 6}, {1, 6}, {1.5, 6}};
    view v = {0};
    begin(&v);
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        v.p.heat = of[i].heat;
        draw(&v);
        assert_int_equal(count(&v, 17, '^'), of[i].flames);
        for (int k = 0; k < of[i].flames; k++)
            assert_int_equal(at(&v, 17, 11 + 5 * k), '^');
    }
    worked_end(&v.w);
}

/* From above the rim, on their hooks, to a row over the floor; four at most. */
static void loads_hang_side_by_side(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    for (v.p.loads = 0; v.p.loads < 7; v.p.loads++) {
        int drawn = v.p.loads < 4 ? (int)v.p.loads : 4;
        draw(&v);
        for (int row = 4; row < 16; row++) {
            assert_int_equal(count(&v, row, '#'), row >= 11 && row < 14 ? 2 * drawn : 0);
            assert_int_equal(count(&v, row, '|'), 2 + (row < 11 ? 2 * drawn : 0));
        }
        for (int i = 0; i < drawn; i++)
            assert_true(row_says(&v, 4, 11 + 7 * i, "|  |") && row_says(&v, 13, 11 + 7 * i, "#  #"));
    }
    worked_end(&v.w);
}

/* A twentieth of the bath covers the floor. */
static void salt_lies_on_the_floor(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    v.p.row.nano3_kg = v.p.row.nano2_kg = 50; /* 300 kg in all */
    static const struct {
        double bed_kg;
        int signs;
    } of[] = {{0, 0}, {0.0449, 0}, {0.046, 1}, {7.49, 14}, {7.6, 15}, {14.9, 28}, {100, 28}};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        v.p.bed_kg = of[i].bed_kg;
        draw(&v);
        assert_int_equal(count(&v, 15, ':'), of[i].signs);
        for (int k = 0; k < of[i].signs; k++)
            assert_int_equal(at(&v, 15, 9 + k), ':');
    }
    worked_end(&v.w);
}

/* Scattered, so that only how many there are, and where they may be, can be told: between the surface and the floor. */
static void bubbles_are_in_the_liquid(void **state)
{
    (void)state;
    view v = {0};
    int few, many;
    begin(&v);
    draw(&v);
    assert_int_equal(all(&v, 'o') + all(&v, 'O'), 0);
    v.p.row.void_fraction = 0.0067; /* of 0.6, which are ninety: one */
    draw(&v);
    assert_int_equal(all(&v, 'O'), 1);
    assert_int_equal(all(&v, 'o'), 0);
    v.p.row.void_fraction = 0.1;
    draw(&v);
    few = all(&v, 'o') + all(&v, 'O');
    assert_true(few > 7 && few <= 15);
    v.p.row.void_fraction = 0.6;
    draw(&v);
    many = all(&v, 'o') + all(&v, 'O');
    assert_true(many > 45 && many <= 90);
    for (int row = 2; row < 16; row++) {
        int here = count(&v, row, 'o') + count(&v, row, 'O');
        assert_true(row > 9 ? here > 2 : here == 0);
        assert_true(at(&v, row, 8) != 'o' && at(&v, row, 37) != 'o');
    }
    assert_true(all(&v, 'o') > all(&v, 'O'));
    v.p.row.void_fraction = 0.9; /* no more of them */
    draw(&v);
    assert_int_equal(all(&v, 'o') + all(&v, 'O'), many);
    v.p.row.level_m = 0.2 * ROW_M; /* no room for one */
    draw(&v);
    assert_int_equal(all(&v, 'o') + all(&v, 'O'), 0);
    worked_end(&v.w);
}

static void bubbles_rise(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    v.p.row.void_fraction = 0.0067;
    int before = -1, rose = 0;
    for (unsigned moment = 0; moment < 12; moment++) {
        canvas_clear(&v.c);
        tank_view_draw(&v.c, &v.w.shift, &v.p, moment, UNITS_US);
        for (int row = 10; row < 16; row++)
            if (count(&v, row, 'O') > 0) {
                rose += before >= 0 && row < before;
                assert_true(before < 0 || row < before || before <= 11); /* or begins anew below */
                before = row;
            }
    }
    assert_true(rose >= 6);
    worked_end(&v.w);
}

/* At the rim it is over; what goes beyond the picture is broken off at its edge. */
static void over_the_rim_it_runs_down_the_sides(void **state)
{
    (void)state;
    view v = {0};
    begin(&v);
    v.p.row.level_m = 12.5 * ROW_M;
    v.p.row.freeboard_m = 1e-6;
    draw(&v);
    assert_int_equal(all(&v, 'V'), 0);
    v.p.row.freeboard_m = 0;
    draw(&v);
    assert_int_equal(all(&v, '^'), 0);
    for (int row = 2; row < 17; row++) {
        bool runs = row > 4 && row < 16 && row % 2 == 1;
        assert_int_equal(count(&v, row, 'V'), runs ? 2 : 0);
        if (runs)
            assert_true(at(&v, row, 6) == 'V' && at(&v, row, 39) == 'V');
    }
    v.p.row.level_m = 14 * ROW_M;
    draw(&v);
    assert_int_equal(count(&v, 2, '^'), 38);
    assert_true(at(&v, 2, 4) == '^' && at(&v, 2, 41) == '^');
    worked_end(&v.w);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_vessel_has_walls_rim_floor_and_limit),
        cmocka_unit_test(the_surface_stands_low_middle_or_high_in_its_row),
        cmocka_unit_test(the_fire_follows_the_heat),
        cmocka_unit_test(loads_hang_side_by_side),
        cmocka_unit_test(salt_lies_on_the_floor),
        cmocka_unit_test(bubbles_are_in_the_liquid),
        cmocka_unit_test(bubbles_rise),
        cmocka_unit_test(over_the_rim_it_runs_down_the_sides),
    };
    return cmocka_run_group_tests_name("the tank in characters", tests, scratch_begin, scratch_end);
}
