/* fitting_report.h -- what a log says about a scenario's uncertain numbers, for people and as JSON. */
#ifndef FITTING_REPORT_H
#define FITTING_REPORT_H

#include <stdio.h>

#include "fitting.h"
#include "show.h"

void fitting_report(const fitting *f, show_system s, FILE *to);
void fitting_json(const fitting *f, FILE *to);

#endif
