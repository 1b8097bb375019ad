/* zsh.c -- completion for zsh, in the words of its _arguments. */
#include <string.h>

#include "base/program.h"
#include "cli/commands.h"
#include "manual/pages.h"

/* Text between single quotes, with the signs that _arguments takes for itself masked. */
static void masked(FILE *to, const char *text)
{
    for (; *text != '\0'; text++) {
        if (*text == '\'')
            fputs("'\\''", to);
        else
            fprintf(to, "%s%c", strchr("[]:\\", *text) != NULL ? "\\" : "", *text);
    }
}

static void value_of(FILE *to, const option *o)
{
    fputs(":", to);
    masked(to, o->value);
    fputs(":", to);
    if (options_expects(o) == EXPECTS_FILE)
        fputs("_files", to);
    if (options_expects(o) == EXPECTS_WORDS) {
        fputc('(', to);
        options_choice(o, to);
        fputc(')', to);
    }
}

static void option_line(FILE *to, const option *o, const char *others)
{
    fprintf(to, " \\\n            '%s--%s%s[", others, o->name, o->value != NULL ? "=" : "");
    masked(to, o->text);
    fputc(']', to);
    if (o->value != NULL)
        value_of(to, o);
    fputc('\'', to);
}

static void command_case(FILE *to, const command *c)
{
    fprintf(to, "    %s)\n        _arguments -s", c->name);
    for (size_t i = 0; i < c->options_count; i++)
        option_line(to, &c->options[i], "");
    option_line(to, &help_option, "(- *)");
    if (c->argument != NULL) {
        fputs(" \\\n            '*:", to);
        masked(to, c->argument);
        fputs(":_files -g \"*.bath(-.)\"'", to);
    }
    fputs("\n        ;;\n", to);
}

static void list_of_commands(FILE *to)
{
    const command *c;
    fputs("    commands)\n        local -a names\n        names=(\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        fprintf(to, "            '%s:", c->name);
        masked(to, c->summary);
        fputs("'\n", to);
    }
    fputs("        )\n        _describe command names\n        return\n        ;;\n", to);
}

void completion_zsh(FILE *to)
{
    const command *c;
    fputs("#compdef " PROGRAM_NAME "\n# zsh completion for " PROGRAM_NAME " " BOIL_VERSION_TEXT
          "; written from the tables of the program\n\n_" PROGRAM_NAME "() {\n"
          "    local curcontext=$curcontext state line\n    _arguments -C",
          to);
    for (size_t i = 0; i < help_program_options_count; i++)
        option_line(to, &help_program_options[i], "(- *)");
    fputs(" \\\n            '1:command:->commands' \\\n            '*::argument:->arguments' && return\n"
          "    case $state in\n",
          to);
    list_of_commands(to);
    fputs("    esac\n    case $line[1] in\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        command_case(to, c);
    fputs("    esac\n}\n\n_" PROGRAM_NAME " \"$@\"\n", to);
}
