/* What `make fuzz` tries for as long as it is let, here for a second or two, always the same. Its own test: of what the mutator
   makes at least a quarter is accepted, or the deep path is not walked. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "fuzz/mutate.h"
#include "fuzz/targets.h"

static int begin(void **state)
{
    (void)state;
    fuzz_begin();
    return 0;
}

static int end(void **state)
{
    (void)state;
    fuzz_end();
    return 0;
}

/* Of the same seed, changed again and again. */
static void changed(void (*target)(const uint8_t *data, size_t size), size_t times)
{
    char text[MUTATE_MAX];
    size_t size = 0;
    fuzz_count.tried = fuzz_count.accepted = 0;
    for (uint32_t i = 1; i <= times; i++) {
        size = i % 8 == 1 ? mutate_put(text, size, 0, size, mutate_seed) : size;
        size = mutate(text, size, i * 2654435761u);
        target((const uint8_t *)text, size);
    }
    print_message("%lu tried, %lu accepted\n", fuzz_count.tried, fuzz_count.accepted);
}

static void changed_scenarios_are_run_or_refused(void **state)
{
    (void)state;
    changed(fuzz_run, 40);
    assert_true(4 * fuzz_count.accepted >= fuzz_count.tried);
}

static void changed_scenarios_are_read_or_refused(void **state)
{
    (void)state;
    changed(fuzz_scenario, 1000);
    assert_true(4 * fuzz_count.accepted >= fuzz_count.tried);
}

static void scenarios_are_no_tables(void **state)
{
    (void)state;
    changed(fuzz_csv, 100);
}

/* Bytes from what the language is made of, and some from outside it. */
static void bytes_are_read_or_refused(void **state)
{
    (void)state;
    static const char *const parts[] = {"1",       "2.5", "-",  " ",  "/",          ":",  "%",        "degF",
                                        "gal",     "per", "to", "1e", "9999999999", ".",  "\xC2\xB0", "\xFF",
                                        "--units", "si",  "=",  ",",  "\"",         "in", "\n",       "time"};
    uint32_t state_of = 1;
    for (int i = 0; i < 3000; i++) {
        char text[200] = "";
        size_t size = 0;
        for (size_t n = mutate_below(&state_of, 7); n > 0; n--)
            size = mutate_put(text, size, size, 0, parts[mutate_below(&state_of, sizeof parts / sizeof parts[0])]);
        fuzz_quantity((const uint8_t *)text, size);
        fuzz_options((const uint8_t *)text, size);
        if (i % 20 == 0)
            fuzz_csv((const uint8_t *)text, size);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bytes_are_read_or_refused),
        cmocka_unit_test(scenarios_are_no_tables),
        cmocka_unit_test(changed_scenarios_are_read_or_refused),
        cmocka_unit_test(changed_scenarios_are_run_or_refused),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
