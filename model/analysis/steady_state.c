#include "analysis/steady_state.h"

#include <math.h>

#include "base/bisection.h"
#include "base/constants.h"
#include "case/checks.h"
#include "bath/modes.h"
#include "bath/rates.h"

static const double most_W_m2 = 2e6; /* a hundred times what an open surface loses at 140 degC */

/* The plant at its boil, with a heater of a size at full dial. */
static boil_plant heated(const boil_plant *p, double heat_W, double boiling_point_K)
{
    boil_plant trial = *p;
    trial.charge.temperature_K = 0;
    trial.afloat.mass_kg = 0;
    trial.crust_kg = 0;
    trial.heater = boil_heater_sized(&p->heater, heat_W, boiling_point_K);
    trial.heater.dial = 1;
    trial.heat_control.mode = BOIL_HEAT_CONTROL_DIAL;
    return trial;
}

typedef struct {
    const boil_plant *plant;
    double boiling_point_K;
} boiling;

static boil_outcome starts_boiling(void *context, double heat_W, bool *yes)
{
    const boiling *c = context;
    boil_plant trial = heated(c->plant, heat_W, c->boiling_point_K);
    boil_bath b;
    boil_rates_guess guess;
    double y[BOIL_STATE_FIXED];
    boil_outcome outcome = boil_modes_start(&b, &trial, y, &guess);
    *yes = outcome == BOIL_OK && b.boiling;
    boil_bath_free(&b);
    return outcome;
}

static boil_outcome losses(const boil_plant *p, double boiling_point_K, double *losses_W)
{
    boiling c = {p, boiling_point_K};
    double area = boil_tank_area(&p->tank), no;
    boil_bisection s = {starts_boiling, &c, 1e-3 * area, most_W_m2 * area, 2, 1e-4};
    return boil_bisect(&s, &no, losses_W);
}

static boil_outcome evaluate(const boil_plant *trial, boil_steady_state *out)
{
    boil_bath b;
    boil_rates_guess guess;
    boil_rates_view v;
    double y[BOIL_STATE_FIXED];
    boil_outcome outcome = boil_modes_start(&b, trial, y, &guess);
    if (outcome == BOIL_OK)
        outcome = boil_rates_at(&b, 0, y, &guess, &v, NULL);
    if (outcome == BOIL_OK) {
        out->steam_kg_s = v.steam.formed_kg_s;
        out->evaporated_kg_s = v.surface.bath.evaporation_kg_s;
        out->steam_m3_s =
            (v.steam.formed_kg_s + v.surface.bath.evaporation_kg_s) / boil_bath_steam_density(&b, out->boiling_point_K);
        out->swell_m = v.levels.upper_m - v.levels.still_m;
        out->freeboard_m = trial->tank.depth_m - v.levels.upper_m;
    }
    boil_bath_free(&b);
    return outcome;
}

boil_outcome boil_steady_state_at(const boil_plant *p, double heat_W, boil_steady_state *out)
{
    if (out == NULL || p == NULL || !isfinite(heat_W))
        return BOIL_BAD_INPUT;
    boil_initial_state c;
    boil_outcome outcome = boil_plant_initial(p, &c);
    if (outcome != BOIL_OK)
        return outcome;
    *out = (boil_steady_state){.volume_m3 = c.volume_m3, .boiling_point_K = c.boiling_point_K};
    boil_plant trial = heated(p, heat_W, c.boiling_point_K);
    outcome = losses(p, c.boiling_point_K, &out->losses_W);
    return outcome == BOIL_OK ? evaluate(&trial, out) : outcome;
}

/* The same mass as at the boil: it stands lower when cold. */
static boil_outcome cold(const boil_plant *p, double heat_W, boil_plant *out)
{
    boil_initial_state at_boil, at_room;
    boil_outcome outcome = boil_plant_initial(p, &at_boil);
    if (outcome != BOIL_OK)
        return outcome;
    *out = heated(p, heat_W, at_boil.boiling_point_K);
    outcome = boil_plant_initial(out, &at_boil);
    out->charge.temperature_K = fmax(p->ambient.temperature_K, BOIL_ZERO_CELSIUS);
    if (outcome == BOIL_OK)
        outcome = boil_plant_initial(out, &at_room);
    if (outcome == BOIL_OK)
        out->tank.level_m *= boil_mixture_mass(&at_boil.mixture) / boil_mixture_mass(&at_room.mixture);
    return outcome;
}

boil_outcome boil_steady_state_first_row(const boil_plant *p, const boil_run_options *o, boil_row *out)
{
    boil_schedule nothing;
    boil_history h;
    boil_run_options first = *o;
    first.row_interval_s = 1;
    boil_schedule_init(&nothing, 1);
    boil_outcome outcome = boil_run_unchecked(p, &nothing, &first, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *out = h.rows[0];
    boil_history_free(&h);
    return BOIL_OK;
}

boil_outcome boil_steady_state_reached(const boil_plant *p, const boil_run_options *o, bool rows, boil_history *out)
{
    const double longest_s = 14 * 86400;
    boil_run_options spaced = *o;
    for (double duration_s = 3600;; duration_s *= 2) {
        boil_schedule nothing;
        boil_schedule_init(&nothing, duration_s);
        spaced.row_interval_s = rows ? duration_s / 240 : 0;
        boil_outcome outcome = boil_run_unchecked(p, &nothing, &spaced, out);
        if (outcome != BOIL_OK)
            return outcome;
        if (!isnan(out->summary.time_to_boil_s) || out->end != BOIL_RUN_DONE || 2 * duration_s > longest_s)
            return BOIL_OK;
        boil_history_free(out);
    }
}

boil_outcome boil_steady_state_heat_up(const boil_plant *p, const boil_run_options *o, double heat_W, double *time_s)
{
    if (time_s == NULL || !boil_check_plant(p) || !boil_check_options(o) || !isfinite(heat_W))
        return BOIL_BAD_INPUT;
    boil_plant trial;
    boil_history h;
    boil_outcome outcome = cold(p, heat_W, &trial);
    *time_s = (double)NAN;
    if (outcome == BOIL_OK)
        outcome = boil_steady_state_reached(&trial, o, false, &h);
    if (outcome != BOIL_OK)
        return outcome;
    *time_s = h.summary.time_to_boil_s;
    boil_history_free(&h);
    return BOIL_OK;
}
