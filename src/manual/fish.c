/* fish.c -- completion for fish, a line for each thing it may offer. */
#include "base/program.h"
#include "cli/commands.h"
#include "manual/pages.h"

/* Between single quotes. */
static void quoted(FILE *to, const char *text)
{
    fputc('\'', to);
    for (; *text != '\0'; text++)
        fprintf(to, "%s%c", *text == '\'' || *text == '\\' ? "\\" : "", *text);
    fputc('\'', to);
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
    if (expects == EXPECTS_WORDS) {
        fputs(" -a '", to);
        options_choice(o, to);
        fputc('\'', to);
    }
    fputs(" -d ", to);
    quoted(to, o->text);
    fputc('\n', to);
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
        fprintf(to, " -a %s -d ", c->name);
        quoted(to, c->summary);
        fputc('\n', to);
    }
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        for (size_t k = 0; k < c->options_count; k++)
            option_line(to, c->name, &c->options[k]);
        option_line(to, c->name, &help_option);
        argument_line(to, c);
    }
}
