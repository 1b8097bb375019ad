#include "commands/explore/answer.h"

#include <math.h>
#include <string.h>

#include "describe/finding_words.h"
#include "describe/report.h"

#define LOADS_LISTED ((size_t)24)

typedef struct {
    const explore_answer *answer;
    unit_system system;
    bool colour;
    FILE *to;
} writing;

static size_t ended_badly(const explore_answer *s)
{
    size_t n = 0;
    for (size_t row = 0; row < explore_rows(s); row++)
        n += explore_made(s, row) && !(explore_row(s, row)[EXPLORE_DONE] > 0);
    return n;
}

static void head(const writing *w)
{
    const explore_answer *s = w->answer;
    size_t made = explore_count(s, true), needed = explore_count(s, false), bad = ended_badly(s);
    char runs[200] = "";
    TEXT_ADD(runs, "%s", format_count(made, "run", "runs").text);
    if (made < needed)
        TEXT_ADD(runs, " of %zu: not all were made, and what follows is of those", needed);
    if (s->input_count > 0)
        TEXT_ADD(runs, ", seed %lu", (unsigned long)s->plan.seed);
    report_title(w->to, s->title);
    report_paragraph(w->to, "%s", runs);
    if (s->input_count > 0 && s->grid.count == 0)
        report_paragraph(w->to, "%zu are draws: chances and percentiles are theirs; the others serve to find the causes",
                         boil_sampling_draws(&s->design));
    if (bad > 0)
        report_paragraph(w->to, "%zu of them left what is known of such baths: percentiles and indices are without these", bad);
}

#define VALUES_AT 30 /* columns */

/* Texts of a file of rows may be anything. */
static void input_line(const writing *w, const explore_input *i)
{
    text_cell words = text_fitted(i->words, VALUES_AT - 2);
    fprintf(w->to, " %s", words.text);
    text_wrapped(w->to, text_plain(i->as_written).text, VALUES_AT - 1, VALUES_AT, REPORT_WIDTH);
}

static void inputs(const writing *w)
{
    const explore_answer *s = w->answer;
    fputs("\nWhat varies\n", w->to);
    if (s->grid.count > 0)
        input_line(w, &s->grid.input);
    for (size_t i = 0; i < s->input_count; i++)
        input_line(w, &s->inputs[i]);
}

/* The verdict: the chance of something grave, and of all loads being back in time. */
static void verdict(const writing *w)
{
    const explore_answer *s = w->answer;
    explore_finding found[EXPLORE_FINDINGS_MAX];
    size_t n = explore_findings_of(s, 0, found);
    const explore_finding *likeliest = NULL;
    for (size_t i = 0; i < n; i++)
        if (found[i].gravest >= BOIL_SEVERITY_WARNING && (likeliest == NULL || found[i].odds.yes > likeliest->odds.yes))
            likeliest = &found[i];
    char text[400] = "";
    if (s->load_count > 0) {
        boil_odds back = explore_odds(s, 0, EXPLORE_BACK_SHARE, 1);
        TEXT_ADD(text, "All loads back within %s: %s of draws (%s); ", format_duration(s->limit_s).text,
                 format_chance(back.chance).text, format_odds(&back).text);
    }
    if (likeliest == NULL)
        TEXT_ADD(text, "nothing above CAUTION");
    else
        TEXT_ADD(text, "%s: %s in %s", boil_severity_word(likeliest->gravest), likeliest->title,
                 format_chance(likeliest->odds.chance).text);
    report_verdict(w->to, "%s", text);
}

/* What a run calls possible is found with faster mixing alone: no chance here may be read as if it held that. */
static void mixing(const writing *w)
{
    if (!explore_varies_mixing(w->answer))
        report_paragraph(w->to,
                         "All with the likely laws of mixing: what only graver ones would show, and a run calls possible, is "
                         "in none of these chances. A line 'mixing time factor = 0.34 | 1 | 3' in [uncertain] counts it.");
}

