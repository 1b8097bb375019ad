/* sheet_heat.c -- rows of the designer's sheet: the heat, the burner, the floor, other heaters. */
#include <math.h>

#include "base/constants.h"
#include "commands/size/sheet.h"
#include "design/burner.h"
#include "design/caustic.h"
#include "design/combustion.h"
#include "design/floor_metal.h"
#include "design/heaters.h"
#include "design/published_units.h"
#include "properties/water.h"

/* Of evaporation, draught, the parts' temperature and the boiling point over their ranges, on a trough: sqrt(9.6^2 + 7.2^2 + 5.2^2 + 0.8^2) %. */
static const double margin_of_doubt = 0.131;

static void rim_with(sheet *s, const boil_heater_window *w, double design_W)
{
    if (boil_window_end_shut(&w->likely))
        sheet_say(s, SHEET_WARNING, "with the heat that is needed it boils over: see 'size' without --sheet");
    else if (size_is_beyond(&w->likely, design_W))
        sheet_say(s, SHEET_WARNING, "with the design heat it boils over: a higher rim or lighter loads");
    else if (size_is_beyond(&w->leaves_likely, design_W))
        sheet_say(s, SHEET_WARNING, "with the design heat too little freeboard is left: a higher rim or lighter loads");
    else if (size_is_beyond(&w->possible, design_W))
        sheet_say(s, SHEET_NOTICE, "with the design heat it may boil over: see 'size' without --sheet");
}

static void own_heat(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double own = f->size->heats.own_W;
    if (own < fmax(f->need_W, f->hood_need_W))
        sheet_say(s, SHEET_WARNING, "the scenario's own heater gives less than is needed");
    else if (own < f->design_W)
        sheet_say(s, SHEET_NOTICE, "the scenario's own heater gives less than the design heat");
    rim_with(s, &f->size->heats, f->design_W);
    if (f->design_W > f->size->heats.strength_W)
        sheet_say(s, SHEET_WARNING,
                  "with the design heat the scenario's own water control does not hold the strength: a larger valve");
}

void sheet_heat(sheet *s)
{
    const sheet_facts *f = &s->facts;
    s->group = "HEAT";
    sheet_put(sheet_add(s, SHEET_HEAT, SHEET_RUN, "need, every boil back in %s", format_duration(f->size->size->limit_s).text),
              f->need_W);
    if (f->hood_beyond)
        sheet_say(s, SHEET_WARNING, "in the hood's draught no heat brings every boil back: no order can be made");
    else if (!isnan(f->hood_need_W))
        sheet_put(sheet_add(s, SHEET_HEAT, SHEET_RUN, " at the hood's %.0f ft/min", f->control_m_s / BOIL_FOOT_A_MINUTE),
                  f->hood_need_W);
    else
        sheet_missing(s, " in a hood's draught",
                      f->scenario->exhaust.hood == BOIL_HOOD_NONE ? "give [exhaust] hood"
                                                                  : "no velocity is known for such a hood");
    if (f->hood_beyond)
        return;
    sheet_row *r = sheet_add(s, SHEET_HEAT, SHEET_FORMULA, "design, need + %.4g %%", 100 * f->scenario->design.margin);
    r->assumed = !sheet_given(s, "design", "margin");
    sheet_put(r, f->design_W);
    if (f->scenario->design.margin < margin_of_doubt)
        sheet_say(s, SHEET_NOTICE, "the model's own doubt alone is 13 %%: a smaller margin does not cover it");
    r = sheet_add(s, SHEET_HEAT, SHEET_RUN, "calm losses, lid off / on");
    sheet_put(r, f->calm_W[0]);
    sheet_put(r, f->calm_W[1]);
    r = sheet_add(s, SHEET_HEAT, SHEET_RUN, "to hold the boil, lid off / on");
    sheet_put(r, f->hold_W[0]);
    sheet_put(r, f->hold_W[1]);
    own_heat(s);
}

static double excess_air(const scenario_design *d)
{
    return isnan(d->flue_oxygen) ? BOIL_COMBUSTION_EXCESS_AIR : boil_combustion_excess_of(d->flue_oxygen);
}

/* By its flue gas; NaN: that is not known. */
static double flue_share(const sheet *s)
{
    const scenario_design *d = &s->facts.scenario->design;
    if (isnan(d->flue_K) || s->facts.plant.heater.source != BOIL_HEAT_GAS)
        return (double)NAN;
    return boil_combustion_available(d->flue_K, s->facts.plant.ambient.temperature_K, excess_air(d)) - d->casing_loss;
}

