/* sighting.c -- what a judge saw becomes a finding, or makes one of its kind graver. */
#include <math.h>

#include "base/array.h"
#include "findings/finding_parts.h"

double boil_finding_freeboard_unit(const boil_judged *j)
{
    return boil_grading_unit(&boil_gradings[BOIL_FOUND_FREEBOARD], &j->plant->limits);
}

double boil_finding_used_up(const boil_judged *j, double left_m)
{
    return 1 - left_m / boil_finding_freeboard_unit(j);
}

boil_sighting boil_sighting_watched(const boil_judged *j, boil_watch_kind k, double at_zero, double per_x)
{
    const boil_watched *w = &j->history->summary.watched[k];
    return (boil_sighting){.x = w->worst.value,
                           .value = at_zero + per_x * w->worst.value,
                           .per_x = per_x,
                           .time_s = (double)NAN,
                           .worst_s = w->worst.time_s,
                           .outside_s = w->outside_s,
                           .from_s = w->from_s,
                           .spells = w->spells};
}

boil_sighting boil_sighting_left(const boil_judged *j, double left_m, bool overflows, double time_s)
{
    return (boil_sighting){.x = boil_finding_used_up(j, left_m),
                           .value = left_m,
                           .limit = j->plant->limits.freeboard_m,
                           .per_x = -boil_finding_freeboard_unit(j),
                           .time_s = time_s,
                           .least = overflows ? BOIL_AT_DANGER : BOIL_UNBOUND,
                           .most = overflows ? BOIL_AT_DANGER : BOIL_AT_WARNING};
}

static boil_severity bound(boil_severity graded, const boil_sighting *s)
{
    int grades = graded < BOIL_SEVERITIES ? (int)graded + 1 : 0;
    if (s->most != BOIL_UNBOUND && grades > (int)s->most)
        grades = (int)s->most;
    if (grades < (int)s->least)
        grades = (int)s->least;
    return grades > 0 ? (boil_severity)(grades - 1) : BOIL_SEVERITIES;
}

static double or_none(double quantity)
{
    return quantity > 0 ? quantity : (double)NAN;
}

/* The lowest break point, as a value. */
static double limit_of(const boil_grading *g, const boil_sighting *s)
{
    if (s->limit != 0 || s->per_x == 0)
        return s->limit;
    for (int i = 0; i < BOIL_SEVERITIES; i++)
        if (!isnan(g->from[i]))
            return s->value + s->per_x * (g->from[i] - s->x);
    return (double)NAN;
}

/* When it was first so grave; a grade that something else than its measure gave it, when that is known, else the worst. */
static double first_at(const boil_sighting *s, boil_severity severity)
{
    double known = s->from_s != NULL && isnan(s->time_s) ? s->from_s[severity] : s->time_s;
    for (int i = (int)severity - 1; i >= 0 && isnan(known) && s->from_s != NULL; i--)
        known = s->from_s[i];
    return isnan(known) && s->from_s != NULL ? s->worst_s : known;
}

static void fill_grades(boil_finding *f, const boil_grading *g, const boil_sighting *s)
{
    for (int i = 0; i < BOIL_SEVERITIES; i++) {
        bool reached = i <= (int)f->severity && (!isnan(g->from[i]) || i == (int)f->severity);
        boil_finding_grade *of = &f->grades[i];
        of->severity = (boil_severity)i;
        of->from_s = !reached ? (double)NAN : i == (int)f->severity ? f->time_s : first_at(s, of->severity);
        of->limit = s->per_x != 0 ? s->value + s->per_x * (g->from[i] - s->x) : (double)NAN;
    }
}

static boil_finding finding_of(const boil_judged *j, const boil_sighting *s, boil_severity severity)
{
    const boil_finding_row *r = boil_finding_row_at(j->kind);
    boil_finding f = {.kind = j->kind,
                      .id = r->id,
                      .title = r->title,
                      .advice = s->advice != NULL ? s->advice : r->advice,
                      .own_cause = s->advice != NULL,
                      .severity = severity,
                      .measure = s->x,
                      .time_s = first_at(s, severity),
                      .value = s->value,
                      .limit = limit_of(&boil_gradings[j->kind], s),
                      .outside_s = s->outside_s > 0 ? s->outside_s : (double)NAN,
                      .value_words = r->value_words,
                      .unit = r->unit,
                      .needed_W = or_none(s->needed_W),
                      .needed_kg = or_none(s->needed_kg),
                      .needed_words = r->needed_words,
                      .count = s->spells > 0 ? s->spells : 1,
                      .certainty = BOIL_LIKELY,
                      .of_mixing = r->of_set,
                      .more_than = j->more_than};
    f.worst_s = s->worst_s != 0 ? s->worst_s : f.time_s;
    f.grades_count = BOIL_SEVERITIES;
    fill_grades(&f, &boil_gradings[j->kind], s);
    return f;
}

static bool is_graver(const boil_finding *a, const boil_finding *b)
{
    return a->severity != b->severity ? a->severity > b->severity : a->measure > b->measure;
}

/* One of a kind that is there already: the worst of both, each grade from the first. */
static void join(boil_finding *had, const boil_finding *more)
{
    const boil_finding old = *had;
    if (is_graver(more, had))
        *had = *more;
    had->count = old.count + more->count;
    had->outside_s = old.outside_s + more->outside_s; /* both known, or neither */
    for (int i = 0; i < BOIL_SEVERITIES; i++)
        had->grades[i].from_s = fmin(old.grades[i].from_s, more->grades[i].from_s);
    had->time_s = isnan(had->time_s) ? had->time_s : had->grades[had->severity].from_s;
}

void boil_find(boil_judged *j, const boil_sighting *s)
{
    const boil_grading *g = &boil_gradings[j->kind];
    boil_findings *f = j->list;
    boil_severity severity =
        isnan(s->x) ? BOIL_SEVERITIES : bound(boil_grading_of(g, s->x, boil_grading_margin(g, &j->plant->limits)), s);
    if (severity == BOIL_SEVERITIES)
        return;
    boil_finding finding = finding_of(j, s, severity);
    if (f->count > 0 && f->list[f->count - 1].kind == finding.kind) { /* its finds follow each other */
        join(&f->list[f->count - 1], &finding);
        return;
    }
    boil_finding *list = boil_array_reserve(f->list, &f->capacity, f->count, sizeof *list);
    if (list == NULL) {
        j->outcome = BOIL_NO_MEMORY;
        return;
    }
    f->list = list;
    list[f->count++] = finding;
}
