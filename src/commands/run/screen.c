#include "commands/run/parts.h"

#include <math.h>
#include <string.h>

#include "commands/run/output.h"
#include "describe/finding_words.h"
#include "describe/gist.h"
#include "describe/headline.h"
#include "describe/report.h"

#define INDENT 10       /* of what belongs to a finding or a row */
#define SCREEN_LINES 40 /* of a terminal that is not large */
#define FINDINGS_MOST 3 /* told one by one; the others are named */
#define NAMED_LINES 2   /* of the names of those; more than that, and they are counted */

typedef struct {
    const carried_out *o;
    const output *how;
    FILE *to; /* NULL: lines are only counted */
    finding_depth depth;
} screen;

/* The title of the scenario at the right, where it has room. */
static void head(const gist *g, const char *title, bool colour, FILE *to)
{
    text_cell name = text_plain(title != NULL ? title : "");
    size_t left = strlen(g->word) + text_characters(g->behind.text, g->behind.text + strlen(g->behind.text));
    size_t right = text_characters(name.text, name.text + strlen(name.text));
    if (g->headline != NULL)
        finding_severity_print(to, g->headline->severity, colour);
    else
        fputs(g->word, to);
    fputs(g->behind.text, to);
    if (right > 0 && left + 2 + right <= REPORT_WIDTH)
        fprintf(to, "%*s%s", (int)(REPORT_WIDTH - left - right), "", name.text);
    fputc('\n', to);
}

void screen_head(const carried_out *o, const output *how, FILE *to)
{
    gist g = gist_of(o, how->system);
    head(&g, o->scenario->title, how->colour, to);
}

static int gist_print(const screen *s)
{
    gist g = gist_of(s->o, s->how->system);
    int lines = 1;
    if (s->to != NULL)
        head(&g, s->o->scenario->title, s->how->colour, s->to);
    for (size_t i = 0; i < g.rows_count; i++) {
        int used = 1 + INDENT;
        if (s->to != NULL)
            fprintf(s->to, " %-*s", INDENT, g.rows[i].label);
        lines += text_wrapped(s->to, g.rows[i].says.text, used, used + 1, REPORT_WIDTH);
    }
    return lines;
}

void screen_gist(const carried_out *o, const output *how, FILE *to)
{
    gist_print(&(screen){o, how, to, FINDING_WHOLE});
}

static void add(finding_words *w, const char *text)
{
    TEXT_ADD(w->text, "%s%s", w->text[0] != '\0' ? ". " : "", text);
}

static finding_words told_of(const carried_out *o, const boil_finding *f, unit_system s, finding_depth depth)
{
    finding_words w = finding_facts_of(o, f, s), grades = finding_grades_of(o, f);
    const boil_finding *cause = headline_cause(o, f);
    bool in_gist = f == headline_of(o) && depth != FINDING_WHOLE;
    if (depth == FINDING_WHOLE && grades.text[0] != '\0')
        add(&w, grades.text);
    if (depth == FINDING_WHOLE && finding_is_certain_in_band(f))
        add(&w, "Certain in the band");
    if (depth != FINDING_BARE && cause != NULL && !in_gist) {
        add(&w, "Cause: ");
        TEXT_ADD(w.text, "%s", cause->title);
    }
    if (!in_gist)
        add(&w, f->advice);
    return w;
}

int screen_finding(const carried_out *o, const boil_finding *f, const output *how, finding_depth depth, FILE *to)
{
    finding_words w = told_of(o, f, how->system, depth);
    char title[160];
    int used = INDENT - 1;
    snprintf(title, sizeof title, "%s%s", headline_is_possible(o, f) ? "(possible) " : "", f->title);
    if (to != NULL) {
        fputc(' ', to);
        finding_severity_print(to, f->severity, how->colour);
        fprintf(to, "%*s", INDENT - 2 - (int)strlen(boil_severity_word(f->severity)), "");
    }
    int lines = text_wrapped(to, title, used, used + 1, REPORT_WIDTH);
    return w.text[0] != '\0' ? lines + text_wrapped(to, w.text, 0, INDENT, REPORT_WIDTH) : lines;
}

/* How many there are of each severity behind the first `shown`. */
static void count(const carried_out *o, int shown, size_t counts[BOIL_SEVERITIES], char *names, size_t size)
{
    names[0] = '\0';
    for (const boil_finding *f = NULL; (f = headline_next(o, f)) != NULL;) {
        if (f->severity > BOIL_SEVERITY_NOTICE && shown-- > 0)
            continue;
        counts[f->severity]++;
        if (f->severity > BOIL_SEVERITY_NOTICE)
            text_add(names, size, "%s%s %s", names[0] != '\0' ? "; " : "", boil_severity_word(f->severity), f->title);
    }
}

