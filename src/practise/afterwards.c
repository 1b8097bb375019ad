#include "practise/afterwards.h"

#include <math.h>
#include <stdlib.h>

#include "describe/carried_out.h"
#include "describe/finding_words.h"
#include "describe/headline.h"
#include "describe/report.h"
#include "describe/verdict.h"
#include "lesson/debrief.h"

#define ROWS_S 10.0 /* of the run: how much had gone off before an act is read from them */

static void findings(const carried_out *o, unit_system u, FILE *to)
{
    bool any = false;
    for (const boil_finding *f = headline_next(o, NULL); f != NULL; f = headline_next(o, f)) {
        if (f->severity < BOIL_SEVERITY_CAUTION)
            continue;
        if (!any)
            fputs("\nwhat was found of it, and what to do\n", to);
        any = true;
        int used = fprintf(to, " %-8s%s", boil_severity_word(f->severity), headline_is_possible(o, f) ? " (possible)" : "");
        text_wrapped(to, finding_words_of(o, f, u).text, used, 10, REPORT_WIDTH);
        text_wrapped(to, f->advice, fprintf(to, "         "), 10, REPORT_WIDTH);
    }
}

/* The likely run says how it went; how far the others of the set lie apart is said in one line. */
static void range(const carried_out *o, unit_system u, FILE *to)
{
    const scenario *of = o->scenario;
    double depth_m = of->plant.tank.depth_m;
    double low = depth_m - o->bands.level_max_m.high, high = depth_m - o->bands.level_max_m.low;
    bool passed = of->lesson.given && lesson_judge(&of->lesson, &of->plant, &o->central).passed;
    char text[200];
    if (low <= 0 && high <= 0)
        snprintf(text, sizeof text, "In all runs of the set it comes over the rim.");
    else if (low <= 0)
        snprintf(text, sizeof text, "In some runs of the set it comes over the rim, in others %s are left%s.",
                 SHOWN(u, LENGTH, high), passed ? ": in a real shop take it as not passed" : "");
    else
        snprintf(text, sizeof text, "Least to the rim in all runs of the set: %s to %s.", SHOWN(u, LENGTH, low),
                 SHOWN(u, LENGTH, high));
    text_wrapped(to, text, 0, 0, REPORT_WIDTH);
    if (isnan(o->central.summary.overflow_s))
        return;
    snprintf(text, sizeof text, "As it was worked it came over the rim at %s; from there on no prediction.",
             format_clock_exact(of->start_s, floor(o->central.summary.overflow_s)).text);
    text_wrapped(to, text, 0, 0, REPORT_WIDTH);
}

static void free_names(char **names)
{
    for (char **one = names; *one != NULL; one++)
        free(*one);
    free(names);
}

/* The names of the acts, and NULL behind the last; NULL when memory is refused. */
static char **names_of(const scenario *s)
{
    size_t count = s->schedule.count;
    char **names = calloc(count + 1, sizeof *names);
    for (size_t i = 0; names != NULL && i < count; i++) {
        names[i] = text_printed("%s", text_plain(action_name_of(s, i).text).text);
        if (names[i] == NULL) {
            free_names(names);
            return NULL;
        }
    }
    return names;
}

static boil_outcome look_back(const carried_out *o, char *const *names, unit_system u, FILE *to)
{
    const scenario *s = o->scenario;
    debrief d;
    boil_outcome outcome =
        debrief_of(s->lesson.given ? &s->lesson : NULL, &s->plant, &s->schedule, &o->central, &o->found, &o->possible, &d);
    if (outcome != BOIL_OK)
        return outcome;
    const debrief_shift of = {.lesson = s->lesson.given ? &s->lesson : NULL,
                              .plant = &s->plant,
                              .schedule = &s->schedule,
                              .history = &o->central,
                              .names = (const char *const *)names,
                              .start_s = s->start_s,
                              .system = u,
                              .lets_go = debrief_lets_go(&s->plant, &o->set)};
    debrief_print(&d, &of, to);
    debrief_free(&d);
    return BOIL_OK;
}

static boil_outcome tell(const carried_out *o, unit_system u, FILE *to)
{
    char **names = names_of(o->scenario);
    if (names == NULL)
        return BOIL_NO_MEMORY;
    text_wrapped(to, verdict_of(o, u).text, 0, 0, REPORT_WIDTH);
    range(o, u, to);
    fputc('\n', to);
    boil_outcome outcome = look_back(o, names, u, to);
    findings(o, u, to);
    report_caution(to);
    free_names(names);
    return outcome;
}

boil_outcome afterwards_carried_out(const scenario *s, carried_out *o)
{
    boil_run_options options = boil_run_options_default();
    options.row_interval_s = ROWS_S;
    return carried_out_of(s, &options, o);
}

static boil_outcome judge(const scenario *s, unit_system u, FILE *to)
{
    carried_out o;
    boil_outcome outcome = afterwards_carried_out(s, &o);
    if (outcome != BOIL_OK)
        return outcome;
    outcome = tell(&o, u, to);
    carried_out_free(&o);
    return outcome;
}

boil_outcome afterwards_scenario(const shift *s, scenario *asked, const scenario **of)
{
    messages m;
    messages_init(&m);
    boil_outcome outcome = journal_read(&s->journal, JOURNAL_ASKED, asked, &m);
    messages_free(&m);
    *of = outcome == BOIL_OK ? asked : s->scenario;
    return outcome == BOIL_NO_MEMORY ? outcome : BOIL_OK;
}

boil_outcome afterwards_write(const shift *s, unit_system u, FILE *to)
{
    scenario asked;
    const scenario *of;
    boil_outcome outcome = afterwards_scenario(s, &asked, &of);
    if (outcome == BOIL_OK)
        outcome = judge(of, u, to);
    scenario_free(&asked);
    return outcome;
}
