/* The command line. */
#include "support/close.h"

#include <string.h>

#include "base/format.h"
#include "cli/commands.h"
#include "cli/options.h"
#include "scenario/keys.h"

#define WORDS_MAX 12

/* The record of a command: a member for each kind of option. */
typedef struct {
    bool json;
    const char *csv;
    unit_system units;
    unsigned long draws;
    double factor, step_s, share;
    quantity load;
    double depth_m;
} record;

/* "level 1 m": a word of its own before a length. */
static bool depth_read(cursor *c, void *into)
{
    quantity q;
    if (!cursor_take(c, "level"))
        return cursor_error(c, c->at, "the depth begins with 'level'");
    if (!quantity_read(c, "level", UNIT_OF(DIM_LENGTH), &q))
        return false;
    *(double *)into = q.si;
    return cursor_expect_end(c);
}

/* clang-format off */
static const option table[] = {
    {"json", NULL, "as JSON", OPTION_FLAG, .where = offsetof(record, json)},
    {"csv", "FILE", "a file", OPTION_FILE, .where = offsetof(record, csv)},
    {"units", "us|si", "units", OPTION_CHOICE, .where = offsetof(record, units)},
    {"draws", "NUMBER", "a count", OPTION_COUNT, .where = offsetof(record, draws), .within = {NULL, 1, 1000}},
    {"factor", "NUMBER", "a number", OPTION_NUMBER, .where = offsetof(record, factor), .within = {NULL, 0.5, 2}},
    {"step", "TIME", "a time", OPTION_QUANTITY, .where = offsetof(record, step_s), DIM_TIME, {"s", 1, 7200}},
    {"share", "PERCENT", "a share", OPTION_QUANTITY, .where = offsetof(record, share), DIM_FRACTION, {"%", 1, 99}},
    {"load", "QUANTITY", "a mass, or one per volume", OPTION_EITHER, .where = offsetof(record, load), DIM_MASS,
     {"kg", 0.1, 100}, DIM_CONCENTRATION, {"kg/m3", 1, 1000}},
    {"depth", "DEPTH", "a word and a length", OPTION_READ, .where = offsetof(record, depth_m), .read = depth_read},
};
/* clang-format on */
#define NBSP "\xC2\xA0" /* a no-break space does not part the words of a line here */
#define TABLE_COUNT (sizeof table / sizeof table[0])

static const command with_file = {.name = "run", .argument = "FILE", .options = table, .options_count = TABLE_COUNT};
static const command without_file = {.name = "solution", .options = table, .options_count = TABLE_COUNT};

/* Reads words parted by blanks. */
static options_outcome read_line(const command *c, const char *line, given *g, options_problem *problem)
{
    static char copy[200];
    char *words[WORDS_MAX];
    int count = 0;
    snprintf(copy, sizeof copy, "%s", line);
    for (char *w = strtok(copy, " "); w != NULL && count < WORDS_MAX; w = strtok(NULL, " "))
        words[count++] = w;
    return options_read(c, count, words, g, problem);
}

static void values_stand_behind_or_after_an_equals_sign(void **state)
{
    (void)state;
    given g;
    options_problem p;
    assert_int_equal(read_line(&with_file, "--units=si night.bath --csv t.csv --json", &g, &p), OPTIONS_READ);
    assert_string_equal(g.argument, "night.bath");
    assert_string_equal(g.values[0], "");
    assert_string_equal(g.values[1], "t.csv");
    assert_string_equal(g.values[2], "si");
    assert_int_equal(read_line(&with_file, "--csv - -", &g, &p), OPTIONS_READ);
    assert_string_equal(g.argument, "-");
    assert_string_equal(g.values[1], "-");
    assert_null(g.values[0]);
    assert_int_equal(read_line(&with_file, "--json -- --odd.bath", &g, &p), OPTIONS_READ);
    assert_string_equal(g.argument, "--odd.bath");
    assert_int_equal(read_line(&without_file, "", &g, &p), OPTIONS_READ);
}

