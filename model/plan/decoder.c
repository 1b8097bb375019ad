#include "plan/decoder.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "plan/value.h"

enum { MOST_TRIES = 3000 };   /* of a dip, then it is unplaced: judgement */
#define NOTHING_LEFT_J 1000.0 /* judgement: 10 lb of steel take 260 kJ, from 24 to 141 degC at 490 J/kgK */
#define LATER_BY_S 1.0        /* at least, where a wait is only estimated */

boil_outcome boil_plan_decoder_begin(boil_plan_decoder *d, const boil_plan_case *of)
{
    size_t n = of->parts_count + 1;
    *d = (boil_plan_decoder){.of = of};
    d->table.dips = malloc(n * sizeof *d->table.dips);
    d->table.parts = malloc(n * sizeof *d->table.parts);
    d->table.pours = malloc((n + 1 + of->problem->breaks_count) * sizeof *d->table.pours);
    d->table.salts = malloc((n + 1) * sizeof *d->table.salts);
    d->hanging = malloc((n + of->problem->hanging_count) * sizeof *d->hanging);
    if (d->table.dips != NULL && d->table.parts != NULL && d->table.pours != NULL && d->table.salts != NULL &&
        d->hanging != NULL)
        return BOIL_OK;
    boil_plan_decoder_free(d);
    return BOIL_NO_MEMORY;
}

void boil_plan_decoder_free(boil_plan_decoder *d)
{
    free(d->table.dips);
    free(d->table.parts);
    free(d->table.pours);
    free(d->table.salts);
    free(d->hanging);
    *d = (boil_plan_decoder){.of = NULL};
}

/* In a dip with others the boil is back later, and a part that is heated by it hot later: by half of that, at most a minute. Half is
   judgement: trials showed -10 to 36 s, the median 0. */
static double later_hot(const boil_plan_case *c, const boil_plan_dip *d, const boil_plan_part *p)
{
    const double most_s = 60, share = 0.5;
    return fmin(most_s, share * (d->heat_J - p->heat_J) / c->bath->quiet_W);
}

static void stay_of(const boil_plan_case *c, const size_t parts[], const boil_plan_lesson *known, boil_plan_dip *d)
{
    d->stay_least_s = BOIL_PLAN_CLEAR_S;
    d->stay_most_s = HUGE_VAL;
    for (size_t i = 0; i < d->count; i++) {
        const boil_plan_part *p = &c->parts[parts[i]];
        const boil_plan_job *j = boil_plan_job_of(c, parts[i]);
        double hot_s = p->hot_s + later_hot(c, d, p);
        d->stay_least_s = fmax(d->stay_least_s, hot_s + j->least_s);
        d->stay_most_s = fmin(d->stay_most_s, hot_s + j->most_s);
    }
    d->stay_least_s += known->more_s + c->bath->longer_s;
    d->stay_most_s += known->most_s;
}

/* What it is, before it has a time. */
static boil_plan_dip dip_of(const boil_plan_case *c, const size_t parts[], size_t first, size_t count,
                            const boil_plan_lesson *known)
{
    boil_plan_dip d = {.first = first, .count = count, .reason = BOIL_PLAN_FIRST};
    for (size_t i = 0; i < count; i++) {
        const boil_plan_part *p = &c->parts[parts[i]];
        d.mass_kg += boil_plan_part_mass(p);
        d.heat_J += p->heat_J;
        d.drag_kg += p->drag_kg;
        d.lag_s = fmax(d.lag_s, p->lag_s);
        d.enters_s = fmax(d.enters_s, boil_plan_job_of(c, parts[i])->earliest_s);
    }
    stay_of(c, parts, known, &d);
    return d;
}

/* Heat that what hangs at a moment will still take, the least of its time constants, and when the first of it leaves. */
typedef struct {
    double left_J, lag_s, leaves_s;
} warming;

static warming warming_at(const boil_plan_decoder *d, size_t k, double t)
{
    warming w = {0, HUGE_VAL, HUGE_VAL};
    for (size_t i = d->warm_from; i < k; i++) {
        const boil_plan_dip *before = &d->table.dips[i];
        if (before->leaves_s <= t)
            continue;
        w.left_J += before->heat_J * exp(-(t - before->enters_s) / before->lag_s);
        w.lag_s = fmin(w.lag_s, before->lag_s);
        w.leaves_s = fmin(w.leaves_s, before->leaves_s);
    }
    return w;
}

