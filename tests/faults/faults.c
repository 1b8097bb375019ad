/* faults.c -- put before a program (LD_PRELOAD) it makes one thing go wrong, once, or a signal come at that very moment. Told by
   the environment, and forgotten before the program starts another:
       FAULT_MEMORY=n   the n-th allocation is refused
       FAULT_CALL=n     the n-th call of those that make, settle and name files and start programs fails
       FAULT_SIGNAL=s   instead, signal s is sent then
       FAULT_BYTES=n    no file may be longer than n bytes
       FAULT_COUNT=file how many there were of both goes there in the end */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *old, size_t size);

static atomic_long memory, calls;
static long fails_memory, fails_call;
static int signal_number;
static char count_to[4096];
static bool ready;

static long number(const char *name)
{
    const char *text = getenv(name);
    return text != NULL ? atol(text) : 0;
}

__attribute__((constructor)) static void begin(void)
{
    const char *to = getenv("FAULT_COUNT");
    fails_memory = number("FAULT_MEMORY");
    fails_call = number("FAULT_CALL");
    signal_number = (int)number("FAULT_SIGNAL");
    if (to != NULL)
        snprintf(count_to, sizeof count_to, "%s", to);
    if (getenv("FAULT_BYTES") != NULL) {
        const rlim_t most = (rlim_t)number("FAULT_BYTES");
        setrlimit(RLIMIT_FSIZE, &(struct rlimit){most, most});
    }
    unsetenv("LD_PRELOAD");
    ready = true;
}

__attribute__((destructor)) static void end(void)
{
    ready = false;
    FILE *to = count_to[0] != '\0' ? fopen(count_to, "w") : NULL;
    if (to != NULL) {
        fprintf(to, "%ld %ld\n", (long)memory, (long)calls);
        fclose(to);
    }
}

/* Whether this one, counted from 1, is to fail. */
static bool fails(atomic_long *counter, long which, int why)
{
    if (!ready || atomic_fetch_add(counter, 1) + 1 != which)
        return false;
    if (signal_number > 0) {
        kill(getpid(), signal_number);
        return false;
    }
    errno = why;
    return true;
}

void *malloc(size_t size)
{
    return fails(&memory, fails_memory, ENOMEM) ? NULL : __libc_malloc(size);
}

void *calloc(size_t count, size_t size)
{
    return fails(&memory, fails_memory, ENOMEM) ? NULL : __libc_calloc(count, size);
}

void *realloc(void *old, size_t size)
{
    return fails(&memory, fails_memory, ENOMEM) ? NULL : __libc_realloc(old, size);
}

#define STANDS_FOR(type, name, parameters, arguments, failed)                                                                  \
    type name parameters;                                                                                                      \
    type name parameters                                                                                                       \
    {                                                                                                                          \
        type(*real) parameters;                                                                                                \
        *(void **)&real = dlsym(RTLD_NEXT, #name);                                                                             \
        return fails(&calls, fails_call, EIO) ? (failed) : real arguments;                                                     \
    }

STANDS_FOR(int, mkstemp, (char *path), (path), -1)
STANDS_FOR(char *, mkdtemp, (char *path), (path), NULL)
STANDS_FOR(int, fchmod, (int file, mode_t mode), (file, mode), -1)
STANDS_FOR(FILE *, fdopen, (int file, const char *how), (file, how), NULL)
STANDS_FOR(int, fsync, (int file), (file), -1)
STANDS_FOR(int, rename, (const char *from, const char *to), (from, to), -1)
STANDS_FOR(pid_t, fork, (void), (), -1)
STANDS_FOR(char *, realpath, (const char *path, char *into), (path, into), NULL)
