#include <math.h>
#include <stdlib.h>

#include "base/program.h"
#include "commands/plan/answer.h"
#include "describe/report.h"

enum { WHAT_WIDTH = 26, PLAN_WIDTH = 14, NAMES_WIDTH = 25, BACK_WIDTH = 8, OUT_WIDTH = 6 };

static void verdict(const plan_answer *a, FILE *to)
{
    report_verdict(to, "%s", plan_verdict(a).text);
    for (size_t i = 0; i < plan_broken_told(a->best); i++)
        report_paragraph(to, "- %s", plan_broken(a, a->best, i).text);
}

static void row(FILE *to, const char *what, const char *plan, const char *listed, const char *behind)
{
    char line[700];
    snprintf(line, sizeof line, " %s %*s %*s   %s", text_fitted(what, WHAT_WIDTH).text, PLAN_WIDTH, plan, PLAN_WIDTH, listed,
             behind);
    text_line(to, line);
}

typedef TEXT_OF(40) cell;

static cell seconds(double s)
{
    cell c = {"not back"};
    if (isfinite(s))
        snprintf(c.text, sizeof c.text, "%.0f s", ceil(s));
    return c;
}

static cell counts(const boil_plan_timetable *t)
{
    cell c;
    snprintf(c.text, sizeof c.text, "%zu, %zu", t->dips_count, t->pours_count);
    return c;
}

static cell count(size_t n)
{
    cell c;
    snprintf(c.text, sizeof c.text, "%zu", n);
    return c;
}

static void compared(const plan_answer *a, FILE *to)
{
    const boil_plan_proof *p = a->best, *l = &a->listed;
    cell limit;
    snprintf(limit.text, sizeof limit.text, "limit %.0f s", a->planning.bath.limit_s);
    fputc('\n', to);
    row(to, "", "plan", "list order", "");
    row(to, "last out", plan_clock_at(a, p->table.value.of[BOIL_PLAN_LAST_OUT_S]).text,
        plan_clock_at(a, l->table.value.of[BOIL_PLAN_LAST_OUT_S]).text, "");
    row(to, "slowest boil back", seconds(plan_slowest_s(p)).text, seconds(plan_slowest_s(l)).text, limit.text);
    row(to, "limits broken", count(p->broken_count).text, count(l->broken_count).text,
        l->broken_count > 0 ? "list order: see --full" : "");
    row(to, "dips, pours", counts(&p->table).text, counts(&l->table).text, "");
    if (p->table.salts_count + l->table.salts_count > 0)
        row(to, "times salts are sifted in", count(p->table.salts_count).text, count(l->table.salts_count).text, "");
    row(to, "boils at the end", SHOWN(a->system, TEMPERATURE, p->boils_end_K), SHOWN(a->system, TEMPERATURE, l->boils_end_K),
        "");
}

static void sheet_line(const plan_answer *a, const plan_line *l, FILE *to)
{
    plan_sheet_words w = plan_sheet_line(a, a->best, l);
    const char *box = l->kind == PLAN_BREAK ? "   " : "[ ]";
    char line[1200];
    int used = snprintf(line, sizeof line, " %s %8s  %-5s ", box, plan_clock_at(a, l->time_s).text, w.act);
    size_t left = sizeof line - (size_t)used;
    if (l->kind == PLAN_IN)
        snprintf(line + used, left, "%s %8s %6s  %s", text_fitted(w.what.text, NAMES_WIDTH).text, w.back.text, w.out.text,
                 w.why.text);
    else
        snprintf(line + used, left, "%s%s%s%s%s", w.what.text,
                 w.out.text[0] != '\0' ? (l->kind == PLAN_BREAK ? " to " : ", to ") : "", w.out.text,
                 w.why.text[0] != '\0' ? ", " : "", w.why.text);
    text_line(to, text_fitted(line, REPORT_WIDTH).text);
}

static void run_sheet(const plan_answer *a, FILE *to)
{
    size_t n;
    plan_line *lines = plan_lines(a, &a->best->table, &n);
    char head[600];
    snprintf(head, sizeof head, "\n     %8s  %-5s %s %8s %6s  why now", "clock", "do", text_fitted("", NAMES_WIDTH).text,
             "back by", "out");
    fputs(head, to);
    fputc('\n', to);
    for (size_t i = 0; i < n; i++)
        sheet_line(a, &lines[i], to);
    free(lines);
}

/* How often each thing held an entry back. */
static void bound(const plan_answer *a, FILE *to)
{
    static const char *const by[BOIL_PLAN_REASONS] = {
        [BOIL_PLAN_BOIL] = "the boil of the dip before",
        [BOIL_PLAN_HOIST] = "the hoist",
        [BOIL_PLAN_BREAK] = "a break",
        [BOIL_PLAN_PLACE] = "a position",
        [BOIL_PLAN_EARLIEST] = "a job's earliest",
        [BOIL_PLAN_WARM] = "steel that still warmed",
        [BOIL_PLAN_STAY] = "a time to lift it",
        [BOIL_PLAN_WATER] = "water",
    };
    const boil_plan_timetable *t = &a->best->table;
    TEXT_OF(400) all = {""};
    for (int r = 0; r < BOIL_PLAN_REASONS; r++) {
        size_t n = 0;
        for (size_t k = 0; k < t->dips_count; k++)
            n += (int)t->dips[k].reason == r;
        if (n > 0 && by[r] != NULL)
            TEXT_ADD(all.text, "%s%s %zu", all.text[0] != '\0' ? ", " : "", by[r], n);
    }
    if (all.text[0] != '\0')
        report_paragraph(to, "What dips waited for, and how many: %s.", all.text);
}

static void list_breaks(const plan_answer *a, FILE *to)
{
    if (a->listed.broken_count == 0)
        return;
    fputs("\n The list's own order breaks:\n", to);
    for (size_t i = 0; i < plan_broken_told(&a->listed); i++)
        report_paragraph(to, "- %s", plan_broken(a, &a->listed, i).text);
}

void plan_report(const void *answer, const output *o, FILE *to)
{
    const plan_answer *a = answer;
    verdict(a, to);
    plan_none_report(a, to);
    for (size_t i = 0; plan_told(a, i).text[0] != '\0'; i++)
        report_paragraph(to, "%s", plan_told(a, i).text);
    report_title(to, a->scenario->title);
    compared(a, to);
    run_sheet(a, to);
    fputc('\n', to);
    report_paragraph(to, "%s", plan_rule(a).text);
    bound(a, to);
    if (o->full)
        list_breaks(a, to);
    report_caution(to);
    fprintf(to, "\n" PROGRAM_NAME " " BOIL_VERSION_TEXT ", seed %lu, %s, %s, tolerance %g\n", a->seed,
            format_count(a->tried, "timetable", "timetables").text, format_count(a->proofs, "proof", "proofs").text,
            a->planning.options.tolerance);
}
