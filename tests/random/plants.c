#include "random/plants.h"

#include <string.h>

#include "random/variants.h"

static const char *const off_on[] = {"off", "on"};

static void above(stream *r, random_plant *p, draft *d)
{
    static const double minutes[] = {10, 15, 20, 30, 45, 75};
    d->by_clock = MAYBE(r);
    d->start_s = 60 * floor(stream_between(r, 0, 1400));
    p->duration_s = 60 * minutes[stream_below(r, 6)];
    if (MAYBE(r))
        draft_set(d, "", "title = Drawn %.0f", stream_between(r, 0, 100));
    draft_set(d, "", "duration = %s", OF(TIME, p->duration_s));
    if (d->by_clock)
        draft_set(d, "", "times = by the clock");
    draft_set(d, "", "start = {^ 0}");
}

static void shape(stream *r, random_plant *p, draft *d)
{
    double size = stream_between(r, 0.4, 2.2), width = stream_rounded(size * stream_between(r, 0.3, 1));
    if (MAYBE(r)) {
        draft_set(d, "tank", "shape = upright cylinder");
        draft_set(d, "tank", "diameter = %s", OF(LENGTH, size));
        p->area_m2 = 0.7854 * size * size;
        return;
    }
    if (MAYBE(r))
        draft_set(d, "tank", "shape = box");
    draft_set(d, "tank", "length = %s", OF(LENGTH, size));
    draft_set(d, "tank", "width = %s", OF(LENGTH, width));
    p->area_m2 = size * width;
}

static void inside(stream *r, const random_plant *p, draft *d)
{
    if (MAYBE(r)) {
        draft_set(d, "tank", "heated = inside");
        if (stream_chance(r, 0.5))
            draft_set(d, "tank", "heater top = %s", OF(LENGTH, stream_rounded(p->level_m * stream_between(r, 0.1, 0.7))));
    } else if (MAYBE(r)) {
        draft_set(d, "tank", "heated = from below");
    }
    if (MAYBE(r))
        draft_set(d, "tank", "parts top = %s", OF(LENGTH, stream_rounded(p->level_m * stream_between(r, 0.5, 0.95))));
}

static void tank(stream *r, random_plant *p, draft *d)
{
    shape(r, p, d);
    p->depth_m = stream_between(r, 0.3, 1.3);
    p->level_m = stream_rounded(p->depth_m * stream_between(r, 0.4, 0.9));
    draft_set(d, "tank", "depth = %s", OF(LENGTH, p->depth_m));
    if (MAYBE(r))
        draft_set(d, "tank", "freeboard = %s", OF(LENGTH, p->depth_m - p->level_m));
    else
        draft_set(d, "tank", "level = %s", OF(LENGTH, p->level_m));
    if (MAYBE(r))
        draft_set(d, "tank", "mark = %s", OF(LENGTH, stream_rounded(p->level_m * stream_between(r, 0.9, 1.05))));
    if (MAYBE(r))
        draft_set(d, "tank", "mark read = %s", MAYBE(r) ? "still" : "boiling");
    if (MAYBE(r))
        draft_set(d, "tank", "wall = %s", MAYBE(r) ? "none" : OF(LENGTH, stream_between(r, 0.002, 0.02)));
    if (MAYBE(r))
        draft_set(d, "tank", "insulation = %s", MAYBE(r) ? "none" : OF(LENGTH, stream_between(r, 0.01, 0.15)));
    if ((p->positions = MAYBE(r)))
        draft_set(d, "tank", "positions = %d", VARIANT_LAST_PLACE);
    inside(r, p, d);
}

static void blend(stream *r, draft *d)
{
    double nitrate = floor(stream_between(r, 0, 35)), nitrite = floor(stream_between(r, 0, 12));
    if (MAYBE(r))
        draft_set(d, "bath", "salts = 100 %% NaOH");
    else
        draft_set(d, "bath", "salts = %.0f %% NaOH, %.0f %% NaNO3, %.0f %% sodium nitrite", 100 - nitrate - nitrite, nitrate,
                  nitrite);
}

