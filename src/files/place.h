/* files/place.h -- where a path leads, and whether two lead to the same file. */
#ifndef FILES_PLACE_H
#define FILES_PLACE_H

#include <stdbool.h>
#include <stddef.h>

/* Links followed, also one that leads to nothing yet; to be freed. NULL, with errno, when it leads nowhere. */
char *place_of(const char *path);

/* `other`, as it is seen from the folder that `path` lies in; and that folder, "here/.". To be freed; NULL when memory is refused. */
char *place_beside(const char *path, const char *other);
char *place_folder(const char *path);

/* Two names of one regular file, or of one that is not there yet: whatever the links, and wherever its folder is named from. */
bool place_same(const char *path, const char *other);
bool place_within(const char *path,
                  const char *folder);          /* links followed; so is what is not there: it is for its reader to miss */
bool place_is_open(const char *path, int file); /* the regular file that is open there */
bool place_is_read(const char *path, const char *read); /* one that is read is the same; "-" is standard input */

/* A path at which there is nothing yet: the stem and the ending, else with a number between, "worked-2.bath" to "worked-999.bath". */
void place_unused(char *path, size_t size, const char *stem, const char *ending);

#endif
