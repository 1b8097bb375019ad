#include "random/plants.h"

#define ACTS "schedule"

typedef struct {
    stream *r;
    const random_plant *p;
    draft *d;
    int number; /* of loads, for their names */
    double at_s;
} drawing;

/* A kilogram of bath by volume, and a share of the bath. */
static double share_kg(drawing *g, double low, double high)
{
    return stream_rounded(g->p->bath_kg * stream_spread(g->r, low, high));
}

static void say(draft_text *t, const char *words)
{
    TEXT_ADD(t->text, ", %s", words);
}

static void size(drawing *g, draft_text *t)
{
    static const char *const shapes[] = {"plate", "bar", "ball", "plate"};
    double m = stream_spread(g->r, 0.002, 0.05);
    if (stream_chance(g->r, 0.15))
        TEXT_ADD(t->text, ", tube %s wall %s", OF(LENGTH, m), OF(LENGTH, stream_rounded(m * 0.15)));
    else
        TEXT_ADD(t->text, ", %s %s", shapes[stream_below(g->r, 4)], OF(LENGTH, m));
}

static void hollows(drawing *g, draft_text *t, double load_kg)
{
    double in_all_m3 = stream_rounded(load_kg * stream_spread(g->r, 1e-6, 5e-5));
    bool pieces = stream_chance(g->r, 0.5), hung = stream_chance(g->r, 0.4);
    if (pieces)
        say(t, "20 pieces");
    if (!MAYBE(g->r))
        return;
    TEXT_ADD(t->text, ", pockets %s %s", OF(VOLUME, in_all_m3 / (pieces ? 20 : 1)), pieces ? "each" : "in all");
    if (hung)
        say(t, "drained");
}

static void on_parts(drawing *g, draft_text *t)
{
    if (MAYBE(g->r))
        TEXT_ADD(t->text, ", lowered over %s", OF(TIME, stream_between(g->r, 2, 60)));
    if (MAYBE(g->r))
        TEXT_ADD(t->text, ", coefficient %s", OF(COEFFICIENT, stream_spread(g->r, 200, 4000)));
    if (!g->p->rinse && MAYBE(g->r))
        TEXT_ADD(t->text, ", rinse %s", OF(VOLUME_PER_AREA, stream_between(g->r, 1e-6, 3e-4)));
    if (MAYBE(g->r))
        TEXT_ADD(t->text, ", drag-out %s", OF(VOLUME_PER_AREA, stream_between(g->r, 1e-6, 2e-4)));
    if (g->p->rinse && MAYBE(g->r))
        say(t, "straight in");
    if (g->p->positions && MAYBE(g->r))
        TEXT_ADD(t->text, ", position %d", 1 + g->number);
    if (stream_chance(g->r, 0.1))
        TEXT_ADD(t->text, ", packed %s", OF(LENGTH, stream_between(g->r, 0.05, 0.4)));
    else if (stream_chance(g->r, 0.1))
        TEXT_ADD(t->text, ", area %s", OF(AREA, stream_between(g->r, 0.2, 5)));
}

static draft_text load(drawing *g)
{
    static const char *const metals[] = {"", " steel", " iron"};
    draft_text t = {""};
    double kg = share_kg(g, 0.005, 0.2);
    TEXT_ADD(t.text, "load %s%s", OF(MASS, kg), metals[stream_below(g->r, 3)]);
    size(g, &t);
    hollows(g, &t, kg);
    if (stream_chance(g->r, 0.6))
        TEXT_ADD(t.text, ", at %s", OF(TEMPERATURE, CELSIUS(stream_between(g->r, -10, 90))));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, ", basket %s", OF(MASS, stream_rounded(kg * stream_between(g->r, 0.02, 0.4))));
    on_parts(g, &t);
    return t;
}

/* What water, salts and liquid hang on. */
static void hangs(drawing *g, draft_text *t)
{
    double share = boil_stream_share(g->r);
    if (share < 0.15)
        say(t, "while boiling");
    else if (share < 0.3)
        say(t, "stop with the boil");
    else if (share < 0.4)
        TEXT_ADD(t->text, ", while boiling, no later than %s", AT(fmin(g->at_s + 600, g->p->duration_s - 1)));
}

static draft_text water_until(drawing *g)
{
    draft_text t = {""};
    double kg = share_kg(g, 0.002, 0.05), level = stream_rounded(fmin(g->p->level_m * 1.05, g->p->depth_m * 0.99));
    TEXT_ADD(t.text, "water at %s until ", OF(VOLUME_FLOW, stream_rounded(kg * 1e-3 / stream_spread(g->r, 60, 1000))));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, "the mark");
    else if (MAYBE(g->r))
        TEXT_ADD(t.text, "level %s", OF(LENGTH, level));
    else
        TEXT_ADD(t.text, "boiling point %s", OF(TEMPERATURE, fmax(354, g->p->boiling_K + stream_between(g->r, -4, 1))));
    TEXT_ADD(t.text, ", at most %s", MAYBE(g->r) ? OF(MASS, kg) : OF(VOLUME, kg * 1e-3));
    return t;
}

