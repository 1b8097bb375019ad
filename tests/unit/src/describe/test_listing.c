/* What a charge comes to, by hand from tank and bath. */
#include "support/close.h"

#include <math.h>
#include <string.h>

#include "describe/listing.h"
#include "support/printed.h"
#include "support/shipped.h"

static double row_of(const listing_charge *c, const char *name)
{
    for (size_t i = 0; i < c->count; i++)
        if (strcmp(c->rows[i].name, name) == 0)
            return c->rows[i].si;
    fail_msg("'%s' is not told", name);
    return (double)NAN;
}

static void the_charge_fills_the_tank_to_its_level(void **state)
{
    (void)state;
    scenario s;
    read_shipped("normal-shift.bath", &s); /* 72 x 36 in, 30 deep, filled to 20 */
    listing_charge c = listing_charge_of(&s);
    double volume_m3 = 72 * 36 * 20 * pow(0.0254, 3), mass_kg = row_of(&c, "mass of bath");
    assert_close(row_of(&c, "freeboard"), 10 * 0.0254, 1e-12, 0);
    assert_close(row_of(&c, "volume of bath"), volume_m3, 1e-9, 0);
    assert_close(mass_kg, volume_m3 * row_of(&c, "density"), 1e-9, 0);
    assert_close(row_of(&c, "of it water"), mass_kg * (1 - row_of(&c, "salts by mass")), 1e-9, 0);
    assert_close(row_of(&c, "boils at"), (285 + 459.67) / 1.8, 1e-9, 0);
    assert_close(row_of(&c, "temperature"), row_of(&c, "boils at"), 1e-12, 0);
    assert_close(row_of(&c, "heaviest usual load"), s.plant.limits.load_per_volume_kg_m3 * volume_m3, 1e-9, 0);
    scenario_free(&s);
}

/* Each setting of a line of [breaks], in the words of the file. */
static void every_break_is_listed(void **state)
{
    (void)state;
    scenario s;
    printed p;
    read_shipped("plan/short-morning.bath", &s);
    assert_true(s.schedule.breaks_count > 0);
    printed_begin(&p);
    listing_print(&s, p.to);
    char *text = printed_end(&p), *at = strstr(text, "\n[breaks]\n");
    for (size_t i = 0; i < s.schedule.breaks_count; i++) {
        assert_non_null(at);
        at = strstr(at, s.wording.breaks[i].text);
    }
    assert_non_null(at);
    free(text);
    scenario_free(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_charge_fills_the_tank_to_its_level),
        cmocka_unit_test(every_break_is_listed),
    };
    return cmocka_run_group_tests_name("listing", tests, NULL, NULL);
}
