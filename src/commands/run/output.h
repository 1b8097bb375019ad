/* commands/run/output.h -- the outcome of a run for the person at the tank, for other programs, drawn, and as a page. */
#ifndef COMMANDS_RUN_OUTPUT_H
#define COMMANDS_RUN_OUTPUT_H

#include "cli/output.h"
#include "describe/carried_out.h"

/* The answer is a carried_out. `verbose`: with the statistics of the run. */
void run_report(const void *answer, const output *o, FILE *to);
bool run_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);
extern const document run_documents[];

/* `drawn`: the picture as SVG; without bytes the page says why there is none, from `problem`. */
void run_page(const void *answer, const output *o, const picture_drawn *drawn, const picture_problem *problem, FILE *to);

/* Which act each finding comes of: part of the JSON. */
extern const field run_belongs_fields[];
void run_belongs(json *j, const char *name, const void *record);

#endif
