/* What people write out of habit: each line is read as the proper one, with one remark, or is answered with what to write. The lines
   are common practice, no source. */
#include "support/close.h"
#include "support/scratch.h"

#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "habits/table.h"
#include "scenario/scenario.h"

/* A tank of 6 ft by 2 ft from 6:00 to 10:00; a row of the table puts its line in place of one of these, or in the schedule. */
static const char *const base[] = {
    "start = 6:00",
    "duration = 4 h",
    "[tank]",
    "length = 6 ft",
    "width = 2 ft",
    "depth = 30 in",
    "level = 20 in",
    "[bath]",
    "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2",
    "boiling point = 285 degF",
    "[heat]",
    "source = gas",
    "input = 330 kBtu/h",
    "[schedule]",
};
#define BASE (sizeof base / sizeof base[0])

typedef enum {
    SILENT, /* it is the language's own: nothing is said */
    REMARK, /* one remark says how it is read */
    STATED, /* as REMARK or SILENT, but the settings as written are others */
    REFUSED /* the message follows */
} answer;

#define PLATE "0:05 load 80 lb, plate 1/4 in, for 20 min"
#define BAR "0:05 load 80 lb, bar 1/2 in, for 20 min"
#define ACT "[schedule]" /* behind it */

/* clang-format off */
typedef struct {
    int number;
    const char *instead; /* of the base */
    const char *typed;
    answer answer;
    const char *proper; /* the line it is read as, or how its message goes */
} row;

