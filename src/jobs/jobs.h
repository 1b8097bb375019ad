/* jobs/jobs.h -- a list of jobs, as lines of a section [jobs] or rows of a CSV file from a spreadsheet. A job is a load, how long it
   hangs once it is hot, and when it may go in and must be out; either way it is put into the words of a load and read by the reader of
   loads, whose messages point at what was typed. */
#ifndef JOBS_JOBS_H
#define JOBS_JOBS_H

#include "jobs/list.h"

/* Reads a line of [jobs], or all rows of a CSV file; what is wrong goes to the messages. */
void jobs_read_line(const job_reader *r, cursor *line);
void jobs_read_csv(const job_reader *r, const source *s, messages *m);

bool jobs_is_header(const cursor *row); /* of such a file: it names three of its columns or more */

/* What can be said in a job beyond a load's own clauses, for the manual; form NULL beyond the last. */
typedef struct {
    const char *form, *meaning;
} job_clause;
job_clause job_clause_listed(size_t index);

/* And the columns of the CSV file: name NULL beyond the last. */
typedef struct {
    const char *name, *unit; /* a unit that it may have, or "clock"; NULL: none */
    const char *meaning;
    bool needed;
} job_column;
job_column job_column_listed(size_t index);

#endif
