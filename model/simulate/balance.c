#include <math.h>

#include "simulate/simulation.h"

/* simulate/balance.c -- what was in the tank, what came in and went out by each way, what is there: each amount taken once, from
   the state or the summary, and the closure of what is named. */

static double closure(double change, double in, double out, double scale)
{
    return scale > 0 ? (change - in + out) / scale : 0;
}

static boil_water_balance water_of(const boil_simulation *r)
{
    const double *y = r->y;
    const boil_summary *s = &r->history.summary;
    boil_water_balance b = {.start_kg = r->start.water_kg,
                            .by_hand_kg = s->water_added_kg,
                            .with_parts_kg = s->rinse_added_kg,
                            .from_hollows_kg = s->released_kg,
                            .by_valve_kg = s->water_controlled_kg,
                            .from_lid_kg = s->condensate_kg,
                            .in_liquid_kg = s->liquid_added_kg - y[BOIL_STATE_TOTAL_LIQUID_SALTS],
                            .steam_kg = s->steam_total_kg,
                            .evaporated_kg = s->evaporated_total_kg,
                            .layer_boiled_kg = s->layer_boiled_total_kg,
                            .drag_out_kg = s->drag_out_kg - s->drag_out_salts_kg,
                            .taken_kg = y[BOIL_STATE_TOTAL_TAKEN_WATER],
                            .bath_kg = y[BOIL_STATE_BATH_WATER],
                            .layer_kg = y[BOIL_STATE_LAYER_MASS]};
    double in = b.by_hand_kg + b.with_parts_kg + b.from_hollows_kg + b.by_valve_kg + b.from_lid_kg + b.in_liquid_kg;
    double out = b.steam_kg + b.evaporated_kg + b.layer_boiled_kg + b.drag_out_kg + b.taken_kg;
    b.closure = closure(b.bath_kg + b.layer_kg - b.start_kg, in, out, fmax(b.start_kg, in + out));
    return b;
}

static boil_salts_balance salts_of(const boil_simulation *r)
{
    const double *y = r->y;
    const boil_summary *s = &r->history.summary;
    boil_salts_balance b = {.start_kg = r->start.salts_kg,
                            .dry_kg = s->salts_added_kg,
                            .in_liquid_kg = y[BOIL_STATE_TOTAL_LIQUID_SALTS],
                            .drag_out_kg = s->drag_out_salts_kg,
                            .taken_kg = s->taken_salts_kg};
    for (int i = 0; i < BOIL_SALTS; i++) {
        b.dissolved_kg += y[BOIL_STATE_BATH_NAOH + i];
        b.undissolved_kg += y[BOIL_STATE_SOLID_NAOH + i];
    }
    double in = b.dry_kg + b.in_liquid_kg, out = b.drag_out_kg + b.taken_kg;
    b.closure = closure(b.dissolved_kg + b.undissolved_kg - b.start_kg, in, out, fmax(b.start_kg, in + out));
    return b;
}

/* The zero of enthalpy is arbitrary, so that only what crossed can be the scale, if anything did. */
static boil_energy_balance energy_of(const boil_simulation *r)
{
    const double *y = r->y;
    boil_energy_balance b = {.start_J = r->start.energy_J,
                             .heater_J = r->history.summary.heater_total_J,
                             .with_water_J = y[BOIL_STATE_HEAT_WITH_WATER],
                             .from_hollows_J = y[BOIL_STATE_HEAT_WITH_RELEASED],
                             .with_liquid_J = y[BOIL_STATE_HEAT_WITH_LIQUID],
                             .with_salts_J = y[BOIL_STATE_HEAT_WITH_SALTS],
                             .walls_J = y[BOIL_STATE_HEAT_TO_WALLS],
                             .air_J = y[BOIL_STATE_HEAT_TO_AIR],
                             .loads_J = y[BOIL_STATE_HEAT_TO_LOADS],
                             .with_vapour_J = y[BOIL_STATE_HEAT_WITH_VAPOUR],
                             .with_taken_J = y[BOIL_STATE_HEAT_WITH_TAKEN],
                             .with_drag_J = y[BOIL_STATE_HEAT_WITH_DRAG],
                             .end_J = boil_modes_inventory(&r->bath, y, &r->view)};
    double in = b.heater_J + b.with_water_J + b.from_hollows_J + b.with_liquid_J + b.with_salts_J, crossing = 0;
    double out = b.walls_J + b.air_J + b.loads_J + b.with_vapour_J + b.with_drag_J + b.with_taken_J;
    for (int i = BOIL_STATE_HEAT_FROM_HEATER; i <= BOIL_STATE_HEAT_WITH_DRAG; i++)
        crossing += fabs(y[i]);
    b.closure = closure(b.end_J - b.start_J, in, out, crossing > 0 ? crossing : fabs(b.start_J));
    return b;
}

/* Rinse water of a load that is still being lowered as the run ends. */
static double rinse_to_come(const boil_simulation *r)
{
    double sum = 0;
    for (size_t i = 0; i < r->bath.feeds_count; i++) {
        const boil_bath_feed *f = &r->bath.feeds[i];
        if (f->kind == BOIL_FEED_WATER && f->addition == 0 && !f->from_hollows)
            sum += f->rate_kg_s * fmax(0, f->end_s - r->t);
    }
    return sum;
}

void boil_simulation_balance(boil_simulation *r)
{
    const double rounding = 1e-12; /* of a difference of sums */
    boil_summary *s = &r->history.summary;
    s->rinse_added_kg -= rinse_to_come(r);
    double all = r->y[BOIL_STATE_TOTAL_WATER_IN];
    double by_hand = all - r->y[BOIL_STATE_TOTAL_VALVE] - r->y[BOIL_STATE_TOTAL_CONDENSATE] - s->rinse_added_kg;
    s->water_added_kg = by_hand > rounding * all ? by_hand : 0;
    r->history.balance = (boil_balance){water_of(r), salts_of(r), energy_of(r)};
}
