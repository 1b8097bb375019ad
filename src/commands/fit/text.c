#include "commands/fit/answer.h"

#include <math.h>
#include <string.h>

#include "describe/report.h"

/* Judgement: from this correlation on two numbers cannot be told apart; so much of the width before is hardly told. */
static const double alike_from = 0.95, hardly_told = 0.7;

typedef struct {
    const fit_answer *answer;
    unit_system system;
    FILE *to;
} writing;

static formatted_text value(const writing *w, size_t i, double si)
{
    const uncertain_thing *t = fit_thing(w->answer, i);
    if (t->dimension < DIM_COUNT)
        return format_exact(w->system, t->dimension, si);
    formatted_text bare = {"-"};
    if (!isnan(si))
        snprintf(bare.text, sizeof bare.text, "%.4g", si);
    return bare;
}

static void verdict(const writing *w)
{
    const boil_least_squares *fit = &w->answer->fit;
    char text[2400] = "";
    for (size_t i = 0; i < w->answer->problem.parameters; i++) {
        const boil_least_squares_estimate *e = &fit->of[i];
        TEXT_ADD(text, "%s%s ", i > 0 ? "; " : "", fit_thing(w->answer, i)->words);
        if (e->at_bound)
            TEXT_ADD(text, "at the end of its range, %s", value(w, i, e->value).text);
        else
            TEXT_ADD(text, "%s (%s to %s)", value(w, i, e->value).text, value(w, i, e->low).text, value(w, i, e->high).text);
    }
    TEXT_ADD(text, "%s", fit->converged ? "" : ": not settled, see below");
    text_wrapped(w->to, text, 0, 0, REPORT_WIDTH);
}

static void estimates(const writing *w)
{
    const fit_answer *f = w->answer;
    fprintf(w->to, "\n %-28s %15s %15s %6s\n", "What was fitted", "before", "with the log", "left");
    for (size_t i = 0; i < f->problem.parameters; i++) {
        const boil_least_squares_estimate *e = &f->fit.of[i];
        fprintf(w->to, " %-28s %15s %15s", fit_thing(w->answer, i)->words, value(w, i, f->problem.start[i]).text,
                value(w, i, e->value).text);
        if (!isnan(e->error))
            fprintf(w->to, " %4.0f %%", 100 * fit_left(f, i));
        if (e->at_bound)
            fputs("\n   at the end of its range\n", w->to);
        else
            fprintf(w->to, "\n   95 %% interval: %s to %s\n", value(w, i, e->low).text, value(w, i, e->high).text);
    }
}

static void misses_line(const writing *w, const char *what, int kind, unit_dimension d)
{
    const fit_misses *guess = &w->answer->guess[kind], *best = &w->answer->best[kind];
    char name[60];
    if (isnan(guess->rms))
        return;
    snprintf(name, sizeof name, "%s, root mean square", what);
    fprintf(w->to, " %-34s %12s %12s\n", name, format_exact(w->system, d, guess->rms).text,
            format_exact(w->system, d, best->rms).text);
    fprintf(w->to, " %-34s %12s %12s   at %s\n", "  largest, model less measured",
            format_exact(w->system, d, guess->largest).text, format_exact(w->system, d, best->largest).text,
            format_clock(w->answer->scenario->start_s, best->largest_s).text);
}

static void agreement(const writing *w)
{
    const fit_answer *f = w->answer;
    fprintf(w->to, "\n %-34s %12s %12s\n", "How far off", "guess", "best");
    misses_line(w, "temperature", 0, DIM_DIFFERENCE);
    misses_line(w, "still level", 1, DIM_LENGTH);
    report_paragraph(w->to,
                     "A reading errs like the one before it, by %.2f, so %zu readings tell as much as %s; "
                     "the intervals are as wide as that makes them.",
                     f->fit.serial, f->problem.count,
                     format_count((size_t)lround(f->fit.effective), "independent one", "independent ones").text);
}