static const row table[] = {
    {1, ACT, "0:05 load 80 lb plate 1/4 in, for 20 min", REMARK, PLATE},
    {1, ACT, "0:05 load 80 lb brass plate 1/4 in, for 20 min", REFUSED, "'brass' holds copper and zinc"},
    {2, ACT, "0:05 load 80 lb, plate 1/4 in for 20 min", REMARK, PLATE},
    {3, ACT, "0:05 load 80 lb, bolt 1/2 in, for 20 min", REMARK, BAR},
    {3, ACT, "0:05 load 80 lb, nut 1/2 in, for 20 min", REFUSED, "a nut of what thickness? write plate 1/4 in"},
    {4, ACT, "0:05 load 80 lb, rod 1/2 in, for 20 min", REMARK, BAR},
    {5, ACT, "0:05 load 80 lb, sheet 1/4 in, for 20 min", REMARK, PLATE},
    {6, ACT, "0:05 load 80 lb, pipe 1 in wall 2 mm, for 20 min", REMARK, "0:05 load 80 lb, tube 1 in wall 2 mm, for 20 min"},
    {7, ACT, "0:05 load 80 lb, steel plate 1/4 in, for 20 min", REMARK, "0:05 load 80 lb steel, plate 1/4 in, for 20 min"},
    {7, ACT, "0:05 load 80 lb, zinc plated bolt 1/2 in", REFUSED, "'zinc' dissolves violently"},
    {8, ACT, "0:05 load 80 lbs, plate 1/4 in, for 20 min", SILENT, "0:05 load 80 lbs, plate 1/4 in, for 20 min"},
    {9, ACT, "0:05 load 80 lb, plate 1/4\", for 20 min", REMARK, PLATE},
    {9, "length = 6 ft", "length = 6'", REMARK, "length = 6 ft"},
    {9, "length = 6 ft", "length = 6' 3\"", REMARK, "length = 6 ft 3 in"},
    {9, "length = 6 ft", "length = 6'3\"", REMARK, "length = 6 ft 3 in"},
    {10, ACT, "0:05 load 80 lb, bar 1 1/2 in, for 20 min", SILENT, "0:05 load 80 lb, bar 1 1/2 in, for 20 min"},
    {11, ACT, "0:05 load 80 lb, plate 1/4 in, for 20 minutes", SILENT, PLATE},
    {12, ACT, "0:05 load 80 lb, plate 1/4 in, for 20", REFUSED, "'for' needs a unit: 20 min, 20 s or 20 h?"},
    {13, ACT, "0:05 load 80,5 lb, plate 1/4 in, for 20 min", REFUSED, "'80,5' has a decimal comma: for 'load' write 80.5"},
    {14, "input = 330 kBtu/h", "input = 330,000 Btu/h", REFUSED, "'330,000' has a comma: for 'input' write 330000, or 330.000 if"},
    {15, "input = 330 kBtu/h", "input = 330000 BTU/hr", STATED, "input = 330000 Btu/h"},
    {16, "input = 330 kBtu/h", "input = 330 MBH", REFUSED, "'MBH' means a thousand to some and a million to others: write kBtu/h"},
    {17, "boiling point = 285 degF", "boiling point = 285 F", REMARK, "boiling point = 285 degF"},
    {17, "input = 330 kBtu/h", "input = 330 kBtu/h\n[losses]\nwall coefficient = 1 Btu/h ft2 F", SILENT,
     "input = 330 kBtu/h\n[losses]\nwall coefficient = 1 Btu/h ft2 F"},
    {17, "boiling point = 285 degF", "boiling point = 140 C", REMARK, "boiling point = 140 degC"},
    {18, "boiling point = 285 degF", "boiling point = 285 \u00b0F", STATED, "boiling point = 285 degF"},
    {19, "boiling point = 285 degF", "boils at = 285 degF", REFUSED, "'boils at' is called 'boiling point' here"},
    {20, "boiling point = 285 degF", "boiling point: 285 degF", REMARK, "boiling point = 285 degF"},
    {21, "boiling point = 285 degF", "strength = 6 lb per gal", REMARK, "strength = 6 lb/gal"},
    {22, "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2", "salts = 80 % caustic soda, 15 % sodium nitrate, 5 % sodium nitrite", REMARK,
     "salts = 80 % NaOH, 15 % sodium nitrate, 5 % sodium nitrite"},
    {22, "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2", "salts = 80 % NaOH, 20 % saltpetre", REFUSED,
     "'saltpetre' may be sodium or potassium nitrate"},
    {23, "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2", "salts = 80/15/5", REFUSED, "write each share with its salt, for example 80 % NaOH"},
    {24, "salts = 80 % NaOH, 15 % NaNO3, 5 % NaNO2", "salts = 80 % NaOH, 15 % NaNO3", REFUSED,
     "the shares of 'salts' add up to 95 %: 5 % are missing; NaNO2?"},
    {25, "source = gas", "source = propane", REFUSED, "'propane' is a gas too: write source = gas, with fuel = propane"},
    {26, "source = gas", "source = natural gas", REMARK, "source = gas"},
    {27, "depth = 30 in", "height = 30 in", REFUSED, "'height' is called 'depth' here (floor to rim)"},
    {28, "length = 6 ft", "length = 6 ft 0 in", STATED, "length = 6 ft"},
    {29, "length = 6 ft", "shape = round", REFUSED, "'round' is called 'upright cylinder', with a 'diameter'"},
    {30, ACT, "6:05 am load 80 lb, plate 1/4 in, for 20 min", REFUSED,
     "times count from the start: 6:05 is 12:05 by the clock; write 0:05, or 'times = by the clock' above the first section"},
    {31, ACT, "5 min load 80 lb, plate 1/4 in, for 20 min", SILENT, PLATE},
    {32, ACT, "at 0:05 load 80 lb, plate 1/4 in, for 20 min", REMARK, PLATE},
    {33, ACT, "every half hour load 80 lb, plate 1/4 in, for 20 min", REMARK, "every 30 min load 80 lb, plate 1/4 in, for 20 min"},
    {33, ACT, "every quarter hour water 2 lb over 5 min", REMARK, "every 15 min water 2 lb over 5 min"},
    {33, ACT, "every hour water 2 lb over 5 min", REMARK, "every 1 h water 2 lb over 5 min"},
    {34, ACT, "every 30 min from 0:05 until 3:35 load 80 lb, plate 1/4 in, for 20 min", REFUSED, "'until' is called 'to' here"},
    {35, ACT, "0:10 add 5 gal water over 5 min", REMARK, "0:10 water 5 gal over 5 min"},
    {35, ACT, "0:10 add 5 gal of water over 5 min, at 60 degF", REMARK, "0:10 water 5 gal over 5 min, at 60 degF"},
    {35, ACT, "0:10 add 5 gal of water", REFUSED, "say how fast: 'over 4 min' or 'at 30 gal/h'"},
    {36, ACT, "0:10 water 5 gal", REFUSED, "say how fast: 'over 4 min' or 'at 30 gal/h'"},
    {37, ACT, "0:10 water 5 gal in 5 min", REMARK, "0:10 water 5 gal over 5 min"},
    {38, ACT, "0:10 salt 5 lb over 5 min", REMARK, "0:10 salts 5 lb over 5 min"},
    {39, ACT, "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 unload rack 1", REMARK,
     "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 lift rack 1"},
    {39, ACT, "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 pull rack 1", REMARK,
     "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 lift rack 1"},
    {39, ACT, "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 take out rack 1", REMARK,
     "0:05 load 80 lb, bar 1/2 in, as rack 1\n0:25 lift rack 1"},
    {40, ACT, "0:10 burner off", REMARK, "0:10 heat off"},
    {41, ACT, "0:10 heat 50", REFUSED, "'heat' is a percentage and needs its sign: 50 %"},
    {42, ACT, "0:05 load 80 lb brass, plate 1/4 in, for 20 min", REFUSED,
     "'brass' holds copper and zinc and contaminates the bath and spoils the finish of everything after it"},
    {43, ACT, "0:05 load 80 lb, bar 1/2 in, as galvanized bolts, for 20 min", REFUSED, "'galvanized' is coated with zinc, which dissolves"},
    {43, ACT, "0:05 load 60 lb of small brackets for 20 min", REFUSED,
     "'of small brackets': a load is told by its shape"},
    {43, ACT, "0:05 load 80 lb, bar 1/2 in, as aluminum brackets, for 20 min", REFUSED, "'aluminum' dissolves violently"},
    {43, ACT, "0:05 load 80 lb, bar 1/2 in, as galvanized bolts (stripped), for 20 min", SILENT,
     "0:05 load 80 lb, bar 1/2 in, as galvanized bolts (stripped), for 20 min"},
    {44, ACT, "0:05 load 80 lb zinc-plated, bar 1/2 in, for 20 min", REFUSED, "'zinc-plated' dissolves violently"},
    {44, ACT, "0:05 load 80 lb, bar 1/2 in, zinc plated, for 20 min", REFUSED, "'zinc' dissolves violently"},
    {44, ACT, "0:05 load 80 lb, bar 1/2 in, galvanised, for 20 min", REFUSED, "'galvanised' is coated with zinc"},
    {45, ACT, "0:05\tload\t80 lb, plate 1/4 in, for 20 min", SILENT, PLATE},
    {46, ACT, "4:30 load 80 lb, plate 1/4 in, for 20 min", REFUSED,
     "4:30 is after the end, 4:00; by the clock it is 10:30. For a longer shift: duration = 5 h"},
    {47, "level = 20 in", "level = 34 in", REFUSED, "the level (34 in) is above the rim (30 in)"},
    {48, "level = 20 in", "freeboard = 10 in", STATED, "level = 20 in"},
    {48, "length = 6 ft", "length = 6 ft\nfreeboard = 10 in", REFUSED, "'freeboard' stands beside 'level' of line 8"},
    {49, "level = 20 in", "volume = 220 gal", REFUSED, "'volume' is not read: level = volume / (length x width) = 29.4 in"},
    {50, ACT, "0:05 load 80 lb, plate 1/4 in, for 20 min // first rack", REFUSED, "a comment begins with '#', not '//'"},
    {51, ACT, "0:05 load 80 lb, plate 1/4 in, for 20 min ; first rack", REFUSED, "a comment begins with '#', not ';'"},
    {52, ACT, PLATE "\n[schedule]", REFUSED, "[schedule] stands here a second time; the first is on line 14: move these lines up"},
    {53, ACT, "0:10 water 5 lb/gal over 5 min", REFUSED, "'water' needs an amount; how strong it is stands behind it: 'liquid 5 gal"},
    {54, ACT, "0:10 water 8 quarts over 5 min", SILENT, "0:10 water 8 quarts over 5 min"},
    {55, ACT, "0:10 water 8 pints over 5 min", SILENT, "0:10 water 8 pints over 5 min"},
    {56, ACT, "0:10 water 2 liters over 5 min", SILENT, "0:10 water 2 liters over 5 min"},
    {57, ACT, "0:05 load 40 x 2 lb, plate 1/4 in, for 20 min", REMARK, "0:05 load 80 lb, plate 1/4 in, for 20 min, 40 pieces"},
    {58, ACT, "0:10 light burner", REMARK, "0:10 heat on"},
    {58, ACT, "0:10 light the burner", REMARK, "0:10 heat on"},
    {58, ACT, "0:10 turn on the burner", REMARK, "0:10 heat on"},
    {59, ACT, "0:10 turn off the burner", REMARK, "0:10 heat off"},
    {59, ACT, "0:10 gas off", REMARK, "0:10 heat off"},
    {59, ACT, "0:10 flame out", REMARK, "0:10 heat off"},
    {60, ACT, "0:10 burner fails", REMARK, "0:10 heat off"},
    {60, ACT, "0:10 burner back on", REMARK, "0:10 heat on"},
    {60, ACT, "0:10 gas on", REMARK, "0:10 heat on"},
    {61, ACT, "0:10 break the crust", REMARK, "0:10 crust broken"},
    {61, ACT, "0:10 break crust", REMARK, "0:10 crust broken"},
    {62, ACT, "0:10 skim off 3 gal over 10 min", REMARK, "0:10 bail 3 gal over 10 min"},
    {62, ACT, "0:10 skim 3 gal over 10 min, from the surface", REMARK, "0:10 bail 3 gal over 10 min, from the surface"},
};
/* clang-format on */

