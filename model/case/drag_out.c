#include "case/drag_out.h"

#include <math.h>

#include "base/boil.h"

double boil_drag_film(double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m, double speed_m_s,
                      double height_m, double drained_s)
{
    double weight = density_kg_m3 * BOIL_GRAVITY, capillary = viscosity_Pa_s * speed_m_s / surface_tension_N_m;
    double drawn = 0.944 * pow(capillary, 1.0 / 6) * sqrt(viscosity_Pa_s * speed_m_s / weight);
    double drained = 2.0 / 3 * sqrt(viscosity_Pa_s * height_m / (weight * drained_s));
    return fmin(drawn, drained);
}

double boil_drag_out(const boil_load *l, double viscosity_Pa_s, double density_kg_m3, double surface_tension_N_m)
{
    double wetted = boil_load_wetted(l);
    if (l->drag_out_kg_m2 >= 0)
        return l->drag_out_kg_m2 * wetted;
    if (l->packed_depth_m > 0)
        return BOIL_DRAG_PACKED_M * density_kg_m3 * wetted;
    double speed = l->part_height_m / l->lowering_s, drips = l->lowering_s / 2 + BOIL_DRAG_DRIP_S;
    double film = boil_drag_film(viscosity_Pa_s, density_kg_m3, surface_tension_N_m, speed, l->part_height_m, drips);
    return BOIL_DRAG_HOT * film * density_kg_m3 * wetted;
}
