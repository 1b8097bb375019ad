#include "cli/commands.h"

#include <string.h>

/* clang-format off */
static const command *const commands[] = {&command_run,     &command_check, &command_charge,
                                          &command_correct, &command_size,  &command_compare,
                                          &command_explore, &command_fit,   &command_solution};

const command *commands_listed(size_t index)
{
    return index < sizeof commands / sizeof commands[0] ? commands[index] : NULL;
}
/* clang-format on */

const command *commands_named(const char *name)
{
    const command *c;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        if (strcmp(c->name, name) == 0)
            return c;
    return NULL;
}
