#include "transfer/entrainment.h"

#include <math.h>

double boil_entrainment_clinging(const boil_entrainment_passage *p)
{
    const double constant = 1.3;
    if (!(p->speed_m_s > 0 && p->layer_m > 0))
        return 0;
    return p->water_kg_m3 * constant * p->wetted_m2 * sqrt(p->viscosity_m2_s * p->layer_m / p->speed_m_s);
}

double boil_entrainment(const boil_entrainment_passage *p, double drift_coefficient)
{
    if (!(p->speed_m_s > 0 && p->layer_m > 0))
        return 0;
    return fmin(p->layer_kg, boil_entrainment_clinging(p) + p->water_kg_m3 * drift_coefficient * p->displaced_m3);
}
