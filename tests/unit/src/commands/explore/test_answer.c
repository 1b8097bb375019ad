/* Statistics of a study from its rows alone, and its files: shards merge to the same bytes, broken files do no harm. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "boilback.h"
#include "commands/explore/answer.h"
#include "support/printed.h"

#define PI 3.14159265358979323846

/* Inputs uniform from low to high; nothing made yet. */
static void begin(explore_answer *s, size_t inputs, double low, double high, size_t points, size_t loads)
{
    *s = (explore_answer){.title = "A study",
                          .path = "a.bath",
                          .limit_s = 120,
                          .freeboard_limit_m = 0.15,
                          .input_count = inputs,
                          .plan = {inputs, points, 8, 1},
                          .load_count = loads};
    for (size_t i = 0; i < inputs; i++) {
        snprintf(s->inputs[i].words, sizeof s->inputs[i].words, "heat x%zu", i + 1);
        snprintf(s->inputs[i].as_written, sizeof s->inputs[i].as_written, "%g to %g", low, high);
        s->inputs[i].dimension = DIM_COUNT;
        s->inputs[i].spread = (boil_spread){.kind = BOIL_SPREAD_UNIFORM, .low = low, .high = high};
    }
    for (size_t i = 0; i < loads; i++)
        snprintf(s->loads[i].words, sizeof s->loads[i].words, "load %zu lb", i + 1);
    assert_true(explore_begun(s));
}

typedef double function(const double x[]);

/* The slowest recovery is the function; every other result is zero. */
static void fill(explore_answer *s, function *f)
{
    double x[BOIL_SAMPLING_INPUTS + 1];
    for (size_t row = 0; row < explore_rows(s); row++) {
        if (!explore_needs(s, row))
            continue;
        explore_values(s, row, x);
        for (size_t k = 0; k < s->outputs; k++)
            explore_row(s, row)[k] = 0;
        explore_row(s, row)[EXPLORE_DONE] = 1;
        explore_row(s, row)[EXPLORE_SLOWEST_S] = f(x);
    }
}

/* Indices --------------------------------------------------------------------------------------------------------- */

/* [Ishigami & Homma 1990], a = 7, b = 0.1, x from -pi to pi. */
static double ishigami(const double x[])
{
    return sin(x[0]) + 7 * sin(x[1]) * sin(x[1]) + 0.1 * pow(x[2], 4) * sin(x[0]);
}

/* Sobol' (1993), a = 0, 1, 4.5, 9, 99, 99, 99, 99, x from 0 to 1. */
static double sobol_g(const double x[])
{
    static const double a[] = {0, 1, 4.5, 9, 99, 99, 99, 99};
    double product = 1;
    for (int i = 0; i < 8; i++)
        product *= (fabs(4 * x[i] - 2) + a[i]) / (1 + a[i]);
    return product;
}

static double worst_of(const boil_estimate got[], const double want[], size_t count)
{
    double worst = 0;
    for (size_t i = 0; i < count; i++) {
        assert_true(got[i].half_width < 0.1);
        worst = fmax(worst, fabs(got[i].value - want[i]) / fmax(got[i].half_width, 1e-4));
    }
    return worst;
}

/* Closed forms: variance a^2/8 + b pi^4/5 + b^2 pi^8/18 + 1/2 of Ishigami's; that of G is the product of 1 + V_i less 1,
   with V_i = 1 / (3 (1 + a_i)^2), and of the total of i V_i times the product over the others. */
