/* command_pages.c -- boilback(1), and one page for every command. */
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "describe/report.h"
#include "manual/pages.h"

/* "boilback-run" */
typedef TEXT_OF(80) page_name;

static page_name name_of(const command *c)
{
    page_name n;
    snprintf(n.text, sizeof n.text, PROGRAM_NAME "-%s", c->name);
    return n;
}

/* "--units us|si" */
static void option_form(FILE *to, const option *o)
{
    roff_between(to, "\\fB\\-\\-", o->name, "\\fR");
    if (o->value == NULL)
        return;
    fputc(' ', to);
    roff_form(to, o->value);
}

static void option_term(FILE *to, const option *o)
{
    fputs(".TP\n", to);
    option_form(to, o);
    fputc('\n', to);
    roff_sentence(to, o->text);
}

/* The program's or a command's name and what follows it, in the synopsis or as a term. */
static void command_form(FILE *to, const command *c)
{
    roff_between(to, "\\fB" PROGRAM_NAME " ", c->name, "\\fR");
    if (c->argument != NULL) {
        fputc(' ', to);
        roff_form(to, options_arguments(c));
    }
}

static void synopsis(FILE *to, const command *c)
{
    roff_section(to, "SYNOPSIS");
    fputs(".HP\n", to);
    command_form(to, c);
    fputc('\n', to);
    for (size_t i = 0; i < c->options_count; i++) {
        fputc('[', to);
        option_form(to, &c->options[i]);
        fputs("]\n", to);
    }
}

static void statuses(FILE *to)
{
    roff_section(to, "EXIT STATUS");
    for (size_t i = 0; i < help_statuses_count; i++) {
        fprintf(to, ".TP\n%zu\n", i);
        roff_sentence(to, help_statuses[i]);
    }
}

/* The words that close every report, as one paragraph. */
static void caution(FILE *to)
{
    char *text = NULL;
    size_t size = 0;
    FILE *memory = open_memstream(&text, &size);
    roff_section(to, "CAUTION");
    if (memory == NULL)
        return;
    report_caution(memory);
    fclose(memory);
    for (char *line = strtok(text, "\n"); line != NULL; line = strtok(NULL, "\n"))
        roff_between(to, "", line + strspn(line, " "), "\n");
    free(text);
}

/* "boilback-run(1)"; a comma follows unless it is the last. */
static void reference(FILE *to, const char *name, int section, const char *behind)
{
    roff_between(to, ".BR ", name, " ");
    fprintf(to, "(%d)%s\n", section, behind);
}

static void see_also(FILE *to, const command *self)
{
    const command *c;
    roff_section(to, "SEE ALSO");
    if (self != NULL)
        reference(to, PROGRAM_NAME, 1, ",");
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        if (c != self)
            reference(to, name_of(c).text, 1, ",");
    reference(to, PROGRAM_NAME "-output", 5, ",");
    reference(to, PROGRAM_NAME "-scenario", 5, ",");
    reference(to, PROGRAM_NAME "-guide", 7, ",");
    reference(to, PROGRAM_NAME "-limits", 7, "");
}

void page_command(const command *c, FILE *to)
{
    roff_heading(to, name_of(c).text, 1, c->summary);
    synopsis(to, c);
    roff_section(to, "DESCRIPTION");
    roff_between(to, "", c->description, "\n");
    roff_section(to, "OPTIONS");
    for (size_t i = 0; i < c->options_count; i++)
        option_term(to, &c->options[i]);
    option_term(to, &help_option);
    statuses(to);
    roff_section(to, "EXAMPLE");
    roff_example(to, c->example);
    caution(to);
    see_also(to, c);
}

static void commands(FILE *to)
{
    const command *c;
    roff_section(to, "COMMANDS");
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        fputs(".TP\n", to);
        command_form(to, c);
        fputc('\n', to);
        roff_sentence(to, c->summary);
        fputs("See\n", to);
        reference(to, name_of(c).text, 1, ".");
    }
}

static void licence(FILE *to)
{
    roff_section(to, "LICENCE");
    roff_between(to, "", PROGRAM_LICENCE, "\nDebian has its text as /usr/share/common\\-licenses/GPL\\-3.\n");
}

void page_program(FILE *to)
{
    roff_heading(to, PROGRAM_NAME, 1, "the boil of an open tank of caustic salt solution");
    roff_section(to, "SYNOPSIS");
    fputs("\\fB" PROGRAM_NAME "\\fR \\fICOMMAND\\fR ...\n", to);
    roff_section(to, "DESCRIPTION");
    roff_between(to, "", help_purpose, "\nA tank, its bath and what is done with it are written in a scenario; see\n");
    reference(to, PROGRAM_NAME "-scenario", 5, ".");
    fputs("Results go to standard output, everything else to standard error.\n", to);
    commands(to);
    roff_section(to, "OPTIONS");
    for (size_t i = 0; i < help_program_options_count; i++)
        option_term(to, &help_program_options[i]);
    statuses(to);
    roff_section(to, "ENVIRONMENT");
    fputs(".TP\nBOILBACK_DATA\nFolder that holds the scripts of pictures in plots/ and the lessons in scenarios/lessons/, in "
          "place of the one installed.\n",
          to);
    fputs(".TP\nNO_COLOR\nWhen it is set and not empty, no colour is sent to a terminal.\n", to);
    caution(to);
    licence(to);
    see_also(to, NULL);
}
