#include "statistics/sampling.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_statistics_double.h>

/* ---- one input ---- */

static const double normal_cut = 3; /* standard deviations; see boil_spread_kind */

static const char *listed_problem(const boil_spread *s)
{
    if (s->count < 2 || s->count > BOIL_SPREAD_VALUES)
        return "a list of equally likely values must have 2 to 16 of them";
    for (size_t i = 0; i < s->count; i++) {
        if (!isfinite(s->value[i]))
            return "each of the equally likely values must be a number";
    }
    return NULL;
}

const char *boil_spread_problem(const boil_spread *s)
{
    if (s == NULL)
        return "there is no spread";
    switch (s->kind) {
    case BOIL_SPREAD_UNIFORM:
    case BOIL_SPREAD_TRIANGULAR:
        if (!(isfinite(s->low) && isfinite(s->high) && s->low < s->high))
            return "the low end of a spread must be below its high end";
        if (s->kind == BOIL_SPREAD_TRIANGULAR && !(s->likely >= s->low && s->likely <= s->high))
            return "the likely value of a spread must lie between its ends";
        return NULL;
    case BOIL_SPREAD_NORMAL:
        if (!isfinite(s->likely))
            return "the likely value of a spread must be a number";
        if (!(isfinite(s->deviation) && s->deviation > 0))
            return "the standard deviation of a spread must be above 0";
        return NULL;
    case BOIL_SPREAD_LISTED:
        return listed_problem(s);
    }
    return "unknown kind of spread";
}

/* The distribution function is (x - a)^2 / ((b - a)(c - a)) below the mode c, 1 - (b - x)^2 / ((b - a)(b - c)) above. */
static double triangular_at(const boil_spread *s, double u)
{
    const double width = s->high - s->low, rise = s->likely - s->low;
    if (u * width < rise)
        return s->low + sqrt(u * width * rise);
    return s->high - sqrt((1 - u) * width * (s->high - s->likely));
}

static double normal_at(const boil_spread *s, double u)
{
    const double below = gsl_cdf_ugaussian_P(-normal_cut);
    const double z = gsl_cdf_ugaussian_Pinv(below + u * (1 - 2 * below));
    return s->likely + s->deviation * fmax(-normal_cut, fmin(normal_cut, z));
}

double boil_spread_at(const boil_spread *s, double u)
{
    if (boil_spread_problem(s) != NULL || !(u >= 0 && u <= 1))
        return (double)NAN;
    switch (s->kind) {
    case BOIL_SPREAD_UNIFORM:
        return gsl_cdf_flat_Pinv(u, s->low, s->high);
    case BOIL_SPREAD_TRIANGULAR:
        return triangular_at(s, u);
    case BOIL_SPREAD_NORMAL:
        return normal_at(s, u);
    case BOIL_SPREAD_LISTED:
        return s->value[u < 1 ? (size_t)(u * (double)s->count) : s->count - 1];
    }
    return (double)NAN;
}

void boil_spread_moments(const boil_spread *s, double *mean, double *deviation)
{
    const double a = s->low, b = s->high, c = s->likely;
    switch (s->kind) {
    case BOIL_SPREAD_UNIFORM:
        *mean = (a + b) / 2;
        *deviation = (b - a) / sqrt(12);
        break;
    case BOIL_SPREAD_TRIANGULAR:
        *mean = (a + b + c) / 3;
        *deviation = sqrt((a * a + b * b + c * c - a * b - a * c - b * c) / 18);
        break;
    case BOIL_SPREAD_NORMAL:
        *mean = c;
        *deviation = s->deviation;
        break;
    case BOIL_SPREAD_LISTED:
        *mean = gsl_stats_mean(s->value, 1, s->count);
        *deviation = gsl_stats_sd_with_fixed_mean(s->value, 1, s->count, *mean);
        break;
    }
}

/* ---- the design ---- */

boil_sampling_plan boil_sampling_plan_default(size_t inputs)
{
    return (boil_sampling_plan){.inputs = inputs, .points = 64, .replicates = 16, .seed = 1};
}

const char *boil_sampling_plan_problem(const boil_sampling_plan *p)
{
    if (p == NULL)
        return "there is no plan";
    if (p->inputs < 1 || p->inputs > BOIL_SAMPLING_INPUTS)
        return "the number of uncertain inputs must be 1 to 20";
    if (p->points < 1 || p->points > (size_t)1 << BOIL_SAMPLING_BITS)
        return "the points of a replicate must be 1 to 1048576";
    if (p->replicates < 2 || p->replicates > BOIL_SAMPLING_REPLICATES)
        return "the replicates must be 2 to 32";
    if (p->seed < 1)
        return "the seed must be 1 to 4294967295";
    return NULL;
}

/* Point n of the sequence in Gray-code order differs from point n - 1 by one direction number, at n = 2^bit by number
   `bit`; point 0 is the origin, which GSL leaves out. Coordinates are multiples of 2^-30. [Antonov & Saleev 1979] */
