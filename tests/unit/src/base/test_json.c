/* JSON as RFC 8259 writes it. */
#include "support/close.h"

#include "base/json.h"
#include "support/printed.h"

static void strings_are_escaped(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    json j = json_to(p.to);
    json_text(&j, NULL, "a \"quote\" \\ \n \x01 \x7f \u00b0F \xff \xed\xa0\x80 \xc2\x9b \u202e \U000E0041");
    char *got = printed_end(&p);
    assert_string_equal(got, "\"a \\\"quote\\\" \\\\ \\u000a \\u0001 \\u007f \u00b0F \\ufffd \\ufffd\\ufffd\\ufffd \\u009b "
                             "\\u202e \\udb40\\udc41\"");
    free(got);
}

static void numbers_keep_nine_digits_and_nan_is_null(void **state)
{
    (void)state;
    const double x[] = {1.0 / 3, 1e-300, -0.0, (double)NAN, (double)INFINITY, -(double)INFINITY, 413.70555555};
    const char *const text[] = {"0.333333333", "1e-300", "0", "null", "null", "null", "413.705556"};
    for (size_t i = 0; i < sizeof x / sizeof x[0]; i++) {
        printed p;
        printed_begin(&p);
        json j = json_to(p.to);
        json_number(&j, NULL, x[i]);
        char *got = printed_end(&p);
        assert_string_equal(got, text[i]);
        free(got);
    }
}

static void objects_and_lists_nest(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    json j = json_to(p.to);
    json_object(&j, NULL);
    json_list(&j, "empty");
    json_close(&j);
    json_list(&j, "loads");
    json_object(&j, NULL);
    json_bool(&j, "was_quiet", true);
    json_close(&j);
    json_text(&j, NULL, NULL);
    json_close(&j);
    json_close(&j);
    char *got = printed_end(&p);
    assert_string_equal(got,
                        "{\n  \"empty\": [],\n  \"loads\": [\n    {\n      \"was_quiet\": true\n    },\n    null\n  ]\n}\n");
    free(got);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strings_are_escaped),
        cmocka_unit_test(numbers_keep_nine_digits_and_nan_is_null),
        cmocka_unit_test(objects_and_lists_nest),
    };
    return cmocka_run_group_tests_name("json", tests, NULL, NULL);
}
