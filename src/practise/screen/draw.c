#include <math.h>
#include <string.h>

#include "lesson/care.h"
#include "practise/screen/parts.h"
#include "practise/screen/tank_view.h"

enum { PANEL = 46, TITLE = 0, RULE = 1, BELOW = 18, NOTES = 19, MESSAGE = 22, KEYS = 23 };

static void title(screen *s)
{
    canvas *c = &s->canvas;
    const char *state = shift_is_over(s->shift) ? "OVER" : s->slow && s->running ? "SLOW" : s->running ? "running" : "PAUSED";
    double over_s = shift_history(s->shift)->summary.overflow_s;
    canvas_print(c, TITLE, 1, CANVAS_BOLD, "%s", format_clock_seconds(s->shift->scenario->start_s, s->shift->now_s).text);
    canvas_put(c, TITLE, 14, CANVAS_PLAIN, text_fitted(s->shift->scenario->title, 34).text);
    canvas_print(c, TITLE, 50, CANVAS_PLAIN, "%gx", screen_speed(s));
    canvas_put(c, TITLE, 56, s->running ? CANVAS_PLAIN : CANVAS_REVERSE, state);
    if (over_s <= s->shift->now_s)
        canvas_put(c, TITLE, 64, CANVAS_BOLD, "NOT A PREDICTION");
    canvas_rule(c, RULE);
}

/* How far below its boiling point, on a scale that ends there. */
static void gauge(canvas *c, const screen *s, const panel *p)
{
    enum { WIDTH = 26 };
    const double most_K = s->o->units == UNITS_US ? 10 / 1.8 : 5;
    double below = fmax(p->row.boiling_point_K - p->row.temperature_K, 0) / most_K;
    int at = WIDTH - 1 - (int)lround(fmin(below, 1) * (WIDTH - 1));
    canvas_put(c, 7, PANEL, CANVAS_PLAIN, s->o->units == UNITS_US ? "-10" : " -5");
    for (int i = 0; i < WIDTH; i++)
        canvas_put(c, 7, PANEL + 4 + i, CANVAS_PLAIN, i == at ? "V" : ".");
    canvas_put(c, 7, PANEL + 5 + WIDTH, CANVAS_PLAIN, "0");
}

static void rim(canvas *c, const screen *s, const panel *p)
{
    unit_system u = s->o->units;
    formatted_text lets_go = panel_lets_go(p, u);
    const double told_m = 0.2; /* the law of the swell says nothing far beyond the rim */
    if (p->row.freeboard_m <= 0) {
        canvas_put(c, 2, PANEL, CANVAS_REVERSE, " OVER THE RIM ");
        canvas_print(c, 3, PANEL, CANVAS_BOLD, "by %s%s", p->row.freeboard_m < -told_m ? "more than " : "",
                     SHOWN(u, LENGTH, fmin(-p->row.freeboard_m, told_m)));
        canvas_put(c, 4, PANEL, CANVAS_PLAIN, "what leaves the tank is not worked");
        canvas_put(c, 5, PANEL, CANVAS_PLAIN, "out: from here on no prediction");
        return;
    }
    canvas_put(c, 2, PANEL, CANVAS_PLAIN, "TO THE RIM");
    canvas_print(c, 3, PANEL, CANVAS_BOLD, "  %s  (limit %s)", SHOWN(u, LENGTH, p->row.freeboard_m),
                 format_number(u, DIM_LENGTH, p->limit_m).text);
    if (lets_go.text[0] != '\0')
        canvas_print(c, 4, PANEL, p->row.left_m < p->limit_m ? CANVAS_REVERSE : CANVAS_BOLD, "if it lets go now: %s",
                     lets_go.text);
}

