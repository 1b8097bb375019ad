/* sheet_use.c -- rows of the designer's sheet: standing idle, a year. */
#include <math.h>

#include "base/constants.h"
#include "commands/size/sheet.h"
#include "design/idle.h"
#include "design/rinse.h"
#include "design/room_air.h"

/* A joule to the bath costs what its fuel does; NaN: not stated. */
static double fuel_price(const sheet *s)
{
    const scenario *scene = s->facts.scenario;
    bool volume = scenario_setting_of(scene, "prices", "gas")->dimension == DIM_VOLUME;
    switch (scene->plant.heater.source) {
    case BOIL_HEAT_GAS:
        return scene->prices.gas / (volume ? BOIL_PROPANE_J_M3 : 1);
    case BOIL_HEAT_ELECTRIC:
        return scene->prices.electricity;
    case BOIL_HEAT_STEAM:
        break;
    }
    return (double)NAN;
}

/* NaN: not stated. */
static double money(sheet *s, const char *name, double cost)
{
    if (isnan(cost))
        return 0;
    const char *currency = s->facts.scenario->prices.currency;
    sheet_put(sheet_add(s, SHEET_NUMBER, SHEET_YOURS, " %s, %.8s", name, currency != NULL ? currency : "cost"), cost);
    return cost;
}

static void insulation(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    const double hours = d->hours_a_year, price = fuel_price(s) / sheet_fuel_share(s);
    const boil_wall_insulation w = {f->plant.losses.insulation_conductivity_W_mK, 10, f->boiling_K,
                                    f->plant.ambient.temperature_K};
    double touch = boil_insulation_touch(&w),
           pays = boil_insulation_economic(&w, hours, price, d->capital_rate * d->insulation_price);
    sheet_row *r;
    if (isnan(touch)) {
        sheet_say(s, SHEET_WARNING, "the room is as hot as a hand bears: no insulation keeps the wall from burning");
        return;
    }
    if (isnan(hours * price * d->insulation_price))
        sheet_missing(s, "insulation that pays", "give [design] hours a year, insulation price, [prices]");
    else {
        r = sheet_add(s, SHEET_LENGTH, SHEET_FORMULA, "insulation that pays");
        r->assumed = true;
        sheet_put(r, pays);
    }
    r = sheet_add(s, SHEET_LENGTH, SHEET_UNREAD, "insulation to order, for touch or pay");
    r->assumed = true;
    sheet_put(r, fmax(touch, pays));
}

/* Of fuel, as it stands at the boil. */
static void lid_saves(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double saves_W = fmax(0, f->hold_W[0] - f->hold_W[1]) / sheet_fuel_share(s);
    if (isnan(f->hold_W[0] - f->hold_W[1]))
        return;
    sheet_put(sheet_add(s, SHEET_HEAT, SHEET_RUN, "a lid saves of fuel, held at the boil"), saves_W);
    money(s, "an hour", saves_W * 3600 * fuel_price(s));
}

void sheet_standby(sheet *s)
{
    static const char *const lids[] = {"lid off", "lid on"};
    const sheet_facts *f = &s->facts;
    double idle_s = f->scenario->design.idle_s;
    s->group = "STANDBY";
    sheet_put(sheet_add(s, SHEET_HOUR, SHEET_RUN, "heat-up from the room, with the need"), f->heat_up_s);
    for (int lid = 1; lid >= 0; lid--) {
        sheet_row *r =
            sheet_add(s, SHEET_TEMPERATURE, SHEET_RUN, "%.20s off, %s: then at", format_duration(idle_s).text, lids[lid]);
        r->assumed = !sheet_given(s, "design", "idle");
        sheet_put(r, f->idle[lid].end_K);
        sheet_put(sheet_add(s, SHEET_HOUR, SHEET_RUN, " back at the boil after, design heat"), f->idle[lid].reheat_s);
        r = sheet_add(s, SHEET_ENERGY, SHEET_RUN, " hold at the boil / reheat");
        sheet_put(r, f->hold_W[lid] * idle_s);
        sheet_put(r, f->design_W * f->idle[lid].reheat_s);
    }
    lid_saves(s);
    insulation(s);
}

static double fuel_year(sheet *s, double hours_s)
{
    const sheet_facts *f = &s->facts;
    double share = sheet_fuel_share(s), full = f->design_W / share * hours_s;
    sheet_row *r = sheet_add(s, SHEET_YEAR, SHEET_FORMULA, "%s, full dial / just enough",
                             f->plant.heater.source == BOIL_HEAT_GAS        ? "fuel"
                             : f->plant.heater.source == BOIL_HEAT_ELECTRIC ? "current"
                                                                            : "steam's heat");
    sheet_put(r, full);
    if (!isnan(f->steel_W))
        sheet_put(r, fmin(full, (fmax(f->calm_W[0], f->hold_W[0]) + f->steel_W) / share * hours_s));
    return money(s, "full dial", full * fuel_price(s));
}

