/* describe/report.h -- what all reports say alike: paragraphs, the caution, what is uncertain, the bath before and after. */
#ifndef DESCRIBE_REPORT_H
#define DESCRIBE_REPORT_H

#include "base/field.h"
#include "describe/carried_out.h"

typedef TEXT_OF(160) report_words;

/* What every answer about a bath must say. */
extern const char report_caution_words[];
void report_caution(FILE *to);

/* The bath before and after, row by row. */
typedef struct {
    const char *what;
    unit_dimension dimension;
    double start, end;
} report_bath_row;
enum { REPORT_BATH_ROWS = 5 };
void report_bath_rows(const boil_summary *s, report_bath_row rows[REPORT_BATH_ROWS]);

report_words report_first_boil_words(const carried_out *o); /* of a quiet start that came to the boil, else nothing */

/* Of its boiling point, or of its strength. */
report_words report_uncertainty_words(const boil_initial_charge *c, unit_system s);
void report_uncertainty(const boil_initial_charge *c, unit_system s, FILE *to);

/* A text made as by printf, wrapped and indented as all of the report is. */
void report_paragraph(FILE *to, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* The same from the first column on: what decides, above all else. */
void report_verdict(FILE *to, const char *format, ...) __attribute__((format(printf, 2, 3)));

void report_title(FILE *to, const char *title); /* of a scenario, behind a blank line */

#define REPORT_WIDTH 79 /* columns: no line of a report is longer, whatever people name their loads */

#define REPORT_SAME_S 1.0 /* two times that are no further apart are the same */

/* What the model is, and what it is not; a sentence or three each, NULL behind the last. */
extern const char report_purpose[];
extern const char *const report_limits[];

/* What the documents of several commands have in common. */

extern const char *const document_version[1];
extern const char *const document_severities[4]; /* by boil_severity */

/* Of a record that begins with a `const scenario *`. */
void document_scenario(json *j, const char *name, const void *record);
void document_title(json *j, const char *name, const void *record);

/* clang-format off */
#define VERSION_FIELD FIXED("version", document_version, "of the program that wrote it")
#define SCENARIO_FIELD GIVEN(FIELD_TEXT, "scenario", NULL, document_scenario, "the file, as it was named")
#define TITLE_FIELD GIVEN(FIELD_TEXT, "title", NULL, document_title, "title of the scenario")
/* clang-format on */

#endif
