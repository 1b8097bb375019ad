/* The run against an integration of the same equations that shares no code with its rates or its steps
   (support/written_bath.h), within 0.2 %: quiet, boiling, with a load, with water into the boil, with water afloat that turns over. */
#include <gsl/gsl_errno.h>

#include "support/close.h"

#include "support/cases.h"
#include "support/written_bath.h"

/* Its error is of first order, so that of two steps, one half the other, twice the finer less the coarser has it taken out. */
#define STEP_S 0.1
#define AGREE 2e-3

static boil_history carried_out(const boil_plant *p, double duration_s, const boil_action *actions, size_t count)
{
    boil_run_options o = boil_run_options_default();
    return run_actions(p, duration_s, &o, actions, count);
}

typedef struct {
    double lost_s, back_s, lowest_K, steam_kg, steam_peak_kg_s, layer_peak_kg, boils_K;
} figures;

static figures figures_of(written_bath b, double to_s, double step_s)
{
    written_run(&b, to_s, step_s);
    return (figures){
        b.lost_s, b.back_s, b.lowest_K, b.steam_total_kg, b.steam_peak_kg_s, b.layer_peak_kg, written_boils(&b, b.water_kg)};
}

static double extrapolated(double coarse, double fine)
{
    return 2 * fine - coarse;
}

static figures by_hand(const written_bath *b, double to_s)
{
    figures c = figures_of(*b, to_s, STEP_S), f = figures_of(*b, to_s, STEP_S / 2);
    print_message("  back %.5f s at a step of %.2f s, %.5f at half of it; steam %.7f and %.7f kg\n", c.back_s, STEP_S, f.back_s,
                  c.steam_kg, f.steam_kg);
    return (figures){extrapolated(c.lost_s, f.lost_s),
                     extrapolated(c.back_s, f.back_s),
                     extrapolated(c.lowest_K, f.lowest_K),
                     extrapolated(c.steam_kg, f.steam_kg),
                     extrapolated(c.steam_peak_kg_s, f.steam_peak_kg_s),
                     extrapolated(c.layer_peak_kg, f.layer_peak_kg),
                     extrapolated(c.boils_K, f.boils_K)};
}

static void same_end(const boil_history *h, const figures *w)
{
    print_message("boils at %.5f K (%.5f), steam %.6f kg (%.6f)\n", h->summary.boiling_point_end_K, w->boils_K,
                  h->summary.steam_total_kg, w->steam_kg);
    assert_close(h->summary.steam_total_kg, w->steam_kg, AGREE, 0);
    assert_close(h->summary.boiling_point_end_K, w->boils_K, 1e-5, 0);
}

static void a_quiet_bath_comes_to_its_boil(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.charge.temperature_K = CELSIUS(130);
    boil_history h = carried_out(&p, 900, NULL, 0);
    written_bath b = written_begin(&p);
    figures w = by_hand(&b, 900);
    print_message("boils after %.4f s (%.4f)\n", h.summary.time_to_boil_s, w.back_s);
    assert_close(h.summary.time_to_boil_s, w.back_s, AGREE, 0);
    same_end(&h, &w);
    boil_history_free(&h);
}

static void a_boiling_bath_boils_down(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_history h = carried_out(&p, 900, NULL, 0);
    written_bath b = written_begin(&p);
    figures w = by_hand(&b, 900);
    same_end(&h, &w);
    boil_history_free(&h);
}

static void a_load_stops_the_boil(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_action a = plate_action(60, 1);
    boil_history h = carried_out(&p, 240, &a, 1);
    written_bath b = written_begin(&p);
    b.load = &a.is.load;
    b.load_s = 60;
    figures w = by_hand(&b, 240);
    print_message("boil lost %.4f s (%.4f), back %.4f (%.4f), lowest %.4f K (%.4f)\n", h.quiet[0].start_s, w.lost_s,
                  h.quiet[0].end_s, w.back_s, h.quiet[0].lowest_temperature_K, w.lowest_K);
    assert_int_equal(h.mode_changes, 2);
    assert_close(h.loads[0].recovery_s, w.back_s - w.lost_s, AGREE, 0);
    assert_close(h.quiet[0].lowest_temperature_K, w.lowest_K, 1e-5, 0);
    same_end(&h, &w);
    boil_history_free(&h);
}

