#include "commands/compare/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "describe/listing.h"
#include "describe/report.h"
#include "describe/verdict.h"

#define NAME_WIDTH 27
#define SIDE_WIDTH 20
#define TITLE_WIDTH 52

static void line(FILE *to, const char *name, const char *a, const char *b, const char *difference)
{
    char text[2000];
    snprintf(text, sizeof text, " %s %s %s %s", text_fitted(name, NAME_WIDTH).text, text_fitted(a, SIDE_WIDTH).text,
             text_fitted(b, SIDE_WIDTH).text, difference);
    text_line(to, text);
}

static void head(FILE *to, const char *name, const char *difference)
{
    fputc('\n', to);
    line(to, name, "A", "B", difference);
}

static void side(const carried_out *o, const char *letter, unit_system s, FILE *to)
{
    char title[600];
    snprintf(title, sizeof title, "%s  %s", letter, text_fitted(o->scenario->title, REPORT_WIDTH - 3).text);
    text_line(to, title);
    text_wrapped(to, verdict_of(o, s).text, 0, 3, REPORT_WIDTH);
}

static const char *state_words(const scenario *s, size_t i, unit_system system, setting_words *w)
{
    if (s->settings[i].state == SETTING_ABSENT)
        return "-";
    *w = setting_words_of(s, i, system);
    return w->text;
}

/* What does not fit beside each other stands below each other. */
static void setting(FILE *to, const char *name, const char *a, const char *b)
{
    if (strlen(a) <= SIDE_WIDTH && strlen(b) <= SIDE_WIDTH) {
        line(to, name, a, b, "");
        return;
    }
    int used = fprintf(to, " %s A:", text_fitted(name, NAME_WIDTH).text);
    text_wrapped(to, a, used, used + 1, REPORT_WIDTH);
    fprintf(to, " %*s B:", NAME_WIDTH, "");
    text_wrapped(to, b, used, used + 1, REPORT_WIDTH);
}

static bool settings(const compare_answer *c, unit_system s, FILE *to)
{
    bool any = false;
    for (size_t i = 0; i < key_count(); i++) {
        setting_words a, b;
        char name[80];
        const key *k = key_at(i);
        if (!compare_setting_differs(c, i))
            continue;
        any = true;
        snprintf(name, sizeof name, k->section[0] != '\0' ? "%s, %s" : "%s%s", k->section, k->words);
        setting(to, name, state_words(c->a->scenario, i, s, &a), state_words(c->b->scenario, i, s, &b));
    }
    return any;
}

static void action(const compare_action *x, unit_system s, FILE *to)
{
    char text[700];
    action_text details = action_details(x->of, x->action, s == UNITS_US ? ACTION_US : ACTION_SI);
    snprintf(text, sizeof text, "%s%s%s", action_name_of(x->of, x->action).text, details.text[0] != '\0' ? ", " : "",
             details.text);
    int used = fprintf(to, " only %s %8s ", x->in_a ? "A" : "B",
                       format_clock_exact(x->of->start_s, x->of->schedule.actions[x->action].time_s).text);
    text_wrapped(to, text, used, used + 1, REPORT_WIDTH);
}

static bool actions(const compare_answer *c, unit_system s, FILE *to)
{
    size_t count;
    compare_action *list = compare_actions(c, &count);
    for (size_t i = 0; i < count && i < PLAN_ACTIONS_MAX; i++)
        action(&list[i], s, to);
    if (count > PLAN_ACTIONS_MAX)
        fprintf(to, " ... and %zu acts more\n", count - PLAN_ACTIONS_MAX);
    free(list);
    return count > 0;
}

static void inputs(const compare_answer *c, unit_system s, FILE *to)
{
    head(to, "What differs", "");
    bool any = settings(c, s, to);
    any = actions(c, s, to) || any;
    if (!any)
        fputs(" nothing\n", to);
}

static formatted_text difference_of(const compare_measure *m, unit_system s, double a, double b)
{
    formatted_text t;
    unit_dimension d = m->dimension == DIM_TEMPERATURE ? DIM_DIFFERENCE : m->dimension;
    formatted_text size = format_quantity(s, d, fabs(b - a));
    if (!isfinite(a) || !isfinite(b) ||
        strcmp(format_quantity(s, m->dimension, a).text, format_quantity(s, m->dimension, b).text) == 0)
        return (formatted_text){""};
    snprintf(t.text, sizeof t.text, "%c%.40s", b > a ? '+' : '-', size.text);
    return t;
}

static formatted_text measured(const compare_measure *m, unit_system s, const carried_out *o)
{
    formatted_text value = format_quantity(s, m->dimension, compare_measure_of(m, o)), more;
    snprintf(more.text, sizeof more.text, "more than %.36s", value.text);
    return m->is_steam_peak && o->central.summary.steam_more_than ? more : value;
}

static void outcomes(const compare_answer *c, unit_system s, FILE *to)
{
    const compare_measure *m;
    head(to, "What comes of it", "B less A");
    for (size_t i = 0; (m = compare_measured(i)) != NULL; i++) {
        double a = compare_measure_of(m, c->a), b = compare_measure_of(m, c->b);
        line(to, m->words, measured(m, s, c->a).text, measured(m, s, c->b).text, difference_of(m, s, a, b).text);
    }
}

static formatted_text severity_words(const compare_finding *f, int i)
{
    formatted_text t;
    if (f->in[i] == NULL)
        return (formatted_text){"-"};
    snprintf(t.text, sizeof t.text, "%s%s", boil_severity_word(f->in[i]->severity), f->likely[i] ? "" : " (possible)");
    return t;
}

static void finding_line(FILE *to, const char *title, const char *a, const char *b)
{
    char text[1400];
    snprintf(text, sizeof text, " %s %s %s", text_fitted(title, TITLE_WIDTH).text, text_fitted(a, SIDE_WIDTH).text, b);
    text_line(to, text);
}

static void findings(const compare_answer *c, FILE *to)
{
    size_t count;
    compare_finding *list = compare_findings(c, &count);
    fputc('\n', to);
    finding_line(to, "Findings", count > 0 ? "A" : "", count > 0 ? "B" : "");
    for (size_t i = 0; i < count; i++)
        finding_line(to, compare_finding_of(&list[i])->title, severity_words(&list[i], 0).text,
                     severity_words(&list[i], 1).text);
    if (count == 0)
        fputs(" none\n", to);
    free(list);
}

void compare_report(const void *answer, const output *o, FILE *to)
{
    const compare_answer *c = answer;
    side(c->a, "A", o->system, to);
    side(c->b, "B", o->system, to);
    inputs(c, o->system, to);
    outcomes(c, o->system, to);
    findings(c, to);
    report_caution(to);
    fprintf(to, "\n" PROGRAM_NAME " " BOIL_VERSION_TEXT ", tolerance %g\n", c->a->tolerance);
}
