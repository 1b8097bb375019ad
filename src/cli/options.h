/* cli/options.h -- one table a command: from it the command line is read, and help, manual and completions are written. */
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include <stddef.h>

#define OPTIONS_MAX 16
#define OPTIONS_ARGUMENTS_MAX ((size_t)1024)

typedef struct {
    const char *name;  /* without the two dashes */
    const char *value; /* what is to be given: "FILE", or the words allowed: "us|si". NULL: nothing */
    const char *text;  /* one line, no full stop */
} option;

/* What was given, in the order of the table. Points into the command line. */
typedef struct {
    const char *argument; /* the first; NULL: none */
    const char *arguments[OPTIONS_ARGUMENTS_MAX];
    size_t arguments_count;
    const char *values[OPTIONS_MAX]; /* NULL: not given; "" for an option without value */
} given;

typedef struct {
    const char *name;
    const char *argument;    /* "FILE"; NULL: it takes none */
    const char *several;     /* how help shows that it takes more than one: "FILE FILE"; NULL: it does not */
    const char *summary;     /* one line, no full stop */
    const char *description; /* a few sentences */
    const char *example;     /* a command line, without the prompt */
    const option *options;
    size_t options_count;             /* at most OPTIONS_MAX */
    const struct document *documents; /* what --json and --csv write (base/field.h) */
    int (*run)(const given *g);       /* an exit status */
} command;

typedef enum { OPTIONS_READ, OPTIONS_HELP, OPTIONS_WRONG } options_outcome;

typedef struct {
    char text[240];
} options_problem;

/* What stands after its name in a usage line; "" when nothing does. */
const char *options_arguments(const command *c);

/* Reads what stands after the command's name: `--name value` and `--name=value`, each once, in any order; "--" ends
   them. OPTIONS_HELP when --help or -h stands before that. OPTIONS_WRONG with one sentence. */
options_outcome options_read(const command *c, int count, char *const words[], given *g, options_problem *problem);

#endif