static double strength(stream *r, draft *d)
{
    double share = boil_stream_share(r);
    if (share < 0.05) {
        draft_set(d, "bath", "salt fraction = 0 %%");
        return CELSIUS(95);
    }
    blend(r, d);
    if (share < 0.25)
        draft_set(d, "bath", "salt fraction = %.3g %%", stream_between(r, 3, 58));
    else if (share < 0.4)
        draft_set(d, "bath", "strength = %s", OF(CONCENTRATION, stream_between(r, 50, 900)));
    else {
        double boils = stream_between(r, 106, 148);
        draft_set(d, "bath", "boiling point = %s", OF(TEMPERATURE, CELSIUS(boils)));
        return CELSIUS(boils);
    }
    return CELSIUS(120);
}

static void bath(stream *r, random_plant *p, draft *d)
{
    p->boiling_K = strength(r, d);
    p->bath_kg = 1350 * p->area_m2 * p->level_m;
    bool cold = stream_chance(r, 0.35);
    if (cold) {
        draft_set(d, "bath", "temperature = %s",
                  OF(TEMPERATURE, stream_rounded(p->boiling_K - stream_spread(r, 0.5, 90) - 273.15) + 273.15));
        double afloat_kg = stream_rounded(p->bath_kg * stream_spread(r, 0.0005, 0.03));
        const char *warm = MAYBE(r) ? " at {5 310}" : "";
        if (stream_chance(r, 0.4))
            draft_set(d, "bath", "water afloat = %s%s", MAYBE(r) ? OF(VOLUME, afloat_kg * 1e-3) : OF(MASS, afloat_kg), warm);
    }
    if (cold && MAYBE(r))
        draft_set(d, "bath", "crust = %s",
                  MAYBE(r) ? OF(LENGTH, stream_spread(r, 1e-4, 3e-3)) : OF(MASS, stream_spread(r, 0.05, 5)));
    if (cold && MAYBE(r))
        draft_set(d, "bath", "salt on the floor = %s",
                  MAYBE(r) ? OF(LENGTH, stream_spread(r, 1e-4, 3e-3)) : OF(MASS, stream_spread(r, 0.05, 5)));
    else if (stream_chance(r, 0.1))
        draft_set(d, "bath", "salt on the floor = none");
    if (MAYBE(r))
        draft_set(d, "bath", "elevation factor = %.3g", stream_between(r, 0.9, 1.08));
}

static void fuel(stream *r, const random_plant *p, draft *d)
{
    static const char *const sources[] = {"gas", "electric", "gas"};
    size_t source = stream_below(r, 3);
    if (source < 2)
        draft_set(d, "heat", "source = %s", sources[source]);
    if (source != 1 && MAYBE(r))
        draft_set(d, "heat", "fuel = %s", MAYBE(r) ? "propane" : "natural gas");
    draft_set(d, "heat", "input = %s",
              OF(POWER, stream_rounded(p->area_m2 * stream_spread(r, 6e3, 70e3) / (source == 1 ? 1 : 0.65))));
    if (MAYBE(r))
        draft_set(d, "heat", "efficiency = %.3g %%", stream_between(r, 40, 100));
}

static void steam(stream *r, const random_plant *p, draft *d)
{
    draft_set(d, "heat", "source = steam");
    if (MAYBE(r))
        draft_set(d, "heat", "steam pressure = %s",
                  MAYBE(r) ? OF(PRESSURE, stream_between(r, 5e5, 14e5)) : OF(GAUGE_PRESSURE, stream_between(r, 4e5, 12e5)));
    else
        draft_set(d, "heat", "steam temperature = %s", OF(TEMPERATURE, CELSIUS(stream_between(r, 150, 195))));
    draft_set(d, "heat", "coil area = %s", OF(AREA, stream_rounded(p->area_m2 * stream_between(r, 0.5, 2))));
    if (MAYBE(r))
        draft_set(d, "heat", "coil coefficient = %s", OF(COEFFICIENT, stream_between(r, 300, 1500)));
}

