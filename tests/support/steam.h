/* support/steam.h -- water and steam by the names and units that the rows of water_steam.csv and iapws.csv in tests/published have. */
#ifndef SUPPORT_STEAM_H
#define SUPPORT_STEAM_H

#include "properties/water.h"
#include "support/published.h"

static inline double steam_row_saturation_pressure(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_saturation_pressure(temperature_K);
}

static inline double steam_row_saturation_temperature(double temperature_K, double pressure_Pa)
{
    (void)temperature_K;
    return boil_water_saturation_temperature(pressure_Pa);
}

/* The slope inside SR1-86, seen through Clapeyron's equation between its two phases. */
static inline double steam_row_clapeyron_slope(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    const double latent = boil_water_vapour_enthalpy(temperature_K) - boil_water_enthalpy(temperature_K);
    const double swelling = 1 / boil_water_vapour_density(temperature_K) - 1 / boil_water_density(temperature_K);
    return latent / (temperature_K * swelling);
}

static inline double steam_row_liquid_density(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_density(temperature_K);
}

static inline double steam_row_liquid_enthalpy(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_enthalpy(temperature_K);
}

static inline double steam_row_liquid_heat_capacity(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_heat_capacity(temperature_K);
}

static inline double steam_row_vapour_density(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_vapour_density(temperature_K);
}

static inline double steam_row_vapour_enthalpy(double temperature_K, double pressure_Pa)
{
    (void)pressure_Pa;
    return boil_water_vapour_enthalpy(temperature_K);
}

static inline double steam_row_volume(double temperature_K, double pressure_Pa)
{
    return 1 / boil_steam_density(temperature_K, pressure_Pa);
}

static inline double steam_row_above_liquid(double temperature_K, double pressure_Pa)
{
    return boil_steam_enthalpy(temperature_K, pressure_Pa) - boil_water_enthalpy(temperature_K);
}

typedef struct {
    const char *name;
    double (*of)(double temperature_K, double pressure_Pa);
} steam_quantity;

static inline const steam_quantity *steam_row_quantity(published *row)
{
    static const steam_quantity quantities[] = {
        {"saturation pressure", steam_row_saturation_pressure},
        {"saturation temperature", steam_row_saturation_temperature},
        {"saturation pressure slope", steam_row_clapeyron_slope},
        {"saturated liquid density", steam_row_liquid_density},
        {"saturated liquid enthalpy", steam_row_liquid_enthalpy},
        {"saturated liquid heat capacity", steam_row_liquid_heat_capacity},
        {"saturated vapour density", steam_row_vapour_density},
        {"saturated vapour enthalpy", steam_row_vapour_enthalpy},
        {"steam volume", steam_row_volume},
        {"steam enthalpy", boil_steam_enthalpy},
        {"steam density", boil_steam_density},
        {"steam heat capacity", boil_steam_heat_capacity},
        {"steam enthalpy above liquid", steam_row_above_liquid},
    };
    const char *name = published_text(row, "quantity");
    for (size_t i = 0; i < sizeof quantities / sizeof *quantities; i++)
        if (strcmp(quantities[i].name, name) == 0)
            return &quantities[i];
    fail_msg("no such quantity: %s", name);
    return NULL;
}

/* SI units in one of the row's. */
static inline double steam_row_unit(published *table)
{
    static const struct {
        const char *name;
        double size;
    } units[] = {
        {"K", 1},     {"degC", 1},    {"m3/kg", 1},   {"kg/m3", 1},     {"kPa", 1e3},
        {"MPa", 1e6}, {"MPa/K", 1e6}, {"kJ/kg", 1e3}, {"kJ/kg/K", 1e3},
    };
    const char *name = published_text(table, "unit");
    for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
        if (strcmp(units[i].name, name) == 0)
            return units[i].size;
    }
    fail_msg("no such unit: %s", name);
    return 0;
}

/* What the model gives, in the row's unit. */
static inline double steam_row_model(published *row)
{
    const double si = steam_row_quantity(row)->of(published_number(row, "temperature_K"), published_number(row, "pressure_Pa"));
    return strcmp(published_text(row, "unit"), "degC") == 0 ? si - 273.15 : si / steam_row_unit(row);
}

#endif
