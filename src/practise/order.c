#include "practise/order.h"

#include <math.h>
#include <string.h>

#include "actions/action.h"
#include "acts/wait.h"
#include "base/words.h"
#include "habits/habits.h"
#include "schedule/waiting.h"

/* clang-format off */
static const struct {
    const char *word;
    order_kind kind;
    order_word shown;
} words[] = {
    {"wait",  ORDER_WAIT,  {"wait TIME",  "the clock goes on: wait 2 min, wait until 0:30"}},
    {"next",  ORDER_NEXT,  {"next",       "it goes on until something happens"}},
    {"state", ORDER_STATE, {"state",      "how the bath stands"}},
    {"acts",  ORDER_ACTS,  {"acts",       "what was done so far"}},
    {"back",  ORDER_BACK,  {"back",       "the last act is undone: once more from just before it"}},
    {"help",  ORDER_HELP,  {"help",       "these words"}},
    {"end",   ORDER_END,   {"end",        "the rest of the shift goes by, then what came of it"}},
    {"quit",  ORDER_QUIT,  {"quit",       "it ends here"}},
};
/* clang-format on */

#define WORDS (sizeof words / sizeof words[0])

/* What people type for one of those; help does not list them. */
static const struct {
    const char *word;
    order_kind kind;
} as_well[] = {{"?", ORDER_HELP}, {"q", ORDER_QUIT}, {"exit", ORDER_QUIT}};

const order_word *order_word_at(size_t index)
{
    return index < WORDS ? &words[index].shown : NULL;
}

journal_act order_act(order *o, char *doing, const boil_by_hand *hand)
{
    const boil_wait *w = &o->wait;
    const boil_wait_bath so_from_the_start = {.boiling = w->state != BOIL_WAIT_QUIET};
    return (journal_act){.doing = doing,
                         .planned = o->planned,
                         .asked = w->state != BOIL_WAIT_NONE ? o->asked.text : NULL,
                         .quiet = w->state == BOIL_WAIT_QUIET,
                         .for_s = boil_wait_due(w, 0, hand, &so_from_the_start)};
}

order_clock order_clock_of(const journal *j, double now_s)
{
    return (order_clock){j->frame, now_s, j->count > 0 ? j->acts[j->count - 1].time_s : (double)NAN};
}

static bool has_passed(const cursor *c, const char *at, const order_clock *k, double s)
{
    if (s >= floor(k->now_s))
        return false;
    return !cursor_error(c, at, "%s has passed, it is %s: leave the time away to do it now, or go 'back' first",
                         moment_words(&k->frame, s).text, moment_words(&k->frame, floor(k->now_s)).text);
}

static bool read_moment(cursor *c, const order_clock *k, const char *what, double *s)
{
    quantity q;
    cursor_done(c);
    const char *start = c->at;
    if (!moment_read(&k->frame, c, what, &q) || !moment_within(&k->frame, c, q.text, q.si) || has_passed(c, start, k, q.si))
        return false;
    *s = fmax(q.si, k->now_s);
    return true;
}

static bool read_wait(cursor *c, const order_clock *k, order *o)
{
    static const bounds within = {"s", 0, SCHEDULE_LATEST_S};
    quantity q;
    if (cursor_take(c, "until"))
        return read_moment(c, k, "wait until", &o->at_s) && cursor_expect_end(c);
    if (!quantity_when(c, "wait", &q) || !quantity_within(c, "wait", &q, &within))
        return false;
    o->at_s = k->now_s + q.si;
    return cursor_expect_end(c);
}

/* "+2 min", after the act before. */
static bool read_plus(cursor *c, const order_clock *k, order *o)
{
    cursor_done(c);
    const char *start = c->at;
    if (!waiting_plus_read(c, &o->wait))
        return false;
    if (!o->wait.follows)
        return true;
    if (isnan(k->last_s))
        return cursor_error(c, start, "no act was done before this");
    o->at_s = k->last_s + o->wait.delay_s;
    o->wait.follows = false;
    o->wait.delay_s = 0;
    return moment_within(&k->frame, c, start, o->at_s) && !has_passed(c, start, k, o->at_s);
}

