/* A plant and a list of jobs drawn by number, as a person would write them for `plan`: the same number, the same text. */
#ifndef TESTS_PLAN_DRAWN_SHIFT_H
#define TESTS_PLAN_DRAWN_SHIFT_H

#include <math.h>
#include <stdbool.h>
#include <stdio.h>

#include "random/stream.h"

enum { SHIFT_JOBS = 30, SHIFT_BREAKS = 2, SHIFT_PLANTS = 20, SHIFT_START_MIN = 360 };

typedef struct {
    double mass_kg, size_mm, basket_kg;
    int shape, pieces;         /* shape: of shift_shapes */
    int least_min, most_min;   /* at the bath's temperature */
    int earliest_min, due_min; /* from the start; due 0: none */
    bool must, may_split, may_share;
} shift_job;

typedef struct {
    double length_m, width_m, level_m, depth_m, boils_C, heat_kW, room_C, recovery_s;
    int heated;                                /* of shift_heats */
    int positions, hoist_s, settle_s, end_min; /* end 0: open */
    double water_kg_min, drag_mL_m2;           /* drag 0: the film that stays */
    bool valve;
    shift_job jobs[SHIFT_JOBS];
    int jobs_count;
    int breaks_min[SHIFT_BREAKS][2], breaks_count;
} drawn_shift;

static const char *const shift_shapes[] = {"plate", "bar", "ball"};

/* Gas below, electric inside, steam inside, and gas that a thermostat sets: what stands before the figure and behind it. */
static const struct {
    const char *before, *after;
} shift_heats[] = {{"source = gas\ninput", "kW\nefficiency = 60 %"},
                   {"source = electric\ninput", "kW"},
                   {"source = steam\nsteam temperature = 185 degC\ncoil area", "m2"},
                   {"source = gas\ninput", "kW\nefficiency = 60 %\ncontrol = thermostat\nset point = 160 degC"}};

/* Wide, deep, weak, small or like a shop's trough; the heat brings back what a rule of thumb hangs in, in about the limit. */
static inline void draw_plant(drawn_shift *s, size_t number)
{
    static const double lengths[] = {2.6, 1.0, 1.6, 0.8, 1.8}, levels[] = {0.40, 0.9, 0.5, 0.35, 0.5};
    stream r = {number + 500};
    size_t kind = number % 5;
    s->length_m = stream_rounded(lengths[kind] * stream_between(&r, 0.9, 1.15));
    s->width_m = stream_rounded(s->length_m * stream_between(&r, 0.45, 0.9));
    s->level_m = stream_rounded(levels[kind] * stream_between(&r, 0.9, 1.15));
    s->depth_m = stream_rounded(s->level_m + stream_between(&r, 0.25, 0.4) + 0.2 * (kind == 1));
    s->boils_C = stream_rounded(kind == 2 ? stream_between(&r, 120, 132) : stream_between(&r, 136, 144));
    s->heated = (int)(number / 5 % 4);
    s->room_C = stream_rounded(stream_between(&r, 10, 32));
    s->recovery_s = stream_rounded(stream_between(&r, 90, 240));
    double area = s->length_m * s->width_m, load_kg = 60 * area * s->level_m;
    s->heat_kW = 24 * area + stream_between(&r, 0.5, 1.1) * load_kg * 0.49 * (s->boils_C - s->room_C) / s->recovery_s;
    s->positions = 1 + (int)stream_below(&r, 4);
    s->valve = number % 7 == 6;
}

/* What the heater's line has to say for the heat. */
static inline double shift_heat_stated(const drawn_shift *s)
{
    const double coil_kW_m2K = 0.85, efficiency = 0.6;
    if (s->heated == 2)
        return s->heat_kW / (coil_kW_m2K * (185 - s->boils_C));
    return s->heated == 1 ? s->heat_kW : s->heat_kW / efficiency;
}

static inline shift_job draw_job(stream *r, const drawn_shift *s, size_t number)
{
    double load_kg = 60 * s->length_m * s->width_m * s->level_m;
    bool large = stream_chance(r, 0.15);
    int least = 6 + (int)stream_below(r, 20);
    shift_job j = {.mass_kg = stream_rounded(load_kg * (large ? stream_between(r, 0.6, 1.8) : stream_between(r, 0.08, 0.5))),
                   .size_mm = stream_rounded(stream_spread(r, 2, 25)),
                   .shape = (int)stream_below(r, 3),
                   .pieces = 8 + (int)stream_below(r, 200),
                   .least_min = least,
                   .most_min = least + 8 + (int)stream_below(r, 25)};
    j.basket_kg = stream_rounded(0.1 * load_kg * boil_stream_share(r));
    j.may_split = large || stream_chance(r, 0.2);
    j.may_share = stream_chance(r, 0.6);
    j.earliest_min = stream_chance(r, 0.3) ? (int)stream_below(r, 60) : 0;
    j.due_min = stream_chance(r, 0.3) ? j.earliest_min + 90 + 25 * (int)number + (int)stream_below(r, 120) : 0;
    j.must = j.due_min > 0 && stream_chance(r, 0.4);
    return j;
}

