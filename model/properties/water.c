/* Source: IAPWS R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997 (IF97): regions 4 and 2. Coefficients carry the names the releases give them. Powers are products and roots, because these
   functions stand in the innermost loop and pow() would be most of their cost. */
#include "properties/water.h"

#include <math.h>

/* --- Saturation line, IF97 region 4 --- */

/* Equation 29 joins b = (p / 1 MPa)^(1/4) and v = T + n9 / (T - n10):
   b^2 v^2 + n1 b^2 v + n2 b^2 + n3 b v^2 + n4 b v + n5 b + n6 v^2 + n7 v + n8 = 0.  Table 34. */
static const double N1 = 0.11670521452767e4, N2 = -0.72421316703206e6, N3 = -0.17073846940092e2, N4 = 0.12020824702470e5,
                    N5 = -0.32325550322333e7, N6 = 0.14915108613530e2, N7 = -0.48232657361591e4, N8 = 0.40511340542057e6,
                    N9 = -0.23855557567849, N10 = 0.65017534844798e3;

/* b at a temperature, and db/dT by differentiating the equation as it stands. */
typedef struct {
    double root, slope;
} line_point;

static inline line_point line_at(double temperature_K)
{
    const double gap = temperature_K - N10;
    const double v = temperature_K + N9 / gap;
    const double a = (v + N1) * v + N2;
    const double b = (N3 * v + N4) * v + N5;
    const double c = (N6 * v + N7) * v + N8;
    const double discriminant_root = sqrt(b * b - 4 * a * c);
    const double root = 2 * c / (discriminant_root - b);
    const double by_v = (root * (2 * v + N1) + 2 * N3 * v + N4) * root + 2 * N6 * v + N7;
    const double by_root = 2 * a * root + b;
    return (line_point){.root = root, .slope = -by_v / by_root * (1 - N9 / (gap * gap))};
}

double boil_water_saturation_pressure(double temperature_K)
{
    const double root = line_at(temperature_K).root;
    return 1e6 * (root * root) * (root * root);
}

double boil_water_saturation_pressure_slope(double temperature_K)
{
    const line_point at = line_at(temperature_K);
    return 4e6 * at.root * at.root * at.root * at.slope;
}

/* Equation 31. */
double boil_water_saturation_temperature(double pressure_Pa)
{
    const double root = sqrt(sqrt(pressure_Pa * 1e-6));
    const double e = (root + N3) * root + N6;
    const double f = (N1 * root + N4) * root + N7;
    const double g = (N2 * root + N5) * root + N8;
    const double d = 2 * g / (-f - sqrt(f * f - 4 * e * g));
    const double sum = N10 + d;
    return (sum - sqrt(sum * sum - 4 * (N9 + N10 * d))) / 2;
}

/* --- Steam, IF97 region 2 --- */

#define GAS_CONSTANT_J_KGK 461.526
#define STEAM_TEMPERATURE_K 540.0
#define STEAM_PRESSURE_PA 1e6

/* n pi^i (tau - 1/2)^j of the residual part; pi = p / 1 MPa, tau = 540 K / T. */
typedef struct {
    int i, j;
    double n;
} steam_term;

enum { IDEAL_TERMS = 8, RESIDUAL_TERMS = 43, HIGHEST_I = 24, HIGHEST_J = 58 };

/* Table 10 without its first term, which is constant and drops out of every derivative. Here n tau^j. */
static const steam_term ideal[IDEAL_TERMS] = {
    {0, 1, 0.10086655968018e2},  {0, -5, -0.56087911283020e-2}, {0, -4, 0.71452738081455e-1}, {0, -3, -0.40710498223928},
    {0, -2, 0.14240819171444e1}, {0, -1, -0.43839511319450e1},  {0, 2, -0.28408632460772},    {0, 3, 0.21268463753307e-1},
};

