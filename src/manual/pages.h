/* pages.h -- the manual pages, and the completions of the shells. */
#ifndef PAGES_H
#define PAGES_H

#include <stdio.h>

#include "commands.h"

void page_program(FILE *to);
void page_command(const command *c, FILE *to);
void page_scenario(FILE *to); /* writes nothing, with a complaint, when the defaults cannot be had */

void completion_bash(FILE *to);
void completion_zsh(FILE *to);
void completion_fish(FILE *to);

#endif
