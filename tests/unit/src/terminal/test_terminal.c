/* The terminal as a screen, at a pseudo-terminal of the test's own: what is typed at its other end are the keys.
   Escape sequences of keys and the marks of a paste: ECMA-48 and the terminals' common ones, from memory. */
#define _XOPEN_SOURCE 700 /* pseudo-terminals are in XSI, beyond base POSIX */
#include "support/close.h"

#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include "terminal/terminal.h"

/* Its other end, and the streams of the test meanwhile. */
typedef struct {
    int keys, input, output;
} away;

static away to_terminal(void)
{
    away a = {posix_openpt(O_RDWR | O_NOCTTY), dup(STDIN_FILENO), dup(STDOUT_FILENO)};
    assert_true(a.keys >= 0 && grantpt(a.keys) == 0 && unlockpt(a.keys) == 0);
    int end = open(ptsname(a.keys), O_RDWR | O_NOCTTY);
    assert_true(end >= 0);
    fflush(stdout);
    assert_true(dup2(end, STDIN_FILENO) >= 0 && dup2(end, STDOUT_FILENO) >= 0);
    close(end);
    return a;
}

/* From here on what fails is seen again. */
static void back(away *a)
{
    fflush(stdout);
    dup2(a->input, STDIN_FILENO);
    dup2(a->output, STDOUT_FILENO);
    close(a->input);
    close(a->output);
    if (a->keys >= 0)
        close(a->keys);
}

static bool type(const away *a, const char *keys)
{
    return write(a->keys, keys, strlen(keys)) == (ssize_t)strlen(keys);
}

/* What the program wrote there, so far. */
static void seen(const away *a, char text[], size_t size)
{
    ssize_t n = read(a->keys, text, size - 1);
    text[n > 0 ? n : 0] = '\0';
}

static void it_is_there_by_its_name_and_both_streams(void **state)
{
    bool none, empty, dumb, named, piped_out, piped_in;
    int nothing = open("/dev/null", O_RDWR);
    (void)state;
    away a = to_terminal();
    int end = dup(STDIN_FILENO);
    unsetenv("TERM");
    none = terminal_is_there();
    setenv("TERM", "", 1);
    empty = terminal_is_there();
    setenv("TERM", "dumb", 1);
    dumb = terminal_is_there();
    setenv("TERM", "vt100", 1);
    named = terminal_is_there();
    dup2(nothing, STDOUT_FILENO);
    piped_out = terminal_is_there();
    dup2(end, STDOUT_FILENO);
    dup2(nothing, STDIN_FILENO);
    piped_in = terminal_is_there();
    back(&a);
    close(end);
    close(nothing);
    assert_true(named);
    assert_false(none || empty || dumb || piped_out || piped_in);
}

/* No echo and no lines meanwhile; then all as before, with the signals, the cursor and the first screen. */
static void it_is_given_back_as_it_was(void **state)
{
    struct termios before, meanwhile, after;
    sigset_t mask_before, mask_after;
    char text[400];
    terminal t;
    (void)state;
    away a = to_terminal();
    tcgetattr(STDIN_FILENO, &before);
    sigprocmask(SIG_BLOCK, NULL, &mask_before);
    bool entered = terminal_enter(&t);
    tcgetattr(STDIN_FILENO, &meanwhile);
    terminal_leave(&t);
    tcgetattr(STDIN_FILENO, &after);
    sigprocmask(SIG_BLOCK, NULL, &mask_after);
    seen(&a, text, sizeof text);
    back(&a);
    assert_true(entered);
    assert_int_equal(meanwhile.c_lflag & (tcflag_t)(ECHO | ICANON | ISIG), 0);
    assert_int_equal(after.c_lflag, before.c_lflag);
    assert_int_equal(after.c_iflag, before.c_iflag);
    assert_int_equal(sigismember(&mask_after, SIGTERM), sigismember(&mask_before, SIGTERM));
    assert_non_null(strstr(text, "\033[?1049h"));
    assert_non_null(strstr(strstr(text, "\033[?1049h"), "\033[?1049l"));
}

static void what_is_no_terminal_is_left_alone(void **state)
{
    terminal t;
    int before = dup(STDIN_FILENO), nothing = open("/dev/null", O_RDONLY);
    (void)state;
    dup2(nothing, STDIN_FILENO);
    bool entered = terminal_enter(&t);
    dup2(before, STDIN_FILENO);
    close(before);
    close(nothing);
    assert_false(entered);
}

