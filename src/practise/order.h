/* practise/order.h -- a line that is typed while practising: an act, as a schedule writes it, with or without its time; or a word to
   whoever keeps the clock. */
#ifndef PRACTISE_ORDER_H
#define PRACTISE_ORDER_H

#include "boilback.h"
#include "practise/journal.h"

typedef enum {
    ORDER_NOTHING, /* an empty line, or a comment */
    ORDER_ACT,
    ORDER_WAIT,  /* the clock goes on for a time, or to a moment */
    ORDER_NEXT,  /* until something happens */
    ORDER_STATE, /* how the bath stands */
    ORDER_BACK,  /* the last act is undone, and the clock put back to before it */
    ORDER_ACTS,  /* what was done so far */
    ORDER_HELP,
    ORDER_END, /* the rest of the shift goes by */
    ORDER_QUIT /* it ends now */
} order_kind;

typedef struct {
    order_kind kind;
    double at_s;        /* of a wait or an act, from the start; NaN: now */
    boil_wait wait;     /* of an act; it follows nothing: `at_s` has that */
    bool planned;       /* "every 30 min from 0:30 ...": again and again, and not now; all of it is `doing` */
    cursor doing;       /* of an act: what is to be done */
    TEXT_OF(160) asked; /* "when boiling for 1 min"; empty: it waits for nothing */
} order;

/* How the words are written and what they do, for help; NULL beyond the last. */
typedef struct {
    const char *form, *meaning;
} order_word;
const order_word *order_word_at(size_t index);

/* Where the clock stands, and when the act before was done (NaN: there is none). */
typedef struct {
    moment_frame frame;
    double now_s, last_s;
} order_clock;
order_clock order_clock_of(const journal *j, double now_s);

/* The act, to be done now; its words are the order's and `doing`. */
journal_act order_act(order *o, char *doing, const boil_by_hand *hand);

/* False, with a message, on a mistake. */
bool order_read(cursor *c, const order_clock *k, order *o);

#endif
