/* sheet_tank.c -- rows of the designer's sheet: standing idle, the tank, a year. */
#include <math.h>
#include <string.h>

#include "base/constants.h"
#include "commands/size/sheet.h"
#include "design/exhaust.h"
#include "design/idle.h"
#include "design/published_units.h"
#include "design/rinse.h"
#include "design/room_air.h"
#include "design/walls.h"
#include "equipment/heater.h"

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

static void wall_rows(sheet *s, const char *name, double side_m)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    double depth = f->plant.tank.depth_m, t = boil_wall_order(side_m, depth, f->density_kg_m3, d->stress_Pa, d->corrosion_m);
    if (isnan(t)) {
        sheet_missing(s, name, "no plate to 2 in without belts, or too narrow");
        return;
    }
    sheet_row *r = sheet_add(s, SHEET_LENGTH, SHEET_UNREAD, "%s", name);
    r->assumed = true;
    sheet_put(r, t);
    r = sheet_add(s, SHEET_LENGTH, SHEET_UNREAD, " worn: bulge, limit");
    sheet_put(r, boil_wall_strain(side_m, depth, f->density_kg_m3, t - d->corrosion_m).bulge_m);
    sheet_put(r, side_m * BOIL_WALL_BULGE_MOST);
}

static void rim_rows(sheet *s, double long_m)
{
    const sheet_facts *f = &s->facts;
    double load = boil_rim_load(f->plant.tank.depth_m, f->density_kg_m3);
    sheet_put(sheet_add(s, SHEET_LINE_LOAD, SHEET_FORMULA, "rim, each long side, must carry"), load);
    sheet_put(sheet_add(s, SHEET_INERTIA, SHEET_FORMULA, " its stiffness I, at least"), boil_rim_inertia(long_m, load));
    bool frame = boil_tank_area(&f->plant.tank) * f->plant.tank.depth_m > BOIL_UNFRAMED_MOST;
    sheet_say(s, SHEET_WARNING, "%sthese walls are with a rim that cannot move: without it they bulge some ten times as far",
              frame ? "over 30 ft3 a handbook wants a frame; " : "");
}

static void floor_rows(sheet *s, double long_m, double short_m)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    double pressure = f->density_kg_m3 * BOIL_GRAVITY * f->plant.tank.depth_m;
    double bars = d->floor_bars_m > 0 ? fmin(d->floor_bars_m, long_m) : long_m, a = fmax(bars, short_m),
           b = fmin(bars, short_m);
    double t = boil_floor_order(a, b, pressure, d->stress_Pa, d->corrosion_m);
    if (isnan(t)) {
        sheet_missing(s, "floor plate", "none to 2 in: give [design] floor bars");
        return;
    }
    sheet_row *r = sheet_add(s, SHEET_LENGTH, SHEET_TABLE, d->floor_bars_m > 0 ? "floor on its bars" : "floor without bars");
    r->assumed = true;
    sheet_put(r, t);
    boil_plate_strain worn = boil_floor_strain(a, b, pressure, t - d->corrosion_m);
    sheet_put(sheet_add(s, SHEET_STRESS, SHEET_TABLE, " worn: stress"), worn.stress_Pa);
    sheet_put(sheet_add(s, SHEET_LENGTH, SHEET_TABLE, " worn: sag"), worn.bulge_m);
}

static void baskets(sheet *s, double long_m)
{
    const scenario_design *d = &s->facts.scenario->design;
    if (isnan(d->basket_m)) {
        sheet_missing(s, "baskets side by side", "give [design] basket width");
        return;
    }
    sheet_row *r = sheet_add(s, SHEET_COUNT, SHEET_PRACTICE, "baskets side by side");
    r->assumed = true;
    sheet_put(r, fmax(0, size_places(long_m, d->basket_m, d->spacing_m)));
}

/* From one long side to the middle, past the plenum of a slot there. */
static void reach(sheet *s, double short_m)
{
    const double arm_m = 24 * BOIL_INCH;
    double air = sheet_air_m3_s(s), hood_m = 0;
    if (!isnan(air) && s->facts.scenario->exhaust.hood == BOIL_HOOD_ONE_SIDE)
        hood_m = boil_exhaust_duct_of(air, sheet_slot_m(s)).plenum_m;
    sheet_row *r = sheet_add(s, SHEET_LENGTH, SHEET_PRACTICE, "reach to the middle, hood counted");
    r->assumed = true;
    sheet_put(r, short_m / 2 + hood_m);
    if (short_m / 2 + hood_m > arm_m)
        sheet_say(s, SHEET_NOTICE, "over 24 in from one side no arm reaches: a hoist");
    sheet_say(s, SHEET_REMARK,
              "Practice: the rim 34 to 42 in over the standing floor; parts covered by 3 in of bath, 3 in from the walls and "
              "4 in off a heated floor.");
}

void sheet_tank(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const boil_tank *t = &f->plant.tank;
    double area = boil_tank_area(t);
    s->group = "TANK";
    sheet_row *r = sheet_add(s, SHEET_LENGTH, SHEET_RUN, "least rim with the freeboard wanted");
    sheet_put(r, f->rim_m);
    r->doubted = !(f->rim_m <= t->depth_m);
    if (r->doubted)
        sheet_say(s, SHEET_WARNING, "with the design heat this tank does not keep the freeboard that is wanted");
    r = sheet_add(s, SHEET_MASS, SHEET_FORMULA, "bath at level / brimful, no steel");
    sheet_put(r, f->density_kg_m3 * area * t->level_m);
    sheet_put(r, f->density_kg_m3 * area * t->depth_m);
    sheet_put(sheet_add(s, SHEET_VOLUME, SHEET_FORMULA, "second containment, brimful"), area * t->depth_m);
    if (t->shape != BOIL_TANK_BOX) {
        sheet_missing(s, "walls, rim, floor, baskets", "a box's alone are worked out");
        return;
    }
    double long_m = fmax(t->length_m, t->width_m), short_m = fmin(t->length_m, t->width_m);
    wall_rows(s, "wall, rim held, long side", long_m);
    wall_rows(s, "wall, rim held, short side", short_m);
    rim_rows(s, long_m);
    floor_rows(s, long_m, short_m);
    baskets(s, long_m);
    reach(s, short_m);
    sheet_say(s, SHEET_REMARK,
              "Not a vessel design: supports, thermal stress, a hot floor, earthquakes and the hoist are not in it.");
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
    const double hundred_lb_kg = 45.359237;
    const sheet_facts *f = &s->facts;
    double kg = f->steel_kg_s * hours_s;
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
