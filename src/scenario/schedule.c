#include "scenario/schedule.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/memory.h"
#include "base/words.h"
#include "scenario/waiting.h"
#include "scenario/positions.h"

#define REST_AFTER_LAST_ACTION_S 1800.0

static const bounds every_time = {"s", 1, SCHEDULE_LATEST_S};

schedule_draft schedule_begin(const boil_plant *plant, bool plant_good, const moment_frame *frame)
{
    schedule_draft a = {.reader = {.plant = plant}, .frame = *frame, .first_s = HUGE_VAL};
    a.reader.bath_known = plant_good && memory_good(boil_plant_initial(plant, &a.reader.bath));
    return a;
}

void schedule_draft_free(schedule_draft *a)
{
    load_names_free(&a->reader.names);
    free(a->lines);
    free(a->list);
    *a = (schedule_draft){0};
}

void schedule_wording_free(schedule_wording *w)
{
    for (size_t i = 0; i < w->names_count; i++)
        free(w->names[i]);
    free(w->names);
    free(w->lines);
    free(w->line_of);
    *w = (schedule_wording){0};
}

/* Once, or again and again. */
typedef struct {
    double from_s, to_s, period_s; /* period 0: once */
    boil_wait wait;                /* what it follows is not yet said */
    exceptions except;
} timing;

static bool read_moment(schedule_draft *a, cursor *c, const char *what, double *s)
{
    quantity q;
    if (!moment_read(&a->frame, c, what, &q) || !moment_within(&a->frame, c, q.text, q.si))
        return false;
    *s = q.si;
    return true;
}

static bool read_every(schedule_draft *a, cursor *c, timing *t)
{
    quantity q;
    cursor_done(c);
    const char *start = c->at;
    if (!quantity_read(c, "every", UNIT_OF(DIM_TIME), &q) || !quantity_within(c, "every", &q, &every_time))
        return false;
    *t = (timing){.to_s = a->frame.end_s, .period_s = q.si};
    if (cursor_take(c, "from") && !read_moment(a, c, "from", &t->from_s))
        return false;
    if (cursor_take(&(cursor){c->messages, c->source, c->line, c->at, c->end}, "until"))
        return cursor_error(c, words_skip(c->at, c->end), "'until' is called 'to' here");
    if (cursor_take(c, "to") && !read_moment(a, c, "to", &t->to_s))
        return false;
    if (!exceptions_read(&a->frame, &a->breaks, c, &t->except))
        return false;
    if (isinf(t->to_s))
        return cursor_error(c, start, "'every' without 'to' needs a 'duration' above the first section");
    if (t->to_s < t->from_s)
        return cursor_error(c, start, "'to' is before 'from'");
    return true;
}

static bool read_once(schedule_draft *a, cursor *c, timing *t)
{
    quantity q;
    cursor ahead = *c;
    if (!waiting_plus_read(c, &t->wait))
        return false;
    if (t->wait.follows || cursor_take(&ahead, "when"))
        return true;
    if (!moment_read(&a->frame, c, "time of the act", &q))
        return false;
    if (cursor_take(c, "after the boil is back")) {
        t->wait = (boil_wait){.state = BOIL_WAIT_BACK, .follows = true, .for_s = q.si};
        return true;
    }
    t->from_s = t->to_s = q.si;
    return moment_within(&a->frame, c, q.text, q.si);
}

static bool read_timing(schedule_draft *a, cursor *c, timing *t)
{
    cursor_done(c);
    const char *start = c->at;
    *t = (timing){0};
    if (!(cursor_take(c, "every") ? read_every(a, c, t) : read_once(a, c, t)) || !waiting_state_read(c, &t->wait))
        return false;
    if (waiting_is_open(&t->wait) && t->wait.state != BOIL_WAIT_NONE && isinf(a->frame.end_s))
        return cursor_error(c, start, "nobody knows when this will be: set a 'duration' above the first section");
    return true;
}

/* What is bounded by time alone is as much as runs in until then. */
static void bound_by_time(boil_action *action)
{
    boil_action_water *w = &action->is.water;
    double left_s = action->pour.no_later_s - action->time_s;
    w->mass_kg *= left_s / w->over_s;
    w->over_s = left_s;
}

/* False, with a message, when it cannot be planned. */
static bool plan(schedule_draft *a, const cursor *c, const boil_action *planned, size_t line)
{
    boil_action action = *planned;
    const boil_load *load = action_load_of(&action);
    double latest_s = load != NULL ? load->latest_s : action.pour.no_later_s;
    if (latest_s > 0 && latest_s <= action.time_s)
        return cursor_error(c, c->at, "'no later than' is not after the act's own time");
    if (a->lines[line].most_by_time)
        bound_by_time(&action);
    schedule_planned *list = boil_array_reserve(a->list, &a->capacity, a->count, sizeof *list);
    if (list == NULL)
        return messages_lost(c->messages);
    a->list = list;
    list[a->count++] = (schedule_planned){action, line, HUGE_VAL, HUGE_VAL};
    return true;
}