static draft_text water(drawing *g)
{
    draft_text t = {""};
    if (stream_chance(g->r, 0.2))
        return water_until(g);
    double kg = share_kg(g, 0.0005, 0.05), over_s = stream_spread(g->r, 5, 1200);
    if (g->p->measures && stream_chance(g->r, 0.5))
        TEXT_ADD(t.text, "water 2 bucketful over %s", OF(TIME, over_s));
    else if (MAYBE(g->r))
        TEXT_ADD(t.text, "water %s at %s", OF(VOLUME, kg * 1e-3), OF(VOLUME_FLOW, stream_rounded(kg * 1e-3 / over_s)));
    else
        TEXT_ADD(t.text, "water %s over %s", OF(MASS, kg), OF(TIME, over_s));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, ", at %s", OF(TEMPERATURE, CELSIUS(stream_between(g->r, 2, 80))));
    hangs(g, &t);
    return t;
}

static draft_text salts(drawing *g)
{
    draft_text t = {""};
    if (g->p->measures && stream_chance(g->r, 0.3)) {
        TEXT_ADD(t.text, "salts 3 sack, one every %s over %s", OF(TIME, 120), OF(TIME, stream_spread(g->r, 10, 110)));
        return t;
    }
    TEXT_ADD(t.text, "salts %s", OF(MASS, share_kg(g, 0.001, 0.08)));
    TEXT_ADD(t.text, " over %s", OF(TIME, stream_spread(g->r, 10, 1200)));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, ", at %s", OF(TEMPERATURE, CELSIUS(stream_between(g->r, -10, 60))));
    if (MAYBE(g->r))
        say(&t, "blend 60 % NaOH, 40 % NaNO3");
    hangs(g, &t);
    return t;
}

static draft_text liquid(drawing *g)
{
    draft_text t = {""};
    TEXT_ADD(t.text, "liquid %s", OF(VOLUME, share_kg(g, 0.001, 0.05) * 1e-3));
    TEXT_ADD(t.text, " over %s", OF(TIME, stream_spread(g->r, 10, 1200)));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, ", at %s", OF(TEMPERATURE, CELSIUS(stream_between(g->r, 15, 90))));
    if (MAYBE(g->r))
        TEXT_ADD(t.text, ", strength %s", OF(CONCENTRATION, stream_between(g->r, 100, 800)));
    else if (MAYBE(g->r))
        TEXT_ADD(t.text, ", boiling point %s", OF(TEMPERATURE, CELSIUS(stream_between(g->r, 112, 140))));
    hangs(g, &t);
    return t;
}

static draft_text turned(drawing *g)
{
    draft_text t = {""};
    switch (stream_below(g->r, 9)) {
    case 0:
        TEXT_ADD(t.text, "heat on");
        break;
    case 1:
        TEXT_ADD(t.text, "heat off");
        break;
    case 2:
        TEXT_ADD(t.text, "heat %.3g %%", stream_between(g->r, 10, 100));
        break;
    case 3:
        TEXT_ADD(t.text, "heat thermostat %s", OF(TEMPERATURE, g->p->boiling_K + stream_between(g->r, -20, 10)));
        break;
    case 4:
        TEXT_ADD(t.text, "heat dial");
        break;
    case 5:
        TEXT_ADD(t.text, "mixer %s", MAYBE(g->r) ? "off" : "on");
        break;
    case 6:
        TEXT_ADD(t.text, "lid %s", MAYBE(g->r) ? "off" : "on");
        break;
    case 7:
        TEXT_ADD(t.text, "exhaust %s", MAYBE(g->r) ? "on" : "off");
        break;
    default:
        TEXT_ADD(t.text, "stir for %s", OF(TIME, stream_between(g->r, 10, 300)));
        break;
    }
    return t;
}

static draft_text taken(drawing *g, const char *kept)
{
    draft_text t = {""};
    bool bail = stream_chance(g->r, 0.5);
    double m3 = share_kg(g, 0.002, 0.1) * 1e-3, flow = stream_rounded(m3 / stream_spread(g->r, 30, 600));
    const char *verb = bail ? "bail" : "drain";
    if (MAYBE(g->r))
        TEXT_ADD(t.text, "%s to the mark, at %s", verb, OF(VOLUME_FLOW, flow));
    else if (MAYBE(g->r))
        TEXT_ADD(t.text, "%s at %s until level %s", verb, OF(VOLUME_FLOW, flow),
                 OF(LENGTH, stream_rounded(g->p->level_m * 0.9)));
    else if (MAYBE(g->r))
        TEXT_ADD(t.text, "%s %s at %s", verb, OF(VOLUME, m3), OF(VOLUME_FLOW, flow));
    else
        TEXT_ADD(t.text, "%s %s over %s", verb, OF(VOLUME, m3), OF(TIME, stream_rounded(m3 / flow)));
    if (kept != NULL)
        TEXT_ADD(t.text, ", as %s", kept);
    else if (bail && MAYBE(g->r))
        say(&t, "from the surface");
    return t;
}

