#include "commands/fit/answer.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/array.h"
#include "base/words.h"

#define COLUMNS_MAX ((size_t)64)

static const double day_s = 86400;

/* What a column holds, and how it is turned into SI. */
typedef enum { COLUMN_OTHER, COLUMN_CLOCK, COLUMN_SECONDS, COLUMN_TEMPERATURE, COLUMN_LEVEL } column_kind;
typedef struct {
    column_kind kind;
    unit_dimension dimension;
    const char *unit;
} column;

static const struct {
    const char *words;
    column_kind kind;
    unit_dimension dimension;
    const char *unit; /* NULL: behind the words */
} known[] = {
    {"time", COLUMN_CLOCK, DIM_COUNT, ""},
    {"time_s", COLUMN_SECONDS, DIM_TIME, "s"},
    {"temperature_K", COLUMN_TEMPERATURE, DIM_TEMPERATURE, "K"},
    {"still_level_m", COLUMN_LEVEL, DIM_LENGTH, "m"},
    {"temperature", COLUMN_TEMPERATURE, DIM_TEMPERATURE, NULL},
    {"still level", COLUMN_LEVEL, DIM_LENGTH, NULL},
};

/* The readings by their kind: where each goes in a row, and what it can be. */
static const struct {
    const char *what;
    size_t where;
    bounds within;
} readings[] = {
    [COLUMN_SECONDS] = {"time", offsetof(fit_log_row, time_s), {"h", 0, 10000}},
    [COLUMN_TEMPERATURE] = {"temperature", offsetof(fit_log_row, temperature_K), {"degC", -50, 300}},
    [COLUMN_LEVEL] = {"still level", offsetof(fit_log_row, level_m), {"m", 0, 20}},
};

static size_t length_of(const cursor *cell)
{
    return (size_t)(cell->end - cell->at);
}

static bool read_unit(cursor *cell, size_t passed, column *c)
{
    size_t used = 0;
    cell->at = words_skip(cell->at + passed, cell->end);
    const unit *u = unit_scan(UNIT_OF(c->dimension), cell->at, length_of(cell), &used);
    if (u != NULL && used == length_of(cell)) {
        c->unit = u->spellings[0];
        return true;
    }
    char accepted[100];
    unit_accepted(UNIT_OF(c->dimension), accepted, sizeof accepted);
    return cursor_error(cell, cell->at, "a column of readings names its unit behind it: %s", accepted);
}

static bool read_column(cursor cell, column *c)
{
    *c = (column){COLUMN_OTHER, DIM_COUNT, NULL};
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        bool whole = words_same(cell.at, length_of(&cell), known[i].words);
        size_t taken = known[i].unit == NULL ? words_taken(cell.at, cell.end, known[i].words) : 0;
        if (!whole && taken == 0)
            continue;
        *c = (column){known[i].kind, known[i].dimension, known[i].unit};
        return known[i].unit != NULL || read_unit(&cell, whole ? strlen(known[i].words) : taken, c);
    }
    return true;
}

static bool read_header(cursor row, column columns[COLUMNS_MAX], size_t *count)
{
    size_t of[COLUMN_LEVEL + 1] = {0};
    const char *start = row.at;
    cursor cell;
    for (*count = 0; row.at < row.end; (*count)++) {
        if (!csv_cell(&row, ',', &cell))
            return false;
        if (*count == COLUMNS_MAX)
            return cursor_error(&cell, cell.at, "a log has at most %zu columns", COLUMNS_MAX);
        if (!read_column(cell, &columns[*count]))
            return false;
        if (columns[*count].kind != COLUMN_OTHER && ++of[columns[*count].kind] > 1)
            return cursor_error(&cell, cell.at, "a second column '%s'", words_quoted(cell.at, length_of(&cell)).text);
    }
    if (of[COLUMN_CLOCK] + of[COLUMN_SECONDS] == 1 && of[COLUMN_TEMPERATURE] + of[COLUMN_LEVEL] > 0)
        return true;
    return cursor_error(&row, start, "a log starts with a header such as 'time,temperature degF,still level in'");
}

static bool read_number(cursor cell, const column *c, fit_log_row *r)
{
    const char *what = readings[c->kind].what;
    const bounds *within = &readings[c->kind].within;
    quantity q;
    if (length_of(&cell) == 0)
        return true;
    const char *start = cell.at;
    if (!quantity_factor(&cell, what, &q) || !cursor_expect_end(&cell))
        return false;
    q.si = unit_to_si(c->dimension, c->unit, q.si);
    if (q.si >= unit_to_si(c->dimension, within->unit, within->low) &&
        q.si <= unit_to_si(c->dimension, within->unit, within->high)) {
        *(double *)(void *)((char *)r + readings[c->kind].where) = q.si;
        return true;
    }
    return cursor_error(&cell, start, "%s must be between %g and %g %s", what, within->low, within->high, within->unit);
}

/* A clock that goes back has passed midnight. */
static bool read_clock(cursor cell, double start_s, double before_s, double *time_s)
{
    quantity q;
    if (!quantity_clock(&cell, "time", &q) || !cursor_expect_end(&cell))
        return false;
    double time = q.si - start_s;
    while (time < before_s)
        time += day_s;
    *time_s = time;
    return true;
}

static bool read_row(cursor row, const column columns[], size_t count, double start_s, fit_log *l)
{
    fit_log_row r = {(double)NAN, (double)NAN, (double)NAN};
    double before_s = l->count > 0 ? l->rows[l->count - 1].time_s : (double)-INFINITY;
    cursor cell, whole = row;
    bool good = true;
    for (size_t i = 0; i < count && good && row.at < row.end; i++) {
        if (!csv_cell(&row, ',', &cell))
            return false;
        if (columns[i].kind == COLUMN_CLOCK)
            good = read_clock(cell, start_s, fmax(before_s, -day_s / 2), &r.time_s);
        else if (columns[i].kind != COLUMN_OTHER)
            good = read_number(cell, &columns[i], &r);
    }
    if (good && !(r.time_s >= before_s)) /* NaN too */
        return cursor_error(&whole, whole.at,
                            isnan(r.time_s) ? "this row has no time" : "this row is earlier than the one before it");
    if (!good || (isnan(r.temperature_K) && isnan(r.level_m)))
        return good;
    fit_log_row *rows = boil_array_reserve(l->rows, &l->capacity, l->count, sizeof *rows);
    if (rows == NULL)
        return messages_lost(row.messages);
    l->rows = rows;
    l->rows[l->count++] = r;
    return true;
}

static void read_all(const source *s, double start_s, fit_log *l, messages *m)
{
    column columns[COLUMNS_MAX];
    size_t count = 0;
    for (size_t line = 1; line <= s->count && !messages_full(m); line++) {
        cursor row = csv_row(s, line, m);
        if (csv_is_blank(&row))
            continue;
        if (count > 0)
            read_row(row, columns, count, start_s, l);
        else if (!read_header(row, columns, &count))
            return;
    }
    if (count == 0)
        messages_add(m, s, 1, s->lines[0].text, "a log starts with a header such as 'time,temperature degF'");
}

bool fit_log_read(const char *path, double start_s, fit_log *l, messages *m)
{
    source s = {0};
    *l = (fit_log){0};
    if (source_read(&s, path, 2, m))
        read_all(&s, start_s, l, m);
    messages_sort(m);
    source_free(&s);
    return !messages_any(m);
}

void fit_log_free(fit_log *l)
{
    free(l->rows);
    *l = (fit_log){0};
}
