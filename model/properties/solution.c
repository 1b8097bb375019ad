#include "properties/solution.h"

#include <math.h>
#include <stdbool.h>

#include "base/constants.h"
#include "base/exponential.h"
#include "base/root.h"
#include "properties/naoh.h"
#include "properties/water.h"

#define NITRATE_SHARE 0.33 /* of a mole of NaOH in the enthalpy's effective molality */
#define NITRITE_SHARE 0.36
#define REFERENCE_K 298.15
#define NITRITE_VOLUME 0.47e-3 /* m3/kg, estimate */
#define CROWDING_MOLALITY 4.6  /* mol/kg, n0 of (3) */
#define HOTTEST_BOIL_K (BOIL_ZERO_CELSIUS + 250)

static const double MOLAR_MASS[BOIL_SALTS] = {BOIL_NAOH_MOLAR_MASS, BOIL_NANO3_MOLAR_MASS, BOIL_NANO2_MOLAR_MASS};
/* Apparent heat capacities in strong hot solution, J/kgK; nitrite by analogy per mole. */
static const double APPARENT_CP[BOIL_SALTS] = {0, 1350, 1450};
/* d of (3), J/mol. Nitrate, with n0: the measured differential heats to 10.4 mol/kg [J. Solution Chem., see
   properties/solution.h]. Nitrite: from the slope of its solubility in water at 25 degC, 8 kJ/mol there; -2 to -7. (The same
   sum for nitrate gives 10.2; measured, 10.0.) */
static const double CROWDING[BOIL_SALTS] = {0, -9100, -5000};

double boil_salt_molar_mass(int salt)
{
    return MOLAR_MASS[salt];
}

double boil_mixture_salts(const boil_mixture *m)
{
    if (m == NULL)
        return (double)NAN;
    double salts = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        salts += m->salt[i];
    return salts;
}

double boil_mixture_mass(const boil_mixture *m)
{
    if (m == NULL)
        return (double)NAN;
    double sum = m->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += m->salt[i];
    return sum;
}

double boil_mixture_salt_fraction(const boil_mixture *m)
{
    if (m == NULL)
        return (double)NAN;
    double salts = boil_mixture_salts(m);
    return salts / (m->water + salts);
}

boil_mixture boil_mixture_sum(const boil_mixture *a, const boil_mixture *b)
{
    boil_mixture sum = {.water = a->water + b->water};
    for (int i = 0; i < BOIL_SALTS; i++)
        sum.salt[i] = a->salt[i] + b->salt[i];
    return sum;
}

boil_mixture boil_mixture_scaled(const boil_mixture *m, double times)
{
    boil_mixture scaled = {.water = m->water * times};
    for (int i = 0; i < BOIL_SALTS; i++)
        scaled.salt[i] = m->salt[i] * times;
    return scaled;
}

boil_mixture boil_mixture_of(const double blend[BOIL_SALTS], double salt_fraction)
{
    if (blend == NULL)
        return (boil_mixture){.water = (double)NAN};
    boil_mixture m = {.water = 1 - salt_fraction};
    for (int i = 0; i < BOIL_SALTS; i++)
        m.salt[i] = salt_fraction * blend[i];
    return m;
}

boil_conditions boil_conditions_at(double pressure_Pa, double elevation_factor)
{
    return (boil_conditions){pressure_Pa, boil_water_saturation_temperature(pressure_Pa), elevation_factor};
}

/* Where (1) holds: ln a with its slopes, that of M/s by it, and how much less than the masses' part M rises. */
typedef struct {
    double ln_a, by_M, by_T, ratio_a, stiffness;
} equilibrium;

/* Equation (1) at a fixed temperature by Newton on M, until a step is within a share of it: what is left in ln a then, carried on
   along its slope, is of second order in that step. The slopes are those before it. */
