#include "size.h"

#include <math.h>
#include <stdbool.h>

#include "boil.h"

/* Does the case end boiling with this heat to the tank? */
static int ends_boiling(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double bath_K, double heat_W,
                        bool *boils)
{
    boil_plant trial = *p;
    boil_history h;
    trial.heater = boil_heater_sized(&p->heater, heat_W, bath_K);
    int outcome = boil_run(&trial, s, o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *boils = h.quiet_count == 0 || !isnan(h.quiet[h.quiet_count - 1].end_s);
    outcome = h.end == BOIL_RUN_DONE ? BOIL_OK : BOIL_RANGE;
    boil_history_free(&h);
    return outcome;
}

int boil_size_heat_to_boil(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, double *heat_W)
{
    const double most_W_m2 = 2e6; /* a hundred times what an open surface loses at 140 degC */
    double most = most_W_m2 * boil_tank_area(&p->tank);
    boil_charge_state bath;
    int charged = boil_plant_charge(p, &bath);
    if (charged != BOIL_OK)
        return charged;
    double low = boil_heater_output(&p->heater, 1, bath.boiling_point_K), high = fmax(low, 500 * boil_tank_area(&p->tank));
    bool boils = false;
    boil_run_options quick = *o;
    quick.row_interval_s = 0;
    while (!boils) {
        low = high;
        high *= 1.5;
        if (high > most)
            return BOIL_NO_ROOT;
        int outcome = ends_boiling(p, s, &quick, bath.boiling_point_K, high, &boils);
        if (outcome != BOIL_OK)
            return outcome;
    }
    while (high - low > 0.005 * high) {
        double middle = (low + high) / 2;
        int outcome = ends_boiling(p, s, &quick, bath.boiling_point_K, middle, &boils);
        if (outcome != BOIL_OK)
            return outcome;
        *(boils ? &high : &low) = middle;
    }
    *heat_W = high;
    return BOIL_OK;
}

/* Is the boil back within the limit after each liquid addition at this act's time? */
static int liquid_does(const boil_plant *p, boil_schedule *trial, const boil_run_options *o, size_t index, double mass_kg,
                       double limit_s, bool *well)
{
    boil_history h;
    boil_act *act = &trial->acts[index];
    act->is.liquid.mass_kg = mass_kg;
    int outcome = boil_run(p, trial, o, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *well = true;
    for (size_t i = 0; i < h.additions_count; i++) {
        const boil_addition_result *a = &h.additions[i];
        if (a->kind == BOIL_ACT_LIQUID && a->time_s == act->time_s && !(a->recovery_s <= limit_s))
            *well = false;
    }
    boil_history_free(&h);
    return BOIL_OK;
}

int boil_size_largest_liquid(const boil_plant *p, const boil_schedule *s, const boil_run_options *o, size_t index,
                             double limit_s, double *mass_kg)
{
    boil_schedule trial;
    boil_schedule_init(&trial, s->duration_s);
    int outcome = BOIL_OK;
    for (size_t i = 0; i < s->count && outcome == BOIL_OK; i++)
        outcome = boil_schedule_add(&trial, &s->acts[i]);
    double high = s->acts[index].is.liquid.mass_kg, low = high / 1000;
    boil_run_options quick = *o;
    quick.row_interval_s = 0;
    bool well = false;
    if (outcome == BOIL_OK)
        outcome = liquid_does(p, &trial, &quick, index, low, limit_s, &well);
    if (outcome == BOIL_OK && !well)
        outcome = BOIL_NO_ROOT;
    while (outcome == BOIL_OK && high - low > 0.01 * low) {
        double middle = sqrt(low * high);
        outcome = liquid_does(p, &trial, &quick, index, middle, limit_s, &well);
        *(well ? &low : &high) = middle;
    }
    boil_schedule_free(&trial);
    *mass_kg = low;
    return outcome;
}
