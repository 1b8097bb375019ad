#include "practise/shift.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "acts/wait.h"

/* Rows to look at: every second, of a long shift as many in all; as close as an eruption wants while the level moves fast. */
#define ROWS_MOST 20000.0
#define ROW_LEAST_S 1.0
#define ROW_FAST_S 0.05

static boil_outcome stretch(boil_simulation *r)
{
    double t = boil_simulation_at(r).time_s;
    return boil_simulation_advance(r, nextafter(t, (double)INFINITY));
}

static double at(const boil_simulation *r)
{
    return boil_simulation_at(r).time_s;
}

static bool ends(const boil_simulation *r)
{
    return boil_simulation_at(r).over;
}

/* So that one stands at or before now, and the other beyond it. */
static boil_outcome keep_up(shift *s)
{
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && at(s->ahead) <= s->now_s && !ends(s->ahead)) {
        if (at(s->ahead) > at(s->stands))
            outcome = boil_simulation_advance(s->stands, at(s->ahead));
        if (outcome == BOIL_OK)
            outcome = stretch(s->ahead);
    }
    return outcome;
}

static void free_scenario(scenario *s)
{
    if (s != NULL)
        scenario_free(s);
    free(s);
}

static void swap(boil_simulation **a, boil_simulation **b)
{
    boil_simulation *other = *a;
    *a = *b;
    *b = other;
}

/* What then stands stands, by this scenario: as the journal has it, the same until now. Of what stood before nothing is kept. */
static boil_outcome stand(shift *s, scenario *then)
{
    boil_outcome outcome = boil_simulation_copy(s->then_stands, &then->schedule, &s->then_ahead);
    if (outcome != BOIL_OK)
        return outcome;
    swap(&s->stands, &s->then_stands);
    swap(&s->ahead, &s->then_ahead);
    free_scenario(s->scenario);
    s->scenario = then;
    return BOIL_OK;
}

/* The journal's scenario; NULL where something is wrong with it. */
static boil_outcome read_journal(const shift *s, messages *m, scenario **out)
{
    *out = calloc(1, sizeof **out);
    boil_outcome outcome = *out != NULL ? journal_read(&s->journal, JOURNAL_DONE, *out, m) : BOIL_NO_MEMORY;
    if (outcome == BOIL_OK)
        return outcome;
    free_scenario(*out);
    *out = NULL;
    return outcome;
}

/* From the start to now, by what the journal has. */
static boil_outcome start(shift *s)
{
    scenario *then;
    messages m;
    messages_init(&m);
    boil_outcome outcome = read_journal(s, &m, &then);
    messages_free(&m);
    if (outcome != BOIL_OK)
        return outcome;
    s->options.row_interval_s = fmax(ROW_LEAST_S, ceil(then->schedule.duration_s / ROWS_MOST));
    s->options.row_fast_s = ROW_FAST_S;
    outcome = boil_simulation_begin(&then->plant, &then->schedule, &s->options, &s->then_stands);
    if (outcome == BOIL_OK)
        outcome = stand(s, then);
    if (outcome == BOIL_OK)
        return keep_up(s);
    free_scenario(then);
    return outcome;
}

boil_outcome shift_begin(shift *s, const source *file, const scenario *read)
{
    *s = (shift){.options = boil_run_options_default()};
    if (!journal_begin(&s->journal, file, read))
        return BOIL_NO_MEMORY;
    return start(s);
}

void shift_free(shift *s)
{
    boil_simulation *all[] = {s->stands, s->ahead, s->then_stands, s->then_ahead};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++)
        boil_simulation_free(all[i]);
    free_scenario(s->scenario);
    journal_free(&s->journal);
    *s = (shift){0};
}

double shift_end_s(const shift *s)
{
    return s->scenario->schedule.duration_s;
}

bool shift_is_over(const shift *s)
{
    return ends(s->ahead) && s->now_s >= at(s->ahead);
}

double shift_next_change_s(const shift *s)
{
    return at(s->ahead);
}

