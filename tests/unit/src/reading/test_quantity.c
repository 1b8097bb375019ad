/* The numbers of the scenario language: what is accepted, with which value, and what is refused, with which words. */
#include "support/close.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "reading/quantity.h"

/* One line of text to read from. */
typedef struct {
    messages messages;
    source source;
    source_line line;
    cursor cursor;
} bench;

static void bench_open(bench *b, const char *text)
{
    static char name[] = "text";
    messages_init(&b->messages);
    b->line = (source_line){text, strlen(text)};
    b->source = (source){.name = name, .lines = &b->line, .count = 1};
    b->cursor = cursor_of_line(&b->source, 1, &b->messages);
}

typedef bool reader(cursor *c, const char *what, quantity *q);

static bool length(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_LENGTH), q);
}

static bool temperature(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_TEMPERATURE), q);
}

static bool pressure(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_PRESSURE), q);
}

static bool power(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_POWER), q);
}

static bool concentration(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_CONCENTRATION), q);
}

static bool amount(cursor *c, const char *what, quantity *q)
{
    return quantity_read(c, what, UNIT_OF(DIM_VOLUME) | UNIT_OF(DIM_MASS), q);
}

static void accepts(reader *read, const char *text, double si)
{
    bench b;
    quantity q;
    bench_open(&b, text);
    bool good = read(&b.cursor, "x", &q) && cursor_expect_end(&b.cursor);
    if (!good)
        fail_msg("'%s' refused: %s", text, b.messages.list[0].text);
    assert_close(q.si, si, 1e-14, 0);
    assert_int_equal(b.messages.count, 0);
    messages_free(&b.messages);
}

/* The message holds `words` and points at a column. */
static void refuses(reader *read, const char *text, size_t column, const char *words)
{
    bench b;
    quantity q;
    bench_open(&b, text);
    bool good = read(&b.cursor, "x", &q) && cursor_expect_end(&b.cursor);
    if (good)
        fail_msg("'%s' accepted", text);
    assert_int_equal(b.messages.count, 1);
    if (strstr(b.messages.list[0].text, words) == NULL || b.messages.list[0].column != column)
        fail_msg("'%s': column %zu: %s", text, b.messages.list[0].column, b.messages.list[0].text);
    messages_free(&b.messages);
}

static void numbers_are_plain(void **state)
{
    (void)state;
    accepts(length, "2 m", 2);
    accepts(length, "2m", 2);
    accepts(length, "-2.50 m", -2.5);
    accepts(length, "25e-1 m", 2.5);
    accepts(length, "2e+1 m", 20);
    accepts(length, "2\t\u00a0m  # two", 2);
    refuses(length, "1,5 m", 2, "'1,5' has a decimal comma: for");
    refuses(length, "1,000 m", 2, "'1,000' has a comma: for");
    refuses(length, "0x10 m", 2, "'x10' is no unit");
    refuses(length, "inf m", 1, "needs a number, for example 24 in, got 'inf'");
    refuses(length, "nan m", 1, "needs a number");
    refuses(length, "+2 m", 1, "needs a number");
    refuses(length, ".5 m", 1, "needs a number");
    refuses(length, "5. m", 2, "'.' is no unit");
    refuses(length, "1e999 m", 1, "too large");
    refuses(length, "1000000000000000000000000000000000000000000000000000000000000 m", 1, "too large or too long");
    refuses(length, "", 1, "has no value");
}

static void fractions_are_read(void **state)
{
    (void)state;
    accepts(length, "1/4 in", 0.25 * 0.0254);
    accepts(length, "1 1/4 in", 1.25 * 0.0254);
    accepts(length, "1   1/4in", 1.25 * 0.0254);
    refuses(length, "1/0 in", 1, "divided by something");
    refuses(length, "0/4 in", 1, "must be positive");
    refuses(length, "-1/4 in", 3, "'/4' is no unit");
    refuses(length, "1/4/2 in", 4, "'/2' is no unit");
    refuses(length, "1.5 1/4 in", 5, "'1/4' is no unit");
}

