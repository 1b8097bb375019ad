/* What is said of a plan that breaks something, made up here: no search and no run. */
#include "support/close.h"
#include "support/shipped.h"

#include "commands/plan/answer.h"

/* Each condition that can be broken says which part or dip breaks it, by how much, and on which clock. */
static void each_break_is_told_in_its_own_words(void **state)
{
    static const struct {
        boil_plan_break is;
        const char *words;
    } of[] = {
        {{.what = BOIL_PLAN_BREAKS_PLACING}, "finds no time at which it can hang"},
        {{.what = BOIL_PLAN_BREAKS_HEAT}, "takes more heat than lets the boil come back in time"},
        {{.what = BOIL_PLAN_BREAKS_MASS, .limit = 20}, "is heavier than the bath bears, 20.0 kg"},
        {{.what = BOIL_PLAN_BREAKS_WATER}, "is in as the bath runs short of water"},
        {{.what = BOIL_PLAN_BREAKS_RECOVERY, .value = 130, .limit = 120}, "may stop the boil for 130 s, the limit is 120 s"},
        {{.what = BOIL_PLAN_BREAKS_LATE, .value = 30}, "may have to wait 30 s for the boil"},
        {{.what = BOIL_PLAN_BREAKS_SHORT, .value = 540, .limit = 600}, " 1/2 is hot for 9.0 min only, of 10.0"},
        {{.what = BOIL_PLAN_BREAKS_LONG, .value = 660, .limit = 600}, " 1/2 is hot for 11.0 min, of at most 10.0"},
        {{.what = BOIL_PLAN_BREAKS_DUE, .value = 3900, .limit = 3600}, " 1/2 must be out by 7:00 and is at 7:05:00"},
        {{.what = BOIL_PLAN_BREAKS_END, .value = 7260, .limit = 7200}, "the last is out at 8:01:00, the shift ends at 8:00"},
        {{.what = BOIL_PLAN_BREAKS_BAND, .value = 1.5}, "the bath boils 1.5 K above its band"},
        {{.what = BOIL_PLAN_BREAKS_BAND, .value = -1.5}, "the bath boils 1.5 K below its band"},
        {{.what = BOIL_PLAN_BREAKS_FINDING, .value = 60, .title = "steam surges", .severity = BOIL_SEVERITY_WARNING},
         "WARNING: steam surges, 6:01:00"},
        {{.what = BOIL_PLAN_BREAKS_FINDING, .value = (double)NAN, .title = "steam surges", .severity = BOIL_SEVERITY_DANGER},
         "DANGER: steam surges"}};
    scenario s;
    boil_plan_part part = {.number = 0, .of = 2};
    boil_plan_dip dip = {.first = 0, .count = 1};
    size_t parts[] = {0};
    (void)state;
    read_shipped("plan/five-jobs.bath", &s);
    s.start_s = 6 * 3600;
    const plan_answer a = {.scenario = &s, .system = UNITS_SI, .planning.parts = {&part, 1}};
    boil_plan_proof p = {.table = {.dips = &dip, .dips_count = 1, .parts = parts}, .broken_count = 1};
    for (size_t i = 0; i < sizeof of / sizeof of[0]; i++) {
        p.broken[0] = of[i].is;
        const plan_words w = plan_broken(&a, &p, 0);
        assert_non_null(strstr(w.text, of[i].words));
        assert_int_equal(plan_broken_told(&p), 1);
    }
    scenario_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(each_break_is_told_in_its_own_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
