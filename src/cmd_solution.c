#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "argument.h"
#include "boil.h"
#include "commands.h"
#include "json.h"
#include "plan.h"
#include "program.h"
#include "report.h"

enum { SALTS, SALT_FRACTION, STRENGTH, BOILING_POINT, TEMPERATURE, PRESSURE, ALTITUDE, ELEVATION, JSON, OPTIONS };

static const option options[OPTIONS] = {
    [SALTS] = {"salts", "BLEND", "the dry blend by mass, such as '80 % NaOH, 15 % NaNO3, 5 % NaNO2'"},
    [SALT_FRACTION] = {"salt-fraction", "PERCENT", "salts by mass of bath"},
    [STRENGTH] = {"strength", "QUANTITY", "salts per volume of bath at its boiling point"},
    [BOILING_POINT] = {"boiling-point", "TEMPERATURE", "where it boils; give one of these three"},
    [TEMPERATURE] = {"temperature", "TEMPERATURE", "where the properties are wanted; default at the boil"},
    [PRESSURE] = {"pressure", "QUANTITY", "station pressure, not reduced to sea level; default 1 atm"},
    [ALTITUDE] = {"altitude", "LENGTH", "above sea level, instead of the pressure"},
    [ELEVATION] = {"elevation-factor", "NUMBER", "boiling point's rise above water's, relative to the correlation"},
    [JSON] = {"json", NULL, "as JSON, in SI units"},
};

/* Where a scenario says the same: the values are read by the same rules. */
static const struct {
    int option;
    const char *section, *words;
} settings[] = {
    {SALTS, "bath", "salts"},
    {SALT_FRACTION, "bath", "salt fraction"},
    {STRENGTH, "bath", "strength"},
    {BOILING_POINT, "bath", "boiling point"},
    {TEMPERATURE, "bath", "temperature"},
    {PRESSURE, "room", "station pressure"},
    {ALTITUDE, "room", "altitude"},
    {ELEVATION, "bath", "elevation factor"},
};

static bool complain(const char *what)
{
    program_complain("%s", what);
    return false;
}

static bool given_together(const given *g)
{
    int strengths =
        (g->values[SALT_FRACTION] != NULL) + (g->values[STRENGTH] != NULL) + (g->values[BOILING_POINT] != NULL);
    if (g->values[SALTS] == NULL)
        return complain("'solution' needs --salts, such as --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2'");
    if (strengths != 1)
        return complain("'solution' needs one of --salt-fraction, --strength and --boiling-point");
    if (g->values[PRESSURE] != NULL && g->values[ALTITUDE] != NULL)
        return complain("give --pressure or --altitude, not both");
    return true;
}

static bool settings_read(const given *g, scenario *s)
{
    bool good = true;
    for (size_t i = 0; i < sizeof settings / sizeof settings[0]; i++) {
        const char *text = g->values[settings[i].option];
        const key *k = key_find(settings[i].section, settings[i].words, strlen(settings[i].words));
        if (text != NULL && k != NULL)
            good = argument_setting(options[settings[i].option].name, text, k, s) && good;
    }
    s->plant.charge.basis = g->values[STRENGTH] != NULL        ? BOIL_BY_STRENGTH
                            : g->values[SALT_FRACTION] != NULL ? BOIL_BY_SALT_FRACTION
                                                               : BOIL_BY_BOILING_POINT;
    if (g->values[ALTITUDE] != NULL && good)
        s->plant.room.pressure_Pa = boil_pressure_at_altitude(s->altitude_m);
    return good;
}

/* The answer: one kilogram of bath. */
typedef struct {
    const boil_plant *plant;
    double salt_fraction, strength_kg_m3, boiling_point_K, temperature_K, density_kg_m3;
    double water_activity, slope_K; /* of the boiling point with the salt fraction */
    boil_heat heat;
} looked_up;

/* Along the salt fraction, at 1 kg and a fixed blend: salts in for water. */
static double slope_with_fraction(const boil_slope *s, const double blend[BOIL_SALTS])
{
    double slope = -s->water;
    for (int i = 0; i < BOIL_SALTS; i++)
        slope += s->salt[i] * blend[i];
    return slope;
}

/* The end of a range is still in it; a rounding error beyond it too. */
static bool in_range(double temperature_K, double equivalent_molality)
{
    boil_range r = boil_solution_range(temperature_K, equivalent_molality);
    bool within = r.margin > -1e-9;
    if (!within)
        program_complain("%s comes to %.4g %s, and what is known of it ends at %.4g %s", r.quantity, r.value, r.unit,
                         r.limit, r.unit);
    return within;
}