/* Each of these gives the time to try next, or the same where nothing stands in the way. */

static double after_hands(const boil_plan_decoder *d, boil_plan_dip *dip)
{
    const boil_plan_hands hands = {d->of->problem, d->hanging, d->hanging_count};
    double hoist_s = d->of->problem->hoist_s;
    bool is_break;
    double busy_s = boil_plan_hands_busy(&hands, dip->enters_s - hoist_s, dip->enters_s + BOIL_PLAN_CLEAR_S, &is_break);
    if (isnan(busy_s))
        return dip->enters_s;
    if (is_break || dip->reason != BOIL_PLAN_PLACE) /* a place that comes free needs the hoist first */
        dip->reason = is_break ? BOIL_PLAN_BREAK : BOIL_PLAN_HOIST;
    return busy_s + hoist_s;
}

static double after_places(const boil_plan_decoder *d, boil_plan_dip *dip)
{
    double free_s = HUGE_VAL, hoist_s = d->of->problem->hoist_s;
    size_t in = 0;
    for (size_t i = 0; i < d->hanging_count; i++) {
        double out_s = d->hanging[i].leaves_s + hoist_s;
        if (out_s <= dip->enters_s)
            continue;
        in++;
        free_s = fmin(free_s, out_s);
    }
    if (in < d->of->problem->positions)
        return dip->enters_s;
    dip->reason = BOIL_PLAN_PLACE;
    return free_s;
}

/* Heat that the quiet bath gains as a dip goes in, all poured before it that could be. */
static double quiet_at(const boil_plan_decoder *d, double t)
{
    const double least = 0.1; /* of it, so that what is asked stays a number: judgement */
    const boil_plan_bath *b = d->of->bath;
    double missing = b->weakens_W_kg > 0 ? fmax(0, boil_plan_missing(d->of, &d->calm, t)) : 0;
    return fmax(least * b->quiet_W, b->quiet_W - b->weakens_W_kg * missing);
}

/* The longest that its boil may be away by (1). */
static double away_most_s(const boil_plan_bath *b, const boil_plan_lesson *known)
{
    double limit_s = known->known ? b->limit_s : BOIL_PLAN_LIMIT_SHARE * b->limit_s;
    return limit_s / (1 + b->slower) - known->later_s - b->offset_s;
}

/* What hangs there cools the bath less and less: at least so long until it leaves room, or some of it leaves. Where water would make
   room it is poured first. */
static double after_recovery(const boil_plan_decoder *d, size_t k, const boil_plan_lesson *known, boil_plan_dip *dip)
{
    const boil_plan_bath *b = d->of->bath;
    warming w = warming_at(d, k, dip->enters_s);
    double most_s = away_most_s(b, known), quiet_W = quiet_at(d, dip->enters_s), room = quiet_W * most_s - dip->heat_J;
    double watered_W = b->quiet_W - b->weakens_W_kg * b->boils_off_kg_s * (b->guard_s + LATER_BY_S); /* none is poured last */
    double lacks_W = dip->heat_J / most_s - quiet_W, net_kg_s = b->flow_kg_s - b->boils_off_kg_s;
    dip->recovery_s = (1 + b->slower) * fmax(0, known->later_s + fmax(0, b->offset_s + (dip->heat_J + w.left_J) / quiet_W));
    dip->too_cold = room < 0 && (watered_W * most_s < dip->heat_J || b->valve || !(net_kg_s > 0));
    if (room < 0 && !dip->too_cold) {
        dip->reason = BOIL_PLAN_WATER;
        return dip->enters_s + fmax(LATER_BY_S, lacks_W / b->weakens_W_kg / net_kg_s);
    }
    if (w.left_J <= room || w.left_J < NOTHING_LEFT_J)
        return dip->enters_s;
    double wait_s = w.lag_s * log(w.left_J / fmax(room, NOTHING_LEFT_J));
    dip->reason = BOIL_PLAN_WARM;
    return fmin(w.leaves_s, dip->enters_s + fmax(LATER_BY_S, wait_s));
}

