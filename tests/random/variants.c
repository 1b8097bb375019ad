#include "random/variants.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static bool copied(const boil_schedule *s, boil_schedule *out)
{
    *out = *s;
    out->capacity = s->count;
    out->actions = malloc((s->count + 1) * sizeof *out->actions);
    if (out->actions != NULL)
        memcpy(out->actions, s->actions, s->count * sizeof *out->actions);
    return out->actions != NULL;
}

static bool added(boil_schedule *s, const boil_action *a)
{
    if (boil_schedule_add(s, a) != BOIL_OK) {
        boil_schedule_free(s);
        return false;
    }
    boil_schedule_sort(s);
    return true;
}

static const boil_action *first_load(const boil_schedule *s)
{
    for (size_t i = 0; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LOAD)
            return &s->actions[i];
    return NULL;
}

/* By the dial, and fully on: a control answers to what is changed, and would be compared in its place. Nothing afloat: what lets go
   is no recovery by the heat. */
static boil_plant plain(const boil_plant *p, double heat)
{
    boil_plant q = *p;
    q.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    q.heat_control.high_limit_K = 0;
    q.control.mode = BOIL_WATER_CONTROL_NONE;
    q.control.low_level_m = 0;
    q.afloat.mass_kg = 0;
    q.heater.input_W *= heat;
    q.heater.coil_area_m2 *= heat;
    return q;
}

double variant_recovery_s(const boil_plant *p, const boil_schedule *s, double heat, double mass)
{
    const boil_action *load = first_load(s);
    boil_plant q = plain(p, heat);
    boil_run_options o = boil_run_options_default();
    boil_schedule alone;
    boil_history h;
    double recovery_s = (double)NAN;
    if (load == NULL)
        return recovery_s;
    boil_action a = {.time_s = 60, .kind = BOIL_ACTION_LOAD, .is = {.load = load->is.load}};
    a.is.load.mass_kg *= mass;
    a.is.load.area_m2 *= mass;
    a.is.load.trapped_kg = 0;
    a.is.load.rinse_kg_m2 = 0;
    a.is.load.immersed_s = (double)INFINITY;
    boil_schedule_init(&alone, 1800);
    if (!added(&alone, &a))
        return recovery_s;
    if (boil_run(&q, &alone, &o, &h) == BOIL_OK) {
        if (h.loads_count == 1 && h.end == BOIL_RUN_DONE)
            recovery_s = isnan(h.loads[0].recovery_s) ? (double)INFINITY : h.loads[0].recovery_s;
        boil_history_free(&h);
    }
    boil_schedule_free(&alone);
    return recovery_s;
}

static bool hangs_on_nothing(const boil_action *a)
{
    return a->kind == BOIL_ACTION_WATER && a->wait.state == BOIL_WAIT_NONE && !a->wait.follows && a->line == 0 &&
           a->pour.goal == BOIL_GOAL_NONE && a->pour.no_later_s == 0 && !a->pour.while_boiling && !a->pour.once;
}

bool variant_two_pours(const boil_schedule *s, boil_schedule *out)
{
    size_t longest = s->count;
    for (size_t i = 0; i < s->count; i++)
        if (hangs_on_nothing(&s->actions[i]) &&
            (longest == s->count || s->actions[i].is.water.over_s > s->actions[longest].is.water.over_s))
            longest = i;
    if (longest == s->count || !copied(s, out))
        return false;
    boil_action *first = &out->actions[longest];
    first->is.water.mass_kg /= 2;
    first->is.water.over_s /= 2;
    boil_action second = *first;
    second.time_s += first->is.water.over_s;
    return added(out, &second);
}

static bool alone_at(const boil_schedule *s, double t)
{
    for (size_t i = 0; i < s->count; i++)
        if (fabs(s->actions[i].time_s - t) < 60)
            return false;
    return true;
}

/* A load that meets water afloat is a finding, however light it is: so long before there is none. What boils away in seconds floats
   between two rows. */
#define CALM_ROWS 13

static bool calm(const boil_history *h, size_t row)
{
    double from_s = h->rows[row + 1 - CALM_ROWS].time_s;
    for (size_t i = row + 1 - CALM_ROWS; i <= row; i++)
        if (!h->rows[i].boiling || h->rows[i].layer_kg != 0)
            return false;
    for (size_t i = 0; i < h->additions_count; i++)
        if (h->additions[i].time_s <= h->rows[row].time_s && !(h->additions[i].time_s + h->additions[i].over_s < from_s))
            return false;
    return true;
}

static bool in_break(const boil_schedule *s, double t)
{
    for (size_t i = 0; i < s->breaks_count; i++)
        if (t >= s->breaks[i].from_s && t <= s->breaks[i].to_s)
            return true;
    return false;
}

/* Whoever lifts what hangs lifts the gram as well, and where that is in a break it is found: so it is out before. */
static double first_lift_s(const boil_schedule *s, double after_s)
{
    double first_s = (double)INFINITY;
    for (size_t i = 0; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LIFT && s->actions[i].time_s > after_s)
            first_s = fmin(first_s, s->actions[i].time_s);
    return first_s;
}

/* The last calm moment at which it may come out, long hot by then: what is still in as a run ends quiet is a finding of itself, however
   light. NaN: there is none. */
static double out_s(const boil_schedule *s, const boil_history *h, size_t in_row)
{
    const double hot_s = 60;
    double from_s = h->rows[in_row].time_s + hot_s, until_s = fmin(h->end_s - 60, first_lift_s(s, h->rows[in_row].time_s));
    for (size_t i = h->rows_count - 1; i > in_row && h->rows[i].time_s >= from_s; i--)
        if (h->rows[i].time_s < until_s && calm(h, i) && alone_at(s, h->rows[i].time_s) && !in_break(s, h->rows[i].time_s))
            return h->rows[i].time_s;
    return (double)NAN;
}

bool variant_gram(const boil_schedule *s, const boil_history *h, boil_schedule *out)
{
    boil_action gram = {.kind = BOIL_ACTION_LOAD};
    gram.is.load = boil_load_default();
    gram.is.load.mass_kg = VARIANT_GRAM_KG;
    gram.is.load.size_m = 0.002;
    gram.position = VARIANT_LAST_PLACE; /* no other load is told, or comes, to hang there */
    gram.is.load.rinse_kg_m2 = gram.is.load.drag_out_kg_m2 = 0;
    for (size_t i = CALM_ROWS; i < h->rows_count; i++) {
        gram.time_s = h->rows[i].time_s;
        if (!calm(h, i) || !alone_at(s, gram.time_s))
            continue;
        gram.is.load.immersed_s = out_s(s, h, i) - gram.time_s;
        if (!isnan(gram.is.load.immersed_s))
            return copied(s, out) && added(out, &gram);
    }
    return false;
}
