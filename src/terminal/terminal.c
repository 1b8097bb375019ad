#include "terminal/terminal.h"

#include <errno.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <time.h>
#include <unistd.h>

#include "base/signals.h"

bool terminal_is_there(void)
{
    const char *name = getenv("TERM");
    bool named = name != NULL && name[0] != '\0' && strcmp(name, "dumb") != 0;
    return named && isatty(STDIN_FILENO) == 1 && isatty(STDOUT_FILENO) == 1;
}

/* The other screen, no cursor, marks around what is pasted; and all of it back. */
static void screen_on(void)
{
    fputs("\033[?1049h\033[?25l\033[?2004h\033[0m\033[2J", stdout);
    fflush(stdout);
}

static void screen_off(void)
{
    fputs("\033[0m\033[?2004l\033[?25h\033[?1049l", stdout);
    fflush(stdout);
}

/* No echo, no lines, and keys that would raise signals are keys. */
static bool make_raw(const terminal *t)
{
    struct termios raw = t->before;
    raw.c_lflag &= ~(tcflag_t)(ECHO | ICANON | ISIG | IEXTEN);
    raw.c_iflag &= ~(tcflag_t)(IXON | ICRNL | INLCR | ISTRIP);
    raw.c_cc[VMIN] = 1;
    raw.c_cc[VTIME] = 0;
    return tcsetattr(STDIN_FILENO, TCSAFLUSH, &raw) == 0;
}

bool terminal_enter(terminal *t)
{
    *t = (terminal){.count = 0};
    if (tcgetattr(STDIN_FILENO, &t->before) != 0)
        return false;
    signals_ending(&t->held);
    sigaddset(&t->held, SIGTSTP);
    sigaddset(&t->held, SIGCONT);
    sigprocmask(SIG_BLOCK, &t->held, &t->before_mask);
    if (!make_raw(t)) {
        sigprocmask(SIG_SETMASK, &t->before_mask, NULL);
        return false;
    }
    screen_on();
    return true;
}

void terminal_leave(terminal *t)
{
    screen_off();
    tcsetattr(STDIN_FILENO, TCSAFLUSH, &t->before);
    sigprocmask(SIG_SETMASK, &t->before_mask, NULL);
}

int terminal_signal(terminal *t)
{
    const struct timespec now = {0, 0};
    int got = sigtimedwait(&t->held, NULL, &now);
    return got > 0 ? got : 0;
}

void terminal_stop(terminal *t)
{
    sigset_t none = t->held;
    screen_off();
    tcsetattr(STDIN_FILENO, TCSAFLUSH, &t->before);
    sigprocmask(SIG_UNBLOCK, &none, NULL);
    raise(SIGTSTP);
    sigprocmask(SIG_BLOCK, &t->held, NULL);
    make_raw(t);
    screen_on();
}

/* Whether there is a byte to be had. */
static bool fill(terminal *t, int wait_ms, bool *gone)
{
    struct pollfd keys = {STDIN_FILENO, POLLIN, 0};
    *gone = false;
    if (t->at < t->count)
        return true;
    if (poll(&keys, 1, wait_ms) <= 0)
        return false;
    ssize_t got = read(STDIN_FILENO, t->bytes, sizeof t->bytes);
    t->at = 0;
    t->count = got > 0 ? (size_t)got : 0;
    *gone = got == 0 || (got < 0 && errno != EINTR && errno != EAGAIN);
    return got > 0;
}

/* How long an escape waits for what belongs to it; and one that has begun, which may come in two pieces, for its rest. */
#define ESCAPE_MS 20
#define SEQUENCE_MS 500
#define SILENCE 10 /* looks in vain, after which nobody pastes any more */

/* What follows an escape at once, begun by "[" or "O", belongs to it: "[A", "OP", "[200~". Of these the last begins a paste. */
static int sequence(terminal *t)
{
    char text[16] = "";
    size_t length = 0;
    bool gone;
    while (length < sizeof text - 1 && fill(t, length == 0 ? ESCAPE_MS : SEQUENCE_MS, &gone)) {
        unsigned char byte = t->bytes[t->at];
        if (length == 0 && byte != '[' && byte != 'O')
            return KEY_ESCAPE;
        t->at++;
        text[length++] = (char)byte;
        if (length > 1 && byte >= '@')
            break;
    }
    if (length == 0)
        return KEY_ESCAPE;
    if (strcmp(text, "[200~") == 0)
        t->pasting = true;
    else if (strcmp(text, "[201~") == 0)
        t->pasting = false;
    return KEY_OTHER;
}

int terminal_key(terminal *t, int wait_ms, bool writing)
{
    bool gone;
    if (!fill(t, wait_ms, &gone)) {
        t->pasting = t->pasting && ++t->silent < SILENCE;
        return gone ? KEY_GONE : KEY_NONE;
    }
    t->silent = 0;
    unsigned char byte = t->bytes[t->at++];
    if (byte == KEY_ESCAPE)
        return sequence(t);
    bool ends_line = byte == '\r' || byte == '\n';
    if (t->pasting && !writing)
        return KEY_PASTED;
    return t->pasting && ends_line ? ' ' : byte;
}

void terminal_size(int *rows, int *columns)
{
    struct winsize size;
    bool told = ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_row > 0 && size.ws_col > 0;
    *rows = told ? size.ws_row : 24;
    *columns = told ? size.ws_col : 80;
}