static boil_outcome equivalent_molality(const boil_molalities *n, double T, double within, double *M, equilibrium *e)
{
    double x = *M > 0 ? *M : boil_molalities_about(n);
    for (int i = 0; i < 60; i++) {
        double s;
        e->ln_a = boil_activity_log(x, T, &e->by_M, &e->by_T);
        double ratio = boil_activity_ratio(x, e->ln_a, e->by_M, &s, &e->ratio_a);
        e->stiffness = 1 - n->others * (x < 1e-9 ? 0 : 1 / s + e->ratio_a * e->by_M);
        double f = x - n->hydroxide - n->others * ratio, step = f / (e->stiffness > 0.05 ? e->stiffness : 0.05);
        double next = fmax(x - step, 0.3 * x);
        if (fabs(next - x) <= within * (1 + x)) {
            *M = next;
            e->ln_a += e->by_M * (next - x);
            return BOIL_OK;
        }
        x = next;
        if (!(x < 200))
            break;
    }
    return BOIL_NO_ROOT;
}

/* Residuals of (1) and (2) in (M, T) with their Jacobian. */
typedef struct {
    double f1, f2, f1_M, f1_T, f2_M, f2_T, ratio;
} boil_residual;

static boil_residual boil_residual_at(const boil_conditions *c, const boil_molalities *n, double M, double T)
{
    double by_M, by_T, boil_T, s, ratio_a;
    double ln_a = boil_activity_log(M, T, &by_M, &by_T);
    double ratio = boil_activity_ratio(M, ln_a, by_M, &s, &ratio_a);
    double f1 = ln_a - boil_activity_boiling(c, T, &boil_T);
    return (boil_residual){f1,
                           M - n->hydroxide - n->others * ratio,
                           by_M,
                           by_T - boil_T,
                           1 - n->others * (M < 1e-9 ? 0 : 1 / s + ratio_a * by_M),
                           -n->others * ratio_a * by_T,
                           ratio};
}

/* Newton on both at once. Steps are limited: far from the answer the correlation is not to be trusted. */
static boil_outcome boil_newton(const boil_conditions *c, const boil_molalities *n, double *M, double *T, boil_residual *r)
{
    for (int i = 0; i < 50; i++) {
        *r = boil_residual_at(c, n, *M, *T);
        double det = r->f1_M * r->f2_T - r->f1_T * r->f2_M;
        double dM = (r->f1 * r->f2_T - r->f2 * r->f1_T) / det;
        double dT = (r->f2 * r->f1_M - r->f1 * r->f2_M) / det;
        if (!(fabs(dM) < 1e6) || !(fabs(dT) < 1e6))
            return BOIL_NO_ROOT;
        double scale = fmin(1, 20 / fmax(fabs(dT), 1e-30));
        double next = *M - scale * dM;
        *M = next > 0.3 * *M ? next : 0.3 * *M;
        *T = fmin(fmax(*T - scale * dT, c->saturation_K - 5), HOTTEST_BOIL_K);
        if (fabs(dM) <= 1e-12 * (1 + *M) && fabs(dT) <= 1e-11 * *T)
            return BOIL_OK;
        if (fabs(dM) <= 1e-7 * (1 + *M) && fabs(dT) <= 1e-6 && scale >= 1)
            i = i < 48 ? 48 : i; /* quadratic: one more step is the answer to rounding */
    }
    return fabs(r->f1) < 1e-9 && fabs(r->f2) < 1e-9 * (1 + *M) ? BOIL_OK : BOIL_NO_ROOT;
}

/* Implicit function theorem on (1), (2): only f2 depends on the masses. */
static boil_slope boil_slope_of(const boil_mixture *m, const boil_molalities *n, const boil_residual *r)
{
    double det = r->f1_M * r->f2_T - r->f1_T * r->f2_M;
    return boil_activity_slope(m, n, -r->f1_M / r->f1_T, -r->f1_T / det, r->ratio);
}

