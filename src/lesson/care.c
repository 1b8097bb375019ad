#include "lesson/care.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "case/grading.h"
#include "case/plant.h"
#include "findings/belongs.h"

#define MOST_SLOWER 5u
#define MOST_LESS 5u
#define MOST_STEPS 19u
#define MOST_PARTS 12.0

static bool raise_to(unsigned *count, unsigned first, unsigned most)
{
    unsigned before = *count;
    *count = before == 0 ? first : before < most ? before + 1 : before;
    return *count != before;
}

static bool set(bool *is)
{
    bool was = *is;
    *is = true;
    return !was;
}

/* Into one part more; at first as many equal parts as the rule of thumb wants, two at least, and never more than there are pieces. */
static bool split(const boil_plant *p, const boil_load *l, debrief_care *c)
{
    double usual_kg = boil_plant_usual_load(p);
    double most = l->pieces > 0 ? fmin(MOST_PARTS, floor(l->pieces)) : MOST_PARTS;
    double parts = c->parts > 0 ? c->parts + 1 : fmax(2, ceil((l->mass_kg + l->basket_kg) / usual_kg - 1e-9));
    unsigned before = c->parts;
    if (most >= 2)
        c->parts = (unsigned)fmin(most, parts);
    return c->parts != before;
}

static bool care_of_load(const boil_plant *p, const boil_action *a, size_t kind, debrief_care *c)
{
    switch (kind) {
    case BOIL_FOUND_LAYER:
    case BOIL_FOUND_LAYER_OUTLASTS:
    case BOIL_FOUND_HOLLOWS:
    case BOIL_FOUND_SURGE:
    case BOIL_FOUND_OVERFLOW:
    case BOIL_FOUND_FREEBOARD:
        return a->is.load.trapped_kg > 0 && set(&c->drained);
    case BOIL_FOUND_LOAD_HEAVY:
    case BOIL_FOUND_BOIL_LOST:
    case BOIL_FOUND_NEVER_RETURNS:
        return split(p, &a->is.load, c);
    case BOIL_FOUND_LOAD_QUIET:
    case BOIL_FOUND_LOAD_THROUGH:
        return set(&c->waits);
    default:
        return false;
    }
}

static bool care_of_addition(const boil_action *a, size_t kind, debrief_care *c)
{
    bool salts = a->kind == BOIL_ACTION_SALTS;
    switch (kind) {
    case BOIL_FOUND_TOO_COOL:
        return a->kind == BOIL_ACTION_WATER && raise_to(&c->less, 1, MOST_LESS);
    case BOIL_FOUND_SURGE:
    case BOIL_FOUND_OVERFLOW:
    case BOIL_FOUND_FREEBOARD:
    case BOIL_FOUND_WATER_FAST:
        if (c->less > 0)
            return false;
        return (salts && set(&c->sifted)) || raise_to(&c->slower, 1, MOST_SLOWER);
    case BOIL_FOUND_SALT_QUIET:
    case BOIL_FOUND_SALT_SLUG:
    case BOIL_FOUND_SALT_BED:
        return salts && (set(&c->sifted) || raise_to(&c->slower, 1, MOST_SLOWER));
    case BOIL_FOUND_WATER_QUIET:
    case BOIL_FOUND_LAYER:
    case BOIL_FOUND_LAYER_OUTLASTS:
    case BOIL_FOUND_SURFACE_BOILS:
    case BOIL_FOUND_BOIL_LOST:
    case BOIL_FOUND_LIQUID_STOPS:
    case BOIL_FOUND_NEVER_RETURNS:
        return set(&c->waits) || raise_to(&c->slower, 1, MOST_SLOWER);
    default:
        return false;
    }
}

static bool care_of_heat(const boil_action *a, size_t kind, debrief_care *c)
{
    switch (kind) {
    case BOIL_FOUND_RESTART:
        if ((a->is.heat.order == BOIL_HEAT_TURN && a->is.heat.dial <= CARE_GENTLE_DIAL) || !set(&c->gentle))
            return false;
        c->gone_s = (double)INFINITY;
        return true;
    case BOIL_FOUND_OVERFLOW:
    case BOIL_FOUND_FREEBOARD:
        return a->is.heat.order == BOIL_HEAT_TURN && raise_to(&c->steps, 1, MOST_STEPS);
    default:
        return false;
    }
}

static bool care_of_act(const boil_plant *p, const boil_action *a, size_t kind, debrief_care *c)
{
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        return care_of_load(p, a, kind, c);
    case BOIL_ACTION_WATER:
    case BOIL_ACTION_SALTS:
    case BOIL_ACTION_LIQUID:
        return care_of_addition(a, kind, c);
    case BOIL_ACTION_HEAT:
        return care_of_heat(a, kind, c);
    default:
        return false;
    }
}

