/* measure.c -- time, allocations and instructions. Linked so that the library's own allocations come here (Makefile). */
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "bench.h"

void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *old, size_t size);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *old, size_t size);

static size_t allocations;

void *__wrap_malloc(size_t size)
{
    allocations++;
    return __real_malloc(size);
}

void *__wrap_calloc(size_t count, size_t size)
{
    allocations++;
    return __real_calloc(count, size);
}

void *__wrap_realloc(void *old, size_t size)
{
    allocations++;
    return __real_realloc(old, size);
}

size_t bench_allocations(void)
{
    return allocations;
}

double bench_now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

double bench_user_now(void)
{
    struct rusage used;
    getrusage(RUSAGE_SELF, &used);
    return (double)used.ru_utime.tv_sec + 1e-6 * (double)used.ru_utime.tv_usec;
}

static double collected(FILE *from)
{
    char line[512];
    double most = (double)NAN;
    while (fgets(line, sizeof line, from)) {
        const char *found = strstr(line, "Collected : ");
        if (found)
            most = strtod(found + strlen("Collected : "), NULL) / 1e6;
    }
    return most;
}

static void become(const char *self, const char *run, const char *path, int to)
{
    dup2(to, STDERR_FILENO);
    execlp("valgrind", "valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", "--toggle-collect=boil_run", self, run,
           path, (char *)NULL);
    _exit(1);
}

double bench_instructions(const char *self, const char *run, const char *path)
{
    int ends[2];
    fflush(NULL);
    if (pipe(ends) != 0)
        return (double)NAN;
    pid_t child = fork();
    if (child == 0)
        become(self, run, path, ends[1]);
    close(ends[1]);
    FILE *from = fdopen(ends[0], "r");
    double found = from ? collected(from) : (double)NAN;
    if (from)
        fclose(from);
    if (child > 0)
        waitpid(child, NULL, 0);
    return found;
}
