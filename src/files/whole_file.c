#include "files/whole_file.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/program.h"
#include "base/text.h"
#include "files/place.h"

/* Of what memory was refused for the program speaks when it ends. */
static bool complain(const whole_file *w, int why)
{
    if (why == ENOMEM)
        memory_refused();
    return !memory_was_refused() &&
           program_complain("could not write '%s': %s", w->path, why != 0 ? strerror(why) : "unknown error");
}

static void forget(whole_file *w)
{
    free(w->place);
    free(w->temporary);
    w->place = w->temporary = NULL;
    w->to = NULL;
}

/* The mode the file had, or what the person's mask gives a new one; mkstemp lets nobody else read. */
static mode_t mode_for(const char *place)
{
    struct stat s;
    if (stat(place, &s) == 0)
        return s.st_mode & 0777;
    mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

/* As long as it stands there nothing but a sudden death ends the program. */
static FILE *open_temporary(whole_file *w)
{
    signals_hold(&w->before);
    int file = mkstemp(w->temporary);
    FILE *to = file >= 0 && fchmod(file, mode_for(w->place)) == 0 ? fdopen(file, "w") : NULL;
    if (to != NULL)
        return to;
    int why = errno;
    if (file >= 0) {
        close(file);
        unlink(w->temporary);
    }
    signals_release(&w->before);
    errno = why;
    return NULL;
}

static bool is_special(const char *path)
{
    struct stat s;
    return stat(path, &s) == 0 && !S_ISREG(s.st_mode);
}

bool whole_file_is_stdout(const char *path)
{
    return path != NULL && strcmp(path, "-") == 0;
}

bool whole_file_open(whole_file *w, const char *path)
{
    *w = (whole_file){.path = path};
    if (whole_file_is_stdout(path)) {
        w->to = stdout;
        return true;
    }
    errno = 0;
    if (is_special(path))
        w->to = fopen(path, "w");
    else if ((w->place = place_of(path)) != NULL && (w->temporary = text_printed("%s.XXXXXX", w->place)) != NULL)
        w->to = open_temporary(w);
    int why = errno;
    errno = 0; /* until the end, only a failing write sets it */
    if (w->to != NULL)
        return true;
    forget(w);
    return complain(w, why);
}

/* Everything down to the disk, or errno. Pipes and devices have no disk below them. */
static bool settle(const whole_file *w)
{
    return !memory_was_refused() && !ferror(w->to) && fflush(w->to) == 0 && (w->temporary == NULL || fsync(fileno(w->to)) == 0);
}

bool whole_file_close(whole_file *w)
{
    if (w->to == NULL)
        return false;
    bool good = settle(w);
    int why = errno;
    if (w->to != stdout && fclose(w->to) != 0 && good) {
        good = false;
        why = errno;
    }
    if (good && w->temporary != NULL && rename(w->temporary, w->place) != 0) {
        good = false;
        why = errno;
    }
    bool held = w->temporary != NULL;
    if (!good && held)
        unlink(w->temporary);
    forget(w);
    if (held)
        signals_release(&w->before);
    return good || complain(w, why);
}
