/* commands/run/html_common.h -- what the sections of the page share. */
#ifndef COMMANDS_RUN_HTML_COMMON_H
#define COMMANDS_RUN_HTML_COMMON_H

#include "base/html.h"
#include "describe/outcome.h"

/* A signal word, and a table that may be wider than the screen: `label` names it, `attributes` are
   the table's, `heads` those of its columns, ending in NULL. */
void page_severity(html *h, boil_severity s, bool only_possible);
void page_table(html *h, const char *label, const char *attributes, const char *const heads[]);
void page_table_end(html *h);
void page_row_head(html *h, const char *text);

#endif
