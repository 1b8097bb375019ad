#include "properties/naoh.h"

#include <math.h>

#include "base/constants.h"

/* One number for each power, lowest first. */
static const double PRESSURE_K[11] = {-113.93947, 209.82305,  494.77153,  6860.8330, 2676.6433, -21740.328,
                                      -34750.872, -20122.157, -4102.9890, 0,         0};
static const double PRESSURE_L[11] = {16.240074,  -11.864008, -223.47305, -1650.3997, -5997.3118, -12318.744,
                                      -15303.153, -11707.480, -5364.9554, -1338.5412, -137.96889};
static const double PRESSURE_M[11] = {-226.80157, 293.17155, 5081.8791, 36752.126, 131262.00, 259399.54,
                                      301696.22,  208617.90, 81774.024, 15648.526, 906.29769};

#define ENTHALPY_TERMS 9
/* c1 = TOP/BOTTOM, both polynomials in x; c2, c3, c4 polynomials: h = c1 + c2 t + c3 t^2 + c4 t^3 in kJ/kg. */
static const double ENTHALPY_TOP[4] = {1288.4485, -4387.8908, 4938.2298, -1841.1890};
static const double ENTHALPY_BOTTOM[5] = {1, -0.49649131, -4.0915144, 7.2887292, -3.0202651};
static const double ENTHALPY_L[ENTHALPY_TERMS] = {2.3087919,  -9.0004252, 167.59914,  -1051.6368, 3394.3378,
                                                  -6115.0986, 6220.8249,  -3348.8098, 743.87432};
static const double ENTHALPY_M[ENTHALPY_TERMS] = {0.02302860, -0.37866056, 2.4529593,  -8.2693542, 15.728833,
                                                  -16.944427, 9.6254192,   -2.2410628, 0};
static const double ENTHALPY_N[ENTHALPY_TERMS] = {
    -8.5131313e-5, 136.52823e-5, -875.68741e-5, 2920.0398e-5, -5488.2983e-5, 5841.8034e-5, -3278.7483e-5, 754.45993e-5, 0};

static const double DENSITY_K[6] = {5007.2279636, -25131.164248, 74107.692582, -104657.48684, 69821.773186, -18145.911810};
static const double DENSITY_L[6] = {-64.786269079, 525.34360564, -1608.4471903, 2350.9753235, -1660.9035108, 457.6437435};
static const double DENSITY_M[6] = {0.24436776978, -1.9737722344, 6.04601497138, -8.9090614947, 6.37146769397, -1.7816083111};

static double ramp(double from, double to, double start_C, double t_C)
{
    double share = (t_C - start_C) / 2;
    return share <= 0 ? from : share >= 1 ? to : from + share * (to - from);
}

double boil_naoh_least_water(double temperature_K)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    if (t < 65)
        return ramp(0.5, 0.353, 60, t);
    if (t < 100)
        return ramp(0.353, 0.3, 70, t);
    return ramp(0.3, 0.2, 150, t);
}

/* (P(L) - P(0))/L and its derivative by Horner's rule. */
static double reduced(const double c[11], double l, double *slope)
{
    double value = 0, d = 0;
    for (int i = 10; i >= 1; i--) {
        d = d * l + value;
        value = value * l + c[i];
    }
    *slope = d;
    return value;
}

/* ln p = (a1 + a2 t)/(t - a3), each a_i = c_i0 + L A_i(L); subtracting pure water's leaves
   ln a = L G/[(t - a3)(t - m0)],  G = (A1 + A2 t)(t - m0) + (k0 + l0 t) A3. */
