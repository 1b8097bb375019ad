#include "commands/size/output.h"

#include <math.h>

#include "analysis/load_size.h"
#include "base/boil.h"
#include "base/text.h"
#include "describe/report.h"

#define REPEATS_LISTED ((size_t)6) /* fewer than there ever are */

typedef struct {
    const size_case *size;
    unit_system system;
    FILE *to;
} writing;

static bool is_no(int result)
{
    return result == BOIL_NO_ROOT || result == BOIL_RANGE;
}

/* Heaviest -------------------------------------------------------------------------------------------------------- */

static void heaviest_lines(const writing *w, double times)
{
    const size_case *c = w->size;
    size_t load = 0;
    fprintf(w->to, "\n %8s  %-44s %12s\n", "time", "load", "at most");
    for (size_t i = 0; i < c->schedule.count; i++) {
        const boil_action *a = &c->schedule.actions[i];
        if (action_load_of(a) == NULL)
            continue;
        fprintf(w->to, " %8s  %s %12s\n", format_clock(c->one_load ? 0 : c->scenario->start_s, a->time_s).text,
                text_fitted(size_case_words(c, w->system, load++).text, 44).text,
                format_quantity(w->system, DIM_MASS, times * a->is.load.mass_kg).text);
    }
}

static void heaviest_text(const writing *w, double times)
{
    formatted_text limit = format_duration(w->size->limit_s);
    if (times > 0)
        fprintf(w->to, "All loads may be x%.3f as heavy: up to %s, back within %s and below the rim\n",
                floor(times * 1000) / 1000, format_quantity(w->system, DIM_MASS, times * w->size->load.mass_kg).text,
                limit.text);
    else
        fprintf(w->to, "With this heat not even the lightest load has the boil back within %s below the rim\n", limit.text);
    size_report_case(w->size, w->system, w->to);
    if (times > 0)
        heaviest_lines(w, times);
    report_caution(w->to);
}

int size_heaviest(const size_case *c, unit_system s, bool as_json, FILE *to)
{
    writing w = {c, s, to};
    boil_run_options o = boil_run_options_default();
    double times;
    int result = boil_load_size_heaviest(&c->scenario->plant, &c->schedule, &o, c->limit_s, &times);
    if (is_no(result))
        times = 0;
    else if (result != BOIL_OK)
        return result;
    if (as_json)
        size_heaviest_json(c, times, to);
    else
        heaviest_text(&w, times);
    return BOIL_OK;
}

/* Interval -------------------------------------------------------------------------------------------------------- */

static void interval_proof(const writing *w, const boil_plant *watered, double interval_s)
{
    boil_schedule s;
    boil_history h;
    boil_run_options o = boil_run_options_default();
    int result = boil_load_size_repeated(&w->size->load, interval_s, w->size->limit_s, &s);
    if (result == BOIL_OK)
        result = boil_run(watered, &s, &o, &h);
    boil_schedule_free(&s);
    if (result != BOIL_OK)
        return;
    fprintf(w->to, "\nThe last of %zu such loads\n %8s %10s\n", h.loads_count, "after", "back after");
    for (size_t i = h.loads_count - REPEATS_LISTED; i < h.loads_count; i++)
        fprintf(w->to, " %8s %10s\n", format_duration(h.loads[i].time_s).text,
                isnan(h.loads[i].boil_lost_s) ? "kept" : format_duration(h.loads[i].recovery_s).text);
    fprintf(w->to, " boiling between %s and %s; water %s in all, let in by a valve that holds the boiling point\n",
            format_quantity(w->system, DIM_TEMPERATURE, h.summary.temperature_min_K.value).text,
            format_quantity(w->system, DIM_TEMPERATURE, h.summary.temperature_max_K.value).text,
            format_quantity(w->system, DIM_MASS, h.summary.water_controlled_kg).text);
    boil_history_free(&h);
}

static void interval_text(const writing *w, const boil_plant *watered, double interval_s)
{
    formatted_text limit = format_duration(w->size->limit_s);
    if (interval_s > 0)
        fprintf(w->to, "A load every %s, and no sooner, has the boil back within %s each time and stays in the band\n",
                format_duration(interval_s).text, limit.text);
    else
        fprintf(w->to, "However long one waits between them, such loads do not have the boil back within %s in the band\n",
                limit.text);
    fprintf(w->to, "\n%s\n equal loads: %s\n", text_plain(w->size->scenario->title).text,
            size_case_words(w->size, w->system, 0).text);
    double stay_s = w->size->load.immersed_s;
    if (interval_s < stay_s && isfinite(stay_s))
        report_paragraph(w->to,
                         "Each stays in for %s, so that %.0f are in at once: if they do not fit, the tank and not the heat "
                         "sets the interval.",
                         format_duration(stay_s).text, ceil(stay_s / interval_s));
    if (interval_s > 0)
        interval_proof(w, watered, interval_s);
    report_caution(w->to);
}

int size_interval(const size_case *c, unit_system s, bool as_json, FILE *to)
{
    writing w = {c, s, to};
    boil_run_options o = boil_run_options_default();
    boil_plant watered;
    double interval_s;
    int result = boil_load_size_watered(&c->scenario->plant, &watered);
    if (result == BOIL_OK)
        result = boil_load_size_interval(&watered, &c->load, &o, c->limit_s, &interval_s);
    if (is_no(result))
        interval_s = (double)NAN;
    else if (result != BOIL_OK)
        return result;
    if (as_json)
        size_interval_json(c, interval_s, to);
    else
        interval_text(&w, &watered, interval_s);
    return BOIL_OK;
}
