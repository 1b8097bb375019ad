/* sheet_air.c -- rows of the designer's sheet: exhaust and water. */
#include <math.h>
#include <string.h>

#include "commands/size/sheet.h"
#include "design/exhaust.h"
#include "design/makeup.h"
#include "design/published_units.h"
#include "design/room_air.h"
#include "equipment/ambient.h"

/* The side a slot runs along, and how far one slot would have to draw. */
typedef struct {
    double along_m, across_m, area_m2;
} pool;

static pool pool_of(const sheet *s)
{
    const boil_tank *t = &s->facts.plant.tank;
    const scenario_exhaust *e = &s->facts.scenario->exhaust;
    double area = boil_tank_area(t);
    if (t->shape == BOIL_TANK_UPRIGHT_CYLINDER)
        return (pool){t->diameter_m, t->diameter_m + e->set_back_m, area};
    bool length = e->along == SLOT_ALONG_LENGTH;
    return (pool){length ? t->length_m : t->width_m, (length ? t->width_m : t->length_m) + e->set_back_m, area};
}

static double across_of(const pool *p, boil_hood h)
{
    return p->across_m / p->along_m / (h == BOIL_HOOD_TWO_SIDES ? 2 : 1);
}

static double air_of(const sheet *s, boil_hood h)
{
    const sheet_facts *f = &s->facts;
    const scenario_exhaust *e = &f->scenario->exhaust;
    pool p = pool_of(s);
    double control = boil_exhaust_control_velocity(sheet_class(f->scenario, f->boiling_K), h);
    if (h == BOIL_HOOD_ENCLOSING)
        return control * e->open_area_m2;
    if (h == BOIL_HOOD_PUSH_PULL)
        return isnan(control) ? control : boil_exhaust_pull_rate(f->boiling_K) * p.area_m2;
    return boil_exhaust_lateral_rate(control, across_of(&p, h), e->baffled) * p.area_m2;
}

double sheet_air_m3_s(const sheet *s)
{
    boil_hood h = s->facts.scenario->exhaust.hood;
    pool p = pool_of(s);
    if (h == BOIL_HOOD_NONE || boil_exhaust_width(h, p.across_m) == BOIL_WIDTH_REFUSED)
        return (double)NAN;
    return air_of(s, h);
}

static void width_words(sheet *s)
{
    const scenario_exhaust *e = &s->facts.scenario->exhaust;
    pool p = pool_of(s);
    boil_width_verdict width = boil_exhaust_width(e->hood, p.across_m);
    if (width == BOIL_WIDTH_TWO_BETTER)
        sheet_say(s, SHEET_WARNING, "one slot draws over 20 in: two slots or push-pull wanted");
    if (across_of(&p, e->hood) > 1 && e->hood != BOIL_HOOD_PUSH_PULL && e->hood != BOIL_HOOD_ENCLOSING)
        sheet_say(s, SHEET_WARNING,
                  "a slot that draws further than it is long is undesirable, over twice as far not practicable");
}

/* The scenario's own draught, not that of the hood. */
static bool draughty(sheet *s)
{
    double own = s->facts.scenario->plant.ambient.draught_m_s;
    bool over = own > BOIL_EXHAUST_CALM;
    if (over)
        sheet_say(s, SHEET_WARNING,
                  "draught %.0f ft/min is over the table's 50: baffle the tank or stop the draught; these rates are too "
                  "small",
                  own / BOIL_FOOT_A_MINUTE);
    return over;
}

static void unlisted(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const scenario_exhaust *e = &f->scenario->exhaust;
    boil_exhaust_class c = sheet_class(f->scenario, f->boiling_K);
    pool p = pool_of(s);
    if (e->hood == BOIL_HOOD_NONE)
        sheet_missing(s, "air, slot, duct, make-up air", "give [exhaust] hood");
    else if (e->hood == BOIL_HOOD_ENCLOSING && isnan(e->open_area_m2))
        sheet_missing(s, "air", "give [exhaust] open area");
    else if (boil_exhaust_width(e->hood, p.across_m) == BOIL_WIDTH_REFUSED)
        sheet_missing(s, "air", "refused, too wide for such slots: on two sides to 48 in, push-pull or enclosing");
    else if (boil_exhaust_general_only(c))
        sheet_missing(s, "air", "general ventilation by this class");
    else if (isnan(f->control_m_s))
        sheet_missing(s, "air", "the table for this class is to be read in the book");
    else
        sheet_missing(s, "air", "the slot draws over twice its length");
}

double sheet_slot_m(const sheet *s)
{
    return pool_of(s).along_m * (s->facts.scenario->exhaust.hood == BOIL_HOOD_TWO_SIDES ? 2 : 1);
}

static void duct(sheet *s, double air)
{
    boil_hood h = s->facts.scenario->exhaust.hood;
    boil_exhaust_duct d = boil_exhaust_duct_of(air, sheet_slot_m(s));
    if (h == BOIL_HOOD_ENCLOSING)
        d.slot_m = d.plenum_m = (double)NAN;
    sheet_row *r = sheet_add(s, SHEET_LENGTH, SHEET_UNREAD,
                             h == BOIL_HOOD_TWO_SIDES ? "each slot / plenum / one duct" : "slot / plenum / duct");
    sheet_put(r, d.slot_m);
    sheet_put(r, d.plenum_m);
    sheet_put(r, d.duct_m);
    r = sheet_add(s, SHEET_DRAUGHT_LOSS, SHEET_UNREAD, "hood loss, the hood alone");
    sheet_put(r, d.loss_Pa);
}

