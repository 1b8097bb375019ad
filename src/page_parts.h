/* page_parts.h -- the sections of the page, in their order. */
#ifndef PAGE_PARTS_H
#define PAGE_PARTS_H

#include "html.h"
#include "page.h"

extern const char page_style[]; /* CSS */

void page_findings(html *h, const outcome *o, show_system s);
void page_summary(html *h, const outcome *o, show_system s);
void page_sheet(html *h, const outcome *o, show_system s);
void page_picture(html *h, const outcome *o, show_system s, const picture_drawn *drawn,
                  const picture_problem *problem);
void page_inputs(html *h, const scenario *s);
void page_limits(html *h);

/* What sections share. A signal word, and a table that may be wider than the screen: `label` names it, `attributes` are
   the table's, `heads` those of its columns, ending in NULL. */
void page_severity(html *h, boil_severity s, bool only_possible);
void page_table(html *h, const char *label, const char *attributes, const char *const heads[]);
void page_table_end(html *h);
void page_row_head(html *h, const char *text);

#endif
