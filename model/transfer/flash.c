#include "transfer/flash.h"

#include <math.h>
#include <stddef.h>

#include "base/bisection.h"
#include "properties/water.h"

#define LEAST_BATH_SHARE 0.3
#define MOST_BATH_SHARE 0.9999

/* What the correlation's heat of dilution lacks: (factor - 1) times the integral of L1 over the water that comes in, at one
   temperature, so that heat capacities stay as they are. With the salts unchanged the integral is the difference of
   H - m_w hw from where it began. */
typedef struct {
    double more; /* factor - 1 */
    double temperature_K, start_J;
} dilution;

/* H - m_w hw, J. */
static double beyond_water(const boil_heat *h, const boil_mixture *m, double T)
{
    return h->enthalpy_J - m->water * boil_water_enthalpy(T);
}

static dilution dilution_from(const boil_mixture *m, double T, double factor)
{
    boil_heat h = boil_solution_heat(m, T);
    return (dilution){factor - 1, T, beyond_water(&h, m, T)};
}

/* J, and by water, J/kg. */
static double dilution_heat(const dilution *d, const boil_mixture *m, double *by_water)
{
    *by_water = 0;
    if (d->more == 0)
        return 0;
    boil_heat h = boil_solution_heat(m, d->temperature_K);
    *by_water = d->more * (h.water - boil_water_enthalpy(d->temperature_K));
    return d->more * (beyond_water(&h, m, d->temperature_K) - d->start_J);
}

/* (1) by Newton on the steam: what a kilogram of it takes is hv - K. */
static double steam_of(const boil_conditions *air, const boil_mixture *mixed, double enthalpy_J, const dilution *d)
{
    boil_solution_guess guess = {0, 0};
    double flash = 0;
    for (int i = 0; i < 40; i++) {
        boil_mixture m = *mixed;
        m.water -= flash;
        double T, more_K;
        boil_slope slope;
        if (!(m.water > 0) || boil_solution_boiling_point_near(air, &m, &guess, &T, &slope) != BOIL_OK)
            return (double)NAN;
        boil_heat h = boil_solution_heat(&m, T);
        double more_J = dilution_heat(d, &m, &more_K), steam_J = boil_steam_enthalpy(T, air->pressure_Pa);
        double surplus = enthalpy_J - h.enthalpy_J - more_J - flash * steam_J;
        double step = surplus / (steam_J - h.water - more_K - h.heat_capacity_J_K * slope.water);
        flash += step;
        if (fabs(step) < 1e-13 * mixed->water)
            return flash;
    }
    return (double)NAN;
}

double boil_flash_steam(const boil_conditions *air, const boil_mixture *m, double enthalpy_J)
{
    const dilution none = {0, 0, 0};
    return steam_of(air, m, enthalpy_J, &none);
}

/* The bath as a kilogram at its temperature. */
typedef struct {
    boil_mixture kilogram;
    double enthalpy_J;
    dilution dilution;
} prepared;

static boil_outcome prepare(const boil_flash_bath *b, prepared *p)
{
    double T;
    boil_solution_guess guess = {0, 0};
    p->kilogram = boil_mixture_scaled(&b->mixture, 1 / boil_mixture_mass(&b->mixture));
    if (boil_solution_boiling_point_near(&b->air, &p->kilogram, &guess, &T, NULL) != BOIL_OK)
        return BOIL_NO_ROOT;
    T = fmin(T, b->temperature_K);
    p->enthalpy_J = boil_solution_heat(&p->kilogram, T).enthalpy_J;
    p->dilution = dilution_from(&p->kilogram, T, b->dilution_factor);
    return BOIL_OK;
}

/* phi kg of bath and 1 - phi kg of water, with their enthalpy; the dilution begins with the bath's share. */
static boil_mixture mix(const prepared *p, double layer_K, double phi, double *enthalpy_J, dilution *d)
{
    boil_mixture m = boil_mixture_scaled(&p->kilogram, phi);
    m.water += 1 - phi;
    *enthalpy_J = phi * p->enthalpy_J + (1 - phi) * boil_water_enthalpy(layer_K);
    *d = p->dilution;
    d->start_J *= phi;
    return m;
}

static double yield_at(const boil_flash_bath *b, const prepared *p, double layer_K, double phi)
{
    double enthalpy_J;
    dilution d;
    boil_mixture m = mix(p, layer_K, phi, &enthalpy_J, &d);
    return steam_of(&b->air, &m, enthalpy_J, &d) / (1 - phi);
}

