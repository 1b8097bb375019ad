#include "practise/lines.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/program.h"
#include "describe/report.h"
#include "practise/briefing.h"
#include "practise/afterwards.h"
#include "practise/happened.h"
#include "practise/order.h"
#include "practise/panel.h"

typedef struct {
    shift *shift;
    const lines_options *o;
    const char *name; /* of the orders, for messages */
    size_t number;    /* of the line */
    happened_findings found;
    lines_outcome outcome;
    bool done;
} talk;

static bool memory(talk *t, bool good)
{
    t->outcome.refused = t->outcome.refused || !good;
    t->done = t->done || !good;
    return good;
}

static void say(const talk *t, double time_s, const char *words)
{
    fprintf(t->o->to, "%s %s\n", shift_clock(t->shift, time_s).text, words);
}

static void tell_one(const talk *t, const happening *one)
{
    if (!one->finding) {
        say(t, one->time_s, one->text.text);
        return;
    }
    fprintf(t->o->to, "%s %s %s: %s\n", shift_clock(t->shift, one->time_s).text, boil_severity_word(one->severity),
            one->text.text, one->advice);
}

/* What happened since, and how many lines that is. */
static size_t tell(talk *t, double from_s)
{
    happenings h = {0};
    bool good = happened_since(t->shift, from_s, t->o->units, &h) && happened_found(t->shift, from_s, &t->found, &h);
    if (memory(t, good))
        for (size_t i = 0; i < h.count; i++)
            tell_one(t, &h.list[i]);
    size_t count = h.count;
    happenings_free(&h);
    fflush(t->o->to);
    return count;
}

static void go_on(talk *t, double until_s, bool to_next)
{
    size_t told = 0;
    while (!t->done && t->shift->now_s < until_s && !shift_is_over(t->shift) && !(to_next && told > 0)) {
        double from_s = t->shift->now_s;
        if (memory(t, shift_go_on(t->shift, fmin(until_s, happened_next_look_s(t->shift))) == BOIL_OK))
            told += tell(t, from_s);
    }
}

/* Whether what is waited for came. */
static bool wait_for(talk *t, const boil_wait *w)
{
    bool due = false;
    double asked_s = t->shift->now_s;
    while (!t->done && !due && !shift_is_over(t->shift)) {
        double from_s = t->shift->now_s;
        if (memory(t, shift_go_on_when(t->shift, happened_next_look_s(t->shift), w, asked_s, &due) == BOIL_OK))
            tell(t, from_s);
    }
    return due;
}

static void show_state(const talk *t)
{
    panel p = panel_of(t->shift, shift_history(t->shift), t->shift->now_s);
    say(t, t->shift->now_s, panel_line_of(&p, t->o->units).text);
}

/* By the line that was typed; `line`: the one of the journal in which it was read, 0: in none. Remarks on others were made before. */
static void complain(talk *t, const messages *m, size_t line)
{
    for (size_t i = 0; i < m->count; i++) {
        const message *g = &m->list[i];
        bool here = line == 0 || g->line == line;
        if (g->remark && !here)
            continue;
        program_complain("%s:%zu: %s", t->name, t->number, g->text);
        if (here && g->echo != NULL)
            fprintf(stderr, "    %s\n    %*s^\n", g->echo, (int)g->caret, "");
    }
    memory(t, !m->lost);
    t->outcome.mistaken = t->outcome.mistaken || messages_any(m);
}

static void do_act(talk *t, order *o)
{
    messages m;
    char *doing = text_copy(o->doing.at, (size_t)(o->doing.end - o->doing.at));
    messages_init(&m);
    bool asked = o->asked.text[0] != '\0';
    size_t line = journal_last_line(&t->shift->journal) + (asked ? 2 : 1);
    const journal_act act = order_act(o, doing, &t->shift->scenario->plant.by_hand);
    boil_outcome outcome = doing != NULL ? shift_act(t->shift, &act, &m) : BOIL_NO_MEMORY;
    complain(t, &m, line);
    if (outcome == BOIL_OK)
        fprintf(t->o->to, "%s %s: %s\n", shift_clock(t->shift, t->shift->now_s).text, o->planned ? "planned" : "done",
                text_plain(doing).text);
    memory(t, outcome != BOIL_NO_MEMORY);
    messages_free(&m);
    free(doing);
    fflush(t->o->to);
}

