#include "scenario/draft.h"

#include <string.h>

#include "base/words.h"
#include "jobs/jobs.h"

/* What a scenario may name, or stand beside, given in its place. */
static const char *taken_for(const cursor *header)
{
    cursor row = *header, cell;
    if (memchr(row.at, '=', (size_t)(row.end - row.at)) != NULL) /* a title may hold anything */
        return NULL;
    row.messages = NULL;
    bool acts = csv_cell(&row, ',', &cell) && words_same(cell.at, (size_t)(cell.end - cell.at), "time") && row.at < row.end;
    if (acts)
        return "this is a table of times, no scenario: a run sheet is named in one, 'schedule = FILE.csv' above its first "
               "section, "
               "and a log goes behind one, 'fit SCENARIO LOG'";
    if (jobs_is_header(header))
        return "this is a list of jobs, no scenario: name it in one, 'jobs = FILE.csv' in [plan], and 'plan' that one";
    return NULL;
}

bool draft_is_table(const draft *d)
{
    for (size_t line = 1; line <= d->text->count; line++) {
        cursor row = csv_row(d->text, line, d->messages);
        if (csv_is_blank(&row))
            continue;
        const char *words = taken_for(&row);
        return words != NULL && !cursor_error(&row, row.at, "%s", words);
    }
    return false;
}
