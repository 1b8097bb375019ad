/* Lines of [uncertain] and of --grid: what they come to in SI, and which are refused. */
#include "support/close.h"

#include <string.h>

#include "cli/options.h"
#include "scenario/scenario.h"
#include "scenario/uncertain.h"

/* As the value of an option is read. */
static bool read_as(const char *text, bool (*read)(cursor *c, void *into), void *into)
{
    option o = {.name = "line", .value = "LINE", .kind = OPTION_READ, .read = read};
    command c = {.name = "explore", .options = &o, .options_count = 1};
    given g = {.command = &c, .values = {text}};
    return options_take(&g, into);
}

static bool read_line(cursor *c, void *u)
{
    return uncertain_read(c, u);
}

static uncertain of(const char *line)
{
    uncertain u;
    if (!read_as(line, read_line, &u))
        fail_msg("'%s' is refused", line);
    return u;
}

static void four_spreads_are_read_in_si(void **state)
{
    (void)state;
    uncertain even = of("heat efficiency = 50 % to 70 %"), three = of("losses evaporation factor = 0.75 to 1.25, likely 1");
    uncertain normal = of("bath boiling point = 285 degF +- 1.8 degF"), listed = of("mixing time factor = 0.34 | 1 | 3");
    assert_int_equal(even.spread.kind, BOIL_SPREAD_UNIFORM);
    assert_close(even.spread.low, 0.5, 1e-12, 0);
    assert_close(even.spread.high, 0.7, 1e-12, 0);
    assert_int_equal(three.spread.kind, BOIL_SPREAD_TRIANGULAR);
    assert_close(three.spread.likely, 1, 1e-12, 0);
    assert_int_equal(normal.spread.kind, BOIL_SPREAD_NORMAL);
    assert_close(normal.spread.likely, (285 - 32) / 1.8 + 273.15, 1e-12, 0);
    assert_close(normal.spread.deviation, 1, 1e-12, 0); /* a difference: no offset */
    assert_int_equal(listed.spread.kind, BOIL_SPREAD_LISTED);
    assert_int_equal(listed.spread.count, 3);
    assert_close(listed.spread.value[2], 3, 1e-12, 0);
    assert_null(listed.thing.key);
    assert_string_equal(normal.as_written, "285 degF +- 1.8 degF");
    assert_string_equal(even.thing.words, "heat efficiency");
}

/* The heat of dilution, -422 kJ/kg by the model, from -375 to -445. */
static void constants_of_the_model_are_uncertain(void **state)
{
    (void)state;
    uncertain dilution = of("dilution factor = 0.89 to 1.055"), viscosity = of("viscosity factor = 0.7 to 1.5, likely 1");
    assert_close(422 * dilution.spread.low, 375, 2e-3, 0);
    assert_close(422 * dilution.spread.high, 445, 2e-3, 0);
    assert_true(dilution.thing.where == offsetof(scenario, plant.dilution_factor));
    assert_true(viscosity.thing.where == offsetof(scenario, plant.transport.viscosity_factor));
    assert_null(dilution.thing.key);
}

/* What floats, by mass or by volume; how much the burner takes, by its flow; a crust, by how thick it is. */
static void of_two_dimensions_the_first_value_says_which(void **state)
{
    (void)state;
    uncertain afloat = of("bath water afloat = 0 gal to 2 gal"), by_mass = of("bath water afloat = 1 kg | 2 kg");
    uncertain input = of("heat input = 3 gal/h to 4 gal/h"), crust = of("bath crust = 1/4 in to 1/2 in");
    assert_int_equal(afloat.thing.dimension, DIM_VOLUME);
    assert_int_equal(by_mass.thing.dimension, DIM_MASS);
    assert_int_equal(input.thing.dimension, DIM_VOLUME_FLOW);
    assert_int_equal(crust.thing.dimension, DIM_LENGTH);
    assert_close(crust.spread.high, 0.0127, 1e-12, 0);
}

