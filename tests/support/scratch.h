/* support/scratch.h -- a file of a test's own, begun before it and taken away after it. */
#ifndef SUPPORT_SCRATCH_H
#define SUPPORT_SCRATCH_H

#include <stdlib.h>
#include <unistd.h>

static char scratch_path[] = "/tmp/boilback-test-XXXXXX";

static inline int scratch_begin(void **state)
{
    (void)state;
    int file = mkstemp(scratch_path);
    return file < 0 ? -1 : close(file);
}

static inline int scratch_end(void **state)
{
    (void)state;
    return unlink(scratch_path);
}

#endif
