/* help.h -- help written from the tables of options.h: in full on request, two lines after a mistake. */
#ifndef HELP_H
#define HELP_H

#include <stdio.h>

#include "options.h"

void help_program(FILE *to);
void help_command(const command *c, FILE *to);
void help_usage(const command *c, FILE *to); /* NULL: of the program */

#endif
