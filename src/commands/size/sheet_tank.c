/* sheet_tank.c -- rows of the designer's sheet: the tank. */
#include <math.h>

#include "base/constants.h"
#include "commands/size/sheet.h"
#include "design/exhaust.h"
#include "design/published_units.h"
#include "design/walls.h"

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
