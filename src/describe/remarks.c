#include "describe/remarks.h"

#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "base/format.h"
#include "base/memory.h"

/* In the unit it was written in: "280 degF". */
static const char *as_written(const scenario *s, const char *section, const char *words)
{
    const scenario_setting *set = scenario_setting_of(s, section, words);
    return set->given != NULL ? set->given : "";
}

/* No fire holds a boil: what the boil holds is its boiling point. */
static void low_thermostat(const scenario *s, const boil_initial_state *bath, remarks *r)
{
    const boil_heat_control *c = &s->plant.heat_control;
    if (c->mode == BOIL_HEAT_CONTROL_DIAL || c->set_point_K >= bath->boiling_point_K)
        return;
    const char *written = as_written(s, "heat", "set point");
    TEXT_ADD(r->list[r->count++].text,
             "the thermostat (%s) is below the boiling point (%s): the bath will not stay at the boil",
             text_plain(written).text,
             format_quantity(strstr(written, "degF") ? UNITS_US : UNITS_SI, DIM_TEMPERATURE, bath->boiling_point_K).text);
}

/* By an act that stands behind it. */
static bool is_lifted(const boil_schedule *s, size_t load)
{
    for (size_t i = load + 1; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LIFT && (s->actions[i].name == 0 || s->actions[i].name == s->actions[load].name))
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

/* One is told of all that nothing else takes out. */
static void endless_load(const scenario *s, remarks *r)
{
    const boil_schedule *all = &s->schedule;
    for (size_t i = 0; i < all->count; i++) {
        const boil_load *l = action_load_of(&all->actions[i]);
        if (l == NULL || !l->at_boil || l->latest_s > 0 || is_lifted(all, i))
            continue;
        TEXT_ADD(r->list[r->count++].text,
                 "'for %s at the boil' may never end when the bath does not boil: add 'no later than'",
                 format_duration(l->immersed_s).text);
        return;
    }
}

/* In the units the act is written in. */
static unit_system written_in(const char *words, const char *si)
{
    return strstr(words, si) != NULL ? UNITS_SI : UNITS_US;
}

/* Water lowers a boiling point: it may have drifted up by then, or nothing is poured. */
static bool below_goal(const scenario *s, const boil_action *a, const char *words, const boil_initial_state *bath, remark *r)
{
    if (a->pour.goal != BOIL_GOAL_BOILING_POINT || !(a->pour.goal_value > bath->boiling_point_K))
        return false;
    (void)s;
    TEXT_ADD(
        r->text,
        "water lowers the boiling point: '%s' is for a bath that boils above that, and this one starts at %s; boil it off, or "
        "add salts",
        words, format_quantity(written_in(words, "degC"), DIM_TEMPERATURE, bath->boiling_point_K).text);
    return true;
}

/* Water raises a level and a bail lowers it: the same of levels. */
static bool past_level(const scenario *s, const boil_action *a, const char *words, const boil_initial_state *bath, remark *r)
{
    double level_m = s->plant.tank.level_m, step_m = s->plant.by_hand.mark_step_m;
    bool takes = a->kind == BOIL_ACTION_BAIL || a->kind == BOIL_ACTION_DRAIN;
    double over_m = takes ? a->pour.goal_value - level_m : level_m - a->pour.goal_value;
    (void)bath;
    if (a->pour.goal != BOIL_GOAL_LEVEL || s->plant.tank.mark_boiling || !(over_m > step_m))
        return false;
    TEXT_ADD(r->text, "%s: '%s' is for a bath that stands %s that, and this one starts at %s",
             takes ? "what is taken lowers the level" : "water raises the level", words, takes ? "above" : "below",
             format_quantity(written_in(words, "cm"), DIM_LENGTH, level_m).text);
    return true;
}

typedef bool wrong_side(const scenario *s, const boil_action *a, const char *words, const boil_initial_state *bath, remark *r);

/* The first act of its kind is told. */
static void goals(const scenario *s, const boil_initial_state *bath, wrong_side *is_wrong, remarks *r)
{
    for (size_t i = 0; i < s->schedule.count; i++)
        if (is_wrong(s, &s->schedule.actions[i], action_name_of(s, i).text, bath, &r->list[r->count])) {
            r->count++;
            return;
        }
}

remarks remarks_of(const scenario *s)
{
    remarks r = {.count = 0};
    boil_initial_state bath;
    bool known = memory_good(boil_plant_initial(&s->plant, &bath));
    if (known)
        low_thermostat(s, &bath, &r);
    never_lifted(s, &r);
    endless_load(s, &r);
    if (known) {
        goals(s, &bath, below_goal, &r);
        goals(s, &bath, past_level, &r);
    }
    return r;
}
