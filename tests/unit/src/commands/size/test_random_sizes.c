/* What `size` answers, asked of tanks such as shops have with loads drawn by number: run as a scenario with that heat every
   answer holds, a little less heat or a little more steel breaks something, and no answer denies another. Nothing here is known
   from outside: it is the answers against runs, and against each other.
   PLANTS=200 in the environment tries as many (a quarter of an hour), PLANTS=17-18 that one; without it one. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "analysis/heater_size.h"
#include "commands/size/answer.h"
#include "commands/size/sheet.h"
#include "random/stream.h"
#include "support/numbers.h"
#include "support/shop.h"

typedef struct {
    boil_plant plant;
    boil_schedule schedule;
    double limit_s;
} shop;

/* One to three loads, from a tenth of the rule of thumb to half as much again; every third tank with most of what stands above its
   level wanted as freeboard, so that its window may be shut. */
static shop drawn(size_t number)
{
    stream r = {number + 1000};
    shop s = {.plant = shop_plant(number)};
    const boil_tank *t = &s.plant.tank;
    double thumb_kg = s.plant.limits.load_per_volume_kg_m3 * boil_tank_area(t) * t->level_m;
    size_t count = 1 + stream_below(&r, 3);
    double every_s = 60 * stream_between(&r, 15, 40);
    boil_action load = {.time_s = 300, .kind = BOIL_ACTION_LOAD, .is.load = boil_load_default()};
    load.is.load.size_m = stream_spread(&r, 3e-3, 25e-3);
    load.is.load.temperature_K = s.plant.ambient.temperature_K;
    load.is.load.immersed_s = 600;
    if (number % 3 == 1)
        s.plant.limits.freeboard_m = 0.85 * (t->depth_m - t->level_m);
    s.limit_s = stream_spread(&r, 60, 600);
    boil_schedule_init(&s.schedule, 300 + (double)count * every_s);
    for (size_t i = 0; i < count; i++, load.time_s += every_s) {
        load.is.load.mass_kg = stream_rounded(thumb_kg * stream_spread(&r, 0.1, 1.5));
        load.is.load.basket_kg = stream_rounded(load.is.load.mass_kg * stream_between(&r, 0, 0.3));
        assert_int_equal(boil_schedule_add(&s.schedule, &load), BOIL_OK);
    }
    return s;
}

/* As a scenario with such a heater, a valve that holds the strength, and those loads would run: all that is asked of it. */
static bool runs_well(const shop *s, const boil_schedule *loads, double heat_W, bool spaced)
{
    static const boil_closures laws[] = {BOIL_CLOSURES_LIKELY, BOIL_CLOSURES_GRAVE, BOIL_CLOSURES_SUDDEN};
    boil_plant sized, watered;
    boil_run_options o = boil_run_options_default();
    bool well = true;
    assert_int_equal(boil_heater_size_plant(&s->plant, heat_W, &sized), BOIL_OK);
    assert_int_equal(boil_load_size_watered(&sized, &watered), BOIL_OK);
    for (size_t k = 0; k < 3 && well; k++) {
        boil_history h;
        o.closures = laws[k];
        assert_int_equal(boil_run(&watered, loads, &o, &h), BOIL_OK);
        for (size_t i = 0; i < h.loads_count; i++)
            well = well && h.loads[i].recovery_s <= s->limit_s && !(spaced && h.loads[i].was_quiet);
        well = well && h.end == BOIL_RUN_DONE && h.summary.freeboard_min_m.value >= s->plant.limits.freeboard_m &&
               h.summary.temperature_min_K.value >= s->plant.limits.boiling_point_low_K &&
               h.summary.temperature_max_K.value <= s->plant.limits.boiling_point_high_K;
        boil_history_free(&h);
    }
    return well;
}

static bool runs_well_scaled(const shop *s, double heat_W, double times)
{
    boil_schedule loads;
    assert_int_equal(boil_load_size_scaled(&s->schedule, times, &loads), BOIL_OK);
    bool well = runs_well(s, &loads, heat_W, false);
    boil_schedule_free(&loads);
    return well;
}

/* What does not hold of a plant, and how many of them that is. */
static int broken;

static void expect(bool holds, size_t number, const char *what, double figure)
{
    if (holds)
        return;
    broken++;
    print_message("plant %zu: %s (%.5g)\n", number, what, figure);
}

