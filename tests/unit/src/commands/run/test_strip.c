/* The curves of the strip, of a run that is made up here: of many rows each column keeps its extremes, and of few none is left out. */
#include "support/close.h"
#include "support/printed.h"
#include "support/shipped.h"

#include <stdlib.h>
#include <string.h>

#include "commands/run/page/sections.h"

enum { ROWS = 10001, POINTS = 4000 };

typedef struct {
    scenario s;
    boil_row rows[ROWS];
    carried_out o;
    boil_history trace;
} drawn;

typedef struct {
    double x[POINTS], y[POINTS];
    size_t count;
    double wide; /* of the pen */
} line;

/* A row a tenth of a second: a swell that grows and shrinks by 0.1 m in 20 s, and by 0.05 m from one row to the next; at 500.05 s,
   between two, the rim is reached. */
static void make_up(drawn *d)
{
    read_shipped("normal-shift.bath", &d->s);
    for (int i = 0; i < ROWS; i++)
        d->rows[i] = (boil_row){
            .time_s = 0.1 * i, .boiling_point_K = 413, .level_m = 0.40 + 0.001 * abs(i % 200 - 100) + 0.05 * (i % 2)};
    d->o = (carried_out){.scenario = &d->s};
    d->o.central.end_s = 1000;
    boil_summary *b = &d->o.central.summary;
    b->level_max_m = (boil_extreme){.value = d->s.plant.tank.depth_m, .time_s = 500.05};
    b->still_level_start_m = b->still_level_min_m.value = 0.40;
    b->overflow_s = (double)NAN;
    d->trace = (boil_history){.rows = d->rows, .rows_count = ROWS};
}

/* The nth curve of the figure, counted from 0: boiling point and level, broad and then narrow. */
static void curve_of(const drawn *d, int nth, line *l)
{
    static const char begins[] = "<path fill=\"none\" stroke=\"#000\" stroke-width=\"";
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    page_strip(&h, &d->o, &d->trace, UNITS_SI);
    char *text = printed_end(&p), *at = text;
    for (int i = 0; i <= nth; i++) {
        at = strstr(at, begins);
        assert_non_null(at);
        at += strlen(begins);
    }
    l->wide = strtod(at, &at);
    at = strstr(at, "d=\"") + 3;
    for (l->count = 0; *at != '"'; l->count++) {
        assert_true(l->count < POINTS && *at == (l->count == 0 ? 'M' : 'L'));
        l->x[l->count] = strtod(at + 1, &at);
        l->y[l->count] = strtod(at, &at);
    }
    free(text);
}

/* Up and down in each column, and columns as far from each other as the pen is wide: none hides the next. */
static void each_column_keeps_its_extremes(void **state)
{
    static const double wide[] = {900 - 62 - 10, 340 - 44 - 10};
    const drawn *d = *state;
    line l;
    for (int form = 0; form < 2; form++) {
        curve_of(d, 2 * form + 1, &l);
        double columns = floor(wide[form] / l.wide);
        assert_true((double)l.count <= 2 * columns + 2 && (double)l.count >= 1.9 * columns);
        for (size_t i = 0; i + 3 < l.count; i += 2) {
            double moved = (l.x[i + 2] - l.x[i]) / l.wide;
            assert_close(l.x[i], l.x[i + 1], 0, 0);
            assert_true(l.y[i] > l.y[i + 1]);
            assert_close(moved, fmax(1, round(moved)), 0, 0.25); /* a row, and its rounding */
        }
    }
}

/* The most, which no row is at, stands once, and well above all others. */
static void between_rows_the_most_is_drawn(void **state)
{
    line l;
    for (int form = 0; form < 2; form++) {
        curve_of(*state, 2 * form + 1, &l);
        double top = HUGE_VAL, next = HUGE_VAL;
        for (size_t i = 0; i < l.count; i++) {
            next = fmin(next, fmax(top, l.y[i]));
            top = fmin(top, l.y[i]);
        }
        assert_true(top < next - 5);
    }
}

/* What says nothing new is not drawn, but for the last of it. */
static void what_stands_still_is_two_points(void **state)
{
    drawn *d = *state;
    line l;
    curve_of(d, 0, &l);
    assert_int_equal(l.count, 2);
    assert_close(l.x[0], 62, 0, 0);
    assert_close(l.x[1], 890, 0, 0);
    assert_close(l.y[0], l.y[1], 0, 0);
}

static int begin(void **state)
{
    *state = calloc(1, sizeof(drawn));
    if (*state == NULL)
        return -1;
    make_up(*state);
    return 0;
}

static int end(void **state)
{
    scenario_free(&((drawn *)*state)->s);
    free(*state);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_column_keeps_its_extremes),
        cmocka_unit_test(between_rows_the_most_is_drawn),
        cmocka_unit_test(what_stands_still_is_two_points),
    };
    return cmocka_run_group_tests_name("strip", tests, begin, end);
}
