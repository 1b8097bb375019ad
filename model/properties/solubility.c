#include "properties/solubility.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "base/root.h"

typedef struct {
    double x, y;
} point;

/* Linear between points of rising x; straight on beyond the last. */
static double between(const point *table, size_t n, double x)
{
    size_t i = 1;
    while (i + 1 < n && x > table[i].x)
        i++;
    return table[i - 1].y + (table[i].y - table[i - 1].y) * (x - table[i - 1].x) / (table[i].x - table[i - 1].x);
}

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

/* degC, g per 100 g of water. Nitrate: a handbook's table, read; nitrite: CRC at 0, 25 and 100 degC, the rest from memory. */
static const point NITRATE[] = {{0, 72.7},   {10, 79.9},  {20, 87.6},  {25, 91.6}, {30, 96.1},
                                {40, 104.9}, {50, 114.1}, {60, 124.7}, {80, 149},  {100, 176}};
static const point NITRITE[] = {{0, 71.4}, {20, 81.8}, {25, 84.8}, {40, 94.9}, {60, 111}, {80, 132.6}, {100, 160}};

/* mol/kg NaOH, share of the solubility in water that is left. */
static const point BESIDE_HYDROXIDE[] = {
    {0, 1},           {4, 7.5 / 10.7}, {8, 5.4 / 10.7}, {10, 4.7 / 10.7},
    {20, 3.5 / 10.7}, {40, 0.181},     {200, 0.05}}; /* the same decay; then only to stay positive */

/* wt% NaOH, degC: after a digitised curve of Wang et al. 2008; 52.1 to 63.9 and from 80.7 wt% CRC's solubilities; melting. */
static const point LIQUIDUS[] = {{0, 0},       {5, -3.9},   {10, -9.8},  {15, -18},    {18.7, -28}, {22, -24.5},  {25, -18},
                                 {27.3, -5.3}, {30, 2.2},   {32, 5.3},   {34, 9.6},    {36, 13},    {38.9, 15.7}, {41, 14.9},
                                 {43.5, 11.7}, {45.6, 5.5}, {47.1, 8},   {50.4, 11.7}, {52.1, 20},  {53.05, 25},  {54.1, 30},
                                 {56.3, 40},   {59.3, 50},  {63.9, 60},  {68.1, 63.5}, {70, 64},    {73.4, 62.9}, {74, 76},
                                 {75.3, 96.5}, {76.3, 111}, {77.8, 126}, {78.8, 133},  {80.7, 150}, {84.7, 200},  {100, 318}};

/* kg per kg of water, with nothing beside. */
static double in_water(int salt, double temperature_K)
{
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    return (salt == BOIL_NANO3 ? between(NITRATE, COUNT(NITRATE), t) : between(NITRITE, COUNT(NITRITE), t)) / 100;
}

static double left_beside(double hydroxide_mol_kg)
{
    return between(BESIDE_HYDROXIDE, COUNT(BESIDE_HYDROXIDE), hydroxide_mol_kg);
}

double boil_solubility(int salt, double temperature_K, double hydroxide_mol_kg)
{
    return in_water(salt, temperature_K) / boil_salt_molar_mass(salt) * left_beside(hydroxide_mol_kg);
}

double boil_solubility_liquidus(double strength)
{
    return BOIL_ZERO_CELSIUS + between(LIQUIDUS, COUNT(LIQUIDUS), 100 * strength);
}

static double hydroxide_molality(const boil_mixture *m)
{
    return m->salt[BOIL_NAOH] / boil_salt_molar_mass(BOIL_NAOH) / m->water;
}

/* kg of each salt beyond its saturation; negative while it would still dissolve. */
static void excesses(const boil_mixture *m, double temperature_K, double each[BOIL_SALTS])
{
    double left = left_beside(hydroxide_molality(m));
    each[BOIL_NAOH] = 0;
    for (int i = BOIL_NANO3; i <= BOIL_NANO2; i++)
        each[i] = m->salt[i] - in_water(i, temperature_K) * left * m->water;
}

double boil_solubility_excess_each(const boil_mixture *m, double temperature_K, double each[BOIL_SALTS])
{
    excesses(m, temperature_K, each);
    double sum = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += each[i] = fmax(0, each[i]);
    return sum;
}

double boil_solubility_excess(const boil_mixture *m, double temperature_K)
{
    double each[BOIL_SALTS];
    return boil_solubility_excess_each(m, temperature_K, each);
}

/* kg, by (1). */
static double effective_hydroxide(const boil_mixture *m)
{
    double others =
        (m->salt[BOIL_NANO3] / boil_salt_molar_mass(BOIL_NANO3) + m->salt[BOIL_NANO2] / boil_salt_molar_mass(BOIL_NANO2)) /
        m->water;
    return m->salt[BOIL_NAOH] * (1 - 0.39 * expm1(-others / 0.5));
}

