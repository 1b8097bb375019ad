#include "analysis/remedies.h"

#include <math.h>

#include "findings/finding_parts.h"
#include "analysis/heater_size.h"
#include "case/checks.h"

boil_remedies boil_remedies_unknown(void)
{
    return (boil_remedies){(double)NAN, (double)NAN};
}

/* What runs back in is as much as was taken: another amount of it means nothing. */
static bool is_liquid_of(const boil_schedule *s, const boil_addition_result *a)
{
    return s->actions[a->action].kind == BOIL_ACTION_LIQUID;
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
    while (stops < h->additions_count &&
           !(is_liquid_of(s, &h->additions[stops]) && boil_finding_stopped_for(h, &h->additions[stops]) > limit))
        stops++;
    if (stops < h->additions_count &&
        boil_heater_size_largest_liquid(p, s, o, h->additions[stops].action, limit, &r.liquid_kg) != BOIL_OK)
        r.liquid_kg = (double)NAN;
    return r;
}