/* Each byte is a key, a sequence one that means nothing; an escape by itself is one, also before another key. */
static void keys_are_told_apart(void **state)
{
    /* clang-format off */
    static const struct {
        const char *typed;
        int keys[4];
    } of[] = {
        {"", {KEY_NONE}},
        {"q", {'q', KEY_NONE}},
        {"\003", {3, KEY_NONE}},
        {"\r", {'\r', KEY_NONE}},
        {"\033", {KEY_ESCAPE, KEY_NONE}},
        {"\033x", {KEY_ESCAPE, 'x', KEY_NONE}},
        {"\033[A", {KEY_OTHER, KEY_NONE}},            /* up */
        {"\033OP", {KEY_OTHER, KEY_NONE}},            /* F1 */
        {"\033[15~w", {KEY_OTHER, 'w', KEY_NONE}},    /* F5 */
        {"\033[1;2;3;4;5;6;7;8z", {KEY_OTHER, '8', 'z', KEY_NONE}}, /* longer than any key's: no end is waited for */
    };
    /* clang-format on */
    enum { CASES = sizeof of / sizeof of[0] };
    int got[CASES][4];
    terminal t;
    (void)state;
    away a = to_terminal();
    bool entered = terminal_enter(&t);
    for (size_t i = 0; i < CASES; i++) {
        type(&a, of[i].typed);
        size_t k = 0;
        do
            got[i][k] = terminal_key(&t, k == 0 && i > 0 ? 5000 : 0, false);
        while (got[i][k] != KEY_NONE && ++k < 4);
    }
    terminal_leave(&t);
    back(&a);
    assert_true(entered);
    for (size_t i = 0; i < CASES; i++)
        for (size_t k = 0; k < 4 && (k == 0 || of[i].keys[k - 1] != KEY_NONE); k++)
            if (got[i][k] != of[i].keys[k])
                fail_msg("case %zu, key %zu: %d, not %d", i, k, got[i][k], of[i].keys[k]);
}

/* Pasted where a line is written it is typed, its lines as one; elsewhere it is not taken. Where its end never comes, silence is one. */
static void a_paste_is_no_keys(void **state)
{
    int written[5], elsewhere[3], late, silent;
    terminal t;
    (void)state;
    away a = to_terminal();
    terminal_enter(&t);
    type(&a, "\033[200~a\nb\033[201~\n");
    terminal_key(&t, 5000, true);
    for (size_t i = 0; i < 5; i++)
        written[i] = terminal_key(&t, 0, true);
    type(&a, "\033[200~q\033[201~q");
    terminal_key(&t, 5000, false);
    for (size_t i = 0; i < 3; i++)
        elsewhere[i] = terminal_key(&t, 0, false);
    type(&a, "\033[200~");
    terminal_key(&t, 5000, false);
    type(&a, "q");
    late = terminal_key(&t, 5000, false);
    for (size_t i = 0; i < 10; i++)
        terminal_key(&t, 0, false);
    type(&a, "q");
    silent = terminal_key(&t, 5000, false);
    terminal_leave(&t);
    back(&a);
    assert_true(written[0] == 'a' && written[1] == ' ' && written[2] == 'b' && written[3] == KEY_OTHER && written[4] == '\n');
    assert_true(elsewhere[0] == KEY_PASTED && elsewhere[1] == KEY_OTHER && elsewhere[2] == 'q');
    assert_int_equal(late, KEY_PASTED);
    assert_int_equal(silent, 'q');
}

static void nobody_there_is_told(void **state)
{
    terminal t;
    (void)state;
    away a = to_terminal();
    terminal_enter(&t);
    close(a.keys);
    a.keys = -1;
    int key = terminal_key(&t, 5000, false);
    terminal_leave(&t);
    back(&a);
    assert_int_equal(key, KEY_GONE);
}

/* What the terminal says of its size; the usual one where it says none. */
static void its_size_is_asked(void **state)
{
    int rows[3], columns[3];
    (void)state;
    away a = to_terminal();
    const struct winsize large = {.ws_row = 50, .ws_col = 200}, flat = {.ws_row = 50, .ws_col = 0};
    terminal_size(&rows[0], &columns[0]);
    ioctl(STDOUT_FILENO, TIOCSWINSZ, &large);
    terminal_size(&rows[1], &columns[1]);
    ioctl(STDOUT_FILENO, TIOCSWINSZ, &flat);
    terminal_size(&rows[2], &columns[2]);
    back(&a);
    assert_true(rows[0] == 24 && columns[0] == 80);
    assert_true(rows[1] == 50 && columns[1] == 200);
    assert_true(rows[2] == 24 && columns[2] == 80);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(it_is_there_by_its_name_and_both_streams),
        cmocka_unit_test(it_is_given_back_as_it_was),
        cmocka_unit_test(what_is_no_terminal_is_left_alone),
        cmocka_unit_test(keys_are_told_apart),
        cmocka_unit_test(a_paste_is_no_keys),
        cmocka_unit_test(nobody_there_is_told),
        cmocka_unit_test(its_size_is_asked),
    };
    return cmocka_run_group_tests_name("terminal", tests, NULL, NULL);
}