static void alike(const writing *w)
{
    const fit_answer *f = w->answer;
    for (size_t i = 0; i < f->problem.parameters; i++)
        for (size_t j = 0; j < i; j++)
            if (fabs(f->fit.correlation[i][j]) >= alike_from)
                report_paragraph(w->to,
                                 "This log cannot tell '%s' from '%s' (correlation %.2f): measure one of them by itself.",
                                 fit_thing(w->answer, j)->words, fit_thing(w->answer, i)->words, f->fit.correlation[i][j]);
}

static void told(const writing *w)
{
    const fit_answer *f = w->answer;
    report_paragraph(w->to, "Left: the interval's width in per cent of what was known before.");
    for (size_t i = 0; i < f->problem.parameters; i++)
        if (f->fit.of[i].at_bound)
            report_paragraph(w->to,
                             "'%s' ran to the end of the range it was given: the range is too narrow, or the model lacks "
                             "something. Measure it.",
                             fit_thing(w->answer, i)->words);
        else if (!(fit_left(f, i) < hardly_told))
            report_paragraph(w->to, "The log hardly tells '%s': what was known before stands.", fit_thing(w->answer, i)->words);
}

/* Readings so far off that no instrument explains it. */
static void strangers(const writing *w)
{
    const fit_answer *f = w->answer;
    const double too_far = 3; /* standard deviations: judgement */
    if (f->best[0].rms > too_far * f->weights.temperature_K || f->best[1].rms > too_far * f->weights.level_m)
        report_paragraph(w->to, "The run stays further from the log than thermometer and dipstick err: what the scenario says "
                                "was there and was done is not what the log saw. Do not use these numbers.");
}

static void reservations(const writing *w)
{
    const fit_answer *f = w->answer;
    fputc('\n', w->to);
    strangers(w);
    told(w);
    alike(w);
    if (!f->fit.converged)
        report_paragraph(w->to, "The search did not settle: narrower ranges, or fewer numbers, help.");
    if (f->left_out > 0)
        report_paragraph(w->to, "Before the start or after the end of the scenario: %s of the log, left out.",
                         format_count(f->left_out, "row", "rows").text);
    report_paragraph(w->to, "A fitted number also carries whatever the model lacks: hold it against another day's log before "
                            "anything rests on it.");
}

/* A setting goes into its section; a constant of the model stands in [uncertain] only. */
static void for_the_scenario(const writing *w)
{
    const char *section = NULL;
    for (size_t i = 0; i < w->answer->problem.parameters; i++) {
        const uncertain_thing *t = fit_thing(w->answer, i);
        const boil_least_squares_estimate *e = &w->answer->fit.of[i];
        const char *own = t->key != NULL ? t->key->section : "uncertain";
        if (!(fit_left(w->answer, i) < hardly_told))
            continue;
        if (section == NULL)
            fputs("\n For the scenario\n", w->to);
        if (section == NULL || strcmp(section, own) != 0)
            fprintf(w->to, "    [%s]\n", own);
        section = own;
        if (t->key != NULL)
            fprintf(w->to, "    %s = %s\n", t->key->words, value(w, i, e->value).text);
        else
            fprintf(w->to, "    %s = %s to %s\n", t->words, value(w, i, e->low).text, value(w, i, e->high).text);
    }
}

void fit_report(const void *answer, const output *o, FILE *to)
{
    const fit_answer *f = answer;
    writing w = {f, o->system, to};
    verdict(&w);
    report_title(to, f->scenario->title);
    report_paragraph(to, "%s: %s and %s, %zu runs", text_plain(f->log_path).text,
                     format_count(f->temperatures, "temperature", "temperatures").text,
                     format_count(f->levels, "level", "levels").text, f->fit.trials);
    estimates(&w);
    agreement(&w);
    reservations(&w);
    for_the_scenario(&w);
    report_caution(to);
}
