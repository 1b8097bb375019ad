/* Quantities and text as people read them. Expected texts are worked out by hand from exact factors: 1 in = 25.4 mm,
   1 lb = 0.45359237 kg, 1 gal = 231 in3. */
#include "support/close.h"

#include <string.h>

#include "base/format.h"
#include "base/text.h"
#include "support/printed.h"

static void lengths_and_temperatures_have_one_decimal(void **state)
{
    (void)state;
    assert_string_equal(format_quantity(UNITS_US, DIM_LENGTH, 7.13 * 0.0254).text, "7.1 in");
    assert_string_equal(format_quantity(UNITS_SI, DIM_LENGTH, 0.1812).text, "181 mm");
    assert_string_equal(format_quantity(UNITS_US, DIM_TEMPERATURE, (285 - 32) / 1.8 + 273.15).text, "285.0 degF");
    assert_string_equal(format_quantity(UNITS_SI, DIM_TEMPERATURE, 413.71).text, "140.6 degC");
    assert_string_equal(format_quantity(UNITS_US, DIM_DIFFERENCE, 10).text, "18.0 degF");
    assert_string_equal(format_number(UNITS_US, DIM_LENGTH, 0.66).text, "26.0");
    assert_string_equal(format_quantity(UNITS_US, DIM_LENGTH, 1e-3).text, "0.04 in");
    assert_string_equal(format_quantity(UNITS_SI, DIM_LENGTH, 0.4e-3).text, "0.4 mm");
    assert_string_equal(format_quantity(UNITS_SI, DIM_LENGTH, 1e-3).text, "1 mm");
    assert_string_equal(format_unit(UNITS_US, DIM_LENGTH), "in");
}

static void masses_have_three_digits(void **state)
{
    (void)state;
    const double kg[] = {0, 1e-5, 0.01234, 0.9996, 9.994, 9.996, 99.94, 99.96, 1234.4};
    const char *const text[] = {"0 kg", "0 kg", "0.012 kg", "1.00 kg", "9.99 kg", "10.0 kg", "99.9 kg", "100 kg", "1234 kg"};
    for (size_t i = 0; i < sizeof kg / sizeof kg[0]; i++)
        assert_string_equal(format_quantity(UNITS_SI, DIM_MASS, kg[i]).text, text[i]);
    assert_string_equal(format_quantity(UNITS_US, DIM_MASS, 45.359237).text, "100 lb");
    assert_string_equal(format_quantity(UNITS_US, DIM_CONCENTRATION, 719.0).text, "6.00 lb/gal");
}

static void nothing_is_negative_zero(void **state)
{
    (void)state;
    assert_string_equal(format_quantity(UNITS_US, DIM_LENGTH, -1e-5).text, "0.0 in");
    assert_string_equal(format_duration(-0.2).text, "0 s");
    assert_string_equal(format_quantity(UNITS_US, DIM_LENGTH, -0.0254).text, "-1.0 in");
}

static void what_is_not_there_is_a_dash(void **state)
{
    (void)state;
    assert_string_equal(format_quantity(UNITS_US, DIM_MASS, (double)NAN).text, "-");
    assert_string_equal(format_quantity(UNITS_SI, DIM_LENGTH, (double)INFINITY).text, "-");
    assert_string_equal(format_exact(UNITS_US, DIM_LENGTH, (double)NAN).text, "-");
    assert_string_equal(format_duration((double)NAN).text, "-");
    assert_string_equal(format_clock(0, (double)NAN).text, "-");
    assert_string_equal(format_ratio((double)INFINITY).text, "-");
}

static void spans_change_their_unit(void **state)
{
    (void)state;
    const double s[] = {0.4, 45, 99.4, 120, 121, 150, 270, 5960, 6000, 9000};
    const char *const text[] = {"0 s", "45 s", "99 s", "2 min", "2 min", "2.5 min", "4.5 min", "99.3 min", "1.7 h", "2.5 h"};
    for (size_t i = 0; i < sizeof s / sizeof s[0]; i++)
        assert_string_equal(format_duration(s[i]).text, text[i]);
}

static void the_clock_cuts_to_the_minute_and_passes_midnight(void **state)
{
    (void)state;
    assert_string_equal(format_clock(6 * 3600.0, 82 * 60.0 + 59).text, "7:22");
    assert_string_equal(format_clock(0, 300 - 1e-9).text, "0:05");
    assert_string_equal(format_clock(23 * 3600.0, 3600).text, "0:00+1d");
    assert_string_equal(format_clock(23 * 3600.0, 49 * 3600.0).text, "0:00+3d");
}

