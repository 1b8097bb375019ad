/* manual/pages.h -- the manual pages, the schemas of JSON, and the completions of the shells. */
#ifndef MANUAL_PAGES_H
#define MANUAL_PAGES_H

#include <stdio.h>

#include "base/field.h"
#include "cli/commands.h"

void page_program(FILE *to);
void page_command(const command *c, FILE *to);
void page_guide(FILE *to);    /* likewise, when its text cannot be read */
void page_scenario(FILE *to); /* writes nothing, with a complaint, when the defaults cannot be had */

void page_output(FILE *to);

void schema_of(const command *c, FILE *to); /* of its --json */

/* Words one a line, for tests. */
void words_of_settings(FILE *to);
void words_of_acts(FILE *to);
void words_of_units(FILE *to);

void completion_bash(FILE *to);
void completion_zsh(FILE *to);
void completion_fish(FILE *to);

#endif