static void a_unit_is_needed_and_must_fit(void **state)
{
    (void)state;
    refuses(length, "26", 3, "'x' needs a unit, for example 24 in");
    refuses(length, "26 kg", 4, "'kg' is a mass, but 'x' is a length: use m, cm, mm, in or ft");
    refuses(length, "26 IN", 4, "did you mean 'in'?");
    refuses(length, "26 in deep", 7, "'deep' is not expected here");
    refuses(length, "26 in2", 4, "'in2' is an area");
    refuses(amount, "2 gal/h", 3, "'gal/h' is a volume flow, but 'x' is a volume or a mass");
    accepts(amount, "2 lb", 2 * 0.45359237);
    refuses(temperature, "285 F", 5, "write degF");
    accepts(temperature, "285 \u00b0F", (285 + 459.67) * 5 / 9);
    accepts(temperature, "-40 degF", 233.15);
    refuses(pressure, "14 psi", 4, "psia");
    refuses(pressure, "14 psig", 4, "psia");
    refuses(power, "500 MBtu/h", 5, "kBtu/h or MMBtu/h");
    refuses(power, "500 MBH", 5, "kBtu/h or MMBtu/h");
    refuses(power, "5 ton", 3, "kW");
    refuses(power, "5 cal", 3, "kW");
    refuses(amount, "5 ton", 3, "t (1000 kg)");
}

static void per_divides(void **state)
{
    (void)state;
    const double gallon = 231 * 0.0254 * 0.0254 * 0.0254;
    accepts(concentration, "1 lb per 2 gal", 0.45359237 / 2 / gallon);
    accepts(concentration, "1/2 lb per 1 1/2 gal", 0.45359237 / 3 / gallon);
    accepts(concentration, "6 lb/gal", 6 * 0.45359237 / gallon);
    refuses(concentration, "1 lb per gal", 10, "'per' needs a number, for example 2 gal");
    refuses(concentration, "1 lb per 2 kg", 12, "'kg' is a mass, but 'per' is a volume");
    refuses(concentration, "1 lb per -2 gal", 10, "positive");
    refuses(concentration, "1 lb", 3, "'lb' is a mass");
    refuses(length, "1 m per 2 m", 5, "'per 2 m' is not expected here");
}

static void a_percentage_has_its_sign(void **state)
{
    (void)state;
    accepts(quantity_share, "60 %", 0.6);
    accepts(quantity_share, "60%", 0.6);
    refuses(quantity_share, "0.6", 4, "needs its sign, for example 60 %");
    refuses(quantity_share, "1/2 %", 2, "needs its sign");
    accepts(quantity_factor, "0.9", 0.9);
    refuses(quantity_factor, "90 %", 4, "bare number");
}

static void a_clock_says_when(void **state)
{
    (void)state;
    accepts(quantity_when, "0:05", 300);
    accepts(quantity_when, "1:30:15", 5415);
    accepts(quantity_when, "100:00", 360000);
    accepts(quantity_when, "90 min", 5400);
    refuses(quantity_when, "0:5", 1, "needs a clock");
    refuses(quantity_when, "0:60", 1, "needs a clock");
    refuses(quantity_when, "0:05:5", 1, "needs a clock");
    refuses(quantity_when, "6:00am", 1, "needs a clock");
    refuses(quantity_when, "-1:30", 1, "a clock such as 1:30 says only when");
    refuses(length, "1:30", 1, "a clock such as 1:30 says only when");
}

