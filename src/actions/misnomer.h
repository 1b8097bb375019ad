/* actions/misnomer.h -- what people call for and no act is called: what to write in its place, where one cannot be guessed from the
   other. What can is a habit (habits/habits.h). */
#ifndef ACTIONS_MISNOMER_H
#define ACTIONS_MISNOMER_H

#include "reading/cursor.h"

/* A sentence for a message, behind the words typed; NULL: none is known. *length: bytes of the words that it answers. */
const char *misnomer_answer(const cursor *act, size_t *length);

#endif
