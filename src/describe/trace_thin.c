#include "describe/trace.h"

#include <stdbool.h>

static double temperature(const boil_row *r)
{
    return r->temperature_K;
}

static double boiling_point(const boil_row *r)
{
    return r->boiling_point_K;
}

static double steam(const boil_row *r)
{
    return r->steam_kg_s;
}

static double level(const boil_row *r)
{
    return r->level_m;
}

static double layer(const boil_row *r)
{
    return r->layer_m;
}

static double (*const watched[])(const boil_row *r) = {temperature, boiling_point, steam, level, layer};

#define WATCHED (sizeof watched / sizeof watched[0])

/* First and last of a stretch, and two of each watched quantity. */
#define PER_STRETCH (2 + 2 * WATCHED)

static size_t extreme(const boil_row *rows, size_t from, size_t to, double (*of)(const boil_row *), bool highest)
{
    size_t best = from;
    for (size_t i = from + 1; i < to; i++)
        if (highest ? of(&rows[i]) > of(&rows[best]) : of(&rows[i]) < of(&rows[best]))
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

size_t trace_thinned(boil_row *rows, size_t count, size_t most)
{
    size_t stretches = most / PER_STRETCH, kept = 0;
    if (count <= most || stretches == 0)
        return count;
    bool boiled_before = rows[0].boiling;
    for (size_t n = 0; n < stretches; n++)
        kept = thin_stretch(rows, n * count / stretches, (n + 1) * count / stretches, kept, &boiled_before);
    return kept;
}