/* Nobody leaves for a break before the boil is back: a quiet bath is watched. */
static double after_watch(const boil_plan_decoder *d, boil_plan_dip *dip)
{
    const boil_plan_hands nobody = {d->of->problem, NULL, 0};
    bool is_break;
    double busy_s = boil_plan_hands_busy(&nobody, dip->enters_s, dip->enters_s + dip->recovery_s, &is_break);
    if (isnan(busy_s))
        return dip->enters_s;
    dip->reason = BOIL_PLAN_BREAK;
    return busy_s + d->of->problem->hoist_s;
}

static double after_stay(const boil_plan_decoder *d, boil_plan_dip *dip)
{
    const boil_plan_hands hands = {d->of->problem, d->hanging, d->hanging_count};
    dip->leaves_s = boil_plan_hands_lift(&hands, dip->enters_s + dip->stay_least_s);
    if (dip->leaves_s - dip->enters_s <= dip->stay_most_s)
        return dip->enters_s;
    dip->reason = BOIL_PLAN_STAY;
    return fmax(dip->leaves_s - dip->stay_most_s, dip->enters_s + LATER_BY_S);
}

/* Water missing as this dip goes in, if all is poured that can be; and when its boil is back. */
static double after_water(const boil_plan_decoder *d, boil_plan_dip *dip)
{
    const boil_plan_bath *b = d->of->bath;
    double missing = boil_plan_missing(d->of, &d->calm, dip->enters_s);
    double over = missing + b->dries_kg_s * dip->recovery_s - b->strongest_kg, net_kg_s = b->flow_kg_s - b->boils_off_kg_s;
    dip->too_strong = over > 0 && !(net_kg_s > 0);
    if (b->valve || !(over > 0) || dip->too_strong)
        return dip->enters_s;
    dip->reason = BOIL_PLAN_WATER;
    return dip->enters_s + fmax(LATER_BY_S, over / net_kg_s);
}

static double later(const boil_plan_decoder *d, size_t k, const boil_plan_lesson *known, boil_plan_dip *dip)
{
    double t = dip->enters_s;
    if ((t = after_places(d, dip)) > dip->enters_s || (t = after_hands(d, dip)) > dip->enters_s ||
        (t = after_recovery(d, k, known, dip)) > dip->enters_s || (t = after_watch(d, dip)) > dip->enters_s ||
        (t = after_stay(d, dip)) > dip->enters_s)
        return t;
    return after_water(d, dip);
}

/* What cannot hold the hoist or a place any more is forgotten; and what takes no more heat. */
static void forget(boil_plan_decoder *d, size_t k, double t)
{
    size_t kept = 0;
    for (size_t i = 0; i < d->hanging_count; i++)
        if (d->hanging[i].leaves_s + d->of->problem->hoist_s > t - d->of->problem->hoist_s)
            d->hanging[kept++] = d->hanging[i];
    d->hanging_count = kept;
    while (d->warm_from < k) {
        const boil_plan_dip *oldest = &d->table.dips[d->warm_from];
        if (oldest->leaves_s > t && oldest->heat_J * exp(-(t - oldest->enters_s) / oldest->lag_s) > 0.1 * NOTHING_LEFT_J)
            break;
        d->warm_from++;
    }
}

static void begin_after_the_last(const boil_plan_decoder *d, size_t k, boil_plan_dip *dip)
{
    const boil_plan_problem *p = d->of->problem;
    bool boiled = k == 0 && !(d->of->bath->ready_s > 0);
    double own_s = fmax(dip->enters_s, p->hoist_s);
    double boil_s = d->calm.back_s + (boiled ? 0 : fmax(p->settle_s, d->of->bath->steady_s));
    double hoist_s = k > 0 ? d->entered_s + 2 * p->hoist_s : own_s;
    dip->reason = k == 0                                 ? BOIL_PLAN_FIRST
                  : boil_s >= own_s && boil_s >= hoist_s ? BOIL_PLAN_BOIL
                  : hoist_s >= own_s                     ? BOIL_PLAN_HOIST
                                                         : BOIL_PLAN_EARLIEST;
    dip->enters_s = boil_plan_hands_second(fmax(own_s, fmax(boil_s, hoist_s)));
}

