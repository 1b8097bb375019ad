#include "scenario/draft.h"

#include <string.h>

#include "base/format.h"
#include "base/words.h"
#include "case/plant.h"

/* Whoever knows the volume is told the level, where the tank's sides are known. */
static void report_volume(draft *d)
{
    const cursor *line = &d->volume;
    const boil_tank *t = &d->out->plant.tank;
    const char *equals = line->at != NULL ? memchr(line->at, '=', (size_t)(line->end - line->at)) : NULL;
    quantity q;
    if (line->at == NULL)
        return;
    cursor value = *line;
    value.at = equals != NULL ? equals + 1 : line->end;
    double area_m2 = boil_tank_area(t);
    if (!(area_m2 > 0) || !quantity_comes(value, UNIT_OF(DIM_VOLUME)) ||
        !quantity_read(&value, "volume", UNIT_OF(DIM_VOLUME), &q)) {
        cursor_error(line, line->at, "'volume' is not read: 'level' is the volume over the tank's own area");
        return;
    }
    cursor_error(line, line->at, "'volume' is not read: level = volume / (%s) = %s",
                 t->shape == BOIL_TANK_BOX ? "length x width" : "0.785 x diameter x diameter",
                 format_quantity(UNITS_US, DIM_LENGTH, q.si / area_m2).text);
}

/* Both as they were written. */
static void report_height(draft *d, const char *what, double height_m)
{
    const setting_line *height = draft_line(d, "tank", what), *depth = draft_line(d, "tank", "depth");
    const cursor *high = &height->value, *rim = &depth->value;
    if (height->good && depth->good && height_m > d->out->plant.tank.depth_m)
        cursor_error(high, high->at, "the %s (%s) is above the rim (%s)", what,
                     words_quoted(high->at, (size_t)(high->end - high->at)).text,
                     words_quoted(rim->at, (size_t)(rim->end - rim->at)).text);
}

static void report_charge(draft *d)
{
    boil_initial_state state;
    boil_outcome outcome = boil_plant_initial(&d->out->plant, &state);
    if (outcome == BOIL_NO_MEMORY)
        messages_lost(d->messages);
    if (outcome == BOIL_OK)
        return;
    for (size_t i = 0; i < key_count(); i++)
        if (key_at(i)->need == NEED_STRENGTH && d->found[i].found)
            cursor_error(&d->found[i].value, d->found[i].value.at,
                         "there is no boiling bath of these salts with this '%s' that the correlations cover",
                         key_at(i)->words);
}

/* Only a plant that was read without a mistake is worth it. */
void draft_ask_model(draft *d)
{
    const boil_plant *p = &d->out->plant;
    report_volume(d);
    report_height(d, "level", p->tank.level_m);
    report_height(d, "mark", p->tank.mark_m);
    if (messages_any(d->messages))
        return;
    draft_report(d, "tank", boil_tank_problem(&p->tank));
    draft_report(d, "room", boil_ambient_problem(&p->ambient));
    draft_report(d, "heat", boil_heater_problem(&p->heater));
    draft_report(d, "heat", boil_heat_control_problem(&p->heat_control));
    draft_report(d, "losses", boil_losses_problem(&p->losses));
    draft_report(d, "water control", boil_water_control_problem(&p->control));
    draft_report_setting(d, "bath", "water afloat", boil_plant_afloat_problem(p));
    if (!messages_any(d->messages))
        draft_report_setting(d, "bath", p->crust_kg > 0 ? "crust" : "salt on the floor", boil_plant_crust_problem(p));
    if (!messages_any(d->messages))
        draft_report(d, "heat", boil_plant_heat_problem(p));
    if (!messages_any(d->messages))
        draft_report(d, "bath", boil_plant_problem(p));
    if (!messages_any(d->messages))
        report_charge(d);
}
