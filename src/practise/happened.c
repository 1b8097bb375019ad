#include "practise/happened.h"

#include <math.h>
#include <stdarg.h>
#include <stdlib.h>

#include "base/array.h"
#include "findings/findings.h"
#include "practise/panel.h"

void happenings_free(happenings *h)
{
    free(h->list);
    *h = (happenings){0};
}

static bool insert(happenings *o, const happening *one)
{
    happening *list = boil_array_reserve(o->list, &o->capacity, o->count, sizeof *list);
    if (list == NULL)
        return false;
    o->list = list;
    size_t i = o->count++;
    for (; i > 0 && list[i - 1].time_s > one->time_s; i--)
        list[i] = list[i - 1];
    list[i] = *one;
    return true;
}

bool happened_add(happenings *h, double time_s, const char *words)
{
    happening one = {.time_s = time_s};
    snprintf(one.text.text, sizeof one.text.text, "%s", words);
    return insert(h, &one);
}

/* What a collector of happenings knows. */
typedef struct {
    const shift *shift;
    const boil_history *history;
    double from_s, to_s;
    unit_system units;
    happenings *out;
    bool good;
} collecting;

static void add(collecting *c, const happening *one)
{
    c->good = insert(c->out, one) && c->good;
}

__attribute__((format(printf, 3, 4))) static void say(collecting *c, double time_s, const char *format, ...)
{
    happening one = {.time_s = time_s};
    va_list values;
    if (!(time_s > c->from_s && time_s <= c->to_s))
        return;
    va_start(values, format);
    vsnprintf(one.text.text, sizeof one.text.text, format, values);
    va_end(values);
    add(c, &one);
}

static const char *lost_words(const boil_quiet_result *q)
{
    static const char *const words[] = {
        [BOIL_QUIET_START] = "the bath is quiet",
        [BOIL_QUIET_LOAD] = "the load stops the boil",
        [BOIL_QUIET_WATER] = "the water stops the boil",
        [BOIL_QUIET_HEAT] = "with so little heat the boil stops",
        [BOIL_QUIET_LOSSES] = "the heat does not keep the boil up",
        [BOIL_QUIET_LIQUID] = "the liquid stops the boil",
        [BOIL_QUIET_SALTS] = "the salts stop the boil",
    };
    return q->by_thermostat ? "the thermostat stops the boil" : words[q->cause];
}

static void quiet_spells(collecting *c)
{
    for (size_t i = 0; i < c->history->quiet_count; i++) {
        const boil_quiet_result *q = &c->history->quiet[i];
        if (q->start_s > 0)
            say(c, q->start_s, "%s", lost_words(q));
        say(c, q->layer_s, "water floats on the quiet bath");
        if (q->layer_at_return_kg > PANEL_LEAST_KG)
            say(c, q->end_s, "the boil is back after %s, and %s of water on top mix in",
                format_duration(q->end_s - q->start_s).text, SHOWN(c->units, MASS, q->layer_at_return_kg));
        else
            say(c, q->end_s, "the boil is back after %s", format_duration(q->end_s - q->start_s).text);
    }
}

static const char *pour_words(boil_pour_end end)
{
    static const char *const words[] = {
        [BOIL_POUR_GOES_ON] = "goes on",
        [BOIL_POUR_ALL_IN] = "is in",
        [BOIL_POUR_GOAL] = "is enough: it reads as wanted",
        [BOIL_POUR_TIME] = "ends: its time is up",
        [BOIL_POUR_BOIL_LOST] = "is shut: the boil is lost",
        [BOIL_POUR_NEXT] = "ends: the next begins",
    };
    return words[end];
}