static void exact_values_keep_what_was_written(void **state)
{
    (void)state;
    assert_string_equal(format_exact(UNITS_US, DIM_LENGTH, 0.00635).text, "0.25 in");
    assert_string_equal(format_exact(UNITS_SI, DIM_LENGTH, 0.00635).text, "6.35 mm");
    assert_string_equal(format_exact(UNITS_US, DIM_LENGTH, 900 * 0.3048).text, "900 ft");
    assert_string_equal(format_exact(UNITS_SI, DIM_FRACTION, 0.6).text, "60 %");
    assert_string_equal(format_exact(UNITS_SI, DIM_MASS, 12345.6).text, "12346 kg"); /* no power of ten */
}

static void counts_agree_with_their_noun(void **state)
{
    (void)state;
    assert_string_equal(format_count(1, "load", "loads").text, "1 load");
    assert_string_equal(format_count(0, "load", "loads").text, "0 loads");
}

static void a_cell_is_as_wide_as_asked(void **state)
{
    (void)state;
    assert_string_equal(text_fitted("short", 8).text, "short   ");
    assert_string_equal(text_fitted("load 100 lb, plate 1/4 in, at 90 degF", 20).text, "load 100 lb...      ");
    assert_string_equal(text_fitted("90 \u00b0F", 7).text, "90 \u00b0F  ");
    assert_string_equal(text_fitted("a\033[31mb", 8).text, "a?[31mb ");
    assert_string_equal(text_plain("bad \xff byte, \xc2\x9b control").text, "bad ? byte, ? control");
}

static void utf8_is_told_from_other_bytes(void **state)
{
    (void)state;
    assert_int_equal(text_character("a"), 1);
    assert_int_equal(text_character("\u00b0"), 2);
    assert_int_equal(text_character("\u20ac"), 3);
    assert_int_equal(text_character("\U0001F600"), 4);
    assert_int_equal(text_character(""), 0);
    const char *const broken[] = {"\x80",    "\xc1\x80", "\xe0\x80\x80", "\xed\xa0\x80", "\xf0\x80\x80\x80", "\xf4\x90\x80\x80",
                                  "\xe2\x82"};
    for (size_t i = 0; i < sizeof broken / sizeof broken[0]; i++)
        assert_int_equal(text_character(broken[i]), 0);
}

static void wrapped_text_keeps_its_words_and_its_width(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    text_wrapped(p.to, "one two three four anextraordinarilylongword five", 0, 2, 14);
    char *got = printed_end(&p);
    assert_string_equal(got, "  one two\n  three four\n  anextraordin\n  arilylongwor\n  d five\n");
    free(got);
    printed_begin(&p);
    fputs("worst", p.to);
    assert_int_equal(text_wrapped(p.to, "\u00fcberlang \u00e4\u00f6\u00fc\u00e4\u00f6\u00fc\u00e4\u00f6", 5, 2, 10), 3);
    got = printed_end(&p);
    assert_string_equal(got, "worst\n  \u00fcberlang\n  \u00e4\u00f6\u00fc\u00e4\u00f6\u00fc\u00e4\u00f6\n");
    free(got);
    printed_begin(&p);
    text_wrapped(p.to, "back after 60.8 min", 0, 0, 16);
    got = printed_end(&p);
    assert_string_equal(got, "back after\n60.8 min\n");
    free(got);
    printed_begin(&p);
    text_wrapped(p.to, "", 0, 2, 14);
    got = printed_end(&p);
    assert_string_equal(got, "\n");
    free(got);
}

static void assert_pair(unit_system s, unit_dimension d, double value, double limit, const char *shown, const char *of)
{
    format_pair p = format_value_and_limit(s, d, value, limit);
    assert_string_equal(p.value.text, shown);
    assert_string_equal(p.limit.text, of);
}

