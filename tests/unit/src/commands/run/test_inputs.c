/* What the page says of a scenario's inputs: no run. */
#include "support/close.h"

#include <stdlib.h>
#include <string.h>

#include "commands/run/page/sections.h"
#include "support/printed.h"
#include "support/shipped.h"

/* Each as it stands in the scenario, from the first to the last. */
static void every_uncertain_input_is_told(void **state)
{
    (void)state;
    scenario s;
    printed p;
    read_shipped("uncertain-shift.bath", &s);
    printed_begin(&p);
    html h = html_to(p.to);
    page_inputs(&h, &s);
    char *text = printed_end(&p), *at = strstr(text, "What is uncertain");
    assert_int_equal(s.uncertain_count, 5);
    assert_non_null(at);
    for (size_t i = 0; i < s.uncertain_count; i++) {
        at = strstr(at, s.uncertain[i].thing.words);
        assert_non_null(at);
        at = strstr(at, s.uncertain[i].as_written);
        assert_non_null(at);
    }
    free(text);
    scenario_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_uncertain_input_is_told)};
    return cmocka_run_group_tests_name("inputs", tests, NULL, NULL);
}
