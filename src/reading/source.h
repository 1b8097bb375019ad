/* reading/source.h -- a text file in memory, line by line: UTF-8 without control characters, so that every part of it may be
   shown. */
#ifndef READING_SOURCE_H
#define READING_SOURCE_H

#include <stdbool.h>
#include <stddef.h>

#define SOURCE_BYTES_MAX ((size_t)1 << 20)

typedef struct {
    const char *text; /* not terminated */
    size_t length;
} source_line;

typedef struct {
    char *name; /* as messages show it */
    int order;  /* messages of lower order come first */
    char *bytes;
    source_line *lines;
    size_t count, capacity;
} source;

void source_free(source *s); /* an empty or zeroed one is fine */

/* Bytes of the character that starts here; 0 when it is not well-formed UTF-8. */
size_t source_character(const char *at, size_t left);
bool source_is_control(const char *at, size_t length); /* a character of this length; tabs are none */

#endif