static void odds(const writing *w)
{
    explore_finding found[EXPLORE_FINDINGS_MAX];
    size_t n = explore_findings_of(w->answer, 0, found);
    fputs("\nFindings                                                chance  95 % interval\n", w->to);
    for (size_t i = 0; i < n; i++) {
        fputc(' ', w->to);
        finding_severity_print(w->to, found[i].gravest, w->colour);
        fprintf(w->to, "%*s %s %7s  %s\n", 8 - (int)strlen(boil_severity_word(found[i].gravest)), "",
                text_fitted(found[i].title, 45).text, format_chance(found[i].odds.chance).text,
                format_odds(&found[i].odds).text);
    }
    if (n == 0)
        fputs(" none\n", w->to);
    fputs(" The signal word is the gravest that was found.\n", w->to);
    mixing(w);
}

static const double shares[] = {0.05, 0.5, 0.95};

#define SHARES (sizeof shares / sizeof shares[0])

static void cells(const writing *w, size_t cell, size_t column, unit_dimension d, int width)
{
    explore_spread p = explore_spread_of(w->answer, cell, column);
    for (size_t i = 0; i < SHARES; i++) {
        double x = explore_spread_at(&p, shares[i]);
        fprintf(w->to, "%*s", width, isnan(x) && p.never > 0 ? "never" : format_number(w->system, d, x).text);
    }
    explore_spread_free(&p);
}

static void percentile_line(const writing *w, const char *name, explore_output column, unit_dimension d)
{
    char what[60];
    snprintf(what, sizeof what, "%s, %s", name, format_unit(w->system, d));
    fprintf(w->to, " %-32s", what);
    cells(w, 0, column, d, 10);
    fputc('\n', w->to);
}

static void percentiles(const writing *w)
{
    fputs("\nOf the draws                              5 %      50 %      95 %  lie below\n", w->to);
    if (w->answer->load_count > 0)
        percentile_line(w, "slowest recovery", EXPLORE_SLOWEST_S, DIM_TIME);
    percentile_line(w, "time without boil", EXPLORE_QUIET_S, DIM_TIME);
    percentile_line(w, "least freeboard", EXPLORE_FREEBOARD_M, DIM_LENGTH);
    percentile_line(w, "highest level, swelled", EXPLORE_LEVEL_M, DIM_LENGTH);
    percentile_line(w, "most steam", EXPLORE_STEAM_KG_S, DIM_MASS_FLOW);
    percentile_line(w, "most water afloat", EXPLORE_LAYER_KG, DIM_MASS);
    percentile_line(w, "hottest while boiling", EXPLORE_TEMPERATURE_MAX_K, DIM_TEMPERATURE);
    percentile_line(w, "temperature at the end", EXPLORE_TEMPERATURE_END_K, DIM_TEMPERATURE);
    percentile_line(w, "vapour given off", EXPLORE_VENTED_KG, DIM_MASS);
}

static void load_heads(const writing *w)
{
    char lowest[40], level[40];
    snprintf(lowest, sizeof lowest, "lowest, %s", format_unit(w->system, DIM_TEMPERATURE));
    snprintf(level, sizeof level, "highest level, %s", format_unit(w->system, DIM_LENGTH));
    fprintf(w->to, "\n%-10s%21s%21s%24s\n %8s ", "Loads", "back after, s", lowest, level, "time");
    for (int i = 0; i < 3; i++)
        fprintf(w->to, "%7s%7s%7s%s", "5 %", "50 %", "95 %", i == 1 ? "   " : "");
    fputc('\n', w->to);
}

/* Each under what it is, which stands once for all alike that follow each other. */
static void loads(const writing *w)
{
    const explore_answer *s = w->answer;
    size_t listed = s->load_count < LOADS_LISTED ? s->load_count : LOADS_LISTED;
    if (listed == 0)
        return;
    load_heads(w);
    for (size_t i = 0; i < listed; i++) {
        if (i == 0 || strcmp(s->loads[i].words, s->loads[i - 1].words) != 0)
            report_paragraph(w->to, "%s", text_plain(s->loads[i].words).text);
        fprintf(w->to, " %8s ", format_clock(s->start_s, s->loads[i].time_s).text);
        cells(w, 0, explore_load_output_of(s, i, EXPLORE_LOAD_RECOVERY_S), DIM_TIME, 7);
        cells(w, 0, explore_load_output_of(s, i, EXPLORE_LOAD_LOWEST_K), DIM_TEMPERATURE, 7);
        fputs("   ", w->to);
        cells(w, 0, explore_load_output_of(s, i, EXPLORE_LOAD_LEVEL_M), DIM_LENGTH, 7);
        fputc('\n', w->to);
    }
    if (s->load_count > listed)
        fprintf(w->to, " ... and %s more\n", format_count(s->load_count - listed, "load", "loads").text);
}