/* Table 11. */
static const steam_term residual[RESIDUAL_TERMS] = {
    {1, 0, -0.17731742473213e-2},    {1, 1, -0.17834862292358e-1},    {1, 2, -0.45996013696365e-1},
    {1, 3, -0.57581259083432e-1},    {1, 6, -0.50325278727930e-1},    {2, 1, -0.33032641670203e-4},
    {2, 2, -0.18948987516315e-3},    {2, 4, -0.39392777243355e-2},    {2, 7, -0.43797295650573e-1},
    {2, 36, -0.26674547914087e-4},   {3, 0, 0.20481737692309e-7},     {3, 1, 0.43870667284435e-6},
    {3, 3, -0.32277677238570e-4},    {3, 6, -0.15033924542148e-2},    {3, 35, -0.40668253562649e-1},
    {4, 1, -0.78847309559367e-9},    {4, 2, 0.12790717852285e-7},     {4, 3, 0.48225372718507e-6},
    {5, 7, 0.22922076337661e-5},     {6, 3, -0.16714766451061e-10},   {6, 16, -0.21171472321355e-2},
    {6, 35, -0.23895741934104e2},    {7, 0, -0.59059564324270e-17},   {7, 11, -0.12621808899101e-5},
    {7, 25, -0.38946842435739e-1},   {8, 8, 0.11256211360459e-10},    {8, 36, -0.82311340897998e1},
    {9, 13, 0.19809712802088e-7},    {10, 4, 0.10406965210174e-18},   {10, 10, -0.10234747095929e-12},
    {10, 14, -0.10018179379511e-8},  {16, 29, -0.80882908646985e-10}, {16, 50, 0.10693031879409},
    {18, 57, -0.33662250574171},     {20, 20, 0.89185845355421e-24},  {20, 35, 0.30629316876232e-12},
    {20, 48, -0.42002467698208e-5},  {21, 21, -0.59056029685639e-25}, {22, 53, 0.37826947613457e-5},
    {23, 39, -0.12768608934681e-14}, {24, 26, 0.73087610595061e-28},  {24, 40, 0.55414715350778e-16},
    {24, 58, -0.94369707241210e-6},
};

/* Derivatives of the reduced Gibbs energy gamma(pi, tau) = g / RT. */
typedef struct {
    double pi, tau;
    double by_pi, by_tau, by_tau2;
} steam_gibbs;

/* power[k + 2] = x^k from k = 0; the two zeros below it let a derivative of a low power vanish. */
static void fill_powers(double *power, double x, int highest)
{
    power[0] = power[1] = 0;
    power[2] = 1;
    for (int k = 1; k <= highest; k++)
        power[k + 2] = power[k + 1] * x;
}

static void add_ideal(steam_gibbs *g)
{
    double up[HIGHEST_J + 3], down[HIGHEST_J + 3];
    fill_powers(up, g->tau, 3);
    fill_powers(down, 1 / g->tau, 7);
    g->by_pi += 1 / g->pi;
    for (int k = 0; k < IDEAL_TERMS; k++) {
        const int j = ideal[k].j;
        const double n = ideal[k].n;
        g->by_tau += n * j * (j > 0 ? up[j + 1] : down[3 - j]);
        g->by_tau2 += n * j * (j - 1) * (j > 0 ? up[j] : down[4 - j]);
    }
}

static void add_residual(steam_gibbs *g)
{
    double pressure[HIGHEST_I + 3], warmth[HIGHEST_J + 3];
    fill_powers(pressure, g->pi, HIGHEST_I);
    fill_powers(warmth, g->tau - 0.5, HIGHEST_J);
    for (int k = 0; k < RESIDUAL_TERMS; k++) {
        const int i = residual[k].i, j = residual[k].j;
        const double n = residual[k].n;
        g->by_pi += n * i * pressure[i + 1] * warmth[j + 2];
        g->by_tau += n * j * pressure[i + 2] * warmth[j + 1];
        g->by_tau2 += n * j * (j - 1) * pressure[i + 2] * warmth[j];
    }
}

static steam_gibbs steam_at(double temperature_K, double pressure_Pa)
{
    steam_gibbs g = {.pi = pressure_Pa / STEAM_PRESSURE_PA, .tau = STEAM_TEMPERATURE_K / temperature_K};
    add_ideal(&g);
    add_residual(&g);
    return g;
}

/* The three below: table 12. */
double boil_steam_enthalpy(double temperature_K, double pressure_Pa)
{
    return GAS_CONSTANT_J_KGK * STEAM_TEMPERATURE_K * steam_at(temperature_K, pressure_Pa).by_tau;
}

double boil_steam_density(double temperature_K, double pressure_Pa)
{
    return STEAM_PRESSURE_PA / (GAS_CONSTANT_J_KGK * temperature_K * steam_at(temperature_K, pressure_Pa).by_pi);
}

double boil_steam_heat_capacity(double temperature_K, double pressure_Pa)
{
    const steam_gibbs g = steam_at(temperature_K, pressure_Pa);
    return -GAS_CONSTANT_J_KGK * g.tau * g.tau * g.by_tau2;
}
