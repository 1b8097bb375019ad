/* Every kind of action has a row, by which it is read back and spoken of. The language is our own: no source outside. */
#include "support/close.h"

#include <math.h>
#include <string.h>

#include "actions/action.h"

/* An action as a person writes it, against a plant at 20 degC whose bath is not known. */
typedef struct {
    messages messages;
    source source;
    source_line text;
    boil_plant plant;
    action_reader reader;
    action_line line;
    boil_action action;
} bench;

static bool bench_read(bench *b, const char *text)
{
    static char name[] = "text";
    *b = (bench){.plant = boil_plant_default(), .text = {text, strlen(text)}};
    messages_init(&b->messages);
    b->plant.ambient.temperature_K = 293.15;
    b->reader.plant = &b->plant;
    b->reader.names.kept[1] = true; /* under the first name, whatever it is */
    b->source = (source){.name = name, .lines = &b->text, .count = 1};
    cursor c = cursor_of_line(&b->source, 1, &b->messages);
    b->line.place = c;
    return action_read(&b->reader, &c, &b->action, &b->line);
}

static void bench_close(bench *b)
{
    load_names_free(&b->reader.names);
    messages_free(&b->messages);
}

static const struct {
    const char *text, *words;
    boil_action_kind kind;
    double takes_s; /* NaN: settled with the bath, which is not known here */
} written[] = {
    {"load 100 lb, plate 1/4 in, lowered over 12 s", "100 lb of 1/4 in plate", BOIL_ACTION_LOAD, 12},
    {"load 100 lb iron, bar 1 in, as A", "100 lb of 1 in iron bar (A)", BOIL_ACTION_LOAD, (double)NAN},
    {"load 1 1/4 lb, plate 1/4 in", "1.25 lb of 1/4 in plate", BOIL_ACTION_LOAD, (double)NAN},
    {"load 1234567/8 lb, plate 1/4 in", "1234567/8 lb of 1/4 in plate", BOIL_ACTION_LOAD, (double)NAN},
    {"lift", "lift everything", BOIL_ACTION_LIFT, 0},
    {"lift rack 3", "lift rack 3", BOIL_ACTION_LIFT, 0},
    {"water 2 gal over 4 min", "2 gal of water over 4 min", BOIL_ACTION_WATER, 240},
    {"water 2 gal at 30 gal/h", "2 gal of water at 30 gal/h", BOIL_ACTION_WATER, 240},
    {"salts 6 lb over 3 min, at 60 degF", "6 lb of salts over 3 min", BOIL_ACTION_SALTS, 180},
    {"liquid 4 gal over 2 min", "4 gal of liquid over 2 min", BOIL_ACTION_LIQUID, (double)NAN},
    {"heat 60 %", "heat 60 %", BOIL_ACTION_HEAT, 0},
    {"heat thermostat 250 degF", "heat thermostat 250 degF", BOIL_ACTION_HEAT, 0},
    {"heat dial", "heat dial", BOIL_ACTION_HEAT, 0},
    {"mixer on", "mixer on", BOIL_ACTION_MIXER, 0},
    {"lid off", "lid off", BOIL_ACTION_LID, 0},
    {"exhaust off", "exhaust off", BOIL_ACTION_EXHAUST, 0},
    {"crust broken", "crust broken up", BOIL_ACTION_CRUST, 0},
    {"bail 5 gal over 5 min, as drum 1", "bail 5 gal over 5 min", BOIL_ACTION_BAIL, 0},
    {"bail 1 gal over 2 min, from the surface", "bail 1 gal over 2 min, from the surface", BOIL_ACTION_BAIL, 0},
    {"drain 5 gal at 2 gal/min", "drain 5 gal at 2 gal/min", BOIL_ACTION_DRAIN, 0},
    {"stir for 2 min", "stir for 2 min", BOIL_ACTION_STIR, 120},
    {"return drum 1 over 10 min", "return drum 1 over 10 min", BOIL_ACTION_RETURN, 600},
};