static void help_wins(void **state)
{
    (void)state;
    given g;
    options_problem p;
    assert_int_equal(read_line(&with_file, "--help", &g, &p), OPTIONS_HELP);
    assert_int_equal(read_line(&with_file, "--wrong -h", &g, &p), OPTIONS_HELP);
    assert_int_equal(read_line(&with_file, "-- --help", &g, &p), OPTIONS_READ);
}

static void mistakes_get_a_sentence(void **state)
{
    (void)state;
    static const struct {
        const command *command;
        const char *line, *problem;
    } cases[] = {
        {&with_file, "", "'run' needs a FILE"},
        {&with_file, "--json", "'run' needs a FILE"},
        {&with_file, "a b", "'run' takes one FILE, got 'b' as well"},
        {&with_file, "a --jsn", "unknown option '--jsn'; did you mean '--json'?"},
        {&with_file, "a --unit=si", "unknown option '--unit'; did you mean '--units'?"},
        {&with_file, "a -json", "unknown option '-json'; did you mean '--json'?"},
        {&with_file, "a --zzzzzz", "unknown option '--zzzzzz'"},
        {&with_file, "a --", NULL},
        {&with_file, "a --=", "unknown option '--'"},
        {&with_file, "a --json=yes", "option '--json' takes no value"},
        {&with_file, "a --json --json", "option '--json' is given twice"},
        {&with_file, "a --csv", "option '--csv' needs a value: FILE"},
        {&with_file, "a --csv=", "option '--csv' needs a value: FILE"},
        {&with_file, "a --csv --json", "option '--csv' needs a value: FILE"},
        {&with_file, "a --units metric", "option '--units' must be one of us|si, got 'metric'"},
        {&with_file, "a --units us|si", "option '--units' must be one of us|si, got 'us|si'"},
        {&without_file, "a", "'solution' takes options only, got 'a'"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        given g;
        options_problem p;
        options_outcome got = read_line(cases[i].command, cases[i].line, &g, &p);
        assert_int_equal(got, cases[i].problem == NULL ? OPTIONS_READ : OPTIONS_WRONG);
        assert_string_equal(p.text, cases[i].problem == NULL ? "" : cases[i].problem);
    }
}

/* A pound is 0.45359237 kg [NIST SP 811]; a US gallon 3.785411784 L [the same]. */
static void values_reach_the_record(void **state)
{
    (void)state;
    given g;
    options_problem p;
    record r = {.factor = 1, .share = 0.5};
    assert_int_equal(read_line(&with_file, "a --json --csv - --units=si --draws 256 --step=20min --load=1lb/gal", &g, &p),
                     OPTIONS_READ);
    assert_true(options_given(&g, "draws"));
    assert_false(options_given(&g, "share"));
    assert_true(options_take(&g, &r));
    assert_true(r.json);
    assert_string_equal(r.csv, "-");
    assert_int_equal(r.units, UNITS_SI);
    assert_int_equal(r.draws, 256);
    assert_close(r.step_s, 1200, 1e-12, 0);
    assert_int_equal(r.load.dimension, DIM_CONCENTRATION);
    assert_close(r.load.si, 0.45359237 / 3.785411784e-3, 1e-12, 0);
    assert_close(r.factor, 1, 0, 0); /* what was not given stays */
    assert_close(r.share, 0.5, 0, 0);
    assert_int_equal(read_line(&with_file, "a --units us --share=60% --load 2kg --depth level" NBSP "1m --factor 2", &g, &p),
                     OPTIONS_READ);
    assert_true(options_take(&g, &r));
    assert_int_equal(r.units, UNITS_US);
    assert_close(r.share, 0.6, 1e-12, 0);
    assert_int_equal(r.load.dimension, DIM_MASS);
    assert_close(r.load.si, 2, 1e-12, 0);
    assert_close(r.factor, 2, 0, 0);
    assert_close(r.depth_m, 1, 0, 0);
}

/* Each is complained about on standard error, and changes nothing. */
static void values_that_make_no_sense_are_refused(void **state)
{
    (void)state;
    static const char *const lines[] = {
        "a --draws 1.5",  "a --draws 0",     "a --draws many",   "a --factor 3",  "a --factor 1kg",
        "a --step 5",     "a --step 0.5s",   "a --step 1m",      "a --share 0.5", "a --share=200%",
        "a --load 1degF", "a --load 1000kg", "a --load 5000g/L", "a --depth 1m",  "a --depth level" NBSP "1kg",
        "a --step 1s2"};
    assert_non_null(freopen("/dev/null", "w", stderr));
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
        given g;
        options_problem p;
        record r = {.draws = 7, .factor = 1.5, .step_s = 11, .share = 0.25};
        assert_int_equal(read_line(&with_file, lines[i], &g, &p), OPTIONS_READ);
        assert_false(options_take(&g, &r));
        assert_int_equal(r.draws, 7);
        assert_close(r.factor, 1.5, 0, 0);
        assert_close(r.step_s, 11, 0, 0);
        assert_close(r.share, 0.25, 0, 0);
    }
}

