/* commands/practise/lessons.h -- the lessons that come with the program. */
#ifndef COMMANDS_PRACTISE_LESSONS_H
#define COMMANDS_PRACTISE_LESSONS_H

#include <stdio.h>

int practise_lessons(FILE *to); /* each with its goal; the exit status */

#endif
