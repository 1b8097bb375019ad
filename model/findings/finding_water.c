/* finding_water.c -- what keeps the bath: water by its valve or by hand, too little, too much at once; and a thermostat. */
#include <math.h>

#include "findings/finding_parts.h"

static bool is_controlled(const boil_judged *j)
{
    return j->plant->control.mode != BOIL_WATER_CONTROL_NONE && j->history->end_s > 0;
}

/* A valve that opens more often than every five minutes wears and overshoots: judgement. */
void boil_judge_valve_hunts(boil_judged *j)
{
    size_t openings = j->history->summary.valve_openings;
    double per_hour = (double)openings / (j->history->end_s / 3600);
    if (is_controlled(j) && j->plant->control.mode == BOIL_WATER_CONTROL_ON_OFF && openings > 4)
        boil_find(
            j, &(boil_sighting){.x = per_hour, .value = per_hour, .per_x = 1, .time_s = (double)NAN, .worst_s = (double)NAN});
}

/* A caution once the bath has left its band. */
void boil_judge_valve_short(boil_judged *j)
{
    const double often = 0.2;
    const boil_water_control *c = &j->plant->control;
    const boil_summary *s = &j->history->summary;
    double too_warm = c->set_point_K + fmax(2 * c->differential_K, 2);
    bool out = s->boiling_point_end_K > j->plant->limits.boiling_point_high_K;
    if (is_controlled(j) && s->valve_open_share > often)
        boil_find(j, &(boil_sighting){.x = s->temperature_end_K - too_warm,
                                      .value = s->temperature_end_K,
                                      .limit = c->set_point_K,
                                      .time_s = j->history->end_s,
                                      .most = out ? BOIL_AT_CAUTION : BOIL_AT_NOTICE});
}

/* Grave where what floats could take a third of the freeboard limit, or where nothing shuts the valve and it goes on. */
void boil_judge_valve_quiet(boil_judged *j)
{
    const double long_s = 300;
    const boil_water_control *c = &j->plant->control;
    double quiet_kg = j->history->summary.valve_quiet_kg;
    if (!is_controlled(j) || !(quiet_kg > 0))
        return;
    const boil_quiet_result *least = boil_finding_least_left(j->history);
    bool goes_on = !c->only_while_boiling && quiet_kg > c->rate_kg_s * long_s;
    bool grave = goes_on || (least != NULL && least->left_m < j->plant->limits.freeboard_m * 2 / 3);
    boil_find(j, &(boil_sighting){.x = quiet_kg,
                                  .value = quiet_kg,
                                  .per_x = 1,
                                  .time_s = (double)NAN,
                                  .worst_s = (double)NAN,
                                  .most = grave ? BOIL_AT_WARNING : BOIL_AT_CAUTION});
}

/* The boiling point on its way out of the band, for want of water and nothing else. */
void boil_judge_water_short(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double high_K = j->plant->limits.boiling_point_high_K, room_K = high_K - s->boiling_point_start_K;
    bool fed = s->salts_added_kg > 0 || s->liquid_added_kg > 0 || s->undissolved_max_kg > 0;
    if (!(room_K > 0) || fed || !(s->boiling_share > 0))
        return;
    boil_find(j, &(boil_sighting){.x = (s->boiling_point_end_K - s->boiling_point_start_K) / room_K,
                                  .value = s->boiling_point_end_K,
                                  .limit = high_K,
                                  .per_x = room_K,
                                  .time_s = j->history->end_s,
                                  .needed_kg = s->restoring_water_kg});
}

/* A caution where a load, which stirs it, or a turn of the heat met it. */
void boil_judge_water_fast(boil_judged *j)
{
    boil_sighting s =
        boil_sighting_watched(j, BOIL_WATCH_WATER_FAST, j->plant->limits.freeboard_m, -boil_finding_freeboard_unit(j));
    s.most = j->history->summary.watched[BOIL_WATCH_WATER_FAST].met ? BOIL_AT_CAUTION : BOIL_AT_NOTICE;
    boil_find(j, &s);
}

static double first_stilled_s(const boil_history *h)
{
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].by_thermostat)
            return h->quiet[i].start_s;
    return (double)NAN;
}

/* A caution where a load or a pour met the bath that it had stilled. */
void boil_judge_thermostat(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    double times = (double)s->thermostat_stilled;
    if (times > 0)
        boil_find(j, &(boil_sighting){.x = times,
                                      .value = times,
                                      .limit = (double)NAN,
                                      .time_s = first_stilled_s(j->history),
                                      .spells = s->thermostat_stilled,
                                      .most = s->thermostat_met > 0 ? BOIL_AT_CAUTION : BOIL_AT_NOTICE});
}
