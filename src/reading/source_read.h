/* reading/source_read.h -- a text file into memory, with everything that is wrong with its bytes. */
#ifndef READING_SOURCE_READ_H
#define READING_SOURCE_READ_H

#include "reading/messages.h"

/* Reads a file, or standard input for "-". A byte order mark is left out; lines end with LF or CRLF. False, with
   messages that say where and why, when it cannot be read, is longer than 1 MiB, or holds control characters or invalid
   UTF-8. */
bool source_read(source *s, const char *path, int order, messages *m);

#endif
