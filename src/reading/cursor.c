#include "reading/cursor.h"

#include <stdarg.h>
#include <string.h>

#include "base/words.h"

const char *cursor_comment(const char *at, const char *end)
{
    const char *c = at;
    while (c < end && (c = memchr(c, '#', (size_t)(end - c))) != NULL) {
        if (c == at || words_blank(c - 1, end) > 0 || (c - at >= 2 && words_blank(c - 2, c) == 2))
            return c;
        c++;
    }
    return end;
}

cursor cursor_of_line(const source *s, size_t line, messages *m)
{
    const source_line *l = &s->lines[line - 1];
    const char *end = cursor_comment(l->text, l->text + l->length);
    const char *at = words_skip(l->text, end);
    return (cursor){m, s, line, at, words_trim(at, end)};
}

bool cursor_done(cursor *c)
{
    c->at = words_skip(c->at, c->end);
    return c->at == c->end;
}

bool cursor_take(cursor *c, const char *words)
{
    c->at = words_skip(c->at, c->end);
    size_t n = words_taken(c->at, c->end, words);
    c->at += n;
    return n > 0;
}

size_t cursor_token(cursor *c)
{
    const char *at = c->at = words_skip(c->at, c->end);
    while (at < c->end && *at != ',' && words_blank(at, c->end) == 0)
        at++;
    return (size_t)(at - c->at);
}

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool separates(const char *comma, const char *start, const char *end)
{
    return !(comma > start && digit(comma[-1]) && comma + 1 < end && digit(comma[1]));
}

bool cursor_part(cursor *c, cursor *part)
{
    if (cursor_done(c))
        return false;
    *part = *c;
    const char *at = c->at;
    while (at < c->end && !(*at == ',' && separates(at, c->at, c->end)))
        at++;
    part->end = words_trim(part->at, at);
    c->at = at;
    if (at < c->end) {
        c->at++;
        if (cursor_done(c))
            cursor_error(c, at, "nothing follows this comma");
    }
    return true;
}

bool cursor_expect_end(cursor *c)
{
    if (cursor_done(c))
        return true;
    if (*c->at == ';' || (c->end - c->at >= 2 && memcmp(c->at, "//", 2) == 0))
        return cursor_error(c, c->at, "a comment begins with '#', not '%s'", *c->at == ';' ? ";" : "//");
    return cursor_error(c, c->at, "'%s' is not expected here", words_quoted(c->at, (size_t)(c->end - c->at)).text);
}

bool cursor_error(const cursor *c, const char *at, const char *format, ...)
{
    char text[800];
    va_list values;
    if (c->messages == NULL)
        return false;
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    return messages_add(c->messages, c->source, c->line, at, "%s", text);
}

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

static bool quoted(cursor *row, char separator, cursor *cell)
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
    while (row->at < row->end && *row->at != separator && words_blank(row->at, row->end) > 0)
        row->at += words_blank(row->at, row->end);
    if (row->at < row->end && *row->at++ != separator)
        return cursor_error(row, row->at - 1, "expected a %s behind the closing quote",
                            separator == ','   ? "comma"
                            : separator == ';' ? "semicolon"
                                               : "tab");
    return true;
}

bool csv_cell(cursor *row, char separator, cursor *cell)
{
    bool good = true;
    const char *start = row->at;
    while (start < row->end && *start != separator && words_blank(start, row->end) > 0)
        start += words_blank(start, row->end);
    row->at = start;
    if (start < row->end && *start == '"') {
        good = quoted(row, separator, cell);
    } else {
        *cell = *row;
        const char *stop = memchr(row->at, separator, (size_t)(row->end - row->at));
        cell->end = stop != NULL ? stop : row->end;
        row->at = stop != NULL ? stop + 1 : row->end;
    }
    if (good)
        trim(cell);
    return good;
}
