#include "case/load.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"

/* A basket is sheet or wire of this thickness: common practice, no source; 2 to 5 mm. */
#define BASKET_THICKNESS_M 0.003

/* No unknown faster than this, s: an explicit step of 2 to 3 s stays stable, and heat that arrives a second late cannot
   be seen in a boil that takes minutes to return. Judgement, 0.5 to 2. With 0.9 the mean temperature of steel parts,
   but for those thin enough to be limited, stays within 1 % of the rise at 3000 W/m2K (1.9 % at 5000); with 1.0 that of
   a 46 mm ball, about the largest with one unknown, is off by 1.04 %. */
#define FASTEST_S 0.9

boil_load boil_load_default(void)
{
    return (boil_load){
        .metal = boil_carbon_steel(),
        .shape = BOIL_SHAPE_PLATE,
        .packed_conductivity_W_mK = 7,
        .packed_void = 0.5,
        .temperature_K = BOIL_ZERO_CELSIUS + 20,
        .immersed_s = HUGE_VAL,
        .lowering_s = 10,
        .rinse_kg_m2 = BOIL_RINSE_FLAT_KG_M2,
        .drag_out_kg_m2 = -1,
        .part_height_m = 0.1,
    };
}

static int within(double x, double low, double high)
{
    return x >= low && x <= high;
}

static const char *parts_problem(const boil_load *l)
{
    if (!within(l->mass_kg, 0.001, 1e5))
        return "mass of the parts must be 0.001 to 1e5 kg";
    if (!within(l->metal.density_kg_m3, 1000, 25000))
        return "density of the metal must be 1000 to 25000 kg/m3";
    if (!(l->shape == BOIL_SHAPE_PLATE || l->shape == BOIL_SHAPE_BAR || l->shape == BOIL_SHAPE_BALL ||
          l->shape == BOIL_SHAPE_TUBE))
        return "shape must be plate, bar, ball or tube";
    if (!within(l->size_m, 1e-4, 1))
        return "thickness or diameter of the parts must be 1e-4 to 1 m";
    if (l->shape == BOIL_SHAPE_TUBE && !(l->tube_wall_m >= 1e-4 && l->tube_wall_m < l->size_m / 2))
        return "wall of the tube must be 1e-4 m to less than half its diameter";
    if (!(l->area_m2 == 0 || (l->area_m2 > 0 && l->area_m2 <= 1e5)))
        return "area of the parts must be above 0 to 1e5 m2, or 0 to follow from their shape";
    if (!within(l->part_height_m, 0.02, 1))
        return "height of a part must be 0.02 to 1 m";
    if (!(l->pieces == 0 || within(l->pieces, 1, 1e6)))
        return "pieces must be 1 to 1e6, or 0 where nobody counted";
    return NULL;
}

static const char *pack_problem(const boil_load *l)
{
    if (!(l->packed_depth_m == 0 || within(l->packed_depth_m, 0.01, 2)))
        return "depth of the packed basket must be 0.01 to 2 m, or 0 for parts that hang apart";
    if (!within(l->packed_conductivity_W_mK, 3, 15))
        return "conductivity of the packed basket must be 3 to 15 W/mK";
    if (!within(l->packed_void, 0.3, 0.7))
        return "void of the packed basket must be 0.3 to 0.7";
    if (!within(l->basket_kg, 0, 1e5))
        return "mass of the basket must be 0 to 1e5 kg";
    return NULL;
}

static const char *bath_problem(const boil_load *l)
{
    if (!within(l->temperature_K, 233.15, 473.15))
        return "temperature of the parts must be 233.15 to 473.15 K";
    if (!(l->immersed_s > 0))
        return "time in the bath must be above 0 s";
    if (l->at_boil && !isfinite(l->immersed_s))
        return "time at the boil must not be infinite";
    if (!within(l->latest_s, 0, l->at_boil ? BOIL_LONGEST_RUN_S : 0))
        return "latest moment of lifting must be 0 to 366 days, and 0 where no time counts at the boil";
    if (!within(l->lowering_s, 1, 600))
        return "time of lowering must be 1 to 600 s";
    if (!(l->coefficient_W_m2K == 0 || within(l->coefficient_W_m2K, 10, 1e5)))
        return "coefficient on the bath side must be 10 to 1e5 W/m2K, or 0 to follow the stirring";
    if (!(l->drag_out_kg_m2 <= 1))
        return "drag-out must be at most 1 kg/m2";
    if (!within(l->rinse_kg_m2, 0, 1))
        return "water carried in must be 0 to 1 kg/m2";
    if (!(l->water_K == 0 || within(l->water_K, 273.15, 373.15)))
        return "temperature of the water carried in must be 273.15 to 373.15 K, or 0 for that of the parts";
    if (!within(l->trapped_kg, 0, 1000))
        return "water trapped in hollows must be 0 to 1000 kg";
    if (l->trapped_kg > 0 && !within(l->hollow_m3, 1e-8, 1))
        return "water in each hollow must be 1e-8 to 1 m3";
    return NULL;
}

