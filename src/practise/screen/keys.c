#include <stdlib.h>
#include <string.h>

#include "files/place.h"
#include "practise/screen/parts.h"

enum { CTRL_C = 3, CTRL_L = 12, CTRL_Z = 26, ENTER = 10, RETURN = 13 };

static const double speeds[] = {1, 5, 20, 60, 300};

static void faster(screen *s)
{
    for (size_t i = 0; i < sizeof speeds / sizeof speeds[0]; i++)
        if (speeds[i] > s->speed) {
            s->speed = speeds[i];
            return;
        }
}

static void slower(screen *s)
{
    for (size_t i = sizeof speeds / sizeof speeds[0]; i > 0; i--)
        if (speeds[i - 1] < s->speed) {
            s->speed = speeds[i - 1];
            return;
        }
}

static void go_back(screen *s)
{
    if (!screen_memory(s, shift_go_back(s->shift) == BOIL_OK))
        return;
    screen_forget(s);
    s->running = false;
    snprintf(s->message.text, sizeof s->message.text, "Back to just before it; the act is undone. Space goes on.");
}

/* Keys that open an act. */
static const char *act_of(int pressed)
{
    static const struct {
        char key;
        const char *keyword;
    } acts[] = {{'w', "water"}, {'l', "load"},  {'u', "lift"}, {'s', "salts"},   {'r', "liquid"},
                {'h', "heat"},  {'m', "mixer"}, {'i', "lid"},  {'e', "exhaust"}, {'a', ""}};
    for (size_t i = 0; i < sizeof acts / sizeof acts[0]; i++)
        if (acts[i].key == pressed)
            return acts[i].keyword;
    return NULL;
}

static void toggle(screen *s)
{
    s->running = !s->running && !shift_is_over(s->shift);
    s->message.text[0] = '\0';
}

static void one_second(screen *s)
{
    bool slow = s->slow;
    double speed = s->speed;
    s->running = true;
    s->slow = false;
    s->speed = 1;
    screen_advance(s, 1, s->looked_s + 10);
    s->speed = speed;
    s->slow = s->slow || slow;
    s->running = false;
}

static void close_page(screen *s)
{
    free(s->page);
    s->page = NULL;
    s->briefing = s->debrief = false;
    s->message.text[0] = '\0';
}

static void ask_to_leave(screen *s)
{
    close_page(s);
    s->mode = SCREEN_LEAVING;
    s->running = false;
}

static void watch(screen *s, int pressed)
{
    const char *keyword = act_of(pressed);
    if (keyword != NULL)
        screen_open(s, keyword);
    else if (pressed == ' ' || pressed == ENTER || pressed == RETURN)
        toggle(s);
    else if (pressed == '.')
        one_second(s);
    else if (pressed == '>')
        faster(s);
    else if (pressed == '<')
        slower(s);
    else if (pressed == 'n')
        screen_to_next(s);
    else if (pressed == 'b')
        go_back(s);
    else if (pressed == 'x')
        s->waits = false;
    else if (pressed == '?')
        screen_show_keys(s);
    else if (pressed == 'd')
        screen_show_debrief(s);
    else if (pressed == 'g')
        screen_show_briefing(s);
    else if (pressed == 'q')
        ask_to_leave(s);
    else if (pressed == KEY_PASTED)
        snprintf(s->message.text, sizeof s->message.text, "What was pasted was not taken: press a, then paste one act.");
    else if (pressed != KEY_OTHER) /* nor the end of a paste, which would hide that it was not taken */
        snprintf(s->message.text, sizeof s->message.text, "No such key: ? shows the keys, q leaves.");
}

/* Where it is to be kept already, or a file that is not there: one shift is not kept over another for pressing Enter. */
static void propose_file(screen *s)
{
    const char *known = s->outcome.save.text;
    bool short_enough = known[0] != '\0' && strlen(known) < sizeof s->line.text;
    if (short_enough)
        snprintf(s->line.text, sizeof s->line.text, "%.*s", SCREEN_LINE_MOST - 1, known);
    else
        place_unused(s->line.text, sizeof s->line.text, "worked", ".bath");
}

static void leaving(screen *s, int pressed)
{
    if (pressed == 'q' || pressed == ENTER || pressed == RETURN)
        s->done = true;
    else if (pressed == 'f') {
        propose_file(s);
        s->mode = SCREEN_NAMING;
    } else if (pressed == 'd')
        screen_show_debrief(s);
    else if (pressed == KEY_ESCAPE)
        s->mode = SCREEN_WATCHING;
}

/* From the briefing on, by a key that lets the clock run or opens an act. */
static void begin(screen *s, int pressed)
{
    const char *keyword = act_of(pressed);
    if (keyword != NULL)
        screen_open(s, keyword);
    else
        s->running = pressed == ' ' || pressed == ENTER || pressed == RETURN;
}

/* By pages, to the end; from there, and by escape, back to the bath. */
static void turn_page(screen *s, int pressed)
{
    const size_t shown = CANVAS_ROWS - 1;
    if (pressed == 'w' && s->debrief) {
        screen_write_debrief(s);
        return;
    }
    s->message.text[0] = '\0';
    bool more = s->page_line + shown < text_lines(s->page);
    if (pressed == ' ' && more) {
        s->page_line += shown - 1;
        return;
    }
    if (pressed == '-' || pressed == 'k') {
        s->page_line -= s->page_line < shown - 1 ? s->page_line : shown - 1;
        return;
    }
    if (pressed == KEY_OTHER || pressed == KEY_PASTED)
        return;
    bool begins = s->briefing;
    close_page(s);
    s->mode = SCREEN_WATCHING;
    if (pressed == 'q')
        ask_to_leave(s);
    else if (begins)
        begin(s, pressed);
    else if (pressed == 'b')
        go_back(s);
}

/* Acts were done that no file would have, and nobody has been asked whether one should. */
static bool would_lose(const screen *s)
{
    return s->shift->journal.count > 0 && s->outcome.save.text[0] == '\0' && s->mode != SCREEN_LEAVING;
}

void screen_press(screen *s, int pressed)
{
    if (pressed == CTRL_C && would_lose(s)) {
        ask_to_leave(s);
    } else if (pressed == KEY_GONE || pressed == CTRL_C) {
        s->outcome.signal = pressed == CTRL_C ? SIGINT : SIGHUP;
        s->done = true;
    } else if (pressed == CTRL_L) {
        s->canvas.known = false;
    } else if (pressed == CTRL_Z) {
        s->running = false;
        terminal_stop(&s->terminal);
        s->canvas.known = false;
    } else if (s->mode == SCREEN_WATCHING) {
        watch(s, pressed);
    } else if (s->mode == SCREEN_LEAVING) {
        leaving(s, pressed);
    } else if (s->mode == SCREEN_READING) {
        turn_page(s, pressed);
    } else {
        screen_write(s, pressed);
    }
}
