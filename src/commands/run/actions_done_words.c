#include "commands/run/actions_done_words.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/boil.h"
#include "properties/water.h"
#include "scenario/action_words.h"

static void add(run_action_words *w, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void add(run_action_words *w, const char *format, ...)
{
    size_t used = strlen(w->text);
    va_list values;
    va_start(values, format);
    vsnprintf(w->text + used, sizeof w->text - used, format, values);
    va_end(values);
}

static const boil_action *action_of(const outcome *o, const run_action *r)
{
    return &o->scenario->schedule.actions[r->action];
}

/* When, and what ------------------------------------------------------------------------------------------------- */

run_action_words run_action_clock(const outcome *o, const run_action *r)
{
    double start = o->scenario->start_s;
    run_action_words w = {""};
    add(&w, "%s", format_clock(start, r->time_s).text);
    if (r->times == 1)
        return w;
    double every_s = (r->last_s - r->time_s) / (double)(r->times - 1);
    add(&w, " to %s, every %s", format_clock(start, r->last_s).text, format_duration(every_s).text);
    return w;
}

static const char *verb_of(const boil_action *a)
{
    switch (a->kind) {
    case BOIL_ACTION_WATER:
        return "pour ";
    case BOIL_ACTION_SALTS:
        return "sift in ";
    case BOIL_ACTION_LIQUID:
        return "run in ";
    case BOIL_ACTION_HEAT:
        return a->is.dial > 0 && a->is.dial < 1 ? "set " : "switch ";
    case BOIL_ACTION_MIXER:
    case BOIL_ACTION_EXHAUST:
        return "switch ";
    case BOIL_ACTION_LOAD:
    case BOIL_ACTION_LIFT:
    case BOIL_ACTION_LID:
        break;
    }
    return "";
}

run_action_words run_action_done(const outcome *o, const run_action *r)
{
    static const char load[] = "load ";
    run_action_words w = {""};
    action_name words = action_name_of(o->scenario, r->action);
    bool named_so = strncmp(words.text, load, sizeof load - 1) == 0;
    if (r->lifting)
        add(&w, "lift %s", words.text + (named_so ? sizeof load - 1 : 0));
    else
        add(&w, "%s%s", verb_of(action_of(o, r)), words.text);
    if (r->times > 1)
        add(&w, ", %zu times", r->times);
    return w;
}

/* How fast -------------------------------------------------------------------------------------------------------- */

/* "until 6:27; 4.16 lb (0.500 gal) a minute". Density 0: by mass alone. */
static void add_pace(run_action_words *w, const outcome *o, const run_action *r, double mass_kg, double over_s, double density,
                     unit_system s)
{
    double per_minute = mass_kg / over_s * 60;
    if (r->times == 1)
        add(w, "; until %s", format_clock(o->scenario->start_s, r->time_s + over_s).text);
    add(w, "; %s", format_quantity(s, DIM_MASS, per_minute).text);
    if (density > 0)
        add(w, " (%s)", format_quantity(s, DIM_VOLUME, per_minute / density).text);
    add(w, " a minute");
}

static void add_liquid_pace(run_action_words *w, const outcome *o, const run_action *r, const boil_action_liquid *l,
                            unit_system s)
{
    boil_mixture m = boil_mixture_of(l->blend, l->salt_fraction);
    add_pace(w, o, r, l->mass_kg, l->over_s, boil_solution_density(&m, l->temperature_K), s);
}

run_action_words run_action_details(const outcome *o, const run_action *r, unit_system s)
{
    run_action_words w = {""};
    const boil_action *a = action_of(o, r);
    action_units units = s == UNITS_US ? ACTION_US : ACTION_SI;
    if (r->lifting)
        return w;
    add(&w, "%s", (r->times == 1 ? action_details : action_details_of_any)(o->scenario, r->action, units).text);
    switch (a->kind) {
    case BOIL_ACTION_LOAD:
        add(&w, "; lowered over %s", format_duration(a->is.load.lowering_s).text);
        break;
    case BOIL_ACTION_WATER:
        add_pace(&w, o, r, a->is.water.mass_kg, a->is.water.over_s, boil_water_density(a->is.water.temperature_K), s);
        break;
    case BOIL_ACTION_SALTS:
        add_pace(&w, o, r, a->is.salts.mass_kg, a->is.salts.over_s, 0, s);
        break;
    case BOIL_ACTION_LIQUID:
        add_liquid_pace(&w, o, r, &a->is.liquid, s);
        break;
    case BOIL_ACTION_LIFT:
    case BOIL_ACTION_HEAT:
    case BOIL_ACTION_MIXER:
    case BOIL_ACTION_LID:
    case BOIL_ACTION_EXHAUST:
        break;
    }
    return w;
}

/* What is to be expected ----------------------------------------------------------------------------------------- */

static void add_boil(run_action_words *w, const outcome *o, bool was_quiet, double lost_s, double recovery_s)
{
    if (isnan(lost_s)) {
        add(w, "The boil goes on");
        return;
    }
    if (was_quiet)
        add(w, "Quiet already");
    else
        add(w, "Boil stops at %s", format_clock(o->scenario->start_s, lost_s).text);
    if (isnan(recovery_s))
        add(w, ", not back before the end");
    else
        add(w, ", back after %s", format_duration(recovery_s).text);
}

static void expect_load(run_action_words *w, const outcome *o, const boil_load_result *l)
{
    add_boil(w, o, l->was_quiet, l->boil_lost_s, l->recovery_s);
    if (isnan(l->hot_s))
        add(w, "; not hot through before it is lifted");
    else
        add(w, "; hot through after %s", format_duration(l->hot_s).text);
}

/* Less than this above the steam before is no surge, and a millimetre no rise. */
static const double surge_ratio = 1.1, rise_m = 1e-3, afloat_kg = 1e-3;

static void expect_addition(run_action_words *w, const outcome *o, const boil_addition_result *a, unit_system s)
{
    add_boil(w, o, a->was_quiet_before, a->boil_lost_s, a->recovery_s);
    if (a->layer_peak_kg > afloat_kg)
        add(w, "; %s of water afloat", format_quantity(s, DIM_MASS, a->layer_peak_kg).text);
    if (a->steam_before_kg_s > 0 && a->steam_peak_kg_s > surge_ratio * a->steam_before_kg_s)
        add(w, "; steam up to %s", format_ratio(a->steam_peak_kg_s / a->steam_before_kg_s).text);
    if (a->level_rise_m > rise_m)
        add(w, "; level up by %s", format_quantity(s, DIM_LENGTH, a->level_rise_m).text);
}

static bool has_results(boil_action_kind kind)
{
    return kind == BOIL_ACTION_LOAD || kind == BOIL_ACTION_WATER || kind == BOIL_ACTION_SALTS || kind == BOIL_ACTION_LIQUID;
}

run_action_words run_action_expected(const outcome *o, const run_action *r, unit_system s)
{
    run_action_words w = {""};
    bool known = r->line.load != NULL || r->line.addition != NULL;
    if (r->times > 1 && known)
        add(&w, "The worst, at %s: ", format_clock(o->scenario->start_s, r->line.time_s).text);
    if (r->line.load != NULL)
        expect_load(&w, o, r->line.load);
    else if (r->line.addition != NULL)
        expect_addition(&w, o, r->line.addition, s);
    else if (!r->lifting && has_results(action_of(o, r)->kind))
        add(&w, "The run stopped before this");
    if (known && r->line.after_overflow)
        add(&w, " (after overflow: not a prediction)");
    return w;
}

/* What to mind: common practice, no source ----------------------------------------------------------------------- */

static const char *load_caution(const boil_load *l)
{
    if (l->shape == BOIL_SHAPE_TUBE)
        return "Only into a steady boil, slowly. Both ends open, drained, pointed away from people.";
    return "Only into a steady boil, slowly. Steel only; no water in hollows.";
}

/* How the dial stood before. */
static double dial_before(const scenario *s, size_t action)
{
    for (size_t i = action; i > 0; i--)
        if (s->schedule.actions[i - 1].kind == BOIL_ACTION_HEAT)
            return s->schedule.actions[i - 1].is.dial;
    return s->plant.heater.dial;
}

static const char *heat_caution(const scenario *s, size_t action)
{
    return s->schedule.actions[action].is.dial > dial_before(s, action)
               ? "Stand back as the boil returns; add nothing until it is steady."
               : "It may go quiet: then no water, no load.";
}

static const char *switch_caution(boil_action_kind kind, bool on)
{
    switch (kind) {
    case BOIL_ACTION_MIXER:
        return on ? "Stand back: stirring can set free stored heat at once." : "No dry salt once it stands still.";
    case BOIL_ACTION_LID:
        return on ? "Steam at the gap. What condenses drips back and floats."
                  : "Open it away from you: steam, and perhaps water afloat.";
    default:
        return on ? "" : "Fumes stay in the room.";
    }
}

const char *run_action_caution(const outcome *o, const run_action *r)
{
    const boil_action *a = action_of(o, r);
    switch (r->lifting ? BOIL_ACTION_LIFT : a->kind) {
    case BOIL_ACTION_LOAD:
        return load_caution(&a->is.load);
    case BOIL_ACTION_LIFT:
        return "Slowly; drain it over the bath.";
    case BOIL_ACTION_WATER:
        return "Only while it boils. No boil: stop the water. Never onto dry salt.";
    case BOIL_ACTION_SALTS:
        return "Only into a boiling or mixed bath, in small portions. No water onto it.";
    case BOIL_ACTION_LIQUID:
        return "Under the surface, slowly; stop when the boil stops.";
    case BOIL_ACTION_HEAT:
        return heat_caution(o->scenario, r->action);
    case BOIL_ACTION_MIXER:
    case BOIL_ACTION_LID:
    case BOIL_ACTION_EXHAUST:
        break;
    }
    return switch_caution(a->kind, a->is.on);
}

static const char *load_warning(const boil_load_result *l)
{
    return l->was_quiet ? "The bath is predicted quiet then: wait for a steady boil." : NULL;
}

static const char *addition_warning(const boil_addition_result *a)
{
    if (!a->was_quiet)
        return NULL;
    if (a->kind == BOIL_ACTION_SALTS)
        return "The bath is predicted quiet then: only with the mixer on.";
    if (!a->was_quiet_before)
        return "The boil is predicted to stop meanwhile: stop with it.";
    return a->kind == BOIL_ACTION_WATER ? "The bath is predicted quiet then: do not pour; wait for a steady boil."
                                        : "The bath is predicted quiet then: wait for a steady boil.";
}

const char *run_action_warning(const run_action *r, boil_severity *severity)
{
    const boil_addition_result *a = r->line.addition;
    *severity = a != NULL && a->kind == BOIL_ACTION_WATER && a->was_quiet_before ? BOIL_DANGER : BOIL_WARNING;
    return a != NULL ? addition_warning(a) : r->line.load != NULL ? load_warning(r->line.load) : NULL;
}
