/* cli/options.h -- one table a command: from it the command line is read into the command's own record, and help, manual and
   completions are written. */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include "base/text.h"
#include "reading/quantity.h"

#define OPTIONS_MAX 16
#define OPTIONS_ARGUMENTS_MAX ((size_t)1024)

/* What an option's value may be, and what the record holds of it. */
typedef enum {
    OPTION_FLAG,     /* no value; bool */
    OPTION_FILE,     /* a file's name; const char * */
    OPTION_CHOICE,   /* one of the words of `value`; an enum that counts them from 0 */
    OPTION_COUNT,    /* a whole number within bounds; unsigned long */
    OPTION_NUMBER,   /* a bare number within bounds; double */
    OPTION_QUANTITY, /* of a dimension, within bounds; double, SI */
    OPTION_EITHER,   /* of this dimension or the other, each within its bounds; quantity */
    OPTION_READ,     /* what `read` makes of it; whatever that is */
    OPTION_SETTING   /* as a scenario says it at [section] key; goes into the scenario in the record */
} option_kind;

typedef struct {
    const char *name;  /* without the two dashes */
    const char *value; /* what is to be given: "FILE", or the words allowed: "us|si". NULL: nothing */
    const char *text;  /* one line, no full stop */
    option_kind kind;
    size_t where; /* in the command's record */
    unit_dimension dimension;
    bounds within;
    unit_dimension other;
    bounds within_other;
    bool (*read)(cursor *c, void *into); /* up to the value's end; false, with a message, on a mistake */
    const char *section, *key;           /* of a setting whose value has room in the scenario for all settings */
} option;

typedef struct given given;

typedef struct {
    const char *name;
    const char *argument;    /* "FILE"; NULL: it takes none */
    const char *without;     /* the option beside which it is not needed; NULL: there is none */
    const char *several;     /* how help shows that it takes more than one: "FILE FILE"; NULL: it does not */
    const char *summary;     /* one line, no full stop */
    const char *description; /* a few sentences */
    const char *example;     /* a command line, without the prompt */
    const option *options;
    size_t options_count;             /* at most OPTIONS_MAX */
    const struct document *documents; /* what --json and --csv write (base/field.h) */
    int (*run)(const given *g);       /* an exit status */
} command;

/* Where an option of the table goes in the command's `request`. */
#define INTO(member) .where = offsetof(request, member)

/* The last members of a command whose file calls its table `options` and its function `run`. */
#define COMMAND_PARTS(written)                                                                                                 \
    .options = options, .options_count = sizeof options / sizeof options[0], .documents = written, .run = run

/* What was given, in the order of the table. Points into the command line. */
struct given {
    const command *command;
    const char *argument; /* the first; NULL: none */
    const char *arguments[OPTIONS_ARGUMENTS_MAX];
    size_t arguments_count;
    const char *values[OPTIONS_MAX]; /* NULL: not given; "" for an option without value */
};

typedef enum { OPTIONS_READ, OPTIONS_HELP, OPTIONS_WRONG } options_outcome;

typedef TEXT_OF(240) options_problem;

/* What stands after its name in a usage line; "" when nothing does. */
const char *options_arguments(const command *c);

/* Reads what stands after the command's name: `--name value` and `--name=value`, each once, in any order; "--" ends
   them. OPTIONS_HELP when --help or -h stands before that. OPTIONS_WRONG with one sentence. */
options_outcome options_read(const command *c, int count, char *const words[], given *g, options_problem *problem);

bool options_given(const given *g, const char *name);

/* The values of the options given, into the command's record, which holds the defaults of the others. False, with a complaint
   about each that makes no sense; its place in the record is then as it was. */
bool options_take(const given *g, void *record);

/* What a shell may offer for an option's value. */
typedef enum { EXPECTS_NOTHING, EXPECTS_WORDS, EXPECTS_FILE, EXPECTS_TEXT } option_expects;

int options_place(const option *o, const char *word); /* of a choice: among its words, from 0; -1: it is none */
option_expects options_expects(const option *o);
void options_choice(const option *o, const char *before, const char *behind, FILE *to); /* "us si", between the two */

#endif
