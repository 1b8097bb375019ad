#include "commands/compare/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "describe/finding_words.h"
#include "describe/gist.h"
#include "describe/listing.h"
#include "describe/report.h"
#include "describe/verdict.h"

#define NAME_WIDTH 24
#define SIDE_WIDTH 17
#define DIFFERENCE_WIDTH 16
#define WORD_WIDTH 18 /* of a signal word: "DANGER (possible)" */

static void line(FILE *to, const char *name, const char *a, const char *b, const char *difference)
{
    char text[600];
    snprintf(text, sizeof text, " %s %*s %*s %*s", text_fitted(name, NAME_WIDTH).text, SIDE_WIDTH, a, SIDE_WIDTH, b,
             DIFFERENCE_WIDTH, difference);
    text_line(to, text);
}

/* The line that decides, which scenario that is, and what to do about it first. */
static void side(const carried_out *o, const char *letter, const output *how, FILE *to)
{
    gist g = gist_of(o, how->system);
    int used = fprintf(to, "%s  ", letter) + (int)strlen(g.word);
    if (g.headline != NULL)
        finding_severity_print(to, g.headline->severity, how->colour);
    else
        fputs(g.word, to);
    if (g.behind.text[0] != '\0')
        text_wrapped(to, g.behind.text + 1, used, used + 1, REPORT_WIDTH);
    else
        fputc('\n', to);
    text_wrapped(to, text_plain(o->scenario->title != NULL ? o->scenario->title : "").text, 0, 3, REPORT_WIDTH);
    if (g.headline != NULL)
        text_wrapped(to, g.headline->advice, fprintf(to, "   do first:"), 4, REPORT_WIDTH);
    if (carried_out_stopped(o))
        text_wrapped(to, verdict_stop_reason(o, how->system).text, fprintf(to, "   STOPPED:"), 4, REPORT_WIDTH);
}

static formatted_text measured(const compare_measure *m, unit_system s, const carried_out *o)
{
    formatted_text value = format_quantity(s, m->dimension, compare_measure_of(m, o)), more;
    snprintf(more.text, sizeof more.text, "> %.40s", value.text);
    return m->is_steam_peak && o->central.summary.steam_more_than ? more : value;
}

static formatted_text difference_of(const compare_measure *m, unit_system s, double a, double b)
{
    formatted_text t;
    unit_dimension d = m->dimension == DIM_TEMPERATURE ? DIM_DIFFERENCE : m->dimension;
    if (!isfinite(a) || !isfinite(b))
        return (formatted_text){"-"};
    if (format_same(m->dimension, a, b))
        return (formatted_text){"same"};
    snprintf(t.text, sizeof t.text, "%c%.40s", b > a ? '+' : '-', format_quantity(s, d, fabs(b - a)).text);
    return t;
}

static formatted_text loads_back(const carried_out *o)
{
    formatted_text t = {"-"};
    boil_recoveries r = boil_history_recoveries(&o->central, o->scenario->plant.limits.recovery_s);
    if (o->central.loads_count > 0)
        snprintf(t.text, sizeof t.text, "%zu of %zu", r.back, o->central.loads_count);
    return t;
}

static formatted_text water(const carried_out *o, unit_system s)
{
    formatted_text t;
    carried_out_water w = carried_out_water_of(o);
    const char *volume = format_unit(s, DIM_VOLUME);
    snprintf(t.text, sizeof t.text, "%.1f, %.1f %s", unit_from_si(DIM_VOLUME, volume, w.given_m3),
             unit_from_si(DIM_VOLUME, volume, w.taken_m3), volume);
    return t;
}

static const char *alike(const formatted_text *a, const formatted_text *b)
{
    return strcmp(a->text, b->text) == 0 ? "same" : "-";
}

/* What is the same in both is told where one looks for it, or all is told. */
static void outcomes(const compare_answer *c, const output *how, FILE *to)
{
    const compare_measure *m;
    formatted_text a = loads_back(c->a), b = loads_back(c->b);
    fputc('\n', to);
    line(to, "", "A", "B", "B less A");
    line(to, "loads back in time", a.text, b.text, alike(&a, &b));
    for (size_t i = 0; (m = compare_measured(i)) != NULL; i++) {
        double x = compare_measure_of(m, c->a), y = compare_measure_of(m, c->b);
        if (m->always || how->full || !format_same(m->dimension, x, y))
            line(to, m->words, measured(m, how->system, c->a).text, measured(m, how->system, c->b).text,
                 difference_of(m, how->system, x, y).text);
    }
    a = water(c->a, how->system);
    b = water(c->b, how->system);
    line(to, "water given, taken", a.text, b.text, alike(&a, &b));
}

static int severity_in(const compare_finding *f, int i)
{
    return f->in[i] != NULL ? (int)f->in[i]->severity : -1;
}

