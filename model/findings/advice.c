/* advice.c -- which finding's advice another forbids: water on a bath that is nearly dry, more heat under salt on the floor, a low fire
   under what would go over the rim. Then the one says what the other allows, and no amount beside it. */
#include <math.h>
#include <stddef.h>

#include "findings/finding_parts.h"

static const char no_water[] = "Heat off. No water on it: let it cool, then make it up by plan.";
static const char no_heat[] = "No more heat while salt lies on the floor or hangs over it.";
static const char no_fire[] = "Heat off, stand back; let it cool, then bail it off the surface.";

/* Where one stands in two rows, the first that is found counts. */
static const struct {
    boil_found_kind gives_way, to;
    const char *says;
} forbids[] = {
    {BOIL_FOUND_TOO_HOT, BOIL_FOUND_NEARLY_DRY, no_water},     {BOIL_FOUND_WATER_SHORT, BOIL_FOUND_NEARLY_DRY, no_water},
    {BOIL_FOUND_VALVE_SHORT, BOIL_FOUND_NEARLY_DRY, no_water}, {BOIL_FOUND_HEATER_BARE, BOIL_FOUND_NEARLY_DRY, no_water},
    {BOIL_FOUND_FLOOR_BARE, BOIL_FOUND_NEARLY_DRY, no_water},  {BOIL_FOUND_PARTS_BARE, BOIL_FOUND_NEARLY_DRY, no_water},
    {BOIL_FOUND_SALT_MUCH, BOIL_FOUND_NEARLY_DRY, no_water},   {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_FLOOR_HOT, no_heat},
    {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_SALT_BED, no_heat},    {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_RESTART, no_heat},
    {BOIL_FOUND_NEVER_BOILS, BOIL_FOUND_CRUST, no_heat},       {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_FLOOR_HOT, no_heat},
    {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_SALT_BED, no_heat},  {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_RESTART, no_heat},
    {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_CRUST, no_heat},     {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_FLOOR_HOT, no_heat},
    {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_SALT_BED, no_heat},      {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_RESTART, no_heat},
    {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_CRUST, no_heat},         {BOIL_FOUND_LAYER, BOIL_FOUND_OVERFLOW, no_fire},
};

/* Water that floats on a cold bath comes off before the heat, whatever else is found. */
static bool stands(const boil_finding *f)
{
    return f->kind == BOIL_FOUND_LAYER && f->own_cause;
}

static bool is_found(const boil_findings *f, boil_found_kind kind)
{
    for (size_t i = 0; f != NULL && i < f->count; i++)
        if (f->list[i].kind == kind)
            return true;
    return false;
}

static void give_way(boil_finding *f, const char *says)
{
    f->advice = says;
    if (f->limit == f->needed_W)
        f->limit = (double)NAN;
    f->needed_W = f->needed_kg = (double)NAN;
}

static void settle(boil_findings *of, const boil_findings *found, const boil_findings *possible)
{
    for (size_t i = 0; of != NULL && i < of->count; i++)
        for (size_t k = 0; k < sizeof forbids / sizeof forbids[0]; k++)
            if (of->list[i].kind == forbids[k].gives_way && !stands(&of->list[i]) &&
                (is_found(found, forbids[k].to) || is_found(possible, forbids[k].to))) {
                give_way(&of->list[i], forbids[k].says);
                break;
            }
}

void boil_finding_advice(boil_findings *found, boil_findings *possible)
{
    settle(found, found, possible);
    settle(possible, found, possible);
}
