/* The command line. */
#include "support/close.h"

#include <string.h>

#include "cli/commands.h"
#include "cli/options.h"

#define WORDS_MAX 8

static const option table[] = {
    {"json", NULL, "as JSON"},
    {"csv", "FILE", "a file"},
    {"units", "us|si", "units"},
};
static const command with_file = {.name = "run", .argument = "FILE", .options = table, .options_count = 3};
static const command without_file = {.name = "solution", .options = table, .options_count = 3};

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
        for (size_t k = 0; k < c->options_count; k++)
            assert_true(strlen(c->options[k].name) > 0 && strlen(c->options[k].text) > 0);
    }
    assert_null(commands_named("chek"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(values_stand_behind_or_after_an_equals_sign),
        cmocka_unit_test(help_wins),
        cmocka_unit_test(mistakes_get_a_sentence),
        cmocka_unit_test(random_words_are_read_or_refused),
        cmocka_unit_test(every_command_can_be_helped),
    };
    return cmocka_run_group_tests_name("options", tests, NULL, NULL);
}
