/* The manual pages, completions and schemas, written from the tables the program itself reads by, so that they cannot say
   something else than it does.

       write          lists the documents, by where they go under share/
       write PLACE    prints that one
       write LIST     prints the words of settings, acts or units, one a line */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "manual/pages.h"

typedef struct {
    const char *place;
    void (*write)(FILE *to);
} page_at;

static const page_at pages[] = {
    {"man/man1/" PROGRAM_NAME ".1", page_program},
    {"man/man5/" PROGRAM_NAME "-scenario.5", page_scenario},
    {"man/man5/" PROGRAM_NAME "-output.5", page_output},
    {"man/man7/" PROGRAM_NAME "-guide.7", page_guide},
};

static const page_at completions[] = {
    {"bash-completion/completions/" PROGRAM_NAME, completion_bash},
    {"zsh/site-functions/_" PROGRAM_NAME, completion_zsh},
    {"fish/vendor_completions.d/" PROGRAM_NAME ".fish", completion_fish},
};

static const page_at word_lists[] = {
    {"settings", words_of_settings},
    {"acts", words_of_acts},
    {"units", words_of_units},
};

#define WORD_LISTS (sizeof word_lists / sizeof word_lists[0])
#define PAGES (sizeof pages / sizeof pages[0])
#define COMPLETIONS (sizeof completions / sizeof completions[0])

typedef struct {
    char text[120];
} place;

static place command_place(const command *c)
{
    place p;
    snprintf(p.text, sizeof p.text, "man/man1/" PROGRAM_NAME "-%s.1", c->name);
    return p;
}

static place schema_place(const command *c)
{
    place p;
    snprintf(p.text, sizeof p.text, PROGRAM_NAME "/schema/%s.json", c->name);
    return p;
}

static void list(void)
{
    const command *c;
    for (size_t i = 0; i < COMPLETIONS; i++)
        puts(completions[i].place);
    for (size_t i = 0; i < PAGES; i++)
        puts(pages[i].place);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        printf("%s\n%s\n", command_place(c).text, schema_place(c).text);
}

/* False when there is no such page. */
static bool page_written(FILE *to, const char *wanted)
{
    const command *c;
    for (size_t i = 0; i < PAGES; i++)
        if (strcmp(pages[i].place, wanted) == 0) {
            pages[i].write(to);
            return true;
        }
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        if (strcmp(command_place(c).text, wanted) == 0) {
            page_command(c, to);
            return true;
        }
    return false;
}

static int print_page(const char *wanted)
{
    char *text = NULL;
    size_t size = 0;
    FILE *memory = open_memstream(&text, &size);
    if (memory == NULL)
        return STATUS_STOPPED;
    bool known = page_written(memory, wanted);
    fclose(memory);
    if (size > 0)
        roff_broken(stdout, text);
    free(text);
    if (!known)
        program_complain("there is no document '%s'", wanted);
    return !known ? STATUS_USAGE : size > 0 ? STATUS_DONE : STATUS_STOPPED;
}

static bool is_written_of(const page_at *list, size_t count, const char *wanted)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(list[i].place, wanted) == 0) {
            list[i].write(stdout);
            return true;
        }
    return false;
}

static int print_document(const char *wanted)
{
    const command *c;
    if (is_written_of(completions, COMPLETIONS, wanted) || is_written_of(word_lists, WORD_LISTS, wanted))
        return STATUS_DONE;
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++)
        if (strcmp(schema_place(c).text, wanted) == 0) {
            schema_of(c, stdout);
            return STATUS_DONE;
        }
    return print_page(wanted);
}

int main(int argc, char *argv[])
{
    int status = STATUS_DONE;
    if (argc < 2)
        list();
    else
        status = print_document(argv[1]);
    return program_finish(status);
}
