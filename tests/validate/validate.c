/* validate/validate.c -- the model against what others print and measured. Writes the table to VALIDATE_TO.txt and .csv where
   that is set, else the text to its output; fails where a row is not as its table says. */
#include "validate/validate.h"

#include <gsl/gsl_errno.h>

static int collect(void **state)
{
    *state = calloc(1, sizeof(validate_answer));
    return *state == NULL;
}

static void write_to(const validate_answer *answer, const char *stem, const char *ending,
                     void (*put)(const validate_answer *answer, FILE *to))
{
    char path[400];
    snprintf(path, sizeof path, "%s%s", stem, ending);
    FILE *to = fopen(path, "w");
    if (to == NULL)
        fail_msg("%s: cannot be written", path);
    put(answer, to);
    assert_int_equal(fclose(to), 0);
}

static void the_table_is_made(void **state)
{
    validate_answer *answer = *state;
    const char *stem = getenv("VALIDATE_TO");
    validate_collect(answer);
    if (stem == NULL) {
        validate_text(answer, stdout);
    } else {
        write_to(answer, stem, ".txt", validate_text);
        write_to(answer, stem, ".csv", validate_csv);
    }
}

static void rows_are_as_their_tables_say(void **state)
{
    const validate_answer *answer = *state;
    size_t wrong = 0;
    for (size_t i = 0; i < answer->count; i++) {
        const validate_row *r = &answer->rows[i];
        if (validate_wrong(r) == NULL)
            continue;
        print_error("%s %s: %s (printed %g, ours %.6g, deviation %.4g)\n", r->table, r->id, validate_wrong(r), r->value,
                    r->ours.low, r->deviation);
        wrong++;
    }
    assert_int_equal(wrong, 0);
}

static void each_row_has_a_name_of_its_own(void **state)
{
    const validate_answer *answer = *state;
    for (size_t i = 0; i < answer->count; i++)
        for (size_t k = 0; k < i; k++)
            if (strcmp(answer->rows[i].id, answer->rows[k].id) == 0)
                fail_msg("%s: twice, in %s and %s", answer->rows[i].id, answer->rows[i].table, answer->rows[k].table);
}

/* A row of value 10, band 1, with what the model gives and a reason. */
static validate_row row_of(double ours, const char *reason)
{
    validate_row r = {.value = 10, .band = 1, .ours = {ours, ours}, .kind = "absolute"};
    snprintf(r.reason, sizeof r.reason, "%s", reason);
    r.deviation = evidence_deviation(r.kind, r.value, r.ours);
    r.distance = evidence_distance(r.kind, r.value, r.band, r.ours);
    return r;
}

/* Only two kinds of rows are right: inside without a reason, and outside with one, where its pin holds it. */
static void wrong_rows_are_found(void **state)
{
    (void)state;
    const validate_row inside = row_of(10.9, ""), listed = row_of(12, "because"), unlisted = row_of(12, "");
    const validate_row back = row_of(10.9, "because"), lost = row_of((double)NAN, "because");
    validate_row astray = listed, none = row_of(3, "");
    astray.pinned = astray.astray = true;
    none.distance = (double)NAN;
    assert_null(validate_wrong(&inside));
    assert_null(validate_wrong(&listed));
    assert_null(validate_wrong(&none));
    assert_non_null(validate_wrong(&unlisted));
    assert_non_null(validate_wrong(&back));
    assert_non_null(validate_wrong(&lost));
    assert_non_null(validate_wrong(&astray));
}

static void bands_are_measured_as_they_are_said(void **state)
{
    (void)state;
    const evidence ours = {12, 12}, around = {9, 12};
    assert_true(fabs(evidence_distance("relative", 10, 0.1, ours) - 2) < 1e-12);
    assert_true(fabs(evidence_distance("absolute", 10, 4, ours) - 0.5) < 1e-12);
    assert_true(fabs(evidence_distance("factor", 24, 2, ours) + 1) < 1e-12);
    assert_true(evidence_distance("encloses", 10, 0, around) == 0);
    assert_true(evidence_distance("encloses", 8, 0, around) == 2 && evidence_distance("encloses", 13, 0, around) == -2);
    assert_true(isnan(evidence_distance("none", (double)NAN, 0, ours)));
}

/* What the table promises. */
static void there_are_enough(void **state)
{
    const validate_answer *answer = *state;
    size_t values = 0, works = 0, baths = 0;
    for (size_t i = 0; i < answer->count; i++) {
        const bool compared = validate_compared(&answer->rows[i]);
        values += compared;
        works += validate_first_of_work(answer, i);
        baths += compared && strncmp(answer->rows[i].group, "whole-bath", 10) == 0;
    }
    print_message("%zu values, %zu works, %zu of whole baths\n", values, works, baths);
    assert_true(values >= 300 && works >= 40 && baths >= 45);
}

static int give_back(void **state)
{
    validate_answer *answer = *state;
    free(answer->rows);
    free(answer);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_table_is_made),
        cmocka_unit_test(rows_are_as_their_tables_say),
        cmocka_unit_test(each_row_has_a_name_of_its_own),
        cmocka_unit_test(there_are_enough),
        cmocka_unit_test(wrong_rows_are_found),
        cmocka_unit_test(bands_are_measured_as_they_are_said),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("validate", tests, collect, give_back);
}