/* What care can mend: what it comes of before what comes of it. */
static const boil_found_kind mended[] = {
    BOIL_FOUND_HOLLOWS,      BOIL_FOUND_WATER_QUIET,  BOIL_FOUND_LAYER,     BOIL_FOUND_LAYER_OUTLASTS, BOIL_FOUND_SURFACE_BOILS,
    BOIL_FOUND_SALT_QUIET,   BOIL_FOUND_SALT_SLUG,    BOIL_FOUND_SALT_BED,  BOIL_FOUND_LOAD_HEAVY,     BOIL_FOUND_LOAD_QUIET,
    BOIL_FOUND_LOAD_THROUGH, BOIL_FOUND_LIQUID_STOPS, BOIL_FOUND_BOIL_LOST, BOIL_FOUND_NEVER_RETURNS,  BOIL_FOUND_RESTART,
    BOIL_FOUND_TOO_COOL,     BOIL_FOUND_WATER_FAST,   BOIL_FOUND_SURGE,     BOIL_FOUND_OVERFLOW,       BOIL_FOUND_FREEBOARD,
};

bool care_mends(size_t kind)
{
    for (size_t i = 0; i < sizeof mended / sizeof mended[0]; i++)
        if (mended[i] == (boil_found_kind)kind)
            return true;
    return false;
}

static bool counts(const boil_finding *f, bool likely)
{
    bool limit = f->kind == BOIL_FOUND_TOO_COOL || f->kind == BOIL_FOUND_BOIL_LOST || f->kind == BOIL_FOUND_FREEBOARD;
    return f->severity >= (likely ? BOIL_SEVERITY_CAUTION : BOIL_SEVERITY_WARNING) || (limit && likely);
}

/* Of each act once at a time: whether that is enough a run has to say. */
typedef struct {
    const care_case *c;
    debrief_care *care;
    bool *belongs; /* by place in the schedule that was run */
    bool *changed; /* by place in that as done */
} taking;

static bool take_one(const taking *t, const boil_finding *f)
{
    const care_case *c = t->c;
    bool changed = false;
    memset(t->belongs, 0, c->schedule->count * sizeof *t->belongs);
    (void)boil_finding_belongs(c->plant, c->schedule, c->history, f, t->belongs);
    for (size_t i = 0; i < c->schedule->count; i++) {
        size_t of = c->origin != NULL ? c->origin[i] : i;
        if (!t->belongs[i] || t->changed[of])
            continue;
        t->changed[of] = care_of_act(c->plant, &c->schedule->actions[i], f->kind, &t->care[of]);
        if (t->changed[of] && t->care[of].because == NULL)
            t->care[of].because = f->id;
        changed = changed || t->changed[of];
    }
    return changed;
}

static bool take_kind(const taking *t, boil_found_kind kind, const boil_findings *f, bool likely)
{
    bool changed = false;
    for (size_t i = 0; f != NULL && i < f->count; i++)
        if (f->list[i].kind == (size_t)kind && counts(&f->list[i], likely))
            changed = take_one(t, &f->list[i]) || changed;
    return changed;
}

bool care_take(const care_case *c, const boil_findings *likely, const boil_findings *possible, debrief_care *care,
               boil_outcome *outcome)
{
    taking t = {c, care, calloc(c->schedule->count + 1, sizeof(bool)), calloc(c->acts_count + 1, sizeof(bool))};
    bool changed = false;
    if (t.belongs == NULL || t.changed == NULL)
        *outcome = BOIL_NO_MEMORY;
    for (size_t k = 0; k < sizeof mended / sizeof mended[0] && *outcome == BOIL_OK; k++) {
        changed = take_kind(&t, mended[k], likely, true) || changed;
        changed = take_kind(&t, mended[k], possible, false) || changed;
    }
    free(t.belongs);
    free(t.changed);
    return changed;
}

void care_measure_water(const boil_schedule *s, const boil_history *h, debrief_care *care)
{
    double since = 0;
    for (size_t i = 0; i < s->count; i++) {
        double t = i < h->acts_count ? h->acts[i].done_s : (double)NAN;
        if (s->actions[i].kind != BOIL_ACTION_WATER || isnan(t))
            continue;
        care[i].less_kg = 0;
        for (size_t k = 1; k < h->rows_count; k++) {
            const boil_row *a = &h->rows[k - 1], *b = &h->rows[k];
            if (a->time_s >= since && b->time_s <= t + s->actions[i].is.water.over_s)
                care[i].less_kg += 0.5 * (a->vented_kg_s + b->vented_kg_s) * (b->time_s - a->time_s);
        }
        since = t + s->actions[i].is.water.over_s;
    }
}

double care_crystals_gone(const boil_history *h)
{
    size_t k = h->rows_count;
    while (k > 0 && !(h->rows[k - 1].crystals_kg > 0))
        k--;
    return k < h->rows_count ? h->rows[k].time_s : (double)INFINITY;
}
