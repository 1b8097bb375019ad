#include "findings/held_back.h"

#include "case/schedule.h"

/* The least that a load may weigh, carrying nothing. */
static void lighten(boil_load *l)
{
    l->mass_kg = 1e-3;
    l->basket_kg = l->rinse_kg_m2 = l->trapped_kg = l->area_m2 = l->packed_depth_m = 0;
}

static void lighten_those_of(const boil_history *h, double freeboard_m, boil_schedule *s, bool *any)
{
    for (size_t i = 0; i < h->loads_count; i++)
        if (h->loads[i].left_m < freeboard_m && h->loads[i].action < s->count) {
            lighten(&s->actions[h->loads[i].action].is.load);
            *any = true;
        }
}

boil_outcome boil_held_back(const boil_run_set *set, const boil_schedule *s, double freeboard_m, boil_schedule *out, bool *any)
{
    *any = false;
    boil_outcome outcome = boil_schedule_copy(s, out);
    if (outcome == BOIL_OK) {
        lighten_those_of(&set->likely, freeboard_m, out, any);
        for (size_t i = 0; i < set->count; i++)
            lighten_those_of(&set->other[i].history, freeboard_m, out, any);
    }
    if (!*any)
        boil_schedule_free(out);
    return outcome;
}
