/* bash.c -- completion for bash 3.2 and later. */
#include <stdbool.h>

#include "base/program.h"
#include "cli/commands.h"
#include "manual/pages.h"

static const char head[] =
    "# shellcheck shell=bash\n"
    "# bash completion for " PROGRAM_NAME " " BOIL_VERSION_TEXT "; written from the tables of the program\n"
    "\n"
    "# Offers what compgen finds with these words of its own.\n"
    "_" PROGRAM_NAME "_offer() {\n"
    "    local found\n"
    "    while IFS= read -r found; do COMPREPLY+=(\"$found\"); done < <(compgen \"$@\" -- \"$current\")\n"
    "}\n"
    "\n"
    "_" PROGRAM_NAME "_files() { # pattern\n"
    "    compopt -o filenames 2>/dev/null\n"
    "    _" PROGRAM_NAME "_offer -f -X \"!$1\"\n"
    "    _" PROGRAM_NAME "_offer -d\n"
    "}\n"
    "\n"
    "_" PROGRAM_NAME "() {\n"
    "    local current=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}\n"
    "    COMPREPLY=()\n"
    "    # --name=value comes as three words\n"
    "    if [[ $current == = ]]; then\n"
    "        current=\n"
    "    elif [[ $before == = ]]; then\n"
    "        before=${COMP_WORDS[COMP_CWORD - 2]}\n"
    "    fi\n"
    "    if ((COMP_CWORD == 1)); then\n";

static void names_of(FILE *to, const option *options, size_t count)
{
    for (size_t i = 0; i < count; i++)
        fprintf(to, "--%s ", options[i].name);
}

static void first_word(FILE *to)
{
    const command *c;
    fputs("        _" PROGRAM_NAME "_offer -W '", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        fprintf(to, "%s ", c->name);
    names_of(to, help_program_options, help_program_options_count);
    fputs("'\n        return\n    fi\n", to);
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

void completion_bash(FILE *to)
{
    const command *c;
    fputs(head, to);
    first_word(to);
    fputs("    case ${COMP_WORDS[1]} in\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        case_of(to, c);
    fputs("    esac\n}\n\ncomplete -F _" PROGRAM_NAME " " PROGRAM_NAME "\n", to);
}