boil_outcome boil_solution_boiling_point_near(const boil_conditions *c, const boil_mixture *m, boil_solution_guess *guess,
                                              double *boiling_point_K, boil_slope *slope)
{
    boil_molalities n = boil_molalities_of(m);
    boil_residual r;
    double M = guess->equivalent_molality, T = guess->boiling_point_K;
    int warm = M > 0 && T > 0 && boil_newton(c, &n, &M, &T, &r) == BOIL_OK;
    if (!warm) { /* 2 K per mol/kg */
        M = boil_molalities_about(&n) + 1e-12;
        T = c->saturation_K + 2 * M;
        if (boil_newton(c, &n, &M, &T, &r) != BOIL_OK)
            return BOIL_NO_ROOT;
    }
    guess->equivalent_molality = M;
    guess->boiling_point_K = *boiling_point_K = T;
    if (slope)
        *slope = boil_slope_of(m, &n, &r);
    return BOIL_OK;
}

double boil_solution_activity_near(const boil_mixture *m, double temperature_K, boil_solution_guess *guess)
{
    const double within = 1e-11; /* above the rounding of the correlation near its end */
    boil_molalities n = boil_molalities_of(m);
    double M = guess->equivalent_molality;
    equilibrium e;
    if (equivalent_molality(&n, temperature_K, within, &M, &e) != BOIL_OK)
        return (double)NAN;
    guess->equivalent_molality = M;
    return exp(e.ln_a);
}

/* The elevation factor: p(T) = psat(T - f [T - Tsat(p)]), and its slopes. */
static double elevated(double factor, double temperature_K, double ln_p, double *by_T, double *by_strength)
{
    double p = exp(ln_p), t = boil_water_saturation_temperature(p), lowered = temperature_K - factor * (temperature_K - t);
    double there, slope, low = boil_water_log_saturation_pressure(lowered, &slope);
    boil_water_log_saturation_pressure(t, &there);
    double t_ln_p = 1 / there;
    *by_T = slope * (1 - factor + factor * t_ln_p * *by_T);
    *by_strength *= slope * factor * t_ln_p;
    return low;
}

double boil_solution_log_vapour_pressure(const boil_conditions *c, const boil_mixture *m, double temperature_K, double within,
                                         double *molality, double *by_T, double *by_strength)
{
    boil_molalities n = boil_molalities_of(m);
    equilibrium e;
    *by_T = *by_strength = 0;
    if (equivalent_molality(&n, temperature_K, within, molality, &e) != BOIL_OK)
        return (double)NAN;
    double psat_T, ln_p = boil_water_log_saturation_pressure(temperature_K, &psat_T) + e.ln_a;
    /* Along (1): M moves with the activity, and with the strength as it does itself. */
    *by_T = psat_T + e.by_T + e.by_M * n.others * e.ratio_a * e.by_T / e.stiffness;
    *by_strength = e.by_M * *molality / e.stiffness;
    return c->elevation_factor == 1 ? ln_p : elevated(c->elevation_factor, temperature_K, ln_p, by_T, by_strength);
}

/* The last sum of (3): H = D (1 - exp(-u)), D = sum n_i d_i, u = sum n_i/(W n0), n in mol. */
static void add_crowding(const boil_mixture *m, boil_heat *h)
{
    double depth = 0, u = 0;
    for (int i = 0; i < BOIL_SALTS; i++) {
        depth += m->salt[i] / MOLAR_MASS[i] * CROWDING[i];
        u += m->salt[i] / (MOLAR_MASS[i] * m->water * CROWDING_MOLALITY);
    }
    double reached = -boil_exponential_less_1(-u), by_u = depth * (1 - reached);
    h->enthalpy_J += depth * reached;
    h->water -= by_u * u / m->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        h->salt[i] += (CROWDING[i] * reached + by_u / (m->water * CROWDING_MOLALITY)) / MOLAR_MASS[i];
}