static void readings(canvas *c, const screen *s, const panel *p)
{
    unit_system u = s->o->units;
    const boil_row *r = &p->row;
    if (r->boiling)
        canvas_put(c, 6, PANEL, CANVAS_BOLD, "BOILS");
    else
        canvas_print(c, 6, PANEL, CANVAS_BOLD, "QUIET   %s below boiling",
                     SHOWN(u, DIFFERENCE, fmax(r->boiling_point_K - r->temperature_K, 0)));
    canvas_print(c, 9, PANEL, CANVAS_PLAIN, "temperature  %s", SHOWN(u, TEMPERATURE, r->temperature_K));
    canvas_print(c, 10, PANEL, CANVAS_PLAIN, "boils at     %s", SHOWN(u, TEMPERATURE, r->boiling_point_K));
    canvas_print(c, 11, PANEL, CANVAS_PLAIN, "salts        %s", SHOWN(u, FRACTION, r->salt_fraction));
    canvas_print(c, 12, PANEL, CANVAS_PLAIN, "steam        %s", panel_steam(p).text);
    if (r->layer_kg >= PANEL_LEAST_KG)
        canvas_print(c, 13, PANEL, CANVAS_BOLD, "floats       %s of water", SHOWN(u, MASS, r->layer_kg));
    else
        canvas_put(c, 13, PANEL, CANVAS_PLAIN, "floats       nothing");
    canvas_print(c, 14, PANEL, CANVAS_PLAIN, "heat         %.0f %%", 100 * p->heat);
    if (p->bed_kg >= PANEL_LEAST_KG)
        canvas_print(c, 15, PANEL, CANVAS_BOLD, "undissolved  %s of salt", SHOWN(u, MASS, p->bed_kg));
    if (p->loads > 0)
        canvas_print(c, 16, PANEL, CANVAS_PLAIN, "in the bath: %s in %s", SHOWN(u, MASS, p->loads_kg),
                     format_count(p->loads, "load", "loads").text);
    if (p->loads > 0 && !isnan(r->coldest_load_K))
        canvas_print(c, 17, PANEL, CANVAS_PLAIN, "             coldest %s", SHOWN(u, TEMPERATURE, r->coldest_load_K));
}

static void note(screen *s, const happening *one, int row)
{
    char text[480];
    bool grave = one->finding && one->severity >= BOIL_SEVERITY_WARNING;
    snprintf(text, sizeof text, "%s  %s%s%s", format_clock_seconds(s->shift->scenario->start_s, one->time_s).text,
             one->finding ? boil_severity_word(one->severity) : "", one->finding ? "  " : "", text_plain(one->text.text).text);
    canvas_put(&s->canvas, row, 1, grave ? CANVAS_BOLD : CANVAS_PLAIN, text_fitted(text, CANVAS_COLUMNS - 2).text);
}

/* The last that happened and was found, the newest lowest. */
static void notes(screen *s)
{
    size_t happened = s->happened.count, warned = s->warned.count;
    for (int row = NOTES + SCREEN_NOTES - 1; row >= NOTES && happened + warned > 0; row--) {
        const happening *a = happened > 0 ? &s->happened.list[happened - 1] : NULL;
        const happening *b = warned > 0 ? &s->warned.list[warned - 1] : NULL;
        bool later = b == NULL || (a != NULL && a->time_s > b->time_s);
        note(s, later ? a : b, row);
        happened -= later;
        warned -= !later;
    }
}

/* What to do about the gravest of what was found of late, or while the bath is over the rim. */
static const happening *advised(const screen *s, bool over)
{
    const double late_s = over ? (double)INFINITY : 300;
    const happening *gravest = NULL;
    for (size_t i = s->warned.count; i > 0 && s->warned.list[i - 1].time_s > s->shift->now_s - late_s; i--)
        if (gravest == NULL || s->warned.list[i - 1].severity > gravest->severity)
            gravest = &s->warned.list[i - 1];
    return gravest;
}

/* The boil came back less than a minute ago. */
static bool just_back(const screen *s)
{
    const boil_history *h = shift_history(s->shift);
    const double now_s = s->shift->now_s;
    for (size_t i = 0; i < h->quiet_count; i++)
        if (h->quiet[i].end_s <= now_s && h->quiet[i].end_s > now_s - CARE_STEADY_S)
            return true;
    return false;
}

/* What goes on a quiet bath floats, and salt sinks: said before it is done. */
static const char *foresight(const screen *s, const panel *p)
{
    const char *line = s->line.text;
    bool water = strstr(line, "water") != NULL, when = strstr(line, "when ") != NULL || strstr(line, "boil is back") != NULL;
    if (when)
        return "";
    if (p->row.boiling)
        return water && just_back(s) ? "The boil is just back: wait for a minute of it. " : "";
    if (water)
        return "The bath does not boil: the water will float. ";
    if (strncmp(line, "salts", 5) == 0)
        return "The bath does not boil: the salt will sink. ";
    if (strncmp(line, "load", 4) == 0)
        return "The bath does not boil yet. ";
    return "";
}

