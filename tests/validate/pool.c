/* validate/pool.c -- gas held in the pool, mixing, and a layer of water on it. */
#include "validate/validate.h"

#include "transfer/dissolution.h"
#include "transfer/overturn.h"
#include "transfer/swell.h"

/* Without the law's constant, 1.53. */
static double drift_velocity(published *row)
{
    const boil_swell p = boil_swell_default();
    return boil_swell_drift_velocity(&p, published_number(row, "surface_tension_N_m"), published_number(row, "liquid_kg_m3"),
                                     published_number(row, "vapour_kg_m3")) /
           1.53;
}

/* Water at 100 degC, as in the tables. */
static double void_upper(published *row)
{
    const boil_swell p = boil_swell_default();
    const double drift = boil_swell_drift_velocity(&p, 0.05891, 958.354, 0.59814);
    return boil_swell_void_upper(&p, drift, published_number(row, "steam_m_s"));
}

static evidence hold_up(published *row)
{
    const boil_swell p = boil_swell_default();
    const double drift = boil_swell_drift_velocity(&p, 0.0720, 997, 1.18), gas = published_number(row, "gas_m_s");
    return (evidence){boil_swell_void_lower(&p, drift, gas), boil_swell_void_upper(&p, drift, gas)};
}

/* The table has the time to 95 %; the model's time constant is a third of it. */
static double mixing_time(published *row)
{
    return 3 * boil_swell_mixing_time(1, published_number(row, "stirring_W_kg"), published_number(row, "radius_m"),
                                      published_number(row, "depth_m"));
}

/* --- A layer --- */

/* w/u at a Richardson number: b and H 1, so that u = Ri^(-1/2). */
static double eroded(double richardson)
{
    const double u = 1 / sqrt(richardson);
    return boil_overturn_erosion(1, 1, u) / u;
}

static double erosion_exponent(published *row)
{
    (void)row;
    return log(eroded(100) / eroded(20)) / log(100.0 / 20);
}

static double erosion_constant(published *row)
{
    (void)row;
    return eroded(100) * pow(100, 1.5);
}

/* In (H^2/eps)^(1/3), by the gravest and the mildest law that a case is judged by. */
static evidence turnover(published *row)
{
    (void)row;
    const boil_overturn grave = {0.3, 0.05}, mild = {3, 0.05};
    const boil_overturn_pool pool = {1, 1, 1450, 1000, 1};
    return (evidence){boil_overturn_time(&grave, &pool), boil_overturn_time(&mild, &pool)};
}

/* Of lifting a layer: energy that it takes, m b H/2 rho A H eps tau. */
static double efficiency(double eta)
{
    const boil_overturn o = {1, eta};
    const boil_overturn_pool pool = {1, 1, 1450, 1000, 1};
    return boil_overturn_buoyancy(&pool) / (2 * 1450 * boil_overturn_lifting_time(&o, &pool, 1));
}

static evidence efficiencies(published *row)
{
    (void)row;
    return (evidence){efficiency(0.02), efficiency(0.2) * (1 + 1e-12)}; /* but for rounding */
}

static double diffusivity(published *row)
{
    (void)row;
    return boil_dissolution_diffusivity(298.15, 0.89e-3);
}

validate_list validate_pool(void)
{
    static const char label[] = "{quantity}";
    static const validate_quantity drifts[] = {
        {"swell", NULL, "rise of bubbles, {liquid_kg_m3} kg/m3", "m/s", drift_velocity, NULL}};
    static const validate_quantity voids[] = {
        {"swell", "churn", "void, churn, {steam_m_s} m/s", "1", void_upper, NULL},
        {"swell", "wide pool", "void, wide pool, {steam_m_s} m/s", "1", void_upper, NULL},
    };
    static const validate_quantity held[] = {{"swell", NULL, "air held in water, {gas_m_s} m/s", "1", NULL, hold_up}};
    static const validate_quantity mixing[] = {
        {"mixing", NULL, "95 % mixed, {stirring_W_kg} W/kg, {radius_m} m", "s", mixing_time, NULL}};
    static const validate_quantity layer[] = {
        {NULL, "erosion, exponent of Ri, salt", label, NULL, erosion_exponent, NULL},
        {NULL, "erosion, exponent of Ri, heat", label, NULL, erosion_exponent, NULL},
        {NULL, "erosion, constant", label, NULL, erosion_constant, NULL},
        {NULL, "turnover of eddies", label, NULL, NULL, turnover},
        {NULL, "efficiency of mixing by shear", label, NULL, NULL, efficiencies},
        {NULL, "NaOH diffuses in water of 25 degC", label, NULL, diffusivity, NULL},
        {NULL, "NaNO3 diffuses in water of 25 degC", label, NULL, diffusivity, NULL},
    };
    static const validate_table tables[] = {
        {"tests/published/drift_velocity.csv", drifts, COUNT(drifts)},
        {"tests/published/void.csv", voids, COUNT(voids)},
        {"tests/published/hold_up.csv", held, COUNT(held)},
        {"tests/published/mixing_time.csv", mixing, COUNT(mixing)},
        {"tests/published/layer.csv", layer, COUNT(layer)},
    };
    return (validate_list){tables, COUNT(tables)};
}