static void act(talk *t, order *o)
{
    if (!isnan(o->at_s))
        go_on(t, ceil(o->at_s), false);
    if (o->wait.state != BOIL_WAIT_NONE && !wait_for(t, &o->wait) && !t->done) {
        program_complain("%s:%zu: '%s' never came: it was not done", t->name, t->number, o->asked.text);
        t->outcome.never = true;
        return;
    }
    go_on(t, ceil(t->shift->now_s), false);
    if (t->done)
        return;
    if (!shift_is_over(t->shift)) {
        do_act(t, o);
        return;
    }
    bool early = t->shift->now_s < shift_end_s(t->shift);
    program_complain("%s:%zu: %s: nothing can be done any more, but go 'back'", t->name, t->number,
                     early ? "the run ended early, where nothing more is known" : "the shift is over");
    t->outcome.mistaken = true;
}

static void help(const talk *t)
{
    const order_word *w;
    const action_type *type;
    FILE *to = t->o->to;
    fputs(" acts, with or without a time: 0:05 load ..., +2 min heat 30 %,\n when boiling for 1 min water ...\n", to);
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        text_wrapped(to, type->meaning, fprintf(to, "   %-8s", type->keyword), 12, REPORT_WIDTH);
    fputs(" the clock\n", to);
    for (size_t i = 0; (w = order_word_at(i)) != NULL; i++)
        text_wrapped(to, w->meaning, fprintf(to, "   %-10s", w->form), 14, REPORT_WIDTH);
}

static void show_acts(const talk *t)
{
    const journal *j = &t->shift->journal;
    for (size_t i = 0; i < j->count; i++)
        fprintf(t->o->to, " %s %s\n", j->acts[i].planned ? "" : journal_moment(j, j->acts[i].time_s).text,
                text_plain(j->acts[i].doing).text);
    if (j->count == 0)
        fputs(" nothing was done yet\n", t->o->to);
}

static void go_back(talk *t)
{
    bool any = t->shift->journal.count > 0;
    if (memory(t, shift_go_back(t->shift) == BOIL_OK))
        say(t, t->shift->now_s, any ? "back: the last act is undone" : "back: at the start, nothing is done yet");
    t->found = (happened_findings){{0}};
}

static void carry_out(talk *t, order *o)
{
    switch (o->kind) {
    case ORDER_NOTHING:
        break;
    case ORDER_ACT:
        act(t, o);
        break;
    case ORDER_WAIT:
        go_on(t, o->at_s, false);
        show_state(t);
        break;
    case ORDER_NEXT:
        go_on(t, (double)INFINITY, true);
        break;
    case ORDER_STATE:
        show_state(t);
        break;
    case ORDER_BACK:
        go_back(t);
        break;
    case ORDER_ACTS:
        show_acts(t);
        break;
    case ORDER_HELP:
        help(t);
        break;
    case ORDER_END:
        t->done = true;
        break;
    case ORDER_QUIT:
        t->done = t->outcome.left = true;
        break;
    }
}

static void take_line(talk *t, const char *text, size_t length)
{
    messages m;
    source line;
    order o;
    const order_clock clock = order_clock_of(&t->shift->journal, t->shift->now_s);
    messages_init(&m);
    t->number++;
    bool good = source_of_bytes(&line, t->name, text_copy(text, length), length, &m);
    cursor c = good ? cursor_of_line(&line, 1, &m) : (cursor){0};
    good = good && order_read(&c, &clock, &o);
    complain(t, &m, 0);
    if (good && !t->done)
        carry_out(t, &o);
    source_free(&line);
    messages_free(&m);
}