/* A burner that leaves next to nothing by its flue gas is warned of. */
double sheet_fuel_share(const sheet *s)
{
    const boil_heater *h = &s->facts.plant.heater;
    double flue = flue_share(s);
    if (h->source == BOIL_HEAT_STEAM)
        return 1;
    return flue > 0.05 ? fmin(flue, h->efficiency) : h->efficiency;
}

/* Of the fuel, by the efficiency stated and by the flue gas where that is known: the larger. */
static double fuel_W(sheet *s)
{
    const scenario_design *d = &s->facts.scenario->design;
    double stated = s->facts.plant.heater.efficiency, Q = s->facts.design_W, flue = flue_share(s);
    bool yours = sheet_given(s, "heat", "efficiency");
    sheet_row *r = sheet_add(s, SHEET_HEAT, SHEET_YOURS, "fuel at %.4g %%", 100 * stated);
    r->assumed = !yours;
    sheet_put(r, Q / stated);
    r = sheet_add(s, SHEET_HEAT, SHEET_YOURS, " %.4g %% to %.4g %%", 100 * fmax(0.05, stated - 0.1),
                  100 * fmin(1, stated + 0.1));
    r->assumed = true;
    sheet_put(r, Q / fmax(0.05, stated - 0.1));
    sheet_put(r, Q / fmin(1, stated + 0.1));
    if (isnan(flue))
        return Q / stated;
    if (!(flue > 0.05)) {
        sheet_say(s, SHEET_WARNING, "by its flue gas this burner leaves next to nothing in the tank");
        return Q / stated;
    }
    r = sheet_add(s, SHEET_HEAT, SHEET_FORMULA, "fuel by its flue gas, %.3g %%", 100 * flue);
    r->assumed = !sheet_given(s, "design", "casing loss") || isnan(d->flue_oxygen);
    sheet_put(r, Q / flue);
    return Q / sheet_fuel_share(s);
}

static void rating(sheet *s, double fuel)
{
    double altitude = s->facts.scenario->altitude_m, derate = boil_burner_derate(altitude);
    if (s->facts.scenario->design.draft == DRAFT_FAN)
        sheet_say(s, SHEET_REMARK, "A fan burner's rating at altitude is its maker's.");
    else if (isnan(altitude))
        sheet_missing(s, "order at sea-level rating", "give [room] altitude");
    else {
        sheet_put(sheet_add(s, SHEET_HEAT, SHEET_TABLE, "order at sea-level rating"), fuel / derate);
        if (derate < 1)
            sheet_put(sheet_add(s, SHEET_HEAT, SHEET_TABLE, " by a maker who counts from 2000 ft"),
                      fuel / boil_burner_derate_from_2000_ft(altitude));
    }
}

static void element(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double density = f->scenario->design.element_W_m2;
    if (density > BOIL_ELEMENT_MOST * 1.001) {
        sheet_missing(s, "electric", "refused, over 25 W/in2 in caustic: a lower watt density");
        return;
    }
    sheet_row *r = sheet_add(s, SHEET_AREA, SHEET_FORMULA, "electric, face at %.3g W/in2", density / BOIL_WATT_A_SQUARE_INCH);
    r->assumed = !sheet_given(s, "design", "watt density");
    sheet_put(r, boil_element_area(f->design_W, density));
    if (density > BOIL_ELEMENT_STEEL_MOST * 1.001)
        sheet_say(s, SHEET_WARNING, "over 22 W/in2, the most for a steel sheath in alkali");
}

static void current(sheet *s)
{
    const sheet_facts *f = &s->facts;
    double efficiency = f->plant.heater.efficiency;
    s->group = "ELECTRICITY";
    sheet_row *r = sheet_add(s, SHEET_HEAT, SHEET_YOURS, "power at %.4g %%", 100 * efficiency);
    r->assumed = !sheet_given(s, "heat", "efficiency");
    sheet_put(r, f->design_W / efficiency);
    element(s);
    sheet_say(s, SHEET_REMARK, "An element that comes out of the bath burns out: a low-level cut-off above its top.");
}