static void settle(boil_plan_decoder *d, size_t k, boil_plan_dip *dip)
{
    const boil_plan_bath *b = d->of->bath;
    dip->missing_kg = boil_plan_missing(d->of, &d->calm, dip->enters_s) + b->dries_kg_s * dip->recovery_s;
    dip->salts = boil_plan_sifting(d->of, &d->calm, dip->enters_s);
    d->calm = (boil_plan_calm){dip->back_s, dip->missing_kg, d->table.dips, k + 1};
    d->entered_s = dip->enters_s;
    d->hanging[d->hanging_count++] = (boil_plan_hanging){dip->enters_s, dip->leaves_s};
    d->table.dips[k] = *dip;
}

static void place(boil_plan_decoder *d, size_t k, size_t first, size_t count)
{
    const size_t *parts = d->table.parts + first;
    boil_plan_lesson known = boil_plan_lesson_of(d->of->lessons, boil_plan_lesson_key(parts, count));
    boil_plan_dip dip = dip_of(d->of, parts, first, count, &known);
    begin_after_the_last(d, k, &dip);
    forget(d, k, dip.enters_s);
    dip.unplaced = true;
    for (int tries = 0; tries < MOST_TRIES && dip.unplaced; tries++) {
        double t = boil_plan_hands_second(later(d, k, &known, &dip));
        dip.unplaced = t > dip.enters_s;
        dip.enters_s = t;
    }
    dip.unplaced = dip.unplaced || dip.stay_least_s > dip.stay_most_s;
    if (dip.unplaced)
        dip.leaves_s = boil_plan_hands_second(dip.enters_s + dip.stay_least_s);
    dip.back_s = dip.enters_s + dip.recovery_s;
    settle(d, k, &dip);
}

/* How many dips stand as they did in the order before: nothing that comes later moves them. */
static size_t unchanged(const boil_plan_decoder *d, const boil_plan_order *o)
{
    size_t k = 0;
    for (; k < d->table.dips_count && k < o->dips_count; k++) {
        const boil_plan_dip *was = &d->table.dips[k];
        if (was->first != o->first[k] || was->count != boil_plan_order_size(o, k) ||
            memcmp(d->table.parts + was->first, o->parts + was->first, was->count * sizeof *o->parts) != 0)
            break;
    }
    return k;
}

/* As it stood before dip k went in. */
static void begin_at(boil_plan_decoder *d, size_t k)
{
    const boil_plan_problem *p = d->of->problem;
    const boil_plan_dip *before = k > 0 ? &d->table.dips[k - 1] : NULL;
    d->hanging_count = 0;
    for (size_t i = 0; i < p->hanging_count; i++)
        if (before == NULL || p->hanging[i].leaves_s + 2 * p->hoist_s > before->enters_s)
            d->hanging[d->hanging_count++] = (boil_plan_hanging){-HUGE_VAL, p->hanging[i].leaves_s};
    for (size_t i = 0; i < k; i++)
        if (d->table.dips[i].leaves_s + 2 * p->hoist_s > before->enters_s)
            d->hanging[d->hanging_count++] = (boil_plan_hanging){d->table.dips[i].enters_s, d->table.dips[i].leaves_s};
    d->warm_from = 0;
    d->calm = before != NULL ? (boil_plan_calm){before->back_s, before->missing_kg, d->table.dips, k}
                             : (boil_plan_calm){d->of->bath->ready_s, d->of->bath->missing_kg, d->table.dips, 0};
    d->entered_s = before != NULL ? before->enters_s : 0;
}

const boil_plan_timetable *boil_plan_decode(boil_plan_decoder *d, const boil_plan_order *o)
{
    size_t from = unchanged(d, o);
    memcpy(d->table.parts, o->parts, o->parts_count * sizeof *o->parts);
    d->table.dips_count = o->dips_count;
    begin_at(d, from);
    for (size_t k = from; k < o->dips_count; k++)
        place(d, k, o->first[k], boil_plan_order_size(o, k));
    boil_plan_pours_of(d->of, &d->table);
    d->table.value = boil_plan_value_of(d->of, &d->table);
    return &d->table;
}
