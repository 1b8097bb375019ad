/* Boiling points and water activity of the bath liquid; row by row against published tables in tests/validate. */
#include "properties/water.h"
#include "support/brine.h"
#include "support/tally.h"

#include <gsl/gsl_errno.h>

#define POUND 0.45359237         /* kg, exact */
#define US_GALLON 3.785411784e-3 /* m3, exact */
#define BATH_K (BOIL_ZERO_CELSIUS + (285 - 32) / 1.8)

static const double only_nitrate[BOIL_SALTS] = {0, 1, 0};

static boil_mixture row_mixture(published *table)
{
    const double fraction = published_number(table, "wt_pct") / 100;
    const char *salt = published_text(table, "salt");
    return boil_mixture_of(strcmp(salt, "NaOH") == 0 ? brine_caustic : only_nitrate, fraction);
}

/* Model less value, K. */
static double row_deviation(published *table, double elevation_factor)
{
    const boil_conditions c = boil_conditions_at(1e3 * published_number(table, "pressure_kPa"), elevation_factor);
    const boil_mixture m = row_mixture(table);
    const double T = brine_boils_at(&c, &m, NULL), value = published_number(table, "value");
    return strcmp(published_text(table, "quantity"), "rise") == 0 ? T - c.saturation_K - value : T - KELVIN(value);
}

/* All NaOH rows at one atmosphere with an elevation factor. */
static tally tally_of_factor(double elevation_factor)
{
    tally t = {0};
    published *table = published_open("tests/published/boiling_points.csv");
    while (published_next(table)) {
        if (strcmp(published_text(table, "salt"), "NaOH") == 0 && published_number(table, "pressure_kPa") > 101 &&
            published_number(table, "pressure_kPa") < 102)
            tally_add(&t, row_deviation(table, elevation_factor), published_text(table, "id"));
    }
    published_close(table);
    return t;
}

/* What the factor is for: the tables lie 3 to 8 % lower. With 0.95 all sixteen rows, 4 to 70 %, are met within 1.25
   K, with 0.93 within 2.25 K (the two data sheets themselves are 2.2 K apart). */
static void elevation_factor_meets_the_tables(void **state)
{
    (void)state;
    const tally middle = tally_of_factor(0.95), low = tally_of_factor(0.93);
    tally_print(&middle, "boiling of NaOH, elevation factor 0.95", "K");
    tally_print(&low, "boiling of NaOH, elevation factor 0.93", "K");
    assert_int_equal(middle.count, 16);
    assert_true(fabs(middle.worst) < 1.25);
    assert_true(fabs(low.worst) < 2.25);
}

static void row_blend(published *table, double blend[BOIL_SALTS])
{
    static const char *const column[BOIL_SALTS] = {"NaOH_pct", "NaNO3_pct", "NaNO2_pct"};
    for (int i = 0; i < BOIL_SALTS; i++)
        blend[i] = published_number(table, column[i]) / 100;
}

/* K per weight per cent at a constant blend: the slope along the direction in which salt replaces water. */
static double slope_per_percent(const double blend[BOIL_SALTS], const boil_slope *slope)
{
    double sum = -slope->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i] * slope->salt[i];
    return sum / 100;
}

/* The same correlations evaluated by another program; printed to three or four digits. Density agrees
   within 0.5 kg/m3 for NaOH alone and 2 kg/m3 where nitrate is in; the cause was not traced. */
