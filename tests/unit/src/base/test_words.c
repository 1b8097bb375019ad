/* Words as people write them: blanks of every kind, either case, and slips. */
#include "support/close.h"

#include <string.h>

#include "base/words.h"

#define NO_BREAK "\u00a0"

static bool same(const char *text, const char *words)
{
    return words_same(text, strlen(text), words);
}

/* What is behind the end is not looked at: a blank there is not one of the text's. */
static void blanks_at_either_end_do_not_count(void **state)
{
    (void)state;
    static const char *const written[] = {"depth",
                                          " depth",
                                          "depth ",
                                          "\tdepth\t",
                                          "depth" NO_BREAK,
                                          NO_BREAK "depth" NO_BREAK NO_BREAK,
                                          "  depth" NO_BREAK " ",
                                          "DEPTH " NO_BREAK};
    for (size_t i = 0; i < sizeof written / sizeof written[0]; i++)
        assert_true(same(written[i], "depth"));
    const char *at = "a" NO_BREAK "b";
    assert_ptr_equal(words_trim(at, at + 1), at + 1);
    assert_ptr_equal(words_trim(at, at + 3), at + 1);
    assert_ptr_equal(words_trim(at, at + 4), at + 4);
    assert_ptr_equal(words_trim(at + 1, at + 3), at + 1);
    assert_ptr_equal(words_skip(at + 1, at + 4), at + 3);
    assert_int_equal(words_blank(at + 1, at + 2), 0); /* half of one */
    assert_int_equal(words_blank(at + 1, at + 3), 2);
}

static void blanks_between_count_as_one(void **state)
{
    (void)state;
    assert_true(same("water  per" NO_BREAK "\tHour", "water per hour"));
    assert_false(same("waterper hour", "water per hour"));
    assert_false(same("water per hours", "water per hour"));
    assert_false(same("water per", "water per hour"));
    assert_false(same("", "water"));
    assert_true(same("  ", ""));
}

static size_t taken(const char *text, const char *words)
{
    return words_taken(text, text + strlen(text), words);
}

static void a_word_is_taken_up_to_its_end(void **state)
{
    (void)state;
    assert_int_equal(taken("kg", "kg"), 2);
    assert_int_equal(taken("kg/h", "kg"), 0);
    assert_int_equal(taken("kg, 3 lb", "kg"), 2);
    assert_int_equal(taken("KG" NO_BREAK "of it", "kg"), 2);
    assert_int_equal(taken("lb", "kg"), 0);
}

/* Cut between characters: the no-break space of two bytes is kept whole or not at all. */
static void a_quote_is_cut_between_characters(void **state)
{
    (void)state;
    char text[60];
    memset(text, 'x', sizeof text);
    assert_string_equal(words_quoted("depth", 5).text, "depth");
    assert_int_equal(strlen(words_quoted(text, 44).text), 44);
    assert_int_equal(strlen(words_quoted(text, 45).text), 44 + 3);
    assert_string_equal(words_quoted(text, 45).text + 44, "...");
    memcpy(text + 43, NO_BREAK, 2);
    assert_int_equal(strlen(words_quoted(text, 60).text), 43 + 3);
    memset(text, 'x', sizeof text);
    memcpy(text + 42, NO_BREAK, 2);
    assert_int_equal(strlen(words_quoted(text, 60).text), 44 + 3);
}

static size_t steps(const char *written, const char *known)
{
    words_nearest n = {.text = written, .length = strlen(written), .distance = 99};
    words_consider(&n, known);
    return n.distance;
}

/* Edit distances counted by hand; "ca" to "abc" is 3 where nothing between swapped neighbours may be put in, 2 where it may [optimal
   string alignment, from memory]. A slip beyond one in three letters is another word. */
static void the_nearest_word_is_suggested(void **state)
{
    (void)state;
    assert_int_equal(steps("depth", "depth"), 0);
    assert_int_equal(steps("dpeth", "depth"), 1); /* swapped */
    assert_int_equal(steps("edpth", "depth"), 1);
    assert_int_equal(steps("deptht", "depth"), 1);
    assert_int_equal(steps("ca", "abc"), 3);
    assert_int_equal(steps("kitten", "sitting"), 3);
    assert_int_equal(steps("ab", "cd"), 2); /* no swap: neither letter is there */
    assert_int_equal(steps("ab", "bc"), 2);
    assert_int_equal(steps("WATER  LEVEL", "water level"), 0);
    words_nearest n = words_near("dpht", 4);
    words_consider(&n, "width");
    assert_string_equal(words_suggestion(&n).text, "");
    words_consider(&n, "depth");
    words_consider(&n, "doth"); /* as near: the first stays */
    words_consider(&n, "rate");
    assert_string_equal(words_suggestion(&n).text, "; did you mean 'depth'?");
}

/* Whether it is taken where no more than so many are allowed: of a few only those near the diagonal are worked out. */
static void no_word_is_nearer_than_it_is(void **state)
{
    (void)state;
    static const char *const pairs[][2] = {
        {"dpeth", "depth"},    {"deptht", "depth"}, {"xdepth", "depth"},  {"ca", "abc"},
        {"kitten", "sitting"}, {"ab", "cd"},        {"abcdef", "fedcba"}, {"rack one two", "two one"},
        {"badcfe", "abcdef"},  {"x", "abcdefgh"},   {"abcdefgh", "h"}};
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        const char *written = pairs[i][0], *known = pairs[i][1];
        for (size_t most = 1; most <= 12; most++) {
            words_nearest n = {.text = written, .length = strlen(written), .distance = most};
            words_consider(&n, known);
            bool nearer = steps(written, known) < most;
            assert_int_equal(n.distance, nearer ? steps(written, known) : most);
            assert_ptr_equal(n.word, nearer ? known : NULL);
        }
    }
    assert_int_equal(steps("badcfe", "abcdef"), 3);
    assert_int_equal(steps("x", "abcdefgh"), 8);
    assert_int_equal(steps("abcdefgh", "h"), 7);
}

/* Of forty letters it is still compared, of more it is no slip of any word. */
static void long_words_get_no_suggestion(void **state)
{
    (void)state;
    char text[41];
    memset(text, 'x', sizeof text);
    words_nearest n = words_near(text, 40), longer = words_near(text, 41);
    char known[41] = "";
    memset(known, 'x', 40);
    words_consider(&n, known);
    words_consider(&longer, known);
    assert_ptr_equal(n.word, known);
    assert_null(longer.word);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(blanks_at_either_end_do_not_count), cmocka_unit_test(blanks_between_count_as_one),
        cmocka_unit_test(a_word_is_taken_up_to_its_end),     cmocka_unit_test(a_quote_is_cut_between_characters),
        cmocka_unit_test(the_nearest_word_is_suggested),     cmocka_unit_test(no_word_is_nearer_than_it_is),
        cmocka_unit_test(long_words_get_no_suggestion),
    };
    return cmocka_run_group_tests_name("words", tests, NULL, NULL);
}
