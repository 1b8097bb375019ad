#include "random/moisture.h"

#include <math.h>

#include "equipment/ambient.h"
#include "equipment/tank.h"
#include "properties/solution.h"
#include "properties/water.h"

/* A skin is cooler than what lies below by what it radiates and the air takes, at most 50 W/m2K, over at least 1000 W/m2K. */
static double skin_K(double below_K, double room_K)
{
    return below_K - fmax(0, below_K - room_K) / 20;
}

static double over_bath_Pa(const boil_plant *p, const boil_row *r, double elevation_factor)
{
    boil_conditions air = boil_conditions_at(p->ambient.pressure_Pa, elevation_factor);
    boil_mixture m = {r->water_kg, {r->naoh_kg, r->nano3_kg, r->nano2_kg}};
    double molality = 0, by_T, by_strength, T = skin_K(r->temperature_K, p->ambient.temperature_K);
    return exp(boil_solution_log_vapour_pressure(&air, &m, T, 1e-6, &molality, &by_T, &by_strength));
}

bool moisture_may_come(const boil_plant *p, const boil_row *r, double elevation_factor)
{
    double air_Pa = boil_ambient_vapour_pressure(&p->ambient);
    bool afloat = r->layer_kg > 0 && boil_water_saturation_pressure(skin_K(r->layer_K, p->ambient.temperature_K)) < air_Pa;
    return afloat || over_bath_Pa(p, r, elevation_factor) < air_Pa;
}

static double most_kg_s(const boil_plant *p)
{
    const double least_J_kg = 2.3e6;
    double Pa = boil_ambient_vapour_pressure(&p->ambient), thick = 1 / (1 - Pa / p->ambient.pressure_Pa);
    double film_W_m2Pa = p->losses.evaporation_factor * (0.089 + 0.0782 * p->ambient.draught_m_s);
    return film_W_m2Pa * Pa * thick / least_J_kg * boil_tank_area(&p->tank);
}

double moisture_most_kg(const boil_plant *p, const boil_history *h, double elevation_factor)
{
    double for_s = 0;
    bool before = false;
    for (size_t i = 0; i < h->rows_count; i++) {
        bool now = moisture_may_come(p, &h->rows[i], elevation_factor);
        double next_s = i + 1 < h->rows_count ? h->rows[i + 1].time_s : h->end_s;
        double last_s = i > 0 ? h->rows[i - 1].time_s : 0;
        for_s += now ? next_s - h->rows[i].time_s + (before ? 0 : h->rows[i].time_s - last_s) : 0;
        before = now;
    }
    return for_s * most_kg_s(p);
}
