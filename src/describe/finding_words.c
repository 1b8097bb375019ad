#include "describe/finding_words.h"

#include <math.h>

static formatted_text value_of(unit_system s, boil_unit_kind kind, double value)
{
    static const unit_dimension dimensions[] = {[BOIL_UNIT_TIME] = DIM_TIME,
                                                [BOIL_UNIT_LENGTH] = DIM_LENGTH,
                                                [BOIL_UNIT_MASS] = DIM_MASS,
                                                [BOIL_UNIT_MASS_FLOW] = DIM_MASS_FLOW,
                                                [BOIL_UNIT_TEMPERATURE] = DIM_TEMPERATURE,
                                                [BOIL_UNIT_DIFFERENCE] = DIM_DIFFERENCE,
                                                [BOIL_UNIT_POWER] = DIM_POWER,
                                                [BOIL_UNIT_DENSITY] = DIM_CONCENTRATION,
                                                [BOIL_UNIT_SHARE] = DIM_FRACTION};
    return kind == BOIL_UNIT_RATIO ? format_ratio(value) : format_quantity(s, dimensions[kind], value);
}

/* The title, then pieces that may be missing. */
finding_words finding_words_of(const carried_out *o, const boil_finding *f, unit_system s)
{
    finding_words w;
    char times[48] = "", limit[80] = "", needed[80] = "", value[100] = "";
    const char *what = f->value_words != NULL ? f->value_words : "";
    if (f->count > 1)
        snprintf(times, sizeof times, " (%zu times; the worst)", f->count);
    if (!isnan(f->value) && f->value != f->time_s) /* some say only when */
        snprintf(value, sizeof value, ": %s%s%s%s", what, *what != '\0' ? " " : "", f->more_than ? "more than " : "",
                 value_of(s, f->unit, f->value).text);
    if (!isnan(f->limit) && f->limit != f->needed_W) /* else it is said below */
        snprintf(limit, sizeof limit, ", limit %s", value_of(s, f->unit, f->limit).text);
    if (f->needed_W > 0)
        snprintf(needed, sizeof needed, "; %s to the tank would do", format_quantity(s, DIM_POWER, f->needed_W).text);
    if (f->needed_words && f->needed_kg > 0)
        snprintf(needed, sizeof needed, "; %s %s", f->needed_words, format_quantity(s, DIM_MASS, f->needed_kg).text);
    snprintf(w.text, sizeof w.text, "%s%s%s%s%s%s%s%s", f->title, times, value, limit, needed,
             f->before_boil ? "; it may erupt before it boils" : "",
             f->of_mixing && f->certainty == BOIL_CERTAIN ? "; certain in the band" : "",
             f->time_s > o->central.summary.overflow_s ? " (after overflow: not a prediction)" : "");
    return w;
}

formatted_text finding_clock(const carried_out *o, const boil_finding *f)
{
    return isnan(f->time_s) ? (formatted_text){""} : format_clock(o->scenario->start_s, f->time_s);
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
