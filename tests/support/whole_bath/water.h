/* support/whole_bath/water.h -- what the tanks of tests/published/whole_bath.csv have in common. */
#ifndef SUPPORT_WHOLE_BATH_WATER_H
#define SUPPORT_WHOLE_BATH_WATER_H

#include "support/close.h"

#include "properties/water.h"
#include "support/cases.h"

#define FAHRENHEIT(t) (((t) + 459.67) / 1.8)
#define FOOT 0.3048
#define INCH 0.0254
#define POUND 0.45359237
#define US_GALLON 3.785411784e-3
#define BTU 1055.056
#define HOUR 3600.0

/* Plain water at its start in a tank without walls and heat; the caller gives the size. */
static inline boil_plant water_tank(double temperature_K)
{
    boil_plant p = boil_plant_default();
    p.tank.wall_thickness_m = p.tank.insulation_m = 0;
    p.charge = (boil_initial_charge){{1, 0, 0}, BOIL_INITIAL_BY_SALT_FRACTION, 0, temperature_K};
    p.heater = boil_heater_default(BOIL_HEAT_ELECTRIC);
    p.heater.input_W = p.heater.lag_s = 0;
    return p;
}

static inline void square_tank(boil_plant *p, double area_m2, double level_m)
{
    p->tank.length_m = p->tank.width_m = sqrt(area_m2);
    p->tank.level_m = level_m;
    p->tank.depth_m = 1.5 * level_m + 0.1;
}

static inline void no_losses(boil_plant *p)
{
    p->losses.evaporation_factor = p->losses.convection_factor = p->losses.radiation_factor = 0;
    p->losses.wall_coefficient_W_m2K = 0;
}

/* A square metre of as much water as weighs mass_kg. */
static inline void fill_with(boil_plant *p, double mass_kg)
{
    boil_initial_state at_start;
    square_tank(p, 1, 0.5);
    assert_int_equal(boil_plant_initial(p, &at_start), BOIL_OK);
    square_tank(p, 1, mass_kg / at_start.density_kg_m3);
}

static inline boil_history follow(const boil_plant *p, double duration_s, const boil_action *actions, size_t count)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = fmax(1, duration_s / 2000);
    return run_actions(p, duration_s, &o, actions, count);
}

/* The first moment. */
static inline boil_row first_row(const boil_plant *p)
{
    boil_history h = follow(p, 1, NULL, 0);
    boil_row row = h.rows[0];
    boil_history_free(&h);
    return row;
}

/* Where the temperature first passes, between two rows; s. */
static inline double passes_at(const boil_history *h, double temperature_K)
{
    for (size_t i = 1; i < h->rows_count; i++) {
        const boil_row *a = &h->rows[i - 1], *b = &h->rows[i];
        if ((a->temperature_K - temperature_K) * (b->temperature_K - temperature_K) <= 0 &&
            a->temperature_K != b->temperature_K)
            return a->time_s +
                   (b->time_s - a->time_s) * (temperature_K - a->temperature_K) / (b->temperature_K - a->temperature_K);
    }
    fail_msg("never at %.2f K", temperature_K);
    return (double)NAN;
}

/* Heat that leaves through the surface, W: what evaporates takes its latent heat. */
static inline double surface_loss(const boil_row *row)
{
    return row->evaporated_kg_s * boil_water_latent_heat(row->temperature_K) + row->surface_W;
}

#endif
