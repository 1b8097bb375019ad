/* validate/works.c -- sources by the work that they belong to. */
#include "validate/validate.h"

void validate_work_of(const char *source, char *work, size_t size)
{
    size_t longest = 0;
    published *works = published_open("tests/published/works.csv");
    while (published_next(works)) {
        const char *begins = published_text(works, "begins");
        const size_t length = strlen(begins);
        if (length > longest && strncmp(source, begins, length) == 0) {
            longest = length;
            snprintf(work, size, "%s", published_text(works, "work"));
        }
    }
    published_close(works);
    if (longest == 0)
        fail_msg("tests/published/works.csv: no work begins \"%s\"", source);
}

bool validate_first_of_work(const validate_answer *answer, size_t at)
{
    if (answer->rows[at].status == '-')
        return false;
    for (size_t i = 0; i < at; i++)
        if (strcmp(answer->rows[i].work, answer->rows[at].work) == 0)
            return false;
    return true;
}

size_t validate_rows_of_work(const validate_answer *answer, const char *work)
{
    size_t count = 0;
    for (size_t i = 0; i < answer->count; i++)
        count += strcmp(answer->rows[i].work, work) == 0;
    return count;
}
