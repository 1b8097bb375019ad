/* finding_additions.c -- water, salts and liquid: into a quiet bath, too fast, too much. */
#include <math.h>

#include "findings/finding_parts.h"

static void judge_quiet_pours(boil_judged *j, bool water)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        if ((a->kind == BOIL_ACTION_WATER) == water && a->quiet_poured_kg > 0.01 * a->mass_kg)
            boil_find(j, BOIL_SEVERITY_WARNING, a->time_s, a->quiet_poured_kg, 0);
    }
}

void boil_judge_water_quiet(boil_judged *j)
{
    judge_quiet_pours(j, true);
}

void boil_judge_salt_quiet(boil_judged *j)
{
    judge_quiet_pours(j, false);
}

/* The surge of a slug is judged by the run: what it leaves of the freeboard. */
void boil_judge_salt_slug(boil_judged *j)
{
    const boil_history *h = j->history;
    double limit = j->plant->limits.freeboard_m, depth = j->plant->tank.depth_m;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        bool rises = a->level_rise_m > 0.25 * (depth - h->summary.still_level_start_m);
        if (a->kind == BOIL_ACTION_SALTS && rises && a->freeboard_min_m < limit)
            boil_find(j, a->freeboard_min_m <= 0 ? BOIL_SEVERITY_DANGER : BOIL_SEVERITY_WARNING, a->time_s, a->freeboard_min_m,
                      limit);
    }
}

void boil_judge_dry_salt(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double steam = s->dry_steam_kg_s.value, lifts = s->dry_steam_lifts_kg_s;
    if (!isnan(s->dry_wetted_s))
        boil_find(j, steam > lifts ? BOIL_SEVERITY_DANGER : BOIL_SEVERITY_WARNING, s->dry_wetted_s, steam, lifts);
}

/* Two grains deep is a bed, less are grains: judgement. */
void boil_judge_salt_bed(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    const double grains_m = 2e-3;
    if (s->bed_max_m > grains_m)
        boil_find(j, s->bed_superheat_max_K.value > 10 ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, (double)NAN,
                  s->bed_max_m, grains_m);
}

void boil_judge_salt_much(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double depth = j->plant->tank.depth_m, highest = depth - j->plant->limits.freeboard_m;
    if (s->salts_added_kg > 0 && s->restored_level_m > highest)
        boil_find_needing(j, s->restored_level_m > depth ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, j->history->end_s,
                          s->restored_level_m, highest, (double)NAN, s->restoring_water_kg);
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
        if (lasted > limit)
            boil_find_needing(j, BOIL_SEVERITY_CAUTION, h->additions[i].boil_lost_s, lasted, limit, (double)NAN,
                              j->needed.liquid_kg);
    }
}
