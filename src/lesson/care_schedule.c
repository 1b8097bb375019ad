#include <math.h>
#include <stdlib.h>

#include "base/units.h"
#include "lesson/care.h"

debrief_change debrief_change_of(const debrief_care *c)
{
    return c->drained      ? DEBRIEF_DRAINED
           : c->parts > 1  ? DEBRIEF_SPLIT
           : c->sifted     ? DEBRIEF_SIFTED
           : c->waits      ? DEBRIEF_WHEN_BOILING
           : c->less > 0   ? DEBRIEF_LESS_WATER
           : c->slower > 0 ? DEBRIEF_SLOWER
           : c->gentle     ? DEBRIEF_GENTLE
           : c->steps > 0  ? DEBRIEF_LESS_HEAT
                           : DEBRIEF_SAME;
}

#define NOWHERE SIZE_MAX /* it would come after the end */

/* What is being written, and what stands where in it. Acts are known by their order. */
typedef struct {
    boil_schedule *out;
    size_t *origin, *place; /* by order in the new one; by order in the old one: the last that came of it */
    size_t room;            /* of origin */
    size_t split;           /* in the new one: the last part of the load that was last put in in parts; NOWHERE: none was */
    size_t from;            /* act of the old one that is being done with care */
    size_t from_order;
    boil_outcome outcome;
} writing;

/* False: it would come after the end, or memory is refused. */
static bool write_act(writing *w, const boil_action *a)
{
    if (w->outcome != BOIL_OK || a->time_s > w->out->duration_s)
        return false;
    if (w->out->count == w->room) {
        size_t *more = realloc(w->origin, 2 * w->room * sizeof *more);
        if (more == NULL) {
            w->outcome = BOIL_NO_MEMORY;
            return false;
        }
        w->origin = more;
        w->room *= 2;
    }
    w->origin[w->out->count] = w->from;
    w->outcome = boil_schedule_add(w->out, a);
    return w->outcome == BOIL_OK;
}

static bool write_now(writing *w, const boil_action *a)
{
    if (!write_act(w, a))
        return false;
    w->place[w->from_order] = w->out->count - 1;
    return true;
}

/* The parts of a load wait for the boil as well: what is added meanwhile would go in with the next of them. */
static void wait_for_last_part(const writing *w, boil_action *a)
{
    const boil_action *part = &w->out->actions[w->split];
    a->wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = w->split, .for_s = CARE_STEADY_S};
    a->time_s = fmax(a->time_s, part->time_s + part->is.load.lowering_s + CARE_STEADY_S);
}

static void wait_for_boil(const writing *w, boil_action *a)
{
    if (a->wait.state == BOIL_WAIT_BACK)
        return;
    if (w->split != NOWHERE && !a->wait.follows && a->kind != BOIL_ACTION_LOAD) {
        wait_for_last_part(w, a);
        return;
    }
    a->wait.state = BOIL_WAIT_BOILING;
    a->wait.for_s = fmax(a->wait.for_s, CARE_STEADY_S);
}

static double slower(const debrief_care *c)
{
    return c->slower > 0 ? 2 * pow(2, c->slower) : 1;
}

/* Water as a thin stream, half a gallon a minute. */
static double thin_s(const boil_action_water *a)
{
    return a->mass_kg / (unit_to_si(DIM_VOLUME_FLOW, "gal/min", 0.5) * boil_water_density(a->temperature_K));
}

/* Salts sifted in, 2.5 lb a minute for each 250 gal of bath. */
static double sifted_s(const boil_action_salts *a, const boil_tank *t)
{
    double baths = boil_tank_area(t) * t->level_m / unit_to_si(DIM_VOLUME, "gal", 250);
    return a->mass_kg / (unit_to_si(DIM_MASS_FLOW, "lb/h", 150) * baths);
}

static void write_addition(writing *w, const boil_plant *p, boil_action a, const debrief_care *c)
{
    if (c->waits || c->sifted)
        wait_for_boil(w, &a);
    if (a.kind == BOIL_ACTION_SALTS) {
        double least_s = c->sifted ? sifted_s(&a.is.salts, &p->tank) : 0;
        a.is.salts.over_s = fmax(a.is.salts.over_s, least_s) * slower(c);
    } else if (a.kind == BOIL_ACTION_LIQUID) {
        a.is.liquid.over_s *= slower(c);
    } else {
        if (c->less > 0)
            a.is.water.mass_kg = fmin(a.is.water.mass_kg, fmax(1e-3, c->less_kg * pow(0.8, c->less - 1)));
        double least_s = c->waits ? thin_s(&a.is.water) : 0;
        a.is.water.over_s = fmax(a.is.water.over_s, least_s) * slower(c);
    }
    write_now(w, &a);
}

/* When somebody lifts it, where its time is not said. */
static double stays_s(const boil_schedule *s, size_t load)
{
    const boil_action *a = &s->actions[load];
    for (size_t i = load + 1; i < s->count && isinf(a->is.load.immersed_s); i++)
        if (s->actions[i].kind == BOIL_ACTION_LIFT && (s->actions[i].name == 0 || s->actions[i].name == a->name))
            return fmax(60, s->actions[i].time_s - a->time_s);
    return a->is.load.immersed_s;
}