/* At a moment: all of it, or portion after portion. */
static bool plan_portions(schedule_draft *a, const cursor *c, boil_action *action, double s)
{
    const action_line *line = &a->lines[a->line_count - 1];
    for (size_t k = 0; k < line->portions; k++) {
        action->time_s = s + (double)k * line->portion_every_s;
        if (!moment_within(&a->frame, c, c->at, action->time_s))
            return false;
        if (!plan(a, c, action, a->line_count - 1))
            return false;
    }
    return true;
}

/* "to" is included, though the sum of the periods may miss it by rounding. */
static void unroll(schedule_draft *a, const cursor *c, const timing *t, boil_action *action)
{
    double count = t->period_s > 0 ? floor((t->to_s - t->from_s) / t->period_s + 1e-9) + 1 : 1;
    if (count * (double)a->lines[a->line_count - 1].portions + (double)a->count > SCHEDULE_ACTIONS_MAX) {
        cursor_error(c, c->at, "there are more than %.0f acts", SCHEDULE_ACTIONS_MAX);
        return;
    }
    size_t before = a->count;
    for (double i = 0; i < count; i++) {
        double s = fmin(t->from_s + i * t->period_s, t->to_s);
        if (!exceptions_hold(&t->except, s) && !plan_portions(a, c, action, s))
            return;
    }
    if (a->count == before)
        cursor_error(c, c->at, "'except' left nothing of this line");
}

/* How much later than what it follows it is at the earliest. */
static double follows_after_s(const schedule_planned *before, const boil_wait *w)
{
    return w->state == BOIL_WAIT_BACK ? before->action.is.load.lowering_s + w->for_s : w->delay_s;
}

/* Once for each time that what it follows is done. What follows an act of the clock is one itself. */
static void follow(schedule_draft *a, const cursor *c, const timing *t, boil_action *action)
{
    bool back = t->wait.state == BOIL_WAIT_BACK;
    schedule_occurrences of = back ? a->last_load : a->last;
    if (!of.any)
        cursor_error(c, c->at, "%s",
                     back ? "no load stands before this whose boil could be back" : "no act stands before this");
    for (size_t i = 0; i < of.count; i++) {
        const schedule_planned *before = &a->list[of.first + i];
        action->time_s = before->action.time_s + follows_after_s(before, &t->wait);
        action->wait = t->wait;
        action->wait.after = of.first + i;
        action->wait.follows = back || waiting_is_open(&before->action.wait);
        if (of.count == 1 && !moment_within(&a->frame, c, c->at, action->time_s))
            return;
        if (action->time_s > a->frame.end_s)
            continue;
        if (isinf(a->frame.end_s) && waiting_is_open(&action->wait))
            cursor_error(c, c->at, "nobody knows when this will be: set a 'duration' above the first section");
        if ((double)a->count >= SCHEDULE_ACTIONS_MAX)
            cursor_error(c, c->at, "there are more than %.0f acts", SCHEDULE_ACTIONS_MAX);
        if ((double)a->count >= SCHEDULE_ACTIONS_MAX || !plan(a, c, action, a->line_count - 1))
            return;
    }
}

static action_line *new_line(schedule_draft *a, const cursor *place)
{
    action_line *lines = boil_array_reserve(a->lines, &a->line_capacity, a->line_count, sizeof *lines);
    if (lines == NULL)
        return NULL;
    a->lines = lines;
    lines[a->line_count] = (action_line){.place = *place, .portions = 1};
    return &lines[a->line_count++];
}

static bool read_moment_of(void *draft, cursor *c, const char *what, double *s)
{
    return read_moment(draft, c, what, s);
}

action_reader *schedule_reader(schedule_draft *a)
{
    a->reader.moment = read_moment_of;
    a->reader.moments = a;
    return &a->reader;
}

static void enter(schedule_draft *a, const cursor *place, const timing *t, boil_action *action)
{
    bool is_load = action_load_of(action) != NULL;
    size_t first = a->count;
    if (is_load)
        a->reader.names.loaded[action->name] = true;
    action->line = (int)a->line_count;
    if (waiting_is_open(&t->wait) && a->lines[a->line_count - 1].portions > 1)
        cursor_error(place, place->at, "'one every' needs a moment that the clock says");
    else if (t->wait.follows)
        follow(a, place, t, action);
    else
        unroll(a, place, t, action);
    a->last.any = true;
    a->last.first = first;
    a->last.count = a->count - first;
    if (is_load)
        a->last_load = a->last;
}

