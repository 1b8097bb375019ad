#include "practise/debrief.h"

#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "describe/carried_out.h"
#include "describe/finding_words.h"
#include "describe/headline.h"
#include "describe/report.h"
#include "describe/verdict.h"

#define ACT_WIDTH 36

static void load_words(const boil_load_result *l, unit_system u, action_text *t)
{
    if (l->was_quiet)
        TEXT_ADD(t->text, "into a quiet bath; ");
    if (isnan(l->boil_lost_s))
        TEXT_ADD(t->text, "the boil goes on");
    else if (isnan(l->recovery_s))
        TEXT_ADD(t->text, "the boil is lost, and not back before the end");
    else
        TEXT_ADD(t->text, "the boil is lost, back after %s", format_duration(l->recovery_s).text);
    if (l->pockets_overflow)
        TEXT_ADD(t->text, "; what its hollows hold could lift the bath over the rim");
    else if (l->trapped_kg > 0)
        TEXT_ADD(t->text, "; its hollows hold %s of water", SHOWN(u, MASS, l->trapped_kg));
}

static void addition_words(const boil_addition_result *a, unit_system u, action_text *t)
{
    if (a->quiet_poured_kg > 0)
        TEXT_ADD(t->text, "%s of it onto a quiet bath; ", SHOWN(u, MASS, a->quiet_poured_kg));
    if (a->layer_peak_kg > 0.045)
        TEXT_ADD(t->text, "at most %s floated; ", SHOWN(u, MASS, a->layer_peak_kg));
    if (a->freeboard_min_m <= 0)
        TEXT_ADD(t->text, "OVER THE RIM");
    else
        TEXT_ADD(t->text, "at least %s to the rim", SHOWN(u, LENGTH, a->freeboard_min_m));
    if (!isnan(a->boil_lost_s) && isnan(a->recovery_s))
        TEXT_ADD(t->text, "; the boil is not back before the end");
    else if (a->recovery_s > 0)
        TEXT_ADD(t->text, "; the boil was lost for %s", format_duration(a->recovery_s).text);
}

static const carried_out_line *result_of(const carried_out_line *lines, size_t count, size_t action)
{
    for (size_t i = 0; i < count; i++)
        if (lines[i].action == action)
            return &lines[i];
    return NULL;
}

static void act(const carried_out *o, const shift *s, size_t action, const carried_out_line *line, unit_system u, FILE *to)
{
    action_text t = {""};
    if (line != NULL && line->load != NULL)
        load_words(line->load, u, &t);
    else if (line != NULL && line->addition != NULL)
        addition_words(line->addition, u, &t);
    else if (isnan(carried_out_done_s(o, action)))
        TEXT_ADD(t.text, "%s", carried_out_why_not(o, action));
    formatted_text clock = format_clock_exact(s->scenario->start_s, s->scenario->schedule.actions[action].time_s);
    action_name name = action_name_of(s->scenario, action);
    if (t.text[0] == '\0') {
        fprintf(to, " %8s %s\n", clock.text, text_plain(name.text).text);
        return;
    }
    int used = fprintf(to, " %8s %s", clock.text, text_fitted(name.text, ACT_WIDTH).text);
    text_wrapped(to, text_plain(t.text).text, used, used + 1, REPORT_WIDTH);
}

static void acts(const carried_out *o, const shift *s, unit_system u, FILE *to)
{
    size_t count;
    carried_out_line *lines = carried_out_lines(o, &count);
    fputs(o->scenario->schedule.count > 0 ? "\nwhat was done, and what the bath did\n" : "\nnothing was done\n", to);
    for (size_t i = 0; i < o->scenario->schedule.count; i++)
        act(o, s, i, result_of(lines, count, i), u, to);
    free(lines);
}

