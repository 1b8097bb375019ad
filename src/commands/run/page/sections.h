/* commands/run/page/sections.h -- the sections of the page, in their order; page.c is the frame. A section is given the outcome
   and works nothing out.

   The page is XML too, fetches nothing and forbids itself to, by its own policy in the head. Tank and strip are
   drawn here; the picture of all curves, which only a screen shows, is gnuplot's SVG on its own white paper, without gnuplot's
   titles; without gnuplot the page says why it has none, and the exit status stays 0. On paper a shift of up to 55 orders takes
   four sheets: what decides, two of the run sheet, and what there is to know.

   When a section or the style has changed, look at it: in a browser, light, dark and 360 pixels wide (nothing but tables and
   picture may scroll sideways), and printed on A4 and Letter; then let an accessibility checker of a browser go over the pages
   of all shipped scenarios, light and dark, wide and narrow. In November 2026 one found no violation; it left to a person the
   contrast of words in the picture and of cells scrolled out of sight (as in those in sight), and the names of sections among
   the inputs, which head groups of rows. */
#ifndef COMMANDS_RUN_PAGE_SECTIONS_H
#define COMMANDS_RUN_PAGE_SECTIONS_H

#include "base/format.h"
#include "base/html.h"
#include "describe/carried_out.h"
#include "describe/listing.h"
#include "pictures/picture.h"

extern const char page_style[], page_style_paper[]; /* CSS */

void page_severity(html *h, boil_severity s, bool only_possible); /* a signal word */
void page_gist(html *h, const carried_out *o, unit_system s); /* the lines that decide */
void page_tank(html *h, const carried_out *o, const boil_history *trace, unit_system s);
void page_strip(html *h, const carried_out *o, const boil_history *trace, unit_system s);
void page_loads(html *h, const carried_out *o, unit_system s);
void page_given(html *h, const scenario *s, unit_system system);
void page_findings(html *h, const carried_out *o, unit_system s);
void page_summary(html *h, const carried_out *o, unit_system s);
void page_sheet(html *h, const carried_out *o, unit_system s);
void page_picture(html *h, const carried_out *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem);
void page_inputs(html *h, const scenario *s);
void page_limits(html *h);

#endif
