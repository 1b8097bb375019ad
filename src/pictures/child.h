/* pictures/child.h -- waiting for a program that was started, and not for ever. */
#ifndef PICTURES_CHILD_H
#define PICTURES_CHILD_H

#include <sys/types.h>

typedef enum {
    CHILD_EXITED,
    CHILD_KILLED,     /* by a signal that was not ours */
    CHILD_TOO_LONG,   /* it took longer than the limit, and was ended with all that it started */
    CHILD_INTERRUPTED /* a signal that ends this program came (base/signals.h): it ended the child, and waits again */
} child_end;

/* Waits for a child that leads a group of processes. Signals that end the program are held back by the caller. `status`: what it
   exited with. */
child_end child_wait(pid_t child, double limit_s, int *status);

#endif
