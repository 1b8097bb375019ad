#include "cli/commands.h"

#include <string.h>

#include "base/program.h"

/* clang-format off */
static const command *const commands[] = {
    &command_run,    &command_check,    &command_charge,  &command_correct, &command_plan,     &command_size, &command_compare,
    &command_lesson, &command_practise, &command_explore, &command_fit,     &command_solution,
};

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

#define WIDTH 78
#define COLUMN 24 /* where the texts of options begin */

const char help_purpose[] =
    "What an open tank of boiling caustic salt solution does when cold steel or water goes in: how long the boil "
    "takes to come back, how strong and how full the bath gets, and when it may boil over.";

const option help_option = {.name = "help", .text = "show this and stop"};

const option help_program_options[] = {
    {.name = "help", .text = "help; also after a command"},
    {.name = "version", .text = "the version and the licence"},
};
const size_t help_program_options_count = sizeof help_program_options / sizeof help_program_options[0];

const char *const help_statuses[] = {
    [STATUS_DONE] = "done",
    [STATUS_STOPPED] = "the run stopped early, or something could not be written",
    [STATUS_USAGE] = "a mistake in the command line or the scenario",
    [STATUS_FOUND] = "with --strict, when a WARNING or DANGER was found",
};
const size_t help_statuses_count = sizeof help_statuses / sizeof help_statuses[0];

static void usage_line(const command *c, FILE *to)
{
    fprintf(to, "usage: " PROGRAM_NAME " %s%s%s%s\n", c->name, c->argument != NULL ? " " : "", options_arguments(c),
            c->options_count > 0 ? " [options]" : "");
}

static void option_line(const option *o, FILE *to)
{
    int used = fprintf(to, "  --%s%s%s", o->name, o->value != NULL ? " " : "", o->value != NULL ? o->value : "");
    if (used > COLUMN - 2) {
        fputc('\n', to);
        used = 0;
    }
    text_wrapped(to, o->text, used, COLUMN, WIDTH);
}

void help_command(const command *c, FILE *to)
{
    usage_line(c, to);
    fputc('\n', to);
    text_wrapped(to, c->description, 0, 0, WIDTH);
    fputs("\noptions:\n", to);
    for (size_t i = 0; i < c->options_count; i++)
        option_line(&c->options[i], to);
    option_line(&help_option, to);
    fprintf(to, "\nexample:\n  %s\n", c->example);
}

/* "exit status: 0 done; 1 the run stopped early, ..." */
static void statuses(FILE *to)
{
    char text[600] = "exit status:";
    for (size_t i = 0; i < help_statuses_count; i++)
        TEXT_ADD(text, "%s %zu %s", i > 0 ? ";" : "", i, help_statuses[i]);
    text_wrapped(to, text, 0, 0, WIDTH);
}

void help_program(FILE *to)
{
    const command *c;
    fputs("usage: " PROGRAM_NAME " COMMAND ...\n\n", to);
    text_wrapped(to, help_purpose, 0, 0, WIDTH);
    fputs("\ncommands:\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        int used = fprintf(to, "  %s%s%s", c->name, c->argument != NULL ? " " : "", options_arguments(c));
        text_wrapped(to, c->summary, used, COLUMN, WIDTH);
    }
    fputc('\n', to);
    for (size_t i = 0; i < help_program_options_count; i++)
        option_line(&help_program_options[i], to);
    fputc('\n', to);
    statuses(to);
}

void help_usage(const command *c, FILE *to)
{
    if (c == NULL)
        fputs("usage: " PROGRAM_NAME " COMMAND ...; see '" PROGRAM_NAME " --help'\n", to);
    else {
        usage_line(c, to);
        fprintf(to, "see '" PROGRAM_NAME " %s --help'\n", c->name);
    }
}