double boil_naoh_log_activity(double log_x, double temperature_K, double *by_log_x, double *by_temperature)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    int held = t < 20;
    if (held)
        t = 20;
    double d1, d2, d3;
    double A1 = reduced(PRESSURE_K, log_x, &d1);
    double A2 = reduced(PRESSURE_L, log_x, &d2);
    double A3 = reduced(PRESSURE_M, log_x, &d3);
    double below = t - PRESSURE_M[0], pure = PRESSURE_K[0] + PRESSURE_L[0] * t;
    double above = below - log_x * A3;
    double G = (A1 + A2 * t) * below + pure * A3;
    double G_l = (d1 + d2 * t) * below + pure * d3;
    double G_t = A2 * below + A1 + A2 * t + PRESSURE_L[0] * A3;
    double denominator = above * below, ln_a = log_x * G / denominator;
    *by_log_x = (G + log_x * G_l) / denominator + ln_a * (A3 + log_x * d3) / above;
    *by_temperature = held ? 0 : log_x * G_t / denominator - ln_a * (1 / above + 1 / below);
    return ln_a;
}

/* (P(x) - x P(1))/(1 - x) for P = sum c_i x^i is c_0 - sum_{k>=1} S_k x^k with S_k = sum_{i>k} c_i. */
static double divided(const double c[], int terms, double x, double *slope)
{
    double value = 0, d = 0, rest = 0;
    for (int k = terms - 2; k >= 1; k--) {
        rest += c[k + 1];
        d = d * x + value;
        value = value * x - rest;
    }
    *slope = d * x + value;
    return value * x + c[0];
}

/* The same for c1 = T/B: (T - x c1(1) B)/(1 - x), divided by B. T - x c1(1) B has the coefficients below. */
static double divided_ratio(double x, double *slope)
{
    double top_1 = 0, bottom_1 = 0;
    for (int i = 0; i < 4; i++)
        top_1 += ENTHALPY_TOP[i];
    for (int i = 0; i < 5; i++)
        bottom_1 += ENTHALPY_BOTTOM[i];
    double at_1 = top_1 / bottom_1, c[6];
    for (int i = 0; i < 6; i++)
        c[i] = (i < 4 ? ENTHALPY_TOP[i] : 0) - (i > 0 ? at_1 * ENTHALPY_BOTTOM[i - 1] : 0);
    /* The sum of c is zero, so c/(1 - x) = sum_k x^k sum_{i<=k} c_i. */
    double sum = 0, partial[5];
    for (int k = 0; k < 5; k++)
        partial[k] = sum += c[k];
    double n = 0, n_x = 0, b = 0, b_x = 0;
    for (int k = 4; k >= 0; k--) {
        n_x = n_x * x + n;
        n = n * x + partial[k];
        b_x = b_x * x + b;
        b = b * x + ENTHALPY_BOTTOM[k];
    }
    *slope = (n_x - n * b_x / b) / b;
    return n / b;
}

double boil_naoh_apparent_enthalpy(double x, double temperature_K, double *by_x, double *by_temperature)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    double s1, s2, s3, s4;
    double q1 = divided_ratio(x, &s1);
    double q2 = divided(ENTHALPY_L, ENTHALPY_TERMS, x, &s2);
    double q3 = divided(ENTHALPY_M, ENTHALPY_TERMS, x, &s3);
    double q4 = divided(ENTHALPY_N, ENTHALPY_TERMS, x, &s4);
    *by_x = 1e3 * (s1 + t * (s2 + t * (s3 + t * s4)));
    *by_temperature = 1e3 * (q2 + t * (2 * q3 + t * 3 * q4));
    return 1e3 * (q1 + t * (q2 + t * (q3 + t * q4)));
}

static double density(double x, double t)
{
    double root = sqrt(x), b1 = 0, b2 = 0, b3 = 0;
    for (int i = 5; i >= 0; i--) {
        b1 = b1 * root + DENSITY_K[i];
        b2 = b2 * root + DENSITY_L[i];
        b3 = b3 * root + DENSITY_M[i];
    }
    return b1 + t * (b2 + t * b3);
}

double boil_naoh_apparent_volume(double x, double temperature_K)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    double held = fmin(x, 0.999);
    return (1 / density(held, t) - held / density(1, t)) / (1 - held);
}
