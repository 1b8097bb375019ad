/* commands/charge/text.h -- how a tank is filled: a list of steps for the people who do it, and the same as JSON. */
#ifndef COMMANDS_CHARGE_TEXT_H
#define COMMANDS_CHARGE_TEXT_H

#include <stdio.h>

#include "analysis/charge.h"
#include "base/format.h"
#include "scenario/scenario.h"

typedef struct {
    const scenario *scenario;
    boil_charge_plan plan;
} charge_answer;

void charge_report(const charge_answer *a, unit_system s, FILE *to);
void charge_json(const charge_answer *a, FILE *to);

/* The reason, on standard error. */
void charge_refuse(const charge_answer *a, unit_system s);
void charge_refuse_salts_first(const scenario *s, boil_charge_paste paste, unit_system system);

#endif