static void fire(stream *r, const random_plant *p, draft *d)
{
    double set_K = stream_rounded(p->boiling_K - 273.15 + stream_between(r, -25, 15)) + 273.15;
    bool modulating = MAYBE(r), thermostat = !modulating && MAYBE(r);
    if (modulating || thermostat) {
        draft_set(d, "heat", "control = %s", modulating ? "modulating" : "thermostat");
        draft_set(d, "heat", "set point = %s", OF(TEMPERATURE, set_K));
    } else if (MAYBE(r)) {
        draft_set(d, "heat", "control = dial");
    }
    if (!modulating && !thermostat && MAYBE(r))
        draft_set(d, "heat", "dial = %.3g %%", stream_between(r, 20, 100));
    if (!modulating && MAYBE(r))
        draft_set(d, "heat", "differential = %s", OF(DIFFERENCE, stream_between(r, 1, 10)));
    if (modulating && MAYBE(r))
        draft_set(d, "heat", "band = %s", OF(DIFFERENCE, stream_between(r, 1, 15)));
    if (modulating && MAYBE(r))
        draft_set(d, "heat", "minimum fire = %.3g %%", stream_between(r, 0, 60));
    else if (modulating && MAYBE(r))
        draft_set(d, "heat", "turndown = %.3g to 1", stream_between(r, 2, 20));
}

static void heat(stream *r, const random_plant *p, draft *d)
{
    if (stream_chance(r, 0.15))
        steam(r, p, d);
    else
        fuel(r, p, d);
    fire(r, p, d);
    if (MAYBE(r))
        draft_set(d, "heat", "lag = %s", OF(TIME, stream_between(r, 0, 300)));
    if (MAYBE(r))
        draft_set(d, "heat", "sensor lag = %s", OF(TIME, stream_between(r, 0, 90)));
    if (MAYBE(r))
        draft_set(d, "heat", "relight = %s", OF(TIME, stream_between(r, 0, 60)));
    if (stream_chance(r, 0.1))
        draft_set(d, "heat", "high limit = %s", OF(TEMPERATURE, p->boiling_K + stream_between(r, -3, 20)));
}

static void losses(stream *r, draft *d)
{
    if (MAYBE(r))
        draft_set(d, "losses", "wall coefficient = %s", OF(COEFFICIENT, stream_between(r, 0, 12)));
    if (MAYBE(r))
        draft_set(d, "losses", "evaporation factor = %.3g", stream_between(r, 0, 2));
    if (MAYBE(r))
        draft_set(d, "losses", "convection factor = %.3g", stream_between(r, 0, 2));
    if (MAYBE(r))
        draft_set(d, "losses", "radiation factor = %.3g", stream_between(r, 0, 2));
}

static void room(stream *r, draft *d)
{
    if (MAYBE(r))
        draft_set(d, "room", "altitude = %s", OF(LENGTH, stream_between(r, -300, 2500)));
    else if (MAYBE(r))
        draft_set(d, "room", "station pressure = %s", OF(PRESSURE, stream_between(r, 75e3, 105e3)));
    if (MAYBE(r))
        draft_set(d, "room", "temperature = %s", OF(TEMPERATURE, CELSIUS(stream_between(r, 2, 45))));
    if (MAYBE(r))
        draft_set(d, "room", "humidity = %.3g %%", stream_between(r, 0, 100));
    if (MAYBE(r))
        draft_set(d, "room", "draught = %s", OF(SPEED, stream_between(r, 0, 1.5)));
}

static void valve(stream *r, const random_plant *p, draft *d)
{
    bool proportioned = stream_chance(r, 0.4);
    double kg_s = p->area_m2 * stream_spread(r, 1e-3, 0.06);
    const char *mode = proportioned ? "time-proportioned" : MAYBE(r) ? "none" : "on/off";
    draft_set(d, "water control", "mode = %s", mode);
    if (mode[0] == 'o' && MAYBE(r))
        draft_set(d, "water control", "differential = %s", OF(DIFFERENCE, stream_between(r, 0.3, 4)));
    draft_set(d, "water control", "set point = %s", OF(TEMPERATURE, fmax(373.5, p->boiling_K + stream_between(r, -3, 3))));
    draft_set(d, "water control", "rate = %s",
              MAYBE(r) ? OF(MASS_FLOW, stream_rounded(kg_s)) : OF(VOLUME_FLOW, stream_rounded(kg_s * 1e-3)));
    if (MAYBE(r))
        draft_set(d, "water control", "water temperature = %s", OF(TEMPERATURE, CELSIUS(stream_between(r, 2, 60))));
    if (MAYBE(r))
        draft_set(d, "water control", "dead time = %s", OF(TIME, stream_between(r, 0, 60)));
    if (MAYBE(r))
        draft_set(d, "water control", "sensor lag = %s", OF(TIME, stream_between(r, 0, 90)));
    if (MAYBE(r))
        draft_set(d, "water control", "only while boiling = %s", MAYBE(r) ? "yes" : "no");
    if (MAYBE(r))
        draft_set(d, "water control", "low level cut-off = %s",
                  MAYBE(r) ? "none" : OF(LENGTH, stream_rounded(p->level_m * stream_between(r, 0.3, 0.97))));
    if (proportioned && MAYBE(r))
        draft_set(d, "water control", "band = %s", OF(DIFFERENCE, stream_between(r, 0.5, 5)));
    if (proportioned && MAYBE(r))
        draft_set(d, "water control", "period = %s", OF(TIME, stream_between(r, 20, 300)));
}