static void indices_are_the_closed_forms(void **state)
{
    (void)state;
    const double v1 = 0.5 * pow(1 + 0.1 * pow(PI, 4) / 5, 2), v2 = 49.0 / 8, v13 = 0.01 * pow(PI, 8) * (1.0 / 18 - 1.0 / 50);
    const double v = v1 + v2 + v13, first3[] = {v1 / v, v2 / v, 0}, total3[] = {(v1 + v13) / v, v2 / v, v13 / v};
    static const double a[] = {0, 1, 4.5, 9, 99, 99, 99, 99};
    double part[8], product = 1, first8[8], total8[8];
    explore_answer s;
    for (int i = 0; i < 8; i++)
        product *= 1 + (part[i] = 1 / (3 * pow(1 + a[i], 2)));
    for (int i = 0; i < 8; i++) {
        first8[i] = part[i] / (product - 1);
        total8[i] = part[i] * product / (1 + part[i]) / (product - 1);
    }
    begin(&s, 3, -PI, PI, 1024, 0);
    fill(&s, ishigami);
    boil_sensitivity x = explore_sensitivity(&s, EXPLORE_SLOWEST_S);
    print_message("Ishigami: first within %.2f of their bars, total within %.2f\n", worst_of(x.first, first3, 3),
                  worst_of(x.total, total3, 3));
    assert_true(worst_of(x.first, first3, 3) < 1 && worst_of(x.total, total3, 3) < 1);
    explore_free(&s);
    begin(&s, 8, 0, 1, 1024, 0);
    fill(&s, sobol_g);
    x = explore_sensitivity(&s, EXPLORE_SLOWEST_S);
    print_message("Sobol' G: first within %.2f of their bars, total within %.2f\n", worst_of(x.first, first8, 8),
                  worst_of(x.total, total8, 8));
    assert_true(worst_of(x.first, first8, 8) < 1 && worst_of(x.total, total8, 8) < 1);
    explore_free(&s);
}

/* Odds and percentiles -------------------------------------------------------------------------------------------- */

static double itself(const double x[])
{
    return x[0];
}

static void percentiles_are_the_inputs(void **state)
{
    (void)state;
    explore_answer s;
    begin(&s, 2, 0, 100, 256, 0);
    fill(&s, itself);
    explore_spread p = explore_spread_of(&s, 0, EXPLORE_SLOWEST_S);
    assert_int_equal(p.count, 2 * 8 * 256);
    assert_int_equal(p.never, 0);
    assert_close(explore_spread_at(&p, 0.05), 5, 0, 0.1);
    assert_close(explore_spread_at(&p, 0.95), 95, 0, 0.1);
    explore_spread_free(&p);
    boil_odds o = explore_odds(&s, 0, EXPLORE_SLOWEST_S, 75);
    assert_close(o.chance, 0.25, 0, 0.002);
    assert_true(o.low < 0.25 && o.high > 0.25 && o.high - o.low < 0.03);
    explore_free(&s);
}

/* A quarter never comes back: the upper percentiles are never, the lower ones those of all draws. */
static void never_is_later_than_all(void **state)
{
    (void)state;
    explore_answer s;
    begin(&s, 2, 0, 100, 256, 0);
    fill(&s, itself);
    for (size_t row = 0; row < explore_rows(&s); row++)
        if (explore_row(&s, row)[EXPLORE_SLOWEST_S] > 75)
            explore_row(&s, row)[EXPLORE_SLOWEST_S] = (double)NAN;
    explore_spread p = explore_spread_of(&s, 0, EXPLORE_SLOWEST_S);
    assert_close((double)p.never / (double)(p.count + p.never), 0.25, 0, 0.002);
    assert_close(explore_spread_at(&p, 0.5), 50, 0, 0.2);
    assert_true(isnan(explore_spread_at(&p, 0.95)));
    explore_spread_free(&p);
    explore_free(&s);
}

/* Runs that left what is known count in odds, not in percentiles; rows not made count nowhere. */
static void failed_and_missing_rows_are_told_apart(void **state)
{
    (void)state;
    explore_answer s;
    begin(&s, 1, 0, 1, 4, 1);
    fill(&s, itself);
    explore_row(&s, 0)[EXPLORE_DONE] = 0;
    explore_row(&s, 1)[EXPLORE_DONE] = (double)NAN;
    explore_spread p = explore_spread_of(&s, 0, EXPLORE_SLOWEST_S);
    boil_odds o = explore_odds(&s, 0, EXPLORE_BACK_SHARE, 1);
    assert_int_equal(p.count, 2 * 8 * 4 - 2);
    assert_int_equal(o.count, 2 * 8 * 4 - 1);
    assert_int_equal(explore_count(&s, true), explore_count(&s, false) - 1);
    explore_spread_free(&p);
    for (size_t row = 0; row < explore_rows(&s); row++)
        explore_row(&s, row)[EXPLORE_DONE] = (double)NAN;
    p = explore_spread_of(&s, 0, EXPLORE_SLOWEST_S);
    assert_true(isnan(explore_spread_at(&p, 0.5)) && isnan(explore_odds(&s, 0, EXPLORE_BACK_SHARE, 1).chance));
    explore_spread_free(&p);
    explore_free(&s);
}

