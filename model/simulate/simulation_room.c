#include <math.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "simulate/actions.h"
#include "simulate/run.h"
#include "simulate/simulation.h"

/* simulate/simulation_room.c -- the memory of a run: a block in which its lists lie one behind another. */

/* A block that is filled from its beginning; NULL: only its bytes are counted. */
typedef struct {
    char *block;
    size_t bytes;
} layout;

/* Room for so many items; those that there were come along. */
static void *place(layout *l, void *was, size_t count, size_t room, size_t size)
{
    const size_t unit = _Alignof(max_align_t);
    size_t at = l->bytes;
    l->bytes += (room * size + unit - 1) / unit * unit;
    if (l->block == NULL)
        return was;
    if (count > 0)
        memcpy(l->block + at, was, count * size);
    return l->block + at;
}

static void place_history(layout *l, boil_history *h, const boil_simulation_room *n)
{
    h->acts = place(l, h->acts, h->acts_count, n->acts, sizeof *h->acts);
    h->loads = place(l, h->loads, h->loads_count, n->loads, sizeof *h->loads);
    h->additions = place(l, h->additions, h->additions_count, n->additions, sizeof *h->additions);
    h->takes = place(l, h->takes, h->takes_count, n->takes, sizeof *h->takes);
    h->quiet = place(l, h->quiet, h->quiet_count, n->quiet, sizeof *h->quiet);
    h->valve_s = place(l, h->valve_s, h->valve_count, n->valve, sizeof *h->valve_s);
}

size_t boil_simulation_most_unknowns(const boil_simulation *r)
{
    return BOIL_STATE_FIXED + BOIL_CONDUCTION_UNKNOWNS_MAX * r->room.bodies;
}

static void place_all(layout *l, boil_simulation *r)
{
    const boil_simulation_room *n = &r->room;
    boil_bath *b = &r->bath;
    double **unknowns[] = {&r->y, &r->y_before, &r->rates, &r->size, &r->evaluated_y, &r->bubbleless_y, &r->record.unknowns};
    for (size_t i = 0; i < sizeof unknowns / sizeof unknowns[0]; i++)
        *unknowns[i] = place(l, *unknowns[i], r->unknowns, boil_simulation_most_unknowns(r), sizeof(double));
    b->bodies = place(l, b->bodies, b->bodies_count, n->bodies, sizeof *b->bodies);
    b->feeds = place(l, b->feeds, b->feeds_count, 2 * n->acts, sizeof *b->feeds); /* a load's rinse, and its hollows' */
    r->waiting = place(l, r->waiting, r->waiting_count, n->acts, sizeof *r->waiting);
    r->taps = place(l, r->taps, r->taps_count, n->additions, sizeof *r->taps);
    r->drums = place(l, r->drums, r->drums_count, n->additions, sizeof *r->drums);
    r->moves = place(l, r->moves, r->moves_count, n->moves, sizeof *r->moves);
    place_history(l, &r->history, n);
}

boil_outcome boil_simulation_lay_out(boil_simulation *r)
{
    layout counted = {NULL, 0};
    place_all(&counted, r);
    boil_simulation_memory *m = &r->memory, had = *m;
    if (counted.bytes > m->bytes)
        *m = (boil_simulation_memory){malloc(counted.bytes), counted.bytes};
    if (m->block == NULL) {
        *m = had;
        return BOIL_NO_MEMORY;
    }
    place_all(&(layout){m->block, 0}, r);
    if (m->block != had.block)
        free(had.block);
    return BOIL_OK;
}

/* Of each kind of action at most so many results, and of all but loads as many taps and names under which something is kept. */
static boil_simulation_room asked_by(const boil_schedule *s)
{
    boil_simulation_room n = {.acts = s->count};
    for (size_t i = 0; i < s->count; i++)
        n.loads += s->actions[i].kind == BOIL_ACTION_LOAD;
    n.additions = n.takes = s->count - n.loads;
    return n;
}

/* Loads that go in within the longest time that one is to stay. */
static size_t together(const boil_schedule *s)
{
    double longest_s = 0;
    size_t now = 0, most = 0, first = 0;
    for (size_t i = 0; i < s->count; i++)
        if (s->actions[i].kind == BOIL_ACTION_LOAD)
            longest_s = fmax(longest_s, s->actions[i].is.load.immersed_s + s->actions[i].is.load.lowering_s);
    for (size_t i = 0; i < s->count; i++) {
        for (; s->actions[first].time_s + longest_s < s->actions[i].time_s; first++)
            now -= s->actions[first].kind == BOIL_ACTION_LOAD;
        now += s->actions[i].kind == BOIL_ACTION_LOAD;
        most = now > most ? now : most;
    }
    return most;
}

