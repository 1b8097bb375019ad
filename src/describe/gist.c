#include "describe/gist.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "describe/finding_words.h"
#include "describe/headline.h"
#include "describe/verdict.h"

typedef struct {
    const carried_out *o;
    const boil_summary *summary;
    const boil_limits *limits;
    unit_system system;
    gist *to;
} teller;

static gist_row *begin(const teller *t, const char *label)
{
    gist_row *r = &t->to->rows[t->to->rows_count++];
    *r = (gist_row){.label = label};
    return r;
}

static void head(const teller *t)
{
    gist *g = t->to;
    const boil_finding *f = headline_of(t->o);
    g->headline = f;
    g->word = f != NULL ? boil_severity_word(f->severity) : carried_out_stopped(t->o) ? "STOPPED" : "NOTHING ABOVE NOTICE";
    if (f == NULL)
        return;
    TEXT_ADD(g->behind.text, "%s", headline_is_possible(t->o, f) ? " (possible)" : "");
    if (!isnan(f->time_s))
        TEXT_ADD(g->behind.text, " %s", finding_clock(t->o, f).text);
    TEXT_ADD(g->behind.text, "  %s", f->title);
}

static void first_act(const teller *t, const boil_finding *f)
{
    gist_row *r = begin(t, "do first");
    TEXT_ADD(r->says.text, "%s", f->advice);
}

static void worst(const teller *t, const boil_finding *f)
{
    const boil_finding *cause = headline_cause(t->o, f);
    finding_words how = finding_worst_of(t->o, f, t->system);
    if (headline_is_possible(t->o, f))
        TEXT_ADD(how.text, "%snot in every run", how.text[0] != '\0' ? "; " : "");
    if (cause != NULL)
        TEXT_ADD(how.text, "%scause: %s", how.text[0] != '\0' ? "; " : "", cause->title);
    if (how.text[0] != '\0')
        TEXT_ADD(begin(t, "worst")->says.text, "%s", how.text);
}

/* How much of each limit is used up; of a run that is within all of them the most used is told. */

static double freeboard_used(const teller *t)
{
    return t->limits->freeboard_m / t->summary->freeboard_min_m.value;
}

static double recovery_used(const teller *t)
{
    const boil_load_result *slowest = carried_out_slowest(t->o);
    return slowest != NULL ? slowest->recovery_s / t->limits->recovery_s : (double)NAN;
}

/* From the middle of the band to whichever end is nearer. */
static double band_used(const teller *t)
{
    double middle = (t->limits->boiling_point_high_K + t->limits->boiling_point_low_K) / 2;
    double half = (t->limits->boiling_point_high_K - t->limits->boiling_point_low_K) / 2;
    return fmax(t->summary->temperature_max_K.value - middle, middle - t->summary->temperature_min_K.value) / half;
}

static void nearest_freeboard(const teller *t, gist_row *r)
{
    const boil_extreme *f = &t->summary->freeboard_min_m;
    TEXT_ADD(r->says.text, "freeboard %s of %s, at %s", SHOWN(t->system, LENGTH, f->value),
             format_number(t->system, DIM_LENGTH, t->limits->freeboard_m).text, carried_out_clock(t->o, f->time_s).text);
}

static void nearest_recovery(const teller *t, gist_row *r)
{
    const boil_load_result *slowest = carried_out_slowest(t->o);
    TEXT_ADD(r->says.text, "boil back after %s of %s, at %s", format_duration(slowest->recovery_s).text,
             format_duration(t->limits->recovery_s).text, carried_out_clock(t->o, slowest->time_s).text);
}

static void nearest_band(const teller *t, gist_row *r)
{
    double high_K = t->limits->boiling_point_high_K, low_K = t->limits->boiling_point_low_K;
    double most_K = t->summary->temperature_max_K.value, least_K = t->summary->temperature_min_K.value;
    bool up = most_K - (high_K + low_K) / 2 > (high_K + low_K) / 2 - least_K;
    TEXT_ADD(r->says.text, "boils at %s, band to %s, at %s", SHOWN(t->system, TEMPERATURE, up ? most_K : least_K),
             format_bare(t->system, DIM_TEMPERATURE, up ? high_K : low_K).text,
             carried_out_clock(t->o, up ? t->summary->temperature_max_K.time_s : t->summary->temperature_min_K.time_s).text);
}

static void nearest(const teller *t)
{
    static const struct {
        double (*used)(const teller *t);
        void (*say)(const teller *t, gist_row *r);
    } limits[] = {{freeboard_used, nearest_freeboard}, {recovery_used, nearest_recovery}, {band_used, nearest_band}};
    gist_row *r = begin(t, "nearest");
    double most = -1;
    size_t which = 0;
    for (size_t i = 0; i < sizeof limits / sizeof limits[0]; i++) {
        double used = limits[i].used(t);
        which = used > most ? i : which;
        most = fmax(most, used);
    }
    limits[which].say(t, r);
    TEXT_ADD(r->says.text, ": %.0f %% used", 100 * most);
}

