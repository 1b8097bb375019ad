/* study_report.h -- what a study says, for a person and for another program. */
#ifndef STUDY_REPORT_H
#define STUDY_REPORT_H

#include <stdio.h>

#include "show.h"
#include "study.h"

void study_report(const study *s, show_system system, bool colour, FILE *to);
void study_json(const study *s, FILE *to);

#endif