/* "and 2 more (WARNING surge of steam; ...), 1 NOTICE: run --full". */
static int others(const screen *s, int shown)
{
    size_t counts[BOIL_SEVERITIES] = {0};
    char names[400], text[600] = "";
    count(s->o, shown, counts, names, sizeof names);
    size_t more = counts[BOIL_SEVERITY_CAUTION] + counts[BOIL_SEVERITY_WARNING] + counts[BOIL_SEVERITY_DANGER];
    size_t notices = counts[BOIL_SEVERITY_NOTICE];
    if (more + notices == 0)
        return 0;
    if (more > 0)
        TEXT_ADD(text, "and %zu more", more);
    size_t before_names = strlen(text);
    if (more > 0)
        TEXT_ADD(text, " (%s)", names);
    TEXT_ADD(text, "%s", more > 0 && notices > 0 ? ", " : "");
    if (notices > 0)
        TEXT_ADD(text, "%s", format_count(notices, "NOTICE", "NOTICES").text);
    TEXT_ADD(text, ": run --full");
    if (text_wrapped(NULL, text, 0, INDENT, REPORT_WIDTH) > NAMED_LINES) {
        text[before_names] = '\0';
        if (notices > 0)
            TEXT_ADD(text, ", %s", format_count(notices, "NOTICE", "NOTICES").text);
        TEXT_ADD(text, ": run --full");
    }
    return text_wrapped(s->to, text, 0, INDENT, REPORT_WIDTH);
}

/* The first of them, and how many more. */
static int findings(const screen *s, int most)
{
    int lines = 0, shown = 0;
    for (const boil_finding *f = NULL; shown < most && (f = headline_next(s->o, f)) != NULL; shown++) {
        if (f->severity == BOIL_SEVERITY_NOTICE)
            break;
        lines += screen_finding(s->o, f, s->how, s->depth, s->to);
    }
    lines += others(s, shown);
    if (lines > 0 && s->to != NULL)
        fputc('\n', s->to);
    return lines > 0 ? lines + 1 : 0;
}

void screen_chart(const carried_out *o, const boil_history *trace, const output *how, int boils_lines, int level_lines,
                  FILE *to)
{
    const boil_finding *f = headline_of(o);
    double overflow_s = o->central.summary.overflow_s;
    bool marked = f != NULL && f->worst_s <= o->central.end_s;
    chart_form form = {how->system, boils_lines, level_lines, marked ? f->worst_s : (double)NAN};
    chart_print(o, trace, &form, to);
    fprintf(to, " - boils, q quiet; poured: w water, v valve, s salts, l liquid%s%s\n",
            o->central.takes_count > 0 ? ", b bail" : "", marked ? "; ^ worst" : "");
    if (!isnan(overflow_s))
        fprintf(to, " from %s on, after overflow: not a prediction\n", carried_out_clock(o, overflow_s).text);
}

#define CHART_LEAST_BOILS 5
#define CHART_LEAST_LEVEL 4

/* Head, findings and chart share the lines there are: first the chart gives, then the causes, then the findings. */
void screen_print(const carried_out *o, const boil_history *trace, const output *how, FILE *to)
{
    screen s = {o, how, to, FINDING_BARE}, counted = {o, how, NULL, FINDING_BARE};
    int around = gist_print(&counted) + 1 + 1 + (isnan(o->central.summary.overflow_s) ? 0 : 1) + 2;
    int most = FINDINGS_MOST, least = chart_lines(o, CHART_LEAST_BOILS, CHART_LEAST_LEVEL);
    while (most > 1 && around + findings(&counted, most) + least > SCREEN_LINES)
        most--;
    counted.depth = FINDING_CAUSED;
    if (around + findings(&counted, most) + least > SCREEN_LINES)
        counted.depth = FINDING_BARE;
    s.depth = counted.depth;
    int left = SCREEN_LINES - around - findings(&counted, most) - least;
    int level_more = left > 0 ? (left < 2 ? left : 2) : 0, boils_more = left > 2 ? (left < 4 ? left - 2 : 2) : 0;
    gist_print(&s);
    fputc('\n', to);
    findings(&s, most);
    screen_chart(o, trace, how, CHART_LEAST_BOILS + boils_more, CHART_LEAST_LEVEL + level_more, to);
    fputs(" A prediction is never a permission: your codes and supplier come first.\n"
          " More: --full (each load, each addition, account, balances), --html FILE\n",
          to);
}