boil_heat boil_solution_heat(const boil_mixture *m, double temperature_K)
{
    if (m == NULL)
        return (boil_heat){.enthalpy_J = (double)NAN, .heat_capacity_J_K = (double)NAN, .water = (double)NAN};
    double effective = m->salt[BOIL_NAOH] / MOLAR_MASS[BOIL_NAOH] +
                       NITRATE_SHARE * m->salt[BOIL_NANO3] / MOLAR_MASS[BOIL_NANO3] +
                       NITRITE_SHARE * m->salt[BOIL_NANO2] / MOLAR_MASS[BOIL_NANO2];
    double bound = BOIL_NAOH_MOLAR_MASS * effective, x = m->water / (m->water + bound), by_x, by_T;
    double phi = boil_naoh_apparent_enthalpy(x, temperature_K, &by_x, &by_T);
    double warm = temperature_K - REFERENCE_K, hydroxide = m->salt[BOIL_NAOH];
    /* x = W/(W + B): dx/dW = (1 - x)/(W + B), dx/dB = -x/(W + B). */
    double spread = hydroxide * by_x / (m->water + bound);
    double water_cp, water = boil_water_enthalpy_slope(temperature_K, &water_cp);
    boil_heat h;
    h.water = water + spread * (1 - x);
    h.enthalpy_J = m->water * water + hydroxide * phi;
    h.heat_capacity_J_K = m->water * water_cp + hydroxide * by_T;
    static const double share[BOIL_SALTS] = {1, NITRATE_SHARE, NITRITE_SHARE};
    for (int i = 0; i < BOIL_SALTS; i++) {
        h.salt[i] = APPARENT_CP[i] * warm - spread * x * share[i] * BOIL_NAOH_MOLAR_MASS / MOLAR_MASS[i];
        h.enthalpy_J += m->salt[i] * APPARENT_CP[i] * warm;
        h.heat_capacity_J_K += m->salt[i] * APPARENT_CP[i];
    }
    h.salt[BOIL_NAOH] += phi;
    add_crowding(m, &h);
    return h;
}

double boil_solution_temperature(const boil_mixture *m, double enthalpy_J, double guess_K)
{
    double T = guess_K;
    for (int i = 0; i < 50; i++) {
        boil_heat h = boil_solution_heat(m, T);
        double step = (enthalpy_J - h.enthalpy_J) / h.heat_capacity_J_K;
        T += fmax(-50, fmin(50, step));
        if (!(T > 223 && T < 573))
            return (double)NAN;
        if (fabs(step) < 1e-10 * T)
            return T;
    }
    return (double)NAN;
}

/* Apparent density of dissolved NaNO3, kg/m3. [Laliberte 2009, coefficients as carried by the library `chemicals`] */
static double nitrate_density(double salts, double t)
{
    double s = fmin(salts, 0.489), u = fmin(t, 100) + 1971.5514625204;
    return (22.3499264791804 * s + 66.4478689005725) * exp(1e-6 * u * u) /
           (s + 0.989888301509443 + 0.00947165097909636 * fmin(t, 100));
}

double boil_solution_density(const boil_mixture *m, double temperature_K)
{
    if (m == NULL)
        return (double)NAN;
    double ionic = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        ionic += m->salt[i] / MOLAR_MASS[i];
    double x = m->water / (m->water + BOIL_NAOH_MOLAR_MASS * ionic), mass = boil_mixture_mass(m);
    double volume = m->water / boil_water_density(temperature_K) +
                    m->salt[BOIL_NAOH] * boil_naoh_apparent_volume(x, temperature_K) +
                    m->salt[BOIL_NANO3] / nitrate_density(1 - m->water / mass, temperature_K - BOIL_ZERO_CELSIUS) +
                    m->salt[BOIL_NANO2] * NITRITE_VOLUME;
    return mass / volume;
}

double boil_solution_strongest_molality(double temperature_K)
{
    double water = boil_naoh_least_water(temperature_K);
    return (1 - water) / (BOIL_NAOH_MOLAR_MASS * water);
}

boil_range boil_solution_range_at(double temperature_K, double equivalent_molality)
{
    double hottest = BOIL_ZERO_CELSIUS + 195, coldest = BOIL_ZERO_CELSIUS - 5;
    double strength = BOIL_NAOH_MOLAR_MASS * equivalent_molality / (1 + BOIL_NAOH_MOLAR_MASS * equivalent_molality);
    double strongest = 1 - boil_naoh_least_water(temperature_K);
    boil_range r = {"strength as sodium hydroxide of equal water activity", "kg/kg", strength, strongest, strongest - strength};
    if (!(hottest - temperature_K > 100 * r.margin))
        r = (boil_range){"bath temperature", "K", temperature_K, hottest, (hottest - temperature_K) / 100};
    if (!(temperature_K - coldest > 100 * r.margin))
        r = (boil_range){"bath temperature", "K", temperature_K, coldest, (temperature_K - coldest) / 100};
    return r;
}

