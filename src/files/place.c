/* realpath is in XSI, beyond base POSIX */
#define _XOPEN_SOURCE 700
#include "files/place.h"

#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "base/memory.h"
#include "base/text.h"

enum { LINKS_MAX = 40 }; /* as the kernel follows */

/* Bytes of the folder at the start of a path, with its slash. */
static int folder_length(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash != NULL ? (int)(slash - path) + 1 : 0;
}

char *place_beside(const char *path, const char *other)
{
    return text_printed("%.*s%s", other[0] == '/' ? 0 : folder_length(path), path, other);
}

char *place_folder(const char *path)
{
    return place_beside(path, ".");
}

/* What the link says, as seen from where its path is seen from; NULL when it is no link. */
static char *target_of(const char *path)
{
    char target[PATH_MAX];
    ssize_t length = readlink(path, target, sizeof target - 1);
    if (length < 0)
        return NULL;
    target[length] = '\0';
    return place_beside(path, target);
}

/* A link to nothing leads to where a file is made when one is written through it. */
static char *end_of_links(const char *path)
{
    char *at = text_copy(path, strlen(path));
    for (int i = 0; at != NULL && i < LINKS_MAX; i++) {
        errno = 0;
        char *next = target_of(at);
        if (next == NULL && errno != ENOMEM)
            return at;
        free(at);
        at = next;
    }
    if (at != NULL)
        errno = ELOOP;
    free(at);
    return NULL;
}

char *place_of(const char *path)
{
    char *resolved = realpath(path, NULL);
    return resolved != NULL || errno != ENOENT ? resolved : end_of_links(path);
}

static bool same(const struct stat *a, const struct stat *b)
{
    return a->st_dev == b->st_dev && a->st_ino == b->st_ino;
}

static bool folder_stat(const char *place, struct stat *s)
{
    char *folder = place_folder(place);
    bool good = memory_needed(folder) != NULL && stat(folder, s) == 0;
    free(folder);
    return good;
}

/* Neither is there: in one folder, under one name. */
static bool same_to_be(const char *path, const char *other)
{
    struct stat a, b;
    char *place = place_of(path), *there = place_of(other);
    bool same_name = place != NULL && there != NULL && strcmp(place + folder_length(place), there + folder_length(there)) == 0;
    bool is = same_name && folder_stat(place, &a) && folder_stat(there, &b) && same(&a, &b);
    free(place);
    free(there);
    return is;
}

bool place_same(const char *path, const char *other)
{
    struct stat a, b;
    bool is_there = stat(path, &a) == 0, other_is = stat(other, &b) == 0;
    if (is_there && other_is)
        return S_ISREG(a.st_mode) && same(&a, &b);
    return !is_there && !other_is && same_to_be(path, other);
}

bool place_is_open(const char *path, int file)
{
    struct stat a, b;
    return stat(path, &a) == 0 && fstat(file, &b) == 0 && S_ISREG(a.st_mode) && same(&a, &b);
}

bool place_is_read(const char *path, const char *read)
{
    return strcmp(read, "-") == 0 ? place_is_open(path, STDIN_FILENO) : place_same(path, read);
}

bool place_within(const char *path, const char *folder)
{
    char *place = realpath(path, NULL);
    bool missing = place == NULL && errno != ENOMEM;
    char *in = realpath(folder, NULL);
    if ((place == NULL && !missing) || (in == NULL && errno == ENOMEM))
        memory_refused();
    size_t length = in != NULL ? strlen(in) : 0;
    bool within = missing || (place != NULL && in != NULL && strncmp(place, in, length) == 0 &&
                              (place[length] == '/' || strcmp(in, "/") == 0));
    free(place);
    free(in);
    return within;
}

void place_unused(char *path, size_t size, const char *stem, const char *ending)
{
    snprintf(path, size, "%s%s", stem, ending);
    for (int i = 2; i < 1000 && access(path, F_OK) == 0; i++)
        snprintf(path, size, "%s-%d%s", stem, i, ending);
}
