/* commands/charge/output.h -- a tank's filling as a list of steps, and the same for other programs. */
#ifndef COMMANDS_CHARGE_OUTPUT_H
#define COMMANDS_CHARGE_OUTPUT_H

#include "analysis/charge.h"
#include "cli/output.h"
#include "scenario/scenario.h"

typedef struct {
    const scenario *scenario;
    boil_charge_plan plan;
} charge_answer;

void charge_report(const void *answer, const output *o, FILE *to);
void charge_csv(const void *answer, FILE *to); /* the steps */
bool charge_picture(const void *answer, const output *o, picture_format format, picture_drawn *drawn, picture_problem *problem);
extern const document charge_documents[];

/* The reason, on standard error. */
void charge_refuse(const charge_answer *a, unit_system s);
void charge_refuse_unnamed(const scenario *s); /* salts are asked for, and the bath names none */
void charge_refuse_salts_first(const scenario *s, boil_charge_paste paste, unit_system system);

#endif
