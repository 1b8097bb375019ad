#include "transfer/flash.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_min.h>
#include <math.h>
#include <stddef.h>

#include "base/bisection.h"
#include "base/constants.h"
#include "base/golden.h"
#include "properties/solubility.h"
#include "properties/water.h"

#define LEAST_BATH_SHARE 0.3
#define MOST_BATH_SHARE 0.9999
#define WETTED_SALT 3.2 /* kg per kg of water that fills its pores: 2150 (1 - 0.4)/(0.4 1000) */

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

/* Where the last search ended: boiling point, steam per kilogram of mixture, and kg of it that a joule more would give. */
typedef struct {
    boil_solution_guess boiling;
    double steam, steam_J;
} near_by;

/* (1) by Newton on the steam: what a kilogram of it takes is hv - K. */
static double steam_of(const boil_conditions *air, const boil_mixture *mixed, double enthalpy_J, const dilution *d,
                       near_by *near)
{
    const double vapour_J_kgK = 2000; /* it only aims the steps */
    double kilograms = boil_mixture_mass(mixed), flash = near->steam * kilograms, near_kg = 1e-6 * mixed->water;
    for (int i = 0; i < 40; i++) {
        boil_mixture m = *mixed;
        m.water -= flash;
        double T, more_K;
        boil_slope slope;
        if (!(m.water > 0) || boil_solution_boiling_point_near(air, &m, &near->boiling, &T, &slope) != BOIL_OK)
            return (double)NAN;
        boil_heat h = boil_solution_heat(&m, T);
        double more_J = dilution_heat(d, &m, &more_K), steam_J = boil_steam_enthalpy(T, air->pressure_Pa);
        double surplus = enthalpy_J - h.enthalpy_J - more_J - flash * steam_J;
        near->steam_J = 1 / (steam_J - h.water - more_K - (h.heat_capacity_J_K + flash * vapour_J_kgK) * slope.water);
        double step = surplus * near->steam_J;
        flash += step;
        if (fabs(step) < near_kg) { /* the next is of ten thousand times less */
            near->steam = flash / kilograms;
            return flash;
        }
    }
    return (double)NAN;
}

double boil_flash_steam(const boil_conditions *air, const boil_mixture *m, double enthalpy_J)
{
    const dilution none = {0, 0, 0};
    near_by cold = {.steam = 0};
    return steam_of(air, m, enthalpy_J, &none, &cold);
}

/* The bath as a kilogram at its temperature. */
typedef struct {
    boil_mixture kilogram;
    double enthalpy_J, capacity_J_kgK; /* none above its boil */
    dilution dilution;
    near_by near;
} prepared;

