#include "jobs/list.h"

#include <stdlib.h>

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