void sheet_burner(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    if (f->plant.heater.source == BOIL_HEAT_ELECTRIC)
        current(s);
    if (f->plant.heater.source != BOIL_HEAT_GAS)
        return;
    s->group = "BURNER, gas";
    double fuel = fuel_W(s), x = excess_air(d), air_K = f->plant.ambient.temperature_K;
    rating(s, fuel);
    sheet_row *r = sheet_add(s, SHEET_GAS, SHEET_FORMULA, "gas / its air at %.0f %% excess", 100 * x);
    sheet_put(r, fuel / BOIL_METHANE_J_M3);
    sheet_put(r, boil_combustion_air(fuel, x));
    r->assumed = true;
    if (isnan(d->flue_K)) {
        r = sheet_add(s, SHEET_TEMPERATURE, SHEET_FORMULA, "flue gas at %.4g %%, casing %.3g %%",
                      100 * f->plant.heater.efficiency, 100 * d->casing_loss);
        sheet_put(r, boil_combustion_flue_temperature(f->plant.heater.efficiency + d->casing_loss, air_K, x));
        r->assumed = true;
    }
    sheet_put(sheet_add(s, SHEET_RATIO, SHEET_FORMULA, "turndown, full fire to what holds"),
              boil_burner_turndown(f->design_W, fmax(f->calm_W[0], f->hold_W[0])));
    if (f->scenario->exhaust.hood != BOIL_HOOD_NONE && d->draft == DRAFT_ATMOSPHERIC)
        sheet_say(s, SHEET_WARNING,
                  "the hood can pull flue gas into the room: combustion air from outside, and the draft proved "
                  "with the exhaust running");
}

/* The chart is for carbon steel in caustic. */
static void chart(sheet *s, double wetted_K)
{
    if (!(s->facts.plant.charge.blend[BOIL_NAOH] > 0))
        return;
    boil_caustic_zone zone = boil_caustic_zone_of(wetted_K);
    sheet_row *r = sheet_add(s, SHEET_DIFFERENCE, SHEET_UNREAD, "caustic chart, wetted metal over it");
    sheet_put(r, boil_caustic_over(wetted_K));
    r->assumed = true;
    r->doubted = zone != BOIL_CAUSTIC_BELOW;
    if (zone == BOIL_CAUSTIC_PAST_SECOND)
        sheet_say(s, SHEET_WARNING,
                  "past the chart's second line: by the chart stress relief is not enough, nickel alloy is. Practice "
                  "uses welded mild steel here against the chart. Stress-relieve all the same, no cold work, "
                  "inspect welds, contain the brimful volume; no copper, zinc, aluminium");
    else if (zone == BOIL_CAUSTIC_PAST_FIRST)
        sheet_say(s, SHEET_WARNING,
                  "past the chart's first line: welds stress-relieved, no cold work, inspected; contain the brimful "
                  "volume; no copper, zinc, aluminium");
}

static boil_floor_liquid liquid_of(const sheet_facts *f)
{
    return (boil_floor_liquid){f->boiling_K,   f->plant.ambient.pressure_Pa,          f->density_kg_m3, f->vapour_kg_m3,
                               f->latent_J_kg, f->plant.transport.surface_tension_N_m};
}

static boil_floor floor_at(const sheet *s, double flux_W_m2)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    boil_floor_liquid l = liquid_of(f);
    return (boil_floor){.flux_W_m2 = flux_W_m2,
                        .bath_K = f->boiling_K,
                        .head_K = boil_floor_head_rise(&l, f->plant.tank.level_m),
                        .pressure_Pa = f->plant.ambient.pressure_Pa,
                        .scale_m = d->scale_m,
                        .steel_m = isnan(d->floor_m) ? f->plant.tank.wall_thickness_m : d->floor_m};
}

static void floor_warnings(sheet *s, double peak, double outer_K)
{
    if (peak > BOIL_FLOOR_PEAK_MOST)
        sheet_say(s, SHEET_WARNING,
                  "peak flux over 12 kBtu/h ft2, at which an element would be refused: more floor, or a burner that "
                  "spreads its heat");
    if (outer_K > BOIL_FLOOR_METAL_MOST)
        sheet_say(s, SHEET_WARNING, "metal over 650 degF, where steel begins to lose its strength");
    if (s->facts.bed_K > 30)
        sheet_say(s, SHEET_WARNING, "in the run salt lies on the floor, which is %s hotter under it than the bath",
                  format_quantity(UNITS_US, DIM_DIFFERENCE, s->facts.bed_K).text);
}

