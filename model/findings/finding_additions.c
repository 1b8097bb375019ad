/* finding_additions.c -- water, salts and liquid: into a quiet bath, too fast, too much. */
#include <math.h>

#include "findings/finding_parts.h"

/* What of a kind was poured in a quiet spell: two that follow are no less than one. An addition that goes on over two spells counts
   in both, with all of it: on the side of more. */
static double poured_kg(const boil_history *h, const boil_quiet_result *q, bool water, double *first_s)
{
    double kg = 0;
    *first_s = (double)NAN;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        bool in_it = a->time_s + a->over_s >= q->start_s && !(a->time_s > q->end_s);
        if ((a->kind == BOIL_ACTION_WATER) != water || !in_it || !(a->quiet_poured_kg > 0))
            continue;
        kg += a->quiet_poured_kg;
        *first_s = fmin(*first_s, fmax(a->time_s, q->start_s));
    }
    return kg;
}

static void find_poured(boil_judged *j, const boil_quiet_result *q, bool water, bool grave)
{
    double first_s, kg = poured_kg(j->history, q, water, &first_s);
    if (kg > 0)
        boil_find(j,
                  &(boil_sighting){
                      .x = kg, .value = kg, .per_x = 1, .time_s = first_s, .most = grave ? BOIL_AT_WARNING : BOIL_AT_CAUTION});
}

/* Grave where what floats could take a third of the freeboard limit. */
void boil_judge_water_quiet(boil_judged *j)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->quiet_count; i++)
        find_poured(j, &h->quiet[i], true, h->quiet[i].left_m < j->plant->limits.freeboard_m * 2 / 3);
}

/* Two grains deep is a bed, less are grains: judgement. One that is said to be just as deep is a bed in whatever unit it is said. */
static bool lay_in_a_bed(const boil_history *h)
{
    const double grains_m = 2e-3, rounding = 1e-9;
    return h->summary.bed_max_m >= grains_m * (1 - rounding);
}

void boil_judge_salt_quiet(boil_judged *j)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->quiet_count; i++)
        find_poured(j, &h->quiet[i], false, lay_in_a_bed(h));
}

/* The surge of a slug is judged by the run: what it leaves of the freeboard. */
void boil_judge_salt_slug(boil_judged *j)
{
    const boil_history *h = j->history;
    double depth = j->plant->tank.depth_m;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        if (a->kind == BOIL_ACTION_SALTS && a->level_rise_m > 0.25 * (depth - h->summary.still_level_start_m))
            boil_find(j, &(boil_sighting){.x = boil_finding_used_up(j, a->freeboard_min_m),
                                          .value = a->freeboard_min_m,
                                          .limit = j->plant->limits.freeboard_m,
                                          .per_x = -boil_finding_freeboard_unit(j),
                                          .time_s = a->time_s,
                                          .least = a->freeboard_min_m <= 0 ? BOIL_AT_DANGER : BOIL_UNBOUND});
    }
}

void boil_judge_dry_salt(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double steam = s->dry_steam_kg_s.value, lifts = s->dry_steam_lifts_kg_s;
    if (!isnan(s->dry_wetted_s))
        boil_find(j, &(boil_sighting){.x = steam / lifts,
                                      .value = steam,
                                      .limit = lifts,
                                      .per_x = lifts,
                                      .time_s = s->dry_wetted_s,
                                      .worst_s = s->dry_steam_kg_s.time_s,
                                      .least = BOIL_AT_WARNING});
}

void boil_judge_salt_bed(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_SALT_BED, 0, 1);
    if (lay_in_a_bed(j->history))
        boil_find(j, &s);
}

void boil_judge_salt_much(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double depth = j->plant->tank.depth_m, highest = depth - j->plant->limits.freeboard_m;
    if (s->salts_added_kg > 0 && s->restored_level_m > highest)
        boil_find(j, &(boil_sighting){.x = (s->restored_level_m - highest) / boil_finding_freeboard_unit(j),
                                      .value = s->restored_level_m,
                                      .limit = highest,
                                      .per_x = boil_finding_freeboard_unit(j),
                                      .time_s = j->history->end_s,
                                      .needed_kg = s->restoring_water_kg});
}

double boil_finding_stopped_for(const boil_history *h, const boil_addition_result *a)
{
    if (a->kind != BOIL_ACTION_LIQUID || a->was_quiet_before)
        return 0;
    return isnan(a->recovery_s) ? h->end_s - a->boil_lost_s : a->recovery_s;
}

void boil_judge_liquid_stops(boil_judged *j)
{
    const boil_history *h = j->history;
    double limit = j->plant->limits.recovery_s;
    for (size_t i = 0; i < h->additions_count; i++) {
        double lasted = boil_finding_stopped_for(h, &h->additions[i]);
        if (lasted > 0)
            boil_find(j, &(boil_sighting){.x = lasted / limit,
                                          .value = lasted,
                                          .limit = limit,
                                          .per_x = limit,
                                          .time_s = h->additions[i].boil_lost_s,
                                          .worst_s = h->additions[i].boil_lost_s + lasted,
                                          .outside_s = lasted - limit,
                                          .needed_kg = j->needed.liquid_kg});
    }
}
