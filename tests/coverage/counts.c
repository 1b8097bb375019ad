/* counts.c -- linked into programs that count their branches. How long files may be in a test is not for the counts, which are written
   after all that ends a program by itself: cut off they would be lost, and the program would complain of it. Nor are they lost where
   it ends itself by a signal, as one does that was asked to stop, or a child of it becomes another program, or cannot. */
#include <signal.h>
#include <stdarg.h>
#include <sys/resource.h>
#include <unistd.h>

void __gcov_dump(void);
void __gcov_reset(void);
int __real_raise(int signal_number);
int __wrap_raise(int signal_number);
int __wrap_execlp(const char *file, const char *word, ...);
_Noreturn void __real__exit(int status);
_Noreturn void __wrap__exit(int status);

__attribute__((destructor)) static void let_counts_be_whole(void)
{
    struct rlimit most;
    if (getrlimit(RLIMIT_FSIZE, &most) == 0)
        setrlimit(RLIMIT_FSIZE, &(struct rlimit){most.rlim_max, most.rlim_max});
}

/* Where it only stood still, it counts anew. */
int __wrap_raise(int signal_number)
{
    __gcov_dump();
    const int outcome = __real_raise(signal_number);
    __gcov_reset();
    return outcome;
}

/* As many words as the program ever gives. */
int __wrap_execlp(const char *file, const char *word, ...)
{
    enum { MOST = 16 };
    char *words[MOST + 1] = {(char *)word};
    va_list more;
    va_start(more, word);
    for (int i = 1; i < MOST && words[i - 1] != NULL; i++)
        words[i] = va_arg(more, char *);
    va_end(more);
    __gcov_dump();
    execvp(file, words);
    __gcov_reset();
    return -1;
}

_Noreturn void __wrap__exit(int status)
{
    __gcov_dump();
    __real__exit(status);
}