static void spellings_vary(void **state)
{
    (void)state;
    assert_close(of("Heat  INPUT = 1e5 W to 1/2 MMBtu/h").spread.low, 1e5, 1e-12, 0);
    assert_close(of("bath boiling point = 140 degC \xC2\xB1 1 K").spread.deviation, 1, 1e-12, 0);
    assert_close(of("tank level = 20 in to 60 cm, likely 0.508 m").spread.likely, 0.508, 1e-12, 0);
}

/* Every one for its own reason. */
static void nonsense_is_refused(void **state)
{
    (void)state;
    static const char *const lines[] = {"",
                                        "=",
                                        "heat efficiency",
                                        "heat efficiency =",
                                        "efficiency = 50 % to 70 %",
                                        "title = 1 to 2",
                                        "tank shape = box | round",
                                        "heat efficiency = 60 %",
                                        "heat efficiency = 70 % to 50 %",
                                        "heat efficiency = 50 % to 120 %",
                                        "heat efficiency = 50 to 70",
                                        "heat input = 1 kW to 2 kg",
                                        "bath water afloat = 1 gal to 2 lb",
                                        "bath water afloat = 1 gal at 60 degF to 2 gal",
                                        "bath water afloat = 1 gal +- 1 gal",
                                        "heat efficiency = 50 % to 70 %, likely",
                                        "heat efficiency = 50 % to 70 %, likely 80 %",
                                        "heat efficiency = 50 % to 70 %, 60 %",
                                        "bath boiling point = 285 degF +- 0 degF",
                                        "bath boiling point = 285 degF +- -1 degF",
                                        "bath boiling point = 285 degF +- 100 degF",
                                        "drift = 1 |",
                                        "drift = | 1",
                                        "drift = 1 || 2",
                                        "drift = nan to 1",
                                        "drift = 0.5 to inf",
                                        "drift = 0.3 to 9",
                                        "drift = 1|1|1|1|1|1|1|1|1|1|1|1|1|1|1|1|1"};
    uncertain u;
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++)
        if (read_as(lines[i], read_line, &u))
            fail_msg("'%s' is taken", lines[i]);
}

static void grids_have_steps(void **state)
{
    (void)state;
    static const char *const wrong[] = {"heat input = 200 kBtu/h to 500 kBtu/h", "heat input = 1 kW to 2 kW : 1",
                                        "heat input = 1 kW to 2 kW : 201",       "heat input = 1 kW to 2 kW : 2.5",
                                        "heat input = 1 kW | 2 kW : 2",          "heat input = 1 kW to 2 kW : 2 : 2",
                                        "heat input = 1 kW to 2 kW :",           ": 2"};
    uncertain_grid g;
    assert_true(read_as("heat input = 200 kBtu/h to 500 kBtu/h : 7", uncertain_grid_read, &g));
    assert_int_equal(g.steps, 7);
    assert_close(g.over.spread.low, 200 * 1055.05585262 / 3.6, 1e-9, 0);
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
        if (read_as(wrong[i], uncertain_grid_read, &g))
            fail_msg("'%s' is taken", wrong[i]);
}

/* Every setting of one number is found by its name, and every constant within the range its header gives. */
static void every_name_is_known(void **state)
{
    (void)state;
    size_t named = 0;
    for (size_t i = 0; uncertain_constant(i) != NULL; i++) {
        const uncertain_thing *t = uncertain_constant(i);
        char line[200];
        snprintf(line, sizeof line, "%s = %g %s to %g %s", t->words, t->within.low, t->within.unit ? t->within.unit : "",
                 t->within.high, t->within.unit ? t->within.unit : "");
        assert_string_equal(of(line).thing.words, t->words);
        named++;
    }
    assert_int_equal(named, 8);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(four_spreads_are_read_in_si),
        cmocka_unit_test(constants_of_the_model_are_uncertain),
        cmocka_unit_test(of_two_dimensions_the_first_value_says_which),
        cmocka_unit_test(spellings_vary),
        cmocka_unit_test(nonsense_is_refused),
        cmocka_unit_test(grids_have_steps),
        cmocka_unit_test(every_name_is_known),
    };
    return cmocka_run_group_tests_name("uncertain", tests, NULL, NULL);
}
