/* unit/model/integrate/test_fehlberg.c -- the explicit step on rates that move with time alone, which no bath's do within a step: what
   it gives is then a quadrature, exact to the fourth power of time, and its error estimate nothing below that [order conditions,
   Fehlberg, NASA TR R-315 (1969)]. */
#include <stdlib.h>

#include "support/close.h"

#include "integrate/fehlberg.h"

static boil_outcome power_of_time(double t, const double y[], double dydt[], void *context)
{
    (void)y;
    dydt[0] = pow(t, *(const int *)context);
    return BOIL_OK;
}

static void powers_of_time_are_integrated_exactly(void **state)
{
    (void)state;
    const double size = 1, from = 0.3, h = 0.9;
    for (int power = 0; power <= 5; power++) {
        boil_system s = {.unknowns = 1, .rates = power_of_time, .context = &power, .size = &size, .blocks_first = 1};
        double *room = calloc(BOIL_STEP_ROOM, sizeof *room),
               want = (pow(from + h, power + 1) - pow(from, power + 1)) / (power + 1);
        boil_step step;
        assert_non_null(room);
        boil_step_init(&step, room, 1);
        step.y0[0] = 2;
        step.f0[0] = pow(from, power);
        assert_true(boil_fehlberg_step(&step, &s, from, h));
        if (power <= 4)
            assert_close(step.y1[0], 2 + want, 1e-14, 0);
        else
            assert_true(fabs(step.y1[0] - 2 - want) > 1e-6);
        assert_true(power <= 3 ? fabs(step.error[0]) < 1e-14 : fabs(step.error[0]) > 1e-6);
        free(room);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(powers_of_time_are_integrated_exactly)};
    return cmocka_run_group_tests_name("fehlberg", tests, NULL, NULL);
}
