/* text_load.c -- how much steel the heat that is there carries, in words. */
#include <math.h>

#include "case/plant.h"
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
                text_fitted(size_case_words(c, s, load++).text, 44).text,
                size_shown_down(s, DIM_MASS, h->times * a->is.load.mass_kg).text);
    }
}

/* How it is at the limit, and one per cent beyond it. */
static void edge(const boil_holding *at, const boil_holding *beyond, double limit_s, const char *more, unit_system s, FILE *to)
{
    report_paragraph(
        to, "Slowest back after %s, least freeboard %s; %s: %s, %s%s. Ends boiling at %s with %s in the tank, at rest.",
        size_back_after(at->slowest_s).text, SHOWN(s, LENGTH, at->freeboard_min_m), more,
        size_back_after(beyond->slowest_s).text, SHOWN(s, LENGTH, beyond->freeboard_min_m),
        size_is_cliff(beyond->slowest_s, limit_s) ? ": a cliff, so stay well away from it" : "",
        SHOWN(s, TEMPERATURE, at->end_K), SHOWN(s, LENGTH, at->end_level_m));
}

static void thumb(const size_case *c, double mass_kg, const char *what, unit_system s, FILE *to)
{
    double usual_kg = boil_plant_usual_load(&c->scenario->plant);
    if (mass_kg > usual_kg)
        report_paragraph(to, "%s is more than the rule of thumb for so much bath, %s.", what, SHOWN(s, MASS, usual_kg));
}

/* Why not even the lightest loads hold, or those furthest apart. */
static void in_the_way(const boil_holding *at, const size_case *c, const char *with, unit_system s, FILE *to)
{
    char words[240] = "";
    if (at->breaks & BOIL_BREAKS_RECOVERY && isnan(at->slowest_s))
        TEXT_ADD(words, "; a boil is not back");
    else if (at->breaks & BOIL_BREAKS_RECOVERY)
        TEXT_ADD(words, "; a boil is back after %s", size_back_after(at->slowest_s).text);
    if (at->breaks & BOIL_BREAKS_FREEBOARD && at->freeboard_min_m < 0)
        TEXT_ADD(words, "; it boils over");
    else if (at->breaks & BOIL_BREAKS_FREEBOARD)
        TEXT_ADD(words, "; %s of freeboard is left, not %s", size_shown_down(s, DIM_LENGTH, at->freeboard_min_m).text,
                 SHOWN(s, LENGTH, c->plant.limits.freeboard_m));
    if (at->breaks & BOIL_BREAKS_WEAK)
        TEXT_ADD(words, "; it boils below its band");
    if (at->breaks & BOIL_BREAKS_STRONG)
        TEXT_ADD(words, "; it boils above its band");
    if (at->breaks & BOIL_BREAKS_KNOWN)
        TEXT_ADD(words, "; it leaves what is known of such baths");
    if (words[0] != '\0')
        report_paragraph(to, "%s: %s.", with, words + 2);
}

void size_heaviest_report(const void *answer, const output *o, FILE *to)
{
    const size_heaviest *h = answer;
    unit_system s = o->system;
    formatted_text limit = format_duration(h->size->limit_s);
    if (h->times > 0)
        report_verdict(to, "All loads may be x%.3f as heavy: up to %s, back within %s and with the freeboard left",
                       floor(h->times * 1000) / 1000, size_shown_down(s, DIM_MASS, h->times * size_case_heaviest(h->size)).text,
                       limit.text);
    else
        report_verdict(to, "With this heat not even the lightest load has the boil back within %s with the freeboard left",
                       limit.text);
    size_report_case(h->size, s, to);
    if (h->times > 0) {
        heaviest_lines(h, s, to);
        edge(&h->at, &h->beyond, h->size->limit_s, "1 % heavier", s, to);
        thumb(h->size, h->times * size_case_heaviest(h->size), "That", s, to);
    } else {
        in_the_way(&h->at, h->size, "With the lightest", s, to);
    }
    report_caution(to);
}

static void interval_proof(const boil_history *h, unit_system s, FILE *to)
{
    fprintf(to, "\nThe last of %zu such loads\n %8s %10s\n", h->loads_count, "after", "back after");
    for (size_t i = h->loads_count - REPEATS_LISTED; i < h->loads_count; i++)
        fprintf(to, " %8s %10s\n", format_duration(h->loads[i].time_s).text,
                isnan(h->loads[i].boil_lost_s) ? "kept" : format_duration(h->loads[i].recovery_s).text);
    report_paragraph(
        to, "By the gravest run: boiling between %s and %s; water %s in all, let in by a valve that holds the boiling point",
        SHOWN(s, TEMPERATURE, h->summary.temperature_min_K.value), SHOWN(s, TEMPERATURE, h->summary.temperature_max_K.value),
        SHOWN(s, MASS, h->summary.water_controlled_kg));
}

static void places(const size_interval *i, unit_system s, FILE *to)
{
    const size_case *c = i->size;
    double stay_s = c->load.immersed_s;
    if (!(i->interval_s > 0) || !isfinite(stay_s))
        return;
    double in = ceil((stay_s + c->load.lowering_s) / i->interval_s - 1e-6);
    report_paragraph(
        to, "%s%s, each load in for %s: %.0f in at once, %.3g loads and %s of parts an hour. %s",
        format_count((size_t)c->plant.tank.positions, "place", "places").text,
        c->counted ? " (12 in baskets along the longer side, since neither [tank] positions nor --positions says)" : "",
        format_duration(stay_s).text, in, 3600 / i->interval_s, SHOWN(s, MASS, 3600 / i->interval_s * c->load.mass_kg),
        i->interval_s <= 1.001 * i->soonest_s ? "The places set the interval, not the heat."
                                              : "The heat sets the interval, not the places.");
    thumb(c, in * c->load.mass_kg, "All that is in at once", s, to);
}

/* Never less than it is. */
static formatted_text no_sooner(double interval_s)
{
    formatted_text t;
    if (interval_s < 600)
        snprintf(t.text, sizeof t.text, "%.0f s", ceil(interval_s - 1e-6));
    else
        snprintf(t.text, sizeof t.text, "%.1f min", ceil(interval_s / 6 - 1e-6) / 10);
    return t;
}

void size_interval_report(const void *answer, const output *o, FILE *to)
{
    const size_interval *i = answer;
    unit_system s = o->system;
    formatted_text limit = format_duration(i->size->limit_s);
    if (i->interval_s > 0)
        report_verdict(to, "A load every %s, and no sooner, has the boil back within %s each time",
                       no_sooner(i->interval_s).text, limit.text);
    else
        report_verdict(to, "Not even four hours apart such loads hold: back within %s, in the band, the freeboard left",
                       limit.text);
    report_title(to, i->size->scenario->title);
    report_paragraph(to, "equal loads: %s", text_plain(size_case_words(i->size, s, 0).text).text);
    places(i, s, to);
    if (i->interval_s > 0)
        interval_proof(&i->proof, s, to);
    if (i->interval_s > 0)
        edge(&i->at, &i->beyond, i->size->limit_s, "1 % sooner", s, to);
    else
        in_the_way(&i->at, i->size, "So far apart", s, to);
    report_caution(to);
}
