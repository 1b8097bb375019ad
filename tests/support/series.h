/* support/series.h -- the exact series for a slab (d = 1), cylinder (2) or sphere (3), at a uniform temperature at first, in a
   fluid of constant temperature and coefficient [Carslaw & Jaeger 1959; Cengel & Ghajar, ch. 4]:
       theta(xi) = sum C_m exp(-z_m^2 Fo) f(z_m xi),   f = cos, J0, sin(u)/u. */
#ifndef SUPPORT_SERIES_H
#define SUPPORT_SERIES_H

#include <math.h>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_math.h>
#include <gsl/gsl_roots.h>
#include <gsl/gsl_sf_bessel.h>

#define SERIES_TERMS 60

typedef struct {
    int dimension;
    double biot;
    double root[SERIES_TERMS], coefficient[SERIES_TERMS];
} series;

/* Zero where z tan z = Bi, z J1/J0 = Bi, 1 - z cot z = Bi, without the poles. */
static inline double series_condition(double z, void *p)
{
    const series *s = p;
    if (s->dimension == 1)
        return z * sin(z) - s->biot * cos(z);
    if (s->dimension == 2)
        return z * gsl_sf_bessel_J1(z) - s->biot * gsl_sf_bessel_J0(z);
    return z * cos(z) - (1 - s->biot) * sin(z);
}

/* The brackets lie between the zeros of the two terms that must balance. */
static inline double series_root(series *s, unsigned m)
{
    gsl_function f = {series_condition, s};
    double low = M_PI * m, high = s->dimension == 1 ? M_PI * m + M_PI_2 : M_PI * (m + 1);
    if (s->dimension == 2) {
        low = m == 0 ? 0 : gsl_sf_bessel_zero_J1(m);
        high = gsl_sf_bessel_zero_J0(m + 1);
    }
    gsl_root_fsolver *solver = gsl_root_fsolver_alloc(gsl_root_fsolver_brent);
    assert_non_null(solver);
    assert_int_equal(gsl_root_fsolver_set(solver, &f, m == 0 ? 1e-6 : low, high), GSL_SUCCESS);
    for (int i = 0; i < 100; i++) {
        assert_int_equal(gsl_root_fsolver_iterate(solver), GSL_SUCCESS);
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver), gsl_root_fsolver_x_upper(solver), 1e-14, 1e-14) ==
            GSL_SUCCESS)
            break;
    }
    const double z = gsl_root_fsolver_root(solver);
    gsl_root_fsolver_free(solver);
    return z;
}

static inline double series_coefficient(int dimension, double z)
{
    if (dimension == 1)
        return 4 * sin(z) / (2 * z + sin(2 * z));
    if (dimension == 2) {
        const double j0 = gsl_sf_bessel_J0(z), j1 = gsl_sf_bessel_J1(z);
        return 2 / z * j1 / (j0 * j0 + j1 * j1);
    }
    return 4 * (sin(z) - z * cos(z)) / (2 * z - sin(2 * z));
}

static inline series series_create(int dimension, double biot)
{
    series s = {.dimension = dimension, .biot = biot};
    for (unsigned m = 0; m < SERIES_TERMS; m++) {
        s.root[m] = series_root(&s, m);
        s.coefficient[m] = series_coefficient(dimension, s.root[m]);
    }
    return s;
}

static inline double series_shape_mean(int dimension, double z)
{
    if (dimension == 1)
        return sin(z) / z;
    return dimension == 2 ? 2 * gsl_sf_bessel_J1(z) / z : 3 * (sin(z) - z * cos(z)) / (z * z * z);
}

/* (T_mean - T_fluid)/(T_start - T_fluid) */
static inline double series_mean(const series *s, double fourier)
{
    double theta = 0;
    for (int m = SERIES_TERMS - 1; m >= 0; m--)
        theta += s->coefficient[m] * exp(-s->root[m] * s->root[m] * fourier) * series_shape_mean(s->dimension, s->root[m]);
    return theta;
}

#endif
