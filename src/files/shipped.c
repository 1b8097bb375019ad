/* realpath is in XSI, beyond base POSIX */
#define _XOPEN_SOURCE 700
#include "files/shipped.h"

#include <errno.h>
#include <limits.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/text.h"

/* The folder of the running program, without a slash at its end; NULL when it cannot be told. */
static char *program_folder(void)
{
    char path[PATH_MAX];
    ssize_t length = readlink("/proc/self/exe", path, sizeof path - 1);
    if (length <= 0)
        return NULL;
    path[length] = '\0';
    char *slash = strrchr(path, '/');
    if (slash == NULL)
        return NULL;
    *slash = '\0';
    return memory_needed(strdup(path));
}

/* The whole path, so that it begins with a slash and is nothing but a file to whoever is given it. */
static char *below(const char *folder, const char *way, const char *what)
{
    char *path = text_printed("%s/%s%s", folder, way, what), *found = path != NULL ? realpath(path, NULL) : NULL;
    if (path == NULL || (found == NULL && errno == ENOMEM))
        memory_refused();
    free(path);
    return found;
}

char *shipped_place(const char *what)
{
    const char *data = getenv("BOILBACK_DATA");
    if (data != NULL && data[0] != '\0')
        return below(data, "", what);
    char *folder = program_folder(), *found = NULL;
    if (folder != NULL)
        found = below(folder, "../share/boilback/", what);
    if (folder != NULL && found == NULL)
        found = below(folder, "../", what);
    free(folder);
    return found;
}
