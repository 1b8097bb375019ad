/* reading/source.h -- a text file in memory, line by line: UTF-8 without control characters, so that every part of it may be
   shown. */
#ifndef READING_SOURCE_H
#define READING_SOURCE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

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

/* Everything that is wrong with a scenario, kept until all of it is known, then shown in the order of
   the text.

   boilback: night.bath:12:14: 'depth' must be between 0.1 m and 5 m, got '-3 in'
       depth = -3 in
               ^                                                              columns count characters, from 1 */

/* Reading stops when there are as many as this: the file is something else than a scenario. */
#define MESSAGES_MAX ((size_t)1000)
/* As many are shown; of remarks fewer. */
#define MESSAGES_SHOWN ((size_t)50)
#define REMARKS_SHOWN ((size_t)20)

typedef struct {
    char *file;
    int order;
    size_t line, column; /* line 0: the file as a whole */
    size_t sequence;
    char *text;
    char *echo;   /* the line, or a window of it */
    size_t caret; /* characters of the echo before the place */
    bool remark;  /* how something was understood, or what to mind: no mistake */
} message;

/* What is read in place of a stretch of a line: a message about a place in it points at what was typed there. */
typedef struct {
    char *text;
    size_t length;
    const char *typed; /* the stretch */
    size_t *from;      /* per byte, and for the end: where in the stretch it comes from */
} message_reading;

typedef struct messages {
    message *list;
    size_t count, capacity;
    size_t remarks; /* how many of the list are */
    bool lost;      /* memory was refused, for one of them or for what was read */
    message_reading *readings;
    size_t readings_count, readings_capacity;
} messages;

void messages_init(messages *m);
void messages_free(messages *m);
bool messages_full(const messages *m);
bool messages_any(const messages *m); /* mistakes: remarks do not count */

/* A message about a place in a line (numbered from 1; `at` points into it), or about a whole file (line 0, at NULL). Always
   false, for a reader to hand on. */
bool messages_add(messages *m, const source *s, size_t line, const char *at, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

/* A remark about such a place: it is shown, and nothing is refused for it. */
void messages_remark(messages *m, const source *s, size_t line, const char *at, const char *format, ...)
    __attribute__((format(printf, 5, 6)));

/* Keeps a copy of a reading until the messages are freed; its text, or NULL when memory is refused. */
const char *messages_keep_reading(messages *m, const message_reading *r);

bool messages_lost(messages *m); /* memory was refused: nothing of what was read is to be trusted. Always false */

void messages_sort(messages *m);
void messages_print(const messages *m, FILE *to, const char *program);

/* A text file into memory, with everything that is wrong with its bytes. */

/* Reads a file, or standard input for "-". A byte order mark is left out; lines end with LF or CRLF. False, with messages
   that say where and why, when it cannot be read, is longer than 1 MiB, or holds control characters or invalid UTF-8. */
bool source_read(source *s, const char *path, int order, messages *m);

/* The same of a text in memory, which it takes over and frees; NULL: memory was refused for it. */
bool source_of_bytes(source *s, const char *name, char *bytes, size_t length, messages *m);

#endif
