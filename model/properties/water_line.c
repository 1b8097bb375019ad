/* properties/water_line.c -- water on its saturation line by polynomials: a run asks for it some twenty times a moment. Each piece is 21 K
   long (the inverse's 90 kJ/kg) and lies in z from -1 to 1; coefficients lowest first, from a Chebyshev expansion of the formulas of
   properties/water_exact.h and of region 4. From 273.15 to 473.15 K they leave 1e-10 K of enthalpy, 1e-11 of density, 1e-12 of
   latent heat and 5e-12 of pressure. Slopes are those of the polynomials, so that what is integrated along a slope closes. */
#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#include "properties/water.h"
#include "properties/water_exact.h"

enum { PIECES = 10 };
static const double FIRST_K = 263.15, LENGTH_K = 21, FIRST_J_KG = -42000, LENGTH_J_KG = 90000;

/* clang-format off */
static const double LOG_PRESSURE[PIECES][9] = {
    {6.4517060553827779, 0.7599139541762708, -0.032877490401678, 1.339871258751e-3, -5.290880191e-5, 1.606372585e-6,
     5.9158758e-8, -2.0391568e-8, 2.726874e-9},
    {7.8499496422194681, 0.642922547984568, -0.025974943461335, 9.828298206699e-4, -3.6705941266e-5, 1.441761362e-6,
     -4.5201337e-8, -1.055979e-9, 3.74692e-10},
    {9.039213501659038, 0.549748661479736, -0.020854570728379, 7.39551904059e-4, -2.4993536911e-5, 9.190542826e-7,
     -3.7287772e-8, 1.180252e-9, 1.3003e-11},
    {10.060836236626765, 0.474472108056669, -0.016951728670699, 5.71063695619e-4, -1.77110709e-5, 5.68617099e-7,
     -2.1835822e-8, 9.14076e-10, -2.8596e-11},
    {10.94627557844072, 0.412992880676269, -0.013909600105616, 4.49087212479e-4, -1.3110633874e-5, 3.70895218e-7,
     -1.2090156e-8, 5.0196e-10, -2.0934e-11},
    {11.72001702086794, 0.36235154115324, -0.01150266026181, 3.57349690553e-4, -1.000788868e-5, 2.59713577e-7, -7.021712e-9,
     2.51325e-10, -1.097e-11},
    {12.401416024354084, 0.320328374827887, -9.579509001117e-3, 2.86674451328e-4, -7.772586289e-6, 1.92375926e-7,
     -4.484723e-9, 1.28297e-10, -5.054e-12},
    {13.005929656429114, 0.285216291086986, -8.031612792323e-3, 2.31534892154e-4, -6.086956664e-6, 1.47432633e-7,
     -3.132773e-9, 7.301e-11, -2.23e-12},
    {13.545995201411283, 0.255684699685857, -6.777402291092e-3, 1.88272568859e-4, -4.782347581e-6, 1.1513143e-7, -2.30707e-9,
     4.8476e-11, -1.007e-12},
    {14.031688197119849, 0.23069011452579, -5.753855502378e-3, 1.54275420376e-4, -3.756880311e-6, 9.1136173e-8, -1.717932e-9,
     3.7278e-11, -4.545e-13},
};

static const double ENTHALPY[PIECES][10] = {
    {2068.1893932238, 44296.099518700533, -193.19870478742, 54.103578898628, -11.27919329336, 2.00174222063, -0.3065972153,
     0.04201866771, -5.407507582e-3, 6.21816946e-4},
    {90188.67240902693, 43927.44283799334, -31.71836698386, 11.47520128521, -1.99178773545, 0.34197899404, -0.04831369238,
     6.14229304e-3, -7.313033e-4, 7.812984e-5},
    {177985.10448843936, 43894.78030177707, 8.22182463777, 3.96892898583, -0.32033338701, 0.06744672878, -8.70524647e-3,
     1.0242237e-3, -1.134028e-4, 1.13304e-5},
    {265835.88705485551, 43969.13460522483, 28.18452824508, 3.13292262215, 0.02829487426, 0.0154610317, -1.8000584e-3,
     1.933783e-4, -1.97168e-5, 1.8577e-6},
    {353912.81061049395, 44121.33480992397, 48.56815624652, 3.77115797684, 0.113052205, 4.140305e-3, -4.2100013e-4,
     4.332338e-5, -3.76513e-6, 3.369e-7},
    {442381.84124169656, 44364.7456519877, 74.16228117469, 4.79289224172, 0.1382234502, 1.5674682e-3, -7.399428e-5,
     1.37431e-5, -7.7265e-7, 6.759e-8},
    {531448.58340048019, 44723.4493328892, 106.3527655824, 5.95616644896, 0.1526688767, 1.5960591e-3, 6.549577e-5, 7.83863e-6,
     -1.175e-7, 1.887e-8},
    {621371.04141038983, 45225.3634893942, 145.9023599109, 7.25611237668, 0.1746918026, 3.0217413e-3, 1.730714e-4, 8.22893e-6,
     1.532e-7, 1.45e-8},
    {712466.33066904036, 45901.9152618521, 193.9207870603, 8.80717165443, 0.2178307609, 5.889825e-3, 3.161893e-4, 1.31014e-5,
     4.91e-7, 2.541e-8},
    {805119.99753314249, 46790.7933825486, 252.5486358671, 10.8443664373, 0.300032987, 0.0110636703, 5.752775e-4, 2.57565e-5,
     1.1977e-6, 5.885e-8},
};