static void findings(const carried_out *o, unit_system u, FILE *to)
{
    fputs("\nwhat is to be said of it\n", to);
    bool any = false;
    for (const boil_finding *f = headline_next(o, NULL); f != NULL; f = headline_next(o, f)) {
        if (f->severity < BOIL_SEVERITY_CAUTION)
            continue;
        any = true;
        int used = fprintf(to, " %-8s%s", boil_severity_word(f->severity), headline_is_possible(o, f) ? " (possible)" : "");
        text_wrapped(to, finding_words_of(o, f, u).text, used, used + 1, REPORT_WIDTH);
        text_wrapped(to, f->advice, fprintf(to, "         "), 10, REPORT_WIDTH);
    }
    if (!any)
        fputs(" nothing above NOTICE\n", to);
}

/* The likely run says how it went; how far the others of the set lie apart is said in one line. */
static void range(const carried_out *o, unit_system u, FILE *to)
{
    double depth_m = o->scenario->plant.tank.depth_m;
    double low = depth_m - o->bands.level_max_m.high, high = depth_m - o->bands.level_max_m.low;
    char text[200];
    if (low <= 0 && high <= 0)
        snprintf(text, sizeof text, "in all runs of the set it comes over the rim");
    else if (low <= 0)
        snprintf(text, sizeof text, "in some runs of the set it comes over the rim, in others %s are left",
                 SHOWN(u, LENGTH, high));
    else
        snprintf(text, sizeof text, "least to the rim in all runs of the set: %s to %s", SHOWN(u, LENGTH, low),
                 SHOWN(u, LENGTH, high));
    text_wrapped(to, text, 0, 1, REPORT_WIDTH);
}

static void term(const lesson_term *t, double value, bool holds, unit_system u, FILE *to)
{
    fprintf(to, " %c %-42s %-14s %s\n", holds ? '.' : 'x', t->measure->title, lesson_value_text(t, value, u).text,
            lesson_limit_text(t).text);
}

/* Failed ones first. */
static void terms(const lesson *l, const lesson_verdict *v, unit_system u, FILE *to)
{
    for (int holds = 0; holds <= 1; holds++)
        for (size_t i = 0; i < l->terms_count; i++)
            if (v->holds[i] == (holds == 1))
                term(&l->terms[i], v->value[i], v->holds[i], u, to);
}

static void sentence(const char *label, const char *words, FILE *to)
{
    if (words != NULL)
        text_wrapped(to, text_plain(words).text, fprintf(to, "%s", label), 1, REPORT_WIDTH);
}

/* The likely run decides; that it would go over the rim in another is said beside it. */
static void verdict_of_lesson(const carried_out *o, unit_system u, FILE *to)
{
    const lesson *l = &o->scenario->lesson;
    lesson_verdict v = lesson_judge(l, &o->scenario->plant, &o->central);
    if (!l->given)
        return;
    fprintf(to, "\n%s: %zu of %zu hold\n", v.passed ? "PASSED" : "NOT PASSED", l->terms_count - v.failed, l->terms_count);
    terms(l, &v, u, to);
    if (v.stopped)
        fputs(" x the run ended before the shift: what came then is not known\n", to);
    if (v.passed && o->bands.level_max_m.high >= o->scenario->plant.tank.depth_m)
        fputs(" In some run of the set it comes over the rim: in a real shop take it as\n not passed.\n", to);
    sentence("", l->debrief, to);
    sentence(" Done with care:", l->care, to);
    if (!v.passed)
        sentence(" Hint:", l->hint, to);
}

boil_outcome debrief_write(const shift *s, unit_system u, FILE *to)
{
    carried_out o;
    boil_run_options options = boil_run_options_default();
    boil_outcome outcome = carried_out_of(s->scenario, &options, &o);
    if (outcome != BOIL_OK)
        return outcome;
    verdict_of_lesson(&o, u, to);
    fputc('\n', to);
    text_wrapped(to, verdict_of(&o, u).text, 0, 0, REPORT_WIDTH);
    range(&o, u, to);
    acts(&o, s, u, to);
    findings(&o, u, to);
    report_caution(to);
    carried_out_free(&o);
    return BOIL_OK;
}
