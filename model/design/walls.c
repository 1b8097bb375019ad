#include "design/walls.h"

#include <math.h>
#include <stdbool.h>

#include "base/constants.h"
#include "design/published_units.h"

#define PANEL_SHARE (1.0 / 200)

/* Straight lines between the rows; below the first the first. Beyond the last nothing is known. */
static double between(const double *x, const double *y, int count, double at)
{
    int i = 1;
    if (!(at > x[0]))
        return y[0];
    while (i < count && at > x[i])
        i++;
    return i == count ? (double)NAN : y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
}

enum { WALLS = 9, PANELS = 10 };
static const double tallness[WALLS] = {0.25, 0.286, 0.333, 0.4, 0.5, 0.667, 1.0, 1.5, 2.0};
static const double wall_beta[WALLS] = {.024, .031, .041, .056, .080, .116, .16, .26, .34};
static const double wall_alpha[WALLS] = {.00027, .00046, .00083, .0016, .0035, .0083, .022, .043, .060};
/* The last stands for endless. */
static const double longness[PANELS] = {1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 3.0, 4.0, 5.0, 6.0};
static const double panel_beta[PANELS] = {.2874, .3762, .4530, .5172, .5688, .6102, .7134, .7410, .7476, .7500};
static const double panel_alpha[PANELS] = {.0444, .0616, .0770, .0906, .1017, .1110, .1335, .1400, .1417, .1421};

/* Its side is L of a wall and b of a floor, its pressure that of the whole depth. */
typedef struct {
    double beta, alpha, pressure_Pa, side_m;
} plate;

static plate wall_of(double side_m, double depth_m, double density_kg_m3)
{
    double tall = depth_m / side_m;
    return (plate){between(tallness, wall_beta, WALLS, tall), between(tallness, wall_alpha, WALLS, tall),
                   density_kg_m3 * BOIL_GRAVITY * depth_m, side_m};
}

static plate floor_of(double long_m, double short_m, double pressure_Pa)
{
    double ratio = fmin(long_m / short_m, longness[PANELS - 1]);
    return (plate){between(longness, panel_beta, PANELS, ratio), between(longness, panel_alpha, PANELS, ratio), pressure_Pa,
                   short_m};
}

static boil_plate_strain strain(const plate *p, double thickness_m)
{
    boil_plate_strain s;
    s.stress_Pa = p->beta * p->pressure_Pa * pow(p->side_m / thickness_m, 2);
    s.bulge_m = p->alpha * p->pressure_Pa * pow(p->side_m, 4) / (BOIL_STEEL_MODULUS * pow(thickness_m, 3));
    return s;
}

boil_plate_strain boil_wall_strain(double side_m, double depth_m, double density_kg_m3, double thickness_m)
{
    plate p = wall_of(side_m, depth_m, density_kg_m3);
    return strain(&p, thickness_m);
}

boil_plate_strain boil_floor_strain(double long_m, double short_m, double pressure_Pa, double thickness_m)
{
    plate p = floor_of(long_m, short_m, pressure_Pa);
    return strain(&p, thickness_m);
}

static bool bears(boil_plate_strain s, double stress_Pa, double bulge_m)
{
    return s.stress_Pa <= stress_Pa && s.bulge_m <= bulge_m;
}

static double order(const plate *p, double stress_Pa, double bulge_m, double corrosion_m)
{
    const int sixteenths = 32;
    for (int i = 1; i <= sixteenths; i++) {
        double thickness_m = i * BOIL_INCH / 16, worn_m = thickness_m - corrosion_m;
        if (worn_m > 0 && bears(strain(p, worn_m), stress_Pa, bulge_m))
            return thickness_m;
    }
    return (double)NAN;
}

double boil_wall_order(double side_m, double depth_m, double density_kg_m3, double stress_Pa, double corrosion_m)
{
    plate p = wall_of(side_m, depth_m, density_kg_m3);
    return order(&p, stress_Pa, side_m * BOIL_WALL_BULGE_MOST, corrosion_m);
}

double boil_floor_order(double long_m, double short_m, double pressure_Pa, double stress_Pa, double corrosion_m)
{
    plate p = floor_of(long_m, short_m, pressure_Pa);
    return order(&p, stress_Pa, short_m * PANEL_SHARE, corrosion_m);
}

double boil_rim_load(double depth_m, double density_kg_m3)
{
    return density_kg_m3 * BOIL_GRAVITY * depth_m * depth_m / 6;
}

double boil_rim_inertia(double side_m, double load_N_m)
{
    return 5 * load_N_m * pow(side_m, 4) / (384 * BOIL_STEEL_MODULUS * side_m * BOIL_WALL_BULGE_MOST);
}