static void gravest_finding_comes_first(void **state)
{
    (void)state;
    explore_answer s;
    explore_finding found[EXPLORE_FINDINGS_MAX];
    begin(&s, 1, 0, 1, 4, 0);
    fill(&s, itself);
    for (size_t row = 0; row < explore_rows(&s); row++)
        explore_row(&s, row)[explore_finding_output(3)] = 2; /* always, a caution */
    explore_row(&s, 0)[explore_finding_output(5)] = 4;       /* once, a danger */
    assert_int_equal(explore_findings_of(&s, 0, found), 2);
    assert_int_equal(found[0].gravest, BOIL_SEVERITY_DANGER);
    assert_int_equal(found[0].odds.yes, 1);
    assert_int_equal(found[1].gravest, BOIL_SEVERITY_CAUTION);
    assert_close(found[1].odds.chance, 1, 0, 0);
    boil_odds grave = explore_grave_odds(&s, 0);
    assert_int_equal(grave.yes, 1);
    assert_int_equal(grave.count, 2 * 8 * 4);
    explore_free(&s);
}

static void mixing_is_known_to_vary(void **state)
{
    (void)state;
    explore_answer s;
    begin(&s, 1, 0.3, 3, 1, 0);
    assert_false(explore_varies_mixing(&s));
    strcpy(s.inputs[0].words, "mixing time factor");
    assert_true(explore_varies_mixing(&s));
    explore_free(&s);
}

/* Files ----------------------------------------------------------------------------------------------------------- */

static char *rows_of(const explore_answer *s)
{
    printed p;
    printed_begin(&p);
    explore_csv_write(s, p.to);
    return printed_end(&p);
}

static char *report_of(const explore_answer *s)
{
    printed p;
    printed_begin(&p);
    explore_report(s, &(output){.system = UNITS_US}, p.to);
    json_document(explore_documents->fields, s, p.to);
    return printed_end(&p);
}

typedef struct {
    char path[40];
} scratch;

static scratch write_scratch(const char *bytes, size_t length)
{
    scratch f = {"/tmp/boilback-study-XXXXXX"};
    int at = mkstemp(f.path);
    assert_true(at >= 0);
    FILE *to = fdopen(at, "w");
    assert_non_null(to);
    fwrite(bytes, 1, length, to);
    fclose(to);
    return f;
}

/* Seven shards, read in another order, give the bytes of the whole; so do rows that stand in two files. */
static void shards_merge_to_the_same_bytes(void **state)
{
    (void)state;
    enum { SHARDS = 7 };
    explore_answer whole, part, merged;
    scratch files[SHARDS + 1];
    const char *paths[SHARDS + 1];
    begin(&whole, 2, 0, 1, 2, 2);
    fill(&whole, sobol_g);
    explore_row(&whole, 3)[explore_load_output_of(&whole, 1, EXPLORE_LOAD_RECOVERY_S)] = (double)NAN;
    char *want = rows_of(&whole), *want_report = report_of(&whole);
    for (size_t i = 0; i < SHARDS; i++) {
        begin(&part, 2, 0, 1, 2, 2);
        for (size_t row = i; row < explore_rows(&part); row += SHARDS)
            memcpy(explore_row(&part, row), explore_row(&whole, row), part.outputs * sizeof *part.values);
        char *text = rows_of(&part);
        files[SHARDS - 1 - i] = write_scratch(text, strlen(text));
        if (i == 2)
            files[SHARDS] = write_scratch(text, strlen(text));
        free(text);
        explore_free(&part);
    }
    for (size_t i = 0; i <= SHARDS; i++)
        paths[i] = files[i].path;
    assert_true(explore_csv_read(&merged, paths, SHARDS + 1));
    char *got = rows_of(&merged), *got_report = report_of(&merged);
    assert_string_equal(got, want);
    assert_string_equal(got_report, want_report);
    for (size_t i = 0; i <= SHARDS; i++)
        unlink(files[i].path);
    free(want);
    free(want_report);
    free(got);
    free(got_report);
    explore_free(&merged);
    explore_free(&whole);
}

