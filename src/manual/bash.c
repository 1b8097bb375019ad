/* bash.c -- completion for bash 3.2 and later: bash.txt, with the words of the tables. */
#include <stdbool.h>

#include "base/program.h"
#include "cli/commands.h"
#include "manual/pages.h"

static void names_of(FILE *to, const option *options, size_t count)
{
    for (size_t i = 0; i < count; i++)
        fprintf(to, "--%s ", options[i].name);
}

static void version(FILE *to, const void *about)
{
    (void)about;
    fputs("# bash completion for " PROGRAM_NAME " " BOIL_VERSION_TEXT "; written from the tables of the program\n", to);
}

static void first_words(FILE *to, const void *about)
{
    const command *c;
    (void)about;
    fputs("        _" PROGRAM_NAME "_offer -W '", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        fprintf(to, "%s ", c->name);
    names_of(to, help_program_options, help_program_options_count);
    fputs("'\n", to);
}

/* What may stand behind an option; empty text is still a case, so that nothing else is offered there. */
static void value_of(FILE *to, const option *o)
{
    option_expects expects = options_expects(o);
    if (expects == EXPECTS_NOTHING)
        return;
    fprintf(to, "        --%s)\n", o->name);
    if (expects == EXPECTS_FILE)
        fputs("            _" PROGRAM_NAME "_files '*'\n", to);
    if (expects == EXPECTS_WORDS) {
        fputs("            _" PROGRAM_NAME "_offer -W '", to);
        options_choice(o, to);
        fputs("'\n", to);
    }
    fputs("            return\n            ;;\n", to);
}

static void case_of(FILE *to, const command *c)
{
    bool any = false;
    for (size_t i = 0; i < c->options_count; i++)
        any = any || options_expects(&c->options[i]) != EXPECTS_NOTHING;
    fprintf(to, "    %s)\n", c->name);
    if (any)
        fputs("        case $before in\n", to);
    for (size_t i = 0; i < c->options_count; i++)
        value_of(to, &c->options[i]);
    if (any)
        fputs("        esac\n", to);
    fputs("        [[ $current == -* ]] && _" PROGRAM_NAME "_offer -W '", to);
    names_of(to, c->options, c->options_count);
    names_of(to, &help_option, 1);
    fputs("'\n", to);
    if (c->argument != NULL)
        fputs("        _" PROGRAM_NAME "_files '*.bath'\n", to);
    fputs("        ;;\n", to);
}

static void cases(FILE *to, const void *about)
{
    const command *c;
    (void)about;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        case_of(to, c);
}

void completion_bash(FILE *to)
{
    static const text_part parts[] = {{"version", version}, {"words", first_words}, {"cases", cases}, {0}};
    text_with_parts(to, "bash.txt", parts);
}