static bool look_up(const boil_plant *p, looked_up *a)
{
    boil_charge_state c;
    boil_slope slope;
    boil_solution_guess guess = {0, 0};
    boil_conditions air = boil_conditions_at(p->room.pressure_Pa, p->elevation_factor);
    if (boil_plant_charge(p, &c) != BOIL_OK)
        return complain("there is no boiling bath of these salts and this strength that the correlations cover");
    boil_mixture kilogram = boil_mixture_of(p->charge.blend, c.salt_fraction);
    if (boil_solution_boiling_point(&air, &kilogram, &guess, &a->boiling_point_K, &slope) != BOIL_OK)
        return complain("no boiling point was found");
    a->plant = p;
    a->temperature_K = p->charge.temperature_K > 0 ? p->charge.temperature_K : a->boiling_point_K;
    a->salt_fraction = c.salt_fraction;
    a->strength_kg_m3 = boil_solution_strength(&air, &kilogram);
    a->density_kg_m3 = boil_solution_density(&kilogram, a->temperature_K);
    a->water_activity = boil_solution_activity(&kilogram, a->temperature_K, &guess);
    a->heat = boil_solution_heat(&kilogram, a->temperature_K);
    a->slope_K = slope_with_fraction(&slope, p->charge.blend);
    return in_range(a->temperature_K, guess.equivalent_molality);
}

static void as_json(const looked_up *a)
{
    json j = json_to(stdout);
    json_object(&j, NULL);
    json_number(&j, "salt_fraction", a->salt_fraction);
    json_number(&j, "strength_kg_m3", a->strength_kg_m3);
    json_number(&j, "boiling_point_K", a->boiling_point_K);
    json_number(&j, "temperature_K", a->temperature_K);
    json_number(&j, "density_kg_m3", a->density_kg_m3);
    json_number(&j, "enthalpy_J_kg", a->heat.enthalpy_J);
    json_number(&j, "heat_capacity_J_kgK", a->heat.heat_capacity_J_K);
    json_number(&j, "water_activity", a->water_activity);
    json_number(&j, "water_partial_enthalpy_J_kg", a->heat.water);
    json_number(&j, "boiling_point_slope_K", a->slope_K);
    json_close(&j);
}

static void as_text(const looked_up *a)
{
    const double *blend = a->plant->charge.blend;
    printf("%.4g %% NaOH, %.4g %% NaNO3, %.4g %% NaNO2 by mass\n\n", 100 * blend[BOIL_NAOH], 100 * blend[BOIL_NANO3],
           100 * blend[BOIL_NANO2]);
    plan_line(stdout, "pressure", DIM_PRESSURE, a->plant->room.pressure_Pa, "");
    plan_line(stdout, "salts by mass", DIM_FRACTION, a->salt_fraction, "");
    plan_line(stdout, "strength", DIM_CONCENTRATION, a->strength_kg_m3, "salts per volume at the boil");
    plan_line(stdout, "boils at", DIM_TEMPERATURE, a->boiling_point_K, "");
    plan_line(stdout, "1 % more salts", DIM_DIFFERENCE, 0.01 * a->slope_K, "higher");
    printf("\nat\n");
    plan_line(stdout, "temperature", DIM_TEMPERATURE, a->temperature_K,
              a->temperature_K > a->boiling_point_K + 0.01 ? "above its boiling point" : "");
    plan_line(stdout, "density", DIM_CONCENTRATION, a->density_kg_m3, "");
    printf(" %-40s %.4g kJ/kgK\n", "heat capacity", 1e-3 * a->heat.heat_capacity_J_K);
    printf(" %-40s %.4g kJ/kg\n", "enthalpy, liquid water at 0 degC zero", 1e-3 * a->heat.enthalpy_J);
    printf(" %-40s %.4g kJ/kg\n", "partial enthalpy of the water in it", 1e-3 * a->heat.water);
    printf(" %-40s %.4g\n", "water activity", a->water_activity);
    putchar('\n');
    report_uncertainty(&a->plant->charge, SHOW_SI, stdout);
    report_caution(stdout);
}

/* The rules for blend, temperature and factor are the plant's; a tank of a cubic metre stands in for the rest. */
static void stand_in(boil_tank *t)
{
    t->length_m = t->width_m = t->depth_m = 1;
    t->level_m = 0.5;
}

static int answer(const given *g, scenario *s)
{
    looked_up a;
    stand_in(&s->plant.tank);
    if (s->settings == NULL) {
        program_complain("out of memory");
        return STATUS_STOPPED;
    }
    if (!settings_read(g, s))
        return STATUS_USAGE;
    const char *problem = boil_plant_problem(&s->plant);
    if (problem != NULL)
        program_complain("%s", problem);
    if (problem != NULL || !look_up(&s->plant, &a))
        return STATUS_USAGE;
    if (g->values[JSON] != NULL)
        as_json(&a);
    else
        as_text(&a);
    return STATUS_DONE;
}

static int run(const given *g)
{
    if (!given_together(g))
        return STATUS_USAGE;
    scenario s = {.plant = boil_plant_default(), .altitude_m = (double)NAN};
    s.settings = calloc(key_count(), sizeof *s.settings);
    int status = answer(g, &s);
    scenario_free(&s);
    return status;
}

const command command_solution = {
    .name = "solution",
    .summary = "look-up: boiling point, strength, density, heats",
    .description =
        "Properties of a bath of the given salts, at its boiling point or below it, at sea level or higher up. It "
        "needs the salts and one of salt fraction, strength and boiling point.",
    .example = PROGRAM_NAME
    " solution --salts '80 % NaOH, 15 % NaNO3, 5 % NaNO2' --boiling-point '285 degF' --altitude '900 ft'",
    .options = options,
    .options_count = OPTIONS,
    .run = run,
};
