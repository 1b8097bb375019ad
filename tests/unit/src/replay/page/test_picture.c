/* The tank as it is drawn, of a moment that is made up here: no run. */
#include "support/close.h"

#include <stdlib.h>
#include <string.h>

#include "replay/page/parts.h"
#include "support/printed.h"
#include "support/shipped.h"

enum { STEPS = 8 };

typedef struct {
    scenario s;
    boil_row rows[2];
    replay_band band[2];
    replay_tide tide[2];
    lesson_answer a;
} made;

/* An hour as it stands, half a metre deep. */
static void make(made *m)
{
    *m = (made){.tide = {{60, 0.5, 0.55}, {120, 0.6, 0.7}}};
    read_shipped("normal-shift.bath", &m->s);
    for (int i = 0; i < 2; i++) {
        m->rows[i] =
            (boil_row){.time_s = 3600.0 * i, .level_m = 0.5, .still_level_m = 0.5, .boiling = true, .steam_kg_s = 0.02};
        m->band[i] = (replay_band){3600.0 * i, 0.5, 0.5, REPLAY_NOTHING_M};
    }
    lesson_run *r = &m->a.runs[0];
    m->a.scenario = &m->s;
    m->a.count = 1;
    r->name = "A";
    r->done = (carried_out){.scenario = &m->s};
    r->done.central.summary.overflow_s = (double)NAN;
    r->replay = (replay){.of = &r->done, .rows = m->rows, .rows_count = 2, .band = m->band, .band_count = 2, .slack = 1};
    r->replay.calm_kg_s = 0.02;
    r->replay.law_m = (double)NAN;
}

/* The part of that name, up to the end of its group or, of a part alone, of the tag. */
static char *part_of(const made *m, double time_s, const char *part, const char *ends)
{
    char name[40];
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    lesson_picture(&h, &m->a, 0, time_s);
    char *text = printed_end(&p);
    snprintf(name, sizeof name, "data-part=\"%s\"", part);
    char *from = strstr(text, name);
    assert_non_null(from);
    *strstr(from, ends) = '\0';
    memmove(text, from, strlen(from) + 1);
    return text;
}

/* So many boxes are full, and puffs rise. */
static void expect_steam(made *m, double steam_kg_s, double calm_kg_s, size_t boxes)
{
    m->rows[0].steam_kg_s = m->rows[1].steam_kg_s = steam_kg_s;
    m->a.runs[0].replay.calm_kg_s = calm_kg_s;
    char *ladder = part_of(m, 60, "ladder", "</g>"), *steam = part_of(m, 60, "steam", "</g>");
    assert_int_equal(printed_times(ladder, "<rect"), STEPS);
    assert_int_equal(printed_times(ladder, "fill=\"var(--ink)\""), boxes);
    assert_int_equal(printed_times(steam, "<path"), STEPS);
    assert_int_equal(printed_times(steam, "hidden"), STEPS - boxes);
    free(ladder);
    free(steam);
}

/* One as the boil is steady or weaker, and one more each time that it doubles; all where nothing is usual, none of a milligram a
   second or without a boil. */
static void a_box_more_is_twice_the_steam(void **state)
{
    (void)state;
    made m;
    make(&m);
    expect_steam(&m, 1e-6, 0.02, 0);
    expect_steam(&m, 1.01e-6, 0.02, 1);
    for (int i = 0; i < 12; i++) {
        expect_steam(&m, 0.02 * pow(2, i) * 0.999, 0.02, (size_t)(i == 0 ? 1 : i < STEPS ? i : STEPS));
        expect_steam(&m, 0.02 * pow(2, i) * 1.001, 0.02, (size_t)(i < STEPS ? i + 1 : STEPS));
    }
    expect_steam(&m, 1.01e-6, 0, STEPS);
    expect_steam(&m, 1e-6, 0, 0);
    m.rows[0].boiling = m.rows[1].boiling = false;
    expect_steam(&m, 0.02, 0.02, 0);
    scenario_free(&m.s);
}

static void expect_sign(const made *m, double time_s, const char *part, const char *at)
{
    char words[60], *sign = part_of(m, time_s, part, "/>");
    snprintf(words, sizeof words, "transform=\"translate(0 %s)\"", at);
    assert_non_null(strstr(sign, words));
    free(sign);
}

/* Millimetres above the floor, up negative; on the floor until something has risen, and likely no higher than the law of swell knows. */
static void signs_stand_at_the_highest_so_far(void **state)
{
    (void)state;
    made m;
    make(&m);
    replay *r = &m.a.runs[0].replay;
    r->tide = m.tide;
    r->tide_count = 2;
    expect_sign(&m, 59, "highest", "-0");
    expect_sign(&m, 59, "utmost", "-0");
    expect_sign(&m, 60, "highest", "-500");
    expect_sign(&m, 119, "utmost", "-550");
    expect_sign(&m, 120, "highest", "-600");
    expect_sign(&m, 3600, "utmost", "-700");
    r->law_m = 0.58;
    expect_sign(&m, 3600, "highest", "-580");
    expect_sign(&m, 3600, "utmost", "-700");
    scenario_free(&m.s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_box_more_is_twice_the_steam),
                                       cmocka_unit_test(signs_stand_at_the_highest_so_far)};
    return cmocka_run_group_tests_name("picture", tests, NULL, NULL);
}
