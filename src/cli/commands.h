/* cli/commands.h -- the commands, in the order in which help lists them. */
#ifndef CLI_COMMANDS_H
#define CLI_COMMANDS_H

#include "cli/options.h"

extern const command command_run, command_check, command_charge, command_correct, command_size, command_compare,
    command_explore, command_fit, command_solution;

const command *commands_listed(size_t index);    /* NULL beyond the last */
const command *commands_named(const char *name); /* NULL: there is none */

#endif
