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
