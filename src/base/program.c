#include "base/program.h"

#include <errno.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/patience.h"
#include "base/text.h"

/* One line, whatever is in it: what it names may hold line ends, and what a terminal obeys. */
bool program_complain(const char *format, ...)
{
    char text[8192]; /* longer than any path */
    va_list values;
    patience_end();
    fputs(PROGRAM_NAME ": ", stderr);
    va_start(values, format);
    vsnprintf(text, sizeof text, format, values);
    va_end(values);
    text_show(stderr, text);
    fputc('\n', stderr);
    return false;
}

int program_finish(int status)
{
    if (memory_was_refused()) {
        program_complain("out of memory");
        fflush(stderr);
        _exit(STATUS_STOPPED); /* what is still to be handed out may be wrong */
    }
    errno = 0;
    if (fflush(stdout) == 0 && !ferror(stdout))
        return status;
    program_complain("could not write to standard output%s%s", errno != 0 ? ": " : "", errno != 0 ? strerror(errno) : "");
    return status == STATUS_USAGE ? status : STATUS_STOPPED;
}

/* [no-color.org: any value but the empty one] */
bool program_colour(FILE *to)
{
    const char *refused = getenv("NO_COLOR");
    return (refused == NULL || refused[0] == '\0') && isatty(fileno(to)) == 1;
}
