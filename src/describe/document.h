/* describe/document.h -- what the documents of several commands have in common. */
#ifndef DESCRIBE_DOCUMENT_H
#define DESCRIBE_DOCUMENT_H

#include "base/field.h"

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
