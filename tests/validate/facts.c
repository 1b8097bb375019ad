/* validate/facts.c -- single values of solutions, salts and air; and what the trade goes by. */
#include "validate/validate.h"

#include "equipment/ambient.h"
#include "properties/solubility.h"
#include "properties/viscosity.h"
#include "properties/water.h"
#include "support/brine.h"
#include "support/cases.h"

#define LB_GAL 119.826427 /* kg/m3 */

static double at(published *row)
{
    return published_number(row, "at");
}

static double water_viscosity(published *row)
{
    return 1e3 * boil_viscosity_water(KELVIN(at(row)));
}

static double caustic_viscosity(published *row)
{
    const boil_mixture m = brine_of_caustic(at(row));
    return 1e3 * boil_viscosity_solution(&m, KELVIN(20));
}

static double air_pressure(published *row)
{
    return boil_ambient_pressure_at_altitude(at(row));
}

static double vapour_pressure(published *row)
{
    const boil_mixture m = brine_of_caustic(50);
    boil_solution_guess guess = {0, 0};
    return 1e-3 * boil_solution_activity_near(&m, KELVIN(at(row)), &guess) * boil_water_saturation_pressure(KELVIN(at(row)));
}

static double nitrate_in_water(published *row)
{
    return 100 * boil_solubility(BOIL_NANO3, KELVIN(at(row)), 0) * boil_salt_molar_mass(BOIL_NANO3);
}

/* Where water saturated with nitrate has a vapour pressure of 1 atm, by bisection. */
static double saturated_nitrate_boils(published *row)
{
    (void)row;
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    double low = 100, high = 140;
    for (int i = 0; i < 40; i++) {
        const double t = (low + high) / 2;
        const boil_mixture m = {1, {0, boil_solubility(BOIL_NANO3, KELVIN(t), 0) * boil_salt_molar_mass(BOIL_NANO3), 0}};
        *(brine_boils_at(&c, &m, NULL) > KELVIN(t) ? &low : &high) = t;
    }
    return low;
}

static double freezes_beside_nitrate(published *row)
{
    const boil_mixture m = {1, {20.7 * boil_salt_molar_mass(BOIL_NAOH), 1.3 * boil_salt_molar_mass(BOIL_NANO3), 0}};
    return at(row) - boil_solubility_above_liquidus(&m, KELVIN(at(row)));
}

static double solid_heat_capacity(int salt, double celsius)
{
    return boil_salt_solid_heat_capacity(salt, KELVIN(celsius)) * boil_salt_molar_mass(salt);
}

static double solid_hydroxide(published *row)
{
    return solid_heat_capacity(BOIL_NAOH, at(row));
}

static double solid_nitrate(published *row)
{
    return solid_heat_capacity(BOIL_NANO3, at(row));
}

static double solid_nitrite(published *row)
{
    return solid_heat_capacity(BOIL_NANO2, at(row));
}

/* --- What the trade goes by --- */

static void blend_of(published *row, double blend[BOIL_SALTS])
{
    const char *text = published_text(row, "blend");
    if (sscanf(text, "%lf/%lf/%lf", &blend[0], &blend[1], &blend[2]) != 3)
        fail_msg("%s: no such blend: %s", row->path, text);
    for (int i = 0; i < BOIL_SALTS; i++)
        blend[i] /= 100;
}

static double salts_in_a_gallon(published *row)
{
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    const double boils_K = BOIL_ZERO_CELSIUS + (285 - 32) / 1.8;
    double blend[BOIL_SALTS], w;
    blend_of(row, blend);
    assert_int_equal(boil_solution_fraction_boiling_at(&c, blend, boils_K, &w), BOIL_OK);
    const boil_mixture m = boil_mixture_of(blend, w);
    return w * boil_solution_density(&m, boils_K) / LB_GAL;
}

static double six_pounds_boil(published *row)
{
    const boil_conditions c = boil_conditions_at(BOIL_STANDARD_ATMOSPHERE, 1);
    double blend[BOIL_SALTS], w;
    blend_of(row, blend);
    assert_int_equal(boil_solution_fraction_of_strength(&c, blend, 6 * LB_GAL, &w), BOIL_OK);
    const boil_mixture m = boil_mixture_of(blend, w);
    return (brine_boils_at(&c, &m, NULL) - BOIL_ZERO_CELSIUS) * 1.8 + 32;
}

/* Of the pinned bath with as much heat as makes up what it loses while nothing is in it. */
static double a_load_is_back(published *row)
{
    (void)row;
    boil_plant p = pinned_plant();
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = 2;
    p.losses = boil_losses_default();
    boil_history still = run_actions(&p, 60, &o, NULL, 0);
    p.heater.input_W += still.rows[0].wall_W + still.rows[0].surface_W + still.rows[0].evaporated_kg_s * 2.6e6;
    boil_history_free(&still);
    const boil_action one = plate_action(60, 1);
    boil_history h = run_actions(&p, 900, &o, &one, 1);
    const double back_s = h.loads[0].recovery_s;
    boil_history_free(&h);
    return back_s;
}

static double hung_parts_carry_out(published *row)
{
    (void)row;
    const double rho = 1450, mu = 2e-3, sigma = 0.085;
    boil_load l = boil_load_default();
    l.mass_kg = 22.68;
    l.size_m = 6e-3;
    l.lowering_s = 10;
    return 1e6 * boil_drag_out(&l, mu, rho, sigma) / rho / boil_load_wetted(&l);
}

validate_list validate_facts(void)
{
    static const char group[] = "trade facts", degrees[] = "{quantity}, {at} degC", label[] = "{quantity}";
    static const validate_quantity single[] = {
        {NULL, "viscosity of water", degrees, NULL, water_viscosity, NULL},
        {NULL, "pressure of air", "{quantity}, {at} m", NULL, air_pressure, NULL},
        {NULL, "viscosity of NaOH", "{quantity}, {at} %", NULL, caustic_viscosity, NULL},
        {NULL, "vapour pressure of 50 % NaOH", degrees, NULL, vapour_pressure, NULL},
        {NULL, "saturated NaNO3 boils at 1 atm", label, NULL, saturated_nitrate_boils, NULL},
        {NULL, "NaNO3 in water beyond its table", degrees, NULL, nitrate_in_water, NULL},
        {NULL, "20.7 mol/kg NaOH with 1.3 NaNO3 freezes", label, NULL, freezes_beside_nitrate, NULL},
        {NULL, "heat capacity of solid NaOH", label, NULL, solid_hydroxide, NULL},
        {NULL, "heat capacity of solid NaNO3", label, NULL, solid_nitrate, NULL},
        {NULL, "heat capacity of solid NaNO2", label, NULL, solid_nitrite, NULL},
    };
    static const validate_quantity trade[] = {
        {group, "salts in a gallon that boils at 285 F", "{blend} boils at 285 F", NULL, salts_in_a_gallon, NULL},
        {group, "6 lb/gal boils at", "6 lb/gal of {blend} boil", NULL, six_pounds_boil, NULL},
        {group, "1 lb per 2 gal is back in", label, NULL, a_load_is_back, NULL},
        {group, "hung parts carry out", label, NULL, hung_parts_carry_out, NULL},
    };
    static const validate_table tables[] = {
        {"tests/published/single_values.csv", single, COUNT(single)},
        {"tests/published/trade_facts.csv", trade, COUNT(trade)},
    };
    return (validate_list){tables, COUNT(tables)};
}