static boil_outcome prepare(const boil_flash_bath *b, prepared *p)
{
    double T;
    p->near = (near_by){.steam = 0};
    p->kilogram = boil_mixture_scaled(&b->mixture, 1 / boil_mixture_mass(&b->mixture));
    if (boil_solution_boiling_point_near(&b->air, &p->kilogram, &p->near.boiling, &T, NULL) != BOIL_OK)
        return BOIL_NO_ROOT;
    bool boils = T <= b->temperature_K;
    T = fmin(T, b->temperature_K);
    boil_heat h = boil_solution_heat(&p->kilogram, T);
    p->enthalpy_J = h.enthalpy_J;
    p->capacity_J_kgK = boils ? 0 : h.heat_capacity_J_K;
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

static double yield_at(const boil_flash_bath *b, prepared *p, double layer_K, double phi)
{
    double enthalpy_J;
    dilution d;
    boil_mixture m = mix(p, layer_K, phi, &enthalpy_J, &d);
    return steam_of(&b->air, &m, enthalpy_J, &d, &p->near) / (1 - phi);
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

typedef struct {
    const boil_flash_bath *bath;
    prepared *as_prepared;
    double layer_K;
} curve;

static double falls_short(double phi, void *context)
{
    const curve *c = context;
    return -yield_at(c->bath, c->as_prepared, c->layer_K, phi);
}

typedef union {
    double aligned;
    unsigned char bytes[128];
} search_state;

/* Brent's search on the signed curve: clipped at nothing it would be flat where the search begins, and lead astray. It ends once the
   yield has risen no more three times in a row. NaN: there is none somewhere on the way. */
static double largest(const boil_flash_bath *b, prepared *p, double layer_K, double *at)
{
    const gsl_min_fminimizer_type *brent = gsl_min_fminimizer_brent;
    const double wide = 0.05, narrow = 2e-5, risen = 1e-11;
    search_state state;
    curve c = {b, p, layer_K};
    gsl_function f = {falls_short, &c};
    double low = LEAST_BATH_SHARE, high = MOST_BATH_SHARE, y_low = falls_short(low, &c), y_high = falls_short(high, &c);
    *at = low + 0.6 * (high - low);
    double least = falls_short(*at, &c);
    bool good = brent->size <= sizeof state && isfinite(y_low + y_high + least) &&
                brent->set(&state, &f, *at, least, low, y_low, high, y_high) == GSL_SUCCESS;
    for (int i = 0, idle = 0; good && i < 60 && high - low > narrow && idle < 3; i++) {
        double before = least;
        good = brent->iterate(&state, &f, at, &least, &low, &y_low, &high, &y_high) == GSL_SUCCESS;
        idle = high - low < wide && before - least < risen ? idle + 1 : 0;
    }
    return good ? -least : (double)NAN;
}

/* Of the signed curve, from anywhere. */
static double top_of(const boil_flash_bath *b, prepared *p, double layer_K, double *bath_share)
{
    double y = largest(b, p, layer_K, bath_share), end = yield_at(b, p, layer_K, MOST_BATH_SHARE);
    if (!(end > y))
        return y;
    *bath_share = MOST_BATH_SHARE; /* the top of a bath at its boil lies there */
    return end;
}

double boil_flash_yield(const boil_flash_bath *b, double layer_K, double *bath_share)
{
    prepared p;
    double at, y = prepare(b, &p) == BOIL_OK ? top_of(b, &p, layer_K, &at) : (double)NAN;
    if (bath_share)
        *bath_share = at;
    return y < 0 ? 0 : y; /* not fmax, which would hide a NaN */
}

/* From a phi uphill until three points enclose the top, and that of the parabola through them. */
static double top_near(const boil_flash_bath *b, prepared *p, double layer_K, double *bath_share)
{
    const double apart = 0.02;
    double phi = *bath_share, y[3];
    if (!(phi - apart > LEAST_BATH_SHARE && phi + apart < MOST_BATH_SHARE))
        return top_of(b, p, layer_K, bath_share);
    for (int i = 0; i < 3; i++)
        y[i] = yield_at(b, p, layer_K, phi + (i - 1) * apart);
    while (y[2] > y[1] && phi + 2 * apart < MOST_BATH_SHARE) {
        phi += apart;
        y[0] = y[1];
        y[1] = y[2];
        y[2] = yield_at(b, p, layer_K, phi + apart);
    }
    while (y[0] > y[1] && phi - 2 * apart > LEAST_BATH_SHARE) {
        phi -= apart;
        y[2] = y[1];
        y[1] = y[0];
        y[0] = yield_at(b, p, layer_K, phi - apart);
    }
    if (!(y[1] > y[0] && y[1] > y[2]))
        return top_of(b, p, layer_K, bath_share);
    *bath_share = phi + apart / 2 * (y[0] - y[2]) / (y[0] - 2 * y[1] + y[2]);
    return fmax(y[1], yield_at(b, p, layer_K, *bath_share));
}

boil_flash_top boil_flash_top_near(const boil_flash_bath *b, double layer_K, double bath_share)
{
    prepared p;
    boil_flash_top t = {(double)NAN, bath_share, 0, 0};
    if (prepare(b, &p) != BOIL_OK)
        return t;
    t.yield = top_near(b, &p, layer_K, &t.bath_share);
    if (t.bath_share < MOST_BATH_SHARE) { /* where it lies it does not change with phi */
        t.by_layer_K = p.near.steam_J * boil_water_heat_capacity(layer_K);
        t.by_bath_K = p.near.steam_J * p.capacity_J_kgK * t.bath_share / (1 - t.bath_share);
    }
    return t;
}

boil_flash_table boil_flash_table_of(const boil_flash_bath *b)
{
    boil_flash_table t = {.bath = *b};
    for (int i = 0; i < BOIL_FLASH_LAYERS; i++)
        for (int k = 0; k < BOIL_FLASH_BATHS; k++)
            t.yield[i][k] = (double)NAN;
    return t;
}

/* Nodes: the layer every ten kelvin, the bath ever closer toward its boil, where the yield falls fastest. */
static double layer_node(int i)
{
    return BOIL_ZERO_CELSIUS + 10 * i;
}

static double bath_node(int k)
{
    return 0.25 * k * k;
}

static double at_node(boil_flash_table *t, int i, int k)
{
    double *y = &t->yield[i][k];
    if (isnan(*y)) {
        boil_flash_bath b = t->bath;
        b.temperature_K -= bath_node(k);
        *y = boil_flash_yield(&b, layer_node(i), NULL);
        if (isnan(*y)) /* beyond the correlation: that of a bath at its boil, which no other exceeds */
            *y = fmax(0, boil_flash_yield_limit(&t->bath, layer_node(i)));
    }
    return *y;
}

double boil_flash_table_yield(boil_flash_table *t, double layer_K, double below_K)
{
    double warm = fmin(BOIL_FLASH_LAYERS - 1, fmax(0, (layer_K - BOIL_ZERO_CELSIUS) / 10));
    double below = fmin(bath_node(BOIL_FLASH_BATHS - 1), fmax(0, below_K));
    int i = (int)fmin(BOIL_FLASH_LAYERS - 2, floor(warm)), k = (int)fmin(BOIL_FLASH_BATHS - 2, floor(2 * sqrt(below)));
    double x = warm - i, z = (below - bath_node(k)) / (bath_node(k + 1) - bath_node(k));
    double cold = (1 - z) * at_node(t, i, k) + z * at_node(t, i, k + 1);
    double hot = (1 - z) * at_node(t, i + 1, k) + z * at_node(t, i + 1, k + 1);
    return (1 - x) * cold + x * hot;
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

/* A kilogram of water meeting salt of a blend. */
typedef struct {
    const boil_conditions *air;
    double blend[BOIL_SALTS], salt_J_kg, water_J_kg;
    near_by near;
} wetting;

static double blend_enthalpy(const double blend[BOIL_SALTS], double T)
{
    double sum = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i] * boil_salt_solid_enthalpy(i, T);
    return sum;
}

/* f of (4) with so much salt; none beyond the correlation. */
static double wetted_with(double salt_kg, void *context)
{
    wetting *w = context;
    const dilution none = {0, 0, 0};
    near_by near = w->near;
    boil_mixture m = {1, {salt_kg * w->blend[0], salt_kg * w->blend[1], salt_kg * w->blend[2]}};
    double T, f = (double)NAN;
    if (boil_solution_boiling_point_near(w->air, &m, &near.boiling, &T, NULL) == BOIL_OK) {
        double spare_J = (WETTED_SALT - salt_kg) * fmax(0, w->salt_J_kg - blend_enthalpy(w->blend, T));
        f = steam_of(w->air, &m, w->water_J_kg + salt_kg * w->salt_J_kg + spare_J, &none, &near);
    }
    if (isnan(f))
        return -1;
    w->near = near;
    return f;
}

/* The curve has one top. */
static double most_steam(wetting *w, double most_kg)
{
    const int to_most = 22; /* a bracket of 3e-5 */
    double top = boil_golden_top(wetted_with, w, 0, most_kg, to_most).value;
    return fmax(0, fmax(top, wetted_with(most_kg, w)));
}

static boil_flash_wetted on_blend(const boil_conditions *air, const double solid[BOIL_SALTS], double sum, double salt_K,
                                  double water_K)
{
    const boil_mixture water = {1, {0, 0, 0}};
    wetting w = {.air = air, .water_J_kg = boil_water_enthalpy(water_K)};
    for (int i = 0; i < BOIL_SALTS; i++)
        w.blend[i] = solid[i] / sum;
    w.salt_J_kg = blend_enthalpy(w.blend, salt_K);
    boil_mixture hot = boil_solubility_saturated(&water, w.blend, fmax(salt_K, air->saturation_K));
    boil_mixture brine = boil_solubility_saturated(&water, w.blend, salt_K);
    return (boil_flash_wetted){most_steam(&w, fmin(WETTED_SALT, boil_mixture_mass(&hot) - 1)),
                               fmin(WETTED_SALT, boil_mixture_mass(&brine) - 1)};
}

boil_flash_wetted boil_flash_on_salt(const boil_conditions *air, const double solid[BOIL_SALTS], double salt_K, double water_K)
{
    const double hydroxide[BOIL_SALTS] = {1, 0, 0};
    double sum = solid[0] + solid[1] + solid[2];
    if (!(sum > 0))
        return (boil_flash_wetted){0, 0};
    boil_flash_wetted all = on_blend(air, solid, sum, salt_K, water_K);
    double grains = solid[BOIL_NAOH] / sum;
    if (grains > 0 && grains < 1)
        all.steam = fmax(all.steam, grains * on_blend(air, hydroxide, 1, salt_K, water_K).steam);
    return all;
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
