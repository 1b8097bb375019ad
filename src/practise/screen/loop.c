#include <stdlib.h>

#include "base/clock.h"
#include "practise/screen/parts.h"

/* Ten drawings a second; none can stand for more of the clock than this, whatever held it up. */
#define FRAME_MS 100
#define FRAME_MOST_S 0.25

/* What came in from outside: it ends, stops or goes on. */
static void heed(screen *s)
{
    int signal = terminal_signal(&s->terminal);
    if (signal == 0)
        return;
    if (signal == SIGTSTP) {
        s->running = false;
        terminal_stop(&s->terminal);
    }
    s->canvas.known = false;
    if (signal != SIGTSTP && signal != SIGCONT) {
        s->outcome.signal = signal;
        s->done = true;
    }
}

/* All keys that have come, until it is time for the next drawing. */
static void listen(screen *s, double until_wall_s)
{
    double left_s = until_wall_s - clock_now_s();
    do {
        int wait_ms = left_s > 0 ? (int)(1000 * left_s) + 1 : 0;
        int pressed = terminal_key(&s->terminal, wait_ms, s->mode == SCREEN_WRITING || s->mode == SCREEN_NAMING);
        if (pressed != KEY_NONE)
            screen_press(s, pressed);
        heed(s);
        left_s = until_wall_s - clock_now_s();
    } while (left_s > 0 && !s->done);
}

static void run(screen *s)
{
    double before_s = clock_now_s();
    screen_show_briefing(s);
    while (!s->done) {
        double now_s = clock_now_s(), passed_s = now_s - before_s;
        before_s = now_s;
        if (s->running && s->fits)
            screen_advance(s, passed_s < FRAME_MOST_S ? passed_s : FRAME_MOST_S, now_s);
        screen_draw(s);
        listen(s, now_s + FRAME_MS / 1e3);
    }
}

screen_outcome screen_practise(shift *of, const screen_options *o)
{
    screen *s = calloc(1, sizeof *s);
    screen_outcome refused = {.refused = true}, unusable = {.unusable = true};
    if (s == NULL)
        return refused;
    *s = (screen){.shift = of, .o = o, .speed = o->speed, .found_s = -1, .fits = true};
    snprintf(s->outcome.save.text, sizeof s->outcome.save.text, "%s", o->save != NULL ? o->save : "");
    if (!terminal_enter(&s->terminal)) {
        free(s);
        return unusable;
    }
    run(s);
    terminal_leave(&s->terminal);
    s->outcome.stopped = shift_is_over(of) && of->now_s < shift_end_s(of);
    screen_outcome outcome = s->outcome;
    happenings_free(&s->happened);
    happenings_free(&s->warned);
    free(s->page);
    free(s);
    return outcome;
}
