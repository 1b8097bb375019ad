#include "jobs/list.h"

#include <stdlib.h>

#include "base/words.h"

void scenario_jobs_free(scenario_jobs *j)
{
    for (size_t i = 0; i < j->count; i++) {
        free(j->list[i].name);
        free(j->list[i].steel);
    }
    free(j->list);
    free(j->file);
    *j = (scenario_jobs){.list = NULL};
}

size_t scenario_jobs_find(const scenario_jobs *j, const char *name, size_t length)
{
    size_t i = 0;
    while (i < j->count && !words_same(name, length, j->list[i].name))
        i++;
    return i;
}