/* How often a valve may be expected to open and shut: as its period has it, or as the bath's answer, a minute, does. */
static size_t valve_moves(const boil_water_control *c, double duration_s)
{
    const double answers_s = 60, most = 1e5;
    if (c->mode == BOIL_WATER_CONTROL_NONE)
        return 0;
    double period_s = c->mode == BOIL_WATER_CONTROL_PROPORTIONED ? c->period_s : answers_s;
    return (size_t)fmin(most, 2 * duration_s / period_s);
}

/* One that waits goes in beside the next; of a shop that has hundreds in at once room is found as they come. */
void boil_simulation_expect(boil_simulation *r)
{
    enum { WAITS = 1, MOST = 256, SOME = 8 };
    size_t loads = together(r->schedule) + WAITS;
    r->room = asked_by(r->schedule);
    r->room.bodies = BOIL_ACTIONS_BODIES * (loads < MOST ? loads : MOST);
    r->room.moves = SOME;
    r->room.quiet = SOME + 2 * r->schedule->count;
    r->room.valve = SOME + valve_moves(&r->plant.control, r->schedule->duration_s);
}

static size_t larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

void boil_simulation_heed_schedule(boil_simulation *r)
{
    boil_simulation_room *n = &r->room, asked = asked_by(r->schedule);
    n->acts = larger(n->acts, asked.acts);
    n->loads = larger(n->loads, asked.loads);
    n->additions = larger(n->additions, asked.additions);
    n->takes = larger(n->takes, asked.takes);
}

static size_t enough(size_t room, size_t wanted)
{
    while (room < wanted)
        room *= 2;
    return room;
}

/* Of the schedule, that may go in at this moment. */
static size_t loads_due(const boil_simulation *r)
{
    const boil_schedule *s = r->schedule;
    size_t count = 0;
    for (size_t i = 0; i < r->waiting_count; i++)
        count += s->actions[r->waiting[i]].kind == BOIL_ACTION_LOAD;
    for (size_t i = r->next_action; i < s->count && s->actions[i].time_s <= r->t; i++)
        count += s->actions[i].kind == BOIL_ACTION_LOAD;
    return count;
}

/* A stretch changes its mode as it begins and as it ends; a valve moves as it begins, and is told two moves then and one as it ends. */
boil_outcome boil_simulation_make_room(boil_simulation *r)
{
    enum { MODES = 2, MOVES = 1, TOLD = 3 };
    const boil_simulation_room before = r->room;
    boil_simulation_room *n = &r->room;
    n->bodies = enough(n->bodies, r->bath.bodies_count + BOIL_ACTIONS_BODIES * loads_due(r));
    n->moves = enough(n->moves, r->moves_count + TOLD);
    n->quiet = enough(n->quiet, r->history.quiet_count + MODES);
    n->valve = enough(n->valve, r->history.valve_count + MOVES);
    if (memcmp(n, &before, sizeof before) == 0)
        return BOIL_OK;
    const boil_simulation_memory had = r->memory;
    r->memory = (boil_simulation_memory){NULL, 0}; /* lists are not moved within one block */
    boil_outcome outcome = boil_simulation_lay_out(r);
    if (outcome == BOIL_OK) {
        free(had.block);
        return BOIL_OK;
    }
    r->room = before;
    r->memory = had;
    return outcome;
}

boil_outcome boil_simulation_hand_over(boil_simulation *r, boil_history *out)
{
    boil_history *h = &r->history;
    const boil_simulation_room n = {.acts = h->acts_count,
                                    .loads = h->loads_count,
                                    .additions = h->additions_count,
                                    .takes = h->takes_count,
                                    .quiet = h->quiet_count,
                                    .valve = h->valve_count};
    layout l = {NULL, 0};
    *out = (boil_history){.end = BOIL_RUN_DONE};
    place_history(&l, h, &n);
    void *lists = malloc(l.bytes + 1); /* also of none */
    if (lists == NULL)
        return BOIL_NO_MEMORY;
    place_history(&(layout){lists, 0}, h, &n);
    *out = *h;
    out->lists = lists;
    *h = (boil_history){.end = BOIL_RUN_DONE};
    r->record.rows_capacity = 0;
    return BOIL_OK;
}
