#include "describe/remarks.h"

#include <math.h>
#include <string.h>

#include "actions/action.h"
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

static bool is_lifted(const boil_schedule *s, size_t load)
{
    int name = s->actions[load].name;
    for (size_t i = load + 1; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LIFT && (s->actions[i].name == 0 || s->actions[i].name == name))
            return true;
    return false;
}

/* Allowed, and seldom meant. */
static void never_lifted(const scenario *s, remarks *r)
{
    size_t count = 0, first = 0;
    for (size_t i = 0; i < s->schedule.count; i++) {
        const boil_load *load = action_load_of(&s->schedule.actions[i]);
        if (load == NULL || !isinf(load->immersed_s) || is_lifted(&s->schedule, i))
            continue;
        first = count == 0 ? i : first;
        count++;
    }
    if (count == 0)
        return;
    char others[40] = "";
    if (count > 1)
        snprintf(others, sizeof others, " and %zu more", count - 1);
    TEXT_ADD(r->list[r->count++].text,
             "nothing lifts '%s' at %s%s: it stays in to the end; say how long, such as ', for 20 min', or lift it",
             text_plain(action_name_of(s, first).text).text,
             format_clock_exact(s->start_s, s->schedule.actions[first].time_s).text, others);
}

remarks remarks_of(const scenario *s)
{
    remarks r = {.count = 0};
    low_thermostat(s, &r);
    never_lifted(s, &r);
    return r;
}