static const char *prompt(const screen *s)
{
    if (s->mode == SCREEN_LEAVING)
        return "Leave?   q: leave   f: keep the shift in a file   d: debrief first   Esc: stay";
    if (shift_is_over(s->shift))
        return "The shift is over.   d: what came of it   b: before the last act   q: leave";
    if (s->met_rim && !s->running)
        return "It came over the rim.  Space: go on   b: undo the last act   d: debrief";
    if (s->waits)
        return "x: do not wait any longer";
    if (!s->running && s->shift->now_s == 0)
        return "A prediction on a screen: it allows nothing at a real tank.   Space: begin";
    return "";
}

static void prompt_or_advice(screen *s, const panel *p)
{
    char text[300];
    const char *words = prompt(s);
    const happening *one = words[0] == '\0' ? advised(s, p->row.freeboard_m <= 0) : NULL;
    snprintf(text, sizeof text, "%s%s%s", one != NULL ? boil_severity_word(one->severity) : words, one != NULL ? ": " : "",
             one != NULL ? one->advice : "");
    canvas_put(&s->canvas, MESSAGE, 1, CANVAS_BOLD, text_fitted(text, CANVAS_COLUMNS - 2).text);
}

/* The line above the keys. */
static void below(screen *s, const panel *p)
{
    canvas *c = &s->canvas;
    char text[400];
    if (s->mode == SCREEN_WRITING || s->mode == SCREEN_NAMING) {
        size_t length = strlen(s->line.text), most = CANVAS_COLUMNS - 12;
        const char *shown = length > most ? s->line.text + (length - most) : s->line.text;
        canvas_print(c, MESSAGE, 1, CANVAS_BOLD, "%s %s_", s->mode == SCREEN_NAMING ? "file:" : "what:", shown);
        if (s->message.text[0] != '\0')
            snprintf(text, sizeof text, "%s", s->message.text);
        else
            snprintf(text, sizeof text, "%sEnter: %s   Esc: drop it", s->mode == SCREEN_WRITING ? foresight(s, p) : "",
                     s->mode == SCREEN_NAMING ? "keep it there" : "do it");
        canvas_put(c, KEYS, 1, CANVAS_PLAIN, text_fitted(text, CANVAS_COLUMNS - 2).text);
        return;
    }
    if (s->message.text[0] != '\0' && s->mode != SCREEN_LEAVING)
        canvas_put(c, MESSAGE, 1, CANVAS_BOLD, text_fitted(s->message.text, CANVAS_COLUMNS - 2).text);
    else
        prompt_or_advice(s, p);
    canvas_put(c, KEYS, 1, CANVAS_PLAIN, "w water  l load  s salts  h heat  a other act  space pause  <> speed  ? keys");
}

static void waiting(screen *s)
{
    char text[500];
    snprintf(text, sizeof text, "waits %s: %s", s->waited.asked.text, s->waiting.text);
    if (s->waits)
        canvas_print(&s->canvas, BELOW, 2, CANVAS_BOLD, " %.72s ", text_plain(text).text);
}

static void draw_bath(screen *s)
{
    panel p = panel_of(s->shift, shift_history(s->shift), s->shift->now_s);
    title(s);
    tank_view_draw(&s->canvas, s->shift, &p, s->moment, s->o->units);
    rim(&s->canvas, s, &p);
    readings(&s->canvas, s, &p);
    gauge(&s->canvas, s, &p);
    canvas_rule(&s->canvas, BELOW);
    waiting(s);
    notes(s);
    below(s, &p);
}

void screen_picture(screen *s)
{
    canvas_clear(&s->canvas);
    if (s->mode == SCREEN_READING)
        screen_draw_page(s);
    else
        draw_bath(s);
}

void screen_draw(screen *s)
{
    int rows, columns;
    terminal_size(&rows, &columns);
    bool fits = rows >= CANVAS_ROWS && columns >= CANVAS_COLUMNS;
    if (fits != s->fits)
        s->canvas.known = false;
    s->fits = fits;
    if (!fits) {
        printf("\033[0m\033[2J\033[Hneeds %d by %d, here %d by %d", CANVAS_COLUMNS, CANVAS_ROWS, columns, rows);
        fflush(stdout);
        return;
    }
    s->moment += s->running;
    screen_picture(s);
    canvas_show(&s->canvas, stdout);
}
