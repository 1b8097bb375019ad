/* commands/run/page/sections.h -- the sections of the page, in their order. */
#ifndef COMMANDS_RUN_PAGE_SECTIONS_H
#define COMMANDS_RUN_PAGE_SECTIONS_H

#include "base/format.h"
#include "base/html.h"
#include "describe/outcome.h"
#include "pictures/picture.h"

extern const char page_style[]; /* CSS */

void page_severity(html *h, boil_severity s, bool only_possible); /* a signal word */
void page_findings(html *h, const outcome *o, unit_system s);
void page_summary(html *h, const outcome *o, unit_system s);
void page_sheet(html *h, const outcome *o, unit_system s);
void page_picture(html *h, const outcome *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem);
void page_inputs(html *h, const scenario *s);
void page_limits(html *h);

#endif
