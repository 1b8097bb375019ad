/* files/whole_file.h -- a file that appears whole or not at all: written beside its place, and renamed when all of it is on
   disk. "-" is standard output. What is there and no regular file (a pipe, a device) is written straight away. */
#ifndef FILES_WHOLE_FILE_H
#define FILES_WHOLE_FILE_H

#include <stdbool.h>
#include <stdio.h>

#include "base/signals.h"

typedef struct {
    FILE *to;
    const char *path; /* as given; must outlive the writing */
    char *place;      /* where it will be, links followed; NULL: written straight away */
    char *temporary;
    sigset_t before; /* signals that end the program wait while there is a temporary file */
} whole_file;

bool whole_file_is_stdout(const char *path); /* "-"; path may be NULL */

/* False, with a complaint on standard error, when it cannot be begun: nothing is left then. */
bool whole_file_open(whole_file *w, const char *path);

/* Ends the writing. False, with a complaint, when not all of it could be written, or memory was refused on the way
   (base/memory.h): what was there before still is. */
bool whole_file_close(whole_file *w);

#endif