void sheet_floor(sheet *s)
{
    const sheet_facts *f = &s->facts;
    const scenario_design *d = &f->scenario->design;
    s->group = "FLOOR";
    if (f->plant.tank.heated != BOIL_TANK_HEATED_FROM_BELOW) {
        sheet_missing(s, "flux and metal", "it is heated inside");
        chart(s, f->boiling_K);
        return;
    }
    double mean = f->design_W / (boil_tank_area(&f->plant.tank) * d->heated_share);
    double peak = mean * (f->plant.heater.source == BOIL_HEAT_GAS ? d->peak_flux : 1);
    sheet_row *r = sheet_add(s, SHEET_FLUX, SHEET_FORMULA, "flux, mean / peak x %.3g", peak / mean);
    r->doubted = peak > BOIL_FLOOR_PEAK_MOST;
    r->assumed = !sheet_given(s, "design", "peak flux");
    sheet_put(r, mean);
    sheet_put(r, peak);
    boil_floor at = floor_at(s, peak);
    boil_floor_faces faces = boil_floor_faces_of(&at);
    r = sheet_add(s, SHEET_TEMPERATURE, SHEET_REMEMBERED, "metal at peak, in / outside%s", d->scale_m > 0 ? "" : ", clean");
    r->assumed = true;
    sheet_put(r, faces.inner_K);
    sheet_put(r, faces.outer_K);
    r = sheet_add(s, SHEET_DIFFERENCE, SHEET_FORMULA, "each mm of salt adds, mean / peak");
    r->assumed = true;
    sheet_put(r, boil_floor_per_metre_of_scale(mean) * 1e-3);
    sheet_put(r, boil_floor_per_metre_of_scale(peak) * 1e-3);
    boil_floor_liquid l = liquid_of(f);
    sheet_put(sheet_add(s, SHEET_SHARE, SHEET_REMEMBERED, "peak, of the critical flux"), peak / boil_floor_critical_flux(&l));
    floor_warnings(s, peak, faces.outer_K);
    chart(s, faces.inner_K);
}

static void tube(sheet *s)
{
    const double pipe_m = 4.5 * BOIL_INCH;
    const sheet_facts *f = &s->facts;
    double table = f->scenario->design.tube_efficiency, share = boil_tube_efficiency_at(table, f->boiling_K);
    double length = boil_tube_length(f->design_W, table);
    sheet_row *r = sheet_add(s, SHEET_SHORT, SHEET_TABLE, "fired tube 4 in, length; %.3g %% here", 100 * share);
    r->assumed = !sheet_given(s, "design", "tube efficiency");
    sheet_put(r, length);
    sheet_put(sheet_add(s, SHEET_HEAT, SHEET_FORMULA, " its fuel"), f->design_W / share);
    sheet_put(sheet_add(s, SHEET_FLUX, SHEET_FORMULA, " its flux"), f->design_W / (length * BOIL_PI * pipe_m));
    if (f->design_W < 300 * BOIL_KBTU_H || f->design_W > 2000 * BOIL_KBTU_H)
        sheet_say(s, SHEET_NOTICE, "the tube's table is for 300 to 2000 kBtu/h and water: this extrapolates");
}

static void coil(sheet *s, double steam_K, const char *steam)
{
    const double pipe_m = 1.9 * BOIL_INCH;
    const sheet_facts *f = &s->facts;
    boil_floor at = floor_at(s, 0);
    boil_coil c = {f->design_W, at.bath_K + at.head_K, steam_K, BOIL_COIL_COEFFICIENT};
    boil_coil_size size = boil_coil_size_of(&c);
    if (size.verdict != BOIL_COIL_SIZED) {
        sheet_row *r = sheet_add(s, SHEET_DIFFERENCE, SHEET_TABLE, "steam of %s, over the bath", steam);
        sheet_put(r, size.difference_K);
        sheet_say(s, SHEET_WARNING,
                  size.verdict == BOIL_COIL_CANNOT ? "such steam cannot: it cools the bath"
                                                   : "such steam is too near the bath: no area is worth its name");
        return;
    }
    sheet_row *r = sheet_add(s, SHEET_AREA, SHEET_FORMULA, "steam of %s, coil at U 80", steam);
    r->assumed = true;
    sheet_put(r, size.area_m2);
    sheet_put(sheet_add(s, SHEET_SHORT, SHEET_FORMULA, " as pipe, 1-1/2 in, 1.9 in outside"),
              size.area_m2 / (BOIL_PI * pipe_m));
    sheet_put(sheet_add(s, SHEET_STEAM, SHEET_FORMULA, " its steam; condensate line for 2 x"), size.steam_kg_s);
}

void sheet_heaters(sheet *s)
{
    static const double gauges[] = {15, 100};
    const sheet_facts *f = &s->facts;
    boil_floor at = floor_at(s, 0);
    double room = f->plant.ambient.pressure_Pa;
    s->group = "OTHER HEATERS for the design heat";
    tube(s);
    if (f->plant.heater.source != BOIL_HEAT_ELECTRIC)
        element(s);
    for (size_t i = 0; i < 2; i++) {
        char words[32];
        snprintf(words, sizeof words, "%.0f psig", gauges[i]);
        coil(s, boil_water_saturation_temperature(room + gauges[i] * BOIL_PSI), words);
    }
    if (f->plant.heater.source == BOIL_HEAT_STEAM)
        coil(s, f->plant.heater.steam_K, "the scenario");
    sheet_put(sheet_add(s, SHEET_GAUGE, SHEET_TABLE, "steam that is no hotter than the bath"),
              boil_water_saturation_pressure(at.bath_K + at.head_K) - room);
}
