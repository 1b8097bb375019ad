/* What `make fuzz` tries for as long as it is let, here for a second or two, always the same. Its own test: of what the mutator
   makes at least a quarter is accepted, or the deep path is not walked. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "fuzz/mutate_table.h"
#include "fuzz/mutate_words.h"
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

/* Changed again and again, and begun anew every eighth time. At least a quarter is what it is to be. */
static void changed(size_t (*change)(char *text, size_t size, uint32_t seed), void (*target)(const uint8_t *data, size_t size),
                    size_t times)
{
    char text[MUTATE_MAX];
    size_t size = 0;
    fuzz_count.tried = fuzz_count.accepted = 0;
    for (uint32_t i = 1; i <= times; i++) {
        size = change(text, i % 8 == 1 ? 0 : size, i * 2654435761u);
        target((const uint8_t *)text, size);
    }
    print_message("%lu tried, %lu accepted\n", fuzz_count.tried, fuzz_count.accepted);
    assert_true(fuzz_count.tried == times && 4 * fuzz_count.accepted >= fuzz_count.tried);
}

static void changed_scenarios_are_run_or_refused(void **state)
{
    (void)state;
    changed(mutate, fuzz_run, 40);
}

static void changed_scenarios_are_read_or_refused(void **state)
{
    (void)state;
    changed(mutate, fuzz_scenario, 1000);
}

static void changed_tables_are_read_or_refused(void **state)
{
    (void)state;
    changed(mutate_table, fuzz_csv, 300);
}

static void changed_quantities_are_read_or_refused(void **state)
{
    (void)state;
    changed(mutate_quantity, fuzz_quantity, 2000);
}

static void changed_command_lines_are_read_or_refused(void **state)
{
    (void)state;
    changed(mutate_options, fuzz_options, 3000);
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
        cmocka_unit_test(changed_quantities_are_read_or_refused),
        cmocka_unit_test(changed_command_lines_are_read_or_refused),
        cmocka_unit_test(changed_tables_are_read_or_refused),
        cmocka_unit_test(changed_scenarios_are_read_or_refused),
        cmocka_unit_test(changed_scenarios_are_run_or_refused),
    };
    return cmocka_run_group_tests(tests, begin, end);
}
