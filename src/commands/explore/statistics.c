#include "commands/explore/statistics.h"

#include <gsl/gsl_sort.h>
#include <math.h>
#include <stdlib.h>

/* Rows that serve indices alone are no draws. */
static bool is_draw(const study *s, size_t row)
{
    return s->input_count == 0 || row % study_cell_rows(s) % (s->input_count + 2) < 2;
}

study_spread study_spread_of(const study *s, size_t cell, size_t output)
{
    size_t rows = study_cell_rows(s);
    study_spread p = {.sorted = malloc(rows * sizeof *p.sorted)};
    for (size_t row = cell * rows; p.sorted != NULL && row < (cell + 1) * rows; row++) {
        double x = study_row(s, row)[output];
        if (!is_draw(s, row) || !(study_row(s, row)[STUDY_DONE] > 0))
            continue;
        if (isnan(x))
            p.never++;
        else
            p.sorted[p.count++] = x;
    }
    if (p.count > 0)
        gsl_sort(p.sorted, 1, p.count);
    return p;
}

void study_spread_free(study_spread *p)
{
    free(p->sorted);
    *p = (study_spread){0};
}

double study_spread_at(const study_spread *p, double share)
{
    double all = (double)(p->count + p->never);
    double within = p->count > 1 ? share * (all - 1) / ((double)p->count - 1) : share * all;
    return p->count > 0 && within <= 1 ? boil_sample_quantile(p->sorted, p->count, within) : (double)NAN;
}

boil_odds study_odds(const study *s, size_t cell, size_t output, double least)
{
    size_t rows = study_cell_rows(s), yes = 0, count = 0;
    for (size_t row = cell * rows; row < (cell + 1) * rows; row++) {
        if (!is_draw(s, row) || !study_made(s, row))
            continue;
        count++;
        yes += study_row(s, row)[output] >= least;
    }
    return boil_odds_of(yes, count);
}

static bool is_grave(const study *s, size_t row)
{
    for (size_t k = 0; k < s->findings; k++)
        if (study_row(s, row)[study_finding_output(k)] >= 1 + (double)BOIL_WARNING)
            return true;
    return false;
}

boil_odds study_grave_odds(const study *s, size_t cell)
{
    size_t rows = study_cell_rows(s), yes = 0, count = 0;
    for (size_t row = cell * rows; row < (cell + 1) * rows; row++) {
        if (!is_draw(s, row) || !study_made(s, row))
            continue;
        count++;
        yes += is_grave(s, row);
    }
    return boil_odds_of(yes, count);
}

static bool comes_before(const study_finding *a, const study_finding *b)
{
    return a->gravest != b->gravest ? a->gravest > b->gravest : a->odds.yes > b->odds.yes;
}

static boil_severity gravest_of(const study *s, size_t cell, size_t output)
{
    boil_severity gravest = BOIL_NOTICE;
    while (gravest < BOIL_DANGER && study_odds(s, cell, output, 2 + (double)gravest).yes > 0)
        gravest++;
    return gravest;
}

size_t study_findings_of(const study *s, size_t cell, study_finding found[STUDY_FINDINGS_MAX])
{
    size_t n = 0;
    for (size_t k = 0; k < s->findings && n < STUDY_FINDINGS_MAX; k++) {
        study_finding f = {.odds = study_odds(s, cell, study_finding_output(k), 1)};
        if (f.odds.yes == 0)
            continue;
        f.id = boil_finding_listed(k, &f.title);
        f.gravest = gravest_of(s, cell, study_finding_output(k));
        size_t at = n++;
        for (; at > 0 && comes_before(&f, &found[at - 1]); at--)
            found[at] = found[at - 1];
        found[at] = f;
    }
    return n;
}

boil_sensitivity study_sensitivity(const study *s, size_t output)
{
    boil_sensitivity out;
    boil_sample_results r = study_results(s, 0);
    boil_sample_sensitivity(&r, output, &out);
    return out;
}

const study_target *study_target_listed(size_t index)
{
    static const study_target targets[] = {{STUDY_SLOWEST_S, "slowest recovery"},
                                           {STUDY_FREEBOARD_M, "least freeboard"},
                                           {STUDY_STEAM_KG_S, "most steam"},
                                           {STUDY_TEMPERATURE_END_K, "temperature at the end"}};
    return index < sizeof targets / sizeof targets[0] ? &targets[index] : NULL;
}