static void a_value_and_its_limit_never_look_alike(void **state)
{
    (void)state;
    assert_pair(UNITS_US, DIM_TEMPERATURE, (304.4 - 32) / 1.8 + 273.15, (295.0 - 32) / 1.8 + 273.15, "304.4 degF", "295.0");
    assert_pair(UNITS_US, DIM_TEMPERATURE, (295.03 - 32) / 1.8 + 273.15, (295.0 - 32) / 1.8 + 273.15, "295.03 degF", "295.00");
    assert_pair(UNITS_US, DIM_CONCENTRATION, 1.78 * 119.826427, 0.5 * 119.826427, "1.78 lb/gal", "0.50");
    assert_pair(UNITS_US, DIM_MASS, 16.7 * 0.45359237, 0.05 * 0.45359237, "16.70 lb", "0.05");
    assert_pair(UNITS_SI, DIM_LENGTH, 0.1501, 0.150, "150.1 mm", "150.0");
    assert_pair(UNITS_US, DIM_TIME, 9.2 * 60, 120, "9.2 min", "2.0");
    assert_pair(UNITS_US, DIM_TIME, 121.6, 120, "2 min 1.6 s", "2 min 0.0 s");
    assert_pair(UNITS_US, DIM_TIME, 94, 90, "94 s", "90");
    assert_pair(UNITS_US, DIM_COUNT, 3.56, 1, "x3.6", "x1.0");
    assert_pair(UNITS_US, DIM_COUNT, 1.04, 1, "x1.04", "x1.00");
    assert_pair(UNITS_US, DIM_LENGTH, 0.2, 0.2, "7.9 in", "7.9");
    assert_pair(UNITS_US, DIM_LENGTH, (double)NAN, 0.2, "-", "-");
}

static void clocks_have_seconds_where_there_are_any(void **state)
{
    (void)state;
    assert_string_equal(format_clock_exact(32400, 391.4).text, "9:06:31");
    assert_string_equal(format_clock_exact(32400, 360).text, "9:06");
    assert_string_equal(format_clock_exact(32400, 359.9999999).text, "9:06"); /* an act at 9:06 is not at 9:05:59 */
    assert_string_equal(format_clock_exact(79200, 8405).text, "0:20:05+1d");
    assert_string_equal(format_clock_seconds(32400, 360).text, "9:06:00");
    assert_string_equal(format_clock_seconds(79200, 8400).text, "0:20:00+1d");
    assert_string_equal(format_bare(UNITS_US, DIM_TEMPERATURE, (295.0 - 32) / 1.8 + 273.15).text, "295");
    assert_string_equal(format_bare(UNITS_SI, DIM_TEMPERATURE, 419.26).text, "146.1");
}

static void what_a_report_cannot_tell_apart_is_the_same(void **state)
{
    (void)state;
    assert_true(format_same(DIM_TIME, 120, 121) && !format_same(DIM_TIME, 120, 121.1));
    assert_true(format_same(DIM_TEMPERATURE, 413.70, 413.74) && !format_same(DIM_TEMPERATURE, 413.70, 413.76));
    assert_true(format_same(DIM_LENGTH, 0.5, 0.5009) && !format_same(DIM_LENGTH, 0.5, 0.5011));
    assert_true(format_same(DIM_MASS, 0.001, 0.005) && format_same(DIM_MASS, 100, 100.09) &&
                !format_same(DIM_MASS, 100, 100.2));
    assert_true(format_same(DIM_POWER, 1000, 1004) && !format_same(DIM_POWER, 1000, 1006));
    assert_true(format_same(DIM_TIME, (double)NAN, (double)NAN) && !format_same(DIM_TIME, (double)NAN, 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_value_and_its_limit_never_look_alike),
        cmocka_unit_test(what_a_report_cannot_tell_apart_is_the_same),
        cmocka_unit_test(clocks_have_seconds_where_there_are_any),
        cmocka_unit_test(lengths_and_temperatures_have_one_decimal),
        cmocka_unit_test(masses_have_three_digits),
        cmocka_unit_test(nothing_is_negative_zero),
        cmocka_unit_test(what_is_not_there_is_a_dash),
        cmocka_unit_test(spans_change_their_unit),
        cmocka_unit_test(the_clock_cuts_to_the_minute_and_passes_midnight),
        cmocka_unit_test(exact_values_keep_what_was_written),
        cmocka_unit_test(counts_agree_with_their_noun),
        cmocka_unit_test(a_cell_is_as_wide_as_asked),
        cmocka_unit_test(utf8_is_told_from_other_bytes),
        cmocka_unit_test(wrapped_text_keeps_its_words_and_its_width),
    };
    return cmocka_run_group_tests_name("show", tests, NULL, NULL);
}