static char *replaced(const char *text, const char *from, const char *to)
{
    const char *at = strstr(text, from);
    assert_non_null(at);
    printed p;
    printed_begin(&p);
    fprintf(p.to, "%.*s%s%s", (int)(at - text), text, to, at + strlen(from));
    return printed_end(&p);
}

static bool reads(const char *text, size_t length)
{
    explore_answer s;
    scratch f = write_scratch(text, length);
    const char *path = f.path;
    bool good = explore_csv_read(&s, &path, 1);
    if (good)
        free(report_of(&s));
    explore_free(&s);
    unlink(f.path);
    return good;
}

/* The small study that is written and broken. */
static char *small_study(void)
{
    explore_answer s;
    begin(&s, 2, 0, 1, 1, 1);
    fill(&s, itself);
    char *text = rows_of(&s);
    explore_free(&s);
    return text;
}

/* The plan stands in one cell of one line, so what parts it may stand in its texts, and files of other systems are read too. */
static void any_words_come_back(void **state)
{
    (void)state;
    explore_answer s, again;
    begin(&s, 2, 0, 1, 1, 1);
    fill(&s, itself);
    strcpy(s.title, "a; \"b\", c \\; d = e\\");
    char *text = rows_of(&s);
    char *other = replaced(text, "\n", "\r\n");
    scratch f = write_scratch(other, strlen(other));
    const char *path = f.path;
    assert_true(explore_csv_read(&again, &path, 1));
    assert_string_equal(again.title, s.title);
    unlink(f.path);
    free(other);
    free(text);
    explore_free(&again);
    explore_free(&s);
}

/* A grid of a single step is one, with its column. */
static void a_grid_of_one_step_is_told(void **state)
{
    (void)state;
    explore_answer s = {.title = "A study", .path = "a.bath", .plan = {.points = 0}, .grid = {.count = 1}};
    strcpy(s.grid.input.words, "heat input");
    strcpy(s.grid.input.as_written, "1 to 1");
    s.grid.input.spread = (boil_spread){.kind = BOIL_SPREAD_UNIFORM, .low = 1, .high = 1};
    char *plan = explore_csv_plan(&s);
    assert_int_equal(printed_times(plan, "grid = heat input\nsaid = 1 to 1\n"), 1);
    assert_int_equal(printed_times(plan, "\nsteps = 1\n"), 1);
    free(plan);
}

/* What a load is stands once above those alike that follow each other. */
static void loads_stand_under_what_they_are(void **state)
{
    (void)state;
    explore_answer s;
    begin(&s, 1, 0, 1, 2, 4);
    fill(&s, itself);
    static const char *const words[] = {"bolts", "bolts", "plates", "bolts"};
    for (size_t i = 0; i < 4; i++)
        strcpy(s.loads[i].words, words[i]);
    printed p;
    printed_begin(&p);
    explore_report(&s, &(output){.system = UNITS_US}, p.to);
    char *text = printed_end(&p);
    assert_int_equal(printed_times(text, "bolts\n"), 2);
    assert_int_equal(printed_times(text, "plates\n"), 1);
    free(text);
    explore_free(&s);
}

