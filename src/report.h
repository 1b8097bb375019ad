/* report.h -- the outcome of a run for the person at the tank: the verdict first, all of it read in a minute. */
#ifndef REPORT_H
#define REPORT_H

#include <stdbool.h>
#include <stdio.h>

#include "outcome.h"
#include "show.h"

typedef struct {
    show_system system;
    bool colour;
    bool verbose; /* with the statistics of the run */
} report_style;

void report(const outcome *o, const report_style *style, FILE *to);

typedef struct {
    char text[160];
} report_words;

/* What every answer about a bath must say. */
extern const char report_caution_words[];
void report_caution(FILE *to);

/* Of its boiling point, or of its strength. */
report_words report_uncertainty_words(const boil_charge *c, show_system s);
void report_uncertainty(const boil_charge *c, show_system s, FILE *to);

/* A text made as by printf, wrapped and indented as all of the report is. */
void report_paragraph(FILE *to, const char *format, ...) __attribute__((format(printf, 2, 3)));

#define REPORT_WIDTH 96 /* columns */

#endif
