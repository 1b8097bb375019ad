/* support/brine.h -- salt solutions for the tests, by weight per cent, at degrees Celsius. */
#ifndef SUPPORT_BRINE_H
#define SUPPORT_BRINE_H

#include "support/close.h"

#include "boilback.h"
#include "base/constants.h"
#include "properties/solution.h"

#define KELVIN(celsius) ((celsius) + BOIL_ZERO_CELSIUS)

static const double brine_caustic[BOIL_SALTS] = {1, 0, 0};

/* Dry blends of NaOH, NaNO3, NaNO2 by mass: the span of working baths. */
static const double brine_blends[][BOIL_SALTS] = {
    {1, 0, 0}, {0.8, 0.15, 0.05}, {0.65, 0.35, 0}, {0.6, 0.4, 0}, {0.6, 0.3, 0.1}};
enum { BRINE_BLENDS = sizeof brine_blends / sizeof *brine_blends };

static inline boil_mixture brine_of_caustic(double wt_pct)
{
    return boil_mixture_of(brine_caustic, wt_pct / 100);
}

/* K, from a cold start; the slope may be NULL. */
static inline double brine_boils_at(const boil_conditions *c, const boil_mixture *m, boil_slope *slope)
{
    boil_solution_guess guess = {0, 0};
    double T;
    assert_int_equal(boil_solution_boiling_point_near(c, m, &guess, &T, slope), BOIL_OK);
    return T;
}

/* K_water of a bath held at its boil: what a kg of water added must bring to leave the steam as it is, J/kg. */
static inline double brine_water_worth(const boil_conditions *c, const boil_mixture *m)
{
    boil_slope slope;
    const double T = brine_boils_at(c, m, &slope);
    const boil_heat heat = boil_solution_heat(m, T);
    return heat.water + heat.heat_capacity_J_K * slope.water;
}

/* Numbers in 0 to 1, the same in every run: the minimal generator of Park & Miller 1988. */
static inline double brine_draw(unsigned long long *seed)
{
    *seed = *seed * 16807 % 2147483647;
    return (double)*seed / 2147483647;
}

/* A dry blend; one in eight of a single salt. */
static inline void brine_draw_blend(unsigned long long *seed, double blend[BOIL_SALTS])
{
    const int only = (int)(8 * BOIL_SALTS * brine_draw(seed));
    double sum = 0;
    for (int i = 0; i < BOIL_SALTS; i++)
        sum += blend[i] = only < BOIL_SALTS ? i == only : brine_draw(seed);
    for (int i = 0; i < BOIL_SALTS; i++)
        blend[i] /= sum;
}

/* 60 to 110 kPa, elevation factor 0.85 to 1.10. */
static inline boil_conditions brine_draw_conditions(unsigned long long *seed)
{
    const double pressure = 60e3 + 50e3 * brine_draw(seed);
    return boil_conditions_at(pressure, 0.85 + 0.25 * brine_draw(seed));
}

/* A bath that the correlations cover: conditions, mixture of 1 kg, its boiling point and slope. */
typedef struct {
    boil_conditions c;
    boil_mixture m;
    boil_slope slope;
    double T, equivalent_molality;
} brine_bath;

/* Draws until the composition boils inside the range: nearly pure water, single salts and the range's end included. */
static inline brine_bath brine_draw_bath(unsigned long long *seed)
{
    for (;;) {
        brine_bath b = {.c = brine_draw_conditions(seed)};
        double blend[BOIL_SALTS];
        brine_draw_blend(seed, blend);
        const double kind = brine_draw(seed), size = brine_draw(seed);
        b.m = boil_mixture_of(blend, kind < 0.1 ? pow(10, -12 * size) : 0.95 * size);
        boil_solution_guess guess = {0, 0};
        if (boil_solution_boiling_point_near(&b.c, &b.m, &guess, &b.T, &b.slope) != BOIL_OK)
            continue;
        b.equivalent_molality = guess.equivalent_molality;
        if (boil_solution_range_at(b.T, b.equivalent_molality).margin > 0)
            return b;
    }
}

#endif
