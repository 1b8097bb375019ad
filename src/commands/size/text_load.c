/* text_load.c -- how much steel the heat that is there carries, in words. */
#include <math.h>

#include "commands/size/answer.h"
#include "describe/report.h"

#define REPEATS_LISTED ((size_t)6) /* fewer than there ever are */

static void heaviest_lines(const size_heaviest *h, unit_system s, FILE *to)
{
    const size_case *c = h->size;
    size_t load = 0;
    fprintf(to, "\n %8s  %-44s %12s\n", "time", "load", "at most");
    for (size_t i = 0; i < c->schedule.count; i++) {
        const boil_action *a = &c->schedule.actions[i];
        if (action_load_of(a) == NULL)
            continue;
        fprintf(to, " %8s  %s %12s\n", format_clock(c->one_load ? 0 : c->scenario->start_s, a->time_s).text,
                text_fitted(size_case_words(c, s, load++).text, 44).text, SHOWN(s, MASS, h->times * a->is.load.mass_kg));
    }
}

void size_heaviest_report(const void *answer, const output *o, FILE *to)
{
    const size_heaviest *h = answer;
    unit_system s = o->system;
    formatted_text limit = format_duration(h->size->limit_s);
    if (h->times > 0)
        report_verdict(to, "All loads may be x%.3f as heavy: up to %s, back within %s and below the rim",
                       floor(h->times * 1000) / 1000, SHOWN(s, MASS, h->times * h->size->load.mass_kg), limit.text);
    else
        report_verdict(to, "With this heat not even the lightest load has the boil back within %s below the rim", limit.text);
    size_report_case(h->size, s, to);
    if (h->times > 0)
        heaviest_lines(h, s, to);
    report_caution(to);
}

static void interval_proof(const boil_history *h, unit_system s, FILE *to)
{
    fprintf(to, "\nThe last of %zu such loads\n %8s %10s\n", h->loads_count, "after", "back after");
    for (size_t i = h->loads_count - REPEATS_LISTED; i < h->loads_count; i++)
        fprintf(to, " %8s %10s\n", format_duration(h->loads[i].time_s).text,
                isnan(h->loads[i].boil_lost_s) ? "kept" : format_duration(h->loads[i].recovery_s).text);
    report_paragraph(to, "boiling between %s and %s; water %s in all, let in by a valve that holds the boiling point",
                     SHOWN(s, TEMPERATURE, h->summary.temperature_min_K.value),
                     SHOWN(s, TEMPERATURE, h->summary.temperature_max_K.value), SHOWN(s, MASS, h->summary.water_controlled_kg));
}

void size_interval_report(const void *answer, const output *o, FILE *to)
{
    const size_interval *i = answer;
    unit_system s = o->system;
    formatted_text limit = format_duration(i->size->limit_s);
    if (i->interval_s > 0)
        report_verdict(to, "A load every %s, and no sooner, has the boil back within %s each time and stays in the band",
                       format_duration(i->interval_s).text, limit.text);
    else
        report_verdict(to, "However long one waits between them, such loads do not have the boil back within %s in the band",
                       limit.text);
    report_title(to, i->size->scenario->title);
    report_paragraph(to, "equal loads: %s", text_plain(size_case_words(i->size, s, 0).text).text);
    double stay_s = i->size->load.immersed_s;
    if (i->interval_s < stay_s && isfinite(stay_s))
        report_paragraph(to,
                         "Each stays in for %s, so that %.0f are in at once: if they do not fit, the tank and not the heat "
                         "sets the interval.",
                         format_duration(stay_s).text, ceil(stay_s / i->interval_s));
    if (i->interval_s > 0)
        interval_proof(&i->proof, s, to);
    report_caution(to);
}
