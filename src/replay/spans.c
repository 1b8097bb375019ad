#include <math.h>
#include <stdlib.h>

#include "base/memory.h"
#include "replay/replay.h"

static const double around_s = 2, apart_s = 3, shown_s = 12, lets_go_kg_s = 0.2;

static bool is_fast(const boil_row *a, const boil_row *b, double depth_m)
{
    const double least_s = 0.05; /* what a load or a pour displaces at once is no rise */
    double took_s = fmax(b->time_s - a->time_s, least_s);
    bool crosses = (a->level_m > depth_m) != (b->level_m > depth_m);
    return crosses || b->level_m - a->level_m > BOIL_FAST_LEVEL * depth_m * took_s ||
           a->layer_kg - b->layer_kg > lets_go_kg_s * took_s;
}

/* Joined to the span before where they are near. */
static void add(replay *r, double from_s, double to_s)
{
    replay_span *last = r->spans_count > 0 ? &r->spans[r->spans_count - 1] : NULL;
    if (last != NULL && from_s - last->to_s < apart_s)
        last->to_s = fmax(last->to_s, to_s);
    else
        r->spans[r->spans_count++] = (replay_span){.from_s = from_s, .to_s = to_s};
}

/* How many rows are fast: so many spans at the most. */
static size_t fast_rows(const boil_history *h, double depth_m)
{
    size_t n = 0;
    for (size_t i = 1; i < h->rows_count; i++)
        n += is_fast(&h->rows[i - 1], &h->rows[i], depth_m);
    return n;
}

bool replay_spans_make(replay *r, const boil_history *likely)
{
    double depth_m = r->of->scenario->plant.tank.depth_m;
    r->spans = memory_needed(malloc((fast_rows(likely, depth_m) + 1) * sizeof *r->spans));
    if (r->spans == NULL)
        return false;
    for (size_t i = 1; i < likely->rows_count; i++) {
        const boil_row *a = &likely->rows[i - 1], *b = &likely->rows[i];
        if (is_fast(a, b, depth_m))
            add(r, fmax(0, a->time_s - around_s), fmin(likely->end_s, b->time_s + around_s));
    }
    for (size_t i = 0; i < r->spans_count; i++) {
        replay_span *s = &r->spans[i];
        s->speed = fmin(REPLAY_QUICKEST, fmax(REPLAY_SLOWEST, (s->to_s - s->from_s) / shown_s));
    }
    return true;
}
