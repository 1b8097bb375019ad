/* events.c -- what is done and what comes of it, a sentence each. */
#include <ctype.h>
#include <math.h>
#include <stdarg.h>
#include <stdlib.h>

#include "base/memory.h"
#include "describe/finding_words.h"
#include "describe/headline.h"
#include "describe/verdict.h"
#include "replay/abreast.h"
#include "replay/replay.h"

static const double lies_kg = 2;
static const double again_s = 10; /* over the rim sooner again it was never below it */

static replay_event *next(replay *r)
{
    if (r->events_count == r->events_capacity) {
        size_t more = 2 * r->events_capacity + 32;
        replay_event *moved = memory_needed(realloc(r->events, more * sizeof *moved));
        if (moved == NULL)
            return NULL;
        r->events = moved;
        r->events_capacity = more;
    }
    return &r->events[r->events_count++];
}

static void say(replay *r, double time_s, bool grave, const char *format, ...) __attribute__((format(printf, 4, 5)));

/* What never came, or after the end, is not said. */
static void say(replay *r, double time_s, bool grave, const char *format, ...)
{
    bool came = time_s <= r->of->central.end_s;
    replay_event *e = came ? next(r) : NULL;
    if (e == NULL)
        return;
    *e = (replay_event){.time_s = time_s, .grave = grave, .order = r->events_count};
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(e->text.text, sizeof e->text.text, format, arguments);
    va_end(arguments);
    e->text.text[0] = (char)toupper((unsigned char)e->text.text[0]);
}

static void loads(replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->loads_count; i++) {
        const boil_load_result *l = &h->loads[i];
        action_name n = action_name_of(r->of->scenario, l->action);
        const boil_load *load = &r->of->scenario->schedule.actions[l->action].is.load;
        const char *what = action_name_of_load(&n);
        say(r, l->time_s, false, "%s goes in, at %s%s.", what, SHOWN(r->system, TEMPERATURE, load->temperature_K),
            l->was_quiet ? ", into a quiet bath" : "");
        say(r, l->lifted_s, false, "%s comes out.", what);
    }
}

static void additions(replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->additions_count; i++) {
        const boil_addition_result *a = &h->additions[i];
        action_name n = action_name_of(r->of->scenario, a->action);
        say(r, a->time_s, false, "%s, %s.", n.text, a->was_quiet_before ? "onto a quiet bath" : "while it boils");
    }
}

/* What neither loads nor additions tell. */
static void other_acts(replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->acts_count; i++) {
        boil_action_kind kind = r->of->scenario->schedule.actions[i].kind;
        bool told = kind == BOIL_ACTION_LOAD || kind == BOIL_ACTION_LIFT || kind == BOIL_ACTION_WATER ||
                    kind == BOIL_ACTION_SALTS || kind == BOIL_ACTION_LIQUID || kind == BOIL_ACTION_RETURN;
        if (!told)
            say(r, h->acts[i].done_s, false, "%s.", action_name_of(r->of->scenario, i).text);
    }
}

/* The most that floats in a spell, and when. */
static const boil_row *fullest(const replay *r, double from_s, double to_s)
{
    const boil_row *best = NULL;
    for (size_t i = 0; i < r->rows_count; i++) {
        const boil_row *row = &r->rows[i];
        if (row->time_s >= from_s && row->time_s <= to_s && !row->boiling && (best == NULL || row->layer_kg > best->layer_kg))
            best = row;
    }
    return best;
}

static void afloat(replay *r, const boil_quiet_result *q)
{
    double end_s = isnan(q->end_s) ? r->of->central.end_s : q->end_s;
    const boil_row *most = fullest(r, q->start_s, end_s);
    if (most != NULL && most->layer_kg >= REPLAY_AFLOAT_KG)
        say(r, most->time_s, false, "%s of water float on the quiet bath, %s deep. It looks calm.",
            SHOWN(r->system, MASS, most->layer_kg), SHOWN(r->system, LENGTH, most->layer_m));
    say(r, q->may_overflow_s, true, "If it lets go now it comes over the rim. It still looks calm.");
}

/* The latest that answers to a spell, and the earliest, of all runs of the set; what lets go of itself before the boil counts. */
static void clock_range(replay *r, size_t spell)
{
    const boil_run_set *set = &r->of->set;
    const boil_quiet_result *mine = &r->of->central.quiet[spell];
    double first_s = mine->end_s, last_s = mine->end_s;
    for (size_t i = 0; i < set->count; i++) {
        const boil_quiet_result *q =
            set->other[i].refused ? NULL : abreast_spell(&r->of->central, spell, &set->other[i].history);
        if (q != NULL && !isnan(q->end_s)) {
            first_s = fmin(first_s, q->end_s);
            last_s = fmax(last_s, q->end_s);
        }
        if (q != NULL && set->other[i].let_go_s > q->start_s && set->other[i].let_go_s < mine->end_s)
            first_s = fmin(first_s, set->other[i].let_go_s);
    }
    double start_s = r->of->scenario->start_s;
    if (mine->left_hot_m < r->of->scenario->plant.limits.freeboard_m && last_s - first_s > 2)
        say(r, fmax(mine->start_s, mine->end_s - 2), false,
            "When it lets go is uncertain: in the runs it is judged by between %s and %s.",
            format_clock_exact(start_s, first_s).text, format_clock_exact(start_s, last_s).text);
}

