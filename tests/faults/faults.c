/* faults.c -- put before a program (LD_PRELOAD) it makes one thing go wrong, once, or a signal come at that very moment. Told by
   the environment, and forgotten before the program starts another:
       FAULT_MEMORY=n   the n-th allocation is refused
       FAULT_CALL=n     the n-th call of those that make, settle and name files and start programs fails
       FAULT_SIGNAL=s   instead, signal s is sent then
       FAULT_BYTES=n    no file may be longer than n bytes
       FAULT_COUNT=file how many there were of both goes there in the end
   Its own end is not the program's: where a build counts the branches it takes (make coverage), they are written then, whole. */
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
void __gcov_dump(void) __attribute__((weak)); /* there in a build that counts its branches */

static atomic_long memory, calls;
static long fails_memory, fails_call;
static int signal_number;
static char count_to[4096];
static bool ready, cuts_off;
static struct rlimit cut, whole;

static long number(const char *name)
{
    const char *text = getenv(name);
    return text != NULL ? atol(text) : 0;
}

static void limit_files(const struct rlimit *to)
{
    if (cuts_off)
        setrlimit(RLIMIT_FSIZE, to);
}

__attribute__((constructor)) static void begin(void)
{
    const char *to = getenv("FAULT_COUNT");
    fails_memory = number("FAULT_MEMORY");
    fails_call = number("FAULT_CALL");
    signal_number = (int)number("FAULT_SIGNAL");
    if (to != NULL)
        snprintf(count_to, sizeof count_to, "%s", to);
    cuts_off = getenv("FAULT_BYTES") != NULL && getrlimit(RLIMIT_FSIZE, &whole) == 0;
    cut = (struct rlimit){(rlim_t)number("FAULT_BYTES"), whole.rlim_max};
    limit_files(&cut);
    unsetenv("LD_PRELOAD");
    ready = true;
}

static void end(void)
{
    ready = false;
    limit_files(&whole);
    FILE *to = count_to[0] != '\0' ? fopen(count_to, "w") : NULL;
    if (to != NULL) {
        fprintf(to, "%ld %ld\n", (long)memory, (long)calls);
        fclose(to);
    }
    if (__gcov_dump != NULL)
        __gcov_dump();
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
STANDS_FOR(char *, realpath, (const char *path, char *into), (path, into), NULL)

/* A child has no faults of its own. Before it becomes another program it writes what it counted, which is not to be cut off. */
pid_t fork(void)
{
    pid_t (*real)(void);
    *(void **)&real = dlsym(RTLD_NEXT, "fork");
    const pid_t child = fails(&calls, fails_call, EIO) ? -1 : real();
    if (child == 0) {
        ready = false;
        count_to[0] = '\0';
        if (__gcov_dump != NULL)
            limit_files(&whole);
    }
    return child;
}

int execvp(const char *file, char *const words[])
{
    int (*real)(const char *, char *const[]);
    *(void **)&real = dlsym(RTLD_NEXT, "execvp");
    limit_files(&cut);
    return real(file, words);
}

void _exit(int status)
{
    void (*real)(int);
    *(void **)&real = dlsym(RTLD_NEXT, "_exit");
    end();
    real(status);
    abort();
}

static int (*program)(int, char **, char **);

static int whole_program(int count, char **words, char **environment)
{
    const int status = program(count, words, environment);
    end();
    return status;
}

/* What begins `main`: in its place one that knows when it ended, before anything else of the process does. */
int __libc_start_main(int (*main)(int, char **, char **), int count, char **words, void (*begin_it)(void), void (*end_it)(void),
                      void (*end_loader)(void), void *stack)
{
    int (*real)(int (*)(int, char **, char **), int, char **, void (*)(void), void (*)(void), void (*)(void), void *);
    *(void **)&real = dlsym(RTLD_NEXT, "__libc_start_main");
    program = main;
    return real(whole_program, count, words, begin_it, end_it, end_loader, stack);
}
