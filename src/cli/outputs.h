/* cli/outputs.h -- where an answer goes beside its report, or in place of it. */
#ifndef CLI_OUTPUTS_H
#define CLI_OUTPUTS_H

#include <stdio.h>

#include "cli/plot.h"

typedef struct {
    bool json;
    const char *csv, *html; /* files; "-": standard output; NULL: not asked for */
    plot plot;
} outputs;

bool outputs_agree(const outputs *o);        /* one at most stands in for the report; false with a complaint */
bool outputs_leave_report(const outputs *o); /* none does, JSON not counted */

/* The CSV, if it was asked for: `write` is given the answer. False, with a complaint, when it could not be written. */
bool outputs_csv(const outputs *o, void (*write)(const void *answer, FILE *to), const void *answer);

#endif
