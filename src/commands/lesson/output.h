/* commands/lesson/output.h -- what is told of runs beside each other, in text and in JSON. */
#ifndef COMMANDS_LESSON_OUTPUT_H
#define COMMANDS_LESSON_OUTPUT_H

#include "replay/page/answer.h"

void lesson_report(const void *answer, const output *o, FILE *to);
extern const document lesson_documents[];

#endif
