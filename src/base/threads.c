#include "base/threads.h"

#include <unistd.h>

#include "base/signals.h"

static volatile sig_atomic_t asked_to_stop;

static void ask_to_stop(int signal_number)
{
    (void)signal_number;
    asked_to_stop = 1;
}

#ifdef _OPENMP
/* Signals that end the program are for the thread that began: it holds them back where something would be left behind, and
   these threads stay until it ends. */
int threads_create(unsigned long asked)
{
    long processors = sysconf(_SC_NPROCESSORS_ONLN);
    int count = asked > 0 ? (int)asked : processors > 1 ? (int)processors : 1;
    sigset_t before;
    signals_hold(&before);
#pragma omp parallel num_threads(count)
    (void)0;
    signals_release(&before);
    return count;
}
#else
int threads_create(unsigned long asked)
{
    (void)asked;
    return 1;
}
#endif

void threads_begin(threads *t, unsigned long asked)
{
    const struct sigaction stop = {.sa_handler = ask_to_stop};
    t->count = threads_create(asked);
    asked_to_stop = 0;
    sigaction(SIGINT, &stop, &t->interrupt);
    sigaction(SIGTERM, &stop, &t->terminate);
}

bool threads_asked_to_stop(void)
{
    return asked_to_stop != 0;
}

void threads_end(const threads *t)
{
    sigaction(SIGINT, &t->interrupt, NULL);
    sigaction(SIGTERM, &t->terminate, NULL);
}
