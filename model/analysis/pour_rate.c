#include "analysis/pour_rate.h"

#include <math.h>

#include "findings/finding_parts.h"
#include "findings/findings.h"
#include "properties/solubility.h"
#include "case/checks.h"
#include "case/grading.h"

/* From the gravest of their kind on; the first that is found is named. */
static const boil_found_kind forbidden[] = {BOIL_FOUND_OVERFLOW,     BOIL_FOUND_OVERFLOW_STILL, BOIL_FOUND_FREEBOARD,
                                            BOIL_FOUND_SURGE,        BOIL_FOUND_SALT_SLUG,      BOIL_FOUND_WATER_QUIET,
                                            BOIL_FOUND_LAYER,        BOIL_FOUND_SALT_QUIET,     BOIL_FOUND_SALT_BED,
                                            BOIL_FOUND_LIQUID_STOPS, BOIL_FOUND_BOIL_LOST,      BOIL_FOUND_NEVER_RETURNS};

double boil_pour_rate_by_hand(boil_action_kind kind)
{
    return kind == BOIL_ACTION_WATER   ? BOIL_POUR_RATE_WATER_KG_S
           : kind == BOIL_ACTION_SALTS ? BOIL_POUR_RATE_SALTS_KG_S
                                       : BOIL_POUR_RATE_LIQUID_KG_S;
}

double boil_action_mass(const boil_action *a)
{
    return a->kind == BOIL_ACTION_WATER   ? a->is.water.mass_kg
           : a->kind == BOIL_ACTION_SALTS ? a->is.salts.mass_kg
                                          : a->is.liquid.mass_kg;
}

void boil_action_pour(boil_action *a, double mass_kg, double rate_kg_s)
{
    double over_s = mass_kg / rate_kg_s;
    if (a->kind == BOIL_ACTION_WATER) {
        a->is.water.mass_kg = mass_kg;
        a->is.water.over_s = over_s;
    } else if (a->kind == BOIL_ACTION_SALTS) {
        a->is.salts.mass_kg = mass_kg;
        a->is.salts.over_s = over_s;
    } else {
        a->is.liquid.mass_kg = mass_kg;
        a->is.liquid.over_s = over_s;
    }
}

boil_action boil_pour_rate_action(boil_action_kind kind, double mass_kg, const double blend[BOIL_SALTS], double liquid_fraction,
                                  double temperature_K)
{
    boil_action a = {.kind = kind};
    if (kind == BOIL_ACTION_WATER)
        a.is.water = (boil_action_water){.temperature_K = temperature_K};
    else if (kind == BOIL_ACTION_SALTS)
        a.is.salts = (boil_action_salts){.temperature_K = temperature_K, .blend = {blend[0], blend[1], blend[2]}};
    else
        a.is.liquid = (boil_action_liquid){
            .temperature_K = temperature_K, .blend = {blend[0], blend[1], blend[2]}, .salt_fraction = liquid_fraction};
    boil_action_pour(&a, mass_kg, boil_pour_rate_by_hand(kind));
    return a;
}

double boil_pour_rate_liquid_temperature(const double blend[BOIL_SALTS], double salt_fraction, double room_K)
{
    boil_mixture kilogram = boil_mixture_of(blend, salt_fraction);
    return boil_solubility_clear(&kilogram, room_K);
}

static const boil_finding *found(const boil_findings *f, boil_found_kind kind)
{
    for (size_t i = 0; i < f->count; i++)
        if (f->list[i].kind == kind)
            return &f->list[i];
    return NULL;
}

boil_outcome boil_pour_rate_forbids(const boil_plant *p, const boil_schedule *s, const boil_history *h, const char **id,
                                    const char **title)
{
    const double surge = boil_gradings[BOIL_FOUND_SURGE].from[BOIL_SEVERITY_CAUTION]; /* a notice of less forbids nothing */
    boil_findings all;
    *id = *title = NULL;
    boil_outcome outcome = boil_findings_of_unchecked(p, s, NULL, h, NULL, 0, &all, NULL);
    if (outcome != BOIL_OK)
        return outcome;
    for (size_t i = 0; *id == NULL && i < sizeof forbidden / sizeof forbidden[0]; i++) {
        const boil_finding *f = found(&all, forbidden[i]);
        if (f == NULL || (f->kind == BOIL_FOUND_SURGE && f->measure <= surge))
            continue;
        *id = f->id;
        *title = f->title;
    }
    if (*id == NULL &&
        h->summary.freeboard_min_m.value < p->limits.freeboard_m) { /* here to the last of it, no millimetre let pass */
        *id = boil_finding_row_at(BOIL_FOUND_FREEBOARD)->id;
        *title = boil_finding_row_at(BOIL_FOUND_FREEBOARD)->title;
    }
    boil_findings_free(&all);
    return BOIL_OK;
}

