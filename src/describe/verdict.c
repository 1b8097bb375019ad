#include "describe/verdict.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static void add(verdict *v, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void add(verdict *v, const char *format, ...)
{
    size_t used = strlen(v->text);
    va_list values;
    va_start(values, format);
    vsnprintf(v->text + used, sizeof v->text - used, format, values);
    va_end(values);
}

static void add_separator(verdict *v)
{
    if (v->text[0] != '\0')
        add(v, "; ");
}

static formatted_text stop_value(const boil_history *h, unit_system s, double value)
{
    formatted_text t;
    if (h->stop_unit != NULL && strcmp(h->stop_unit, "K") == 0)
        return format_quantity(s, DIM_TEMPERATURE, value);
    if (h->stop_unit != NULL && strcmp(h->stop_unit, "m") == 0)
        return format_quantity(s, DIM_LENGTH, value);
    snprintf(t.text, sizeof t.text, "%.4g%s%.12s", value, h->stop_unit != NULL ? " " : "",
             h->stop_unit != NULL ? h->stop_unit : "");
    return t;
}

/* The run stops at the limit itself, so value and limit mostly look alike. */
static void add_out_of_range(verdict *v, const boil_history *h, unit_system s)
{
    formatted_text value = stop_value(h, s, h->stop_value), limit = stop_value(h, s, h->stop_limit);
    add(v, "%s reached %s, ", h->stop_quantity != NULL ? h->stop_quantity : "a quantity", value.text);
    if (strcmp(value.text, limit.text) == 0)
        add(v, "where the known range ends");
    else
        add(v, "and the known range ends at %s", limit.text);
}

verdict verdict_stop_reason(const carried_out *o, unit_system s)
{
    const boil_history *h = &o->central;
    verdict v = {""};
    switch (h->end) {
    case BOIL_RUN_DONE:
        break;
    case BOIL_RUN_OUT_OF_RANGE:
        add_out_of_range(&v, h, s);
        break;
    case BOIL_RUN_FAILED:
        add(&v, "the integration failed");
        break;
    case BOIL_RUN_INTERRUPTED:
        add(&v, "interrupted");
        break;
    }
    return v;
}

/* The finding that nothing in this run ever boiled, if there is one. */
static const boil_finding *never_boils(const carried_out *o)
{
    for (size_t i = 0; i < o->found.count; i++)
        if (strcmp(o->found.list[i].id, "never-boils") == 0)
            return &o->found.list[i];
    return NULL;
}

static void add_never_boils(verdict *v, const carried_out *o, unit_system s)
{
    const boil_finding *f = never_boils(o);
    add(v, "the bath never boils");
    if (f != NULL && f->needed_W > 0)
        add(v, ": it needs %s to the tank", format_quantity(s, DIM_POWER, f->needed_W).text);
}

static const boil_finding *overflow_in(const boil_findings *f)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, "overflow") == 0)
            return &f->list[i];
    return NULL;
}

/* The first, but an overflow before whatever is as grave. */
static const boil_finding *foremost(const boil_findings *f)
{
    const boil_finding *overflow = overflow_in(f);
    return overflow != NULL && overflow->severity == f->list[0].severity ? overflow : &f->list[0];
}

static void add_gravest(verdict *v, const carried_out *o)
{
    const boil_findings *list = &o->found;
    bool only_possible = boil_findings_gravest(&o->possible) > boil_findings_gravest(&o->found);
    if (only_possible)
        list = &o->possible;
    const boil_finding *f = foremost(list);
    add(v, "%s%s", boil_severity_word(f->severity), only_possible ? " (possible)" : "");
    if (!isnan(f->time_s))
        add(v, " at %s", format_clock(o->scenario->start_s, f->time_s).text);
    add(v, ": %s", f->title);
}

static void add_loads(verdict *v, const carried_out *o)
{
    size_t loads = o->central.loads_count;
    double limit = o->scenario->plant.limits.recovery_s;
    boil_recoveries r = boil_history_recoveries(&o->central, limit);
    add(v, "%zu of %zu loads back within %s", r.back, loads, format_duration(limit).text);
    if (r.never > 0)
        add(v, ", %zu not at all", r.never);
    else if (r.back < loads)
        add(v, ", the slowest in %s", format_duration(r.slowest_s).text);
}

static void add_freeboard(verdict *v, const carried_out *o, unit_system s)
{
    const boil_extreme *f = &o->central.summary.freeboard_min_m;
    if (!(f->value > 0))
        return; /* over the rim: the finding says so */
    add_separator(v);
    add(v, "least freeboard %s at %s", format_quantity(s, DIM_LENGTH, f->value).text,
        format_clock(o->scenario->start_s, f->time_s).text);
}

/* What is as grave in the central run shall not hide that it may boil over. */
static void add_possible_overflow(verdict *v, const carried_out *o)
{
    const boil_finding *overflow = overflow_in(&o->possible);
    bool comes_first = boil_findings_gravest(&o->possible) > boil_findings_gravest(&o->found);
    if (overflow == NULL || comes_first)
        return;
    add_separator(v);
    add(v, "it may boil over at %s", format_clock(o->scenario->start_s, overflow->time_s).text);
}

verdict verdict_of(const carried_out *o, unit_system s)
{
    verdict v = {""};
    bool grave = carried_out_gravest(o) > BOIL_SEVERITY_NOTICE;
    if (carried_out_stopped(o))
        add(&v, "STOPPED at %s: %s", format_clock(o->scenario->start_s, o->central.end_s).text, verdict_stop_reason(o, s).text);
    if (!(o->central.summary.boiling_share > 0) && o->central.end_s > 0) {
        add_separator(&v);
        add_never_boils(&v, o, s);
    } else if (grave) {
        add_separator(&v);
        add_gravest(&v, o);
    }
    if (o->central.loads_count > 0 && o->central.summary.boiling_share > 0) {
        add_separator(&v);
        add_loads(&v, o);
    }
    add_freeboard(&v, o, s);
    add_possible_overflow(&v, o);
    if (!grave)
        add(&v, "; nothing above NOTICE");
    return v;
}
