/* base/memory.h -- memory that was refused where nobody can be told: in a writer, which has a stream and no outcome. It is kept
   in mind, and nothing that is written from then on is handed out: the program ends with "out of memory" (base/program.h). */
#ifndef BASE_MEMORY_H
#define BASE_MEMORY_H

#include <stdbool.h>
#include <stdio.h>

void memory_refused(void);
bool memory_was_refused(void);

/* Hands on what was allocated; NULL is kept in mind. */
void *memory_needed(void *allocated);

/* Whether a call of the model went well; that memory was refused for it is kept in mind. */
bool memory_good(int outcome);

/* A stream into memory [POSIX open_memstream] whose every refusal is kept in mind: the stream itself tells of none while it is
   written to. `text` is freed by the caller; NULL when memory was refused. */
FILE *memory_stream(char **text, size_t *size);
bool memory_stream_close(FILE *to, char **text);

#endif
