#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "case/closures.h"
#include "replay/abreast.h"
#include "replay/replay.h"

static double left_of(const boil_row *row)
{
    return isnan(row->left_m) ? REPLAY_NOTHING_M : fmin(row->left_m, REPLAY_NOTHING_M);
}

static void begin(replay_band *b, const boil_history *likely)
{
    for (size_t i = 0; i < likely->rows_count; i++) {
        const boil_row *row = &likely->rows[i];
        b[i] = (replay_band){row->time_s, row->level_m, row->level_m, left_of(row)};
    }
}

static void widen(replay_band *b, const boil_row *row)
{
    b->high_m = fmax(b->high_m, row->level_m);
    b->left_m = fmin(b->left_m, left_of(row));
}

/* The rows of the other run between each two of the likely one, and those beside, count at both; the lowest only at its own
   moment. */
static void add(replay_band *b, size_t count, const boil_history *other, const abreast *clock)
{
    size_t next = 0;
    for (size_t i = 0; i < count; i++) {
        double now_s = abreast_other(clock, b[i].time_s);
        for (; next < other->rows_count && other->rows[next].time_s <= now_s; next++) {
            widen(&b[i], &other->rows[next]);
            if (i > 0)
                widen(&b[i - 1], &other->rows[next]);
        }
        if (next > 0)
            widen(&b[i], &other->rows[next - 1]);
        if (next < other->rows_count)
            widen(&b[i], &other->rows[next]);
        if (next > 0)
            b[i].low_m = fmin(b[i].low_m, other->rows[next - 1].level_m);
    }
}

static const thin_column columns[] = {{offsetof(replay_band, low_m), 3e-3, 0},
                                      {offsetof(replay_band, high_m), 3e-3, 0.005},
                                      {offsetof(replay_band, left_m), 5e-3, 0.01}};

thin_table replay_band_table(const replay *r)
{
    return (thin_table){.rows = r->band,
                        .count = r->band_count,
                        .size = sizeof *r->band,
                        .time = offsetof(replay_band, time_s),
                        .columns = columns,
                        .columns_count = sizeof columns / sizeof columns[0],
                        .slack = r->slack};
}

static void thin(replay *r)
{
    const thin_table all = replay_band_table(r);
    bool *kept = memory_needed(calloc(all.count + 1, sizeof *kept));
    r->band_count = 0;
    if (kept == NULL)
        return;
    thin_mark(&all, kept);
    for (size_t i = 0; i < all.count; i++)
        if (kept[i])
            r->band[r->band_count++] = r->band[i];
    free(kept);
}

bool replay_band_make(replay *r, const boil_history *likely)
{
    const boil_run_set *set = &r->of->set;
    size_t count = likely->rows_count;
    r->band = memory_needed(malloc((count + 1) * sizeof *r->band));
    if (r->band == NULL)
        return false;
    begin(r->band, likely);
    for (size_t i = 0; i < set->count; i++) {
        const boil_run_of_set *other = &set->other[i];
        if (other->refused || boil_closures_is_mild(other->closures))
            continue;
        abreast clock = abreast_of(likely, &other->history);
        add(r->band, count, &other->history, &clock);
        abreast_free(&clock);
    }
    r->band_count = count;
    thin(r);
    return !memory_was_refused();
}
