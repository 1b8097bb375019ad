/* support/heating.h -- integrates a body in a bath whose coefficient and immersion change with time. */
#ifndef SUPPORT_HEATING_H
#define SUPPORT_HEATING_H

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>

#include "transfer/conduction.h"

/* The last unknown, y[body.unknowns], is the heat taken up, J. */
typedef struct {
    boil_conduction_body body;
    double fluid_K, coefficient_W_m2K;
    double lowering_s; /* the share immersed rises from none to all in this time; 0: all in */
    double time_s, y[BOIL_CONDUCTION_UNKNOWNS_MAX + 1];
} heating;

static inline heating heating_start(const boil_conduction_body *b, double start_K, double fluid_K, double coefficient_W_m2K)
{
    heating h = {.body = *b, .fluid_K = fluid_K, .coefficient_W_m2K = coefficient_W_m2K};
    boil_conduction_init(b, start_K, h.y);
    return h;
}

static inline int heating_rates(double t, const double y[], double dydt[], void *p)
{
    const heating *h = p;
    const double immersed = t < h->lowering_s ? t / h->lowering_s : 1;
    dydt[h->body.unknowns] = boil_conduction_rates(&h->body, y, h->fluid_K, h->coefficient_W_m2K, immersed, dydt);
    return GSL_SUCCESS;
}

/* Nothing may jump between here and there. */
static inline void heating_advance(heating *h, double until_s)
{
    gsl_odeiv2_system system = {heating_rates, NULL, (size_t)h->body.unknowns + 1, h};
    gsl_odeiv2_driver *driver = gsl_odeiv2_driver_alloc_y_new(&system, gsl_odeiv2_step_rk8pd, 1e-6, 1e-10, 1e-11);
    assert_non_null(driver);
    assert_int_equal(gsl_odeiv2_driver_apply(driver, &h->time_s, until_s, h->y), GSL_SUCCESS);
    gsl_odeiv2_driver_free(driver);
}

#endif
