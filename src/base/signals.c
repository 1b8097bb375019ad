/* SIGXFSZ is in XSI, beyond base POSIX */
#define _XOPEN_SOURCE 700
#include "base/signals.h"

#include <stddef.h>

void signals_ending(sigset_t *set)
{
    static const int ending[] = {SIGHUP, SIGINT, SIGTERM};
    struct sigaction now;
    sigemptyset(set);
    for (size_t i = 0; i < sizeof ending / sizeof ending[0]; i++)
        if (sigaction(ending[i], NULL, &now) == 0 && now.sa_handler != SIG_IGN)
            sigaddset(set, ending[i]);
}

void signals_hold(sigset_t *before)
{
    sigset_t ending;
    signals_ending(&ending);
    pthread_sigmask(SIG_BLOCK, &ending, before);
}

void signals_release(const sigset_t *before)
{
    pthread_sigmask(SIG_SETMASK, before, NULL);
}

void signals_begin(void)
{
    signal(SIGXFSZ, SIG_IGN);
}