/* All that one side has and the other has not, or less grave; those of one signal word together. */
static bool worse_with(const compare_answer *c, const compare_finding *list, size_t count, int i, boil_severity severity,
                       bool likely, FILE *to)
{
    char text[1600] = "", word[40];
    const carried_out *o = i == 0 ? c->a : c->b;
    for (size_t k = 0; k < count; k++) {
        const boil_finding *f = list[k].in[i];
        if (f == NULL || f->severity != severity || list[k].likely[i] != likely ||
            severity_in(&list[k], i) <= severity_in(&list[k], 1 - i))
            continue;
        TEXT_ADD(text, "%s%s%s%s", text[0] != '\0' ? "; " : "", f->title, isnan(f->time_s) ? "" : ", ",
                 finding_clock(o, f).text);
    }
    if (text[0] == '\0')
        return false;
    snprintf(word, sizeof word, "%s%s", boil_severity_word(severity), likely ? "" : " (possible)");
    int used = fprintf(to, "   %-*s", WORD_WIDTH, word);
    text_wrapped(to, text, used, used + 1, REPORT_WIDTH);
    return true;
}

static void worse_in(const compare_answer *c, const compare_finding *list, size_t count, int i, const output *how, FILE *to)
{
    bool any = false;
    fprintf(to, "\n worse in %s\n", i == 0 ? "A" : "B");
    for (int s = BOIL_SEVERITY_DANGER; s >= (how->full ? BOIL_SEVERITY_NOTICE : BOIL_SEVERITY_CAUTION); s--) {
        any = worse_with(c, list, count, i, (boil_severity)s, true, to) || any;
        any = worse_with(c, list, count, i, (boil_severity)s, false, to) || any;
    }
    if (!any)
        fputs("   nothing\n", to);
}

static void findings(const compare_answer *c, const output *how, FILE *to)
{
    size_t count;
    compare_finding *list = compare_findings(c, &count);
    worse_in(c, list, count, 0, how, to);
    worse_in(c, list, count, 1, how, to);
    free(list);
}

static const char *state_words(const scenario *s, size_t i, unit_system system, setting_words *w)
{
    if (s->settings[i].state == SETTING_ABSENT)
        return "-";
    *w = setting_words_of(s, i, system);
    return w->text;
}

static bool settings(const compare_answer *c, unit_system s, FILE *to)
{
    bool any = false;
    for (size_t i = 0; i < key_count(); i++) {
        setting_words a, b;
        char text[1600];
        const key *k = key_at(i);
        if (!compare_setting_differs(c, i))
            continue;
        any = true;
        snprintf(text, sizeof text, "%s%s%s: A %s, B %s", k->section, k->section[0] != '\0' ? " " : "", k->words,
                 state_words(c->a->scenario, i, s, &a), state_words(c->b->scenario, i, s, &b));
        text_wrapped(to, text_plain(text).text, 0, 3, REPORT_WIDTH);
    }
    return any;
}

static void action(const compare_action *x, unit_system s, FILE *to)
{
    char text[700];
    action_text details = action_details(x->of, x->action, s == UNITS_US ? ACTION_US : ACTION_SI);
    snprintf(text, sizeof text, "%s%s%s", action_name_of(x->of, x->action).text, details.text[0] != '\0' ? ", " : "",
             details.text);
    int used = fprintf(to, "   %s only  %8s ", x->in_a ? "A" : "B",
                       format_clock_exact(x->of->start_s, x->of->schedule.actions[x->action].time_s).text);
    text_wrapped(to, text_plain(text).text, used, used + 1, REPORT_WIDTH);
}

static bool actions(const compare_answer *c, unit_system s, FILE *to)
{
    size_t count;
    compare_action *list = compare_actions(c, &count);
    for (size_t i = 0; i < count && i < PLAN_ACTIONS_MAX; i++)
        action(&list[i], s, to);
    if (count > PLAN_ACTIONS_MAX)
        fprintf(to, "   ... and %s more\n", format_count(count - PLAN_ACTIONS_MAX, "act", "acts").text);
    free(list);
    return count > 0;
}

static void causes(const compare_answer *c, unit_system s, FILE *to)
{
    fputs("\n because\n", to);
    bool any = settings(c, s, to);
    any = actions(c, s, to) || any;
    if (!any)
        fputs("   nothing differs\n", to);
}

void compare_report(const void *answer, const output *o, FILE *to)
{
    const compare_answer *c = answer;
    side(c->a, "A", o, to);
    side(c->b, "B", o, to);
    outcomes(c, o, to);
    findings(c, o, to);
    causes(c, o->system, to);
    report_caution(to);
    fprintf(to, "\n" PROGRAM_NAME " " BOIL_VERSION_TEXT ", tolerance %g\n", c->a->tolerance);
}
