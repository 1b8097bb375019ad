/* validate/whole_bath.c -- tanks as a whole against what books print and people measured, each with its source; and the rows of a
   surface, a pool or a coil that stand beside them. */
#include "validate/validate.h"

#include "support/whole_bath/air.h"
#include "support/whole_bath/heats.h"
#include "support/whole_bath/pots.h"
#include "support/whole_bath/tanks.h"

/* Steam in water at 100 degC: surface tension 0.0589 N/m [IAPWS R1-76(2014), from memory]. */
static evidence void_fraction(double steam_m_s)
{
    const boil_swell pool = boil_swell_default();
    const double T = CELSIUS(100);
    double drift = boil_swell_drift_velocity(&pool, 0.0589, boil_water_density(T), boil_water_vapour_density(T));
    return (evidence){boil_swell_void_lower(&pool, drift, steam_m_s), boil_swell_void_upper(&pool, drift, steam_m_s)};
}

static evidence void_in_little_steam(void)
{
    return void_fraction(0.02);
}

static evidence void_in_steam(void)
{
    return void_fraction(0.1);
}

static evidence void_in_much_steam(void)
{
    return void_fraction(0.3);
}

/* The model's time constant is a third of the time to 95 %. */
static double mixes(void)
{
    return 3 * boil_swell_mixing_time(1, 0.1, 0.35, 0.7);
}

static const struct {
    const char *id;
    double (*value)(void);
    evidence (*estimates)(void);
} works[] = {
    {"E01", heats_a_tank, NULL},
    {"E02", loses_at_the_surface, NULL},
    {"E03", loses_through_bare_walls, NULL},
    {"E05", cools_bare, NULL},
    {"E06", cools_bare_while_hot, NULL},
    {"E08", cools_bare_while_warm, NULL},
    {"E09", cools_insulated, NULL},
    {"E10", cools_insulated_while_hot, NULL},
    {"E11", cools_insulated_while_warm, NULL},
    {"E12", loses_water_while_it_cools, NULL},
    {"E14", loses_at_150, NULL},
    {"E15", loses_at_180, NULL},
    {"E16", loses_at_180_insulated, NULL},
    {"E21", cools_with_bare_walls, NULL},
    {"E22", cools_with_bright_walls, NULL},
    {"E23", lid_on_two_gallons, NULL},
    {"E24", lid_on_two_quarts, NULL},
    {"E25", lid_on_four_quarts, NULL},
    {"E26", heats_by_a_coil, NULL},
    {"E27", heats_against_its_walls, NULL},
    {"E28", boils_off_a_minute, NULL},
    {"E29", boils_off_a_gallon, NULL},
    {"E31", evaporator_kW, NULL},
    {"E32", evaporator_steam, NULL},
    {"E33", evaporator_economy, NULL},
    {"E34", evaporator_Btu_h, NULL},
    {"E37", mixes_hot, NULL},
    {"E38", cools_the_mixture, NULL},
    {"E39", iron_cools_in_water, NULL},
    {"E40", caustic_warms_water, NULL},
    {"E41", caustic_lies_unstirred, NULL},
    {"E43a", bar_in_a_still_bath, NULL},
    {"E43b", NULL, bar_in_a_pumped_bath},
    {"E44", evaporates_at_40, NULL},
    {"E45", evaporates_at_60, NULL},
    {"E46", evaporates_at_80, NULL},
    {"E47", evaporates_at_94, NULL},
    {"E48", evaporates_in_light_wind, NULL},
    {"E49", evaporates_in_wind, NULL},
    {"E50", evaporates_cool_in_a_breath, NULL},
    {"E51", pool_in_no_wind, NULL},
    {"E52", pool_in_wind, NULL},
    {"E53", share_of_evaporation, NULL},
    {"E54", evaporates_112_lb, NULL},
    {"E56", NULL, void_in_little_steam},
    {"E57", NULL, void_in_steam},
    {"E58", NULL, void_in_much_steam},
    {"E59", mixes, NULL},
    {"E60", mixes, NULL},
    {"E61", evaporates_a_day, NULL},
    {"E62", coil_in_a_vessel, NULL},
    {"E003", evaporator_area, NULL},
    {"E017", evaporator_steam_lb_h, NULL},
    {"E025", halving_economy, NULL},
    {"E026", halving_coefficient, NULL},
    {"E027", halving_area_at_75, NULL},
    {"E028", halving_faster, NULL},
    {"T083", pool_in_a_day, NULL},
};

static evidence work(published *row)
{
    const char *id = published_text(row, "id");
    for (size_t i = 0; i < COUNT(works); i++)
        if (strcmp(works[i].id, id) == 0)
            return works[i].value != NULL ? evidence_of(works[i].value()) : works[i].estimates();
    fail_msg("%s: nothing works out row %s", row->path, id);
    return evidence_of((double)NAN);
}

validate_list validate_whole_bath(void)
{
    static const validate_quantity quantities[] = {{NULL, NULL, "{quantity}", NULL, NULL, work}};
    static const validate_table tables[] = {{"tests/published/whole_bath.csv", quantities, 1}};
    return (validate_list){tables, 1};
}