static void pours(collecting *c)
{
    static const char *const of[] = {
        [BOIL_ACTION_WATER] = "the water", [BOIL_ACTION_SALTS] = "the salt", [BOIL_ACTION_LIQUID] = "the liquid"};
    const boil_history *h = c->history;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        const char *words = a->end == BOIL_POUR_GOES_ON ? "is in" : pour_words(a->end);
        say(c, a->time_s + a->over_s, "%s %s", of[a->kind], words);
    }
    for (size_t i = 0; i < h->takes_count; i++)
        say(c, h->takes[i].time_s + h->takes[i].over_s, "%s ends",
            h->takes[i].kind == BOIL_ACTION_BAIL ? "bailing" : "draining");
}

static void loads(collecting *c)
{
    for (size_t i = 0; i < c->history->loads_count; i++) {
        const boil_load_result *l = &c->history->loads[i];
        const boil_load *load = &c->shift->scenario->schedule.actions[l->action].is.load;
        say(c, l->time_s + load->lowering_s, "%s of parts are in", SHOWN(c->units, MASS, l->mass_kg));
        say(c, l->released_s, "the water in their hollows lets go");
        say(c, l->lifted_s + load->lowering_s, "%s of parts are out", SHOWN(c->units, MASS, l->mass_kg));
    }
}

/* From row to row: the moment is that of the first row beyond. */
static void rim(collecting *c)
{
    const boil_history *h = c->history;
    for (size_t i = h->rows_count; i > 1 && h->rows[i - 1].time_s > c->from_s; i--) {
        bool was = h->rows[i - 2].freeboard_m <= 0, is = h->rows[i - 1].freeboard_m <= 0;
        if (is && !was)
            say(c, h->rows[i - 1].time_s, "OVER THE RIM; what leaves the tank is not worked out");
        else if (was && !is)
            say(c, h->rows[i - 1].time_s, "under the rim again; from the overflow on this is not a prediction");
    }
}

bool happened_since(const shift *s, double from_s, unit_system u, happenings *out)
{
    collecting c = {s, shift_history(s), from_s, s->now_s, u, out, true};
    quiet_spells(&c);
    pours(&c);
    loads(&c);
    rim(&c);
    return c.good;
}

double happened_next_look_s(const shift *s)
{
    const double least_s = 60, looks = 20;
    double change_s = shift_next_change_s(s);
    return fmin(change_s, s->now_s + fmax(least_s, (change_s - s->now_s) / looks));
}

/* It needs the whole shift. */
static bool needs_the_end(const boil_finding *f)
{
    return f->kind == BOIL_FOUND_NEVER_BOILS || f->kind == BOIL_FOUND_NEVER_RETURNS || f->kind == BOIL_FOUND_LAYER_OUTLASTS;
}

static void find(collecting *c, const boil_finding *f, happened_findings *told)
{
    double since = f->time_s;
    if (needs_the_end(f) || f->severity < BOIL_SEVERITY_CAUTION || (int)f->severity < told->told[f->kind])
        return;
    told->told[f->kind] = (int)f->severity + 1;
    happening one = {.time_s = since > c->from_s && since <= c->to_s ? since : c->to_s,
                     .finding = true,
                     .severity = f->severity,
                     .advice = f->advice};
    snprintf(one.text.text, sizeof one.text.text, "%s", f->title);
    add(c, &one);
}

bool happened_found(const shift *s, double from_s, happened_findings *told, happenings *out)
{
    boil_history h;
    boil_findings found, possible;
    collecting c = {s, NULL, from_s, s->now_s, UNITS_US, out, true};
    boil_schedule until = s->scenario->schedule;
    until.duration_s = s->now_s;
    if (shift_so_far(s, &h) != BOIL_OK)
        return false;
    if (boil_findings_of_unchecked(&s->scenario->plant, &until, NULL, &h, NULL, 0, &found, &possible) == BOIL_OK) {
        for (size_t i = 0; i < found.count; i++)
            find(&c, &found.list[i], told);
        boil_findings_free(&found);
        boil_findings_free(&possible);
    } else {
        c.good = false;
    }
    boil_history_free(&h);
    return c.good;
}
