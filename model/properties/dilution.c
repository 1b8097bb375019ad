#include "properties/dilution.h"

#include <string.h>

#include "properties/water.h"

boil_dilution boil_dilution_at(double factor, const boil_mixture *reference, double reference_K)
{
    boil_dilution d = {.factor = factor, .reference_K = reference_K};
    double salts = boil_mixture_salts(reference);
    boil_heat h = boil_solution_heat(reference, reference_K);
    memcpy(d.salt_J_kg, h.salt, sizeof d.salt_J_kg);
    if (salts > 0)
        d.salt_J_kgK = (h.heat_capacity_J_K - reference->water * boil_water_heat_capacity(reference_K)) / salts;
    return d;
}

boil_heat boil_dilution_heat(const boil_dilution *d, const boil_mixture *m, double temperature_K, boil_heat h)
{
    double more = d->factor - 1;
    if (more == 0)
        return h;
    double water = boil_water_enthalpy(temperature_K), warmed = d->salt_J_kgK * (temperature_K - d->reference_K);
    boil_heat out = h;
    out.enthalpy_J += more * (h.enthalpy_J - m->water * water);
    out.heat_capacity_J_K += more * (h.heat_capacity_J_K - m->water * boil_water_heat_capacity(temperature_K) -
                                     d->salt_J_kgK * boil_mixture_salts(m));
    out.water += more * (h.water - water);
    for (int i = 0; i < BOIL_SALTS; i++) {
        double salt = d->salt_J_kg[i] + warmed;
        out.enthalpy_J -= more * m->salt[i] * salt;
        out.salt[i] += more * (h.salt[i] - salt);
    }
    return out;
}
