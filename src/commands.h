/* commands.h -- the commands, in the order in which help lists them. */
#ifndef COMMANDS_H
#define COMMANDS_H

#include "options.h"

extern const command command_run, command_check, command_charge, command_correct, command_size, command_compare,
    command_explore, command_fit, command_solution;

const command *commands_listed(size_t index); /* NULL beyond the last */
const command *commands_named(const char *name); /* NULL: there is none */

#endif
