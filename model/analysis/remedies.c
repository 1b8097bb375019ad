#include "analysis/remedies.h"

#include <math.h>

#include "findings/finding_parts.h"
#include "analysis/heater_size.h"
#include "case/checks.h"

boil_remedies boil_remedies_unknown(void)
{
    return (boil_remedies){(double)NAN, (double)NAN};
}

static bool is_addition(const boil_action *a)
{
    return a->kind == BOIL_ACTION_WATER || a->kind == BOIL_ACTION_SALTS || a->kind == BOIL_ACTION_LIQUID;
}

/* The action that made the history's addition of that number. */
static size_t action_of(const boil_schedule *s, size_t addition)
{
    size_t i = 0;
    for (size_t before = 0; i < s->count && (!is_addition(&s->actions[i]) || before++ < addition);)
        i++;
    return i;
}

boil_remedies boil_remedies_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, const boil_history *h)
{
    boil_remedies r = boil_remedies_unknown();
    if (h == NULL || !boil_check_case(p, s, o))
        return r;
    double limit = p->limits.recovery_s;
    size_t stops = 0;
    if (boil_finding_quiet_end(h) != NULL && boil_heater_size_to_boil(p, s, o, &r.heat_W) != BOIL_OK)
        r.heat_W = (double)NAN;
    while (stops < h->additions_count && !(boil_finding_stopped_for(h, &h->additions[stops]) > limit))
        stops++;
    if (stops < h->additions_count &&
        boil_heater_size_largest_liquid(p, s, o, action_of(s, stops), limit, &r.liquid_kg) != BOIL_OK)
        r.liquid_kg = (double)NAN;
    return r;
}
