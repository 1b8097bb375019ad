#include "commands/explore/answer.h"

#include <gsl/gsl_sort.h>
#include <math.h>
#include <stdlib.h>

#include "base/memory.h"

explore_spread explore_spread_of(const explore_answer *s, size_t cell, size_t column)
{
    size_t rows = explore_cell_rows(s);
    explore_spread p = {.sorted = memory_needed(malloc(rows * sizeof *p.sorted))};
    for (size_t row = cell * rows; p.sorted != NULL && row < (cell + 1) * rows; row++) {
        double x = explore_row(s, row)[column];
        if (!explore_is_draw(s, row) || !(explore_row(s, row)[EXPLORE_DONE] > 0))
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

void explore_spread_free(explore_spread *p)
{
    free(p->sorted);
    *p = (explore_spread){0};
}

double explore_spread_at(const explore_spread *p, double share)
{
    double all = (double)(p->count + p->never);
    double within = p->count > 1 ? share * (all - 1) / ((double)p->count - 1) : share * all;
    return p->count > 0 && within <= 1 ? boil_sampling_quantile(p->sorted, p->count, within) : (double)NAN;
}

/* Of any of these outputs being at least so much. */
static boil_odds odds_of_any(const explore_answer *s, size_t cell, size_t first, size_t end, double least)
{
    size_t rows = explore_cell_rows(s), yes = 0, count = 0;
    for (size_t row = cell * rows; row < (cell + 1) * rows; row++) {
        bool any = false;
        if (!explore_is_draw(s, row) || !explore_made(s, row))
            continue;
        for (size_t k = first; k < end && !any; k++)
            any = explore_row(s, row)[k] >= least;
        count++;
        yes += any;
    }
    return boil_odds_of(yes, count);
}

boil_odds explore_odds(const explore_answer *s, size_t cell, size_t column, double least)
{
    return odds_of_any(s, cell, column, column + 1, least);
}

boil_odds explore_grave_odds(const explore_answer *s, size_t cell)
{
    return odds_of_any(s, cell, EXPLORE_FIXED, EXPLORE_FIXED + s->findings, 1 + (double)BOIL_SEVERITY_WARNING);
}

static bool comes_before(const explore_finding *a, const explore_finding *b)
{
    return a->gravest != b->gravest ? a->gravest > b->gravest : a->odds.yes > b->odds.yes;
}

static boil_severity gravest_of(const explore_answer *s, size_t cell, size_t column)
{
    boil_severity gravest = BOIL_SEVERITY_NOTICE;
    while (gravest < BOIL_SEVERITY_DANGER && explore_odds(s, cell, column, 2 + (double)gravest).yes > 0)
        gravest++;
    return gravest;
}

size_t explore_findings_of(const explore_answer *s, size_t cell, explore_finding found[EXPLORE_FINDINGS_MAX])
{
    size_t n = 0;
    for (size_t k = 0; k < s->findings && n < EXPLORE_FINDINGS_MAX; k++) {
        explore_finding f = {.odds = explore_odds(s, cell, explore_finding_output(k), 1)};
        if (f.odds.yes == 0)
            continue;
        f.id = boil_finding_listed(k, &f.title);
        f.gravest = gravest_of(s, cell, explore_finding_output(k));
        size_t at = n++;
        for (; at > 0 && comes_before(&f, &found[at - 1]); at--)
            found[at] = found[at - 1];
        found[at] = f;
    }
    return n;
}

boil_sensitivity explore_sensitivity(const explore_answer *s, size_t column)
{
    boil_sensitivity out;
    boil_sampling_results r = explore_results(s, 0);
    boil_sampling_sensitivity(&r, column, &out);
    return out;
}

const explore_target *explore_target_listed(const explore_answer *s, size_t index)
{
    static const explore_target targets[] = {{EXPLORE_SLOWEST_S, "slowest recovery"},
                                             {EXPLORE_FREEBOARD_M, "least freeboard"},
                                             {EXPLORE_STEAM_KG_S, "most steam"},
                                             {EXPLORE_TEMPERATURE_END_K, "temperature at the end"}};
    index += s->load_count == 0; /* nothing recovers then */
    return index < sizeof targets / sizeof targets[0] ? &targets[index] : NULL;
}

static double within_one(double share)
{
    return share < 0 ? 0 : share > 1 ? 1 : share; /* NaN stays */
}

explore_share explore_share_of(const boil_estimate *e)
{
    double value = within_one(e->value); /* the width stays the estimate's own, wherever its middle fell */
    return (explore_share){value, within_one(value - e->half_width), within_one(value + e->half_width)};
}
