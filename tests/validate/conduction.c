/* validate/conduction.c -- parts that warm and cool with a constant coefficient: textbook examples. */
#include "validate/validate.h"

#include "support/close.h"
#include "support/heating.h"

static double number(published *row, const char *column)
{
    return published_number(row, column);
}

/* One square metre of it, without the limit on fast answers. */
static boil_conduction_body body_of(published *row, int unknowns)
{
    const char *shape = published_text(row, "shape");
    const int dimension = strcmp(shape, "slab") == 0 ? 1 : strcmp(shape, "cylinder") == 0 ? 2 : 3;
    const double density = 1000, radius_m = number(row, "radius_m");
    return (boil_conduction_body){.dimension = dimension,
                                  .unknowns = unknowns,
                                  .radius_m = radius_m,
                                  .area_m2 = 1,
                                  .mass_kg = density * radius_m / dimension,
                                  .density_kg_m3 = density,
                                  .metal = {.density_kg_m3 = density,
                                            .heat_capacity = {number(row, "volumetric_J_m3K") / density},
                                            .conductivity = {number(row, "conductivity_W_mK")}}};
}

static heating after(published *row, double time_s)
{
    const boil_conduction_body b = body_of(row, BOIL_CONDUCTION_UNKNOWNS_MAX);
    heating h = heating_start(&b, number(row, "start_C"), number(row, "fluid_C"), number(row, "coefficient_W_m2K"));
    heating_advance(&h, time_s);
    return h;
}

static double surface_of(const heating *h)
{
    return boil_conduction_surface_temperature(&h->body, h->y, h->fluid_K, h->coefficient_W_m2K);
}

/* P_k of transfer/conduction.h at xi: the even polynomials orthogonal with weight xi^(d-1), 1 at the surface; by their sum
   (-1)^(k-i) C(k, i) (k + d/2)_i / (d/2)_i xi^2i, with (a)_i rising, of Jacobi's polynomials, over its value at xi = 1. */
static double polynomial(int dimension, int k, double xi)
{
    double sum = 0, at_surface = 0, term = k % 2 == 0 ? 1 : -1;
    for (int i = 0; i <= k; i++) {
        sum += term * pow(xi, 2 * i);
        at_surface += term;
        term *= -(k - i) * (k + 0.5 * dimension + i) / ((i + 1) * (0.5 * dimension + i));
    }
    return sum / at_surface;
}

/* One polynomial more than there are unknowns makes up the surface's temperature. */
static double inside(const heating *h, double xi)
{
    double at_surface = 0, here = 0;
    for (int k = 0; k < h->body.unknowns; k++) {
        at_surface += h->y[k];
        here += h->y[k] * polynomial(h->body.dimension, k, xi);
    }
    return here + (surface_of(h) - at_surface) * polynomial(h->body.dimension, h->body.unknowns, xi);
}

static double surface(published *row)
{
    const heating h = after(row, number(row, "time_s"));
    return surface_of(&h);
}

static double centre(published *row)
{
    const heating h = after(row, number(row, "time_s"));
    return inside(&h, 0);
}

static double halfway(published *row)
{
    const heating h = after(row, number(row, "time_s"));
    return inside(&h, 0.5);
}

static double flux(published *row)
{
    const heating h = after(row, number(row, "time_s"));
    return h.coefficient_W_m2K * (h.fluid_K - surface_of(&h));
}

static double share(published *row)
{
    const heating h = after(row, number(row, "time_s"));
    return (h.y[0] - number(row, "start_C")) / (h.fluid_K - number(row, "start_C"));
}

static double all_heat_J(published *row)
{
    return number(row, "volumetric_J_m3K") * number(row, "volume_m3") * fabs(number(row, "fluid_C") - number(row, "start_C"));
}

static double heat_kJ(published *row)
{
    return share(row) * all_heat_J(row) / 1e3;
}

/* In the row's unit. */
static double of_seconds(published *row, double s)
{
    const char *unit = published_text(row, "unit");
    return strcmp(unit, "h") == 0 ? s / 3600 : strcmp(unit, "min") == 0 ? s / 60 : s;
}

/* By bisection between none and thrice the time that is printed. */
static double time_of_centre(published *row)
{
    const double until = number(row, "until_C"), start = number(row, "start_C");
    double low = 0, high = 3 * number(row, "value") / of_seconds(row, 1);
    for (int i = 0; i < 40; i++) {
        const double s = (low + high) / 2;
        const heating h = after(row, s);
        const double went = (inside(&h, 0) - start) / (until - start);
        *(went < 1 ? &low : &high) = s;
    }
    return of_seconds(row, low);
}

/* --- The whole part at one temperature: a conductivity without limit --- */

static double lumped_rate(published *row)
{
    boil_conduction_body b = body_of(row, 1);
    const double start = number(row, "start_C"), fluid = number(row, "fluid_C");
    double y[1], rate[1];
    b.conductivity_W_mK = HUGE_VAL;
    boil_conduction_init(&b, start, y);
    boil_conduction_rates(&b, y, fluid, number(row, "coefficient_W_m2K"), 1, rate);
    return rate[0] / (fluid - start);
}

static double lumped_time(published *row)
{
    const double fluid = number(row, "fluid_C");
    return log((number(row, "start_C") - fluid) / (number(row, "until_C") - fluid)) / lumped_rate(row);
}

static double lumped_temperature(published *row)
{
    const double fluid = number(row, "fluid_C");
    return fluid + (number(row, "start_C") - fluid) * exp(-lumped_rate(row) * number(row, "time_s"));
}

static double lumped_heat_J(published *row)
{
    return all_heat_J(row) * (1 - exp(-lumped_rate(row) * number(row, "time_s")));
}

/* Of which time_s is the time constant, which grows with the size. */
static double lumped_diameter(published *row)
{
    return 2 * number(row, "radius_m") * lumped_rate(row) * number(row, "time_s");
}

validate_list validate_conduction(void)
{
    static const char group[] = "conduction", label[] = "{quantity}, {shape} {radius_m} m, {time_s} s, {until_C} degC";
    static const validate_quantity quantities[] = {
        {group, "surface", label, NULL, surface, NULL},
        {group, "centre", label, NULL, centre, NULL},
        {group, "halfway", label, NULL, halfway, NULL},
        {group, "flux", label, NULL, flux, NULL},
        {group, "share of heat", label, NULL, share, NULL},
        {group, "heat", label, NULL, heat_kJ, NULL},
        {group, "time of centre", label, NULL, time_of_centre, NULL},
        {group, "lumped rate", label, NULL, lumped_rate, NULL},
        {group, "lumped time", label, NULL, lumped_time, NULL},
        {group, "lumped temperature", label, NULL, lumped_temperature, NULL},
        {group, "lumped heat", label, NULL, lumped_heat_J, NULL},
        {group, "lumped diameter", label, NULL, lumped_diameter, NULL},
    };
    static const validate_table tables[] = {{"tests/published/conduction_examples.csv", quantities, COUNT(quantities)}};
    return (validate_list){tables, COUNT(tables)};
}