#define ROWS (sizeof table / sizeof table[0])

static void read_with(const char *instead, const char *line, scenario *s, messages *m)
{
    FILE *f = fopen(scratch_path, "w");
    assert_non_null(f);
    for (size_t i = 0; i < BASE; i++) {
        bool here = strcmp(base[i], instead) == 0;
        fprintf(f, "%s\n", here && strcmp(instead, ACT) != 0 ? line : base[i]);
    }
    if (strcmp(instead, ACT) == 0)
        fprintf(f, "%s\n", line);
    assert_int_equal(fclose(f), 0);
    messages_init(m);
    (void)scenario_read(scratch_path, s, m);
}

static void forget(scenario *s, messages *m)
{
    scenario_free(s);
    messages_free(m);
}

/* Member by member: what lies between them is anybody's guess. */
#define SAME(of) (memcmp(&a->of, &b->of, sizeof a->of) == 0)

static bool same_wait_and_pour(const boil_action *a, const boil_action *b)
{
    return SAME(wait.state) && SAME(wait.for_s) && SAME(wait.follows) && SAME(wait.after) && SAME(wait.delay_s) &&
           SAME(pour.goal) && SAME(pour.goal_value) && SAME(pour.no_later_s) && SAME(pour.while_boiling) && SAME(pour.once);
}

