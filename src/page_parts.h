/* page_parts.h -- the sections of the page, in their order. */
#ifndef PAGE_PARTS_H
#define PAGE_PARTS_H

#include "page_common.h"
#include "picture.h"
#include "show.h"

extern const char page_style[]; /* CSS */

void page_findings(html *h, const outcome *o, show_system s);
void page_summary(html *h, const outcome *o, show_system s);
void page_sheet(html *h, const outcome *o, show_system s);
void page_picture(html *h, const outcome *o, show_system s, const picture_drawn *drawn,
                  const picture_problem *problem);
void page_inputs(html *h, const scenario *s);
void page_limits(html *h);

#endif