static void blends_against_another_evaluation(void **state)
{
    (void)state;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    tally strength = {0}, density = {0}, boiling = {0};
    published *table = published_open("tests/published/blends.csv");
    while (published_next(table)) {
        double blend[BOIL_SALTS], w, weak;
        char name[16];
        boil_slope slope;
        row_blend(table, blend);
        snprintf(name, sizeof name, "%.0f/%.0f/%.0f", 100 * blend[0], 100 * blend[1], 100 * blend[2]);
        assert_int_equal(boil_solution_fraction_boiling_at(&c, blend, BATH_K, &w), BOIL_OK);
        const boil_mixture m = boil_mixture_of(blend, w);
        assert_close(brine_boils_at(&c, &m, &slope), BATH_K, 0, 1e-8);
        const double rho = boil_solution_density(&m, BATH_K), cp = boil_solution_heat(&m, BATH_K).heat_capacity_J_K;
        const double pounds = w * rho * US_GALLON / POUND;
        assert_int_equal(boil_solution_fraction_of_strength(&c, blend, 6 * POUND / US_GALLON, &weak), BOIL_OK);
        const boil_mixture thin = boil_mixture_of(blend, weak);
        const double six = brine_boils_at(&c, &thin, NULL) - BOIL_ZERO_CELSIUS;

        assert_close(100 * w, published_number(table, "salt_wt_pct"), 0, 0.1);
        assert_close(rho, published_number(table, "density_kg_m3"), 0, 3);
        assert_close(pounds, published_number(table, "strength_lb_gal"), 0, 0.02);
        assert_close(slope_per_percent(blend, &slope), published_number(table, "slope_K_wt_pct"), 0, 0.01);
        assert_close(cp / 1e3, published_number(table, "cp_kJ_kgK"), 0, 0.01);
        assert_close(cp / 1e3 * rho * US_GALLON, published_number(table, "cp_kJ_galK"), 0, 0.06);
        assert_close(six, published_number(table, "boils_at_6_lb_gal_degC"), 0, 0.2);
        tally_add(&strength, 100 * w - published_number(table, "salt_wt_pct"), name);
        tally_add(&density, rho - published_number(table, "density_kg_m3"), name);
        tally_add(&boiling, six - published_number(table, "boils_at_6_lb_gal_degC"), name);
    }
    published_close(table);
    tally_print(&strength, "blends, salts at 140.56 degC", "wt%");
    tally_print(&density, "blends, density", "kg/m3");
    tally_print(&boiling, "blends, boiling at 6 lb/gal", "K");
}

/* Standard atmosphere, ISO 2533. */
static double lowered_at(const double blend[BOIL_SALTS], double altitude_m)
{
    const boil_conditions sea = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const boil_conditions high = boil_conditions_at(101325 * pow(1 - 2.25577e-5 * altitude_m, 5.25588), 1);
    double w;
    assert_int_equal(boil_solution_fraction_boiling_at(&sea, blend, BATH_K, &w), BOIL_OK);
    const boil_mixture m = boil_mixture_of(blend, w);
    return BATH_K - brine_boils_at(&high, &m, NULL);
}

/* Computed independently from the same correlations: 5.7 K at 1600 m, 3.65 K per km for 65/35. */
static void altitude_lowers_the_boil(void **state)
{
    (void)state;
    tally t = {0};
    for (int i = 0; i < BRINE_BLENDS; i++) {
        const double fall = lowered_at(brine_blends[i], 1600);
        assert_close(fall, 5.7, 0, 0.2);
        tally_add(&t, fall - 5.7, i == 0 ? "NaOH" : "mixtures");
    }
    assert_close(lowered_at(brine_blends[2], 1000), 3.65, 0, 0.02);
    tally_print(&t, "boiling lower at 1600 m, less 5.7", "K");
}

/* --- Activity against Pitzer's equations --- */

typedef struct {
    double beta0, beta1, c_phi;
} pitzer;

static double row_parameter(published *table, double T)
{
    return published_number(table, "a1") + published_number(table, "a2") * (1 / T - 1 / 298.15) +
           published_number(table, "a3") * log(T / 298.15) + published_number(table, "a4") * (T - 298.15);
}

static pitzer pitzer_of(const char *salt, double T)
{
    pitzer p = {(double)NAN, (double)NAN, (double)NAN};
    published *table = published_open("tests/published/pitzer.csv");
    while (published_next(table)) {
        const char *name = published_text(table, "parameter");
        if (strcmp(published_text(table, "salt"), salt) != 0)
            continue;
        if (strcmp(name, "beta0") == 0)
            p.beta0 = row_parameter(table, T);
        else if (strcmp(name, "beta1") == 0)
            p.beta1 = row_parameter(table, T);
        else
            p.c_phi = row_parameter(table, T);
    }
    published_close(table);
    return p;
}

/* ln a of water over a 1:1 salt [Pitzer & Mayorga, J. Phys. Chem. 77 (1973) 2300]. slope: the Debye-Hueckel slope for
   the osmotic coefficient, 0.3915 / 0.4190 / 0.4605 at 25 / 60 / 100 degC. */
