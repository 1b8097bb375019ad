/* finding_bath.c -- the bath itself and its tank: off its band, too weak, too dry, too deep, crystallised. */
#include <math.h>

#include "findings/finding_parts.h"
#include "transfer/flash.h"

void boil_judge_too_hot(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_TOO_HOT, j->plant->limits.boiling_point_high_K, 1);
    boil_find(j, &s);
}

void boil_judge_too_cool(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_TOO_COOL, j->plant->limits.boiling_point_low_K, -1);
    boil_find(j, &s);
}

/* Whatever goes in below one water to each hydroxide meets a melt. */
void boil_judge_nearly_dry(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_NEARLY_DRY, 0, -1);
    if (j->history->summary.watched[BOIL_WATCH_NEARLY_DRY].fed > BOIL_SEVERITY_WARNING)
        s.least = BOIL_AT_DANGER;
    boil_find(j, &s);
}

/* The coldest that is at hand: of the hose, of the valve; else as cold as the room. */
static double water_K(const boil_judged *j)
{
    double coldest = (double)NAN;
    for (size_t i = 0; i < j->schedule->count; i++)
        if (j->schedule->actions[i].kind == BOIL_ACTION_WATER)
            coldest = fmin(coldest, j->schedule->actions[i].is.water.temperature_K);
    if (j->plant->control.mode != BOIL_WATER_CONTROL_NONE)
        coldest = fmin(coldest, j->plant->control.water_K);
    return !isnan(coldest) ? coldest : fmax(j->plant->ambient.temperature_K, 273.15);
}

/* When water was first poured onto a bath that boils lower; NaN: never. A valve that is not off will. */
static double poured_s(const boil_judged *j, double below_K)
{
    const boil_history *h = j->history;
    for (size_t i = 0; i < h->additions_count; i++)
        if (h->additions[i].kind == BOIL_ACTION_WATER && h->additions[i].boiling_point_K < below_K)
            return h->additions[i].time_s;
    return j->plant->control.mode != BOIL_WATER_CONTROL_NONE ? h->summary.watched[BOIL_WATCH_TOO_COOL].worst.time_s
                                                             : (double)NAN;
}

/* Of water at the boil: above the turning point it feeds the boil, below it quenches it. A notice where the shop means to work so
   weak and pours none. */
void boil_judge_water_quenches(boil_judged *j)
{
    double from_K = water_K(j), turns_K, low_K = j->plant->limits.boiling_point_low_K;
    boil_conditions air = boil_conditions_at(j->plant->ambient.pressure_Pa, j->plant->elevation_factor);
    const boil_watched *w = &j->history->summary.watched[BOIL_WATCH_TOO_COOL];
    if (isnan(w->worst.value) ||
        boil_flash_turning_point(&air, j->plant->charge.blend, j->plant->dilution_factor, from_K, &turns_K) != BOIL_OK)
        return;
    double least_K = low_K - w->worst.value, poured = poured_s(j, turns_K);
    bool meant = low_K <= least_K;
    boil_find(j, &(boil_sighting){.x = turns_K - least_K,
                                  .value = least_K,
                                  .limit = turns_K,
                                  .per_x = -1,
                                  .time_s = isnan(poured) ? w->worst.time_s : poured,
                                  .worst_s = w->worst.time_s,
                                  .most = !isnan(poured) ? BOIL_AT_WARNING
                                          : meant        ? BOIL_AT_NOTICE
                                                         : BOIL_AT_CAUTION});
}

/* Wide and shallow is well, tall and narrow boils over: common practice, no source; the limit is judgement, too. */
void boil_judge_tall(boil_judged *j)
{
    double ratio = j->plant->tank.level_m / sqrt(boil_tank_area(&j->plant->tank));
    boil_find(j, &(boil_sighting){.x = ratio, .value = ratio, .per_x = 1, .time_s = (double)NAN, .worst_s = (double)NAN});
}

/* What a stir may set free against the room below the rim. */
void boil_judge_superheat(boil_judged *j)
{
    double rise_m = j->history->summary.stored_rise_m;
    double room_m = j->plant->tank.depth_m - j->history->summary.still_level_start_m;
    boil_find(j, &(boil_sighting){.x = rise_m / room_m,
                                  .value = rise_m,
                                  .limit = room_m,
                                  .per_x = room_m,
                                  .time_s = (double)NAN,
                                  .worst_s = (double)NAN});
}

void boil_judge_crystals(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_CRYSTALS, 0, 1);
    s.needed_kg = j->history->summary.crystals_max_kg;
    boil_find(j, &s);
}

/* Nobody has looked: what fell out overnight lies and hangs there as the run begins. */
void boil_judge_salt_unstated(boil_judged *j)
{
    boil_initial_state bath;
    if (j->plant->salt_stated || boil_plant_initial(j->plant, &bath) != BOIL_OK)
        return;
    double falls_out_K = boil_solubility_crystals_from(&bath.mixture);
    boil_find(j, &(boil_sighting){
                     .x = falls_out_K - bath.temperature_K, .value = bath.temperature_K, .limit = falls_out_K, .per_x = -1});
}

/* A warning is for who puts anything onto it. */
void boil_judge_crust(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_CRUST, 0, 1);
    bool met = j->history->summary.watched[BOIL_WATCH_CRUST].fed > BOIL_SEVERITY_CAUTION;
    s.most = met ? BOIL_AT_WARNING : BOIL_AT_CAUTION;
    boil_find(j, &s);
}

/* Half a kelvin over its boil, as the crust broke, is a kilogram of steam from a tonne at once: judgement. Where the heat comes from
   the side the floor stays cold, and the crust remains. */
void boil_judge_restart(boil_judged *j)
{
    const double harmless_K = 0.5;
    const boil_summary *of = &j->history->summary;
    const boil_watched *w = &of->watched[BOIL_WATCH_RESTART];
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_RESTART, 0, 1);
    if (!(of->heated_crystals_kg.value > BOIL_GRADING_HAZE * of->bath_mass_start_kg))
        return;
    bool held = of->crust_superheat_K.value > harmless_K;
    s.least = w->fed > 0 ? BOIL_AT_DANGER : held ? BOIL_AT_WARNING : BOIL_AT_CAUTION;
    s.limit = boil_gradings[BOIL_FOUND_RESTART].from[BOIL_SEVERITY_WARNING];
    boil_find(j, &s);
}

void boil_judge_floor_hot(boil_judged *j)
{
    boil_sighting s = boil_sighting_watched(j, BOIL_WATCH_FLOOR_HOT, 0, 1);
    boil_find(j, &s);
}