static void replaced_air(sheet *s, double air)
{
    const sheet_facts *f = &s->facts;
    const scenario_exhaust *e = &f->scenario->exhaust;
    const boil_ambient *room = &f->plant.ambient;
    if (isnan(e->winter_K))
        sheet_missing(s, "heat for make-up air", "give [exhaust] winter air");
    else
        sheet_put(sheet_add(s, SHEET_HEAT, SHEET_UNREAD, "heat for make-up air in winter"),
                  boil_room_air_heat(air, room->pressure_Pa, fmax(0, room->temperature_K - e->winter_K)));
    double vapour = fmax(f->vapour_kg_s, f->makeup_kg_s[SHEET_DESIGN]);
    sheet_put(sheet_add(s, SHEET_TEMPERATURE, SHEET_FORMULA, "dew point in the duct, to be drained"),
              boil_room_air_dew_point(air, room->pressure_Pa, room->temperature_K, boil_ambient_vapour_pressure(room), vapour));
}

void sheet_exhaust(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const scenario_exhaust *e = &f->scenario->exhaust;
    boil_exhaust_class c = sheet_class(f->scenario, f->boiling_K);
    double air = sheet_air_m3_s(s);
    size_t first = s->rows_count;
    s->group = "EXHAUST";
    sheet_say(s, SHEET_REMARK,
              "Class %c-%d: caustic mist, and how near the boil. Tables from memory, not read: minimums for still air; a "
              "smoke test decides.",
              'A' + (char)c.letter, c.number);
    if (isnan(air)) {
        unlisted(s);
        return;
    }
    sheet_put(sheet_add(s, SHEET_SPEED, SHEET_UNREAD, "control velocity"), f->control_m_s);
    if (e->hood == BOIL_HOOD_ONE_SIDE || e->hood == BOIL_HOOD_TWO_SIDES) {
        pool p = pool_of(s);
        sheet_put(sheet_add(s, SHEET_NUMBER, SHEET_FORMULA, "W/L, width that a slot draws over"), across_of(&p, e->hood));
    }
    bool doubted = draughty(s);
    sheet_row *r = sheet_add(s, SHEET_AIR, SHEET_UNREAD, "air%s", e->baffled ? ", baffled" : "");
    sheet_put(r, air);
    width_words(s);
    if (e->hood == BOIL_HOOD_ONE_SIDE) {
        r = sheet_add(s, SHEET_AIR, SHEET_UNREAD, " with two slots");
        sheet_put(r, air_of(s, BOIL_HOOD_TWO_SIDES));
    }
    if (e->hood == BOIL_HOOD_PUSH_PULL)
        sheet_put(sheet_add(s, SHEET_AIR, SHEET_UNREAD, " its push, by a slot of 3/16 in"),
                  boil_exhaust_push(3.0 / 16 * BOIL_INCH) * pool_of(s).along_m);
    duct(s, air);
    replaced_air(s, air);
    for (size_t i = first; i < s->rows_count; i++)
        s->rows[i].doubted = doubted;
}

static double flow(const sheet *s, sheet_heat_of of)
{
    return s->facts.makeup_kg_s[of] / boil_water_density(s->facts.water_K);
}

static void valve(sheet *s, const char *what, double flow_m3_s)
{
    double gauge = s->facts.scenario->design.water_gauge_Pa;
    bool assumed = !sheet_given(s, "design", "water pressure");
    sheet_row *r = sheet_add(s, SHEET_FLOW, SHEET_FORMULA, "%s", what);
    r->assumed = true;
    sheet_put(r, flow_m3_s);
    r = sheet_add(s, SHEET_NUMBER, SHEET_FORMULA, " its Cv at %.0f psi", gauge / BOIL_PSI);
    r->assumed = assumed;
    sheet_put(r, boil_makeup_valve(flow_m3_s, gauge));
    r = sheet_add(s, SHEET_LENGTH, SHEET_UNREAD, " or a plain hole");
    r->assumed = assumed;
    sheet_put(r, boil_makeup_orifice(flow_m3_s, gauge, BOIL_MAKEUP_DISCHARGE));
}

void sheet_water(sheet *s)
{
    s->group = "WATER";
    sheet_row *r = sheet_add(s, SHEET_TRICKLE, SHEET_FORMULA, "makeup at hold / need / design");
    sheet_put(r, flow(s, SHEET_HOLD));
    sheet_put(r, flow(s, SHEET_NEED));
    sheet_put(r, flow(s, SHEET_DESIGN));
    valve(s, "valve by hand, 1.5 x design", BOIL_MAKEUP_HAND * flow(s, SHEET_DESIGN));
    valve(s, "valve on/off, 3 x design", BOIL_MAKEUP_ON_OFF * flow(s, SHEET_DESIGN));
    sheet_say(s, SHEET_WARNING,
              "never a ball valve of a half inch: it lets through a hundred times as much. Air gap by the plumbing code, "
              "and the valve shut while the bath does not boil");
}
