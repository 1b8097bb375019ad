#include "transfer/dissolution.h"

#include <math.h>

#include "base/constants.h"

#define GRAIN_DENSITY 2150.0      /* kg/m3, of the three salts within 4 % */
#define BED_VOID 0.4              /* loose packing, 0.35 to 0.5 */
#define DIFFUSIVITY 1.5e-9        /* m2/s, order of magnitude, judgement */
#define STRENGTH_DIFFERENCE 300.0 /* kg/m3 between grain surface and bath, judgement, 100 to 600 */
#define LEAST_STIRRING 1e-4       /* W/kg: natural convection and the fall of the grains themselves, judgement */
#define SUSPENDING_STIRRING 0.1   /* W/kg that keeps half the grains up, judgement, 0.03 to 0.3 */
#define BED_CONDUCTIVITY 0.8      /* W/mK, salt crust, 0.6 to 1.0, judgement */
#define HOTTEST_BED_K 300.0       /* over the bath: by then the heat finds other ways round a crust, judgement, 150 to 400 */
#define FASTEST_S 1.0             /* keep every unknown slower than this: a faster one would cap every step */

double boil_dissolution_transfer(const boil_dissolution_place *p)
{
    double nu = p->viscosity_Pa_s / p->liquid_kg_m3, eps = p->stirring_W_kg + LEAST_STIRRING;
    return 0.13 * pow(eps * nu, 0.25) * pow(nu / DIFFUSIVITY, -2.0 / 3);
}

double boil_dissolution_fall(const boil_dissolution_place *p)
{
    double nu = p->viscosity_Pa_s / p->liquid_kg_m3, d = p->grain_m;
    double Rg = BOIL_GRAVITY * fmax(0, GRAIN_DENSITY - p->liquid_kg_m3) / p->liquid_kg_m3;
    return Rg * d * d / (18 * nu + sqrt(0.75 * Rg * d * d * d));
}

double boil_dissolution_kept_up(const boil_dissolution_place *p)
{
    double eps = p->stirring_W_kg;
    return eps * eps / (eps * eps + SUSPENDING_STIRRING * SUSPENDING_STIRRING);
}

double boil_dissolution_time(const boil_dissolution_place *p)
{
    return fmax(FASTEST_S, GRAIN_DENSITY * p->grain_m / (6 * boil_dissolution_transfer(p) * STRENGTH_DIFFERENCE));
}

boil_dissolution_flow boil_dissolution_exchange(const boil_dissolution_place *p, double suspended_kg, double bed_kg)
{
    double kept_up = boil_dissolution_kept_up(p);
    double falls_s = fmax(FASTEST_S, p->depth_m / fmax(boil_dissolution_fall(p), 1e-6));
    double bed_per_m = GRAIN_DENSITY * (1 - BED_VOID) * p->area_m2;
    double thickness = bed_kg / bed_per_m, covered = -expm1(-thickness / p->grain_m);
    return (boil_dissolution_flow){
        .from_suspension_kg_s = suspended_kg / boil_dissolution_time(p),
        .from_bed_kg_s = boil_dissolution_transfer(p) * STRENGTH_DIFFERENCE * p->area_m2 * covered,
        .settling_kg_s = suspended_kg * (1 - kept_up) / falls_s,
        .stirred_up_kg_s = bed_kg * kept_up / falls_s,
        .bed_m = thickness,
    };
}

double boil_dissolution_bed_superheat(double bed_m, double flux_W_m2)
{
    return fmin(HOTTEST_BED_K, flux_W_m2 * bed_m / BED_CONDUCTIVITY);
}
