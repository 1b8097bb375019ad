#include "planning/probe.h"

#include <math.h>

#include "analysis/pour_rate.h"
#include "base/constants.h"
#include "case/load.h"
#include "plan/parts.h"
#include "properties/viscosity.h"
#include "simulate/run.h"

#define STILL_S 1200.0
#define ENTRY_S 60.0 /* of a load into a steady boil: judgement */

/* One load, or none, and what came of it. */
typedef struct {
    boil_load_result load; /* time 0: none */
    boil_summary summary;
} trial;

static boil_outcome run(const boil_plant *p, const boil_load *l, double for_s, boil_closures by, const boil_run_options *o,
                        trial *out)
{
    boil_run_options with = *o;
    boil_schedule s;
    boil_history h;
    boil_action a = {.kind = BOIL_ACTION_LOAD, .time_s = ENTRY_S};
    with.closures = by;
    with.row_interval_s = 0;
    boil_schedule_init(&s, for_s);
    if (l != NULL)
        a.is.load = *l;
    boil_outcome outcome = l != NULL ? boil_schedule_add(&s, &a) : BOIL_OK;
    if (outcome == BOIL_OK)
        outcome = boil_run_unchecked(p, &s, &with, &h);
    if (outcome == BOIL_OK) {
        *out = (trial){.summary = h.summary};
        if (h.loads_count > 0)
            out->load = h.loads[0];
        boil_history_free(&h);
    }
    boil_schedule_free(&s);
    return outcome;
}

boil_plant boil_plan_at_boil(const boil_plant *p)
{
    boil_plant hot = *p;
    hot.charge.temperature_K = 0;
    hot.afloat.mass_kg = hot.crust_kg = hot.bed_kg = 0;
    return hot;
}

static boil_outcome find_ready(const boil_plant *p, const boil_run_options *o, boil_plan_bath *b)
{
    const double longest_s = 86400;
    trial t;
    if (!(p->charge.temperature_K > 0) && !(p->afloat.mass_kg > 0) && !(p->crust_kg > 0))
        return BOIL_OK;
    boil_outcome outcome = run(p, NULL, longest_s, BOIL_CLOSURES_LIKELY, o, &t);
    if (outcome != BOIL_OK)
        return outcome;
    b->ready_s = t.summary.time_to_boil_s;
    return isnan(b->ready_s) ? BOIL_NO_ROOT : BOIL_OK;
}

/* A quarter-inch plate as warm as the room. */
static boil_plan_part plate(const boil_plant *p, double mass_kg, double bath_K)
{
    boil_plan_part part = {.of = 1, .load = boil_load_default()};
    part.load.mass_kg = mass_kg;
    part.load.size_m = 0.00635;
    part.load.temperature_K = p->ambient.temperature_K;
    boil_plan_part_estimate(&part, bath_K);
    return part;
}

static boil_outcome find_heat(const boil_plant *p, const boil_run_options *o, double bath_K, boil_plan_bath *b)
{
    const double share[] = {0.4, 0.8, 1.1};
    double heat[3], back[3], for_s = ENTRY_S + STILL_S + 2 * b->limit_s;
    trial t;
    for (int i = 0; i < 3; i++) {
        boil_plan_part part = plate(p, share[i] * b->most_kg, bath_K);
        boil_outcome outcome = run(p, &part.load, for_s, BOIL_CLOSURES_SUDDEN, o, &t);
        if (outcome != BOIL_OK)
            return outcome;
        heat[i] = part.heat_J;
        back[i] = t.load.recovery_s;
    }
    b->quiet_W = (heat[2] - heat[0]) / (back[2] - back[0]);
    b->offset_s = back[1] - heat[1] / b->quiet_W;
    double lost = b->boils_off_kg_s * for_s - t.summary.vented_total_kg;
    b->dries_kg_s = fmin(b->boils_off_kg_s, fmax(0, b->boils_off_kg_s - fmax(0, lost) / back[2]));
    return isfinite(b->quiet_W) && b->quiet_W > 0 && isfinite(b->offset_s) ? BOIL_OK : BOIL_NO_ROOT;
}

/* What is left of it with as much water missing as may be, what steel takes more up to the hotter bath in it; less than a tenth is for
   proofs to teach. */
