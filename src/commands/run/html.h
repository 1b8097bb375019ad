/* commands/run/html.h -- the outcome of a run as one page: findings, summary, run sheet by the clock, picture, inputs, limits.

   HTML that is well-formed XML too. It holds all it needs, fetches nothing and runs nothing; it is read on a screen, light
   or dark, and printed on A4 or Letter. */
#ifndef COMMANDS_RUN_HTML_H
#define COMMANDS_RUN_HTML_H

#include "base/format.h"
#include "describe/outcome.h"
#include "pictures/picture.h"

/* `drawn`: the picture as SVG; without bytes the page says why there is none, from `problem`. */
void page(const outcome *o, unit_system s, const picture_drawn *drawn, const picture_problem *problem, FILE *to);

#endif
