/* habits/habits.h -- what people write out of habit, put into the words of the language before it is read: "80 lb bolt 1/2 in"
   as "80 lb, bar 1/2 in". Each is understood in one way only; what could mean two things is left to be asked about. */
#ifndef HABITS_HABITS_H
#define HABITS_HABITS_H

#include "reading/cursor.h"

/* The cursor reads the words of the language from here on, and a remark says how the line is read, where they were others. */
void habits_of_value(cursor *value); /* of a setting, or of an uncertain one */
void habits_of_line(cursor *line);   /* of a schedule: when and doing */
void habits_of_when(cursor *when);   /* each in a cell of its own */
void habits_of_doing(cursor *doing);

#endif
