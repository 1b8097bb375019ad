/* The line that says for how long an answer has been sought: on a terminal, after a second, gone in the end; nowhere else. */
#define _XOPEN_SOURCE 700

#include "support/close.h"

#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "base/patience.h"

static void wait_for(double s)
{
    struct timespec left = {(time_t)s, (long)(1e9 * (s - (double)(time_t)s))};
    while (nanosleep(&left, &left) != 0)
        continue;
}

/* What stands on standard error, a terminal or a pipe, while one waits so long. */
static void said(int to, int from, double wait_s, char *text, size_t size)
{
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        dup2(to, STDERR_FILENO);
        patience_begin();
        wait_for(wait_s);
        patience_end();
        patience_end();
        _exit(0);
    }
    int status = 1;
    assert_true(waitpid(child, &status, 0) == child && status == 0);
    assert_int_equal(fcntl(from, F_SETFL, O_NONBLOCK), 0);
    size_t length = 0; /* a terminal may hand it over in parts */
    for (ssize_t got; (got = read(from, text + length, size - 1 - length)) > 0;)
        length += (size_t)got;
    text[length] = '\0';
}

static void a_terminal_is_told_after_a_second(void **state)
{
    (void)state;
    char text[200];
    int terminal = posix_openpt(O_RDWR | O_NOCTTY);
    assert_true(terminal >= 0 && grantpt(terminal) == 0 && unlockpt(terminal) == 0);
    int seen = open(ptsname(terminal), O_RDWR | O_NOCTTY);
    assert_true(seen >= 0);
    said(seen, terminal, 1.3, text, sizeof text);
    assert_string_equal(text, "\r searching,   1 s \r                   \r");
    said(seen, terminal, 0.1, text, sizeof text);
    assert_string_equal(text, "");
    close(seen);
    close(terminal);
}

static void a_file_is_not(void **state)
{
    (void)state;
    char text[200];
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    said(ends[1], ends[0], 1.1, text, sizeof text);
    assert_string_equal(text, "");
    close(ends[0]);
    close(ends[1]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_terminal_is_told_after_a_second),
        cmocka_unit_test(a_file_is_not),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