static void bounds_are_named_in_both_units(void **state)
{
    (void)state;
    const bounds depth = {"m", 0.1, 5};
    bench b;
    quantity q;
    bench_open(&b, "-3 in");
    assert_true(length(&b.cursor, "depth", &q));
    assert_false(quantity_within(&b.cursor, "depth", &q, &depth));
    assert_string_equal(b.messages.list[0].text, "'depth' must be between 0.1 m and 5 m, got '-3 in' (3.937 in to 196.9 in)");
    messages_free(&b.messages);
    bench_open(&b, "500 cm");
    assert_true(length(&b.cursor, "depth", &q) && quantity_within(&b.cursor, "depth", &q, &depth));
    bench_open(&b, "5.01 m");
    assert_true(length(&b.cursor, "depth", &q));
    assert_false(quantity_within(&b.cursor, "depth", &q, &depth));
    assert_string_equal(b.messages.list[0].text, "'depth' must be between 0.1 m and 5 m, got '5.01 m'");
    messages_free(&b.messages);
    const bounds bare = {NULL, -1, 1};
    bench_open(&b, "1.5 m");
    assert_true(length(&b.cursor, "depth", &q));
    assert_false(quantity_within(&b.cursor, "depth", &q, &bare));
    assert_string_equal(b.messages.list[0].text, "'depth' must be between -1 and 1, got '1.5 m'");
    messages_free(&b.messages);
}

static const char *nearest(const char *text, const char *const *known)
{
    words_nearest n = words_near(text, strlen(text));
    for (; *known != NULL; known++)
        words_consider(&n, *known);
    return n.word != NULL ? n.word : "none";
}

static void the_nearest_word_is_found(void **state)
{
    (void)state;
    const char *const known[] = {"depth", "level", "boiling point", "wall", NULL};
    assert_string_equal(nearest("dpeth", known), "depth");
    assert_string_equal(nearest("boling  Point", known), "boiling point");
    assert_string_equal(nearest("levels", known), "level");
    assert_string_equal(nearest("colour", known), "none");
    assert_string_equal(nearest("", known), "none");
    assert_true(words_same(" Boiling \t\u00a0 POINT ", 19, "boiling point"));
    assert_false(words_same("boilingpoint", 12, "boiling point"));
}

/* Columns count characters; quotes are cut between them. */
static void text_outside_ascii_keeps_its_place(void **state)
{
    (void)state;
    refuses(temperature, "\u00a0 285 \u00b0 G\u00e9", 7, "'\u00b0' does not say whose degree");
    refuses(length,
            "\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9"
            "\u00e9\u00e9"
            "\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9\u00e9",
            1, "\u00e9\u00e9...'");
}

/* Whatever its digits a number is what the C library's strtod, right to the last bit, makes of it. */
static void every_number_is_the_nearest_there_is(void **state)
{
    (void)state;
    unsigned long x = 1;
    for (int i = 0; i < 20000; i++) {
        char text[40];
        bench b;
        double value = -1;
        x = x * 6364136223846793005ul + 1442695040888963407ul;
        unsigned long digits = x >> 11;
        for (int k = i % 16; k > 0; k--)
            digits /= 10;
        snprintf(text, sizeof text, "%lu.%0*lu", digits % 1000000000, 1 + i % 9, (x >> 40) % 1000000);
        bench_open(&b, text);
        assert_true(quantity_number(&b.cursor, "amount", &value));
        assert_true(value == strtod(text, NULL));
        messages_free(&b.messages);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_plain),
        cmocka_unit_test(fractions_are_read),
        cmocka_unit_test(every_number_is_the_nearest_there_is),
        cmocka_unit_test(a_unit_is_needed_and_must_fit),
        cmocka_unit_test(per_divides),
        cmocka_unit_test(a_percentage_has_its_sign),
        cmocka_unit_test(a_clock_says_when),
        cmocka_unit_test(bounds_are_named_in_both_units),
        cmocka_unit_test(the_nearest_word_is_found),
        cmocka_unit_test(text_outside_ascii_keeps_its_place),
    };
    return cmocka_run_group_tests_name("quantity", tests, NULL, NULL);
}