static boil_outcome find_weakening(const boil_plant *p, const boil_run_options *o, double bath_K, boil_plan_bath *b)
{
    const double up = 0.85, share = 0.8, tells = 0.1; /* up: as find_band; judgement */
    boil_plant strong = *p;
    trial t;
    double high_K = p->limits.boiling_point_high_K;
    if (!(high_K > bath_K) || !isfinite(b->strongest_kg) || !(b->strongest_kg > 0))
        return BOIL_OK;
    strong.charge.basis = BOIL_INITIAL_BY_BOILING_POINT;
    strong.charge.value = bath_K + up * (high_K - bath_K);
    boil_plan_part part = plate(p, share * b->most_kg, bath_K);
    boil_outcome outcome = run(&strong, &part.load, ENTRY_S + STILL_S + 2 * b->limit_s, BOIL_CLOSURES_SUDDEN, o, &t);
    if (outcome != BOIL_OK)
        return outcome;
    double left_W = isnan(t.load.recovery_s) ? 0 : part.heat_J / (t.load.recovery_s - b->offset_s);
    if (left_W < (1 - tells) * b->quiet_W)
        b->weakens_W_kg = (b->quiet_W - left_W) / b->strongest_kg;
    return BOIL_OK;
}

double boil_plan_water_lost(const boil_plant *p, const boil_initial_state *s, double boiling_point_K)
{
    boil_conditions c = boil_conditions_at(p->ambient.pressure_Pa, p->elevation_factor);
    double fraction, salts = boil_mixture_salts(&s->mixture);
    if (boil_solution_fraction_boiling_at(&c, p->charge.blend, boiling_point_K, &fraction) != BOIL_OK)
        return (double)NAN;
    return boil_mixture_mass(&s->mixture) - salts / fraction;
}

static void find_band(const boil_plant *p, const boil_initial_state *s, boil_plan_bath *b)
{
    double t = s->boiling_point_K, high = p->limits.boiling_point_high_K, low = p->limits.boiling_point_low_K;
    double here = boil_plan_water_lost(p, s, t);
    b->strongest_kg = high > 0 ? boil_plan_water_lost(p, s, t + BOIL_PLAN_BAND_UP * (high - t)) - here : HUGE_VAL;
    if (isnan(b->strongest_kg))
        b->strongest_kg = HUGE_VAL;
    b->outside_K = high > 0 && t > high ? t - high : fmin(0, t - low);
    b->weakest_kg = low > 0 ? fmax(0, here - boil_plan_water_lost(p, s, t - BOIL_PLAN_BAND_DOWN * (t - low))) : HUGE_VAL;
    if (isnan(b->weakest_kg))
        b->weakest_kg = 0;
}