double boil_flash_yield_at(const boil_flash_bath *b, double layer_K, double bath_share)
{
    prepared p;
    return prepare(b, &p) == BOIL_OK ? yield_at(b, &p, layer_K, bath_share) : (double)NAN;
}

double boil_flash_superheat(const boil_flash_bath *b, double layer_K, double bath_share)
{
    prepared p;
    double enthalpy_J, T, unused;
    dilution d;
    boil_solution_guess guess = {0, 0};
    if (prepare(b, &p) != BOIL_OK)
        return (double)NAN;
    boil_mixture m = mix(&p, layer_K, bath_share, &enthalpy_J, &d);
    if (boil_solution_boiling_point_near(&b->air, &m, &guess, &T, NULL) != BOIL_OK)
        return (double)NAN;
    return boil_solution_temperature(&m, enthalpy_J - dilution_heat(&d, &m, &unused), T) - T;
}

/* Golden section on the signed curve: clipped at nothing it would be flat where the search begins, and lead astray. */
static double largest(const boil_flash_bath *b, const prepared *p, double layer_K, double *at)
{
    const double golden = 0.6180339887498949, precision = 2e-5;
    double low = LEAST_BATH_SHARE, high = MOST_BATH_SHARE;
    double left = high - golden * (high - low), right = low + golden * (high - low);
    double y_left = yield_at(b, p, layer_K, left), y_right = yield_at(b, p, layer_K, right);
    while (high - low > precision) {
        if (y_left > y_right) {
            high = right, right = left, y_right = y_left;
            left = high - golden * (high - low);
            y_left = yield_at(b, p, layer_K, left);
        } else {
            low = left, left = right, y_left = y_right;
            right = low + golden * (high - low);
            y_right = yield_at(b, p, layer_K, right);
        }
    }
    *at = y_left > y_right ? left : right;
    return fmax(y_left, y_right);
}

double boil_flash_yield(const boil_flash_bath *b, double layer_K, double *bath_share)
{
    prepared p;
    double at;
    if (prepare(b, &p) != BOIL_OK)
        return (double)NAN;
    double y = largest(b, &p, layer_K, &at);
    if (bath_share)
        *bath_share = at;
    return y < 0 ? 0 : y; /* not fmax, which would hide a NaN */
}

double boil_flash_yield_limit(const boil_flash_bath *b, double layer_K)
{
    double T;
    boil_slope slope;
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(&b->air, &b->mixture, &guess, &T, &slope) != BOIL_OK)
        return (double)NAN;
    boil_heat h = boil_solution_heat(&b->mixture, T);
    double pure = boil_water_enthalpy(T);
    double K = pure + b->dilution_factor * (h.water - pure) + h.heat_capacity_J_K * slope.water;
    return (boil_water_enthalpy(layer_K) - K) / (boil_steam_enthalpy(T, b->air.pressure_Pa) - K);
}

typedef struct {
    const boil_conditions *air;
    const double *blend;
    double dilution_factor, water_K;
    double boiling_point_K; /* of the last bath that was asked about */
} turning;

static boil_outcome flashes(void *context, double salt_fraction, bool *yes)
{
    turning *t = context;
    boil_flash_bath b = {*t->air, boil_mixture_of(t->blend, salt_fraction), (double)INFINITY, t->dilution_factor};
    boil_solution_guess guess = {0, 0};
    if (boil_solution_boiling_point_near(t->air, &b.mixture, &guess, &t->boiling_point_K, NULL) != BOIL_OK)
        return BOIL_NO_ROOT;
    *yes = boil_flash_yield_limit(&b, t->water_K) > 0;
    return BOIL_OK;
}

boil_outcome boil_flash_turning_point(const boil_conditions *air, const double blend[BOIL_SALTS], double dilution_factor,
                                      double water_K, double *boiling_point_K)
{
    turning t = {.air = air, .blend = blend, .dilution_factor = dilution_factor, .water_K = water_K};
    boil_bisection search = {flashes, &t, .from = 0.05, .most = 0.7, .ratio = 1.1, .precision = 1e-6};
    double no, yes;
    boil_outcome outcome = boil_bisect(&search, &no, &yes);
    if (outcome != BOIL_OK || !isfinite(no))
        return BOIL_NO_ROOT;
    bool unused;
    outcome = flashes(&t, yes, &unused);
    *boiling_point_K = t.boiling_point_K;
    return outcome;
}