static void stopped(const teller *t)
{
    gist_row *r = begin(t, "STOPPED");
    TEXT_ADD(r->says.text, "at %s, %s were asked for: %s", carried_out_clock(t->o, t->o->central.end_s).text,
             format_duration(t->o->scenario->schedule.duration_s).text, verdict_stop_reason(t->o, t->system).text);
}

/* Of a quiet start: who comes in early asks for nothing else. */
static void first_boil(const teller *t)
{
    double boils_s = t->summary->time_to_boil_s;
    if (!isnan(boils_s))
        TEXT_ADD(begin(t, "first boil")->says.text, "after %s, at %s", format_duration(boils_s).text,
                 carried_out_clock(t->o, boils_s).text);
}

/* The slowest against the limit, in digits that tell them apart. */
static void slowest(const teller *t, gist_row *r, const boil_recoveries *back)
{
    const boil_load_result *l = carried_out_slowest(t->o);
    double limit_s = t->limits->recovery_s;
    if (!(l->recovery_s > 0)) {
        TEXT_ADD(r->says.text, "; none stopped the boil");
        return;
    }
    bool alike = strcmp(format_duration(l->recovery_s).text, format_duration(limit_s).text) == 0;
    formatted_text took = alike && back->back < t->o->central.loads_count
                              ? format_value_and_limit(t->system, DIM_TIME, l->recovery_s, limit_s).value
                              : format_duration(l->recovery_s);
    TEXT_ADD(r->says.text, "; slowest %s, at %s", took.text, carried_out_clock(t->o, l->time_s).text);
}

/* Acts that waited in vain: loads or pours that the shift was to have. */
static void add_undone(const teller *t, gist_row *r)
{
    size_t undone = 0;
    for (size_t i = 0; i < t->o->scenario->schedule.count && !carried_out_stopped(t->o); i++)
        undone += isnan(carried_out_done_s(t->o, i)) ? 1 : 0;
    if (undone > 0)
        TEXT_ADD(r->says.text, "; %s not done", format_count(undone, "act", "acts").text);
}

static void loads(const teller *t)
{
    gist_row *r = begin(t, "loads");
    size_t count = t->o->central.loads_count;
    boil_recoveries back = boil_history_recoveries(&t->o->central, t->limits->recovery_s);
    if (count == 0)
        TEXT_ADD(r->says.text, "none");
    else
        TEXT_ADD(r->says.text, "%zu of %zu back within %s", back.back, count, format_duration(t->limits->recovery_s).text);
    if (back.never > 0)
        TEXT_ADD(r->says.text, "; %zu not at all", back.never);
    else if (count > 0)
        slowest(t, r, &back);
    add_undone(t, r);
}

/* A rate where the bath boils most of an hour or more: what it takes is then steady. */
static void water(const teller *t)
{
    gist_row *r = begin(t, "water");
    carried_out_water w = carried_out_water_of(t->o);
    const char *volume = format_unit(t->system, DIM_VOLUME);
    double hours = t->o->central.end_s / 3600, per = hours >= 1 && t->summary->boiling_share >= 0.5 ? hours : 1;
    double given = unit_from_si(DIM_VOLUME, volume, w.given_m3), taken = unit_from_si(DIM_VOLUME, volume, w.taken_m3);
    double lacks = taken - given;
    if (!(t->summary->boiling_share > 0)) { /* what it lacks then is no reason to pour */
        TEXT_ADD(r->says.text, "%.1f %s given; it never boils, %.1f %s evaporate", given, volume, fabs(taken), volume);
        return;
    }
    TEXT_ADD(r->says.text, "%.1f %s%s given, steam takes %.1f", given / per, volume, per != 1 || hours == 1 ? "/h" : "",
             fabs(taken / per) < 0.05 ? 0 : taken / per);
    if (fabs(lacks) < 0.05)
        TEXT_ADD(r->says.text, ": even");
    else
        TEXT_ADD(r->says.text, ": %.1f %s %s in %s", fabs(lacks), volume, lacks > 0 ? "short" : "over",
                 format_duration(t->o->central.end_s).text);
}

/* "(+0.2)": between the numbers as they are shown. */
static formatted_text drift(const char *from, const char *to)
{
    formatted_text t;
    const char *point = strchr(to, '.');
    double difference = strtod(to, NULL) - strtod(from, NULL);
    int decimals = point != NULL ? (int)strlen(point + 1) : 0;
    snprintf(t.text, sizeof t.text, fabs(difference) < 0.5 * pow(10, -decimals) ? "(%.*f)" : "(%+.*f)", decimals,
             fabs(difference) < 0.5 * pow(10, -decimals) ? 0 : difference);
    return t;
}

