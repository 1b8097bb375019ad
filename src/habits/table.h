/* habits/table.h -- the words of habit in one table, each with where it may stand and how it is read. */
#ifndef HABITS_TABLE_H
#define HABITS_TABLE_H

#include "reading/reword.h"

/* Where a word of habit may stand: a bit each. */
typedef enum {
    HABIT_WHEN = 1,
    HABIT_ACT = 2,   /* first of a doing */
    HABIT_LOAD = 4,  /* behind the act, but for names */
    HABIT_POUR = 8,  /* behind the act */
    HABIT_VALUE = 16 /* of a setting */
} habit_place;

/* The words one by one, for the manual; false beyond the last. */
bool habit_listed(size_t index, const char **typed, const char **read, unsigned *where);

/* Replaces what stands at `at` in such a place; false: no word of habit does. */
bool habit_replace(reword *w, size_t at, unsigned place);

/* Marks behind a number: 1/4" and 285 F. From `at` on, up to `end`. Returns where that end is then. */
size_t habit_replace_marks(reword *w, size_t at, size_t end);

#endif
