#include <math.h>
#include <string.h>

#include "practise/screen/parts.h"

/* How slowly an eruption is shown, and how long at the least, s of the shift: judgement, so that the eye can follow. */
#define SLOW_SPEED 0.5
#define SLOW_S 6.0
#define LOOK_WALL_S 1.0 /* between two looks at what is found: each judges the whole shift */

double screen_speed(const screen *s)
{
    return s->slow && s->running ? fmin(SLOW_SPEED, s->speed) : s->speed;
}

bool screen_memory(screen *s, bool good)
{
    s->outcome.refused = s->outcome.refused || !good;
    s->done = s->done || !good;
    return good;
}

/* What is found now. */
static void look(screen *s)
{
    if (s->shift->now_s > s->found_s)
        screen_memory(s, happened_found(s->shift, s->found_s, &s->found, &s->warned));
    s->found_s = s->shift->now_s;
}

/* The moment of a lesson at which it asks, and has not yet; infinite: there is none. */
static double next_question(const screen *s)
{
    const lesson *l = &s->o->read->lesson;
    return s->asked < l->stops_count ? l->stops[s->asked].at_s : (double)INFINITY;
}

void screen_forget(screen *s)
{
    happenings_free(&s->happened);
    happenings_free(&s->warned);
    s->found = (happened_findings){{0}};
    s->found_s = -1;
    s->slow = s->erupts = s->met_rim = s->waits = false;
    const journal *j = &s->shift->journal;
    const double now_s = s->shift->now_s;
    for (s->asked = 0; next_question(s) < now_s;)
        s->asked++;
    screen_memory(s, happened_since(s->shift, -1, s->o->units, &s->happened));
    for (size_t i = 0; i < j->count; i++)
        screen_memory(s, happened_add(&s->happened, j->acts[i].time_s, j->acts[i].doing));
    if (now_s > 0)
        look(s);
}

void screen_note(screen *s, const char *words)
{
    screen_memory(s, happened_add(&s->happened, s->shift->now_s, words));
}

static panel now(const screen *s)
{
    return panel_of(s->shift, shift_history(s->shift), s->shift->now_s);
}

/* For the first time that it comes over the rim the clock stands when it is under it again, or the slow span is over. */
static void stand_once(screen *s)
{
    s->running = s->running && s->met_rim;
    s->met_rim = true;
}

/* As what floats begins to let go, or the bath comes over the rim: for a while slowly. */
static void slow_down(screen *s, bool was_over)
{
    panel p = now(s);
    bool over = p.row.freeboard_m <= 0;
    bool erupts = over || (p.row.boiling && p.row.layer_kg > PANEL_LEAST_KG && p.row.left_m < p.limit_m);
    bool ends = s->slow && s->shift->now_s > s->slow_until_s;
    if (erupts && !s->erupts) {
        s->slow = true;
        s->slow_until_s = s->shift->now_s + SLOW_S;
    } else if (ends) {
        s->slow = false;
    }
    s->erupts = erupts;
    if ((was_over && !over) || (ends && over))
        stand_once(s);
}

/* The first row in which it is over the rim, from now to then; then, if it is in none. */
static double until_rim(const screen *s, double then_s)
{
    const boil_history *h = shift_history(s->shift);
    size_t i = h->rows_count;
    while (i > 0 && h->rows[i - 1].time_s > s->shift->now_s)
        i--;
    for (; i < h->rows_count && h->rows[i].time_s < then_s; i++)
        if (h->rows[i].freeboard_m <= 0)
            return fmax(h->rows[i].time_s, s->shift->now_s);
    return then_s;
}

/* The clock stands, and what is asked stands below and among what happened. Who has just done something has answered. */
static void ask(screen *s)
{
    const double just_s = 120;
    const journal *j = &s->shift->journal;
    if (j->count > 0 && j->acts[j->count - 1].time_s > s->shift->now_s - just_s) {
        s->asked++;
        return;
    }
    const char *words = s->o->read->lesson.stops[s->asked++].asks;
    snprintf(s->message.text, sizeof s->message.text, "%s", words);
    screen_note(s, words);
    s->running = false;
}

/* To a moment, but no further than to the next change of the bath, to the rim, or to a question. */
static void step(screen *s, double until_s)
{
    double from_s = s->shift->now_s;
    bool due = false, was_over = now(s).row.freeboard_m <= 0;
    double question_s = next_question(s), next_s = fmin(fmin(until_s, question_s), shift_next_change_s(s->shift));
    if (!was_over)
        next_s = until_rim(s, next_s);
    boil_outcome outcome =
        s->waits ? shift_go_on_when(s->shift, next_s, &s->waited.wait, s->asked_s, &due) : shift_go_on(s->shift, next_s);
    if (!screen_memory(s, outcome == BOIL_OK) || !screen_memory(s, happened_since(s->shift, from_s, s->o->units, &s->happened)))
        return;
    if (due)
        screen_do_waiting(s);
    slow_down(s, was_over);
    if (s->shift->now_s >= question_s)
        ask(s);
}

void screen_advance(screen *s, double wall_s, double now_wall_s)
{
    bool was_slow = s->slow;
    double until_s = s->shift->now_s + wall_s * screen_speed(s);
    while (!s->done && s->running && s->slow == was_slow && s->shift->now_s < until_s && !shift_is_over(s->shift))
        step(s, until_s);
    if (shift_is_over(s->shift))
        s->running = false;
    if (now_wall_s - s->looked_s < LOOK_WALL_S && s->running)
        return;
    s->looked_s = now_wall_s;
    look(s);
}

/* In strides, each looked at. */
void screen_to_next(screen *s)
{
    size_t before = s->happened.count + s->warned.count;
    while (!s->done && s->happened.count + s->warned.count == before && !shift_is_over(s->shift)) {
        step(s, happened_next_look_s(s->shift));
        look(s);
    }
    s->running = false;
}