static void fittings(stream *r, const random_plant *p, draft *d)
{
    if (MAYBE(r))
        draft_set(d, "fittings", "mixer = %s", off_on[stream_below(r, 2)]);
    if (MAYBE(r))
        draft_set(d, "fittings", "mixer power = %s", OF(POWER, stream_rounded(p->bath_kg * stream_between(r, 0, 0.5))));
    if (MAYBE(r))
        draft_set(d, "fittings", "lid = %s", off_on[stream_below(r, 2)]);
    if (MAYBE(r))
        draft_set(d, "fittings", "lid coefficient = %s", OF(COEFFICIENT, stream_between(r, 2, 15)));
    if (MAYBE(r))
        draft_set(d, "fittings", "lid return = %.3g %%", stream_between(r, 0, 100));
    if (MAYBE(r))
        draft_set(d, "fittings", "exhaust = %s", off_on[stream_below(r, 2)]);
    if (MAYBE(r))
        draft_set(d, "fittings", "still draught = %s", OF(SPEED, stream_between(r, 0, 0.4)));
    if (MAYBE(r))
        draft_set(d, "fittings", "grain size = %s", OF(LENGTH, stream_spread(r, 0.0003, 0.006)));
}

static void rinse(stream *r, random_plant *p, draft *d)
{
    p->rinse = MAYBE(r);
    if (!p->rinse)
        return;
    draft_set(d, "rinse", "temperature = %s", OF(TEMPERATURE, CELSIUS(stream_between(r, 5, 90))));
    if (MAYBE(r))
        draft_set(d, "rinse", "film = %s", OF(VOLUME_PER_AREA, stream_between(r, 1e-6, 3e-4)));
    if (MAYBE(r))
        draft_set(d, "rinse", "dwell = %s", OF(TIME, stream_between(r, 1, 600)));
}

static void limits(stream *r, const random_plant *p, draft *d)
{
    if (MAYBE(r))
        draft_set(d, "limits", "recovery = %s", OF(TIME, stream_spread(r, 20, 900)));
    if (MAYBE(r))
        draft_set(d, "limits", "freeboard = %s", OF(LENGTH, stream_between(r, 0, 0.25)));
    double below = stream_between(r, 1, 8), over = stream_between(r, 1, 8);
    if (MAYBE(r))
        draft_set(d, "limits", "boiling point = %s to %s", OF(TEMPERATURE, fmax(373.5, p->boiling_K - below)),
                  OF(TEMPERATURE, fmax(374.5, p->boiling_K + over)));
    if (MAYBE(r))
        draft_set(d, "limits", "load = %s", OF(CONCENTRATION, stream_between(r, 20, 200)));
}

static void by_hand(stream *r, draft *d)
{
    if (MAYBE(r))
        draft_set(d, "by hand", "steady = %s", OF(TIME, stream_between(r, 1, 120)));
    if (MAYBE(r))
        draft_set(d, "by hand", "reaction = %s", OF(TIME, stream_between(r, 1, 40)));
    if (MAYBE(r))
        draft_set(d, "by hand", "thermometer step = %s", OF(DIFFERENCE, stream_between(r, 0, 2)));
    if (MAYBE(r))
        draft_set(d, "by hand", "mark step = %s", OF(LENGTH, stream_between(r, 0, 0.02)));
}

