#include "actions/action.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void action_text_add(action_text *t, const char *format, ...)
{
    size_t used = strlen(t->text);
    va_list values;
    va_start(values, format);
    vsnprintf(t->text + used, sizeof t->text - used, format, values);
    va_end(values);
}

action_amount action_amount_of(action_units u, unit_dimension d, double si)
{
    action_amount t;
    if (u == ACTION_BOTH)
        snprintf(t.text, sizeof t.text, "%s (%s)", format_quantity(UNITS_US, d, si).text,
                 format_quantity(UNITS_SI, d, si).text);
    else
        snprintf(t.text, sizeof t.text, "%s", format_quantity(u == ACTION_US ? UNITS_US : UNITS_SI, d, si).text);
    return t;
}

void action_text_add_boil(action_text *t, double start_s, bool was_quiet, double lost_s, double recovery_s)
{
    if (isnan(lost_s)) {
        action_text_add(t, "The boil goes on");
        return;
    }
    if (was_quiet)
        action_text_add(t, "Quiet already");
    else
        action_text_add(t, "Boil stops at %s", format_clock(start_s, lost_s).text);
    if (isnan(recovery_s))
        action_text_add(t, ", not back before the end");
    else
        action_text_add(t, ", back after %s", format_duration(recovery_s).text);
}
