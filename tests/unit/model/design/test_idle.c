/* What is put around a bath that stands hot. */
#include "support/close.h"

#include "design/idle.h"
#include "design/published_units.h"

static const boil_wall_insulation wall = {0.070, 10, 413.7, 297.04};

/* 2000 h, 10 $/MBtu at 60 %, 254 $ a m2, m and year: 2.1 in; without a price nothing pays. */
static void insulation_pays_as_worked_out(void **state)
{
    (void)state;
    const double price = 10 / (1e6 * BOIL_BTU) / 0.6, thick = boil_insulation_economic(&wall, 2000, price, 254);
    assert_close(thick / BOIL_INCH, 2.1, 0, 0.05);
    assert_true(boil_insulation_economic(&wall, 2000, 0, 254) == 0);
    assert_close(boil_insulation_economic(&wall, 2000, 4 * price, 254) + 0.007, 2 * (thick + 0.007), 1e-9, 0);
}

/* 60 degC is what skin bears for seconds (ASTM C1055, from memory); the face by conduction and film in series: 285 degF bare, 185 at 1/4 in, 150 at 1/2, 120 at 1. */
static void insulation_keeps_hands_whole(void **state)
{
    (void)state;
    const double thick = boil_insulation_touch(&wall);
    assert_close(thick / BOIL_INCH, 0.62, 0, 0.01);
    const double skin = wall.room_K + (wall.bath_K - wall.room_K) / (1 + thick * wall.film_W_m2K / wall.conductivity_W_mK);
    assert_close(skin, 333.15, 1e-9, 0);
    boil_wall_insulation hot = wall, mild = wall;
    hot.room_K = 334;
    mild.bath_K = 330;
    assert_true(isnan(boil_insulation_touch(&hot)));
    assert_true(boil_insulation_touch(&mild) == 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(insulation_pays_as_worked_out),
        cmocka_unit_test(insulation_keeps_hands_whole),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