/* The earliest act, and where its clock is written, if it is one. */
static void note_first(schedule_draft *a, const cursor *start, size_t length, double s)
{
    if (s >= a->first_s)
        return;
    a->first_s = s;
    a->first = *start;
    a->first_is_clock = memchr(start->at, ':', length) != NULL;
}

static void read_line(schedule_draft *a, cursor *when, cursor *doing)
{
    timing t;
    boil_action action = {0};
    cursor_done(when);
    cursor start = *when;
    if (!read_timing(a, when, &t) || (when != doing && !cursor_expect_end(when)))
        return;
    if (!t.wait.follows)
        note_first(a, &start, (size_t)(when->at - start.at), t.from_s);
    cursor_done(doing);
    cursor place = *doing;
    action_line *line = new_line(a, &place);
    action.wait = t.wait;
    if (line == NULL)
        messages_lost(place.messages);
    else if (action_read(schedule_reader(a), doing, &action, line))
        enter(a, &place, &t, &action);
}

void schedule_read(schedule_draft *a, cursor *when, cursor *doing)
{
    size_t lines = a->count;
    read_line(a, when, doing);
    a->last.any = true;
    if (a->count == lines)
        a->last.count = 0;
}

static int earlier(const void *left, const void *right)
{
    const schedule_planned *a = left, *b = right;
    if (a->action.time_s != b->action.time_s)
        return a->action.time_s < b->action.time_s ? -1 : 1;
    return a->action.order < b->action.order ? -1 : a->action.order > b->action.order;
}

static void order(schedule_draft *a)
{
    for (size_t i = 0; i < a->count; i++)
        a->list[i].action.order = i;
    if (a->count > 1)
        qsort(a->list, a->count, sizeof *a->list, earlier);
}

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

/* False when memory is refused. */
static bool attend(schedule_draft *a)
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

/* When an action and what it sets going are over. A load is lifted as slowly as it is lowered. */
static double ends(const schedule_planned *p)
{
    double lifts_s = isfinite(p->lifts_s) ? p->lifts_s : p->least_s;
    return (isinf(lifts_s) ? p->action.time_s : lifts_s) + action_takes_s(&p->action);
}

static double duration(const schedule_draft *a)
{
    double last = 0;
    if (isfinite(a->frame.end_s))
        return a->frame.end_s;
    for (size_t i = 0; i < a->count; i++)
        last = fmax(last, ends(&a->list[i]));
    return fmin(last + REST_AFTER_LAST_ACTION_S, SCHEDULE_LATEST_S);
}

/* What follows another knows it by its place in the order of time. False when memory is refused. */
static bool settle_follows(const schedule_draft *a, boil_schedule *schedule)
{
    size_t *place = calloc(a->count + 1, sizeof *place);
    if (place == NULL)
        return false;
    for (size_t i = 0; i < a->count; i++)
        place[a->list[i].action.order] = i;
    for (size_t i = 0; i < a->count; i++)
        if (schedule->actions[i].wait.follows)
            schedule->actions[i].wait.after = place[schedule->actions[i].wait.after];
    free(place);
    return true;
}

static bool hand_over(schedule_draft *a, boil_schedule *schedule, schedule_wording *w)
{
    w->lines = calloc(a->line_count + 1, sizeof *w->lines);
    w->line_of = calloc(a->count + 1, sizeof *w->line_of);
    if (w->lines == NULL || w->line_of == NULL)
        return false;
    for (size_t i = 0; i < a->line_count; i++) {
        memcpy(w->lines[i].words, a->lines[i].words, sizeof w->lines[i].words);
        w->lines[i].line = a->lines[i].place.line;
    }
    w->lines_count = a->line_count;
    for (size_t i = 0; i < a->count; i++) {
        w->line_of[i] = a->list[i].line;
        if (boil_schedule_add(schedule, &a->list[i].action) != BOIL_OK)
            return false;
    }
    if (!settle_follows(a, schedule))
        return false;
    for (size_t i = 0; i < a->breaks.count; i++)
        (void)boil_schedule_add_break(schedule, a->breaks.list[i].from_s, a->breaks.list[i].to_s);
    memcpy(w->breaks, a->breaks.words, sizeof w->breaks);
    w->names = a->reader.names.list;
    w->names_count = a->reader.names.count;
    a->reader.names = (load_names){0};
    return true;
}

bool schedule_finish(schedule_draft *a, boil_schedule *schedule, schedule_wording *w)
{
    *w = (schedule_wording){0};
    order(a);
    if (a->first_is_clock)
        moment_remark_late(&a->frame, &a->first, a->first_s);
    bool good = attend(a);
    boil_schedule_init(schedule, duration(a));
    return good && hand_over(a, schedule, w);
}