static boil_outcome find_flow(const boil_plant *p, const boil_plan_problem *of, const boil_run_options *o, boil_plan_bath *b)
{
    const double tried_s = 600; /* a pour of so long: judgement */
    double water_K = fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    boil_pour_rate fastest;
    b->flow_kg_s = 0;
    if (!(of->water_kg_s > 0) || b->valve)
        return BOIL_OK;
    boil_action a = boil_pour_rate_action(BOIL_ACTION_WATER, tried_s * of->water_kg_s, p->charge.blend, 0, water_K);
    boil_outcome outcome = boil_pour_rate_fastest(p, &a, 0, o, &fastest);
    if (outcome == BOIL_OK)
        b->flow_kg_s = fmin(of->water_kg_s, fastest.rate_kg_s);
    return outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

static void find_fire(const boil_plant *p, double bath_K, boil_plan_bath *b)
{
    bool steam = p->heater.source == BOIL_HEAT_STEAM;
    double full = boil_heater_output(&p->heater, 1, bath_K);
    b->efficiency = steam ? 1 : p->heater.efficiency;
    b->fire_W = full / b->efficiency;
    b->calm_W = p->heat_control.mode == BOIL_HEAT_CONTROL_DIAL ? 0 : fmax(0, full - b->quiet_W) / b->efficiency;
}

boil_outcome boil_plan_probe_bath(const boil_plant *p, const boil_plan_problem *of, const boil_run_options *o,
                                  boil_plan_bath *out, double *bath_K)
{
    boil_plant hot = boil_plan_at_boil(p);
    boil_initial_state s;
    trial still;
    boil_outcome outcome = boil_plant_initial(&hot, &s);
    if (outcome != BOIL_OK)
        return outcome;
    *bath_K = s.boiling_point_K;
    *out = (boil_plan_bath){.limit_s = p->limits.recovery_s,
                            .density_kg_m3 = boil_mixture_mass(&s.mixture) / s.volume_m3,
                            .most_kg = p->limits.load_per_volume_kg_m3 * s.volume_m3,
                            .steady_s = p->by_hand.steady_s,
                            .salt_fraction = boil_mixture_salts(&s.mixture) / boil_mixture_mass(&s.mixture),
                            .guard_s = BOIL_PLAN_GUARD_S,
                            .valve = p->control.mode != BOIL_WATER_CONTROL_NONE};
    out->owes_kg = out->salt_fraction * out->density_kg_m3 * boil_tank_area(&p->tank) * BOIL_PLAN_ASKS_M;
    outcome = find_ready(p, o, out);
    if (outcome == BOIL_OK)
        outcome = run(&hot, NULL, STILL_S, BOIL_CLOSURES_LIKELY, o, &still);
    if (outcome != BOIL_OK)
        return outcome;
    out->boils_off_kg_s = still.summary.vented_total_kg / STILL_S;
    find_band(&hot, &s, out);
    outcome = find_heat(&hot, o, *bath_K, out);
    if (outcome == BOIL_OK)
        outcome = find_weakening(&hot, o, *bath_K, out);
    if (outcome == BOIL_OK)
        outcome = find_flow(&hot, of, o, out);
    find_fire(&hot, *bath_K, out);
    return outcome;
}

boil_outcome boil_plan_probe_part(const boil_plant *p, const boil_plan_bath *b, const boil_run_options *o, boil_plan_part *part)
{
    const double constants = 6, least_s = 900; /* twice what the estimate takes to be hot: judgement */
    boil_plant hot = boil_plan_at_boil(p);
    double for_s = ENTRY_S + fmax(least_s, constants * part->lag_s) + 2 * b->limit_s;
    trial t;
    boil_outcome outcome = run(&hot, &part->load, for_s, BOIL_CLOSURES_LIKELY, o, &t);
    if (outcome != BOIL_OK)
        return outcome;
    part->hot_s = isnan(t.load.hot_s) ? for_s : t.load.hot_s;
    outcome = run(&hot, &part->load, for_s, BOIL_CLOSURES_SUDDEN, o, &t);
    if (outcome == BOIL_OK && t.load.recovery_s > 0)
        part->heat_J = b->quiet_W * (t.load.recovery_s - b->offset_s);
    return outcome;
}

boil_action boil_plan_sifting_action(const boil_plant *p, double mass_kg)
{
    const double coldest_K = 243.15; /* that salts may be */
    return boil_pour_rate_action(BOIL_ACTION_SALTS, mass_kg, p->charge.blend, 0, fmax(p->ambient.temperature_K, coldest_K));
}

static boil_outcome find_sifting(const boil_plant *hot, const boil_run_options *o, boil_plan_bath *b)
{
    const double spare = 0.5; /* what just does is no pace to plan with; judgement */
    boil_pour_rate fastest;
    boil_action a = boil_plan_sifting_action(hot, b->owes_kg);
    boil_outcome outcome = boil_pour_rate_fastest(hot, &a, 0, o, &fastest);
    b->sift_kg_s = outcome == BOIL_OK ? spare * fastest.rate_kg_s : 0;
    return outcome == BOIL_NO_ROOT ? BOIL_OK : outcome;
}

boil_outcome boil_plan_probe_salts(const boil_plant *p, const boil_run_options *o, boil_plan_part parts[], size_t count,
                                   boil_plan_bath *b)
{
    boil_plant hot = boil_plan_at_boil(p);
    boil_initial_state s;
    double all_kg = b->owed_kg;
    boil_outcome outcome = boil_plant_initial(&hot, &s);
    if (outcome != BOIL_OK)
        return outcome;
    double viscosity_Pa_s = p->transport.viscosity_factor * boil_viscosity_solution(&s.mixture, s.boiling_point_K);
    for (size_t i = 0; i < count; i++) {
        double liquid_kg = boil_drag_out(&parts[i].load, viscosity_Pa_s, b->density_kg_m3, p->transport.surface_tension_N_m);
        parts[i].drag_kg = b->salt_fraction * liquid_kg;
        all_kg += parts[i].drag_kg;
    }
    bool is_known = b->sift_kg_s > 0, watered = b->valve || b->flow_kg_s > 0;
    return all_kg > b->owes_kg && watered && !is_known ? find_sifting(&hot, o, b) : BOIL_OK;
}