/* To 0.2 %, as the heaviest are found. */
static void heaviest_agrees(const shop *s, size_t number, double heat_W)
{
    boil_run_options o = boil_run_options_default();
    shop sized = *s;
    double times, need_W;
    boil_schedule loads;
    assert_int_equal(boil_heater_size_plant(&s->plant, heat_W, &sized.plant), BOIL_OK);
    assert_int_equal(boil_load_size_heaviest(&sized.plant, &s->schedule, &o, s->limit_s, &times), BOIL_OK);
    expect(times >= 0.998, number, "with the heat its loads need, the heaviest are lighter", times);
    expect(runs_well_scaled(s, heat_W, times), number, "the heaviest loads do not hold", times);
    expect(!runs_well_scaled(s, heat_W, 1.01 * times), number, "loads 1 % over the heaviest hold", times);
    assert_int_equal(boil_load_size_scaled(&s->schedule, times, &loads), BOIL_OK);
    assert_int_equal(boil_heater_size_for_recovery(&s->plant, &loads, &o, s->limit_s, 0.002, &need_W), BOIL_OK);
    expect(need_W <= 1.003 * heat_W, number, "the heaviest loads need more heat than there is", need_W / heat_W);
    boil_schedule_free(&loads);
}

/* With a little more than its schedule needs: after another while of boil a load is back a second later or sooner. With
   that much more heat, and the valve open at another moment, the freeboard may be short. */
static void interval_agrees(const shop *s, size_t number, double need_W)
{
    const double heat_W = 1.03 * need_W;
    boil_run_options o = boil_run_options_default();
    const boil_load *l = &s->schedule.actions[0].is.load;
    boil_plant sized, watered;
    boil_schedule loads;
    double interval_s;
    assert_int_equal(boil_heater_size_plant(&s->plant, heat_W, &sized), BOIL_OK);
    assert_int_equal(boil_load_size_watered(&sized, &watered), BOIL_OK);
    boil_outcome found = boil_load_size_interval(&watered, l, &o, s->limit_s, &interval_s);
    if (found != BOIL_OK) {
        boil_holding at;
        assert_int_equal(boil_load_size_alone(&watered, l, &o, s->limit_s, &at), BOIL_OK);
        if (at.breaks == 0)
            assert_int_equal(boil_load_size_interval_holds(&watered, l, &o, s->limit_s, BOIL_LOAD_SIZE_LONGEST, &at), BOIL_OK);
        expect(at.breaks == BOIL_BREAKS_FREEBOARD, number, "a load that holds in its schedule has no interval", at.breaks);
        return;
    }
    assert_int_equal(boil_load_size_repeated(l, interval_s, s->limit_s, &loads), BOIL_OK);
    expect(runs_well(s, &loads, heat_W, true), number, "loads at the shortest interval do not hold", interval_s);
    boil_schedule_free(&loads);
    if (interval_s <= 1.02 * boil_load_size_soonest(&watered, l))
        return;
    assert_int_equal(boil_load_size_repeated(l, interval_s / 1.02, s->limit_s, &loads), BOIL_OK);
    expect(!runs_well(s, &loads, heat_W, true), number, "loads 2 % sooner hold", interval_s);
    boil_schedule_free(&loads);
}

/* What the command asks for --load and --table. */
static void table_agrees(const shop *s, size_t number)
{
    scenario scene = {.plant = s->plant, .schedule = s->schedule};
    const quantity heavy = {.dimension = DIM_MASS, .si = s->schedule.actions[0].is.load.mass_kg};
    size_cells cells;
    size_case one;
    size_answer a;
    assert_int_equal(size_cells_of(&scene, s->limit_s, &heavy, &cells), BOIL_OK);
    assert_int_equal(size_case_of(&scene, s->limit_s, &heavy, &one), BOIL_OK);
    assert_int_equal(size_answer_of(&one, &a), BOIL_OK);
    const size_cell *same = &cells.cells[SIZE_CELL_PLATES + 1];
    expect(same->load_kg == heavy.si, number, "the table is of another load", same->load_kg);
    expect(a.heats.found == BOIL_WINDOW_FOUND ? same->heat_W == a.heats.heat_W : isnan(same->heat_W), number,
           "--table says another heat than --load", same->heat_W);
    expect(same->holds == !boil_heater_window_shut(&a.heats), number, "--table and --load differ whether it holds",
           same->heat_W);
    boil_heater_window_free(&a.heats);
    size_case_free(&one);
}

