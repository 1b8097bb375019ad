/* A record written by a table of its fields: JSON as RFC 8259 has it, CSV as RFC 4180 (section 2: quotes and what needs them). */
#include "support/close.h"

#include <string.h>

#include "base/field.h"
#include "support/printed.h"

typedef enum { ON, OFF, AWAY } way;

typedef struct {
    double mass_kg;
} item;

typedef struct {
    double time_s, never_s;
    size_t runs;
    bool boils;
    const char *title;
    char name[40];
    way way;
    item there, gone;
    item list[2];
    size_t list_count;
    double shares[2];
    size_t shares_count;
} record;

static const char *const ways[] = {[ON] = "on", [OFF] = "off", [AWAY] = NULL};

static bool is_heavy(const void *of)
{
    return ((const item *)of)->mass_kg > 1;
}

static bool has_runs(const void *of)
{
    return ((const record *)of)->runs > 0;
}

static double twice(const void *of)
{
    return 2 * ((const record *)of)->time_s;
}

/* clang-format off */
#define RECORD item
static const field item_fields[] = {SAME(mass_kg, "mass"), FIELDS_END};
#undef RECORD

#define RECORD record
static const field part[] = {COUNT("runs", runs, "how many"), FIELDS_END};
static const field all[] = {
    SAME(time_s, "when"), NUMBER("never", never_s, "never"), WORKED_OUT("twice_s", twice, "worked out"),
    PART_IF(part, has_runs), BOOL("boils", boils, "it boils"), TEXT("title", title, "title"), CHARS("name", name, "name"),
    WORD("way", way, ways, "which"), OBJECT_IF("there", there, item_fields, is_heavy, "heavy"),
    OBJECT_IF("gone", gone, item_fields, is_heavy, "light"), ARRAY("list", list, list_count, item_fields, "items"),
    NUMBERS("shares", shares, shares_count, "shares"), FIELDS_END};
static const field flat[] = {
    SAME(time_s, "when"), SAME(never_s, "never"), COUNT("runs", runs, "how many"), BOOL("boils", boils, "it boils"),
    TEXT("title", title, "title"), CHARS("name, as \"given\"", name, "name"), WORD("way", way, ways, "which"), FIELDS_END};
#undef RECORD
/* clang-format on */

static record one(void)
{
    return (record){.time_s = 1.5,
                    .never_s = (double)NAN,
                    .runs = 3,
                    .boils = true,
                    .title = "two \"big\"\nones",
                    .name = "a, b",
                    .way = OFF,
                    .there = {2},
                    .gone = {0.5},
                    .list = {{7}, {8}},
                    .list_count = 2,
                    .shares = {0.25, -0.0},
                    .shares_count = 2};
}

static void json_has_every_kind(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    record r = one();
    json_document(all, &r, p.to);
    char *got = printed_end(&p);
    assert_string_equal(got,
                        "{\n  \"time_s\": 1.5,\n  \"never\": null,\n  \"twice_s\": 3,\n  \"runs\": 3,\n  \"boils\": true,\n"
                        "  \"title\": \"two \\\"big\\\"\\u000aones\",\n  \"name\": \"a, b\",\n  \"way\": \"off\",\n"
                        "  \"there\": {\n    \"mass_kg\": 2\n  },\n  \"gone\": null,\n  \"list\": [\n    {\n"
                        "      \"mass_kg\": 7\n    },\n    {\n      \"mass_kg\": 8\n    }\n  ],\n"
                        "  \"shares\": [\n    0.25,\n    0\n  ]\n}\n");
    free(got);
}

static void what_is_not_there_is_left_out_or_null(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    record r = one();
    r.runs = 0;
    r.title = NULL;
    r.way = AWAY;
    json_document(all, &r, p.to);
    char *got = printed_end(&p);
    assert_null(strstr(got, "runs"));
    assert_non_null(strstr(got, "\"title\": null"));
    assert_non_null(strstr(got, "\"way\": null"));
    free(got);
}

static void csv_quotes_what_must_be(void **state)
{
    (void)state;
    printed p;
    printed_begin(&p);
    record r[2] = {one(), one()};
    r[1].title = NULL;
    r[1].name[0] = '\0';
    csv_document(p.to, flat, r, 2, sizeof r[0]);
    char *got = printed_end(&p);
    assert_string_equal(got, "time_s,never_s,runs,boils,title,\"name, as \"\"given\"\"\",way\n"
                             "1.5,,3,1,\"two \"\"big\"\"\nones\",\"a, b\",off\n"
                             "1.5,,3,1,,,off\n");
    free(got);
}

static void unit_is_the_ending_of_a_key(void **state)
{
    (void)state;
    assert_string_equal(field_unit("strength_kg_m3"), "kg/m3");
    assert_string_equal(field_unit("water_kg"), "kg");
    assert_string_equal(field_unit("rate_kg_s"), "kg/s");
    assert_string_equal(field_unit("heat_capacity_J_kgK"), "J/(kg K)");
    assert_string_equal(field_unit("bath_m3"), "m3");
    assert_string_equal(field_unit("water_per_salts"), "");
    assert_string_equal(field_unit("_s"), "");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(json_has_every_kind),
        cmocka_unit_test(what_is_not_there_is_left_out_or_null),
        cmocka_unit_test(csv_quotes_what_must_be),
        cmocka_unit_test(unit_is_the_ending_of_a_key),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
