#include <math.h>
#include <string.h>

#include "properties/water.h"
#include "bath/rates.h"
#include "bath/rates_parts.h"

/* bath/rates_loads.c -- the steel in the bath, and the water trapped in it. */

/* What bodies meet. */
typedef struct {
    const boil_bath *bath;
    double time_s, temperature_K;
    boil_convection_bath liquid; /* where there are any */
} surroundings;

static surroundings surroundings_of(const boil_bath *b, double t, const boil_rates_solution *s, const boil_rates_pool *pool)
{
    surroundings x = {.bath = b, .time_s = t, .temperature_K = s->temperature_K};
    if (b->bodies_count > 0)
        x.liquid = boil_convection_bath_of(&s->convection, pool->agitation_m_s);
    return x;
}

/* Heat into a body with such unknowns of its own, W, and their rates. */
static double body_heat(const surroundings *x, const boil_bath_body *o, const double own[], double rates[])
{
    double h = o->coefficient_W_m2K;
    if (!(h > 0))
        h = x->bath->plant->pool.part_coefficient_factor *
            boil_convection_bath_side(&x->liquid, o->body.height_m, x->temperature_K - own[0]);
    return boil_conduction_rates(&o->body, own, x->temperature_K, h, boil_bath_body_immersed(o, x->time_s), rates);
}

/* Water trapped in hollows of parts; when all of it has let go they hold what the bath holds. */
static double pocket_heat(const surroundings *x, const boil_bath_body *o, const double own[], double rates[])
{
    bool holds = isinf(o->released_s);
    double warmer = x->temperature_K - boil_water_temperature(own[0]);
    double heat = holds ? o->pocket_W_K * warmer * boil_bath_body_immersed(o, x->time_s) : 0;
    rates[0] = heat / o->pocket_kg;
    return heat;
}

static double heat_into(const surroundings *x, const boil_bath_body *o, const double own[], double rates[])
{
    return (o->pocket_kg > 0 ? pocket_heat : body_heat)(x, o, own, rates);
}

/* Of water in a hollow what is left of it displaces, of steel all that is immersed. */
double boil_rates_displaced(const boil_bath *b, double t)
{
    double m3 = 0;
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        bool whole = !(o->pocket_kg > 0) || isinf(o->released_s);
        double left = whole ? 1 : fmax(0, 1 - (t - o->released_s) / o->release_s);
        m3 += left * o->displaced_m3 * boil_bath_body_immersed(o, t);
    }
    return m3;
}

boil_rates_loads boil_rates_of_loads(const boil_bath *b, double t, const double y[], const boil_rates_solution *s,
                                     const boil_rates_pool *pool, double dydt[])
{
    boil_rates_loads l = {0, boil_rates_displaced(b, t), 0, -1e6};
    const surroundings x = surroundings_of(b, t, s, pool);
    for (size_t i = 0; i < b->bodies_count; i++) {
        const boil_bath_body *o = &b->bodies[i];
        const double *own = y + BOIL_STATE_FIXED + o->at;
        double rates[BOIL_CONDUCTION_UNKNOWNS_MAX];
        l.heat_W += heat_into(&x, o, own, rates);
        if (dydt)
            memcpy(dydt + BOIL_STATE_FIXED + o->at, rates, (size_t)o->body.unknowns * sizeof(double));
        if (o->pocket_kg > 0 && isinf(o->released_s) && !o->lifting)
            l.pocket_J_kg = fmax(l.pocket_J_kg, own[0] - boil_water_enthalpy(b->air.saturation_K));
        if (!(o->pocket_kg > 0) && o->lifting)
            l.drag_kg_s += o->drag_out_kg / (o->out_end_s - o->out_start_s);
    }
    return l;
}

void boil_rates_body_slopes(const boil_bath *b, size_t body, double t, const double y[], const boil_rates_view *v,
                            size_t stride, double own_by_s[], double heat_W[])
{
    enum { MOST = BOIL_CONDUCTION_UNKNOWNS_MAX };
    const boil_bath_body *o = &b->bodies[body];
    const surroundings x = surroundings_of(b, t, &v->solution, &v->pool);
    const double small = o->pocket_kg > 0 ? 1 : 1e-3; /* J/kg, K */
    const size_t n = (size_t)o->body.unknowns;
    double own[MOST], rates[MOST], moved[MOST];
    memcpy(own, y + BOIL_STATE_FIXED + o->at, n * sizeof *own);
    double heat = heat_into(&x, o, own, rates);
    for (size_t k = 0; k < n; k++) {
        double before = own[k];
        own[k] += small;
        heat_W[k] = (heat_into(&x, o, own, moved) - heat) / small;
        own[k] = before;
        for (size_t i = 0; i < n; i++)
            own_by_s[i * stride + k] = (moved[i] - rates[i]) / small;
    }
}
