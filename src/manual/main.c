/* The manual pages, completions and schemas, written from the tables the program itself reads by, so that they cannot say
   something else than it does.

       write          lists the documents, by where they go under share/
       write PLACE    prints that one
       write LIST     prints the words of settings, acts or units, one a line */
#include <stdlib.h>
#include <string.h>

#include "actions/action.h"
#include "actions/load_shape.h"
#include "base/program.h"
#include "manual/pages.h"
#include "scenario/keys.h"

/* The words of the scenario language, one a line, for a test to look up each of them in the manual. */

static void words_of_settings(FILE *to)
{
    for (size_t i = 0; i < key_count(); i++)
        fprintf(to, "%s\n", key_at(i)->words);
}

static void words_of_acts(FILE *to)
{
    const action_type *type;
    const load_shape *shape;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        fprintf(to, "%s\n", type->keyword);
    for (size_t i = 0; (shape = load_shape_listed(i)) != NULL; i++)
        fprintf(to, "%s\n", shape->words);
    for (size_t i = 0; i < action_load.clause_count; i++)
        fprintf(to, "%s\n", action_load.clauses[i].words);
}

static void words_of_units(FILE *to)
{
    const unit *u;
    for (int d = 0; d < DIM_COUNT; d++)
        for (size_t i = 0; (u = unit_listed((unit_dimension)d, i)) != NULL; i++)
            fprintf(to, "%s\n", u->spellings[0]);
}

typedef struct {
    const char *place;
    void (*write)(FILE *to);
} page_at;

static const page_at pages[] = {
    {"man/man1/" PROGRAM_NAME ".1", page_program},
    {"man/man5/" PROGRAM_NAME "-scenario.5", page_scenario},
    {"man/man5/" PROGRAM_NAME "-output.5", page_output},
    {"man/man7/" PROGRAM_NAME "-guide.7", page_guide},
    {"man/man7/" PROGRAM_NAME "-limits.7", page_of_limits},
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

/* The two documents of a command, by what stands before and behind its name. */
typedef struct {
    const char *before, *behind;
    void (*write)(const command *c, FILE *to);
} page_of_each;

static const page_of_each command_page = {"man/man1/" PROGRAM_NAME "-", ".1", page_command};
static const page_of_each command_schema = {PROGRAM_NAME "/schema/", ".json", schema_of};

static void list(void)
{
    const command *c;
    for (size_t i = 0; i < COMPLETIONS; i++)
        puts(completions[i].place);
    for (size_t i = 0; i < PAGES; i++)
        puts(pages[i].place);
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        printf("%s%s%s\n", command_page.before, c->name, command_page.behind);
        if (c->documents[0].option != NULL)
            printf("%s%s%s\n", command_schema.before, c->name, command_schema.behind);
    }
}

/* False when there is none of that name. */
static bool written_of(const page_at *all, size_t count, const char *wanted, FILE *to)
{
    for (size_t i = 0; i < count; i++)
        if (strcmp(all[i].place, wanted) == 0) {
            all[i].write(to);
            return true;
        }
    return false;
}

static bool written_of_command(const page_of_each *page, const char *wanted, FILE *to)
{
    const command *c;
    char place[120];
    for (size_t i = 0; (c = commands_listed(i)) != NULL; i++) {
        snprintf(place, sizeof place, "%s%s%s", page->before, c->name, page->behind);
        if (strcmp(place, wanted) == 0) {
            page->write(c, to);
            return true;
        }
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
    bool known = written_of(pages, PAGES, wanted, memory) || written_of_command(&command_page, wanted, memory);
    fclose(memory);
    if (size > 0)
        roff_broken(stdout, text);
    free(text);
    if (!known)
        program_complain("there is no document '%s'", wanted);
    return !known ? STATUS_USAGE : size > 0 ? STATUS_DONE : STATUS_STOPPED;
}

static int print_document(const char *wanted)
{
    bool written = written_of(completions, COMPLETIONS, wanted, stdout) || written_of(word_lists, WORD_LISTS, wanted, stdout) ||
                   written_of_command(&command_schema, wanted, stdout);
    return written ? STATUS_DONE : print_page(wanted);
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
