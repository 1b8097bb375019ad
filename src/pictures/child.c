#include "pictures/child.h"

#include <errno.h>
#include <signal.h>
#include <stdbool.h>
#include <sys/wait.h>
#include <time.h>

#include "base/clock.h"
#include "base/signals.h"

static int collect(pid_t child, int options, pid_t *which)
{
    int ended = 0;
    do
        *which = waitpid(child, &ended, options);
    while (*which < 0 && errno == EINTR);
    return ended;
}

static child_end end_all(pid_t child, child_end why)
{
    pid_t which;
    kill(-child, SIGKILL);
    collect(child, 0, &which);
    return why;
}

/* Whether a signal came that ends this program: it is left waiting. Looks for it a short while. */
static bool interrupted(void)
{
    const struct timespec a_while = {.tv_nsec = 10 * 1000 * 1000};
    sigset_t ending;
    signals_ending(&ending);
    int came = sigtimedwait(&ending, NULL, &a_while);
    return came > 0 && raise(came) == 0;
}

child_end child_wait(pid_t child, double limit_s, int *status)
{
    double begun_s = clock_now_s();
    for (;;) {
        pid_t which;
        int ended = collect(child, WNOHANG, &which);
        if (which != 0) {
            *status = WEXITSTATUS(ended);
            return which == child && WIFEXITED(ended) ? CHILD_EXITED : CHILD_KILLED;
        }
        if (interrupted())
            return end_all(child, CHILD_INTERRUPTED);
        if (clock_now_s() - begun_s > limit_s)
            return end_all(child, CHILD_TOO_LONG);
    }
}
