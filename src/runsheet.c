#include "runsheet.h"

#include <string.h>

#include "words.h"

/* A quoted cell at the cursor, without its quotes; the cursor moves past it and the comma behind it. A quote inside a
   cell is written twice; no word of the run sheet holds one, so it is left for the reader of acts to refuse. */
static bool quoted_cell(cursor *c, cursor *cell)
{
    const char *close = c->at + 1;
    while (close < c->end && !(*close == '"' && (close + 1 == c->end || close[1] != '"')))
        close += *close == '"' ? 2 : 1;
    if (close >= c->end) {
        cursor_error(c, c->at, "this quote is not closed on its line");
        return false;
    }
    *cell = *c;
    cell->at = c->at + 1;
    cell->end = close;
    c->at = close + 1;
    if (!cursor_done(c) && *c->at++ != ',') {
        cursor_error(c, c->at - 1, "expected a comma behind the closing quote");
        return false;
    }
    return true;
}

/* Commas of empty cells that spreadsheets leave at the end of a row. */
static const char *without_empty_cells(const char *at, const char *end)
{
    end = words_trim(at, end);
    while (end > at && end[-1] == ',')
        end = words_trim(at, end - 1);
    return end;
}

static void trim(cursor *c)
{
    c->at = words_skip(c->at, c->end);
    c->end = words_trim(c->at, c->end);
}

static bool first_cell(cursor *c, cursor *cell)
{
    if (!cursor_done(c) && *c->at == '"')
        return quoted_cell(c, cell);
    *cell = *c;
    const char *comma = memchr(c->at, ',', (size_t)(c->end - c->at));
    cell->end = comma != NULL ? comma : c->end;
    c->at = comma != NULL ? comma + 1 : c->end;
    return true;
}

/* The rest of the row. */
static bool last_cell(cursor *c, cursor *cell)
{
    if (cursor_done(c) || *c->at != '"') {
        *cell = *c;
        c->at = c->end;
        return true;
    }
    return quoted_cell(c, cell) && cursor_expect_end(c);
}

static bool cells(cursor *row, cursor *time, cursor *act)
{
    row->end = without_empty_cells(row->at, row->end);
    if (!first_cell(row, time) || !last_cell(row, act))
        return false;
    act->end = cursor_comment(act->at, act->end);
    trim(time);
    trim(act);
    return true;
}

static cursor row_at(const source *s, size_t line, messages *m)
{
    const source_line *l = &s->lines[line - 1];
    return (cursor){m, s, line, words_skip(l->text, l->text + l->length), l->text + l->length};
}

static bool read_header(cursor row)
{
    cursor time, act;
    const char *start = row.at;
    if (!cells(&row, &time, &act))
        return false;
    if (words_same(time.at, (size_t)(time.end - time.at), "time") &&
        words_same(act.at, (size_t)(act.end - act.at), "act"))
        return true;
    cursor_error(&row, start, "a run sheet starts with the header 'time,act'");
    return false;
}

void runsheet_read(const source *s, acts *a, messages *m)
{
    bool header = false;
    for (size_t line = 1; line <= s->count && !messages_full(m); line++) {
        cursor row = row_at(s, line, m), time, act;
        row.end = without_empty_cells(row.at, row.end);
        if (row.at == row.end || *row.at == '#')
            continue;
        if (!header && !read_header(row))
            return;
        if (header && cells(&row, &time, &act))
            acts_read(a, &time, &act);
        header = true;
    }
    if (!header)
        messages_add(m, s, 1, s->lines[0].text, "a run sheet starts with the header 'time,act'");
}