/* Thin parts that go in dry and drain badly, in one list of four; by numbers of its own, so that all else is as without. */
static inline void draw_salts(drawn_shift *s, size_t number)
{
    stream r = {number + 70000};
    if (number % 4 != 3)
        return;
    s->drag_mL_m2 = stream_rounded(stream_between(&r, 150, 450));
    for (int i = 0; i < s->jobs_count; i++)
        s->jobs[i].size_mm = stream_rounded(fmax(0.3, s->jobs[i].size_mm / 8));
}

static inline void draw_shift(drawn_shift *s, size_t number, int most_jobs)
{
    stream r = {number + 9000};
    *s = (drawn_shift){.jobs_count = 1 + (int)stream_below(&r, (size_t)most_jobs)};
    draw_plant(s, number % SHIFT_PLANTS);
    s->hoist_s = 20 + 10 * (int)stream_below(&r, 8);
    s->settle_s = 10 * (int)stream_below(&r, 10);
    s->water_kg_min = stream_rounded(60 * stream_between(&r, 1.1, 4) * s->heat_kW / 2500);
    for (int i = 0; i < s->jobs_count; i++)
        s->jobs[i] = draw_job(&r, s, (size_t)i);
    draw_salts(s, number);
    s->breaks_count = (int)stream_below(&r, SHIFT_BREAKS + 1);
    for (int i = 0; i < s->breaks_count; i++) {
        s->breaks_min[i][0] = 60 + 150 * i + (int)stream_below(&r, 60);
        s->breaks_min[i][1] = s->breaks_min[i][0] + 5 + (int)stream_below(&r, 25);
    }
    s->end_min = stream_chance(&r, 0.5) ? 150 + 30 * s->jobs_count : 0;
}

static inline void write_clock(FILE *to, const char *before, int min)
{
    fprintf(to, "%s%d:%02d", before, (min + SHIFT_START_MIN) / 60 % 24, (min + SHIFT_START_MIN) % 60);
}

static inline void write_job(FILE *to, const shift_job *j, int number, double drag_mL_m2)
{
    fprintf(to, "j%d %.6g kg, %s %.4g mm, %d pieces, for %d min to %d min, basket %.4g kg", number, j->mass_kg,
            shift_shapes[j->shape], j->size_mm, j->pieces, j->least_min, j->most_min, j->basket_kg);
    write_clock(to, ", from ", j->earliest_min);
    if (j->due_min > 0)
        write_clock(to, ", due ", j->due_min);
    if (drag_mL_m2 > 0)
        fprintf(to, ", rinse 0 mL/m2, drag-out %.4g mL/m2", drag_mL_m2);
    fprintf(to, "%s%s%s\n", j->must ? ", must" : "", j->may_split ? ", may split" : "", j->may_share ? ", may share" : "");
}

static inline void write_shift(const drawn_shift *s, FILE *to)
{
    fprintf(to, "times = by the clock\nstart = 6:00\n[tank]\nlength = %.4g m\nwidth = %.4g m\nlevel = %.4g m\ndepth = %.4g m\n",
            s->length_m, s->width_m, s->level_m, s->depth_m);
    fprintf(to, "wall = 6 mm\ninsulation = 50 mm\nheated = %s\npositions = %d\n",
            s->heated == 0 || s->heated == 3 ? "from below" : "inside", s->positions);
    fprintf(to, "[bath]\nsalts = 80 %% NaOH, 15 %% NaNO3, 5 %% NaNO2\nboiling point = %.4g degC\n[heat]\n", s->boils_C);
    fprintf(to, "%s = %.4g %s\n", shift_heats[s->heated].before, shift_heat_stated(s), shift_heats[s->heated].after);
    fprintf(to, "[room]\ntemperature = %.4g degC\n[limits]\nrecovery = %.4g s\nfreeboard = 0.1 m\n", s->room_C, s->recovery_s);
    fprintf(to, "boiling point = %.4g degC to %.4g degC\n", s->boils_C - 4, s->boils_C + 5);
    if (s->valve)
        fprintf(to, "[water control]\nset point = %.4g degC\nrate = %.4g kg/min\nonly while boiling = yes\n", s->boils_C,
                s->water_kg_min);
    fprintf(to, "[plan]\nhoist = %d s\nsettle = %d s\nwater = %.4g kg/min\n", s->hoist_s, s->settle_s, s->water_kg_min);
    if (s->end_min > 0)
        write_clock(to, "end = ", s->end_min);
    fprintf(to, "\n%s", s->breaks_count > 0 ? "[breaks]\n" : "");
    for (int i = 0; i < s->breaks_count; i++) {
        write_clock(to, "", s->breaks_min[i][0]);
        write_clock(to, " to ", s->breaks_min[i][1]);
        fputc('\n', to);
    }
    fprintf(to, "[jobs]\n");
    for (int i = 0; i < s->jobs_count; i++)
        write_job(to, &s->jobs[i], i + 1, s->drag_mL_m2);
}

#endif
