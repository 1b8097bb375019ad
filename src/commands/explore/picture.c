#include "commands/explore/answer.h"

#include <math.h>

#include "pictures/picture_frame.h"

#define FINDINGS_DRAWN ((size_t)20)
#define INPUTS_DRAWN ((size_t)8)

typedef struct {
    const explore_answer *answer;
    unit_system system;
    picture_format format;
} writing;

/* Names stand left of the bars. */
static size_t name_columns(const writing *w)
{
    return w->format == PICTURE_TERMINAL ? 29 : 36;
}

static void end_row(FILE *to, const char *text)
{
    fputc('\t', to);
    picture_text(to, text);
    fputc('\n', to);
}

/* 0 to 3: severity; 4: what is wished for. */
static void odds_row(const writing *w, FILE *to, const boil_odds *o, int kind, const char *name)
{
    fprintf(to, "%.9g\t%.9g\t%.9g\t%d", o->chance, o->low, o->high, kind);
    end_row(to, picture_fitted(name, name_columns(w)).text);
}

static void odds(const void *what, FILE *to)
{
    const writing *w = what;
    const explore_answer *s = w->answer;
    explore_finding found[EXPLORE_FINDINGS_MAX];
    size_t n = explore_findings_of(s, 0, found);
    char back[80];
    if (s->load_count > 0) {
        boil_odds o = explore_odds(s, 0, EXPLORE_BACK_SHARE, 1);
        snprintf(back, sizeof back, "all loads back within %s", format_duration(s->limit_s).text);
        odds_row(w, to, &o, 4, back);
    }
    for (size_t i = 0; i < n && i < FINDINGS_DRAWN; i++)
        odds_row(w, to, &found[i].odds, (int)found[i].gravest, found[i].title);
}

/* Largest total first. */
static void sort_inputs(const boil_sensitivity *x, size_t count, size_t order[])
{
    for (size_t i = 0; i < count; i++) {
        size_t at = i;
        for (; at > 0 && x->total[i].value > x->total[order[at - 1]].value; at--)
            order[at] = order[at - 1];
        order[at] = i;
    }
}

static text_cell target_words(const explore_answer *s, const explore_target *t)
{
    text_cell c = text_plain(t->words);
    if (s->input_count > INPUTS_DRAWN)
        snprintf(c.text, sizeof c.text, "%s: the %zu largest of %zu", t->words, INPUTS_DRAWN, s->input_count);
    return c;
}

static void cause_rows(const writing *w, FILE *to, const explore_target *t)
{
    const explore_answer *s = w->answer;
    boil_sensitivity x = explore_sensitivity(s, t->output);
    size_t order[BOIL_SAMPLING_INPUTS];
    if (!(x.variance.value > 0))
        return;
    sort_inputs(&x, s->input_count, order);
    for (size_t i = 0; i < s->input_count && i < INPUTS_DRAWN; i++) {
        const boil_estimate *first = &x.first[order[i]], *total = &x.total[order[i]];
        fprintf(to, "%zu\t%.9g\t%.9g\t%.9g\t%.9g\t", i, first->value, first->half_width, total->value, total->half_width);
        picture_text(to, i == 0 ? target_words(s, t).text : "");
        end_row(to, picture_fitted(s->inputs[order[i]].words, name_columns(w)).text);
    }
}

static void causes(const void *what, FILE *to)
{
    const writing *w = what;
    const explore_target *t;
    for (size_t i = 0; w->answer->input_count > 0 && (t = explore_target_listed(w->answer, i)) != NULL; i++)
        cause_rows(w, to, t);
}

static void chance_cells(FILE *to, const boil_odds *o)
{
    fprintf(to, "\t%.9g\t%.9g\t%.9g", o->chance, o->low, o->high);
}

/* What never happened is later than all that did. */
static void percentile_cells(const writing *w, FILE *to, size_t cell, size_t column, unit_dimension d)
{
    static const double shares[] = {0.05, 0.5, 0.95};
    explore_spread p = explore_spread_of(w->answer, cell, column);
    for (size_t i = 0; i < sizeof shares / sizeof shares[0]; i++) {
        double x = explore_spread_at(&p, shares[i]);
        fprintf(to, "\t%.9g", isnan(x) && p.never > 0 ? 1e9 : unit_from_si(d, format_unit(w->system, d), x));
    }
    explore_spread_free(&p);
}

static void cells(const void *what, FILE *to)
{
    const writing *w = what;
    const explore_answer *s = w->answer;
    for (size_t cell = 0; cell < explore_cells(s); cell++) {
        boil_odds back = explore_odds(s, cell, EXPLORE_BACK_SHARE, 1), grave = explore_grave_odds(s, cell);
        fprintf(to, "%.9g", explore_grid_shown(s, w->system, cell));
        chance_cells(to, &back);
        chance_cells(to, &grave);
        percentile_cells(w, to, cell, EXPLORE_SLOWEST_S, DIM_TIME);
        percentile_cells(w, to, cell, EXPLORE_FREEBOARD_M, DIM_LENGTH);
        fputc('\n', to);
    }
}

static void frame(const void *what, FILE *to)
{
    const writing *w = what;
    const explore_answer *s = w->answer;
    const char *length = format_unit(w->system, DIM_LENGTH);
    char runs[120], axis[120];
    size_t made = explore_count(s, true), needed = explore_count(s, false);
    picture_names(to, w->format, s->title);
    const char *mixing = explore_varies_mixing(s) ? "" : ", all with the likely laws of mixing";
    if (made < needed)
        snprintf(runs, sizeof runs, "%zu of %s%s", made, format_count(needed, "run", "runs").text, mixing);
    else
        snprintf(runs, sizeof runs, "%s%s", format_count(made, "run", "runs").text, mixing);
    picture_row(to, "said", 0, 0, runs);
    picture_row(to, "loads", (double)s->load_count, 0, "");
    picture_row(to, "limit", s->limit_s, 0, format_duration(s->limit_s).text);
    picture_row(to, "freeboard", unit_from_si(DIM_LENGTH, length, s->freeboard_limit_m), 0, length);
    if (s->grid.count == 0)
        return;
    const char *spelling = explore_grid_unit(s, w->system);
    snprintf(axis, sizeof axis, "%.60s%s%.12s", s->grid.input.words, spelling[0] != '\0' ? ", " : "", spelling);
    picture_row(to, "axis", 0, 0, axis);
}

bool explore_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem)
{
    const writing w = {answer, o->system, format};
    const picture_input grid[] = {{"frame.tsv", frame, &w}, {"cells.tsv", cells, &w}, {0}};
    const picture_input one[] = {{"frame.tsv", frame, &w}, {"odds.tsv", odds, &w}, {"causes.tsv", causes, &w}, {0}};
    if (w.answer->grid.count > 0)
        return picture_draw("explore-grid.gp", format, grid, drawn, problem);
    return picture_draw("explore.gp", format, one, drawn, problem);
}
