/* compare_report.h -- two runs side by side: for people, and for other programs. */
#ifndef COMPARE_REPORT_H
#define COMPARE_REPORT_H

#include <stdio.h>

#include "contrast.h"
#include "show.h"

void compare_report(const contrast *c, show_system s, FILE *to);
void compare_json(const contrast *c, FILE *to); /* SI, the unit in the name */

#endif
