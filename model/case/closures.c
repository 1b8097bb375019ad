#include "case/closures.h"

#include <math.h>

#include "base/constants.h"
#include "equipment/tank.h"
#include "properties/viscosity.h"
#include "properties/water.h"
#include "transfer/flash.h"
#include "transfer/interface_heat.h"
#include "transfer/swell_pool.h"

/* NaN: the plant's own. */
typedef struct {
    const char *name;
    double turnover, held, efficiency, erosion, mixer, takes, path_m, drift, dilution, salt_transfer, escapes;
    bool boils_graver; /* by as much as the strength of a boiling point, or the boiling point of a strength, is unknown */
} closure_row;

#define OWN ((double)NAN)
#define NOTHING (-1.0)
#define ALL ((double)INFINITY)
#define LEVEL ((double)INFINITY) /* no skin stronger than the bath */
#define FAST BOIL_INTERFACE_PATH_FAST
#define USUAL BOIL_INTERFACE_PATH_LIKELY
#define SLOW BOIL_INTERFACE_PATH_SLOW
#define MORE BOIL_FLASH_DILUTION_GRAVE
#define LESS BOIL_FLASH_DILUTION_MILD

/* clang-format off */
static const closure_row rows[BOIL_CLOSURES] = {
    [BOIL_CLOSURES_LIKELY] =      {"likely",      OWN, 0,  OWN,  OWN, OWN, OWN,     OWN,   OWN,  OWN,  OWN, 0, false},
    [BOIL_CLOSURES_LIKELY_WIDE] = {"likely-wide", OWN, 0,  OWN,  OWN, OWN, OWN,     OWN,   OWN,  OWN,  OWN, 0, false},
    [BOIL_CLOSURES_GRAVE] =       {"grave",       0.3, 0,  0.20, 0.3, 0,   NOTHING, FAST,  1.53, MORE, LEVEL, 0, true},
    [BOIL_CLOSURES_SUDDEN] =      {"sudden",      0.3, 10, 0.20, 0.3, 0,   NOTHING, FAST,  1.53, MORE, LEVEL, 0, true},
    [BOIL_CLOSURES_SUDDEN_3] =    {"sudden-3",    0.3, 10, 0.20, 0.3, 0,   NOTHING, USUAL, 1.53, MORE, LEVEL, 0, true},
    [BOIL_CLOSURES_SUDDEN_8] =    {"sudden-8",    0.3, 10, 0.20, 0.3, 0,   NOTHING, SLOW,  1.53, MORE, LEVEL, 0, true},
    [BOIL_CLOSURES_MILD] =        {"mild",        3,   0,  0.02, 3,   1,   ALL,     USUAL, BOIL_SWELL_POOL_MOST, LESS, OWN, 0, false},
    [BOIL_CLOSURES_MILD_8] =      {"mild-8",      3,   0,  0.02, 3,   1,   ALL,     SLOW,  BOIL_SWELL_POOL_MOST, LESS, OWN, 0, false},
    [BOIL_CLOSURES_TRIGGER] =     {"trigger",     0.3, 0,  0.20, 10,  1,   ALL,     FAST,  1.53, MORE, LEVEL, 1, false},
};
/* clang-format on */

const char *boil_closures_name(boil_closures c)
{
    return rows[c].name;
}

bool boil_closures_is_mild(boil_closures c)
{
    return c == BOIL_CLOSURES_MILD || c == BOIL_CLOSURES_MILD_8;
}

static void put(double *own, double value)
{
    if (!isnan(value))
        *own = value;
}

static double pool_drift(const boil_plant *p)
{
    boil_initial_state s;
    if (boil_plant_initial(p, &s) != BOIL_OK)
        return p->pool.drift;
    boil_swell_pool_fluid f = {boil_solution_density(&s.mixture, s.boiling_point_K),
                               boil_steam_density(s.boiling_point_K, p->ambient.pressure_Pa),
                               p->transport.viscosity_factor * boil_viscosity_solution(&s.mixture, s.boiling_point_K),
                               p->transport.surface_tension_N_m};
    return boil_swell_pool_drift(&f, 2 * boil_tank_equivalent_radius(&p->tank));
}

/* A bath that boils lower at a strength is stronger at its boiling point, and water finds more heat in it; whoever gives the strength
   has that, and one that boils higher is hotter. Where the correlations have no such bath it stays the plant's. */
static double graver_elevation(const boil_plant *p)
{
    const double lower = 0.88, higher = 1.07;
    boil_initial_state s;
    boil_plant other = *p;
    bool by_boiling_point = p->charge.basis == BOIL_INITIAL_BY_BOILING_POINT;
    other.elevation_factor = by_boiling_point ? fmin(p->elevation_factor, lower) : fmax(p->elevation_factor, higher);
    return boil_plant_initial(&other, &s) == BOIL_OK ? other.elevation_factor : p->elevation_factor;
}

boil_plant boil_closures_put(boil_closures c, const boil_plant *p)
{
    const closure_row *r = &rows[c];
    boil_plant out = *p;
    boil_water_layer_law *l = &out.layer;
    put(&l->turnover_factor, r->turnover);
    l->held_factor = r->held;
    put(&l->mixing_efficiency, r->efficiency);
    put(&l->erosion_factor, r->erosion);
    put(&l->mixer_share, r->mixer);
    put(&l->drift_coefficient, r->takes);
    put(&l->path_m, r->path_m);
    l->local_steam = r->escapes;
    put(&out.dilution_factor, r->dilution);
    put(&out.losses.salt_transfer_m_s, r->salt_transfer);
    if (r->boils_graver)
        out.elevation_factor = graver_elevation(p);
    if (c == BOIL_CLOSURES_LIKELY_WIDE)
        out.pool.drift = fmax(p->pool.drift, pool_drift(p));
    else if (boil_closures_is_mild(c))
        out.pool.drift = r->drift;
    else if (!isnan(r->drift))
        out.pool.drift = fmin(p->pool.drift, r->drift);
    return out;
}
