/* cli/commands.h -- the commands, in the order in which help lists them. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "cli/options.h"

extern const command command_run, command_check, command_charge, command_correct, command_plan, command_size, command_compare,
    command_lesson, command_practise, command_explore, command_fit, command_solution;

const command *commands_listed(size_t index);    /* NULL beyond the last */
const command *commands_named(const char *name); /* NULL: there is none */

/* Help written from the tables of cli/options.h: in full on request, two lines after a mistake. What help says
   beside the tables is here too, for the manual to say the same. */

extern const char help_purpose[];
extern const option help_option; /* --help, which every command has */

extern const option help_program_options[];
extern const size_t help_program_options_count;

/* What the program's exit status means, by number. */
extern const char *const help_statuses[];
extern const size_t help_statuses_count;

void help_program(FILE *to);
void help_command(const command *c, FILE *to);
void help_usage(const command *c, FILE *to); /* NULL: of the program */

#endif
