#include "describe/verdict.h"

#include <math.h>
#include <string.h>

#include "describe/finding_words.h"
#include "describe/headline.h"

static void add_separator(verdict *v)
{
    if (v->text[0] != '\0')
        TEXT_ADD(v->text, "; ");
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
    TEXT_ADD(v->text, "%s reached %s, ", h->stop_quantity != NULL ? h->stop_quantity : "a quantity", value.text);
    if (strcmp(value.text, limit.text) == 0)
        TEXT_ADD(v->text, "where the known range ends");
    else
        TEXT_ADD(v->text, "and the known range ends at %s", limit.text);
}

verdict verdict_stop_reason(const carried_out *o, unit_system s)
{
    const boil_history *h = &o->central;
    verdict v = {""};
    if (h->end == BOIL_RUN_OUT_OF_RANGE)
        add_out_of_range(&v, h, s);
    else if (h->end == BOIL_RUN_FULL)
        TEXT_ADD(v.text, "the tank is full");
    else if (h->end != BOIL_RUN_DONE)
        TEXT_ADD(v.text, h->end == BOIL_RUN_FAILED ? "the integration failed" : "interrupted");
    return v;
}

/* NULL: it was not found. */
static const boil_finding *named(const boil_findings *f, const char *id)
{
    for (size_t i = 0; i < f->count; i++)
        if (strcmp(f->list[i].id, id) == 0)
            return &f->list[i];
    return NULL;
}

static bool is_never_boils(const boil_finding *f)
{
    return f != NULL && strcmp(f->id, "never-boils") == 0;
}

/* Behind the headline, which may say it already. */
static void add_never_boils(verdict *v, const carried_out *o, const boil_finding *headline, unit_system s)
{
    const boil_finding *f = named(&o->found, "never-boils");
    if (!is_never_boils(headline)) {
        add_separator(v);
        TEXT_ADD(v->text, "the bath never boils");
    }
    if (f != NULL && f->needed_W > 0)
        TEXT_ADD(v->text, ": it needs %s to the tank", format_quantity(s, DIM_POWER, f->needed_W).text);
}

static void add_headline(verdict *v, const carried_out *o, const boil_finding *f)
{
    TEXT_ADD(v->text, "%s%s", boil_severity_word(f->severity), headline_is_possible(o, f) ? " (possible)" : "");
    if (!isnan(f->time_s))
        TEXT_ADD(v->text, " at %s", finding_clock(o, f).text);
    TEXT_ADD(v->text, ": %s", f->title);
}

static void add_loads(verdict *v, const carried_out *o)
{
    size_t loads = o->central.loads_count;
    double limit = o->scenario->plant.limits.recovery_s;
    boil_recoveries r = boil_history_recoveries(&o->central, limit);
    TEXT_ADD(v->text, "%zu of %s back within %s", r.back, format_count(loads, "load", "loads").text,
             format_duration(limit).text);
    if (r.never > 0)
        TEXT_ADD(v->text, ", %zu not at all", r.never);
    else if (r.back < loads)
        TEXT_ADD(v->text, ", the slowest in %s", format_duration(r.slowest_s).text);
}

static void add_freeboard(verdict *v, const carried_out *o, unit_system s)
{
    const boil_extreme *f = &o->central.summary.freeboard_min_m;
    if (!(f->value > 0))
        return; /* over the rim: the finding says so */
    add_separator(v);
    TEXT_ADD(v->text, "least freeboard %s at %s", format_quantity(s, DIM_LENGTH, f->value).text,
             carried_out_clock(o, f->time_s).text);
}

verdict verdict_of(const carried_out *o, unit_system s)
{
    verdict v = {""};
    const boil_finding *f = headline_of(o);
    if (carried_out_stopped(o))
        TEXT_ADD(v.text, "STOPPED at %s: %s", carried_out_clock(o, o->central.end_s).text, verdict_stop_reason(o, s).text);
    if (f != NULL) {
        add_separator(&v);
        add_headline(&v, o, f);
    }
    if (!(o->central.summary.boiling_share > 0) && o->central.end_s > 0)
        add_never_boils(&v, o, f, s);
    if (o->central.loads_count > 0 && o->central.summary.boiling_share > 0) {
        add_separator(&v);
        add_loads(&v, o);
    }
    add_freeboard(&v, o, s);
    if (f == NULL)
        TEXT_ADD(v.text, "; nothing above NOTICE");
    return v;
}
