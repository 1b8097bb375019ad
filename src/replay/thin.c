#include "replay/thin.h"

#include <math.h>
#include <string.h>

typedef struct {
    double low, high;
} slopes;

typedef struct {
    const thin_table *table;
    size_t from; /* the last row kept */
    slopes cone[THIN_COLUMNS];
} thinning;

static const char *row_at(const thin_table *t, size_t row)
{
    return (const char *)t->rows + row * t->size;
}

static double number(const thin_table *t, size_t row, size_t where)
{
    double value;
    memcpy(&value, row_at(t, row) + where, sizeof value);
    return value;
}

static void begin_at(thinning *s, size_t row)
{
    s->from = row;
    for (size_t c = 0; c < s->table->columns_count; c++)
        s->cone[c] = (slopes){-(double)INFINITY, (double)INFINITY};
}

static double since(const thinning *s, size_t row)
{
    return number(s->table, row, s->table->time) - number(s->table, s->from, s->table->time);
}

static double rise(const thinning *s, size_t row, size_t column)
{
    size_t where = s->table->columns[column].where;
    return number(s->table, row, where) - number(s->table, s->from, where);
}

static bool fits(const thinning *s, size_t row)
{
    double took = since(s, row);
    for (size_t c = 0; c < s->table->columns_count; c++) {
        double slope = rise(s, row, c) / took;
        if (!(slope >= s->cone[c].low && slope <= s->cone[c].high))
            return false;
    }
    return true;
}

/* What comes later must not miss this row. */
static void narrow(thinning *s, size_t row)
{
    double took = since(s, row);
    for (size_t c = 0; c < s->table->columns_count; c++) {
        const thin_column *k = &s->table->columns[c];
        double off = s->table->slack * fmax(k->within, k->share * fabs(number(s->table, row, k->where)));
        s->cone[c].low = fmax(s->cone[c].low, (rise(s, row, c) - off) / took);
        s->cone[c].high = fmin(s->cone[c].high, (rise(s, row, c) + off) / took);
    }
}

void thin_mark(const thin_table *t, bool *kept)
{
    thinning s = {.table = t};
    if (t->count == 0)
        return;
    kept[0] = kept[t->count - 1] = true;
    begin_at(&s, 0);
    for (size_t i = 1; i < t->count; i++) {
        bool at_once = !(since(&s, i) > 0);
        if (!at_once && !fits(&s, i)) {
            kept[i - 1] = true;
            begin_at(&s, i - 1);
            at_once = !(since(&s, i) > 0);
        }
        kept[i] = kept[i] || at_once;
        if (kept[i])
            begin_at(&s, i);
        else
            narrow(&s, i);
    }
}

static size_t last_before(const thin_table *t, double time)
{
    size_t low = 0, high = t->count;
    while (high > low + 1) {
        size_t middle = low + (high - low) / 2;
        if (number(t, middle, t->time) <= time)
            low = middle;
        else
            high = middle;
    }
    return low;
}

void thin_at(const thin_table *t, double time, void *row)
{
    if (t->count == 0)
        return;
    size_t i = last_before(t, time), k = i + 1 < t->count ? i + 1 : i;
    double from = number(t, i, t->time), to = number(t, k, t->time);
    double share = to > from ? fmin(1, fmax(0, (time - from) / (to - from))) : 0;
    memcpy(row, row_at(t, i), t->size);
    for (size_t c = 0; c < t->columns_count; c++) {
        size_t where = t->columns[c].where;
        double a = number(t, i, where), value = a + share * (number(t, k, where) - a);
        memcpy((char *)row + where, &value, sizeof value);
    }
}
