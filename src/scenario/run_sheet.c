#include "scenario/schedule.h"

#include "base/words.h"

/* Commas of empty cells that spreadsheets leave at the end of a row. */
static const char *without_empty_cells(const char *at, const char *end)
{
    end = words_trim(at, end);
    while (end > at && end[-1] == ',')
        end = words_trim(at, end - 1);
    return end;
}

/* The rest of the row. */
static bool last_cell(cursor *c, cursor *cell)
{
    if (!cursor_done(c) && *c->at == '"')
        return csv_cell(c, cell) && cursor_expect_end(c);
    *cell = *c;
    c->at = c->end;
    return true;
}

static bool cells(cursor *row, cursor *time, cursor *action)
{
    if (!csv_cell(row, time) || !last_cell(row, action))
        return false;
    action->end = words_trim(action->at, cursor_comment(action->at, action->end));
    return true;
}

static bool read_header(cursor row)
{
    cursor time, action;
    const char *start = row.at;
    if (!cells(&row, &time, &action))
        return false;
    if (words_same(time.at, (size_t)(time.end - time.at), "time") &&
        words_same(action.at, (size_t)(action.end - action.at), "act"))
        return true;
    return cursor_error(&row, start, "a run sheet starts with the header 'time,act'");
}

void run_sheet_read(const source *s, schedule_draft *d, messages *m)
{
    bool header = false;
    for (size_t line = 1; line <= s->count && !messages_full(m); line++) {
        cursor row = csv_row(s, line, m), time, action;
        row.end = without_empty_cells(row.at, row.end);
        if (csv_is_blank(&row))
            continue;
        if (!header && !read_header(row))
            return;
        if (header && cells(&row, &time, &action))
            schedule_read(d, &time, &action);
        header = true;
    }
    if (!header)
        messages_add(m, s, 1, s->lines[0].text, "a run sheet starts with the header 'time,act'");
}
