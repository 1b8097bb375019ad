#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "practise/screen/parts.h"

/* What a key fills in where the shift has no such act yet: usual amounts, common practice, no source. */
static const struct {
    const char *keyword, *us, *si;
} usual[] = {
    {"water", "water 2 gal over 4 min", "water 8 L over 4 min"},
    {"load", "load 40 lb, plate 1/4 in, for 15 min", "load 20 kg, plate 6 mm, for 15 min"},
    {"lift", "lift", "lift"},
    {"salts", "salts 10 lb over 5 min", "salts 5 kg over 5 min"},
    {"liquid", "liquid 2 gal over 4 min", "liquid 8 L over 4 min"},
    {"heat", "heat 50 %", "heat 50 %"},
    {"mixer", "mixer on", "mixer on"},
    {"lid", "lid on", "lid on"},
    {"exhaust", "exhaust on", "exhaust on"},
};

static const char *usual_of(const screen *s, const char *keyword)
{
    for (size_t i = 0; i < sizeof usual / sizeof usual[0]; i++)
        if (strcmp(usual[i].keyword, keyword) == 0)
            return s->o->units == UNITS_US ? usual[i].us : usual[i].si;
    return keyword;
}

/* The last such act of the shift; NULL: there was none. */
static const char *last_of(const screen *s, const char *keyword)
{
    const journal *j = &s->shift->journal;
    size_t length = strlen(keyword);
    for (size_t i = j->count; i > 0; i--)
        if (strncmp(j->acts[i - 1].doing, keyword, length) == 0)
            return j->acts[i - 1].doing;
    return NULL;
}

/* What is on is offered off, and the other way round. */
static const char *turned(const char *last, const char *keyword)
{
    static const char *const both[][2] = {{"mixer on", "mixer off"}, {"lid on", "lid off"}, {"exhaust on", "exhaust off"}};
    for (size_t i = 0; i < sizeof both / sizeof both[0]; i++)
        if (strncmp(both[i][0], keyword, strlen(keyword)) == 0)
            return strcmp(last, both[i][0]) == 0 ? both[i][1] : both[i][0];
    return last;
}

void screen_open(screen *s, const char *keyword)
{
    const char *last = keyword[0] != '\0' ? last_of(s, keyword) : NULL;
    const char *text = last != NULL ? turned(last, keyword) : usual_of(s, keyword);
    if (shift_is_over(s->shift)) {
        snprintf(s->message.text, sizeof s->message.text, "The shift is over.  b: before the last act   d: debrief   q: leave");
        return;
    }
    snprintf(s->line.text, sizeof s->line.text, "%s", text);
    s->mode = SCREEN_WRITING;
    s->running = false;
    s->message.text[0] = '\0';
}

/* The first mistake in a few words. */
static void complain(screen *s, const messages *m)
{
    screen_memory(s, !m->lost);
    for (size_t i = 0; i < m->count; i++)
        if (!m->list[i].remark) {
            snprintf(s->message.text, sizeof s->message.text, "%s", m->list[i].text);
            return;
        }
}

static void do_act(screen *s, const journal_act *act)
{
    messages m;
    messages_init(&m);
    double from_s = s->shift->now_s;
    boil_outcome outcome = shift_act(s->shift, act, &m);
    screen_memory(s, outcome != BOIL_NO_MEMORY && happened_since(s->shift, from_s, s->o->units, &s->happened));
    complain(s, &m);
    if (outcome == BOIL_OK) {
        screen_note(s, act->doing);
        s->mode = SCREEN_WATCHING;
        s->running = true;
        s->message.text[0] = '\0';
    }
    messages_free(&m);
}

void screen_do_waiting(screen *s)
{
    s->waits = false;
    const journal_act act = order_act(&s->waited, s->waiting.text, &s->shift->scenario->plant.by_hand);
    do_act(s, &act);
}

/* An act is done, or waits; the words of lines that are no acts are keys here. */
static void carry_out(screen *s, order *o)
{
    char doing[SCREEN_LINE_MOST];
    if (o->kind != ORDER_ACT) {
        if (o->kind == ORDER_NOTHING)
            s->mode = SCREEN_WATCHING;
        else
            snprintf(s->message.text, sizeof s->message.text, "Here that is a key: Esc, then ? shows the keys.");
        return;
    }
    if (o->at_s > ceil(s->shift->now_s)) {
        snprintf(s->message.text, sizeof s->message.text,
                 "Acts are done now here: leave the time away, or wait with 'when boiling'.");
        return;
    }
    snprintf(doing, sizeof doing, "%.*s", (int)(o->doing.end - o->doing.at), o->doing.at);
    if (o->wait.state == BOIL_WAIT_NONE) {
        const journal_act act = order_act(o, doing, &s->shift->scenario->plant.by_hand);
        do_act(s, &act);
        return;
    }
    snprintf(s->waiting.text, sizeof s->waiting.text, "%s", doing);
    s->waited = *o;
    s->asked_s = s->shift->now_s;
    s->waits = s->running = true;
    s->mode = SCREEN_WATCHING;
}

static void enter(screen *s)
{
    messages m;
    source line;
    order o;
    const order_clock clock = order_clock_of(&s->shift->journal, s->shift->now_s);
    size_t length = strlen(s->line.text);
    messages_init(&m);
    s->message.text[0] = '\0';
    bool good = source_of_bytes(&line, "act", text_copy(s->line.text, length), length, &m);
    cursor c = good ? cursor_of_line(&line, 1, &m) : (cursor){.at = NULL};
    good = good && order_read(&c, &clock, &o);
    complain(s, &m);
    if (good)
        carry_out(s, &o);
    source_free(&line);
    messages_free(&m);
}

/* Up to the word before. */
static void take_word(char *text)
{
    size_t length = strlen(text);
    while (length > 0 && text[length - 1] == ' ')
        length--;
    while (length > 0 && text[length - 1] != ' ')
        length--;
    text[length] = '\0';
}

/* Keys as every line of a terminal has them. */
enum { BACKSPACE = 8, ENTER = 10, RETURN = 13, KILL_LINE = 21, KILL_WORD = 23, DELETE = 127 };

static void leave_line(screen *s)
{
    s->mode = SCREEN_WATCHING;
    s->message.text[0] = '\0';
}

static void finish_line(screen *s)
{
    if (s->mode == SCREEN_WRITING) {
        enter(s);
        return;
    }
    snprintf(s->outcome.save.text, sizeof s->outcome.save.text, "%s", s->line.text);
    s->mode = SCREEN_LEAVING;
}

void screen_write(screen *s, int pressed)
{
    char *text = s->line.text;
    size_t length = strlen(text);
    if (pressed == KEY_ESCAPE)
        leave_line(s);
    else if (pressed == ENTER || pressed == RETURN)
        finish_line(s);
    else if ((pressed == BACKSPACE || pressed == DELETE) && length > 0)
        text[length - 1] = '\0';
    else if (pressed == KILL_LINE)
        text[0] = '\0';
    else if (pressed == KILL_WORD)
        take_word(text);
    else if (pressed >= ' ' && pressed <= '~' && length + 1 < sizeof s->line.text) {
        text[length] = (char)pressed;
        text[length + 1] = '\0';
    }
}