typedef struct {
    const boil_plant *plant;
    boil_action action;
    double mass_kg, boils_off_kg_s;
    boil_run_options options;
    boil_pour_rate *pace;
    boil_simulation *own;
} pouring;

/* Followed for half a minute after it ends: what it does, it does within the mixing time. */
static boil_outcome will_do(void *context, double rate_kg_s, bool *yes)
{
    const double after_s = 30;
    pouring *c = context;
    boil_schedule s;
    const boil_history *h;
    const char *id = NULL, *title = NULL;
    double mass = c->mass_kg * rate_kg_s / (rate_kg_s - c->boils_off_kg_s);
    boil_action_pour(&c->action, mass, rate_kg_s);
    boil_schedule_init(&s, mass / rate_kg_s + after_s);
    boil_outcome outcome = boil_schedule_add(&s, &c->action);
    if (outcome == BOIL_OK && (outcome = boil_run_in(&c->own, c->plant, &s, &c->options, &h)) == BOIL_OK) {
        outcome = boil_pour_rate_forbids(c->plant, &s, h, &id, &title);
        *yes = id == NULL && h->end == BOIL_RUN_DONE;
        if (outcome == BOIL_OK && h->end == BOIL_RUN_FAILED)
            outcome = BOIL_NOT_FINITE;
    }
    boil_schedule_free(&s);
    if (outcome == BOIL_OK && !*yes) {
        bool later = title == NULL && c->pace->limited_by != NULL; /* so slow that it has boiled down: not the reason */
        c->pace->limited_id = later ? c->pace->limited_id : id;
        c->pace->limited_by = later ? c->pace->limited_by : title != NULL ? title : "the bath leaves what is known of it";
    }
    return outcome;
}

/* From the hand's pace down by a ratio to one that will do, then the bracket is halved. */
static boil_outcome halve(pouring *c, double by_hand, double slowest, double ratio)
{
    const double precision = 1.03, rounding = 1e-9;
    double fast = by_hand, slow = by_hand;
    bool yes = false;
    boil_outcome outcome = will_do(c, by_hand, &yes);
    while (outcome == BOIL_OK && !yes) {
        fast = slow;
        slow *= ratio;
        if (!(slow >= slowest * (1 - rounding)))
            return BOIL_NO_ROOT;
        outcome = will_do(c, slow, &yes);
    }
    while (outcome == BOIL_OK && fast > precision * slow) {
        double middle = sqrt(fast * slow);
        outcome = will_do(c, middle, &yes);
        *(yes ? &slow : &fast) = middle;
    }
    c->pace->rate_kg_s = slow;
    return outcome;
}

boil_outcome boil_pour_rate_fastest(const boil_plant *p, const boil_action *action, double boils_off_kg_s,
                                    const boil_run_options *o, boil_pour_rate *out)
{
    if (out == NULL || p == NULL || !boil_check_action(action) || !boil_check_options(o) || !(boils_off_kg_s >= 0))
        return BOIL_BAD_INPUT;
    pouring c = {p, *action, boil_action_mass(action), boils_off_kg_s, *o, out, NULL};
    double by_hand = boil_pour_rate_by_hand(action->kind), gaining = BOIL_POUR_RATE_GAINS * boils_off_kg_s;
    double in_time = c.mass_kg / BOIL_POUR_RATE_LONGEST_S + boils_off_kg_s,
           slowest = fmax(in_time, gaining > 0 ? gaining : by_hand / 100);
    *out = (boil_pour_rate){.rate_kg_s = (double)NAN};
    c.action.time_s = 0;
    c.options.closures = BOIL_CLOSURES_GRAVE;
    c.options.row_interval_s = 0;
    if (!(slowest < by_hand)) {
        out->limited_by = gaining < by_hand ? "it would take longer than a shift" : "it boils off as fast as anyone pours";
        return BOIL_NO_ROOT;
    }
    /* what gains just so will mostly do: one long run, not many */
    boil_outcome outcome = halve(&c, by_hand, slowest, gaining > 0 ? slowest / by_hand : 0.6);
    boil_simulation_free(c.own);
    return outcome;
}

double boil_pour_rate_minute(double s)
{
    const double rounding = 1e-9; /* of a minute */
    return 60 * ceil(s / 60 - rounding);
}