typedef struct {
    const boil_conditions *c;
    const double *blend;
    double wanted;
    boil_solution_guess guess;
} blend_search;

static double boiling_point_less_wanted(double fraction, void *p)
{
    blend_search *s = p;
    boil_mixture m = boil_mixture_of(s->blend, fraction);
    double T;
    return boil_solution_boiling_point_near(s->c, &m, &s->guess, &T, NULL) == BOIL_OK ? T - s->wanted : (double)NAN;
}

double boil_solution_strength(const boil_conditions *c, const boil_mixture *m)
{
    if (c == NULL || m == NULL)
        return (double)NAN;
    boil_solution_guess guess = {0, 0};
    double T;
    if (boil_solution_boiling_point_near(c, m, &guess, &T, NULL) != BOIL_OK)
        return (double)NAN;
    return boil_mixture_salt_fraction(m) * boil_solution_density(m, T);
}

static double strength_less_wanted(double fraction, void *p)
{
    blend_search *s = p;
    boil_mixture m = boil_mixture_of(s->blend, fraction);
    return boil_solution_strength(s->c, &m) - s->wanted;
}

/* Walks up from a salt fraction of the blend where f is below zero, *low, to one where it is not, which it gives, or to the strongest
   for which the correlations still hold at the boil: the boiling point has no root far beyond that, so it cannot be bracketed from
   above. */
static double fraction_above(double (*f)(double, void *), blend_search *s, double *low)
{
    double inside = *low, step = 0.05;
    boil_solution_guess guess = {0, 0};
    while (step > 1e-6) {
        boil_mixture m = boil_mixture_of(s->blend, inside + step);
        boil_solution_guess trial = guess;
        double T;
        if (inside + step < 0.95 && boil_solution_boiling_point_near(s->c, &m, &trial, &T, NULL) == BOIL_OK &&
            boil_solution_range_at(T, trial.equivalent_molality).margin > 0) {
            *low = inside;
            inside += step;
            guess = trial;
            if (f(inside, s) >= 0)
                break;
        } else {
            step /= 2;
        }
    }
    return inside;
}

static boil_outcome fraction_where(double (*f)(double, void *), blend_search *s, double *fraction)
{
    const double weak = 0.001; /* next to plain water */
    double low = weak, high = weak;
    if (f(weak, s) > 0)
        low = 0;
    else
        high = fraction_above(f, s, &low);
    if (!(f(low, s) <= 0) || !(f(high, s) >= 0))
        return BOIL_OUT_OF_RANGE;
    boil_root root;
    bool fine = boil_root_begin(&root, f, s, low, high);
    for (int i = 0; i < 100 && fine; i++) {
        fine = boil_root_step(&root);
        if (root.far - root.near < 1e-14 * (1 + fmin(root.near, root.far)))
            break;
    }
    *fraction = root.best;
    return fine ? BOIL_OK : BOIL_NO_ROOT;
}

boil_outcome boil_solution_fraction_boiling_at(const boil_conditions *c, const double blend[BOIL_SALTS], double boiling_point_K,
                                               double *salt_fraction)
{
    if (c == NULL || blend == NULL || salt_fraction == NULL || !isfinite(boiling_point_K))
        return BOIL_BAD_INPUT;
    blend_search s = {c, blend, boiling_point_K, {0, 0}};
    return fraction_where(boiling_point_less_wanted, &s, salt_fraction);
}

boil_outcome boil_solution_fraction_of_strength(const boil_conditions *c, const double blend[BOIL_SALTS], double strength_kg_m3,
                                                double *salt_fraction)
{
    if (c == NULL || blend == NULL || salt_fraction == NULL || !isfinite(strength_kg_m3))
        return BOIL_BAD_INPUT;
    blend_search s = {c, blend, strength_kg_m3, {0, 0}};
    return fraction_where(strength_less_wanted, &s, salt_fraction);
}

