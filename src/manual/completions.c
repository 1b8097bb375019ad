/* completions.c -- completion for three shells: bash 3.2 and later, bash.txt with the words of the tables; zsh, in the words
   of its _arguments; fish, a line for each thing it may offer. */
#include <string.h>

#include "base/program.h"
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
static void bash_value_of(FILE *to, const option *o)
{
    option_expects expects = options_expects(o);
    if (expects == EXPECTS_NOTHING)
        return;
    fprintf(to, "        --%s)\n", o->name);
    if (expects == EXPECTS_FILE)
        fputs("            _" PROGRAM_NAME "_files '*'\n", to);
    if (expects == EXPECTS_WORDS)
        options_choice(o, "            _" PROGRAM_NAME "_offer -W '", "'\n", to);
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
        bash_value_of(to, &c->options[i]);
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

/* Text between single quotes, with the signs that _arguments takes for itself masked. */
static void masked(FILE *to, const char *before, const char *text, const char *behind)
{
    fputs(before, to);
    for (; *text != '\0'; text++) {
        if (*text == '\'')
            fputs("'\\''", to);
        else
            fprintf(to, "%s%c", strchr("[]:\\", *text) != NULL ? "\\" : "", *text);
    }
    fputs(behind, to);
}

static void value_of(FILE *to, const option *o)
{
    masked(to, ":", o->value, ":");
    if (options_expects(o) == EXPECTS_FILE)
        fputs("_files", to);
    if (options_expects(o) == EXPECTS_WORDS)
        options_choice(o, "(", ")", to);
}

static void zsh_option_line(FILE *to, const option *o, const char *others)
{
    fprintf(to, " \\\n            '%s--%s%s[", others, o->name, o->value != NULL ? "=" : "");
    masked(to, "", o->text, "]");
    if (o->value != NULL)
        value_of(to, o);
    fputc('\'', to);
}

static void command_case(FILE *to, const command *c)
{
    fprintf(to, "    %s)\n        _arguments -s", c->name);
    for (size_t i = 0; i < c->options_count; i++)
        zsh_option_line(to, &c->options[i], "");
    zsh_option_line(to, &help_option, "(- *)");
    if (c->argument != NULL)
        masked(to, " \\\n            '*:", c->argument, ":_files -g \"*.bath(-.)\"'");
    fputs("\n        ;;\n", to);
}

static void list_of_commands(FILE *to)
{
    const command *c;
    fputs("    commands)\n        local -a names\n        names=(\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        fprintf(to, "            '%s:", c->name);
        masked(to, "", c->summary, "'\n");
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
        zsh_option_line(to, &help_program_options[i], "(- *)");
    fputs(" \\\n            '1:command:->commands' \\\n            '*::argument:->arguments' && return\n"
          "    case $state in\n",
          to);
    list_of_commands(to);
    fputs("    esac\n    case $line[1] in\n", to);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        command_case(to, c);
    fputs("    esac\n}\n\n_" PROGRAM_NAME " \"$@\"\n", to);
}

/* What is told of a choice, between single quotes; the line's end. */
static void described(FILE *to, const char *text)
{
    fputs(" -d '", to);
    for (; *text != '\0'; text++)
        fprintf(to, "%s%c", *text == '\'' || *text == '\\' ? "\\" : "", *text);
    fputs("'\n", to);
}

static void begin(FILE *to, const char *name)
{
    fputs("complete -c " PROGRAM_NAME " -n ", to);
    if (name != NULL)
        fprintf(to, "'__fish_seen_subcommand_from %s'", name);
    else
        fputs("__fish_use_subcommand", to);
}

static void option_line(FILE *to, const char *name, const option *o)
{
    begin(to, name);
    fprintf(to, " -l %s", o->name);
    option_expects expects = options_expects(o);
    fputs(expects == EXPECTS_FILE ? " -r -F" : expects == EXPECTS_NOTHING ? "" : " -x", to);
    if (expects == EXPECTS_WORDS)
        options_choice(o, " -a '", "'", to);
    described(to, o->text);
}

static void argument_line(FILE *to, const command *c)
{
    if (c->argument == NULL)
        return;
    begin(to, c->name);
    fputs(" -k -a '(__fish_complete_suffix .bath)'\n", to);
}

void completion_fish(FILE *to)
{
    const command *c;
    fputs("# fish completion for " PROGRAM_NAME " " BOIL_VERSION_TEXT "; written from the tables of the program\n"
          "complete -c " PROGRAM_NAME " -f\n",
          to);
    for (size_t i = 0; i < help_program_options_count; i++)
        option_line(to, NULL, &help_program_options[i]);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        begin(to, NULL);
        fprintf(to, " -a %s", c->name);
        described(to, c->summary);
    }
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        for (size_t k = 0; k < c->options_count; k++)
            option_line(to, c->name, &c->options[k]);
        option_line(to, c->name, &help_option);
        argument_line(to, c);
    }
}
