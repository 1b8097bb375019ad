#include "describe/remarks.h"

#include <string.h>

#include "base/format.h"

/* In the unit it was written in: "280 degF". */
static const char *as_written(const scenario *s, const char *section, const char *words)
{
    const scenario_setting *set = &s->settings[key_index(key_find(section, words, strlen(words)))];
    return set->given != NULL ? set->given : "";
}

/* No fire holds a boil: what the boil holds is its boiling point. */
static void low_thermostat(const scenario *s, remarks *r)
{
    const boil_heat_control *c = &s->plant.heat_control;
    boil_initial_state bath;
    if (c->mode == BOIL_HEAT_CONTROL_DIAL || boil_plant_initial(&s->plant, &bath) != BOIL_OK ||
        c->set_point_K >= bath.boiling_point_K)
        return;
    const char *written = as_written(s, "heat", "set point");
    TEXT_ADD(r->list[r->count++].text,
             "the thermostat (%s) is below the boiling point (%s): the bath will not stay at the boil",
             text_plain(written).text,
             format_quantity(strstr(written, "degF") ? UNITS_US : UNITS_SI, DIM_TEMPERATURE, bath.boiling_point_K).text);
}

remarks remarks_of(const scenario *s)
{
    remarks r = {.count = 0};
    low_thermostat(s, &r);
    return r;
}
