#include "schedule/attendance.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/words.h"
#include "schedule/positions.h"
#include "schedule/waiting.h"

/* Who is in the bath as the actions go by. */
typedef struct {
    schedule_draft *a;
    size_t *last; /* per name: its latest load, index into the list plus one; 0: none yet */
    size_t *in;   /* loads since the last "lift everything" */
    size_t in_count;
} attendance;

/* Where to complain about the name of an action; NULL where it has been done, or more is wrong with it. */
static const cursor *to_complain(schedule_draft *a, const schedule_planned *p)
{
    action_line *l = &a->lines[p->line];
    if (l->reported || a->reader.names.broken[p->action.name] || messages_full(l->place.messages))
        return NULL;
    l->reported = true;
    return &l->place;
}

/* "'rack 3' is still in the bath at 1:05" */
static void complain(schedule_draft *a, const schedule_planned *p, const char *what)
{
    const cursor *c = to_complain(a, p);
    const char *name = load_names_word(&a->reader.names, p->action.name);
    if (c != NULL)
        cursor_error(c, c->at, "'%s' %s at %s", words_quoted(name, strlen(name)).text, what,
                     moment_words(&a->frame, p->action.time_s).text);
}

/* Of what waits nobody knows the moment. */
static bool is_planned(const schedule_planned *before, const schedule_planned *p)
{
    return !waiting_is_open(&before->action.wait) && !waiting_is_open(&p->action.wait);
}

static schedule_planned *latest(const attendance *t, int name)
{
    size_t index = t->last[name];
    return index > 0 ? &t->a->list[index - 1] : NULL;
}

static void go_in(attendance *t, size_t index)
{
    schedule_planned *p = &t->a->list[index];
    const boil_load *l = &p->action.is.load;
    p->least_s = p->action.time_s + l->immersed_s;
    p->lifts_s = p->least_s;
    if (l->at_boil) {
        p->lifts_s = l->latest_s > 0 ? l->latest_s : HUGE_VAL;
        p->least_s = fmin(p->lifts_s, p->least_s + l->lowering_s);
    }
    t->in[t->in_count++] = index;
    if (p->action.name == 0)
        return;
    const schedule_planned *before = latest(t, p->action.name);
    if (before != NULL && is_planned(before, p) &&
        p->action.time_s < before->least_s + before->action.is.load.lowering_s - 1e-6)
        complain(t->a, p, "is still in the bath, or coming out,");
    t->last[p->action.name] = index + 1;
}

static void lift_everything(attendance *t, double time_s)
{
    for (size_t i = 0; i < t->in_count; i++) {
        schedule_planned *p = &t->a->list[t->in[i]];
        p->lifts_s = fmin(p->lifts_s, time_s);
        p->least_s = fmin(p->least_s, time_s);
    }
    t->in_count = 0;
}

static void unknown_name(schedule_draft *a, const schedule_planned *p)
{
    const cursor *c = to_complain(a, p);
    const char *name = load_names_word(&a->reader.names, p->action.name);
    words_nearest n = words_near(name, strlen(name));
    for (int i = 1; c != NULL && i <= (int)a->reader.names.count; i++)
        if (a->reader.names.loaded[i])
            words_consider(&n, load_names_word(&a->reader.names, i));
    if (c != NULL)
        cursor_error(c, c->at, "no load is named '%s'%s", words_quoted(name, strlen(name)).text, words_suggestion(&n).text);
}

static void lift(attendance *t, const schedule_planned *p)
{
    if (p->action.name == 0) {
        lift_everything(t, p->action.time_s);
        return;
    }
    schedule_planned *load = latest(t, p->action.name);
    if (!t->a->reader.names.loaded[p->action.name])
        unknown_name(t->a, p);
    else if (load == NULL || (is_planned(load, p) && p->action.time_s >= load->lifts_s))
        complain(t->a, p, "is not in the bath");
    else
        load->lifts_s = load->least_s = p->action.time_s;
}

/* Once it is known when each load comes out. Of what waits nobody knows when it goes in. */
static void hang(schedule_draft *a)
{
    positions places = {{{NULL, 0, false}}};
    positions_text why;
    bool unsure = false; /* from here on the run knows who hangs where */
    for (size_t i = 0; a->reader.positions > 0 && i < a->count; i++) {
        schedule_planned *p = &a->list[i];
        if (action_type_of(p->action.kind)->group != ACTION_LOAD)
            continue;
        int stated = p->action.position;
        bool waits = waiting_is_open(&p->action.wait);
        bool hangs =
            waits || positions_take(&places, a->reader.positions, &a->reader.names, &a->frame, &p->action, p->least_s, &why);
        if (unsure)
            p->action.position = stated;
        unsure = unsure || waits || p->action.is.load.at_boil;
        if (hangs)
            continue;
        const cursor *c = to_complain(a, p);
        if (c != NULL)
            cursor_error(c, c->at, "%s", why.text);
    }
}

bool attendance_check(schedule_draft *a)
{
    attendance t = {
        .a = a, .last = calloc(a->reader.names.count + 1, sizeof *t.last), .in = calloc(a->count + 1, sizeof *t.in)};
    bool good = t.last != NULL && t.in != NULL;
    for (size_t i = 0; good && i < a->count; i++) {
        action_group group = action_type_of(a->list[i].action.kind)->group;
        if (group == ACTION_LOAD)
            go_in(&t, i);
        else if (group == ACTION_LIFT)
            lift(&t, &a->list[i]);
    }
    free(t.last);
    free(t.in);
    hang(a);
    return good;
}