/* Behind its size a load is numbers alone. */
static bool same_load(const boil_load *a, const boil_load *b)
{
    const size_t from = offsetof(boil_load, size_m);
    return SAME(mass_kg) && SAME(metal) && SAME(shape) &&
           memcmp((const char *)a + from, (const char *)b + from, sizeof *a - from) == 0;
}

static bool same_doing(const boil_action *a, const boil_action *b)
{
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        return same_load(&a->is.load, &b->is.load);
    case BOIL_ACTION_WATER:
        return SAME(is.water);
    case BOIL_ACTION_SALTS:
        return SAME(is.salts);
    case BOIL_ACTION_LIQUID:
        return SAME(is.liquid);
    case BOIL_ACTION_HEAT:
        return SAME(is.heat.order) && SAME(is.heat.dial) && SAME(is.heat.set_point_K);
    case BOIL_ACTION_BAIL:
        return SAME(is.take);
    case BOIL_ACTION_LIFT:
    case BOIL_ACTION_CRUST:
        return true;
    default:
        fail_msg("acts of kind %d are not compared here", (int)a->kind);
        return false;
    }
}

static bool same_act(const boil_action *a, const boil_action *b)
{
    return SAME(time_s) && SAME(kind) && SAME(order) && SAME(line) && SAME(position) && SAME(name) &&
           same_wait_and_pour(a, b) && same_doing(a, b);
}

static void same_acts(int number, const scenario *a, const scenario *b)
{
    if (a->schedule.count != b->schedule.count || a->wording.lines_count != b->wording.lines_count)
        fail_msg("row %d: %zu acts, not %zu", number, a->schedule.count, b->schedule.count);
    for (size_t i = 0; i < a->schedule.count; i++)
        if (!same_act(&a->schedule.actions[i], &b->schedule.actions[i]))
            fail_msg("row %d: act %zu is another", number, i);
    for (size_t i = 0; i < a->wording.lines_count; i++)
        assert_string_equal(a->wording.lines[i].words, b->wording.lines[i].words);
}

static void same_settings(int number, const scenario *a, const scenario *b, bool as_written)
{
    for (size_t i = 0; i < key_count(); i++) {
        double va[SETTING_VALUES] = {0}, vb[SETTING_VALUES] = {0};
        const char *ga = a->settings[i].given, *gb = b->settings[i].given;
        if (as_written && (ga == NULL) != (gb == NULL))
            fail_msg("row %d: '%s' is stated in one only", number, key_at(i)->words);
        if (as_written && ga != NULL && strcmp(ga, gb) != 0)
            fail_msg("row %d: '%s' for '%s'", number, ga, gb);
        (void)scenario_setting_value(a, i, va);
        (void)scenario_setting_value(b, i, vb);
        for (size_t v = 0; as_written && v < SETTING_VALUES; v++)
            assert_true(va[v] == vb[v] || (va[v] != va[v] && vb[v] != vb[v]));
    }
    assert_close(a->plant.tank.level_m, b->plant.tank.level_m, 1e-12, 0);
    assert_close(a->plant.tank.length_m, b->plant.tank.length_m, 1e-12, 0);
    assert_close(a->plant.heater.input_W, b->plant.heater.input_W, 1e-12, 0);
    assert_close(a->plant.charge.value, b->plant.charge.value, 1e-12, 0);
}

