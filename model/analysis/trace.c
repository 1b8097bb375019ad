#include "analysis/trace.h"

#include <string.h>

/* What a picture of a run is looked at for. */
static const size_t watched[] = {offsetof(boil_row, temperature_K), offsetof(boil_row, boiling_point_K),
                                 offsetof(boil_row, steam_kg_s), offsetof(boil_row, level_m), offsetof(boil_row, layer_m)};

#define WATCHED (sizeof watched / sizeof watched[0])

/* First and last of a stretch, and two of each watched quantity. */
#define PER_STRETCH (2 + 2 * WATCHED)

static double value_at(const boil_row *row, size_t where)
{
    double value;
    memcpy(&value, (const char *)row + where, sizeof value);
    return value;
}

static size_t extreme(const boil_row *rows, size_t from, size_t to, size_t of, bool highest)
{
    size_t best = from;
    for (size_t i = from + 1; i < to; i++)
        if (highest ? value_at(&rows[i], of) > value_at(&rows[best], of) : value_at(&rows[i], of) < value_at(&rows[best], of))
            best = i;
    return best;
}

static bool is_extreme(const size_t extremes[2 * WATCHED], size_t i)
{
    for (size_t n = 0; n < 2 * WATCHED; n++)
        if (extremes[n] == i)
            return true;
    return false;
}

/* Rows move only towards the front, so those still to be read are unchanged. */
static size_t thin_stretch(boil_row *rows, size_t from, size_t to, size_t kept, bool *boiled_before)
{
    size_t extremes[2 * WATCHED];
    for (size_t n = 0; n < 2 * WATCHED; n++)
        extremes[n] = extreme(rows, from, to, watched[n / 2], n % 2 == 0);
    for (size_t i = from; i < to; i++) {
        bool changed = rows[i].boiling != *boiled_before;
        bool will_change = i + 1 < to && rows[i + 1].boiling != rows[i].boiling;
        *boiled_before = rows[i].boiling;
        if (i == from || i + 1 == to || changed || will_change || is_extreme(extremes, i))
            rows[kept++] = rows[i];
    }
    return kept;
}

size_t boil_trace_thinned(boil_row *rows, size_t count, size_t most)
{
    size_t stretches = most / PER_STRETCH, kept = 0;
    if (count <= most || stretches == 0)
        return count;
    bool boiled_before = rows[0].boiling;
    for (size_t n = 0; n < stretches; n++)
        kept = thin_stretch(rows, n * count / stretches, (n + 1) * count / stretches, kept, &boiled_before);
    return kept;
}

double boil_trace_at(const boil_history *h, size_t where, double time_s)
{
    size_t before = 0, after = h->rows_count - 1;
    while (after > before + 1) {
        size_t middle = before + (after - before) / 2;
        if (h->rows[middle].time_s < time_s)
            before = middle;
        else
            after = middle;
    }
    if (h->rows[after].time_s < time_s)
        before = after;
    const boil_row *a = &h->rows[before], *b = &h->rows[after];
    double share = b->time_s > a->time_s ? (time_s - a->time_s) / (b->time_s - a->time_s) : 0;
    return value_at(a, where) + share * (value_at(b, where) - value_at(a, where));
}