static boil_outcome read_directions(boil_sampling *s)
{
    const unsigned dimension = (unsigned)(2 * s->inputs);
    gsl_qrng sequence = {gsl_qrng_sobol, dimension, gsl_qrng_sobol->state_size(dimension), NULL};
    sequence.state = malloc(sequence.state_size);
    if (sequence.state == NULL)
        return BOIL_NO_MEMORY;
    gsl_qrng_init(&sequence);
    double here[2 * BOIL_SAMPLING_INPUTS] = {0}, before[2 * BOIL_SAMPLING_INPUTS];
    int bit = 0;
    for (size_t n = 1; n < s->points; n++) {
        memcpy(before, here, sizeof before);
        gsl_qrng_get(&sequence, here);
        if ((n & (n - 1)) != 0)
            continue;
        for (size_t k = 0; k < 2 * s->inputs; k++)
            s->direction[bit][k] = (uint32_t)ldexp(here[k], 30) ^ (uint32_t)ldexp(before[k], 30);
        bit++;
    }
    free(sequence.state);
    return BOIL_OK;
}

/* Odd multiples of 2^-33: added to multiples of 2^-30 they are exact, and modulo 1 never 0. Drawn for all dimensions,
   so that an input's shifts do not depend on how many inputs follow. */
static boil_outcome draw_shifts(boil_sampling *s, uint32_t seed)
{
    gsl_rng generator = {gsl_rng_mt19937, malloc(gsl_rng_mt19937->size)};
    if (generator.state == NULL)
        return BOIL_NO_MEMORY;
    gsl_rng_set(&generator, seed);
    for (size_t r = 0; r < s->replicates; r++) {
        for (size_t k = 0; k < 2 * BOIL_SAMPLING_INPUTS; k++)
            s->shift[r][k] = ldexp((double)gsl_rng_get(&generator) + 0.5, -32);
    }
    free(generator.state);
    return BOIL_OK;
}

boil_outcome boil_sampling_init(boil_sampling *s, const boil_sampling_plan *p)
{
    if (s == NULL)
        return BOIL_BAD_INPUT;
    if (boil_sampling_plan_problem(p))
        return BOIL_BAD_INPUT;
    *s = (boil_sampling){.inputs = p->inputs, .points = 1, .replicates = p->replicates};
    while (s->points < p->points)
        s->points *= 2;
    const boil_outcome outcome = read_directions(s);
    return outcome == BOIL_OK ? draw_shifts(s, p->seed) : outcome;
}

size_t boil_sampling_rows(const boil_sampling *s)
{
    if (s == NULL)
        return 0;
    return s->points * s->replicates * (s->inputs + 2);
}

size_t boil_sampling_draws(const boil_sampling *s)
{
    if (s == NULL)
        return 0;
    return s->points * s->replicates * 2;
}

bool boil_sampling_is_draw(const boil_sampling *s, size_t row)
{
    return row % (s->inputs + 2) < 2;
}

static double coordinate(const boil_sampling *s, size_t point, size_t replicate, size_t dimension)
{
    uint32_t x = 0;
    size_t gray = point ^ (point >> 1);
    for (int bit = 0; gray != 0; bit++, gray >>= 1) {
        if (gray & 1)
            x ^= s->direction[bit][dimension];
    }
    const double shifted = ldexp((double)x, -30) + s->shift[replicate][dimension];
    return shifted < 1 ? shifted : shifted - 1;
}

void boil_sampling_row(const boil_sampling *s, size_t row, double u[])
{
    if (s == NULL || u == NULL)
        return;
    const bool there = row < boil_sampling_rows(s);
    const size_t kind = row % (s->inputs + 2), block = row / (s->inputs + 2);
    for (size_t i = 0; i < s->inputs; i++) {
        const bool from_b = kind == 1 || kind == 2 + i;
        u[i] = !there ? (double)NAN : coordinate(s, block / s->replicates, block % s->replicates, from_b ? s->inputs + i : i);
    }
}

/* ---- what the results say ---- */

/* A block is the rows of one point in one replicate. */
static double result_at(const boil_sampling_results *r, size_t output, size_t block, size_t kind)
{
    return r->value[(block * (r->design->inputs + 2) + kind) * r->outputs + output];
}

/* The chance p at which `yes` or more of `count` happen in one of forty cases: the beta distribution's function at p
   for yes and count - yes + 1. By bisection: GSL's inverse of it finds no number for some counts from 32768 on (5 of
   32768) and does not return for a million of two. Near p = yes / count its function may give none; that is above the
   answer. */
static double low_end(size_t yes, size_t count)
{
    const double y = (double)yes, n = (double)count;
    double low = 0, high = y / n;
    while (high - low > 1e-15 * high) {
        const double middle = (low + high) / 2;
        *(gsl_cdf_beta_P(middle, y, n - y + 1) < 0.025 ? &low : &high) = middle;
    }
    return high;
}