/* One remark, or none, and then the same scenario as the proper line. */
static void reads(const row *r)
{
    scenario typed, proper;
    messages m, n;
    int number = r->number;
    read_with(r->instead, r->typed, &typed, &m);
    read_with(r->instead, r->proper, &proper, &n);
    for (size_t k = 0; k < m.count; k++)
        if (!m.list[k].remark)
            fail_msg("row %d, '%s': %s", number, r->typed, m.list[k].text);
    if (r->answer != STATED && m.remarks != (r->answer == REMARK))
        fail_msg("row %d, '%s': %zu remarks", number, r->typed, m.remarks);
    if (n.count > 0)
        fail_msg("row %d, proper '%s': %s", number, r->proper, n.list[0].text);
    same_acts(number, &typed, &proper);
    same_settings(number, &typed, &proper, r->answer != STATED);
    forget(&typed, &m);
    forget(&proper, &n);
}

/* One of its messages begins so. */
static void is_answered(size_t i)
{
    scenario s;
    messages m;
    read_with(table[i].instead, table[i].typed, &s, &m);
    bool found = false;
    for (size_t k = 0; k < m.count; k++)
        found = found || (!m.list[k].remark && strncmp(m.list[k].text, table[i].proper, strlen(table[i].proper)) == 0);
    if (!found)
        fail_msg("row %d, '%s': %s", table[i].number, table[i].typed, m.count > 0 ? m.list[0].text : "accepted");
    forget(&s, &m);
}

static void every_habit_is_understood_or_answered(void **state)
{
    (void)state;
    int last = 0;
    for (size_t i = 0; i < ROWS; i++) {
        assert_true(table[i].number == last || table[i].number == last + 1);
        last = table[i].number;
        if (table[i].answer == REFUSED)
            is_answered(i);
        else
            reads(&table[i]);
    }
    assert_int_equal(last, 62);
}

/* Every word of the table that stands for a shape is read as that shape. */
static void every_shape_is_understood(void **state)
{
    (void)state;
    const char *typed, *read;
    unsigned where;
    size_t shapes = 0;
    for (size_t i = 0; habit_listed(i, &typed, &read, &where); i++) {
        char line[100], proper[100];
        const char *wall = strcmp(read, "tube") == 0 ? " wall 2 mm" : "";
        if (where != HABIT_LOAD)
            continue;
        snprintf(line, sizeof line, "0:05 load 80 lb, %s 1/2 in%s", typed, wall);
        snprintf(proper, sizeof proper, "0:05 load 80 lb, %s 1/2 in%s", read, wall);
        reads(&(row){0, ACT, line, REMARK, proper});
        shapes++;
    }
    assert_true(shapes > 10);
}

/* Each in every place where it may stand, in small letters and in large. */
static void every_word_is_replaced_where_it_stands(void **state)
{
    (void)state;
    const char *typed, *read;
    unsigned where, all = 0;
    for (size_t i = 0; habit_listed(i, &typed, &read, &where); i++)
        for (unsigned place = HABIT_WHEN; place <= HABIT_VALUE; place *= 2)
            for (int large = 0; large < 2; large++) {
                reword w;
                char line[60], want[60];
                snprintf(line, sizeof line, "%s 1", typed);
                snprintf(want, sizeof want, "%s%s1", read, read[0] != '\0' ? " " : "");
                line[0] = (char)(large ? line[0] - 'a' + 'A' : line[0]);
                assert_true(reword_begin(&w, &(cursor){.at = line, .end = line + strlen(line)}));
                bool stands = (where & place) != 0;
                all |= where;
                assert_true(habit_replace(&w, 0, place) == stands);
                assert_string_equal(w.text, stands ? want : line);
            }
    assert_int_equal(all, 2 * HABIT_VALUE - 1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_habit_is_understood_or_answered),
        cmocka_unit_test(every_shape_is_understood),
        cmocka_unit_test(every_word_is_replaced_where_it_stands),
    };
    return cmocka_run_group_tests(tests, scratch_begin, scratch_end);
}