static void rinse_rows(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double D = f->drag_out_kg_s / f->density_kg_m3, ratio = f->scenario->design.rinse_ratio;
    sheet_row *r = sheet_add(s, SHEET_TRICKLE, SHEET_FORMULA, "rinse for %.4g : 1, 1 / 2 / 3 stages", ratio);
    r->assumed = !sheet_given(s, "design", "rinse ratio");
    for (int stages = 1; stages <= 3; stages++)
        sheet_put(r, boil_rinse_flow(D, ratio, stages));
}

static double salts_year(sheet *s, double hours_s)
{
    const sheet_facts *f = &s->facts;
    double kg = f->drag_out_salts_kg_s * hours_s;
    sheet_put(sheet_add(s, SHEET_MASS, SHEET_RUN, "salts carried out"), kg);
    double cost = money(s, "salts", kg * f->scenario->prices.salts);
    rinse_rows(s);
    sheet_say(s, SHEET_REMARK,
              "Poorly drained parts carry out five times as much, packed baskets eight times (handbook figures, from memory).");
    return cost;
}

static double air_year(sheet *s, double hours)
{
    const sheet_facts *f = &s->facts;
    double air = sheet_air_m3_s(s), days = f->scenario->exhaust.degree_days_F;
    if (isnan(air) || isnan(days)) {
        sheet_missing(s, "heat for make-up air", "give [exhaust] hood, degree days");
        return 0;
    }
    double heat = boil_room_air_year(air, f->plant.ambient.pressure_Pa, hours / 50, days / 1.8);
    sheet_row *r = sheet_add(s, SHEET_YEAR, SHEET_UNREAD, "heat for make-up air, 50 weeks");
    sheet_put(r, heat);
    bool burnt = f->plant.heater.source == BOIL_HEAT_GAS;
    return money(s, burnt ? "make-up air at 80 %" : "make-up air", heat / (burnt ? 0.8 : 1) * fuel_price(s));
}

/* By volume or by mass, as its price is stated. */
static double water_cost(const sheet *s, double kg)
{
    const scenario *scene = s->facts.scenario;
    bool mass = scenario_setting_of(scene, "prices", "water")->dimension == DIM_MASS;
    return scene->prices.water * (mass ? kg : kg / boil_water_density(293.15));
}

/* Of one bath, by volume or by mass, as its price is stated. */
static void dump(sheet *s)
{
    const sheet_facts *f = &s->facts;
    bool mass = scenario_setting_of(f->scenario, "prices", "waste")->dimension == DIM_MASS;
    double m3 = boil_tank_area(&f->plant.tank) * f->plant.tank.level_m;
    money(s, "each bath thrown away", f->scenario->prices.waste * (mass ? f->density_kg_m3 : 1) * m3);
}

/* What it comes to for a shift as long as the schedule, and for the steel that goes through. */
static void shares_of(sheet *s, double sum, double hours_s)
{
    const sheet_facts *f = &s->facts;
    double kg = f->steel_kg_s * hours_s, hundred_lb_kg = unit_to_si(DIM_MASS, "lb", 100);
    if (isnan(kg))
        return;
    sheet_put(sheet_add(s, SHEET_NUMBER, SHEET_YOURS, " for a shift as in the schedule"),
              sum * f->size->size->schedule.duration_s / hours_s);
    sheet_put(sheet_add(s, SHEET_MASS, SHEET_YOURS, " steel, as in the schedule"), kg);
    sheet_put(sheet_add(s, SHEET_NUMBER, SHEET_YOURS, " for 100 lb (45.4 kg) of steel"), sum * hundred_lb_kg / kg);
}

void sheet_year(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double hours = f->scenario->design.hours_a_year, hours_s = hours * 3600;
    s->group = "A YEAR";
    if (isnan(hours)) {
        sheet_missing(s, "fuel, water, salts, air, money", "give [design] hours a year");
        return;
    }
    sheet_put(sheet_add(s, SHEET_HOUR, SHEET_YOURS, "works"), hours_s);
    double sum = fuel_year(s, hours_s), water = f->makeup_kg_s[SHEET_DESIGN] * hours_s;
    sheet_put(sheet_add(s, SHEET_VOLUME, SHEET_FORMULA, "water, with the design heat"), water / boil_water_density(293.15));
    sum += money(s, "water", water_cost(s, water));
    if (isnan(f->drag_out_salts_kg_s))
        sheet_missing(s, "salts, rinse", "give loads in [schedule]");
    else
        sum += salts_year(s, hours_s);
    sum += air_year(s, hours);
    if (sum > 0) {
        sheet_put(sheet_add(s, SHEET_NUMBER, SHEET_YOURS, "all that has a price, at full dial"), sum);
        shares_of(s, sum, hours_s);
    } else
        sheet_missing(s, "cost", "give [prices]");
    dump(s);
    sheet_say(s, SHEET_REMARK,
              "Old bath is waste of pH over 12.5: D002 by 40 CFR 261.22; ask about D001 for nitrate and nitrite. "
              "What is left idle at the boil without a lid is not in these figures.");
}
