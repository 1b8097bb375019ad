#include <stdlib.h>
#include <string.h>

#include "base/memory.h"
#include "files/place.h"
#include "practise/briefing.h"
#include "practise/afterwards.h"
#include "practise/back_page.h"
#include "practise/screen/parts.h"

static const char *const keys[][2] = {
    {"w l u s", "water, load, lift, salts: the act, filled in with a usual amount; change it, Enter does it"},
    {"r h m i e", "ready-mixed liquid, heat, mixer, lid, exhaust likewise"},
    {"a", "any other act, or one that waits: when boiling for 1 min water 2 gal over 4 min"},
    {"x", "what waits is not done"},
    {"space", "the clock runs, or stands; . is one second"},
    {"n", "it goes on until something happens"},
    {"< >", "slower, faster: 1, 5, 20, 60, 300 times"},
    {"b", "back to just before the last act, which is undone"},
    {"d", "debrief: what came of each act, as if nothing more were done; w there writes it as a page"},
    {"g", "what the shift is about, and what has to hold"},
    {"q", "leave; the shift can be kept in a file, and run like any other"},
};

/* Opens what was written into memory as pages. */
static void open_page(screen *s, char *text)
{
    if (!screen_memory(s, text != NULL))
        return;
    free(s->page);
    s->page = text;
    s->page_line = 0;
    s->debrief = false;
    s->message.text[0] = '\0';
    s->mode = SCREEN_READING;
    s->running = false;
}

void screen_show_keys(screen *s)
{
    char *text;
    size_t size;
    const action_type *type;
    FILE *to = memory_stream(&text, &size);
    if (!screen_memory(s, to != NULL))
        return;
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
        text_wrapped(to, keys[i][1], fprintf(to, " %-10s", keys[i][0]), 12, CANVAS_COLUMNS - 1);
    fputs("\n acts are written as in a schedule\n", to);
    for (size_t i = 0; (type = action_type_listed(i)) != NULL; i++)
        text_wrapped(to, type->meaning, fprintf(to, " %-10s", type->keyword), 12, CANVAS_COLUMNS - 1);
    open_page(s, memory_stream_close(to, &text) ? text : NULL);
}

void screen_show_briefing(screen *s)
{
    char *text;
    size_t size;
    FILE *to = memory_stream(&text, &size);
    if (!screen_memory(s, to != NULL))
        return;
    briefing_write(s->shift, s->o->read, to);
    fputs("\nSpace: the clock runs, twenty times as fast as a real one or as asked for.\n"
          "w pours water, l puts a load in, h sets the heat: the key opens a line, which\n"
          "you may change, and Enter does it; the clock waits meanwhile. ? shows all keys.\n",
          to);
    open_page(s, memory_stream_close(to, &text) ? text : NULL);
    s->briefing = s->shift->now_s == 0;
}

void screen_show_debrief(screen *s)
{
    char *text;
    size_t size;
    FILE *to = memory_stream(&text, &size);
    if (!screen_memory(s, to != NULL))
        return;
    if (!shift_is_over(s->shift))
        fputs("Debrief, as if nothing more were done until the end\n", to);
    boil_outcome outcome = afterwards_write(s->shift, s->o->units, to);
    screen_memory(s, outcome != BOIL_NO_MEMORY);
    open_page(s, memory_stream_close(to, &text) ? text : NULL);
    s->debrief = s->page != NULL;
}

/* What is complained of goes to standard error, over the screen: it is drawn anew, and said below. */
void screen_write_debrief(screen *s)
{
    TEXT_OF(32) unused;
    bool written;
    place_unused(unused.text, sizeof unused.text, "debrief", ".html");
    const char *path = s->o->page != NULL ? s->o->page : unused.text;
    boil_outcome outcome = back_page_write(s->shift, s->o->units, path, &written);
    screen_memory(s, outcome != BOIL_NO_MEMORY);
    s->canvas.known = false;
    snprintf(s->message.text, sizeof s->message.text,
             written ? " %.60s is written: open it in a browser " : " %.60s could not be written here ", path);
}

/* The line of a text that has it, from 0. */
static const char *line_at(const char *text, size_t line)
{
    for (; line > 0; line--)
        text = strchr(text, '\n') + 1;
    return text;
}

void screen_draw_page(screen *s)
{
    const char *line = line_at(s->page, s->page_line);
    int row = 0;
    for (; line != NULL && row < CANVAS_ROWS - 1; row++) {
        const char *end = strchr(line, '\n');
        canvas_print(&s->canvas, row, 0, CANVAS_PLAIN, "%.*s", end != NULL ? (int)(end - line) : (int)strlen(line), line);
        line = end != NULL && end[1] != '\0' ? end + 1 : NULL;
    }
    bool begins = s->briefing && line == NULL;
    const char *words = begins        ? " Space: begin   w l h: begin with an act   q: leave "
                        : s->briefing ? " space: more   Enter: begin   w l h: begin with an act   q: leave "
                        : s->debrief && line != NULL
                            ? " space: more   -: back   w: write a page   Enter: to the bath   q: leave "
                        : s->debrief   ? " -: back   w: write a page   Enter: to the bath   b: undo last act   q: leave "
                        : line != NULL ? " space: more   -: back   Enter: to the bath   b: undo the last act   q: leave "
                                       : " -: back   Enter: to the bath   b: undo the last act   q: leave ";
    canvas_put(&s->canvas, CANVAS_ROWS - 1, 1, CANVAS_REVERSE, s->message.text[0] != '\0' ? s->message.text : words);
}