static double liquidus_of(const boil_mixture *m)
{
    double hydroxide = effective_hydroxide(m);
    return boil_solubility_liquidus(hydroxide / (hydroxide + m->water));
}

double boil_solubility_above_liquidus(const boil_mixture *m, double temperature_K)
{
    return temperature_K - liquidus_of(m);
}

/* Saturation rises with temperature: bisection between 0 and 300 degC, where nitrate melts. */
static double saturated_at(const boil_mixture *m, int salt)
{
    double low = BOIL_ZERO_CELSIUS, high = BOIL_ZERO_CELSIUS + 300, each[BOIL_SALTS];
    excesses(m, low, each);
    if (each[salt] <= 0)
        return low;
    while (high - low > 1e-3) {
        excesses(m, (low + high) / 2, each);
        *(each[salt] > 0 ? &low : &high) = (low + high) / 2;
    }
    return high;
}

double boil_solubility_crystals_from(const boil_mixture *m)
{
    if (m == NULL)
        return (double)NAN;
    double from = fmax(saturated_at(m, BOIL_NANO3), saturated_at(m, BOIL_NANO2));
    from = fmax(from, liquidus_of(m));
    return from > BOIL_ZERO_CELSIUS ? from : (double)NAN;
}

/* Strength of NaOH and water that is saturated at a temperature: where the liquidus last rises through it. */
static double saturated_strength(double temperature_K)
{
    const double strongest = 95;
    double t = temperature_K - BOIL_ZERO_CELSIUS;
    size_t i = COUNT(LIQUIDUS) - 1;
    while (i > 1 && !(LIQUIDUS[i - 1].y <= t))
        i--;
    const point *a = &LIQUIDUS[i - 1], *b = &LIQUIDUS[i];
    return fmax(0, fmin(strongest, a->x + (b->x - a->x) * (t - a->y) / (b->y - a->y))) / 100;
}

typedef struct {
    const boil_mixture *from;
    const double *solid;
    double temperature_K, hydroxide; /* kg of it that a kg of water holds */
} saturation;

static boil_mixture with_solid(const saturation *s, double times)
{
    boil_mixture m = *s->from;
    for (int i = 0; i < BOIL_SALTS; i++)
        m.salt[i] += times * s->solid[i];
    return m;
}

/* kg per kg of water of the solid's salts that would still dissolve, by the one nearest to its saturation. */
static double room_left(double times, void *context)
{
    const saturation *s = context;
    const boil_mixture m = with_solid(s, times);
    double room = s->hydroxide - effective_hydroxide(&m) / m.water, each[BOIL_SALTS];
    excesses(&m, s->temperature_K, each);
    for (int i = BOIL_NANO3; i <= BOIL_NANO2; i++)
        if (s->solid[i] > 0)
            room = fmin(room, -each[i] / m.water);
    return room;
}

/* With no hydroxide in the solid each of the others dissolves as far as it would alone. */
static boil_mixture saturated_beside_hydroxide(const saturation *s)
{
    double times = (double)INFINITY, each[BOIL_SALTS];
    excesses(s->from, s->temperature_K, each);
    for (int i = BOIL_NANO3; i <= BOIL_NANO2; i++)
        if (s->solid[i] > 0)
            times = fmin(times, -each[i] / s->solid[i]);
    return with_solid(s, fmax(0, times));
}

boil_mixture boil_solubility_saturated(const boil_mixture *m, const double solid[BOIL_SALTS], double temperature_K)
{
    const double most = 50, precision = 1e-10; /* kg of solid per kg of water */
    double sum = solid[0] + solid[1] + solid[2], per_kg = m->water / sum;
    if (!(sum > 0))
        return *m;
    saturation s = {m, solid, temperature_K, 0};
    if (!(solid[BOIL_NAOH] > 0))
        return saturated_beside_hydroxide(&s);
    double strength = saturated_strength(temperature_K);
    s.hydroxide = strength / (1 - strength);
    boil_root root;
    if (!(room_left(0, &s) > 0) || !boil_root_begin(&root, room_left, &s, 0, most * per_kg))
        return *m;
    while (root.far - root.near > precision * per_kg)
        if (!boil_root_step(&root))
            return *m;
    return with_solid(&s, root.best);
}

double boil_solubility_clear(const boil_mixture *m, double room_K)
{
    const double over_K = 5;
    return fmax(room_K, boil_solubility_crystals_from(m) + over_K); /* fmax leaves out a NaN: it never crystallises */
}
