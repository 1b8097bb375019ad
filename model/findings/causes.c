/* causes.c -- which finding is why another is there: an effect, and what it comes of where both are found. */
#include "findings/finding_parts.h"

static const struct {
    boil_found_kind effect, cause;
} leads[] = {
    {BOIL_FOUND_OVERFLOW, BOIL_FOUND_LAYER},           {BOIL_FOUND_OVERFLOW, BOIL_FOUND_SALT_SLUG},
    {BOIL_FOUND_OVERFLOW, BOIL_FOUND_DRY_SALT},        {BOIL_FOUND_OVERFLOW, BOIL_FOUND_RESTART},
    {BOIL_FOUND_OVERFLOW, BOIL_FOUND_SUPERHEAT},       {BOIL_FOUND_OVERFLOW, BOIL_FOUND_TALL},
    {BOIL_FOUND_FREEBOARD, BOIL_FOUND_LAYER},          {BOIL_FOUND_FREEBOARD, BOIL_FOUND_SALT_SLUG},
    {BOIL_FOUND_FREEBOARD, BOIL_FOUND_TALL},           {BOIL_FOUND_SURGE, BOIL_FOUND_LAYER},
    {BOIL_FOUND_SURGE, BOIL_FOUND_SALT_SLUG},          {BOIL_FOUND_LAYER, BOIL_FOUND_WATER_QUIET},
    {BOIL_FOUND_LAYER, BOIL_FOUND_VALVE_QUIET},        {BOIL_FOUND_LAYER_OUTLASTS, BOIL_FOUND_WATER_QUIET},
    {BOIL_FOUND_LOAD_THROUGH, BOIL_FOUND_WATER_QUIET}, {BOIL_FOUND_BOIL_LOST, BOIL_FOUND_LOAD_HEAVY},
    {BOIL_FOUND_NEVER_RETURNS, BOIL_FOUND_LOAD_HEAVY}, {BOIL_FOUND_LEFT_RANGE, BOIL_FOUND_NEARLY_DRY},
    {BOIL_FOUND_NEARLY_DRY, BOIL_FOUND_WATER_SHORT},   {BOIL_FOUND_TOO_HOT, BOIL_FOUND_WATER_SHORT},
    {BOIL_FOUND_FLOOR_HOT, BOIL_FOUND_SALT_BED},       {BOIL_FOUND_FLOOR_HOT, BOIL_FOUND_RESTART},
    {BOIL_FOUND_RESTART, BOIL_FOUND_CRYSTALS},         {BOIL_FOUND_CRUST, BOIL_FOUND_CRYSTALS},
    {BOIL_FOUND_LOAD_QUIET, BOIL_FOUND_NEVER_BOILS},
};

static const char *found_id(const boil_findings *f, boil_found_kind kind)
{
    for (size_t i = 0; f != NULL && i < f->count; i++)
        if (f->list[i].kind == kind)
            return f->list[i].id;
    return NULL;
}

static void fill(boil_findings *of, const boil_findings *found, const boil_findings *possible)
{
    for (size_t i = 0; of != NULL && i < of->count; i++)
        for (size_t k = 0; k < sizeof leads / sizeof leads[0] && of->list[i].because == NULL; k++)
            if (leads[k].effect == of->list[i].kind && !of->list[i].own_cause) {
                const char *likely = found_id(found, leads[k].cause);
                of->list[i].because = likely != NULL ? likely : found_id(possible, leads[k].cause);
            }
}

void boil_finding_causes(boil_findings *found, boil_findings *possible)
{
    fill(found, found, possible);
    fill(possible, found, possible);
}