/* Acts as they are said -------------------------------------------------------------------------------------------------- */

/* When: by the clock, by the bath, or by both. */
static draft_token when(drawing *g)
{
    draft_token t = draft_moment(g->at_s);
    double share = boil_stream_share(g->r);
    if (share < 0.08)
        TEXT_ADD(t.text, " when boiling");
    else if (share < 0.12)
        TEXT_ADD(t.text, " when boiling for {4 20}");
    else if (share < 0.14)
        TEXT_ADD(t.text, " when quiet for {4 15}");
    return t;
}

static void load_act(drawing *g, int group)
{
    draft_text t = load(g);
    double stays = stream_between(g->r, 60, 1200);
    bool named = MAYBE(g->r), then = MAYBE(g->r), next = MAYBE(g->r);
    g->number++;
    if (named)
        TEXT_ADD(t.text, ", as rack %d", g->number);
    else if (stream_chance(g->r, 0.7))
        TEXT_ADD(t.text, ", for %s", OF(TIME, stays));
    draft_add(g->d, ACTS, group, "%s  %s", named ? AT(g->at_s) : when(g).text, t.text);
    if (then)
        draft_add(g->d, ACTS, group, "%s after the boil is back  %s", OF(TIME, 30), water(g).text);
    if (next) {
        double after = stream_between(g->r, 1, 120);
        draft_add(g->d, ACTS, group, "+%s  %s", OF(TIME, after), turned(g).text);
    }
    if (named && g->at_s + stays + 1 < g->p->duration_s)
        draft_add(g->d, ACTS, group, "%s  lift rack %d", AT(floor(g->at_s + stays)), g->number);
}

static void take_act(drawing *g, int group)
{
    bool kept = MAYBE(g->r);
    char name[20];
    snprintf(name, sizeof name, "drum %d", ++g->number);
    draft_add(g->d, ACTS, group, "%s  %s", AT(g->at_s), taken(g, kept ? name : NULL).text);
    if (kept && g->at_s + 700 < g->p->duration_s)
        draft_add(g->d, ACTS, group, "%s  return %s over %s", AT(g->at_s + 650), name, OF(TIME, stream_between(g->r, 20, 600)));
}

static void every_act(drawing *g, int group)
{
    double every = 60 * floor(stream_between(g->r, 4, 20)), from = g->at_s;
    const char *except = g->p->breaks && stream_chance(g->r, 0.6) ? " except breaks" : "";
    const char *boiling = MAYBE(g->r) ? " when boiling" : "";
    draft_text t = {""};
    if (stream_chance(g->r, 0.5)) {
        t = load(g);
        TEXT_ADD(t.text, ", for %s", OF(TIME, stream_between(g->r, 60, 600)));
    } else {
        t = water(g);
    }
    draft_add(g->d, ACTS, group, "every %s from %s to %s%s%s  %s", OF(TIME, every), AT(from), AT(floor(0.9 * g->p->duration_s)),
              except, boiling, t.text);
}

static void act(drawing *g)
{
    int group = draft_group(g->d);
    double share = boil_stream_share(g->r);
    if (share < 0.35)
        load_act(g, group);
    else if (share < 0.45)
        every_act(g, group);
    else if (share < 0.52)
        take_act(g, group);
    else if (share < 0.54)
        draft_add(g->d, ACTS, group, "%s  lift", AT(g->at_s));
    else if (share < 0.56)
        draft_add(g->d, ACTS, group, "%s  crust broken", AT(g->at_s));
    else {
        draft_text doing = share < 0.74 ? water(g) : share < 0.82 ? salts(g) : share < 0.88 ? liquid(g) : turned(g);
        draft_add(g->d, ACTS, group, "%s  %s", when(g).text, doing.text);
    }
}

void random_acts(stream *r, const random_plant *p, draft *d)
{
    drawing g = {.r = r, .p = p, .d = d};
    size_t count = 1 + stream_below(r, 8);
    for (size_t i = 0; i < count; i++) {
        /* No two at one moment: which is first of these is by the file's order, and may matter. */
        g.at_s = 30 + 7 * (double)i + 10 * floor(boil_stream_share(r) * (0.85 * p->duration_s - 60) / 10);
        act(&g);
    }
}