/* "1 min after the boil is back": passed, if that is what comes next. */
static bool take_back(cursor *c, order *o)
{
    quantity q;
    cursor ahead = *c;
    ahead.messages = NULL;
    if (!quantity_when(&ahead, "time", &q) || !cursor_take(&ahead, "after the boil is back"))
        return false;
    o->wait = (boil_wait){.state = BOIL_WAIT_BACK, .for_s = q.si};
    c->at = ahead.at;
    return true;
}

/* When it is to be done: at a time, some time after the act before, or when the bath is so. */
static bool read_when(cursor *c, const order_clock *k, order *o)
{
    if (!read_plus(c, k, o))
        return false;
    bool timed = isnan(o->at_s) && !cursor_done(c) && *c->at >= '0' && *c->at <= '9';
    const char *asked = c->at;
    if (timed && !take_back(c, o) && !read_moment(c, k, "time of the act", &o->at_s))
        return false;
    if (o->wait.state == BOIL_WAIT_NONE) {
        cursor_done(c);
        asked = c->at;
        if (!waiting_state_read(c, &o->wait))
            return false;
    }
    const char *end = words_trim(asked, c->at);
    snprintf(o->asked.text, sizeof o->asked.text, "%.*s", (int)(end - asked), asked);
    return true;
}

/* A word to whoever keeps the clock, mistyped: nearer to one of those than to any act. */
static bool is_mistyped(const cursor *c)
{
    cursor ahead = *c;
    size_t length = cursor_token(&ahead);
    const action_type *type;
    words_nearest n = words_near(ahead.at, length);
    for (size_t i = 0; i < WORDS; i++)
        words_consider(&n, words[i].word);
    const char *nearest = n.word;
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        words_consider(&n, type->keyword);
    if (nearest == NULL || n.word != nearest)
        return false;
    return !cursor_error(c, ahead.at, "unknown word '%s'%s", words_quoted(ahead.at, length).text, words_suggestion(&n).text);
}

/* Again and again from a moment on that has not passed; the rest is for the reader of schedules. */
static bool read_every(cursor *c, cursor behind, const order_clock *k, order *o)
{
    quantity q;
    double from_s;
    o->planned = true;
    o->doing = *c;
    if (!quantity_when(&behind, "every", &q))
        return false;
    cursor_done(&behind);
    if (!cursor_take(&behind, "from"))
        return cursor_error(c, behind.at, "say from when on, as it is %s: every 15 min from 0:30 ...",
                            moment_words(&k->frame, floor(k->now_s)).text);
    return read_moment(&behind, k, "from", &from_s);
}

static bool read_act(cursor *c, const order_clock *k, order *o)
{
    o->kind = ORDER_ACT;
    cursor ahead = *c;
    if (cursor_take(&ahead, "every"))
        return read_every(c, ahead, k, o);
    if (!read_when(c, k, o))
        return false;
    o->doing = *c;
    return !cursor_done(&o->doing) || cursor_error(c, c->at, "what is to be done? For instance: water 2 gal over 4 min");
}

bool order_read(cursor *c, const order_clock *k, order *o)
{
    *o = (order){.kind = ORDER_NOTHING, .at_s = (double)NAN};
    if (cursor_done(c))
        return true;
    for (size_t i = 0; i < WORDS; i++)
        if (cursor_take(c, words[i].word)) {
            o->kind = words[i].kind;
            return o->kind == ORDER_WAIT ? read_wait(c, k, o) : cursor_expect_end(c);
        }
    for (size_t i = 0; i < sizeof as_well / sizeof as_well[0]; i++)
        if (cursor_take(c, as_well[i].word)) {
            o->kind = as_well[i].kind;
            return cursor_expect_end(c);
        }
    habits_of_line(c);
    if (is_mistyped(c))
        return false;
    return read_act(c, k, o);
}
