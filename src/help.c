#include "help.h"

#include "commands.h"
#include "program.h"
#include "text.h"

#define WIDTH 78
#define COLUMN 24 /* where the texts of options begin */

static void usage_line(const command *c, FILE *to)
{
    fprintf(to, "usage: " PROGRAM_NAME " %s%s%s%s\n", c->name, c->argument != NULL ? " " : "",
            c->argument != NULL ? c->argument : "", c->options_count > 0 ? " [options]" : "");
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
    static const option help = {"help", NULL, "show this and stop"};
    usage_line(c, to);
    fputc('\n', to);
    text_wrapped(to, c->description, 0, 0, WIDTH);
    fputs("\noptions:\n", to);
    for (size_t i = 0; i < c->options_count; i++)
        option_line(&c->options[i], to);
    option_line(&help, to);
    fprintf(to, "\nexample:\n  %s\n", c->example);
}

void help_program(FILE *to)
{
    const command *c;
    fputs("usage: " PROGRAM_NAME " COMMAND ...\n\n", to);
    text_wrapped(
        to,
        "What an open tank of boiling caustic salt solution does when cold steel or water goes in: how long the boil "
        "takes to come back, how strong and how full the bath gets, and when it may boil over.",
        0, 0, WIDTH);
    fputs("\ncommands:\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        int used =
            fprintf(to, "  %s%s%s", c->name, c->argument != NULL ? " " : "", c->argument != NULL ? c->argument : "");
        text_wrapped(to, c->summary, used, COLUMN, WIDTH);
    }
    fputs("\n  --help                help; also after a command\n  --version             the version\n\n", to);
    text_wrapped(
        to,
        "exit status: 0 done; 1 the run stopped early, or something could not be written; 2 a mistake in the command "
        "line or the scenario; 3 with --strict, when a WARNING or DANGER was found",
        0, 0, WIDTH);
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