static const double DENSITY[PIECES][9] = {
    {999.82036268237714, 0.6227311038894, -0.9895097537167, 0.1202543784623, -0.0192385246667, 3.0198881912e-3,
     -4.246115485e-4, 5.2514219e-5, -5.4302149e-6},
    {997.8369132993642, -2.3292635642322, -0.5631464327979, 0.0405493719267, -4.5735061016e-3, 5.782781178e-4, -7.63738674e-5,
     9.6116984e-6, -1.0398746e-6},
    {991.1916236207267, -4.2066504230847, -0.3968220500169, 0.0187255450485, -1.5827349157e-3, 1.378957546e-4, -1.43311988e-5,
     1.6600571e-6, -1.821455e-7},
    {981.31918073925162, -5.6110206748015, -0.3140250137058, 9.95040624444e-3, -7.54968704e-4, 4.81287042e-5, -3.5628431e-6,
     3.035337e-7, -3.00129e-8},
    {968.90990705167111, -6.7685997934674, -0.2692884839392, 5.3919492919e-3, -4.281967761e-4, 2.14287408e-5, -1.3759351e-6,
     7.73712e-8, -5.4044e-9},
    {954.33244426363001, -7.7932728302758, -0.2457858936154, 2.6385736109e-3, -2.796288788e-4, 9.61843763e-6, -6.956806e-7,
     3.06017e-8, -1.526e-9},
    {937.77965636740964, -8.753053496086, -0.2360449851905, 6.896502141e-4, -2.181066317e-4, 3.2696152e-6, -4.01147e-7,
     1.36313e-8, -7.62e-10},
    {919.33147743926798, -9.6957471443956, -0.2369684950898, -9.8225828844e-4, -2.06455837e-4, -7.09446e-7, -2.853379e-7,
     3.5334e-9, -5.466e-10},
    {898.98090715986916, -10.6621253233144, -0.2479408160224, -2.7069247826e-3, -2.302839334e-4, -4.0773012e-6, -2.960339e-7,
     -5.1667e-9, -5.842e-10},
    {876.6394030740343, -11.6941267232455, -0.2701109698965, -4.7636469662e-3, -2.909650868e-4, -8.3509123e-6, -4.435156e-7,
     -1.70575e-8, -9.8673e-10},
};

static const double LATENT[PIECES][8] = {
    {2499410.4168503337, -24177.29565606, -317.1548631526, 70.6391916085, -11.384787592, 1.084987796, -0.0811078062,
     4.6671582e-3},
    {2450200.2615237241, -24889.3675466162, -96.3336993288, 12.325157407, -4.2751174558, 0.4290389625, -0.0345670091,
     2.208518e-3},
    {2400078.1753865004, -25234.9984869971, -97.611057077, -9.1567497492, -1.538476801, 0.159546832, -0.013604748,
     9.400205e-4},
    {2349124.2125022448, -25774.0150110685, -179.408699109, -16.802500507, -0.5418419415, 0.0565743931, -5.0390398e-3,
     3.615754e-4},
    {2296716.989272541, -26706.9124779372, -289.6959465902, -19.507927579, -0.196850787, 0.018485684, -1.929637e-3,
     1.18914e-4},
    {2241985.6495526431, -28104.9345054726, -410.3830182711, -20.597060448, -0.10207217, 2.2486219e-3, -1.006042e-3,
     2.88939e-5},
    {2183967.8497069805, -29996.8997174684, -536.4607006397, -21.472180271, -0.134262776, -8.357291e-3, -8.283895e-4,
     2.4672e-6},
    {2121653.9615987752, -32405.5320277307, -669.3826132979, -23.0125761691, -0.26739278, -0.018307834, -8.457424e-4,
     -3.9196e-6},
    {2053976.3476655851, -35369.3989675477, -815.5462175392, -26.0220936611, -0.502699082, -0.0289618177, -9.542652e-4,
     -1.3581e-5},
    {1979758.1551567125, -38962.4424237946, -986.3003556855, -31.3643825293, -0.8547349703, -0.0421678795, -1.327329e-3,
     -4.51747e-5},
};

