/* unit/model/properties/test_pins.c -- every pin is one: of a row that there is, with the deviation on one side of zero, and said why. */
#include "support/close.h"
#include "support/pins.h"

/* Up to its first space, the name is a row's. True as well where there is no such table, or none with rows of their own names:
   then a test asks by name. */
static bool names_a_row(const char *table, const char *row)
{
    char path[256];
    snprintf(path, sizeof path, "tests/published/%s.csv", table);
    FILE *there = fopen(path, "r");
    if (there == NULL)
        return true;
    fclose(there);
    published *t = published_open(path);
    bool found = strcmp(t->columns.field[0], "id") != 0;
    while (published_next(t))
        found =
            found || (strlen(t->row.field[0]) == strcspn(row, " ") && strncmp(t->row.field[0], row, strcspn(row, " ")) == 0);
    published_close(t);
    return found;
}

static void pins_are_what_they_say(void **state)
{
    (void)state;
    int count = 0;
    published *pins = published_open("tests/published/pins.csv");
    while (published_next(pins)) {
        const double low = published_number(pins, "low"), high = published_number(pins, "high");
        const char *table = published_text(pins, "table"), *row = published_text(pins, "id");
        if (!names_a_row(table, row))
            fail_msg("pins.csv: %s has no row %s", table, row);
        assert_true(low < high && low * high > 0);
        assert_true(published_text(pins, "because")[0] != '\0');
        count++;
    }
    published_close(pins);
    print_message("%d rows are pinned outside of their source's band\n", count);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pins_are_what_they_say),
    };
    return cmocka_run_group_tests_name("pins", tests, NULL, NULL);
}