/* kJ/mol to J/kg. */
static double per_mass(int salt, double kJ_mol)
{
    return kJ_mol * 1e3 / MOLAR_MASS[salt];
}

/* Shomate polynomial of crystalline NaOH, 298 to 572 K, J/mol from 298.15 K. [NIST Chemistry WebBook coefficients] */
static double hydroxide_shomate(double T)
{
    const double A = 419.4837, B = -1717.754, C = 2953.573, D = -1597.221, E = -6.046884;
    double t = T / 1000, t0 = REFERENCE_K / 1000;
    double at = t * (A + t * (B / 2 + t * (C / 3 + t * D / 4))) - E / t;
    double at_0 = t0 * (A + t0 * (B / 2 + t0 * (C / 3 + t0 * D / 4))) - E / t0;
    return 1000 * (at - at_0);
}

double boil_salt_solid_enthalpy(int salt, double temperature_K)
{
    double warm = temperature_K - REFERENCE_K, by_x, by_T;
    if (salt == BOIL_NAOH)
        return boil_naoh_apparent_enthalpy(1, REFERENCE_K, &by_x, &by_T) + per_mass(salt, 44.5) +
               hydroxide_shomate(temperature_K) / MOLAR_MASS[salt];
    /* Linear heat capacity of nitrate [Perry, 4.56 + 0.058 T cal/mol/K]; nitrite 69 J/mol/K, from memory. */
    if (salt == BOIL_NANO3)
        return per_mass(salt, -20.4) + 4.184 * (4.56 + 0.029 * (temperature_K + REFERENCE_K)) * warm / MOLAR_MASS[salt];
    return per_mass(salt, -13.9) + 69 * warm / MOLAR_MASS[salt];
}

double boil_salt_solid_heat_capacity(int salt, double temperature_K)
{
    double t = temperature_K / 1000;
    if (salt == BOIL_NAOH)
        return (419.4837 + t * (-1717.754 + t * (2953.573 - t * 1597.221)) - 6.046884 / (t * t)) / MOLAR_MASS[salt];
    if (salt == BOIL_NANO3)
        return 4.184 * (4.56 + 0.058 * temperature_K) / MOLAR_MASS[salt];
    return 69 / MOLAR_MASS[salt];
}

double boil_salt_solid_density(int salt)
{
    static const double density[BOIL_SALTS] = {2130, 2260, 2170};
    return density[salt];
}

/* What an embedder asks for, from a cold start ------------------------------------------------------------------------ */

static bool is_liquid(const boil_mixture *m)
{
    bool fine = m != NULL && isfinite(m->water) && m->water > 0;
    for (int i = 0; fine && i < BOIL_SALTS; i++)
        fine = isfinite(m->salt[i]) && m->salt[i] >= 0;
    return fine;
}

boil_outcome boil_solution_boiling_point(const boil_conditions *c, const boil_mixture *m, double *boiling_point_K)
{
    boil_solution_guess cold = {0};
    if (boiling_point_K == NULL)
        return BOIL_BAD_INPUT;
    *boiling_point_K = (double)NAN;
    if (c == NULL || !isfinite(c->saturation_K) || !is_liquid(m))
        return BOIL_BAD_INPUT;
    return boil_solution_boiling_point_near(c, m, &cold, boiling_point_K, NULL);
}

double boil_solution_activity(const boil_mixture *m, double temperature_K)
{
    boil_solution_guess cold = {0};
    return is_liquid(m) && isfinite(temperature_K) ? boil_solution_activity_near(m, temperature_K, &cold) : (double)NAN;
}

boil_range boil_solution_range(const boil_mixture *m, double temperature_K)
{
    boil_solution_guess found = {0};
    if (!is_liquid(m) || !isfinite(temperature_K) || isnan(boil_solution_activity_near(m, temperature_K, &found)))
        return (boil_range){.value = (double)NAN, .limit = (double)NAN, .margin = (double)NAN};
    return boil_solution_range_at(temperature_K, found.equivalent_molality);
}
