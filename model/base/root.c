#include "base/root.h"

#include <gsl/gsl_errno.h>
#include <math.h>

/* GSL must be given numbers: zero ends the search where the function fails. The ends were asked before. */
static double numbers_only(double x, void *context)
{
    boil_root *r = context;
    if (x == r->low)
        return r->at_low;
    if (x == r->high)
        return r->at_high;
    double f = r->of(x, r->context);
    if (isfinite(f))
        return f;
    r->failed = true;
    return 0;
}

static void read_bracket(boil_root *r)
{
    r->best = gsl_root_fsolver_root(&r->solver);
    r->near = gsl_root_fsolver_x_lower(&r->solver);
    r->far = gsl_root_fsolver_x_upper(&r->solver);
}

bool boil_root_begin(boil_root *r, double (*of)(double x, void *context), void *context, double low, double high)
{
    *r = (boil_root){.of = of, .context = context, .low = low, .high = high};
    r->at_low = of(low, context);
    r->at_high = of(high, context);
    bool crosses = (r->at_low <= 0 && r->at_high >= 0) || (r->at_low >= 0 && r->at_high <= 0);
    if (!(low < high) || !crosses || !isfinite(r->at_low) || !isfinite(r->at_high) ||
        gsl_root_fsolver_brent->size > sizeof r->state)
        return false;
    r->solver = (gsl_root_fsolver){.type = gsl_root_fsolver_brent, .state = &r->state};
    r->function = (gsl_function){numbers_only, r};
    if (gsl_root_fsolver_set(&r->solver, &r->function, low, high) != GSL_SUCCESS)
        return false;
    read_bracket(r);
    return true;
}

bool boil_root_step(boil_root *r)
{
    bool stepped = gsl_root_fsolver_iterate(&r->solver) == GSL_SUCCESS && !r->failed;
    read_bracket(r);
    return stepped;
}
