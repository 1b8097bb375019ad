/* jobs/list.h -- a list of jobs as it was read. */
#ifndef JOBS_LIST_H
#define JOBS_LIST_H

#include "actions/action.h"
#include "plan/plan.h"

typedef struct {
    boil_plan_job job;
    char *name;
    char *steel; /* the words of its load behind the mass, without its pieces: ", plate 1/4 in, basket 12 lb" */
    size_t line;
} scenario_job;

typedef struct {
    scenario_job *list;
    size_t count, capacity;
    char *file;   /* that they stand in, as messages show it; NULL: none was read */
    bool partial; /* something of the list is wrong: a job that is missing here may stand there all the same */
} scenario_jobs;

void scenario_jobs_free(scenario_jobs *j);

/* The job of that name, in whatever case; `count` where there is none. */
size_t scenario_jobs_find(const scenario_jobs *j, const char *name, size_t length);

/* What jobs are read against. */
typedef struct {
    action_reader *reader; /* its moments too */
    double start_s;        /* of the wall clock */
    double end_s;          /* of the shift, from the start; infinity: open */
    scenario_jobs *into;
} job_reader;

#endif