static void quiet_spells(replay *r)
{
    const boil_history *h = &r->of->central;
    for (size_t i = 0; i < h->quiet_count; i++) {
        const boil_quiet_result *q = &h->quiet[i];
        if (q->start_s > 0)
            say(r, q->start_s, false, "The boil is lost.");
        afloat(r, q);
        clock_range(r, i);
        if (q->layer_at_return_kg >= REPLAY_AFLOAT_KG)
            say(r, q->end_s, false, "The boil is back after %s: %s of water mix in at once.",
                format_duration(q->end_s - q->start_s).text, SHOWN(r->system, MASS, q->layer_at_return_kg));
        else
            say(r, q->end_s, false, "The boil is back after %s.", format_duration(q->end_s - q->start_s).text);
    }
}

static void crossed(replay *r, double time_s, double before_s, bool over)
{
    double peak = r->calm_kg_s > 0 ? r->of->central.summary.steam_peak_kg_s.value / r->calm_kg_s : 0;
    if (over && peak < 2)
        say(r, time_s, true, "It comes over the rim.");
    else if (over)
        say(r, time_s, true, "It comes over the rim. At the most the steam is %s%.0f times as usual.",
            r->of->central.summary.steam_more_than ? "more than " : "", floor(peak));
    else
        say(r, time_s, false,
            "It falls below the rim again, after %s. What left the tank is not worked out: from here on this is no prediction.",
            format_duration(time_s - before_s).text);
}

/* Whether it is over the rim again soon after a row. */
static bool comes_again(const replay *r, size_t row, double depth_m)
{
    for (size_t i = row; i < r->rows_count && r->rows[i].time_s < r->rows[row].time_s + again_s; i++)
        if (r->rows[i].level_m > depth_m)
            return true;
    return false;
}

/* The rim, crossed either way. */
static void rim(replay *r)
{
    double depth_m = r->of->scenario->plant.tank.depth_m, rose_s = 0;
    bool over = false;
    for (size_t i = 0; i < r->rows_count; i++) {
        const boil_row *row = &r->rows[i];
        if ((row->level_m > depth_m) == over || (over && comes_again(r, i, depth_m)))
            continue;
        over = !over;
        crossed(r, row->time_s, rose_s, over);
        rose_s = over ? row->time_s : rose_s;
    }
}

static void limit(replay *r)
{
    const boil_limits *l = &r->of->scenario->plant.limits;
    double low_m = r->of->scenario->plant.tank.depth_m - l->freeboard_m;
    bool high = false;
    for (size_t i = 0; i < r->rows_count && !high; i++) {
        high = r->rows[i].level_m > low_m;
        if (high)
            say(r, r->rows[i].time_s, true, "Less than %s to the rim.", SHOWN(r->system, LENGTH, l->freeboard_m));
    }
}

static void salt(replay *r)
{
    const boil_row *most = NULL;
    for (size_t i = 0; i < r->rows_count; i++)
        if (most == NULL || r->rows[i].undissolved_kg > most->undissolved_kg)
            most = &r->rows[i];
    if (most != NULL && most->undissolved_kg >= lies_kg)
        say(r, most->time_s, false, "%s of salt lie on the floor, not yet dissolved.",
            SHOWN(r->system, MASS, most->undissolved_kg));
}

/* The same words of certainty as the report of `run`. */
static void findings(replay *r)
{
    const carried_out *o = r->of;
    for (const boil_finding *f = headline_next(o, NULL); f != NULL; f = headline_next(o, f)) {
        bool possible = headline_is_possible(o, f);
        const char *sure = possible ? "possible" : finding_is_certain_in_band(f) ? "certain in the band" : "likely";
        if (f->severity >= BOIL_SEVERITY_WARNING && !isnan(f->time_s))
            say(r, f->time_s, f->severity == BOIL_SEVERITY_DANGER && !possible, "%s (%s): %s. %s",
                boil_severity_word(f->severity), sure, f->title, f->advice);
    }
}

/* Where the run ends with something afloat, what then comes is told by the runs that went on. */
static void end(replay *r)
{
    const carried_out *o = r->of;
    say(r, o->central.end_s, false, "%s: %s.", carried_out_stopped(o) ? "The run stopped" : "The end",
        carried_out_stopped(o) ? verdict_stop_reason(o, r->system).text : verdict_of(o, r->system).text);
}

/* Of one moment in the order in which they were told. */
static int by_time(const void *left, const void *right)
{
    const replay_event *a = left, *b = right;
    if (a->time_s != b->time_s)
        return a->time_s < b->time_s ? -1 : 1;
    return (a->order > b->order) - (a->order < b->order);
}

void replay_events_make(replay *r)
{
    loads(r);
    additions(r);
    other_acts(r);
    quiet_spells(r);
    rim(r);
    limit(r);
    salt(r);
    findings(r);
    end(r);
    if (r->events_count > 0)
        qsort(r->events, r->events_count, sizeof *r->events, by_time);
}
