/* Random numbers by counter: those printed for the published generator, and that they are even. */
#include "statistics/stream.h"
#include "support/close.h"

/* The first five of SplitMix64 with the seed 1234567, as they are printed for those who write it anew; from memory. */
static void the_numbers_are_those_of_the_published_generator(void **state)
{
    (void)state;
    const uint64_t printed[] = {6457827717110365317u, 3203168211198807973u, 9817491932198370423u, 4593380528125082431u,
                                16408922859458223821u};
    boil_stream s = boil_stream_begin(1234567, 0);
    for (size_t i = 0; i < sizeof printed / sizeof printed[0]; i++)
        assert_true(boil_stream_next(&s) == printed[i]);
}

/* Chi-squared of 10 classes over 1e5 draws: 99.9 % lie below 27.9 [tables of the distribution, 9 degrees of freedom]. */
static void every_class_is_as_likely(void **state)
{
    (void)state;
    enum { CLASSES = 10, DRAWS = 100000 };
    size_t seen[CLASSES] = {0};
    double chi2 = 0;
    boil_stream s = boil_stream_begin(1, 3);
    for (int i = 0; i < DRAWS; i++)
        seen[boil_stream_below(&s, CLASSES)]++;
    for (int i = 0; i < CLASSES; i++)
        chi2 += pow((double)seen[i] - DRAWS / (double)CLASSES, 2) / (DRAWS / (double)CLASSES);
    assert_true(chi2 < 27.9);
}

static void chains_are_apart_and_shares_below_one(void **state)
{
    (void)state;
    boil_stream a = boil_stream_begin(1, 0), b = boil_stream_begin(1, 1), c = boil_stream_begin(2, 1);
    for (int i = 0; i < 1000; i++) {
        double x = boil_stream_share(&a), y = boil_stream_share(&b), z = boil_stream_share(&c);
        assert_true(x >= 0 && x < 1 && y >= 0 && y < 1 && x != y && y != z);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_numbers_are_those_of_the_published_generator),
        cmocka_unit_test(every_class_is_as_likely),
        cmocka_unit_test(chains_are_apart_and_shares_below_one),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