/* A tank as deep as the sheet says leaves the freeboard with the design heat, one an inch lower does not. */
static void sheet_agrees(const shop *s, size_t number)
{
    scenario scene = {.plant = s->plant, .schedule = s->schedule};
    scene.design.margin = 0.15;
    scene.design.idle_s = 3600;
    scene.design.water_K = (double)NAN;
    size_case all;
    size_answer a;
    sheet_facts f;
    assert_int_equal(size_case_of(&scene, s->limit_s, NULL, &all), BOIL_OK);
    assert_int_equal(size_answer_of(&all, &a), BOIL_OK);
    assert_int_equal(sheet_facts_of(&a, &f), BOIL_OK);
    expect(fabs(f.design_W / (1.15 * a.heats.heat_W) - 1) < 1e-9, number, "the design heat is not the need and its margin",
           f.design_W);
    shop deep = *s, low = *s;
    deep.plant.tank.depth_m = f.rim_m + 1e-6;
    low.plant.tank.depth_m = f.rim_m - 0.0254;
    expect(runs_well(&deep, &s->schedule, f.design_W, false), number, "the sheet's rim does not leave the freeboard", f.rim_m);
    expect(!runs_well(&low, &s->schedule, f.design_W, false), number, "an inch less rim leaves the freeboard", f.rim_m);
    boil_heater_window_free(&a.heats);
    size_case_free(&all);
}

static void opening_agrees(const shop *s, size_t number, boil_heater_window *w)
{
    boil_run_options o = boil_run_options_default();
    boil_heater_window then;
    assert_int_equal(boil_heater_window_opening_load(&s->plant, &s->schedule, &o, s->limit_s, w), BOIL_OK);
    assert_int_equal(boil_heater_window_opening_area(&s->plant, &s->schedule, &o, s->limit_s, w), BOIL_OK);
    if (!isnan(w->opening_load)) {
        boil_schedule loads;
        assert_int_equal(boil_load_size_scaled(&s->schedule, w->opening_load, &loads), BOIL_OK);
        assert_int_equal(boil_heater_window_of(&s->plant, &loads, &o, s->limit_s, &then), BOIL_OK);
        expect(!boil_heater_window_shut(&then), number, "the lighter load does not open the window", w->opening_load);
        boil_heater_window_free(&then);
        boil_schedule_free(&loads);
    }
    if (!isnan(w->opening_area)) {
        boil_plant wide = boil_load_size_widened(&s->plant, w->opening_area);
        assert_int_equal(boil_heater_window_of(&wide, &s->schedule, &o, s->limit_s, &then), BOIL_OK);
        expect(!boil_heater_window_shut(&then), number, "the wider tank does not open the window", w->opening_area);
        boil_heater_window_free(&then);
    }
}

static void one_shop(size_t number)
{
    boil_run_options o = boil_run_options_default();
    boil_heater_window w;
    shop s = drawn(number);
    assert_int_equal(boil_heater_window_of(&s.plant, &s.schedule, &o, s.limit_s, &w), BOIL_OK);
    bool shut = boil_heater_window_shut(&w);
    print_message("plant %zu: %zu loads, %.0f s, %s, %.4g kW\n", number, s.schedule.count, s.limit_s, shut ? "shut" : "open",
                  w.heat_W / 1e3);
    if (shut)
        opening_agrees(&s, number, &w);
    else {
        expect(runs_well(&s, &s.schedule, w.heat_W, false), number, "the heat does not hold", w.heat_W);
        expect(!runs_well(&s, &s.schedule, 0.98 * w.heat_W, false), number, "2 % less heat holds", w.heat_W);
        if (w.leaves_possible.rim == BOIL_RIM_AT)
            expect(runs_well(&s, &s.schedule, w.leaves_possible.heat_W, false), number, "the most heat does not hold",
                   w.leaves_possible.heat_W);
        heaviest_agrees(&s, number, w.heat_W);
        interval_agrees(&s, number, w.heat_W);
        if (number % 4 == 3)
            sheet_agrees(&s, number);
    }
    if (number % 4 == 1)
        table_agrees(&s, number);
    boil_heater_window_free(&w);
    boil_schedule_free(&s.schedule);
}

static void answers_hold_and_agree(void **state)
{
    (void)state;
    const drawn_numbers tried = numbers_asked("PLANTS", (drawn_numbers){2, 3});
    for (int i = tried.from; i < tried.to; i++)
        one_shop((size_t)i);
    print_message("%d plants, %d times something did not hold\n", tried.to - tried.from, broken);
    assert_int_equal(broken, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(answers_hold_and_agree)};
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("random sizes", tests, NULL, NULL);
}
