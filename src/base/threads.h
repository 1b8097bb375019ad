/* base/threads.h -- work that is shared by threads and that a person may stop: SIGINT and SIGTERM do not end the program then, it ends
   with what it has. One such work at a time. */
#ifndef BASE_THREADS_H
#define BASE_THREADS_H

#include <signal.h>
#include <stdbool.h>

typedef struct {
    int count;                             /* for OpenMP's num_threads; 1 where the compiler has none */
    struct sigaction interrupt, terminate; /* as they were before */
} threads;

/* So many threads, for OpenMP, that leave all signals to the one that began; 0: as many as there are processors. Their number: 1 where
   the compiler has none. A signal that ends the program ends them. */
int threads_create(unsigned long asked);

/* As many, and from now on signals only ask to stop. */
void threads_begin(threads *t, unsigned long asked);

/* Whether somebody did since the last beginning; after the end too. */
bool threads_asked_to_stop(void);

void threads_end(const threads *t);

#endif