static void write_load(writing *w, const boil_schedule *s, boil_action a, const debrief_care *c)
{
    unsigned parts = c->parts > 1 ? c->parts : 1;
    if (c->drained)
        a.is.load.trapped_kg = 0;
    if (c->waits)
        wait_for_boil(w, &a);
    if (parts > 1)
        a.is.load.immersed_s = stays_s(s, w->from);
    a.is.load.mass_kg /= parts;
    a.is.load.basket_kg /= parts;
    a.is.load.area_m2 /= parts;
    a.is.load.trapped_kg /= parts;
    a.is.load.pieces /= parts;
    bool in = write_now(w, &a);
    for (unsigned i = 1; i < parts && in; i++) {
        a.wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .after = w->out->count - 1, .for_s = CARE_STEADY_S};
        a.time_s += a.is.load.lowering_s + CARE_STEADY_S;
        a.position = 0;
        a.line = 0; /* none takes another's place */
        in = write_now(w, &a);
    }
    if (parts > 1)
        w->split = w->place[w->from_order];
}

static boil_action switched(const boil_action *like, double time_s, bool on)
{
    boil_action a = {.kind = BOIL_ACTION_MIXER, .time_s = time_s, .wait = like->wait};
    a.is.on = on;
    return a;
}

/* A quarter of full fire; a control is taken over by the dial meanwhile. */
static void write_gentle(writing *w, const boil_action *as_done, const debrief_care *c)
{
    boil_action a = *as_done, mixer = switched(as_done, as_done->time_s, true);
    a.is.heat = (boil_action_heat){.order = BOIL_HEAT_TURN, .dial = CARE_GENTLE_DIAL};
    if (as_done->is.heat.order == BOIL_HEAT_TURN)
        a.is.heat.dial = fmin(CARE_GENTLE_DIAL, as_done->is.heat.dial);
    write_act(w, &mixer);
    write_now(w, &a);
    if (!(c->gone_s > a.time_s) || isinf(c->gone_s))
        return;
    boil_action then = *as_done;
    then.wait = (boil_wait){.state = BOIL_WAIT_NONE};
    then.time_s = c->gone_s;
    write_act(w, &then);
}

static void write_heat(writing *w, const boil_action *as_done, const debrief_care *c)
{
    boil_action a = *as_done;
    if (c->gentle) {
        write_gentle(w, as_done, c);
        return;
    }
    a.is.heat.dial = c->steps > 0 ? fmax(0.05, a.is.heat.dial - 0.05 * c->steps) : a.is.heat.dial;
    write_now(w, &a);
}

static void write_with_care(writing *w, const boil_plant *p, const boil_schedule *s, const debrief_care *c)
{
    boil_action a = s->actions[w->from];
    w->from_order = a.order;
    if (a.wait.follows && w->place[a.wait.after] == NOWHERE)
        return;
    if (a.wait.follows) { /* which may be later now: nothing follows what comes after it */
        a.wait.after = w->place[a.wait.after];
        a.time_s = fmax(a.time_s, w->out->actions[a.wait.after].time_s);
    }
    switch (a.kind) {
    case BOIL_ACTION_LOAD:
        write_load(w, s, a, c);
        break;
    case BOIL_ACTION_WATER:
    case BOIL_ACTION_SALTS:
    case BOIL_ACTION_LIQUID:
        write_addition(w, p, a, c);
        break;
    case BOIL_ACTION_HEAT:
        write_heat(w, &a, c);
        break;
    default:
        write_now(w, &a);
    }
}

/* By place, once sorted. */
static bool order_origin(const boil_schedule *s, size_t **origin)
{
    size_t *by_place = calloc(s->count + 1, sizeof *by_place);
    for (size_t i = 0; by_place != NULL && i < s->count; i++)
        by_place[i] = (*origin)[s->actions[i].order];
    free(*origin);
    *origin = by_place;
    return by_place != NULL;
}

boil_outcome care_schedule(const boil_plant *p, const boil_schedule *s, const debrief_care *care, boil_schedule *out,
                           size_t **origin)
{
    writing w = {.out = out, .split = NOWHERE, .room = 2 * s->count + 1};
    boil_schedule_init(out, s->duration_s);
    out->idle_after_s = s->idle_after_s;
    w.origin = calloc(w.room, sizeof *w.origin);
    w.place = calloc(s->count + 1, sizeof *w.place);
    for (size_t i = 0; w.place != NULL && i <= s->count; i++)
        w.place[i] = NOWHERE;
    w.outcome = w.origin != NULL && w.place != NULL ? BOIL_OK : BOIL_NO_MEMORY;
    for (size_t i = 0; i < s->breaks_count && w.outcome == BOIL_OK; i++)
        w.outcome = boil_schedule_add_break(out, s->breaks[i].from_s, s->breaks[i].to_s);
    for (w.from = 0; w.from < s->count && w.outcome == BOIL_OK; w.from++)
        write_with_care(&w, p, s, &care[w.from]);
    boil_schedule_sort(out);
    if (w.outcome == BOIL_OK && !order_origin(out, &w.origin))
        w.outcome = BOIL_NO_MEMORY;
    free(w.place);
    *origin = w.origin;
    if (w.outcome != BOIL_OK) {
        free(w.origin);
        *origin = NULL;
        boil_schedule_free(out);
    }
    return w.outcome;
}
