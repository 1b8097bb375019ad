/* The moment at which the tank is drawn, and the level at it, of a run that is made up here. */
#include "support/close.h"
#include "support/printed.h"
#include "support/shipped.h"

#include <stdlib.h>
#include <string.h>

#include "commands/run/page/sections.h"

typedef struct {
    scenario s;
    boil_row rows[3];
    boil_finding finding;
    carried_out o;
    boil_history trace;
} drawn;

/* At rest 0.4 m, a row every ten minutes; fullest at 600.5 s between two rows. */
static void make_up(drawn *d)
{
    *d = (drawn){.finding = {.severity = BOIL_SEVERITY_WARNING, .rank = 1, .worst_s = 1200, .time_s = 600}};
    read_shipped("normal-shift.bath", &d->s);
    for (int i = 0; i < 3; i++)
        d->rows[i] = (boil_row){.time_s = 600.0 * i, .still_level_m = 0.4, .level_m = 0.41 + 0.01 * i};
    d->o = (carried_out){.scenario = &d->s};
    d->o.central.end_s = 1200;
    d->o.central.summary.level_max_m = (boil_extreme){.value = 0.5, .time_s = 600.5};
    d->o.central.summary.overflow_s = (double)NAN;
    d->trace = (boil_history){.rows = d->rows, .rows_count = 3};
}

static char *draw(const drawn *d)
{
    printed p;
    printed_begin(&p);
    html h = html_to(p.to);
    page_tank(&h, &d->o, &d->trace, UNITS_SI);
    return printed_end(&p);
}

static void expect(const drawn *d, const char *swelled)
{
    char words[80], *text = draw(d);
    snprintf(words, sizeof words, "still surface 400 mm, swelled surface %s, rim", swelled);
    assert_non_null(strstr(text, words));
    free(text);
}

/* Without a finding the fullest moment; of a likely one its worst, and then the fullest level only where it is less than a second off. */
static void the_worst_moment_is_drawn(void **state)
{
    (void)state;
    drawn d;
    make_up(&d);
    expect(&d, "500 mm");
    d.o.found = (boil_findings){.list = &d.finding, .count = 1};
    expect(&d, "430 mm");
    d.finding.worst_s = 601.4;
    expect(&d, "500 mm");
    d.finding.worst_s = 601.6;
    expect(&d, "420 mm");
    d.finding.worst_s = 599.4;
    expect(&d, "420 mm");
    d.finding.worst_s = 900; /* as far from one row as from the next: the earlier */
    expect(&d, "420 mm");
    d.finding.worst_s = 1201; /* no moment of this run */
    expect(&d, "500 mm");
    d.finding.worst_s = (double)NAN;
    expect(&d, "500 mm");
    d.finding.worst_s = 0;
    expect(&d, "410 mm");
    d.o.possible = d.o.found;
    d.o.found.count = 0; /* of another run */
    expect(&d, "500 mm");
    scenario_free(&d.s);
}

static void nothing_is_drawn_without_rows(void **state)
{
    (void)state;
    drawn d;
    make_up(&d);
    d.trace.rows_count = 0;
    char *text = draw(&d);
    assert_string_equal(text, "");
    free(text);
    scenario_free(&d.s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(the_worst_moment_is_drawn),
                                       cmocka_unit_test(nothing_is_drawn_without_rows)};
    return cmocka_run_group_tests_name("tank", tests, NULL, NULL);
}
