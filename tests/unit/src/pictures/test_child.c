/* Waiting for a program, and not for ever: by exit statuses of a shell [POSIX, 2.8.2] and by the clock. */
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <setjmp.h>
#include <cmocka.h>
#include <errno.h>
#include <signal.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#include "base/signals.h"
#include "pictures/child.h"

static pid_t begun(const char *words)
{
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        setpgid(0, 0);
        execl("/bin/sh", "sh", "-c", words, (char *)NULL);
        _exit(127);
    }
    setpgid(child, child);
    return child;
}

static double now_s(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void what_it_exits_with_is_told(void **state)
{
    (void)state;
    int status = -1;
    assert_int_equal(child_wait(begun("exit 0"), 60, &status), CHILD_EXITED);
    assert_int_equal(status, 0);
    assert_int_equal(child_wait(begun("sleep 0.1; exit 7"), 60, &status), CHILD_EXITED);
    assert_int_equal(status, 7);
    assert_int_equal(child_wait(begun("kill -KILL $$"), 60, &status), CHILD_KILLED);
}

/* With all that it started, and not much later than the limit. */
static void one_that_hangs_is_ended(void **state)
{
    (void)state;
    int status;
    double begun_s = now_s();
    pid_t child = begun("sleep 1000 & sleep 1000");
    assert_int_equal(child_wait(child, 0.3, &status), CHILD_TOO_LONG);
    assert_true(now_s() - begun_s >= 0.3 && now_s() - begun_s < 30);
    for (int i = 0; i < 500 && kill(-child, 0) == 0; i++) /* who has no parent any more is collected soon, by another */
        nanosleep(&(struct timespec){.tv_nsec = 10 * 1000 * 1000}, NULL);
    assert_true(kill(-child, 0) != 0 && errno == ESRCH);
}

/* The signal ends the child, and then waits for whoever lets it through. */
static void a_signal_is_kept_for_later(void **state)
{
    (void)state;
    int status;
    sigset_t before, waiting;
    signals_hold(&before);
    pid_t child = begun("sleep 1000");
    raise(SIGTERM);
    assert_int_equal(child_wait(child, 60, &status), CHILD_INTERRUPTED);
    assert_true(kill(child, 0) != 0 && errno == ESRCH);
    sigpending(&waiting);
    assert_true(sigismember(&waiting, SIGTERM));
    struct sigaction ignore = {.sa_handler = SIG_IGN}, old;
    sigaction(SIGTERM, &ignore, &old); /* it goes away with that */
    signals_release(&before);
    sigaction(SIGTERM, &old, NULL);
}

/* As nohup has it: what is ignored ends nothing. */
static void ignored_signals_do_not_end_it(void **state)
{
    (void)state;
    struct sigaction ignore = {.sa_handler = SIG_IGN}, old;
    int status = -1;
    sigset_t before;
    sigaction(SIGHUP, &ignore, &old);
    signals_hold(&before);
    raise(SIGHUP);
    assert_int_equal(child_wait(begun("exit 3"), 60, &status), CHILD_EXITED);
    assert_int_equal(status, 3);
    signals_release(&before);
    sigaction(SIGHUP, &old, NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_it_exits_with_is_told),
        cmocka_unit_test(one_that_hangs_is_ended),
        cmocka_unit_test(a_signal_is_kept_for_later),
        cmocka_unit_test(ignored_signals_do_not_end_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
