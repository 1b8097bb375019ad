/* manual/pages.h -- the manual pages, the schemas of JSON, and the completions of the shells. */
#ifndef MANUAL_PAGES_H
#define MANUAL_PAGES_H

#include "base/field.h"
#include "cli/commands.h"

/* Text for the man(7) macros, which man-db, groff and mandoc read alike. */

/* Running text with everything masked that roff would take for itself. No line's end. */
void roff_text(FILE *to, const char *text);
void roff_between(FILE *to, const char *before, const char *text, const char *behind); /* these two stand as they are */

/* A form such as "MASS [steel|iron]": words in capitals stand for values and are slanted, other words are typed as they
   stand and are bold. No line's end. */
void roff_form(FILE *to, const char *form);

/* Writes a finished page with its text broken into short lines, one sentence at most on each. */
void roff_broken(FILE *to, const char *page);

/* The head of a page: title, and NAME with its summary. */
void roff_heading(FILE *to, const char *name, int section, const char *summary);
void roff_section(FILE *to, const char *heading);
void roff_subsection(FILE *to, const char *heading);
void roff_example(FILE *to, const char *lines);

/* A line of a table of help: its first letter becomes a capital, and a full stop follows. */
void roff_sentence(FILE *to, const char *text);

/* A hanging paragraph begins with its term, a form; what explains it follows. */
void roff_term(FILE *to, const char *form);

/* What a page says of the program's tables where its text has "@name". */
typedef struct {
    const char *name; /* NULL: after the last */
    void (*write)(FILE *to, const void *about);
} text_part;

/* A page whose text is the file src/manual/NAME.md. */
typedef struct {
    const char *name;
    int section;
    const char *summary;
    const text_part *parts;
} text_page;

/* Writes nothing, with a complaint, when the text cannot be read. */
void page_of_text(FILE *to, const text_page *page, const void *about);

/* The same for a text that is no page: it stands as it is but for its parts. */
void text_with_parts(FILE *to, const char *file, const text_part *parts);

void page_program(FILE *to);
void page_command(const command *c, FILE *to);
void page_guide(FILE *to);
void page_of_limits(FILE *to);
void page_scenario(FILE *to); /* writes nothing, with a complaint, when the defaults cannot be had */

void page_output(FILE *to);

void schema_of(const command *c, FILE *to); /* of its --json */

void completion_bash(FILE *to);
void completion_zsh(FILE *to);
void completion_fish(FILE *to);

#endif