static double pitzer_log_activity(const pitzer *p, double slope, double molality)
{
    const double root = sqrt(molality);
    const double osmotic = 1 - slope * root / (1 + 1.2 * root) + molality * (p->beta0 + p->beta1 * exp(-2 * root)) +
                           molality * molality * p->c_phi;
    return -2 * 0.01801528 * molality * osmotic;
}

static const struct {
    double celsius, slope;
} debye[] = {{25, 0.3915}, {60, 0.4190}, {100, 0.4605}};

/* Relative deviation of the activity of m mol of a salt in 1 kg of water. */
static double activity_deviation(const char *name, int salt, double molality, size_t at)
{
    boil_mixture m = {.water = 1};
    boil_solution_guess guess = {0, 0};
    m.salt[salt] = molality * boil_salt_molar_mass(salt);
    const pitzer p = pitzer_of(name, KELVIN(debye[at].celsius));
    const double a = boil_solution_activity_near(&m, KELVIN(debye[at].celsius), &guess);
    return a / exp(pitzer_log_activity(&p, debye[at].slope, molality)) - 1;
}

/* NaOH, refit of He & Morse, to its 6 mol/kg: within 0.5 %, but for two pinned points at 25 degC. Below
   3 mol/kg the correlation of Olsson et al. is up to 0.8 % off, which a boiling point shows as 0.2 K. */
static void activity_over_caustic(void **state)
{
    (void)state;
    static const double expected[] = {0.7322, 0.7454, 0.7664}; /* Pitzer at 6 mol/kg, computed independently */
    tally t = {0};
    for (size_t at = 0; at < 3; at++) {
        const pitzer p = pitzer_of("NaOH", KELVIN(debye[at].celsius));
        assert_close(exp(pitzer_log_activity(&p, debye[at].slope, 6)), expected[at], 0, 1e-4);
        for (int molality = 3; molality <= 6; molality++) {
            const double d = 100 * activity_deviation("NaOH", BOIL_NAOH, molality, at);
            char name[32];
            snprintf(name, sizeof name, "NaOH %.0f degC %d mol/kg", debye[at].celsius, molality);
            pins_hold("pitzer", name, d, -0.5, 0.5);
            tally_add(&t, d, molality == 6 ? "6 mol/kg" : "3 to 5");
        }
    }
    tally_print(&t, "activity over NaOH, 25 to 100 degC", "%");
}

/* NaNO3 to 61 wt%, Archer's fit: at 100 degC the mole-fraction law misses the boil by no more than 0.35 K, the
   uncertainty stated for it. Colder, where it serves moisture exchange only, it is further off than the fit's 0.3 %: a pin. */
static void activity_over_nitrate(void **state)
{
    (void)state;
    const double rise = boil_water_saturation_pressure_slope(KELVIN(100)) / boil_water_saturation_pressure(KELVIN(100));
    tally hot = {0}, cold = {0};
    for (double w = 0.05; w < 0.62; w += 0.07) {
        const double molality = w / (1 - w) / boil_salt_molar_mass(BOIL_NANO3);
        const double kelvins = -activity_deviation("NaNO3", BOIL_NANO3, molality, 2) / rise;
        const double percent = 100 * activity_deviation("NaNO3", BOIL_NANO3, molality, 0);
        char name[16];
        assert_close(kelvins, 0, 0, 0.35);
        snprintf(name, sizeof name, "%.0f wt%%", 100 * w);
        tally_add(&hot, kelvins, name);
        tally_add(&cold, percent, name);
    }
    pins_hold("pitzer", "NaNO3 25 degC worst", cold.worst, -0.3, 0.3);
    tally_print(&hot, "activity over NaNO3 at 100 degC, as boiling point", "K");
    tally_print(&cold, "activity over NaNO3 at 25 degC", "%");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(elevation_factor_meets_the_tables),
        cmocka_unit_test(blends_against_another_evaluation),
        cmocka_unit_test(altitude_lowers_the_boil),
        cmocka_unit_test(activity_over_caustic),
        cmocka_unit_test(activity_over_nitrate),
    };
    gsl_set_error_handler_off();
    return cmocka_run_group_tests_name("boiling", tests, NULL, NULL);
}
