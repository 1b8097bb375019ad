/* manual/expects.h -- what a shell may offer for an option's value or a command's argument, read from the word help shows. */
#ifndef MANUAL_EXPECTS_H
#define MANUAL_EXPECTS_H

#include <stdio.h>

#include "cli/options.h"

typedef enum {
    EXPECTS_NOTHING, /* takes no value */
    EXPECTS_WORDS,   /* one of "us|si" */
    EXPECTS_FILE,
    EXPECTS_TEXT /* nothing that could be offered */
} expects;

expects expects_of(const char *value);

void expects_words(FILE *to, const char *value); /* "us si" */

#endif
