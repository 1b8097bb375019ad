#include "scenario/draft.h"

#include <math.h>

#include "base/constants.h"
#include "design/combustion.h"
#include "transfer/dissolution.h"

/* A volume in a minute becomes a mass at the water's own temperature. */
static void settle_control(draft *d)
{
    boil_water_control *c = &d->out->plant.control;
    bool freezing = d->out->plant.ambient.temperature_K < BOIL_ZERO_CELSIUS;
    if (!draft_has(d, "water control"))
        return;
    if (!draft_line(d, "water control", "water temperature")->found) {
        if (freezing)
            draft_missing(d, "water control", "'water temperature', because the room is below freezing");
        else
            c->water_K = d->out->plant.ambient.temperature_K;
    }
    if (draft_setting(d, "water control", "rate")->dimension == DIM_VOLUME_FLOW)
        c->rate_kg_s *= boil_water_density(c->water_K);
}

/* Water is as warm as the room, where that is not freezing; a volume is weighed at its own temperature. */
static void settle_afloat(draft *d)
{
    boil_water_afloat *a = &d->out->plant.afloat;
    if (!draft_line(d, "bath", "water afloat")->good)
        return;
    if (a->temperature_K == 0)
        a->temperature_K = fmax(d->out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    if (draft_setting(d, "bath", "water afloat")->dimension == DIM_VOLUME)
        a->mass_kg *= boil_water_density(a->temperature_K);
}

/* A plate of salt, with its pores, over the whole bath or its floor. */
static void settle_plate(draft *d, const char *words, double *kg)
{
    if (draft_line(d, "bath", words)->good && draft_setting(d, "bath", words)->dimension == DIM_LENGTH)
        *kg = boil_dissolution_crust_mass(*kg, boil_tank_area(&d->out->plant.tank));
}

static void settle_fallen_out(draft *d)
{
    boil_plant *p = &d->out->plant;
    settle_plate(d, "crust", &p->crust_kg);
    settle_plate(d, "salt on the floor", &p->bed_kg);
    p->salt_stated = draft_line(d, "bath", "crust")->found || draft_line(d, "bath", "salt on the floor")->found;
}

/* A flow, or a volume, says how much heat there is of liquid propane alone. */
static void settle_fuel(draft *d)
{
    scenario *out = d->out;
    bool propane = out->plant.heater.source == BOIL_HEAT_GAS && out->fuel == FUEL_PROPANE;
    bool by_flow = draft_line(d, "heat", "input")->good && draft_setting(d, "heat", "input")->dimension == DIM_VOLUME_FLOW;
    bool by_volume = draft_line(d, "prices", "gas")->good && draft_setting(d, "prices", "gas")->dimension == DIM_VOLUME;
    if (by_flow && !propane)
        draft_report_setting(d, "heat", "input",
                             "a flow is an input of liquid propane alone: write fuel = propane, or the input in power");
    if (by_volume && !propane)
        draft_report_setting(
            d, "prices", "gas",
            "natural gas is priced by its heat, such as 1.20 per therm; by volume only liquid propane is, with fuel = propane");
    if (by_flow)
        out->plant.heater.input_W *= BOIL_PROPANE_J_M3;
}

/* A gauge counts from the room's pressure. */
static void settle_steam(draft *d)
{
    scenario *out = d->out;
    double ambient = out->plant.ambient.pressure_Pa;
    if (isnan(out->steam_gauge_Pa))
        return;
    if (draft_setting(d, "heat", "steam pressure")->dimension == DIM_PRESSURE)
        out->steam_gauge_Pa -= ambient;
    out->plant.heater.steam_K = boil_water_saturation_temperature(out->steam_gauge_Pa + ambient);
}

/* The next time that the clock shows the shift's end; water as warm as the room. */
static void settle_plan(draft *d)
{
    const double day_s = 86400;
    scenario_plan *p = &d->out->plan;
    double water_K = fmax(d->out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
    if (draft_line(d, "plan", "end")->good)
        p->end_s += p->end_s > d->out->start_s ? -d->out->start_s : day_s - d->out->start_s;
    if (draft_setting(d, "plan", "water")->dimension == DIM_VOLUME_FLOW)
        p->water_kg_s *= boil_water_density(water_K);
}

/* What several keys share, or what is no field of the plant. */
void draft_settle(draft *d)
{
    scenario *out = d->out;
    out->plant.charge.basis = draft_line(d, "bath", "strength")->found        ? BOIL_INITIAL_BY_STRENGTH
                              : draft_line(d, "bath", "salt fraction")->found ? BOIL_INITIAL_BY_SALT_FRACTION
                                                                              : BOIL_INITIAL_BY_BOILING_POINT;
    if (!isnan(out->freeboard_m))
        out->plant.tank.level_m = out->plant.tank.depth_m - out->freeboard_m;
    if (!isnan(out->altitude_m))
        out->plant.ambient.pressure_Pa = boil_ambient_pressure_at_altitude(out->altitude_m);
    else
        draft_setting(d, "room", "altitude")->state = SETTING_ABSENT;
    if (isnan(out->turndown))
        draft_setting(d, "heat", "turndown")->state = SETTING_ABSENT;
    else
        out->plant.heat_control.minimum_fire = 1 / out->turndown;
    settle_control(d);
    settle_steam(d);
    settle_afloat(d);
    settle_fallen_out(d);
    settle_fuel(d);
    settle_plan(d);
    if (draft_has(d, "rinse") && !draft_line(d, "rinse", "temperature")->found)
        out->plant.rinse.temperature_K = fmax(out->plant.ambient.temperature_K, BOIL_ZERO_CELSIUS);
}
