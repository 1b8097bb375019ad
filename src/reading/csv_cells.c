#include "reading/cursor.h"

#include <string.h>

#include "base/words.h"

static void trim(cursor *c)
{
    c->at = words_skip(c->at, c->end);
    c->end = words_trim(c->at, c->end);
}

cursor csv_row(const source *s, size_t line, messages *m)
{
    const source_line *l = &s->lines[line - 1];
    cursor row = {m, s, line, l->text, l->text + l->length};
    trim(&row);
    return row;
}

bool csv_is_blank(const cursor *row)
{
    return row->at == row->end || *row->at == '#';
}

static bool quoted(cursor *row, cursor *cell)
{
    const char *close = row->at + 1;
    while (close < row->end && !(*close == '"' && (close + 1 == row->end || close[1] != '"')))
        close += *close == '"' ? 2 : 1;
    if (close >= row->end)
        return cursor_error(row, row->at, "this quote is not closed on its line");
    *cell = *row;
    cell->at = row->at + 1;
    cell->end = close;
    row->at = close + 1;
    if (!cursor_done(row) && *row->at++ != ',')
        return cursor_error(row, row->at - 1, "expected a comma behind the closing quote");
    return true;
}

bool csv_cell(cursor *row, cursor *cell)
{
    bool good = true;
    if (!cursor_done(row) && *row->at == '"') {
        good = quoted(row, cell);
    } else {
        *cell = *row;
        const char *comma = memchr(row->at, ',', (size_t)(row->end - row->at));
        cell->end = comma != NULL ? comma : row->end;
        row->at = comma != NULL ? comma + 1 : row->end;
    }
    if (good)
        trim(cell);
    return good;
}