const char *boil_load_problem(const boil_load *l)
{
    if (l == NULL)
        return "there is no load";
    const char *problem = parts_problem(l);
    if (!problem)
        problem = pack_problem(l);
    if (!problem)
        problem = bath_problem(l);
    return problem;
}

static int packed(const boil_load *l)
{
    return l->packed_depth_m > 0;
}

static int shape_dimension(boil_shape s)
{
    return s == BOIL_SHAPE_BALL ? 3 : s == BOIL_SHAPE_BAR ? 2 : 1;
}

/* Half-thickness or radius, m. */
static double shape_radius(const boil_load *l)
{
    return (l->shape == BOIL_SHAPE_TUBE ? l->tube_wall_m : l->size_m) / 2;
}

/* Surface of a mass of slabs (both faces), cylinders or spheres, m2: d m/(rho r). For a tube both walls together are
   twice the area at its mean diameter, exactly the slab's. */
static double surface(int dimension, double mass_kg, double density_kg_m3, double radius_m)
{
    return dimension * mass_kg / (density_kg_m3 * radius_m);
}

static double own_surface(const boil_load *l)
{
    return surface(shape_dimension(l->shape), l->mass_kg, l->metal.density_kg_m3, shape_radius(l));
}

static double pack_density(const boil_load *l)
{
    return l->metal.density_kg_m3 * (1 - l->packed_void);
}

double boil_load_area(const boil_load *l)
{
    if (l->area_m2 > 0)
        return l->area_m2;
    return packed(l) ? surface(1, l->mass_kg, pack_density(l), l->packed_depth_m / 2) : own_surface(l);
}

double boil_load_displaced(const boil_load *l)
{
    return l->mass_kg / l->metal.density_kg_m3 + l->basket_kg / boil_carbon_steel().density_kg_m3;
}

double boil_load_wetted(const boil_load *l)
{
    if (l == NULL)
        return (double)NAN;
    return packed(l) ? own_surface(l) : boil_load_area(l);
}

double boil_load_rinse(const boil_load *l)
{
    return l->rinse_kg_m2 * boil_load_wetted(l);
}

boil_conduction_body boil_load_parts(const boil_load *l)
{
    boil_conduction_body b = {
        .dimension = packed(l) ? 1 : shape_dimension(l->shape),
        .radius_m = packed(l) ? l->packed_depth_m / 2 : shape_radius(l),
        .area_m2 = boil_load_area(l),
        .mass_kg = l->mass_kg,
        .density_kg_m3 = packed(l) ? pack_density(l) : l->metal.density_kg_m3,
        .conductivity_W_mK = packed(l) ? l->packed_conductivity_W_mK : 0,
        .fastest_s = FASTEST_S,
        .height_m = l->part_height_m,
        .metal = l->metal,
    };
    b.unknowns = boil_conduction_unknowns(&b, l->temperature_K);
    return b;
}

boil_conduction_body boil_load_basket(const boil_load *l)
{
    const boil_metal steel = boil_carbon_steel();
    boil_conduction_body b = {
        .dimension = 1,
        .radius_m = BASKET_THICKNESS_M / 2,
        .area_m2 = surface(1, l->basket_kg, steel.density_kg_m3, BASKET_THICKNESS_M / 2),
        .mass_kg = l->basket_kg,
        .density_kg_m3 = steel.density_kg_m3,
        .fastest_s = FASTEST_S,
        .height_m = l->part_height_m,
        .metal = steel,
    };
    b.unknowns = boil_conduction_unknowns(&b, l->temperature_K);
    return b;
}

double boil_drag_film(double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m, double speed_m_s,
                      double height_m, double drained_s)
{
    double weight = density_kg_m3 * BOIL_GRAVITY, capillary = viscosity_Pa_s * speed_m_s / surface_tension_N_m;
    double drawn = 0.944 * pow(capillary, 1.0 / 6) * sqrt(viscosity_Pa_s * speed_m_s / weight);
    double drained = 2.0 / 3 * sqrt(viscosity_Pa_s * height_m / (weight * drained_s));
    return fmin(drawn, drained);
}

double boil_drag_out(const boil_load *l, double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m)
{
    double wetted = boil_load_wetted(l);
    if (l->drag_out_kg_m2 >= 0)
        return l->drag_out_kg_m2 * wetted;
    if (l->packed_depth_m > 0)
        return BOIL_DRAG_PACKED_M * density_kg_m3 * wetted;
    double speed = l->part_height_m / l->lowering_s, drips = l->lowering_s / 2 + BOIL_DRAG_DRIP_S;
    double film = boil_drag_film(viscosity_Pa_s, density_kg_m3, surface_tension_N_m, speed, l->part_height_m, drips);
    return BOIL_DRAG_HOT * film * density_kg_m3 * wetted;
}
