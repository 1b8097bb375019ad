#include "describe/finding_words.h"

#include <math.h>

static unit_dimension dimension_of(boil_unit_kind kind)
{
    static const unit_dimension dimensions[] = {[BOIL_UNIT_TIME] = DIM_TIME,
                                                [BOIL_UNIT_LENGTH] = DIM_LENGTH,
                                                [BOIL_UNIT_MASS] = DIM_MASS,
                                                [BOIL_UNIT_MASS_FLOW] = DIM_MASS_FLOW,
                                                [BOIL_UNIT_TEMPERATURE] = DIM_TEMPERATURE,
                                                [BOIL_UNIT_DIFFERENCE] = DIM_DIFFERENCE,
                                                [BOIL_UNIT_POWER] = DIM_POWER,
                                                [BOIL_UNIT_DENSITY] = DIM_CONCENTRATION,
                                                [BOIL_UNIT_RATIO] = DIM_COUNT,
                                                [BOIL_UNIT_SHARE] = DIM_FRACTION};
    return dimensions[kind];
}

static formatted_text value_of(unit_system s, boil_unit_kind kind, double value)
{
    return kind == BOIL_UNIT_RATIO ? format_ratio(value) : format_quantity(s, dimension_of(kind), value);
}

/* Some say only when; and of some the limit is what would have been needed, which is said apart. */
static bool has_value(const boil_finding *f)
{
    return !isnan(f->value) && f->value != f->time_s;
}

static bool has_limit(const boil_finding *f)
{
    return has_value(f) && !isnan(f->limit) && f->limit != f->needed_W;
}

static format_pair pair_of(const boil_finding *f, unit_system s)
{
    if (has_limit(f))
        return format_value_and_limit(s, dimension_of(f->unit), f->value, f->limit);
    return (format_pair){value_of(s, f->unit, f->value), {""}};
}

static void add(finding_words *w, const char *between)
{
    if (w->text[0] != '\0')
        TEXT_ADD(w->text, "%s", between);
}

static void add_value(finding_words *w, const boil_finding *f, unit_system s, const char *when)
{
    format_pair p = pair_of(f, s);
    TEXT_ADD(w->text, "%s%s%s%s%s", f->value_words != NULL ? f->value_words : "", f->value_words != NULL ? " " : "",
             f->more_than ? "more than " : "", p.value.text, when);
    if (has_limit(f))
        TEXT_ADD(w->text, ", limit %s", p.limit.text);
}

static void add_needed(finding_words *w, const boil_finding *f, unit_system s)
{
    if (f->needed_W > 0)
        TEXT_ADD(w->text, "; %s to the tank would do", format_quantity(s, DIM_POWER, f->needed_W).text);
    if (f->needed_words != NULL && f->needed_kg > 0)
        TEXT_ADD(w->text, "; %s %s", f->needed_words, format_quantity(s, DIM_MASS, f->needed_kg).text);
    if (f->before_boil)
        TEXT_ADD(w->text, "; it may erupt before it boils");
}

bool finding_is_certain_in_band(const boil_finding *f)
{
    return f->of_mixing && f->certainty == BOIL_CERTAIN;
}

/* The title, then pieces that may be missing. */
finding_words finding_words_of(const carried_out *o, const boil_finding *f, unit_system s)
{
    finding_words w = {""};
    TEXT_ADD(w.text, "%s", f->title);
    if (f->count > 1)
        TEXT_ADD(w.text, " (%zu times; the worst)", f->count);
    if (has_value(f)) {
        TEXT_ADD(w.text, ": ");
        add_value(&w, f, s, "");
    }
    add_needed(&w, f, s);
    if (finding_is_certain_in_band(f))
        TEXT_ADD(w.text, "; certain in the band");
    if (f->time_s > o->central.summary.overflow_s)
        TEXT_ADD(w.text, " (after overflow: not a prediction)");
    return w;
}

/* Every second of what holds for the whole run is outside. */
static void add_outside(finding_words *w, const boil_finding *f)
{
    char times[40] = "";
    if (f->count > 1)
        snprintf(times, sizeof times, "%zu times", f->count);
    if (f->outside_s > 0) {
        add(w, "; ");
        TEXT_ADD(w->text, "outside %s%s%s", format_duration(f->outside_s).text, *times != '\0' ? ", " : "", times);
    } else if (*times != '\0') {
        add(w, "; ");
        TEXT_ADD(w->text, "%s", times);
    }
}

static void add_worst(finding_words *w, const carried_out *o, const boil_finding *f, unit_system s)
{
    formatted_text when = {""};
    if (!isnan(f->worst_s))
        snprintf(when.text, sizeof when.text, " at %.40s", finding_moment(o, f, f->worst_s).text);
    if (has_value(f)) {
        add(w, "; ");
        add_value(w, f, s, when.text);
    }
    add_outside(w, f);
    add_needed(w, f, s);
    if (f->time_s > o->central.summary.overflow_s)
        TEXT_ADD(w->text, " (after overflow: not a prediction)");
}

finding_words finding_worst_of(const carried_out *o, const boil_finding *f, unit_system s)
{
    finding_words w = {""};
    add_worst(&w, o, f, s);
    return w;
}

finding_words finding_facts_of(const carried_out *o, const boil_finding *f, unit_system s)
{
    finding_words w = {""};
    if (!isnan(f->time_s))
        TEXT_ADD(w.text, "first %s", finding_moment(o, f, f->time_s).text);
    add_worst(&w, o, f, s);
    return w;
}

/* A grade that a graver one followed at the same moment says nothing. */
static bool is_passed_at_once(const boil_finding *f, size_t grade)
{
    for (size_t i = grade + 1; i < f->grades_count && f->grades[i].severity <= f->severity; i++)
        if (f->grades[i].from_s <= f->grades[grade].from_s)
            return true;
    return false;
}

finding_words finding_grades_of(const carried_out *o, const boil_finding *f)
{
    finding_words w = {""};
    int several = 0;
    for (size_t i = 0; i < f->grades_count; i++) {
        bool reached = !isnan(f->grades[i].from_s) && f->grades[i].severity <= f->severity;
        if (!reached || is_passed_at_once(f, i))
            continue;
        add(&w, ", ");
        TEXT_ADD(w.text, "%s from %s", boil_severity_word(f->grades[i].severity),
                 finding_moment(o, f, f->grades[i].from_s).text);
        several++;
    }
    return several > 1 ? w : (finding_words){""};
}

formatted_text finding_moment(const carried_out *o, const boil_finding *f, double t)
{
    return f->outside_s < 120 ? format_clock_exact(o->scenario->start_s, t) : carried_out_clock(o, t);
}

formatted_text finding_clock(const carried_out *o, const boil_finding *f)
{
    return isnan(f->time_s) ? (formatted_text){""} : finding_moment(o, f, f->time_s);
}

static const char *const colours[] = {[BOIL_SEVERITY_NOTICE] = "\033[1;34m",
                                      [BOIL_SEVERITY_CAUTION] = "\033[1;33m",
                                      [BOIL_SEVERITY_WARNING] = "\033[1;35m",
                                      [BOIL_SEVERITY_DANGER] = "\033[1;37;41m"};

void finding_severity_print(FILE *to, boil_severity s, bool colour)
{
    if (colour)
        fprintf(to, "%s%s\033[0m", colours[s], boil_severity_word(s));
    else
        fputs(boil_severity_word(s), to);
}
