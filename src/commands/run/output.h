/* commands/run/output.h -- the outcome of a run for the person at the tank, for other programs, drawn, and as a page. */
#ifndef COMMANDS_RUN_OUTPUT_H
#define COMMANDS_RUN_OUTPUT_H

#include <stdbool.h>
#include <stdio.h>

#include "base/field.h"
#include "base/format.h"
#include "describe/carried_out.h"
#include "pictures/picture.h"

typedef struct {
    unit_system system;
    bool colour;
    bool verbose; /* with the statistics of the run */
} report_style;

void report(const carried_out *o, const report_style *style, FILE *to);

void run_json(const carried_out *o, FILE *to);
extern const document run_documents[];

/* `trace`: see describe/trace.h. */
bool run_picture(const carried_out *o, const boil_history *trace, unit_system s, picture_format format, picture_drawn *drawn,
                 picture_problem *problem);

/* `drawn`: the picture as SVG; without bytes the page says why there is none, from `problem`. */
void page(const carried_out *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem, FILE *to);

#endif
