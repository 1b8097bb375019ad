#include "commands/size/answer.h"

#include <math.h>

#include "base/constants.h"
#include "design/published_units.h"

#define QUARTER_INCH_M 6.35e-3

static const boil_action *first_load(const boil_schedule *s)
{
    for (size_t i = 0; i < s->count; i++)
        if (action_load_of(&s->actions[i]) != NULL)
            return &s->actions[i];
    return NULL;
}

boil_load size_case_plate(const scenario *s, const quantity *heaviness, double thickness_m)
{
    const boil_tank *t = &s->plant.tank;
    boil_load l = boil_load_default();
    double per_volume = s->plant.limits.load_per_volume_kg_m3, volume_m3 = boil_tank_area(t) * t->level_m;
    if (heaviness != NULL && heaviness->dimension == DIM_CONCENTRATION)
        per_volume = heaviness->si;
    l.mass_kg = heaviness != NULL && heaviness->dimension == DIM_MASS ? heaviness->si : per_volume * volume_m3;
    l.size_m = thickness_m;
    l.temperature_K = fmin(BOIL_ZERO_CELSIUS + 20, s->plant.ambient.temperature_K);
    l.immersed_s = 20 * 60;
    const boil_action *first = first_load(&s->schedule);
    if (first != NULL) {
        const boil_load *own = &first->is.load;
        l.temperature_K = fmin(l.temperature_K, own->temperature_K);
        l.basket_kg = own->basket_kg * fmax(1, l.mass_kg / own->mass_kg);
    }
    return l;
}

/* After a minute of boil, and followed until its boil must be back. */
boil_outcome size_case_one(const scenario *s, double limit_s, const boil_load *load, size_case *out)
{
    const double first_s = 60;
    boil_action action = {.time_s = first_s, .kind = BOIL_ACTION_LOAD, .is.load = *load};
    *out = (size_case){.scenario = s, .one_load = true, .load = *load, .limit_s = limit_s, .run = boil_run_options_default()};
    size_case_place(out, 0);
    boil_schedule_init(&out->schedule, first_s + load->immersed_s + limit_s + 60);
    return boil_schedule_add(&out->schedule, &action);
}

boil_outcome size_case_of(const scenario *s, double limit_s, const quantity *heaviness, size_case *out)
{
    const boil_action *first = first_load(&s->schedule);
    if (heaviness != NULL || first == NULL) {
        boil_load plate = size_case_plate(s, heaviness, QUARTER_INCH_M);
        return size_case_one(s, limit_s, &plate, out);
    }
    *out = (size_case){
        .scenario = s, .load = first->is.load, .schedule = s->schedule, .limit_s = limit_s, .run = boil_run_options_default()};
    size_case_place(out, 0);
    return BOIL_OK;
}

void size_case_free(size_case *c)
{
    if (c->one_load)
        boil_schedule_free(&c->schedule);
}

double size_case_heaviest(const size_case *c)
{
    double heaviest_kg = 0;
    for (size_t i = 0; i < c->schedule.count; i++)
        if (action_load_of(&c->schedule.actions[i]) != NULL)
            heaviest_kg = fmax(heaviest_kg, action_load_of(&c->schedule.actions[i])->mass_kg);
    return heaviest_kg;
}

double size_places(double side_m, double basket_m, double apart_m)
{
    const double end_m = 4 * BOIL_INCH;
    return floor((side_m - 2 * end_m + apart_m) / (basket_m + apart_m) + 1e-9);
}

/* Of baskets of 12 in, 3 in apart, along the longer side; at least one. */
static double positions_of(const boil_tank *t)
{
    double side_m = t->shape == BOIL_TANK_BOX ? fmax(t->length_m, t->width_m) : t->diameter_m;
    return fmin(BOIL_POSITIONS_MAX, fmax(1, size_places(side_m, 12 * BOIL_INCH, 3 * BOIL_INCH)));
}

void size_case_place(size_case *c, double asked)
{
    double own = c->scenario->plant.tank.positions;
    c->plant = c->scenario->plant;
    c->counted = !(asked > 0 || own > 0);
    c->plant.tank.positions = asked > 0 ? asked : own > 0 ? own : positions_of(&c->plant.tank);
}

static action_name plate_words(const boil_load *l, unit_system system)
{
    action_name w;
    char basket[40] = "";
    if (l->basket_kg > 0)
        snprintf(basket, sizeof basket, ", basket %.20s", SHOWN(system, MASS, l->basket_kg));
    snprintf(w.text, sizeof w.text, "%.20s of %.20s plate at %.20s%s", SHOWN(system, MASS, l->mass_kg),
             format_exact(system, DIM_LENGTH, l->size_m).text, SHOWN(system, TEMPERATURE, l->temperature_K), basket);
    return w;
}

action_name size_case_words(const size_case *c, unit_system system, size_t load)
{
    size_t seen = 0;
    for (size_t i = 0; !c->one_load && i < c->schedule.count; i++)
        if (action_load_of(&c->schedule.actions[i]) != NULL && seen++ == load)
            return action_name_of(c->scenario, i);
    return plate_words(&c->load, system);
}
