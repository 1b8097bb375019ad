/* terminal/terminal.h -- the terminal as a screen with single keys, and given back as it was, however it is left. Signals are waited for
   between two looks at the keys and never interrupt anything, so nothing of it is global. */
#ifndef TERMINAL_TERMINAL_H
#define TERMINAL_TERMINAL_H

#include <signal.h>
#include <stdbool.h>
#include <stddef.h>
#include <termios.h>

typedef struct {
    struct termios before;
    sigset_t held, before_mask;
    unsigned char bytes[512]; /* typed and not yet handed on */
    size_t at, count;
    bool pasting; /* between the marks of a paste */
    int silent;   /* looks in vain since the last byte */
} terminal;

/* Keys beyond the characters. */
enum {
    KEY_NONE = -1, /* nothing typed so long */
    KEY_GONE = -2, /* nobody is there any more */
    KEY_ESCAPE = 27,
    KEY_OTHER = 1000, /* one that means nothing here */
    KEY_PASTED        /* something was pasted where nothing is written */
};

/* Whether there is a terminal to make a screen of: keys and screen are its, and its name is not "dumb". */
bool terminal_is_there(void);

bool terminal_enter(terminal *t); /* false: it cannot be made a screen, and is as it was */
void terminal_leave(terminal *t);

/* The next key, waiting for at most so many ms. `writing`: what is pasted counts as typed, but its lines
   are one, so that nothing is done before somebody has read it. */
int terminal_key(terminal *t, int wait_ms, bool writing);

int terminal_signal(terminal *t); /* that came in since: one that ends, stops or goes on; 0: none */
void terminal_stop(terminal *t);  /* gives the terminal back and stops, until somebody goes on */

void terminal_size(int *rows, int *columns); /* 24 by 80 where it does not say */

#endif
