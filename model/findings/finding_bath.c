/* finding_bath.c -- the bath itself, its tank and its water: off its band, too deep, badly controlled, crystallised. */
#include <math.h>

#include "findings/finding_parts.h"

void boil_judge_too_hot(boil_judged *j)
{
    const boil_extreme *most = &j->history->summary.temperature_max_K;
    double high = j->plant->limits.boiling_point_high_K;
    if (most->value > high)
        boil_find(j, BOIL_SEVERITY_CAUTION, most->time_s, most->value, high);
}

void boil_judge_too_cool(boil_judged *j)
{
    const boil_extreme *least = &j->history->summary.temperature_min_K;
    double low = j->plant->limits.boiling_point_low_K;
    if (least->value < low)
        boil_find(j, BOIL_SEVERITY_NOTICE, least->time_s, least->value, low);
}

/* Wide and shallow is well, tall and narrow boils over: common practice, no source; the limit is judgement, too. */
void boil_judge_tall(boil_judged *j)
{
    const double tall = 1.2;
    double ratio = j->plant->tank.level_m / sqrt(boil_tank_area(&j->plant->tank));
    if (ratio > tall)
        boil_find(j, BOIL_SEVERITY_CAUTION, (double)NAN, ratio, tall);
}

/* What a stir may set free against the room below the rim. */
void boil_judge_superheat(boil_judged *j)
{
    const double grave = 3;
    double rise_m = j->history->summary.stored_rise_m;
    double room_m = j->plant->tank.depth_m - j->history->summary.still_level_start_m;
    if (rise_m > room_m)
        boil_find(j, rise_m > grave * room_m ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, (double)NAN, rise_m, room_m);
}

static bool is_controlled(const boil_judged *j)
{
    return j->plant->control.mode != BOIL_WATER_CONTROL_NONE && j->history->end_s > 0;
}

/* A valve that opens more often than every five minutes wears and overshoots: judgement. */
void boil_judge_valve_hunts(boil_judged *j)
{
    const double busiest = 12;
    size_t openings = j->history->summary.valve_openings;
    double per_hour = (double)openings / (j->history->end_s / 3600);
    if (is_controlled(j) && j->plant->control.mode == BOIL_WATER_CONTROL_ON_OFF && openings > 4 && per_hour > busiest)
        boil_find(j, BOIL_SEVERITY_CAUTION, (double)NAN, per_hour, busiest);
}

void boil_judge_valve_short(boil_judged *j)
{
    const boil_water_control *c = &j->plant->control;
    const boil_summary *s = &j->history->summary;
    double too_warm = c->set_point_K + fmax(2 * c->differential_K, 2);
    if (is_controlled(j) && s->temperature_max_K.value > too_warm && s->valve_open_share > 0.2 &&
        s->temperature_end_K > too_warm)
        boil_find(j, BOIL_SEVERITY_CAUTION, s->temperature_max_K.time_s, s->temperature_max_K.value, c->set_point_K);
}

void boil_judge_valve_quiet(boil_judged *j)
{
    double quiet_kg = j->history->summary.valve_quiet_kg;
    if (is_controlled(j) && quiet_kg > 0)
        boil_find(j, BOIL_SEVERITY_WARNING, (double)NAN, quiet_kg, 0);
}

void boil_judge_crystals(boil_judged *j)
{
    const boil_summary *s = &j->history->summary;
    if (!isnan(s->crystals_s))
        boil_find_needing(j, BOIL_SEVERITY_CAUTION, s->crystals_s, s->crystals_from_K, (double)NAN, (double)NAN,
                          s->crystals_max_kg);
}

/* Some kilograms of crystals are a crust; a first haze is not: a thousandth of the bath, judgement. Half a kelvin over the boil, as it
   broke, is a kilogram of steam from a tonne at once: judgement. */
void boil_judge_restart(boil_judged *j)
{
    const double harmless_K = 0.5;
    const boil_summary *s = &j->history->summary;
    double crust_kg = 1e-3 * s->bath_mass_start_kg;
    bool grave = j->plant->tank.heated == BOIL_TANK_HEATED_FROM_BELOW || s->crust_superheat_K.value > harmless_K;
    if (s->heated_crystals_kg.value > crust_kg)
        boil_find(j, grave ? BOIL_SEVERITY_WARNING : BOIL_SEVERITY_CAUTION, s->heated_crystals_kg.time_s,
                  s->heated_crystals_kg.value, crust_kg);
}
