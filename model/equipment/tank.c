#include "equipment/tank.h"

#include <math.h>
#include <stddef.h>

#include "base/constants.h"
#include "properties/metal.h"

boil_tank boil_tank_default(void)
{
    return (boil_tank){
        .shape = BOIL_TANK_BOX, .wall_thickness_m = 0.006, .insulation_m = 0.05, .heated = BOIL_TANK_HEATED_FROM_BELOW};
}

static const char *plan_problem(const boil_tank *t)
{
    if (t->shape == BOIL_TANK_UPRIGHT_CYLINDER) {
        if (!(t->diameter_m >= 0.1 && t->diameter_m <= 20))
            return "diameter of the tank must be between 0.1 m and 20 m";
        return NULL;
    }
    if (!(t->length_m >= 0.1 && t->length_m <= 20))
        return "length of the tank must be between 0.1 m and 20 m";
    if (!(t->width_m >= 0.1 && t->width_m <= 20))
        return "width of the tank must be between 0.1 m and 20 m";
    return NULL;
}

static const char *height_problem(const boil_tank *t)
{
    if (!(t->depth_m >= 0.1 && t->depth_m <= 5))
        return "depth of the tank must be between 0.1 m and 5 m";
    if (!(t->level_m >= 0.02 && t->level_m < t->depth_m))
        return "level must be between 0.02 m and the rim (the depth of the tank)";
    if (!(t->mark_m >= 0 && t->mark_m < t->depth_m))
        return "the mark must be between 0 m and the rim (the depth of the tank)";
    if (!(t->heater_top_m >= 0 && t->heater_top_m < t->depth_m))
        return "top of the heater must be between 0 m and the rim (the depth of the tank)";
    if (!(t->positions >= 0 && t->positions <= BOIL_POSITIONS_MAX && t->positions == floor(t->positions)))
        return "places for loads must be a whole number from 0 to 40";
    if (!(t->parts_top_m >= 0 && t->parts_top_m < t->depth_m))
        return "top of the parts must be between 0 m and the rim (the depth of the tank)";
    return NULL;
}

const char *boil_tank_problem(const boil_tank *t)
{
    if (t == NULL)
        return "there is no tank";
    const char *problem = plan_problem(t);
    if (!problem)
        problem = height_problem(t);
    if (problem)
        return problem;
    if (!(t->wall_thickness_m >= 0 && t->wall_thickness_m <= 0.05))
        return "wall thickness must be between 0 m and 0.05 m";
    if (!(t->insulation_m >= 0 && t->insulation_m <= 0.5))
        return "insulation must be between 0 m and 0.5 m";
    return NULL;
}

double boil_tank_area(const boil_tank *t)
{
    if (t == NULL)
        return (double)NAN;
    if (t->shape == BOIL_TANK_UPRIGHT_CYLINDER)
        return BOIL_PI / 4 * t->diameter_m * t->diameter_m;
    return t->length_m * t->width_m;
}

double boil_tank_perimeter(const boil_tank *t)
{
    return t->shape == BOIL_TANK_UPRIGHT_CYLINDER ? BOIL_PI * t->diameter_m : 2 * (t->length_m + t->width_m);
}

double boil_tank_longest_side(const boil_tank *t)
{
    return t->shape == BOIL_TANK_UPRIGHT_CYLINDER ? t->diameter_m : fmax(t->length_m, t->width_m);
}

double boil_tank_equivalent_radius(const boil_tank *t)
{
    return sqrt(boil_tank_area(t) / BOIL_PI);
}

static double wetted_walls(const boil_tank *t)
{
    return boil_tank_perimeter(t) * t->level_m;
}

double boil_tank_wetted_steel(const boil_tank *t)
{
    return (boil_tank_area(t) + wetted_walls(t)) * t->wall_thickness_m * boil_carbon_steel().density_kg_m3;
}

double boil_tank_cooled_area(const boil_tank *t)
{
    return wetted_walls(t) + (t->heated == BOIL_TANK_HEATED_FROM_BELOW ? 0 : boil_tank_area(t));
}

double boil_tank_heater_top(const boil_tank *t)
{
    const double share_of_level = 0.4;
    if (t->heated == BOIL_TANK_HEATED_FROM_BELOW)
        return 0;
    return t->heater_top_m > 0 ? t->heater_top_m : share_of_level * t->level_m;
}

double boil_tank_parts_top(const boil_tank *t)
{
    const double cover_m = 0.1;
    return t->parts_top_m > 0 ? t->parts_top_m : fmax(t->level_m - cover_m, t->level_m / 2);
}
