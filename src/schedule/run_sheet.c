#include "schedule/schedule.h"

#include <string.h>

#include "base/words.h"
#include "habits/habits.h"

#define HEADER "a run sheet starts with the header 'time,act'"

/* What its header says of all rows. */
typedef struct {
    char separator; /* of its cells */
    size_t columns; /* the first two are read */
} layout;

static const char *const time_words[] = {"time", "clock", "when", "at", NULL};
static const char *const act_words[] = {"act", "action", "what", "do", "step", NULL};

/* Empty cells that spreadsheets leave at the end of a row. */
static const char *without_empty_cells(const char *at, const char *end, char separator)
{
    end = words_trim(at, end);
    while (end > at && end[-1] == separator)
        end = words_trim(at, end - 1);
    return end;
}

/* The rest of the row. */
static bool last_cell(cursor *c, char separator, cursor *cell)
{
    if (!cursor_done(c) && *c->at == '"')
        return csv_cell(c, separator, cell) && cursor_expect_end(c);
    *cell = *c;
    c->at = c->end;
    return true;
}

/* What stands in further columns is passed over; there may be no more of them than the header has. */
static bool pass_over(cursor *row, const layout *l, const cursor *action)
{
    cursor cell;
    for (size_t column = 2; row->at < row->end; column++) {
        if (column >= l->columns)
            return cursor_error(row, action->at, "this row has more cells than the header has columns: put the act in quotes");
        if (!csv_cell(row, l->separator, &cell))
            return false;
    }
    return true;
}

static bool cells(cursor *row, const layout *l, cursor *time, cursor *action)
{
    if (!csv_cell(row, l->separator, time))
        return false;
    if (l->columns == 2 ? !last_cell(row, l->separator, action)
                        : !csv_cell(row, l->separator, action) || !pass_over(row, l, action))
        return false;
    action->end = words_trim(action->at, cursor_comment(action->at, action->end));
    return true;
}

static bool is_one_of(const cursor *cell, const char *const *words)
{
    while (*words != NULL && !words_same(cell->at, (size_t)(cell->end - cell->at), *words))
        words++;
    return *words != NULL;
}

static char separator_of(const cursor *row)
{
    const char *at = row->at;
    while (at < row->end && strchr(",;\t", *at) == NULL)
        at++;
    return at < row->end ? *at : ',';
}

/* A remark where the header says it in other words, or has more columns. */
static void remark_header(const cursor *row, const layout *l, const cursor *time, const cursor *action)
{
    bool other = l->separator != ',' || !words_same(time->at, (size_t)(time->end - time->at), "time") ||
                 !words_same(action->at, (size_t)(action->end - action->at), "act");
    const char *rest = l->columns == 3 ? "; its further column is passed over" : "; its further columns are passed over";
    if (other || l->columns > 2)
        messages_remark(row->messages, row->source, row->line, row->at, "read as 'time,act'%s", l->columns > 2 ? rest : "");
}

static bool read_header(cursor row, layout *l)
{
    cursor start = row, time, action, more;
    l->separator = separator_of(&row);
    if (!csv_cell(&row, l->separator, &time) || !csv_cell(&row, l->separator, &action))
        return false;
    for (l->columns = 2; row.at < row.end; l->columns++)
        if (!csv_cell(&row, l->separator, &more))
            return false;
    if (!is_one_of(&time, time_words) || !is_one_of(&action, act_words))
        return cursor_error(&start, start.at, HEADER);
    remark_header(&start, l, &time, &action);
    return true;
}

static void read_row(cursor *row, const layout *l, schedule_draft *d)
{
    cursor time, action;
    if (!cells(row, l, &time, &action))
        return;
    habits_of_when(&time);
    habits_of_doing(&action);
    schedule_read(d, &time, &action);
}

void run_sheet_read(const source *s, schedule_draft *d, messages *m)
{
    layout l = {0};
    for (size_t line = 1; line <= s->count && !messages_full(m); line++) {
        cursor row = csv_row(s, line, m);
        row.end = without_empty_cells(row.at, row.end, l.columns > 0 ? l.separator : separator_of(&row));
        if (csv_is_blank(&row))
            continue;
        if (l.columns > 0)
            read_row(&row, &l, d);
        else if (!read_header(row, &l))
            return;
    }
    if (l.columns == 0)
        messages_add(m, s, 1, s->lines[0].text, HEADER);
}
