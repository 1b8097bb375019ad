/* finding_loads.c -- loads too heavy, too soon, lifted too early, or hollow. */
#include <math.h>

#include "findings/finding_parts.h"

static const boil_load *load_of(const boil_judged *j, size_t result)
{
    return &j->schedule->actions[j->history->loads[result].action].is.load;
}

static void find_heavy(boil_judged *j, double time_s, double mass_kg)
{
    const boil_tank *t = &j->plant->tank;
    double rule = j->plant->limits.load_per_volume_kg_m3, heavy = mass_kg / (boil_tank_area(t) * t->level_m);
    boil_find(j, &(boil_sighting){.x = heavy / rule, .value = heavy, .limit = rule, .per_x = rule, .time_s = time_s});
}

/* What goes in within a minute of the first of them is one load to the bath. */
void boil_judge_load_heavy(boil_judged *j)
{
    const double together_s = 60;
    const boil_history *h = j->history;
    double since = 0, mass_kg = 0;
    for (size_t n = 0; n < h->loads_count; n++) {
        const boil_load *l = load_of(j, n);
        if (n > 0 && h->loads[n].time_s >= since + together_s) {
            find_heavy(j, since, mass_kg);
            mass_kg = 0;
        }
        if (!(mass_kg > 0))
            since = h->loads[n].time_s;
        mass_kg += l->mass_kg + l->basket_kg;
    }
    if (mass_kg > 0)
        find_heavy(j, since, mass_kg);
}

void boil_judge_tubes(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load *l = load_of(j, n);
        if (l->shape == BOIL_SHAPE_TUBE)
            boil_find(j,
                      &(boil_sighting){
                          .x = l->mass_kg, .value = l->mass_kg, .limit = (double)NAN, .time_s = j->history->loads[n].time_s});
    }
}

/* Of a bath that has not come to its boil yet it is no matter of the load before. */
static const char *advice_before_boil(const boil_load_result *r)
{
    const double rounding_s = 1;
    return r->time_s - r->quiet_before_s < rounding_s ? "The bath is not up yet: no load until it boils steadily." : NULL;
}

void boil_judge_load_quiet(boil_judged *j)
{
    double limit = j->plant->limits.recovery_s;
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        if (r->was_quiet)
            boil_find(j, &(boil_sighting){.x = r->quiet_before_s / limit,
                                          .value = r->quiet_before_s,
                                          .limit = (double)NAN,
                                          .time_s = r->time_s,
                                          .advice = advice_before_boil(r)});
    }
}

/* A load stirs what floats, and goes in beside whoever lowers it. */
void boil_judge_load_through(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        const boil_sighting s = boil_sighting_left(j, r->left_m, r->may_overflow, r->time_s);
        if (!isnan(r->left_m))
            boil_find(j, &s);
    }
}

static bool is_out(const boil_judged *j, size_t result)
{
    return !isnan(j->history->loads[result].lifted_s);
}

static double heaviest_out_kg(const boil_judged *j)
{
    double heaviest_kg = 0;
    for (size_t n = 0; n < j->history->loads_count; n++)
        heaviest_kg = is_out(j, n) ? fmax(heaviest_kg, load_of(j, n)->mass_kg) : heaviest_kg;
    return heaviest_kg;
}

/* Whether most of the loads that came out were short by more than anybody would wait through: what never got hot is not black. One
   of next to no steel beside another counts for none: a single screw turns no grade. */
static bool most_are_cold(const boil_judged *j)
{
    const double wait_s = 60, next_to_none = 0.01;
    double least_kg = next_to_none * heaviest_out_kg(j);
    size_t out = 0, cold = 0;
    for (size_t n = 0; n < j->history->loads_count; n++) {
        bool counts = is_out(j, n) && load_of(j, n)->mass_kg >= least_kg;
        out += counts ? 1 : 0;
        cold += counts && j->history->loads[n].short_s > wait_s ? 1 : 0;
    }
    return 2 * cold > out;
}

void boil_judge_load_cold(boil_judged *j)
{
    bool most = most_are_cold(j);
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        if (is_out(j, n))
            boil_find(j, &(boil_sighting){.x = r->short_s,
                                          .value = r->short_s,
                                          .limit = (double)NAN,
                                          .per_x = 1,
                                          .time_s = r->lifted_s,
                                          .least = most && r->short_s > 0 ? BOIL_AT_CAUTION : BOIL_UNBOUND,
                                          .advice = most ? "They will not be black: leave them in until hot through." : NULL});
    }
}

/* Also one that is still in at the end: the shift did not give it its time. */
void boil_judge_boil_short(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        boil_find(j, &(boil_sighting){.x = r->boil_short_s,
                                      .value = r->boil_short_s,
                                      .limit = (double)NAN,
                                      .per_x = 1,
                                      .time_s = isnan(r->lifted_s) ? j->history->end_s : r->lifted_s});
    }
}

/* What is trapped lets go about when the boil is back: graded as if it floated at its boil then. */
void boil_judge_hollows(boil_judged *j)
{
    for (size_t n = 0; n < j->history->loads_count; n++) {
        const boil_load_result *r = &j->history->loads[n];
        const boil_sighting s = boil_sighting_left(j, r->pockets_left_m, r->pockets_overflow, r->time_s);
        if (r->pockets_kg > 0)
            boil_find(j, &s);
    }
}
