#include "plan/parts.h"

#include <math.h>
#include <stdlib.h>

#include "base/constants.h"
#include "case/load.h"
#include "plan/case.h"
#include "properties/metal.h"
#include "properties/water.h"

boil_load boil_plan_part_load(const boil_plan_job *j, size_t number, size_t of)
{
    boil_load l = j->load;
    double share = 1.0 / (double)of;
    if (l.pieces > 0) {
        double least = floor(l.pieces / (double)of), over = l.pieces - least * (double)of, whole = l.pieces;
        l.pieces = least + ((double)number < over ? 1 : 0);
        share = l.pieces / whole;
    }
    l.mass_kg *= share;
    l.area_m2 *= share;
    l.trapped_kg *= share;
    return l;
}

/* The water on it, and in its hollows, comes up to the bath's temperature or boils there: taken as warmed. */
static double heat_of(const boil_load *l, double bath_K)
{
    double steel = boil_metal_enthalpy(&l->metal, bath_K) - boil_metal_enthalpy(&l->metal, l->temperature_K);
    double water_K = fmax(l->temperature_K, BOIL_ZERO_CELSIUS), water_kg = boil_load_rinse(l) + l->trapped_kg;
    double water = boil_water_enthalpy(bath_K) - boil_water_enthalpy(fmin(water_K, bath_K));
    return (l->mass_kg + l->basket_kg) * steel + water_kg * water;
}

/* Volume over the area that is heated. */
static double depth_of(const boil_load *l)
{
    if (l->packed_depth_m > 0)
        return l->packed_depth_m / 2;
    switch (l->shape) {
    case BOIL_SHAPE_PLATE:
        return l->size_m / 2;
    case BOIL_SHAPE_BAR:
        return l->size_m / 4;
    case BOIL_SHAPE_BALL:
        return l->size_m / 6;
    default:
        return l->tube_wall_m / 2;
    }
}

void boil_plan_part_estimate(boil_plan_part *p, double bath_K)
{
    const double lag_s_m = 4000, constants = 3;
    p->heat_J = heat_of(&p->load, bath_K);
    p->lag_s = fmax(1, lag_s_m * depth_of(&p->load));
    p->hot_s = constants * p->lag_s;
}

static boil_plan_part part_of(const boil_plan_job *jobs, size_t job, size_t number, size_t of, double bath_K)
{
    boil_plan_part p = {.job = job, .number = number, .of = of, .load = boil_plan_part_load(&jobs[job], number, of)};
    boil_plan_part_estimate(&p, bath_K);
    return p;
}

static bool is_light(const boil_plan_part *p, const boil_plan_bath *b)
{
    return boil_plan_part_mass(p) <= b->most_kg && p->heat_J <= boil_plan_most_heat(b);
}

/* The first part is the heaviest, and of counted pieces never less than one. */
size_t boil_plan_parts_needed(const boil_plan_job *j, const boil_plan_bath *b, double bath_K)
{
    for (size_t n = 1; n <= (j->may_split ? BOIL_PLAN_PARTS_MAX : 1); n++) {
        boil_plan_part p = part_of(j, 0, 0, n, bath_K);
        if (is_light(&p, b))
            return n;
    }
    return 0;
}

boil_outcome boil_plan_parts_of(const boil_plan_problem *p, const boil_plan_bath *b, double bath_K, boil_plan_parts *out)
{
    *out = (boil_plan_parts){malloc(BOIL_PLAN_PARTS_MAX * sizeof *out->list), 0};
    if (out->list == NULL)
        return BOIL_NO_MEMORY;
    for (size_t j = 0; j < p->jobs_count; j++) {
        size_t needed = boil_plan_parts_needed(&p->jobs[j], b, bath_K), of = needed > 0 ? needed : 1;
        if (out->count + of > BOIL_PLAN_PARTS_MAX) {
            boil_plan_parts_free(out);
            return BOIL_BAD_INPUT;
        }
        for (size_t i = 0; i < of; i++)
            out->list[out->count++] = part_of(p->jobs, j, i, of, bath_K);
    }
    return BOIL_OK;
}

void boil_plan_parts_free(boil_plan_parts *p)
{
    free(p->list);
    *p = (boil_plan_parts){.list = NULL};
}