static const double TEMPERATURE[PIECES][5] = {
    {273.8708989301617, 10.6689157671692, 0.04643712508723, -0.0133032465205, 2.5763858501e-3},
    {295.32202383317213, 10.7573607111917, 7.41129897869e-3, -2.917735981e-3, 5.0396840718e-4},
    {316.84957810948977, 10.7638847881208, -2.4038590359e-3, -1.0071815036e-3, 7.929548365e-5},
    {338.36063610729878, 10.7438706815675, -7.42965267532e-3, -8.0119651886e-4, -7.05191099e-6},
    {359.81207236179502, 10.7041351584852, -0.0125896231665, -9.4531237666e-4, -2.42504699e-5},
    {381.16202619438807, 10.6416373764173, -0.018861480462, -1.1454214726e-3, -2.44346316e-5},
    {402.36030945117487, 10.5516902179743, -0.0262906442595, -1.3233997294e-3, -1.96981135e-5},
    {423.34763767384153, 10.4300530959263, -0.0346630339355, -1.4586425414e-3, -1.41922218e-5},
    {444.05720648478254, 10.2734743097749, -0.0437213951006, -1.55420853e-3, -1.00363884e-5},
    {464.41668109244388, 10.0796332730243, -0.05327055282383, -1.6264225014e-3, -8.51618007e-6},
};
/* clang-format on */

/* The piece that x lies in, and where; false beyond the ends. */
static inline bool piece_of(double x, double first, double length, size_t *piece, double *z)
{
    double u = (x - first) * (1 / length);
    if (!(u >= 0 && u < PIECES))
        return false;
    *piece = (size_t)u;
    *z = 2 * (u - (double)*piece) - 1;
    return true;
}

static inline double value_of(const double c[], int terms, double z)
{
    double value = c[terms - 1];
    for (int i = terms - 2; i >= 0; i--)
        value = value * z + c[i];
    return value;
}

/* With its derivative by z. */
static inline double slope_of(const double c[], int terms, double z, double *slope)
{
    double value = c[terms - 1], d = 0;
    for (int i = terms - 2; i >= 0; i--) {
        d = d * z + value;
        value = value * z + c[i];
    }
    *slope = d;
    return value;
}

#define TERMS(table) ((int)(sizeof((table)[0]) / sizeof((table)[0][0])))

double boil_water_log_saturation_pressure(double temperature_K, double *by_K)
{
    size_t k;
    double z;
    if (!piece_of(temperature_K, FIRST_K, LENGTH_K, &k, &z)) {
        double p = boil_water_saturation_pressure(temperature_K);
        *by_K = boil_water_saturation_pressure_slope(temperature_K) / p;
        return log(p);
    }
    double value = slope_of(LOG_PRESSURE[k], TERMS(LOG_PRESSURE), z, by_K);
    *by_K *= 2 / LENGTH_K;
    return value;
}

double boil_water_density(double temperature_K)
{
    size_t k;
    double z;
    if (!piece_of(temperature_K, FIRST_K, LENGTH_K, &k, &z))
        return boil_water_exact_density(temperature_K);
    return value_of(DENSITY[k], TERMS(DENSITY), z);
}

double boil_water_enthalpy(double temperature_K)
{
    size_t k;
    double z, unused;
    if (!piece_of(temperature_K, FIRST_K, LENGTH_K, &k, &z))
        return boil_water_exact_enthalpy(temperature_K, &unused);
    return value_of(ENTHALPY[k], TERMS(ENTHALPY), z);
}

double boil_water_enthalpy_slope(double temperature_K, double *heat_capacity_J_kgK)
{
    size_t k;
    double z;
    if (!piece_of(temperature_K, FIRST_K, LENGTH_K, &k, &z))
        return boil_water_exact_enthalpy(temperature_K, heat_capacity_J_kgK);
    double value = slope_of(ENTHALPY[k], TERMS(ENTHALPY), z, heat_capacity_J_kgK);
    *heat_capacity_J_kgK *= 2 / LENGTH_K;
    return value;
}

double boil_water_heat_capacity(double temperature_K)
{
    double slope;
    boil_water_enthalpy_slope(temperature_K, &slope);
    return slope;
}

/* The polynomial is within 2e-5 K, and one step of Newton on that of the enthalpy makes it the inverse of that one. */
double boil_water_temperature(double enthalpy_J_kg)
{
    size_t k;
    double z, heat_capacity;
    if (!piece_of(enthalpy_J_kg, FIRST_J_KG, LENGTH_J_KG, &k, &z))
        return boil_water_exact_temperature(enthalpy_J_kg);
    double temperature_K = value_of(TEMPERATURE[k], TERMS(TEMPERATURE), z);
    return temperature_K - (boil_water_enthalpy_slope(temperature_K, &heat_capacity) - enthalpy_J_kg) / heat_capacity;
}

double boil_water_latent_heat(double temperature_K)
{
    size_t k;
    double z;
    if (!piece_of(temperature_K, FIRST_K, LENGTH_K, &k, &z))
        return boil_water_exact_latent_heat(temperature_K);
    return value_of(LATENT[k], TERMS(LATENT), z);
}