static void water_into_the_boil_mixes_in(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    boil_action a = two_gallons_action(60, 120);
    boil_history h = carried_out(&p, 240, &a, 1);
    written_bath b = written_begin(&p);
    b.pour_from_s = 60;
    b.pour_to_s = 180;
    b.pour_kg_s = a.is.water.mass_kg / 120;
    b.pour_J_kg = boil_water_enthalpy(a.is.water.temperature_K);
    figures w = by_hand(&b, 240);
    print_message("most afloat %.6f kg (%.6f), most steam %.6f kg/s (%.6f)\n", h.summary.layer_max_kg.value, w.layer_peak_kg,
                  h.summary.steam_peak_kg_s.value, w.steam_peak_kg_s);
    assert_close(h.summary.layer_max_kg.value, w.layer_peak_kg, AGREE, 0);
    assert_close(h.summary.steam_peak_kg_s.value, w.steam_peak_kg_s, AGREE, 0);
    same_end(&h, &w);
    boil_history_free(&h);
}

/* Its return to the boil comes at the same moment, and so does the turnover. */
static void water_afloat_turns_over(void **state)
{
    (void)state;
    boil_plant p = pinned_plant();
    p.charge.temperature_K = p.charge.value - 0.5;
    p.afloat = (boil_water_afloat){2, CELSIUS(40)};
    boil_history h = carried_out(&p, 240, NULL, 0);
    written_bath b = written_begin(&p);
    figures w = by_hand(&b, 240);
    print_message("boil back %.4f s (%.4f), most steam %.6f kg/s (%.6f)\n", h.quiet[0].end_s, w.back_s,
                  h.summary.steam_peak_kg_s.value, w.steam_peak_kg_s);
    assert_close(h.quiet[0].end_s, w.back_s, AGREE, 0);
    assert_close(h.summary.steam_peak_kg_s.value, w.steam_peak_kg_s, AGREE, 0);
    same_end(&h, &w);
    boil_history_free(&h);
}

typedef struct {
    double back_s, steam_kg;
} found;

static found found_at(double tolerance)
{
    boil_plant p = pinned_plant();
    boil_action a = plate_action(60, 1);
    boil_run_options o = boil_run_options_default();
    o.tolerance = tolerance;
    boil_history h = run_actions(&p, 240, &o, &a, 1);
    found f = {h.quiet[0].end_s, h.summary.steam_total_kg};
    boil_history_free(&h);
    return f;
}

/* A tolerance is of each step's error: what is found then errs as a power of it near one. A hundredth must take off a tenth at the
   least. What is printed can be drawn. */
static void the_error_falls_with_the_tolerance(void **state)
{
    (void)state;
    found best = found_at(1e-11), usual = found_at(1e-5), fine = found_at(1e-7), finer = found_at(1e-9);
    double off[3] = {fabs(usual.back_s - best.back_s), fabs(fine.back_s - best.back_s), fabs(finer.back_s - best.back_s)};
    print_message("tolerance 1e-5, 1e-7, 1e-9: boil back within %.2g, %.2g, %.2g s, steam within %.2g, %.2g, %.2g kg\n", off[0],
                  off[1], off[2], fabs(usual.steam_kg - best.steam_kg), fabs(fine.steam_kg - best.steam_kg),
                  fabs(finer.steam_kg - best.steam_kg));
    assert_true(off[1] < off[0] / 10);
    assert_true(off[2] < off[1] / 10);
}

int main(void)
{
    gsl_set_error_handler_off();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_quiet_bath_comes_to_its_boil), cmocka_unit_test(a_boiling_bath_boils_down),
        cmocka_unit_test(a_load_stops_the_boil),          cmocka_unit_test(water_into_the_boil_mixes_in),
        cmocka_unit_test(water_afloat_turns_over),        cmocka_unit_test(the_error_falls_with_the_tolerance),
    };
    return cmocka_run_group_tests_name("written bath", tests, NULL, NULL);
}
