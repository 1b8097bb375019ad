/* base/signals.h -- signals that end the program wait while a file stands beside its place: what is unfinished goes first. */
#ifndef BASE_SIGNALS_H
#define BASE_SIGNALS_H

#include <signal.h>

/* SIGHUP, SIGINT and SIGTERM, but for those that are ignored: the caller asked for that, as nohup does. */
void signals_ending(sigset_t *set);

/* Keeps them waiting in this thread, and in those that it begins from now on; what was kept waiting before goes to `before`. */
void signals_hold(sigset_t *before);

/* As it was before: what came in between ends the program now. */
void signals_release(const sigset_t *before);

/* A write beyond the limit of a file's size fails like any other, and does not end the program. */
void signals_begin(void);

#endif