boil_odds boil_odds_of(size_t yes, size_t count)
{
    boil_odds o = {yes, count, (double)NAN, (double)NAN, (double)NAN};
    if (count == 0 || yes > count)
        return o;
    o.chance = (double)yes / (double)count;
    o.low = low_end(yes, count);
    o.high = 1 - low_end(count - yes, count);
    return o;
}

double boil_sampling_quantile(const double sorted[], size_t count, double share)
{
    return sorted != NULL && count > 0 && share >= 0 && share <= 1
               ? gsl_stats_quantile_from_sorted_data(sorted, 1, count, share)
               : (double)NAN;
}

/* What is summed over the points of a replicate. */
enum { POINTS, VALUE, SQUARE, FIRST, TOTAL = FIRST + BOIL_SAMPLING_INPUTS, SUMS = TOTAL + BOIL_SAMPLING_INPUTS };

static bool is_complete(const boil_sampling_results *r, size_t output, size_t block)
{
    for (size_t kind = 0; kind < r->design->inputs + 2; kind++) {
        if (!isfinite(result_at(r, output, block, kind)))
            return false;
    }
    return true;
}

/* Mean over A and B of complete points, taken from a first value so that a constant output gives that constant
   exactly. */
static double centre_of(const boil_sampling_results *r, size_t output)
{
    double first = (double)NAN, sum = 0, count = 0;
    for (size_t block = 0; block < r->design->points * r->design->replicates; block++) {
        if (!is_complete(r, output, block))
            continue;
        if (count == 0)
            first = result_at(r, output, block, 0);
        sum += (result_at(r, output, block, 0) - first) + (result_at(r, output, block, 1) - first);
        count += 2;
    }
    return first + sum / count;
}

/* With f less its mean m, which takes nothing from the expectations but much from their scatter:
   V = ((fA - m)^2 + (fB - m)^2) / 2;  V S_i = (fB - m)(fABi - fA)  [Saltelli et al. 2010, table 2 (b)];
   V T_i = (fA - fABi)^2 / 2  [Jansen 1999; table 2 (f)]. */
static void add_block(const boil_sampling_results *r, size_t output, size_t block, double centre, double sum[])
{
    const double a = result_at(r, output, block, 0) - centre, b = result_at(r, output, block, 1) - centre;
    sum[POINTS] += 1;
    sum[VALUE] += (a + b) / 2;
    sum[SQUARE] += (a * a + b * b) / 2;
    for (size_t i = 0; i < r->design->inputs; i++) {
        const double ab = result_at(r, output, block, 2 + i) - centre;
        sum[FIRST + i] += b * (ab - a);
        sum[TOTAL + i] += (a - ab) * (a - ab) / 2;
    }
}

/* Ratio q of two sums over the replicates, and its error from the scatter of over - q under among them [Cochran 1977,
   section 6.3]: where an output hardly varies within one replicate, that replicate's own ratio would mean nothing. */
static boil_estimate ratio_of(double (*sum)[SUMS], size_t replicates, int over, int under)
{
    double top = 0, bottom = 0, scatter = 0, used = 0;
    for (size_t i = 0; i < replicates; i++) {
        top += sum[i][over];
        bottom += sum[i][under];
        used += sum[i][POINTS] > 0 ? 1 : 0;
    }
    if (!(bottom > 0))
        return (boil_estimate){(double)NAN, (double)NAN};
    const double ratio = top / bottom;
    for (size_t i = 0; i < replicates; i++) {
        const double off = sum[i][over] - ratio * sum[i][under];
        scatter += off * off;
    }
    if (used < 2)
        return (boil_estimate){ratio, (double)NAN};
    const double error = sqrt(scatter * used / (used - 1)) / bottom;
    return (boil_estimate){ratio, gsl_cdf_tdist_Qinv(0.025, used - 1) * error};
}

void boil_sampling_sensitivity(const boil_sampling_results *r, size_t output, boil_sensitivity *out)
{
    if (out == NULL)
        return;
    *out = (boil_sensitivity){0};
    if (r == NULL || r->design == NULL || r->value == NULL || output >= r->outputs)
        return;
    const size_t replicates = r->design->replicates;
    const double centre = centre_of(r, output);
    double sum[BOIL_SAMPLING_REPLICATES][SUMS] = {{0}};
    for (size_t block = 0; block < r->design->points * replicates; block++) {
        if (!is_complete(r, output, block))
            continue;
        add_block(r, output, block, centre, sum[block % replicates]);
        out->points++;
    }
    out->mean = ratio_of(sum, replicates, VALUE, POINTS);
    out->mean.value += centre;
    out->variance = ratio_of(sum, replicates, SQUARE, POINTS);
    for (int i = 0; i < (int)r->design->inputs; i++) {
        out->first[i] = ratio_of(sum, replicates, FIRST + i, SQUARE);
        out->total[i] = ratio_of(sum, replicates, TOTAL + i, SQUARE);
    }
}