static void boils_at(const teller *t)
{
    const boil_summary *s = t->summary;
    gist_row *r = begin(t, "boils at");
    formatted_text from = format_number(t->system, DIM_TEMPERATURE, s->boiling_point_start_K);
    formatted_text to = format_number(t->system, DIM_TEMPERATURE, s->boiling_point_end_K);
    double least_K = fmin(s->temperature_min_K.value, fmin(s->boiling_point_start_K, s->boiling_point_end_K));
    double most_K = fmax(s->temperature_max_K.value, fmax(s->boiling_point_start_K, s->boiling_point_end_K));
    TEXT_ADD(r->says.text, "%s -> %s %s %s; %s to %s, band %s to %s", from.text, to.text,
             format_unit(t->system, DIM_TEMPERATURE), drift(from.text, to.text).text,
             format_number(t->system, DIM_TEMPERATURE, least_K).text, format_number(t->system, DIM_TEMPERATURE, most_K).text,
             format_bare(t->system, DIM_TEMPERATURE, t->limits->boiling_point_low_K).text,
             format_bare(t->system, DIM_TEMPERATURE, t->limits->boiling_point_high_K).text);
}

static void level(const teller *t)
{
    const boil_summary *s = t->summary;
    gist_row *r = begin(t, "level");
    formatted_text from = format_number(t->system, DIM_LENGTH, s->still_level_start_m);
    formatted_text to = format_number(t->system, DIM_LENGTH, s->still_level_end_m);
    TEXT_ADD(r->says.text, "%s -> %s %s %s still; swelled at most %s, rim %s", from.text, to.text,
             format_unit(t->system, DIM_LENGTH), drift(from.text, to.text).text,
             format_number(t->system, DIM_LENGTH, s->level_max_m.value).text,
             format_number(t->system, DIM_LENGTH, t->o->scenario->plant.tank.depth_m).text);
}

#define TOLD_APART_M 0.0038 /* 0.15 in: less is no other answer */

static void freeboard(const teller *t)
{
    const boil_extreme *f = &t->summary->freeboard_min_m;
    gist_row *r = begin(t, "freeboard");
    double gravest_m = t->o->scenario->plant.tank.depth_m - t->o->bands.level_max_m.high;
    TEXT_ADD(r->says.text, "least %s at %s, limit %s", SHOWN(t->system, LENGTH, f->value),
             carried_out_clock(t->o, f->time_s).text, format_number(t->system, DIM_LENGTH, t->limits->freeboard_m).text);
    if (gravest_m < f->value - TOLD_APART_M)
        TEXT_ADD(r->says.text, "; %s in the gravest run", format_number(t->system, DIM_LENGTH, gravest_m).text);
}

static void first_out(const teller *t)
{
    gist_row *r = begin(t, "first out");
    double time_s;
    const boil_finding *f = headline_first_out(t->o, &time_s);
    if (f == NULL)
        TEXT_ADD(r->says.text, "never");
    else
        TEXT_ADD(r->says.text, "%s: %s%s", finding_moment(t->o, f, time_s).text, f->title,
                 headline_is_possible(t->o, f) ? " (possible)" : "");
}

/* Of a lesson: whether these acts pass, and what does not hold. */
static void lesson_told(const teller *t)
{
    const lesson *l = &t->o->scenario->lesson;
    if (!l->given)
        return;
    gist_row *r = begin(t, "lesson");
    lesson_verdict v = lesson_judge(l, &t->o->scenario->plant, &t->o->central);
    TEXT_ADD(r->says.text, "%s", v.passed ? "passed" : "not passed");
    for (size_t i = 0; i < l->terms_count; i++)
        if (!v.holds[i])
            TEXT_ADD(r->says.text, "; %s %s, %s", l->terms[i].measure->title,
                     lesson_value_text(&l->terms[i], v.value[i], t->system).text, lesson_limit_text(&l->terms[i]).text);
    if (v.waited > 0)
        TEXT_ADD(r->says.text, "; %s in vain", format_count(v.waited, "act waits", "acts wait").text);
}

gist gist_of(const carried_out *o, unit_system s)
{
    gist g = {.rows_count = 0};
    teller t = {o, &o->central.summary, &o->scenario->plant.limits, s, &g};
    head(&t);
    if (g.headline != NULL)
        first_act(&t, g.headline);
    if (carried_out_stopped(o))
        stopped(&t);
    if (g.headline != NULL)
        worst(&t, g.headline);
    else if (o->central.end_s > 0)
        nearest(&t);
    first_boil(&t);
    loads(&t);
    water(&t);
    boils_at(&t);
    level(&t);
    freeboard(&t);
    first_out(&t);
    lesson_told(&t);
    return g;
}
