/* base/program.h -- what every command shares: its name, exit statuses, and the two ways to speak. Results go to standard
   output, everything else to standard error. */
#ifndef BASE_PROGRAM_H
#define BASE_PROGRAM_H

#include <stdio.h>

#include "boilback.h" /* the version */

#define PROGRAM_NAME "boilback"
/* The GNU Scientific Library is under this licence, and so is all that is built on it. */
#define PROGRAM_LICENCE "GPL-3.0-or-later: the GNU General Public License, version 3 or later.\nThere is no warranty."

enum {
    STATUS_DONE = 0,
    STATUS_STOPPED = 1, /* the run stopped early, or something could not be written */
    STATUS_USAGE = 2,   /* a mistake in the command line or the scenario */
    STATUS_FOUND = 3    /* --strict, and a WARNING or DANGER was found */
};

/* "boilback: ..." and a line's end, on standard error. Always false, for who failed to hand on. */
bool program_complain(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Empties standard output. The status, or STATUS_STOPPED with a complaint when not all of it could be written. Where memory was
   refused (base/memory.h) the program ends here, with that complaint, and nothing more is written. */
int program_finish(int status);

bool program_colour(FILE *to); /* to a terminal, and NO_COLOR is not set */

#endif
