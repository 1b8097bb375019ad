/* commands/fit/output.h -- what a log says about a scenario's uncertain numbers: for people, and for other programs. */
#ifndef COMMANDS_FIT_OUTPUT_H
#define COMMANDS_FIT_OUTPUT_H

#include <stdio.h>

#include "base/field.h"
#include "base/format.h"
#include "commands/fit/answer.h"
#include "pictures/picture.h"

void fit_report(const fit_answer *f, unit_system s, FILE *to);
void fit_json(const fit_answer *f, FILE *to);
void fit_csv(const void *answer, FILE *to); /* the readings */
bool fit_picture(const fit_answer *f, unit_system s, picture_format format, picture_drawn *drawn, picture_problem *problem);
extern const document fit_documents[];

#endif