#define WRITTEN (sizeof written / sizeof written[0])

static void an_action_is_read_by_its_row(void **state)
{
    (void)state;
    for (size_t i = 0; i < WRITTEN; i++) {
        bench b;
        assert_true(bench_read(&b, written[i].text));
        assert_int_equal(b.action.kind, written[i].kind);
        assert_string_equal(b.line.words, written[i].words);
        if (!isnan(written[i].takes_s))
            assert_close(action_takes_s(&b.action), written[i].takes_s, 1e-9, 0);
        bench_close(&b);
    }
}

/* What the run has results of must be able to say so, and every keyword stands in the table above. */
static void a_row_is_whole(void **state)
{
    const action_type *type;
    (void)state;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++) {
        bool has_results = type->group == ACTION_LOAD || type->group == ACTION_ADDITION, seen = false;
        assert_true(type->form != NULL && type->meaning != NULL && type->parse != NULL);
        assert_true((type->caution != NULL) != (type->caution_of != NULL));
        assert_true(has_results == (type->expected != NULL) && has_results == (type->when_quiet != NULL));
        assert_true(!has_results || (type->takes_at > 0 && type->details != NULL));
        for (size_t k = 0; k < WRITTEN; k++)
            seen = seen || action_type_of(written[k].kind) == type;
        assert_true(seen);
    }
}

static void words_of_additions_are_their_keywords(void **state)
{
    const action_type *type;
    (void)state;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++) {
        const char *word = i < sizeof action_addition_words / sizeof action_addition_words[0] ? action_addition_words[i] : NULL;
        assert_true((type->group == ACTION_ADDITION) == (word != NULL));
        if (word != NULL)
            assert_string_equal(word, type->keyword);
    }
}

static void an_unknown_act_is_told_all_that_are_known(void **state)
{
    bench b;
    const action_type *type;
    (void)state;
    assert_false(bench_read(&b, "wtaer 2 gal over 4 min"));
    assert_int_equal(b.messages.count, 1);
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        assert_non_null(strstr(b.messages.list[0].text, type->keyword));
    assert_non_null(strstr(b.messages.list[0].text, "did you mean 'water'?"));
    bench_close(&b);
}

/* Each as it stands the first time, in whatever case and however many blanks the next. It stands in no line. */
static int name_read(bench *b, load_names *names, const char *text)
{
    cursor c = {&b->messages, &b->source, 0, text, text + strlen(text)};
    return load_names_read(names, &c);
}

static void every_name_is_found_again(void **state)
{
    bench b;
    load_names names = {0};
    char text[40];
    (void)state;
    bench_read(&b, "lift");
    for (int i = 1; i <= LOAD_NAMES_MAX; i++) {
        snprintf(text, sizeof text, "Rack %d b", i);
        assert_int_equal(name_read(&b, &names, text), i);
    }
    for (int i = 1; i <= LOAD_NAMES_MAX; i++) {
        snprintf(text, sizeof text, "  raCK \t %d  B ", i);
        assert_int_equal(name_read(&b, &names, text), i);
    }
    assert_int_equal(b.messages.count, 0);
    assert_int_equal(name_read(&b, &names, "rack 1 bb"), 0);
    assert_int_equal(b.messages.count, 1);
    assert_non_null(strstr(b.messages.list[0].text, "more than 1000 names"));
    assert_int_equal(name_read(&b, &names, "rack 7 b"), 7);
    assert_string_equal(load_names_word(&names, 7), "Rack 7 b");
    load_names_free(&names);
    bench_close(&b);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_action_is_read_by_its_row),
        cmocka_unit_test(a_row_is_whole),
        cmocka_unit_test(words_of_additions_are_their_keywords),
        cmocka_unit_test(an_unknown_act_is_told_all_that_are_known),
        cmocka_unit_test(every_name_is_found_again),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