/* Nothing of these reaches the bath: they say what it costs, what is called how, and who stands there. */
static void beside(stream *r, random_plant *p, draft *d)
{
    static const char *const prices[] = {"gas = 1.2 per therm", "electricity = 0.15 per kWh", "steam = 30 per t",
                                         "salts = 1.9 per lb",  "liquid = 0.8 per L",         "labour = 30 per h",
                                         "currency = EUR",      "water = 6 per 1000 gal",     "waste = 2 per gal"};
    if (MAYBE(r))
        for (size_t i = 0; i < sizeof prices / sizeof prices[0]; i++)
            if (stream_chance(r, 0.7))
                draft_set(d, "prices", "%s", prices[i]);
    if ((p->measures = MAYBE(r))) {
        draft_set(d, "measures", "bucketful = %s", OF(VOLUME, stream_rounded(p->bath_kg * stream_spread(r, 2e-7, 5e-6))));
        draft_set(d, "measures", "sack = %s", OF(MASS, stream_rounded(p->bath_kg * stream_spread(r, 1e-3, 0.01))));
    }
    if ((p->breaks = MAYBE(r)))
        draft_set(d, "breaks", "%s to %s coffee", AT(floor(0.4 * p->duration_s)), AT(floor(0.55 * p->duration_s)));
    if (MAYBE(r))
        draft_set(d, "uncertain", "losses evaporation factor = 0.75 to 1.25, likely 1");
    if (MAYBE(r))
        draft_set(d, "uncertain", "mixing time factor = 0.34 | 1 | 3");
}

/* Drawn from a copy: no run minds any of it, and what else is drawn stays as it was. */
static void hood(stream then, draft *d)
{
    static const char *const hoods[] = {"none", "lateral one side", "lateral two sides", "push-pull", "enclosing"};
    stream *r = &then;
    if (!MAYBE(r))
        return;
    draft_set(d, "exhaust", "hood = %s", hoods[stream_below(r, sizeof hoods / sizeof hoods[0])]);
    draft_set(d, "exhaust", "along = %s", stream_chance(r, 0.5) ? "length" : "width");
    draft_set(d, "exhaust", "baffled = %s", stream_chance(r, 0.5) ? "yes" : "no");
    draft_set(d, "exhaust", "class = %s", stream_chance(r, 0.5) ? "as the bath" : "B-3");
    draft_set(d, "exhaust", "set back = %s", OF(LENGTH, stream_between(r, 0, 0.2)));
    draft_set(d, "exhaust", "open area = %s", OF(AREA, stream_between(r, 0.1, 5)));
    draft_set(d, "exhaust", "winter air = %s", OF(TEMPERATURE, stream_between(r, 240, 300)));
    draft_set(d, "exhaust", "degree days = %.0f", stream_between(r, 0, 9000));
}

static void wishes(stream then, draft *d)
{
    stream *r = &then;
    if (!MAYBE(r))
        return;
    draft_set(d, "design", "margin = %s", OF(FRACTION, stream_between(r, 0, 1)));
    draft_set(d, "design", "draft = %s", stream_chance(r, 0.5) ? "atmospheric" : "fan");
    draft_set(d, "design", "flue temperature = %s", OF(TEMPERATURE, stream_between(r, 400, 1200)));
    draft_set(d, "design", "flue oxygen = %s", OF(FRACTION, stream_between(r, 0, 0.13)));
    draft_set(d, "design", "casing loss = %s", OF(FRACTION, stream_between(r, 0, 0.2)));
    draft_set(d, "design", "tube efficiency = %s", OF(FRACTION, stream_between(r, 0.61, 0.79)));
    draft_set(d, "design", "watt density = %s", OF(FLUX, stream_between(r, 1e4, 5e4)));
    draft_set(d, "design", "heated share = %s", OF(FRACTION, stream_between(r, 0.2, 1)));
    draft_set(d, "design", "peak flux = %.2f", stream_between(r, 1, 3));
    draft_set(d, "design", "floor = %s", OF(LENGTH, stream_between(r, 0.003, 0.02)));
    draft_set(d, "design", "floor bars = %s", OF(LENGTH, stream_between(r, 0.1, 1)));
    draft_set(d, "design", "scale = %s", OF(LENGTH, stream_between(r, 0, 0.01)));
    draft_set(d, "design", "stress = %s", OF(STRESS, stream_between(r, 5e7, 2e8)));
    draft_set(d, "design", "corrosion allowance = %s", OF(LENGTH, stream_between(r, 0, 0.005)));
    draft_set(d, "design", "basket width = %s", OF(LENGTH, stream_between(r, 0.1, 1)));
    draft_set(d, "design", "spacing = %s", OF(LENGTH, stream_between(r, 0, 0.3)));
}

