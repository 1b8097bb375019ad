#include "base/patience.h"

#include <errno.h>
#include <signal.h>
#include <stdbool.h>
#include <stddef.h>
#include <unistd.h>

static volatile sig_atomic_t waited_s; /* by the clock's signal */
static volatile sig_atomic_t is_waiting;

static void say(const char *line, size_t length)
{
    if (write(STDERR_FILENO, line, length) < 0)
        return; /* nobody looks any more */
}

/* Of what may be called in a signal's handler only. */
static void tick(int signal_number)
{
    int before = errno;
    char line[] = "\r searching,     s ";
    (void)signal_number;
    if (is_waiting && waited_s < 9999) {
        waited_s = waited_s + 1;
        for (int left = waited_s, at = 15; left > 0; left /= 10, at--)
            line[at] = (char)('0' + left % 10);
        say(line, sizeof line - 1);
        alarm(1);
    }
    errno = before;
}

void patience_begin(void)
{
    struct sigaction clock = {.sa_handler = tick, .sa_flags = SA_RESTART};
    if (isatty(STDERR_FILENO) != 1)
        return;
    sigemptyset(&clock.sa_mask);
    waited_s = 0;
    is_waiting = 1;
    if (sigaction(SIGALRM, &clock, NULL) == 0)
        alarm(1);
}

void patience_end(void)
{
    static const char gone[] = "\r                   \r";
    if (!is_waiting)
        return;
    is_waiting = 0;
    alarm(0);
    if (waited_s > 0)
        say(gone, sizeof gone - 1);
}
