#include "replay/replay.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/memory.h"

static const double row_s = 1, fast_s = 0.05, rows_most = 20000, fast_rows_most = 5e6;

boil_run_options replay_options(const boil_schedule *s)
{
    boil_run_options o = boil_run_options_default();
    o.row_interval_s = fmax(row_s, s->duration_s / rows_most);
    o.row_fast_s = fmax(fast_s, s->duration_s / fast_rows_most);
    o.traced = BOIL_CLOSURES;
    return o;
}

/* What is seen: half a millimetre of level, a place of the figures of the rest. */
static const thin_column columns[] = {
    {offsetof(boil_row, level_m), 5e-4, 0},       {offsetof(boil_row, still_level_m), 5e-4, 0},
    {offsetof(boil_row, temperature_K), 0.03, 0}, {offsetof(boil_row, boiling_point_K), 0.03, 0},
    {offsetof(boil_row, steam_kg_s), 2e-4, 0.02}, {offsetof(boil_row, layer_m), 2e-5, 0.01},
    {offsetof(boil_row, layer_kg), 0.02, 0.01},   {offsetof(boil_row, void_fraction), 0.005, 0},
    {offsetof(boil_row, left_m), 2e-3, 0.01},     {offsetof(boil_row, coldest_load_K), 0.5, 0},
    {offsetof(boil_row, heater_W), 100, 0.01},    {offsetof(boil_row, undissolved_kg), 0.1, 0},
    {offsetof(boil_row, crystals_kg), 0.1, 0.01}};

thin_table replay_rows_table(const replay *r)
{
    return (thin_table){.rows = r->rows,
                        .count = r->rows_count,
                        .size = sizeof *r->rows,
                        .time = offsetof(boil_row, time_s),
                        .columns = columns,
                        .columns_count = sizeof columns / sizeof columns[0],
                        .slack = r->slack};
}

/* What is not there gets a number, which is never in between: both sides of each such change are kept. */
static bool fill(double *value, double with, bool *is_there)
{
    bool was = *is_there;
    *is_there = !isnan(*value);
    *value = *is_there ? *value : with;
    return was != *is_there;
}

static void keep_changes(replay *r, bool *kept)
{
    bool floats = false, loaded = false, boils = r->rows_count > 0 && r->rows[0].boiling;
    for (size_t i = 0; i < r->rows_count; i++) {
        boil_row *row = &r->rows[i];
        bool changes = fill(&row->left_m, REPLAY_NOTHING_M, &floats);
        changes = fill(&row->coldest_load_K, 0, &loaded) || changes;
        changes = row->boiling != boils || changes;
        boils = row->boiling;
        kept[i] = kept[i] || changes;
        if (changes && i > 0)
            kept[i - 1] = true;
    }
}

static void keep_nearest(const replay *r, double time_s, bool *kept)
{
    size_t best = 0;
    for (size_t i = 1; i < r->rows_count; i++)
        if (fabs(r->rows[i].time_s - time_s) < fabs(r->rows[best].time_s - time_s))
            best = i;
    kept[best] = true;
}

/* The row beside each. */
static void keep_extremes(replay *r, const boil_summary *s, bool *kept)
{
    const boil_extreme *const extremes[] = {&s->level_max_m, &s->layer_max_kg, &s->steam_peak_kg_s};
    for (size_t i = 0; i < sizeof extremes / sizeof extremes[0]; i++)
        if (r->rows_count > 0 && isfinite(extremes[i]->time_s))
            keep_nearest(r, extremes[i]->time_s, kept);
}

static bool rows_make(replay *r, const boil_history *likely)
{
    size_t count = likely->rows_count, n = 0;
    bool *kept = memory_needed(calloc(count + 1, sizeof *kept));
    r->rows = memory_needed(malloc((count + 1) * sizeof *r->rows));
    if (kept == NULL || r->rows == NULL) {
        free(kept);
        return false;
    }
    if (count > 0)
        memcpy(r->rows, likely->rows, count * sizeof *r->rows);
    r->rows_count = count;
    keep_changes(r, kept);
    keep_extremes(r, &likely->summary, kept);
    const thin_table table = replay_rows_table(r);
    thin_mark(&table, kept);
    for (size_t i = 0; i < count; i++)
        if (kept[i])
            r->rows[n++] = r->rows[i];
    r->rows_count = n;
    free(kept);
    return true;
}

/* The body is not drawn higher than twice its still level once a half of it is steam. */
static double law_of(const boil_history *h)
{
    for (size_t i = 0; i < h->rows_count; i++)
        if (h->rows[i].void_fraction >= 0.5)
            return 2 * h->rows[i].still_level_m;
    return (double)NAN;
}

bool replay_of(const carried_out *o, unit_system s, double slack, replay *out)
{
    const boil_history *likely = &o->central;
    *out = (replay){.of = o, .system = s, .slack = slack, .law_m = law_of(likely)};
    out->calm_kg_s = isnan(likely->summary.steam_steady_kg_s) ? 0 : likely->summary.steam_steady_kg_s;
    if (!rows_make(out, likely) || !replay_band_make(out, likely) || !replay_spans_make(out, likely) || !replay_tide_make(out))
        return false;
    replay_events_make(out);
    return !memory_was_refused();
}

void replay_free(replay *r)
{
    free(r->rows);
    free(r->band);
    free(r->spans);
    free(r->tide);
    free(r->events);
    *r = (replay){0};
}