static void running(stream then, draft *d)
{
    stream *r = &then;
    if (!MAYBE(r))
        return;
    draft_set(d, "design", "water pressure = %s", OF(GAUGE_PRESSURE, stream_between(r, 1e5, 5e5)));
    draft_set(d, "design", "water temperature = %s", OF(TEMPERATURE, stream_between(r, 280, 340)));
    draft_set(d, "design", "rinse ratio = %.0f", stream_between(r, 2, 5000));
    draft_set(d, "design", "hours a year = %.0f", stream_between(r, 100, 8000));
    draft_set(d, "design", "idle = %s", OF(TIME, stream_between(r, 600, 3e5)));
    draft_set(d, "design", "insulation price = %.1f per m3", stream_between(r, 100, 3000));
    draft_set(d, "design", "capital rate = %s", OF(FRACTION, stream_between(r, 0.02, 0.5)));
}

/* Scripts that are done beside what is drawn of the shift. */
static void lessons(stream then, const random_plant *p, draft *d)
{
    stream *r = &then;
    int asked = draft_group(d);
    if (!stream_chance(r, 0.2))
        return;
    draft_set(d, "lesson", "goal = To see what %.0f is", stream_between(r, 0, 100));
    draft_set(d, "lesson", "question = What now?");
    draft_set(d, "lesson", "hint = Look.");
    draft_set(d, "lesson", "debrief = That was it.");
    draft_set(d, "lesson", "done with care = The same, slower.");
    draft_set(d, "lesson", "pass = rim >= %s", OF(LENGTH, stream_between(r, 0, 0.3)));
    draft_set(d, "lesson", "pass = quiet <= %s", OF(TIME, stream_between(r, 0, 900)));
    draft_set(d, "careful", "%s heat 50 %%", AT(floor(0.5 * p->duration_s)));
    draft_set(d, "reckless", "%s heat 100 %%", AT(floor(0.5 * p->duration_s)));
    draft_add(d, "choices", asked, "at %s ask How much heat?", AT(floor(0.4 * p->duration_s)));
    draft_add(d, "choices", asked, "choice None = %s heat off", AT(floor(0.4 * p->duration_s)));
    draft_add(d, "choices", asked, "choice As it is =");
    draft_set(d, "must name", "steam-surge");
}

/* What only a plan asks for. */
static void plans(stream then, draft *d)
{
    stream *r = &then;
    if (!stream_chance(r, 0.2))
        return;
    draft_set(d, "plan", "hoist = %s", OF(TIME, stream_between(r, 5, 300)));
    draft_set(d, "plan", "settle = %s", OF(TIME, stream_between(r, 0, 900)));
    draft_set(d, "plan", "water = %s", OF(MASS_FLOW, stream_between(r, 0.01, 0.9)));
    draft_set(d, "plan", "end = {^ 1800}");
    draft_set(d, "plan", "odds = %.0f %%", stream_between(r, 50, 99));
    draft_add(d, "jobs", draft_group(d), "pins: 60 lb, bar 3/4 in, basket 15 lb, for 20 min");
}

random_plant random_settings(stream *r, draft *d)
{
    random_plant p = {.boiling_K = 0};
    above(r, &p, d);
    tank(r, &p, d);
    bath(r, &p, d);
    heat(r, &p, d);
    losses(r, d);
    room(r, d);
    if (stream_chance(r, 0.2))
        valve(r, &p, d);
    fittings(r, &p, d);
    rinse(r, &p, d);
    limits(r, &p, d);
    by_hand(r, d);
    beside(r, &p, d);
    hood(*r, d);
    lessons(*r, &p, d);
    wishes(*r, d);
    running(*r, d);
    plans(*r, d);
    return p;
}

draft random_draft(uint64_t seed)
{
    stream r = {seed};
    draft d = {.count = 0};
    random_plant p = random_settings(&r, &d);
    random_acts(&r, &p, &d);
    return d;
}
