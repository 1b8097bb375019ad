#include "transfer/dissolution.h"

#include <math.h>

#include "base/constants.h"
#include "transfer/skin.h"

#define GRAIN_DENSITY 2150.0    /* kg/m3, of the three salts within 4 % */
#define BED_VOID 0.4            /* loose packing, 0.35 to 0.5 */
#define SUSPENDING_STIRRING 0.1 /* W/kg that keeps half the grains up, judgement, 0.03 to 0.3 */
#define BED_CONDUCTIVITY 0.8    /* W/mK, salt crust, 0.6 to 1.0, judgement */
#define HOTTEST_BED_K 300.0     /* over the bath: by then the heat finds other ways round a crust, judgement, 150 to 400 */
#define CRUST_STRENGTH_PA 2e6   /* of bending, 0.5e6 to 5e6, judgement */
#define CRUST_SHARE 0.5         /* of what the bath holds beyond saturation, judgement, 0.2 to 0.8 */
#define CRUST_GROWS_S 600.0     /* judgement, 100 to 2000: far sooner than a bath cools */
#define CRUST_BREAKS_S 10.0     /* judgement */
#define FASTEST_S 1.0           /* keep every unknown slower than this: a faster one would cap every step */

static double fourth(double x)
{
    return x * x * x * x;
}

double boil_dissolution_diffusivity(double temperature_K, double viscosity_Pa_s)
{
    const double known_K = 413.15, known_Pa_s = 1.63e-3;
    double thinner = cbrt(known_Pa_s / viscosity_Pa_s);
    return BOIL_SKIN_DIFFUSIVITY * temperature_K / known_K * thinner * thinner;
}

static double kinematic(const boil_dissolution_place *p)
{
    return p->viscosity_Pa_s / p->liquid_kg_m3;
}

static double schmidt(const boil_dissolution_place *p)
{
    return kinematic(p) / boil_dissolution_diffusivity(p->temperature_K, p->viscosity_Pa_s);
}

/* Linear in the stirring, and so without a kink where it begins. */
static double stirred_fourth_power(const boil_dissolution_place *p)
{
    if (p->stirring_W_kg == 0)
        return 0;
    double root = cbrt(schmidt(p));
    return fourth(0.13 / (root * root)) * p->stirring_W_kg * kinematic(p);
}

/* Another coefficient, and stirring besides. */
static double stirred_besides(const boil_dissolution_place *p, double k)
{
    double stirred = stirred_fourth_power(p);
    return stirred > 0 ? sqrt(sqrt(fourth(k) + stirred)) : k;
}

double boil_dissolution_stirred(const boil_dissolution_place *p)
{
    return sqrt(sqrt(stirred_fourth_power(p)));
}

double boil_dissolution_fall(const boil_dissolution_place *p)
{
    double nu = kinematic(p), d = p->grain_m;
    double Rg = BOIL_GRAVITY * fmax(0, GRAIN_DENSITY - p->liquid_kg_m3) / p->liquid_kg_m3;
    return Rg * d * d / (18 * nu + sqrt(0.75 * Rg * d * d * d));
}

double boil_dissolution_falling(const boil_dissolution_place *p)
{
    double reynolds = boil_dissolution_fall(p) * p->grain_m / kinematic(p);
    double sherwood = 2 + 0.6 * sqrt(reynolds) * cbrt(schmidt(p));
    return sherwood * boil_dissolution_diffusivity(p->temperature_K, p->viscosity_Pa_s) / p->grain_m;
}

double boil_dissolution_lying(const boil_dissolution_place *p)
{
    double film = sqrt(p->viscosity_Pa_s * p->brine_viscosity_Pa_s), L = sqrt(p->area_m2) / 4;
    double D = boil_dissolution_diffusivity(p->temperature_K, film);
    double heavier = fmax(0, p->brine_kg_m3 - p->liquid_kg_m3);
    return 0.27 * sqrt(sqrt(BOIL_GRAVITY * heavier * L * L * L / (film * D))) * D / L;
}

double boil_dissolution_kept_up(const boil_dissolution_place *p)
{
    double eps = p->stirring_W_kg;
    return eps * eps / (eps * eps + SUSPENDING_STIRRING * SUSPENDING_STIRRING);
}

double boil_dissolution_time(const boil_dissolution_place *p)
{
    double k = stirred_besides(p, boil_dissolution_falling(p));
    return fmax(FASTEST_S, GRAIN_DENSITY * p->grain_m / (6 * k * p->strength_difference_kg_m3));
}

