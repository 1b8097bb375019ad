/* habits/load.h -- what is missing or misplaced in the line of a load: a comma, the metal before the shape, "40 x 2 lb". */
#ifndef HABITS_LOAD_H
#define HABITS_LOAD_H

#include "reading/reword.h"

void load_reword(reword *w, size_t start); /* behind "load" */

#endif