static void a_shell_is_told_what_to_offer(void **state)
{
    (void)state;
    assert_int_equal(options_expects(&table[0]), EXPECTS_NOTHING);
    assert_int_equal(options_expects(&table[1]), EXPECTS_FILE);
    assert_int_equal(options_expects(&table[2]), EXPECTS_WORDS);
    assert_int_equal(options_expects(&table[3]), EXPECTS_TEXT);
}

/* Random words: whatever they are, an answer is named, values come from the words, and a mistake has a sentence. */
static void random_words_are_read_or_refused(void **state)
{
    (void)state;
    static const char *const pieces[] = {"--", "-", "=", "json", "csv",  "units", "us",
                                         "si", "|", "a", " ",    "\xff", "help",  "\033"};
    unsigned seed = 1;
    size_t read = 0;
    for (int n = 0; n < 20000; n++) {
        char line[150] = "";
        for (int i = 0; i < 10; i++) {
            seed = seed * 1664525u + 1013904223u;
            strcat(line, pieces[(seed >> 16) % (sizeof pieces / sizeof pieces[0])]);
        }
        given g;
        options_problem p;
        options_outcome got = read_line(n % 2 ? &with_file : &without_file, line, &g, &p);
        assert_true((got == OPTIONS_WRONG) == (p.text[0] != '\0'));
        if (got == OPTIONS_READ)
            assert_true(g.values[2] == NULL || strcmp(g.values[2], "us") == 0 || strcmp(g.values[2], "si") == 0);
        read += got == OPTIONS_READ;
    }
    assert_in_range(read, 1, 19999);
}

/* What the tables of all commands must keep to. */
static void every_command_can_be_helped(void **state)
{
    (void)state;
    const command *c;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        assert_ptr_equal(commands_named(c->name), c);
        assert_true(c->options_count <= OPTIONS_MAX);
        assert_non_null(c->run);
        assert_true(strlen(c->summary) > 0 && strlen(c->description) > 0);
        assert_non_null(strstr(c->example, c->name));
        for (size_t k = 0; k < c->options_count; k++) {
            const option *o = &c->options[k];
            assert_true(strlen(o->name) > 0 && strlen(o->text) > 0);
            assert_true((o->kind == OPTION_FLAG) == (o->value == NULL));
            assert_true(o->kind != OPTION_READ || o->read != NULL);
            assert_true(o->kind != OPTION_SETTING || key_find(o->section, o->key, strlen(o->key)) != NULL);
        }
    }
    assert_null(commands_named("chek"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(values_stand_behind_or_after_an_equals_sign),
        cmocka_unit_test(help_wins),
        cmocka_unit_test(mistakes_get_a_sentence),
        cmocka_unit_test(values_reach_the_record),
        cmocka_unit_test(values_that_make_no_sense_are_refused),
        cmocka_unit_test(a_shell_is_told_what_to_offer),
        cmocka_unit_test(random_words_are_read_or_refused),
        cmocka_unit_test(every_command_can_be_helped),
    };
    return cmocka_run_group_tests_name("options", tests, NULL, NULL);
}