boil_outcome shift_go_on(shift *s, double until_s)
{
    boil_outcome outcome = BOIL_OK;
    while (outcome == BOIL_OK && s->now_s < until_s && !shift_is_over(s)) {
        s->now_s = fmin(until_s, at(s->ahead));
        outcome = keep_up(s);
    }
    return outcome;
}

/* As the bath is from now to where the model stands ahead: within a stretch it does not change. */
static boil_wait_bath bath_now(const shift *s)
{
    const boil_history *h = boil_simulation_so_far(s->ahead);
    double then = (s->now_s + at(s->ahead)) / 2;
    boil_wait_bath b = {true, -(double)INFINITY};
    for (size_t i = h->quiet_count; i > 0; i--) {
        const boil_quiet_result *q = &h->quiet[i - 1];
        if (q->start_s > then)
            continue;
        b.boiling = q->end_s <= then;
        b.since_s = b.boiling ? q->end_s : q->start_s;
        break;
    }
    return b;
}

boil_outcome shift_go_on_when(shift *s, double until_s, const boil_wait *w, double asked_s, bool *due)
{
    boil_outcome outcome = BOIL_OK;
    *due = false;
    while (outcome == BOIL_OK && !*due && !shift_is_over(s)) {
        boil_wait_bath b = bath_now(s);
        b.since_s = fmax(b.since_s, asked_s);
        double due_s = fmax(s->now_s, boil_wait_due(w, asked_s, &s->scenario->plant.by_hand, &b));
        *due = due_s < at(s->ahead) && due_s <= until_s;
        double next_s = *due ? due_s : fmin(until_s, at(s->ahead));
        outcome = shift_go_on(s, next_s);
        if (next_s >= until_s)
            break;
    }
    return outcome;
}

boil_outcome shift_act(shift *s, const journal_act *act, messages *m)
{
    journal_act done = *act;
    scenario *then;
    boil_outcome outcome = shift_go_on(s, ceil(s->now_s));
    if (outcome != BOIL_OK)
        return outcome;
    done.time_s = s->now_s;
    if (!journal_add(&s->journal, &done))
        return BOIL_NO_MEMORY;
    outcome = read_journal(s, m, &then);
    if (outcome == BOIL_OK)
        outcome = boil_simulation_copy(s->stands, &then->schedule, &s->then_stands);
    if (outcome == BOIL_OK)
        outcome = stand(s, then);
    if (outcome == BOIL_OK)
        return keep_up(s);
    journal_drop(&s->journal);
    free_scenario(then);
    return outcome;
}

boil_outcome shift_go_back(shift *s)
{
    s->now_s = s->journal.count > 0 ? s->journal.acts[s->journal.count - 1].time_s : 0;
    journal_drop(&s->journal);
    return start(s);
}

const boil_history *shift_history(const shift *s)
{
    return boil_simulation_so_far(s->ahead);
}

boil_outcome shift_so_far(const shift *s, boil_history *out)
{
    boil_simulation *until = NULL;
    boil_schedule cut = s->scenario->schedule;
    cut.duration_s = s->now_s;
    *out = (boil_history){.end = BOIL_RUN_DONE};
    boil_outcome outcome = boil_simulation_copy(s->stands, &cut, &until);
    if (outcome == BOIL_OK) {
        boil_simulation_end_trace(until);
        outcome = boil_simulation_finish(until);
    }
    if (outcome == BOIL_OK)
        outcome = boil_simulation_hand_over(until, out);
    boil_simulation_free(until);
    return outcome;
}

shift_clock_text shift_clock(const shift *s, double time_s)
{
    shift_clock_text t;
    double tenths = floor(time_s * 10 + 1e-6), whole = floor(tenths / 10);
    moment_text moment = journal_moment(&s->journal, whole);
    size_t clock = strcspn(moment.text, "+");
    snprintf(t.text, sizeof t.text, "%.*s", (int)clock, moment.text);
    if (fmod(whole, 60) == 0 && tenths > whole * 10)
        TEXT_ADD(t.text, ":00");
    if (tenths > whole * 10)
        TEXT_ADD(t.text, ".%.0f", tenths - whole * 10);
    TEXT_ADD(t.text, "%s", moment.text + clock);
    return t;
}