static void broken_files_are_refused(void **state)
{
    (void)state;
    static const char *const broken[][2] = {{"study\n", "studies\n"},
                                            {",study", ""},
                                            {"version = ", "version = 9."},
                                            {"plan = 1 8 1", "plan = 1 1 1"},
                                            {"plan = 1 8 1", "plan = 0 8 1"},
                                            {"plan = 1 8 1", "plan = 9999999999 8 1"},
                                            {"plan = 1 8 1", "plan = 1048576 32 1"},
                                            {"plan = 1 8 1", "plan = x"},
                                            {"plan = 1 8 1", "plan = 1 8 99999999999"},
                                            {"is = 20 0", "is = 21 0"},
                                            {"is = 20 0", "is = -1 0"},
                                            {"is = 20 0", "is = 2147483648 0"},
                                            {"is = 20 0", "is = 20 4"},
                                            {"is = 20 0 0 1", "is = 20 0 1 0"},
                                            {"is = 20 0 0 1", "is = 20 0 nan 1"},
                                            {"row,", "rows,"},
                                            {"done", "undone"},
                                            {"\n0,", "\n4000000000,"},
                                            {"\n0,", "\n-1,"},
                                            {"\n0,", "\n0,,"},
                                            {"\n0,", "\n0;"},
                                            {"\n1,", "\n0,"},
                                            {"input", "input = x; steps = 1000; input"},
                                            {"load = 0", "load = x"},
                                            {"input", "nothing = 1; input"}};
    char *text = small_study();
    assert_true(reads(text, strlen(text)));
    for (size_t i = 0; i < sizeof broken / sizeof broken[0]; i++) {
        char *other = replaced(text, broken[i][0], broken[i][1]);
        if (reads(other, strlen(other)))
            fail_msg("'%s' for '%s' is taken", broken[i][1], broken[i][0]);
        free(other);
    }
    free(text);
}

/* Cut anywhere, or with bytes changed: read or refused, never a crash. The complaints are not of interest. */
static void no_file_does_harm(void **state)
{
    (void)state;
    static const char bytes[] = "09,.=-# \nxe\0\xFF";
    char *text = small_study();
    size_t length = strlen(text), head = (size_t)(strstr(text, "\n0,") - text), taken = 0;
    int own = dup(2);
    assert_non_null(freopen("/dev/null", "w", stderr));
    srand(1);
    for (int i = 0; i < 1500; i++) {
        char *other = strdup(text);
        size_t span = i % 2 ? head : length;
        for (int k = 0; k < 1 + i % 3; k++)
            other[(size_t)rand() % span] = bytes[(size_t)rand() % (sizeof bytes - 1)];
        taken += reads(other, i % 5 ? length : (size_t)rand() % length);
        free(other);
    }
    fflush(stderr);
    dup2(own, 2);
    close(own);
    print_message("%zu of 1500 damaged files still are studies\n", taken);
    assert_true(taken < 1500);
    free(text);
}

/* Values no run gives, but a file can. */
static void absurd_values_are_reported(void **state)
{
    (void)state;
    static const double absurd[] = {(double)INFINITY, -(double)INFINITY, 1e308, -1e308, 1e-320};
    explore_answer s;
    begin(&s, 2, 0, 1, 4, 2);
    fill(&s, itself);
    for (size_t row = 0; row < explore_rows(&s); row++)
        for (size_t k = 1; k < s.outputs; k++)
            explore_row(&s, row)[k] = absurd[(row * 7 + k) % 5];
    char *text = report_of(&s);
    assert_non_null(strstr(text, "Findings"));
    free(text);
    explore_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(indices_are_the_closed_forms),   cmocka_unit_test(percentiles_are_the_inputs),
        cmocka_unit_test(never_is_later_than_all),        cmocka_unit_test(failed_and_missing_rows_are_told_apart),
        cmocka_unit_test(gravest_finding_comes_first),    cmocka_unit_test(mixing_is_known_to_vary),
        cmocka_unit_test(shards_merge_to_the_same_bytes), cmocka_unit_test(any_words_come_back),
        cmocka_unit_test(a_grid_of_one_step_is_told),     cmocka_unit_test(loads_stand_under_what_they_are),
        cmocka_unit_test(broken_files_are_refused),       cmocka_unit_test(no_file_does_harm),
        cmocka_unit_test(absurd_values_are_reported),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("study", tests, NULL, NULL);
}