static formatted_text index_text(const boil_estimate *e)
{
    formatted_text t;
    if (!isfinite(e->value))
        return (formatted_text){"-"};
    explore_share s = explore_share_of(e);
    snprintf(t.text, sizeof t.text, "%.2f (%.2f to %.2f)", s.value, s.low, s.high);
    return t;
}

static size_t largest(const boil_sensitivity *x, size_t count)
{
    size_t best = 0;
    for (size_t i = 1; i < count; i++)
        if (x->total[i].value > x->total[best].value)
            best = i;
    return best;
}

static void causes_of(const writing *w, const explore_target *t)
{
    const explore_answer *s = w->answer;
    boil_sensitivity x = explore_sensitivity(s, t->output);
    size_t best = largest(&x, s->input_count);
    if (!(x.variance.value > 0))
        return;
    fprintf(w->to, " %-29s %19s %19s\n", t->words, "alone", "with others");
    for (size_t i = 0; i < s->input_count; i++)
        fprintf(w->to, "  %-28s %19s %19s%s\n", text_fitted(s->inputs[i].words, 28).text, index_text(&x.first[i]).text,
                index_text(&x.total[i]).text, i == best ? " *" : "");
}

static void causes(const writing *w)
{
    const explore_target *t;
    fputs("\nWhere the spread comes from: shares of the variance\n", w->to);
    for (size_t i = 0; (t = explore_target_listed(w->answer, i)) != NULL; i++)
        causes_of(w, t);
    report_paragraph(
        w->to, "First-order and total Sobol' indices with 95 %% intervals as far as they lie within 0 to 1: what would go "
               "if this number alone were known, and what would stay if all the others were. * Measure this first; a "
               "thing whose total is near 0 need not be measured.");
}

static void grid_line(const writing *w, size_t cell)
{
    const explore_answer *s = w->answer;
    boil_odds back = explore_odds(s, cell, EXPLORE_BACK_SHARE, 1), grave = explore_grave_odds(s, cell);
    fprintf(w->to, " %16s %8s %10s", explore_grid_words(s, w->system, cell).text,
            s->load_count > 0 ? format_chance(back.chance).text : "-", format_chance(grave.chance).text);
    cells(w, cell, EXPLORE_SLOWEST_S, DIM_TIME, 7);
    cells(w, cell, EXPLORE_FREEBOARD_M, DIM_LENGTH, 7);
    fputc('\n', w->to);
}

static void grid(const writing *w)
{
    const explore_answer *s = w->answer;
    char freeboard[60];
    snprintf(freeboard, sizeof freeboard, "least freeboard, %s", format_unit(w->system, DIM_LENGTH));
    fprintf(w->to, "\n %16s %8s %10s %20s %20s\n", "", "loads", "WARNING", "slowest back, s", freeboard);
    fprintf(w->to, " %16s %8s %10s    5 %%   50 %%   95 %%    5 %%   50 %%   95 %%\n", "", "back", "or worse");
    for (size_t cell = 0; cell < explore_cells(s); cell++)
        grid_line(w, cell);
}

void explore_report(const void *answer, const output *o, FILE *to)
{
    const explore_answer *s = answer;
    writing w = {s, o->system, o->colour, to};
    if (s->grid.count == 0)
        verdict(&w);
    else
        report_verdict(to, "%zu steps of %s", s->grid.count, text_plain(s->grid.input.words).text);
    head(&w);
    inputs(&w);
    if (s->grid.count > 0) {
        grid(&w);
        mixing(&w);
    } else {
        odds(&w);
        percentiles(&w);
        loads(&w);
        if (s->input_count > 0)
            causes(&w);
    }
    report_caution(to);
}