#define LINE_MOST (SOURCE_BYTES_MAX + 1)

/* The line without its end; one that has no end, as where somebody cuts it off, is a line all the same. Of one that never ends as
   much as is too long for a reader. */
static bool next_line(FILE *from, char line[LINE_MOST], size_t *length)
{
    int c = EOF;
    *length = 0;
    while (*length < LINE_MOST && (c = getc(from)) != EOF && c != '\n')
        line[(*length)++] = (char)c;
    bool any = c != EOF || *length > 0;
    while (*length > 0 && line[*length - 1] == '\r')
        --*length;
    return any;
}

static void listen(talk *t, FILE *from)
{
    char *line = malloc(LINE_MOST);
    size_t length = 0;
    memory(t, line != NULL);
    while (!t->done && length < LINE_MOST) {
        if (t->o->asks) {
            fprintf(t->o->to, "%s > ", shift_clock(t->shift, t->shift->now_s).text);
            fflush(t->o->to);
        }
        if (!next_line(from, line, &length))
            break;
        take_line(t, line, length);
    }
    free(line);
}

/* What a lesson says, and what happens in any case, is told by the clock; acts may be written otherwise. */
static void tell_clock(const talk *t)
{
    const double example_s = 300, start_s = t->shift->scenario->start_s;
    formatted_text by_clock = format_clock_exact(start_s, example_s);
    moment_text written = journal_moment(&t->shift->journal, example_s);
    if (strcmp(by_clock.text, written.text) != 0)
        fprintf(t->o->to, "Times here count from the start, which is at %s: %s is %s by the clock.\n",
                format_clock_exact(start_s, 0).text, written.text, by_clock.text);
}

static void begin(talk *t)
{
    briefing_write(t->shift, t->o->read, t->o->to);
    tell_clock(t);
    if (t->o->asks)
        fputs("'help' tells what may be typed, 'next' lets the clock run until something happens.\n", t->o->to);
    show_state(t);
    fflush(t->o->to);
}

static void finish(talk *t)
{
    t->done = false;
    go_on(t, (double)INFINITY, false);
    if (t->done)
        return;
    t->outcome.stopped = t->shift->now_s < shift_end_s(t->shift);
    say(t, t->shift->now_s, t->outcome.stopped ? "the run ends early" : "the shift is over");
    memory(t, afterwards_write(t->shift, t->o->units, t->o->to) != BOIL_NO_MEMORY);
}

/* A folder opens as a file does, and only cannot be read: said before the shift is begun. */
static FILE *open_orders(const char *path)
{
    FILE *from = fopen(path, "r");
    if (from == NULL)
        return NULL;
    ungetc(getc(from), from);
    if (!ferror(from))
        return from;
    int why = errno;
    fclose(from);
    errno = why;
    return NULL;
}

static void complain_unread(const talk *t)
{
    program_complain("%s: cannot be read: %s", t->name, strerror(errno));
}

lines_outcome lines_practise(shift *s, const lines_options *o)
{
    bool standard = strcmp(o->orders, "-") == 0;
    talk t = {.shift = s, .o = o, .name = standard ? "standard input" : o->orders};
    FILE *from = standard ? stdin : open_orders(o->orders);
    if (from == NULL && !memory(&t, errno != ENOMEM)) /* no fault of the file's */
        return t.outcome;
    if (from == NULL) {
        complain_unread(&t);
        t.outcome.unread = true;
        return t.outcome;
    }
    begin(&t);
    listen(&t, from);
    if (ferror(from)) {
        complain_unread(&t);
        t.outcome.mistaken = true;
    }
    if (!standard)
        fclose(from);
    if (!t.outcome.left && !t.outcome.refused)
        finish(&t);
    return t.outcome;
}
