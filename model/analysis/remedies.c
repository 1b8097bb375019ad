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

/* What nothing tried would do stays unknown. */
static boil_outcome known(boil_outcome found, double *amount)
{
    if (found != BOIL_OK)
        *amount = (double)NAN;
    return found == BOIL_NO_MEMORY ? found : BOIL_OK;
}

/* The first addition of liquid that stops the boil for too long; h->additions_count: none. */
static size_t that_stops(const boil_schedule *s, const boil_history *h, double limit_s)
{
    size_t i = 0;
    while (i < h->additions_count &&
           !(is_liquid_of(s, &h->additions[i]) && boil_finding_stopped_for(h, &h->additions[i]) > limit_s))
        i++;
    return i;
}

boil_outcome boil_remedies_of(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, const boil_history *h,
                              boil_remedies *out)
{
    if (out != NULL)
        *out = boil_remedies_unknown();
    if (out == NULL || h == NULL || !boil_check_case(p, s, o))
        return BOIL_BAD_INPUT;
    boil_outcome result = BOIL_OK;
    double limit_s = p->limits.recovery_s;
    size_t stops = that_stops(s, h, limit_s);
    if (boil_finding_quiet_end(h) != NULL)
        result = known(boil_heater_size_to_boil(p, s, o, &out->heat_W), &out->heat_W);
    if (result == BOIL_OK && stops < h->additions_count)
        result = known(boil_heater_size_largest_liquid(p, s, o, h->additions[stops].action, limit_s, &out->liquid_kg),
                       &out->liquid_kg);
    return result;
}