/* How fast a cloud of grains falls as one, m/s, besides what each does. */
static double cloud_fall(const boil_dissolution_place *p, double suspended_kg)
{
    double excess_m = suspended_kg * fmax(0, 1 - p->liquid_kg_m3 / GRAIN_DENSITY) / (p->area_m2 * p->liquid_kg_m3);
    return sqrt(BOIL_GRAVITY * fmax(0, excess_m)); /* g' h, h the depth it is spread over */
}

static double falls_within(const boil_dissolution_place *p, double speed_m_s)
{
    return fmax(FASTEST_S, p->depth_m / fmax(speed_m_s, 1e-6));
}

static double bed_thickness(const boil_dissolution_place *p, double bed_kg)
{
    return bed_kg / (GRAIN_DENSITY * (1 - BED_VOID) * p->area_m2);
}

double boil_dissolution_crust_mass(double thickness_m, double area_m2)
{
    return thickness_m * GRAIN_DENSITY * (1 - BED_VOID) * area_m2;
}

boil_dissolution_flow boil_dissolution_exchange(const boil_dissolution_place *p, double suspended_kg, double bed_kg)
{
    double kept_up = boil_dissolution_kept_up(p), each_m_s = boil_dissolution_fall(p);
    double falls_s = falls_within(p, each_m_s + cloud_fall(p, suspended_kg));
    double thickness = bed_thickness(p, bed_kg), covered = -expm1(-thickness / p->grain_m);
    double lying = covered > 0 ? stirred_besides(p, boil_dissolution_lying(p)) : 0;
    return (boil_dissolution_flow){
        .from_suspension_kg_s = suspended_kg > 0 ? suspended_kg / boil_dissolution_time(p) : 0,
        .from_bed_kg_s = lying * p->strength_difference_kg_m3 * p->area_m2 * covered,
        .settling_kg_s = suspended_kg * (1 - kept_up) / falls_s,
        .stirred_up_kg_s = bed_kg * kept_up / falls_within(p, each_m_s),
        .bed_m = thickness,
    };
}

/* k of (8), m/s. */
static double hanging(const boil_dissolution_place *p)
{
    double film = sqrt(p->viscosity_Pa_s * p->brine_viscosity_Pa_s), D = boil_dissolution_diffusivity(p->temperature_K, film);
    double heavier = fmax(0, p->brine_kg_m3 - p->liquid_kg_m3);
    return 0.14 * cbrt(BOIL_GRAVITY * heavier * D * D / film);
}

boil_dissolution_crust boil_dissolution_crust_of(const boil_dissolution_place *p, double crust_kg, double excess_kg,
                                                 double undissolved_kg)
{
    double s = bed_thickness(p, crust_kg), cover = -expm1(-s / p->grain_m), kept_up = boil_dissolution_kept_up(p);
    double dissolves = p->strength_difference_kg_m3 * p->area_m2 * cover;
    double missing = CRUST_SHARE * (excess_kg + undissolved_kg) - undissolved_kg;
    return (boil_dissolution_crust){
        .thickness_m = s,
        .cover = cover,
        .growing_kg_s = excess_kg > 0 ? fmax(0, missing) * (1 - kept_up) / CRUST_GROWS_S : 0,
        .dissolving_kg_s = dissolves > 0 ? stirred_besides(p, hanging(p)) * dissolves : 0,
        .broken_kg_s = crust_kg * kept_up / CRUST_BREAKS_S,
        .holds_Pa = s * (GRAIN_DENSITY * (1 - BED_VOID) * BOIL_GRAVITY + 3.25 * CRUST_STRENGTH_PA * s / p->area_m2),
    };
}

double boil_dissolution_bed_superheat(double bed_m, double flux_W_m2)
{
    return fmin(HOTTEST_BED_K, flux_W_m2 * bed_m / BED_CONDUCTIVITY);
}

double boil_dissolution_dry(double undissolved_kg, double liquid_m3)
{
    const double uneven = 0.2;
    double pores_m3 = undissolved_kg / (GRAIN_DENSITY * (1 - BED_VOID)) * BED_VOID;
    double x = fmax(0, fmin(1, ((1 + uneven) * pores_m3 - liquid_m3) / (2 * uneven * pores_m3)));
    return pores_m3 > 0 ? x * x * (3 - 2 * x) : 0;
}
